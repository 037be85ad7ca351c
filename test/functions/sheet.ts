/** Calls worksheet functions as a spreadsheet does: ranges row by row, blanks as 0, left-out optionals as null. */
import { SheetError } from "../../src/functions/answer";
import { worksheetFunctions } from "../../src/functions/registry";
import { asCell, carCells, rowOfCars, tablesOf, type CarCells, type Shop } from "../core/workshop";

export type Cell = string | number | boolean;
export type Range = readonly (readonly Cell[])[];

export const call = (name: string, ...args: readonly unknown[]): unknown => (worksheetFunctions[name] as (...args: readonly unknown[]) => unknown)(...args);
export const tableFrom = (name: string, ...args: readonly unknown[]): Cell[][] => call(name, ...args) as Cell[][];

/** The key of a shop's catalogue. */
export const keyOf = (shop?: Shop): string => call("CATALOG", tablesOf(shop).map(({ headings, rows }) => [headings, ...rows])) as string;

export const HEADINGS: readonly string[] = Object.keys(carCells);

/** A row of Cars under HEADINGS; cells not stated are the workshop car's, a blank one arrives as 0. */
export const carRow = (cells: CarCells = {}): Cell[] => HEADINGS.map((heading) => asCell(rowOfCars(cells)[heading] ?? ""));

export const about = (name: string, cars: readonly CarCells[], key: string): Cell[][] => tableFrom(name, [HEADINGS], cars.map(carRow), key);

/** The rows of one car, without the heading row. */
export const rowsOf = (table: Range, car: string): Range => table.slice(1).filter(([name]) => name === car);

/** What a function throws, as its kind and its sentence. */
export function failure(name: string, ...args: readonly unknown[]): { readonly kind: string; readonly message: string } {
  try {
    call(name, ...args);
  } catch (error) {
    if (error instanceof SheetError) return { kind: error.kind, message: error.message };
    throw error;
  }
  throw new Error(`${name} answered`);
}
