/** The tables a catalogue is made of, recognised, named for errors, and read. */
import { canonicalCell, contentHash } from "./content-key";
import { isBlank, sayCell } from "./cell";
import { findHeadings } from "./headings";
import { readTable, type ReadRow } from "./read-table";
import { recognise } from "./recognise";
import { catalogueTables } from "./table-specs";
import type { TableError } from "./table-error";
import type { AnyTableSpec, Columns, RawTable, TableSpec } from "./table-spec";

export interface GivenTable {
  readonly spec: AnyTableSpec;
  readonly raw: RawTable;
  /** How errors name it: its own name, else its kind, counted when there are several. */
  readonly label: string;
}

export interface GivenTables {
  readonly given: readonly GivenTable[];
  readonly errors: readonly TableError[];
}

/** Recognises every table. A range that is no catalogue table is an error, and the others stand. */
export function recogniseAll(tables: readonly RawTable[]): GivenTables {
  const given: GivenTable[] = [];
  const errors: TableError[] = [];
  tables.forEach((raw, index) => {
    const label = raw.name ?? `Table ${index + 1}`;
    const { spec, error } = recognise(raw.headings, label);
    if (error) errors.push(error);
    else if (!catalogueTables.includes(spec)) errors.push(notCatalogue(spec, label));
    else given.push({ spec, raw, label: raw.name ?? countedLabel(spec, given) });
  });
  return { given, errors };
}

/** All rows of one kind, over every table of that kind. */
export interface Rows<R> {
  /** False when no table of this kind was given. */
  readonly present: boolean;
  readonly rows: readonly ReadRow<R>[];
  readonly errors: readonly TableError[];
}

/** Reads every given table of one kind; several are joined. */
export function rowsOf<C extends Columns, R>(spec: TableSpec<C, R>, given: readonly GivenTable[]): Rows<R> {
  const reads = given.filter((one) => one.spec === spec).map(({ raw, label }) => readTable(spec, raw, label));
  const rows = reads.flatMap((read) => read.rows);
  return { present: reads.length > 0, rows, errors: [...reads.flatMap((read) => read.headingErrors), ...rows.flatMap((row) => row.errors)] };
}

/** Names the recognised content: order of tables and columns, extra columns and blank rows do not matter. */
export function contentKey(given: readonly GivenTable[]): string {
  const hashes = given.map(({ spec, raw }) => `${spec.name} ${contentHash(canonicalTexts(spec, raw))}`).sort();
  return `PLUMB-${contentHash(hashes)}`;
}

function* canonicalTexts(spec: AnyTableSpec, raw: RawTable): Iterable<string> {
  const found = findHeadings(spec, raw.headings, spec.name).columns;
  const columns = Object.keys(spec.columns).flatMap((field) => {
    const column = found.get(field);
    return column ? [{ field, ...column }] : [];
  });
  for (const { field, unit } of columns) yield `${field} ${unit?.name ?? ""}`;
  for (const row of raw.rows) {
    if (row.every(isBlank)) continue;
    for (const { index } of columns) yield isBlank(row[index]) ? "" : canonicalCell(row[index]);
  }
}

const countedLabel = (spec: AnyTableSpec, given: readonly GivenTable[]): string => {
  const before = given.filter((one) => one.spec === spec).length;
  return before === 0 ? spec.name : `${spec.name} (table ${before + 1} of this kind)`;
};

const notCatalogue = (spec: AnyTableSpec, label: string): TableError => ({
  table: label,
  read: sayCell(spec.name),
  accepted: `tables of the catalogue only; rows of ${spec.name} go to the functions that answer about them`,
});
