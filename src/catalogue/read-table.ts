/** Reads the rows of one table: every row for itself, every error of every row. */
import * as z from "zod/mini";
import { isBlank, sayCell } from "./cell";
import { issue, type Column } from "./column";
import { findHeadings, type FoundColumn, type FoundHeadings } from "./headings";
import type { TableError, TableErrorCode } from "./table-error";
import type { AnyTableSpec, Columns, RawTable, RowOf, TableSpec } from "./table-spec";
import { sayHeadings } from "./unit";

export interface ReadRow<R> {
  readonly table: string;
  /** 1 is the first row under the headings. */
  readonly row: number;
  /** Undefined when the row has an error. */
  readonly value: R | undefined;
  readonly errors: readonly TableError[];
  /** The raw cells by field, for labels and for what a row with an error still says. */
  readonly cells: Cells;
}

export type Cells = Readonly<Record<string, unknown>>;

export interface ReadTable<R> {
  readonly headingErrors: readonly TableError[];
  readonly rows: readonly ReadRow<R>[];
}

/**
 * Reads every row that is not wholly blank; a row with an error has no value, the others stand.
 * @param label how errors name the table
 */
export function readTable<C extends Columns, R>(spec: TableSpec<C, R>, raw: RawTable, label: string): ReadTable<R> {
  const reader = rowReader(spec, raw.headings, label);
  return { headingErrors: reader.headingErrors, rows: filledRows(raw.rows).map(({ row, cells }) => reader.read(row, cells)) };
}

/** Reads every row that is not wholly blank; a cell with an error counts as blank once it is reported, so that the rest of its row stands. */
export function readTableLeavingOutCells<C extends Columns, R>(spec: TableSpec<C, R>, raw: RawTable, label: string): ReadTable<R> {
  const reader = readerLeavingOutCells(spec, raw.headings, label);
  return { headingErrors: reader.headingErrors, rows: filledRows(raw.rows).map(({ row, cells }) => reader.read(row, cells)) };
}

/** Reads the rows of one table one at a time, so that a long table can be read in slices and a row again only when it changed. */
export interface RowReader<R> {
  readonly headingErrors: readonly TableError[];
  /** @param row 1 is the first row under the headings */
  readonly read: (row: number, cells: readonly unknown[]) => ReadRow<R>;
}

/** The same, a row at a time. */
export function readerLeavingOutCells<C extends Columns, R>(spec: TableSpec<C, R>, headings: readonly unknown[], label: string): RowReader<R> {
  const reader = rowReader(spec, headings, label);
  return {
    headingErrors: reader.headingErrors,
    read: (row, cells) => {
      const first = reader.read(row, cells);
      return first.value === undefined ? { ...first, value: reader.readCells(row, withoutCells(spec, first)).value } : first;
    },
  };
}

interface CellReader<R> extends RowReader<R> {
  readonly readCells: (row: number, cells: Cells) => ReadRow<R>;
}

function rowReader<C extends Columns, R>(spec: TableSpec<C, R>, headings: readonly unknown[], label: string): CellReader<R> {
  const found = findHeadings(spec, headings, label);
  const schema = rowSchema(spec, found);
  const fields = Object.keys(spec.columns).map((field) => [field, readableIndex(found.columns.get(field))] as const);
  const readCells = (row: number, cells: Cells): ReadRow<R> => {
    const answer = z.safeParse(schema, cells);
    if (answer.success) return { table: label, row, value: answer.data, errors: [], cells };
    const errors = answer.error.issues.map((one) => tableError(spec, { table: label, row, cells }, one));
    return { table: label, row, value: undefined, errors, cells };
  };
  return { headingErrors: [...found.errors, ...missingHeadings(spec, found, label)], readCells, read: (row, cells) => readCells(row, byField(fields, cells)) };
}

/** A required column that cannot be read is reported once, at its heading, and not again in every row. */
function rowSchema<C extends Columns, R>(spec: TableSpec<C, R>, found: FoundHeadings): z.ZodMiniType<R | undefined> {
  const columns = Object.entries<Column<unknown>>(spec.columns);
  const isUnread = ([field, column]: readonly [string, Column<unknown>]) => (column.filled && !found.columns.get(field)?.readable) || (column.judgedByRow === true && found.columns.get(field)?.readable === false);
  const shape = Object.fromEntries(columns.map((entry) => [entry[0], isUnread(entry) ? z.unknown() : entry[1].schema(found.columns.get(entry[0])?.unit)]));
  const cells = z.object(shape) as unknown as z.ZodMiniType<RowOf<C>>;
  return columns.some(isUnread) ? z.pipe(cells, z.transform(() => undefined)) : z.pipe(cells, coreSchema(spec));
}

const coreSchema = <C extends Columns, R>(spec: TableSpec<C, R>) =>
  z.transform((cells: RowOf<C>, context): R | undefined =>
    spec.toCore(cells, (field, accepted, code = "data-out-of-range") => void context.issues.push({ ...issue(undefined, accepted, code), path: [field] })),
  );

/** The headings that a table cannot do without and that are not there. */
function missingHeadings(spec: AnyTableSpec, found: FoundHeadings, label: string): readonly TableError[] {
  return Object.entries(spec.columns)
    .filter(([field, column]) => column.filled && !found.columns.has(field))
    .map(([, { heading, quantity }]) => ({ table: label, column: heading, read: "", accepted: quantity ? sayHeadings(heading, quantity) : `a column ${heading}` }));
}

export const isFilled = (cells: readonly unknown[]): boolean => !cells.every(isBlank);

/** The rows that hold anything, with their numbers. */
const filledRows = (rows: RawTable["rows"]): readonly { readonly row: number; readonly cells: readonly unknown[] }[] =>
  rows.map((cells, index) => ({ row: index + 1, cells })).filter(({ cells }) => isFilled(cells));

const readableIndex = (column: FoundColumn | undefined): number | undefined => (column?.readable ? column.index : undefined);

/** Every field has a key, blank where the table has no such column: zod reports an absent key in words of its own. */
const byField = (fields: readonly (readonly [string, number | undefined])[], cells: readonly unknown[]): Cells =>
  Object.fromEntries(fields.map(([field, index]) => [field, index === undefined ? undefined : cells[index]]));

type Issue = z.core.$ZodIssue;

function tableError(spec: AnyTableSpec, at: { readonly table: string; readonly row: number; readonly cells: Cells }, one: Issue): TableError {
  const field = String(one.path[0]);
  const { code } = (one.code === "custom" ? one.params : undefined) as { readonly code: TableErrorCode };
  return { table: at.table, row: at.row, column: spec.columns[field]?.heading, read: sayCell(at.cells[field]), accepted: one.message, code };
}

function withoutCells(spec: AnyTableSpec, read: ReadRow<unknown>): Cells {
  const refused = new Set(read.errors.map((error) => error.column));
  return Object.fromEntries(Object.entries(read.cells).map(([field, raw]) => [field, refused.has(spec.columns[field]?.heading) ? undefined : raw]));
}
