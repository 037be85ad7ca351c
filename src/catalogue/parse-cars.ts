/** From the rows of Cars to cars, each row for itself. */
import type { Car } from "../core/car";
import { nameKey } from "../core/catalogue";
import { madeOnceByKey } from "../core/made-once";
import { textOf } from "./cell";
import { canonicalCell, contentHash } from "./content-key";
import { isFilled, readerLeavingOutCells, type ReadRow } from "./read-table";
import { rowUnderHeadings, type TableError } from "./table-error";
import { carsTable } from "./tables/cars";

export interface CarRow {
  /** 1 is the first row under the headings. */
  readonly row: number;
  /** The car's name, or `row 7 under the headings` when the row has none. */
  readonly name: string;
  /** Undefined only when the row has no name. */
  readonly car?: Car | undefined;
  readonly errors: readonly TableError[];
}

export interface ParsedCars {
  readonly cars: readonly CarRow[];
  readonly headingErrors: readonly TableError[];
}

/**
 * Reads every row that is not wholly blank, in order. A cell that cannot be read gives its row an error and leaves that figure unknown;
 * a name that an earlier row has gives the later row an error.
 */
export function parseCars(headings: readonly unknown[], rows: readonly (readonly unknown[])[]): ParsedCars {
  const { headingErrors, read } = carReader(headings);
  return { cars: carRows(rows.flatMap((cells, index) => read(index + 1, cells) ?? [])), headingErrors };
}

/** What one row of Cars says, before the rows are compared with each other. */
export type ReadCar = ReadRow<Car>;

export interface CarReader {
  readonly headingErrors: readonly TableError[];
  /** @returns undefined for a row that is wholly blank */
  readonly read: (row: number, cells: readonly unknown[]) => ReadCar | undefined;
}

/** A sheet of thousands of cars is read again at every edit, and all rows but one are as they were: those give the same car, the object itself. */
export const carReader = (headings: readonly unknown[]): CarReader => readers(contentOf(headings), () => readerKeeping(headings));

const [HEADINGS_KEPT, ROWS_KEPT] = [8, 150_000];
const readers = madeOnceByKey<CarReader>(HEADINGS_KEPT);

/** Errors name their row, so a row with one is read anew. */
function readerKeeping(headings: readonly unknown[]): CarReader {
  const { headingErrors, read } = readerLeavingOutCells(carsTable, headings, carsTable.name);
  /** By content, in brief; the cells themselves tell whether it is the same. */
  const sound = new Map<string, KeptRow>();
  /** By row number. Most rows stand where they stood, and comparing cells takes a tenth of looking their content up. */
  const stood: KeptRow[] = [];
  const readAnew = (row: number, cells: readonly unknown[], content: string): KeptRow => {
    const fresh = { cells: cells.slice(), made: withNameOnly(read(row, cells)) };
    if (sound.size >= ROWS_KEPT) sound.clear();
    if (fresh.made.errors.length === 0) sound.set(content, fresh);
    return fresh;
  };
  const lookedUp = (row: number, cells: readonly unknown[]): KeptRow => {
    const content = contentHash(cells.map(canonicalCell));
    const known = sound.get(content);
    const kept = known && isSame(known.cells, cells) ? known : readAnew(row, cells, content);
    return kept.made.row === row ? kept : { cells: kept.cells, made: { ...kept.made, row } };
  };
  return {
    headingErrors,
    read: (row, cells) => {
      if (!isFilled(cells)) return undefined;
      const before = stood[row];
      if (before && isSame(before.cells, cells)) return before.made;
      const kept = lookedUp(row, cells);
      if (row <= ROWS_KEPT) stood[row] = kept;
      return kept.made;
    },
  };
}

/** A row that was read, with a copy of its cells: the caller may change its own. */
interface KeptRow {
  readonly cells: readonly unknown[];
  readonly made: ReadCar;
}

/** Of the raw cells only the name is asked for again. */
const withNameOnly = ({ table, row, value, errors, cells }: ReadCar): ReadCar => ({ table, row, value, errors, cells: { name: cells["name"] } });

const isSame = (before: readonly unknown[], cells: readonly unknown[]): boolean => before.length === cells.length && before.every((cell, index) => Object.is(cell, cells[index]));

/** Cells are told apart by kind, length and content, so no text can stand for two of them. */
function contentOf(cells: readonly unknown[]): string {
  let content = "";
  for (const cell of cells) {
    const one = canonicalCell(cell);
    content += `${one.length}${one}`;
  }
  return content;
}

/** The rows of one table in order; one that was read and is alone with its name gives the same object each time. */
export function carRows(read: readonly ReadCar[]): readonly CarRow[] {
  const first = new Map<string, number>();
  return read.map((row) => {
    const { key, made } = carRow(row);
    const earlier = key === undefined ? undefined : first.get(key);
    if (earlier !== undefined) return { ...made, errors: [...row.errors, repeated(row, made.name, earlier)] };
    if (key !== undefined) first.set(key, row.row);
    return made;
  });
}

interface MadeRow {
  readonly made: CarRow;
  /** By which names are compared; undefined for a row without a name. */
  readonly key: string | undefined;
}

/** Made once for what was read: readings of a long table that changed in one row share the others. */
const madeRows = new WeakMap<ReadCar, MadeRow>();

function carRow(row: ReadCar): MadeRow {
  const known = madeRows.get(row);
  if (known) return known;
  const name = textOf(row.cells["name"]);
  const fresh = { key: name === undefined ? undefined : nameKey(name), made: { row: row.row, name: name ?? rowUnderHeadings(row.row), car: row.value, errors: row.errors } };
  madeRows.set(row, fresh);
  return fresh;
}

const repeated = (row: ReadCar, name: string, earlier: number): TableError => ({
  table: row.table, row: row.row, column: carsTable.columns.name.heading, read: name, accepted: "a name that no earlier row has", earlier: { table: row.table, row: earlier }, code: "data-duplicate",
});
