/** What a table is: its columns, the headings it is known by, and how a row becomes a core type. */
import type { Column } from "./column";
import type { TableErrorCode } from "./table-error";

export type Columns = Readonly<Record<string, Column<unknown>>>;
export type RowOf<C extends Columns> = { readonly [K in keyof C]: C[K] extends Column<infer T> ? T : never };

/** Refuses a row because of one of its cells. */
export type Refuse<Field> = (field: Field, accepted: string, code?: TableErrorCode) => void;

/** What all tables have alike. */
export interface AnyTableSpec {
  readonly name: string;
  /** What one row is, for docs and the panel. */
  readonly holds: string;
  readonly columns: Columns;
  /** A table is this one when it has, of each group, at least one heading. */
  readonly knownBy: readonly (readonly string[])[];
}

export interface TableSpec<C extends Columns, R> extends AnyTableSpec {
  readonly columns: C;
  readonly knownBy: readonly (readonly (keyof C & string)[])[];
  /** From the cells of a row to the core type. The cells are sound each for itself; what they say together is judged here. Undefined only after a refusal. */
  readonly toCore: (row: RowOf<C>, refuse: Refuse<keyof C & string>) => R | undefined;
}

/** Types a spec by its own columns. */
export const table = <C extends Columns, R>(spec: TableSpec<C, R>): TableSpec<C, R> => spec;

/** A table as it comes from a range: its heading row and the rows under it. */
export interface RawTable {
  readonly name?: string;
  readonly headings: readonly unknown[];
  readonly rows: readonly (readonly unknown[])[];
}
