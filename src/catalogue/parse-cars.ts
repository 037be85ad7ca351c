/** From the rows of Cars to cars, each row for itself. */
import type { Car } from "../core/car";
import { nameKey } from "../core/catalogue";
import { textOf } from "./cell";
import { readTableLeavingOutCells, type ReadRow } from "./read-table";
import type { TableError } from "./table-error";
import { carsTable } from "./tables/cars";

export interface CarRow {
  /** 1 is the first row under the headings. */
  readonly row: number;
  /** The car's name, or `row 7` when the row has none. */
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
  const read = readTableLeavingOutCells(carsTable, { headings, rows }, carsTable.name);
  const first = new Map<string, number>();
  const cars = read.rows.map((row): CarRow => {
    const name = textOf(row.cells["name"]);
    const earlier = name === undefined ? undefined : first.get(nameKey(name));
    if (name !== undefined && earlier === undefined) first.set(nameKey(name), row.row);
    return { row: row.row, name: name ?? `row ${row.row}`, car: row.value, errors: earlier === undefined ? row.errors : [...row.errors, repeated(row, name ?? "", earlier)] };
  });
  return { cars, headingErrors: read.headingErrors };
}

const repeated = (row: ReadRow<Car>, name: string, earlier: number): TableError => ({
  table: row.table, row: row.row, column: carsTable.columns.name.heading, read: name, accepted: `a name that no earlier row has (row ${earlier} has it)`, code: "data-duplicate",
});
