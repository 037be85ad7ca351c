/** What the rows of several tables say together: names that must be there, and names that must not be there twice. */
import { nameKey } from "../core/catalogue";
import { sayCell, textOf } from "./cell";
import type { Rows } from "./given-tables";
import type { ReadRow } from "./read-table";
import type { TableError, TableErrorCode } from "./table-error";
import { sayChoices } from "./unit";

/** Where an error of a sound row points. */
export interface Pointer {
  readonly column: string;
  readonly read: string;
}

export const errorAt = (row: ReadRow<unknown>, pointer: Pointer, accepted: string, code: TableErrorCode = "data-out-of-range"): TableError => ({
  table: row.table, row: row.row, ...pointer, accepted, code,
});

/** Sound rows, with the row they stand on. */
export interface Sound<R> {
  readonly row: ReadRow<R>;
  readonly value: R;
}

export const soundRows = <R>(rows: { readonly rows: readonly ReadRow<R>[] }): readonly Sound<R>[] => rows.rows.flatMap((row) => (row.value === undefined ? [] : [{ row, value: row.value }]));

export interface Checked<R> {
  readonly sound: readonly Sound<R>[];
  readonly errors: readonly TableError[];
}

/** Refuses the later rows of a key that an earlier row has. */
export function withoutRepeats<R>(sound: readonly Sound<R>[], keyOf: (value: R) => string, pointerOf: (value: R) => Pointer): Checked<R> {
  const first = new Map<string, ReadRow<R>>();
  return partition(sound, ({ row, value }) => {
    const key = keyOf(value);
    const earlier = first.get(key);
    if (!earlier) first.set(key, row);
    return earlier && { ...errorAt(row, pointerOf(value), "what no earlier row has", "data-duplicate"), earlier: { table: earlier.table, row: earlier.row } };
  });
}

/** Refuses rows that name what another table lacks. */
export function withKnown<R>(sound: readonly Sound<R>[], known: Names, pointerOf: (value: R) => Pointer): Checked<R> {
  return partition(sound, ({ row, value }) => {
    const pointer = pointerOf(value);
    return known.keys.has(nameKey(pointer.read)) ? undefined : errorAt(row, pointer, known.says);
  });
}

/** Keeps the rows for which `refuse` finds no error. */
export function partition<R>(sound: readonly Sound<R>[], refuse: (one: Sound<R>) => TableError | undefined): Checked<R> {
  const errors: TableError[] = [];
  const kept = sound.filter((one) => {
    const error = refuse(one);
    if (error) errors.push(error);
    return !error;
  });
  return { sound: kept, errors };
}

/** The names that a table gives, for other tables to refer to. */
export interface Names {
  readonly keys: ReadonlySet<string>;
  readonly says: string;
}

/**
 * Every name a table gives, those of rows with errors included: one bad cell must not make every row that refers to it an error as well.
 * @param field the cell that holds the name
 */
export function namesIn(rows: Rows<unknown>, field: string, says: string): Names {
  const names = rows.rows.flatMap((row) => textOf(row.cells[field]) ?? []);
  return { keys: new Set(names.map(nameKey)), says: rows.present ? says : `${says} (no such table was given)` };
}

/** `one of IN, F1 or F2`, short of a whole page. */
export function sayNames(names: readonly string[]): string {
  const shown = names.slice(0, 8).map(sayCell);
  return sayChoices(names.length > shown.length ? [...shown, `${names.length - shown.length} more`] : shown);
}
