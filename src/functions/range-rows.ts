/** Reads small ranges that may come with or without a heading row: lengths to cut, stock, points. */
import { isBlank, isCellValue, numberOf, sayCell } from "../catalogue/cell";
import { length as lengthQuantity, unitNamed } from "../catalogue/unit";
import { inches, millimetres, type Metres } from "../core/quantity";
import { badValue } from "./answer";

export type Range = readonly (readonly unknown[])[];
export type LengthUnitName = "in" | "mm";

/** What a column may be called; without headings the fields stand in the order given. */
export interface RangeField {
  readonly field: string;
  readonly headings: readonly string[];
}

export interface RangeRow {
  /** Counted from 1 below the headings. */
  readonly number: number;
  /** Undefined where the range has no such column. */
  readonly cell: (field: string) => unknown;
  /** The factor of the heading's unit, where it names one. */
  readonly toMetres: (field: string) => ((value: number) => Metres) | undefined;
}

/**
 * The rows that hold anything.
 * @param name of the argument, for messages
 * @throws #VALUE! when headings stand there without the first field's
 */
export function rowsOfRange(name: string, range: Range, fields: readonly RangeField[]): RangeRow[] {
  const headings = range[0] ?? [];
  const headed = headings.some((cell) => typeof cell === "string" && cell.trim() !== "" && numberOf(cell) === undefined) && numberOf(headings[0]) === undefined;
  const columns = headed ? namedColumns(headings, fields) : new Map(fields.map(({ field }, index) => [field, { index, toMetres: undefined }] as const));
  const [first] = fields;
  if (first && !columns.has(first.field)) throw badValue(`${name}: no column ${first.headings[0] ?? first.field} among ${headings.map(sayCell).join(", ")}.`);
  const width = Math.max(0, ...range.map((row) => row.length));
  return range.slice(headed ? 1 : 0).flatMap((row, index): RangeRow[] => {
    if (row.every(isBlank)) return [];
    const place = (field: string) => columns.get(field);
    return [{ number: index + 1, toMetres: (field) => place(field)?.toMetres, cell: (field) => ((place(field)?.index ?? width) < width ? row[place(field)?.index ?? 0] : undefined) }];
  });
}

/** The cell as a number; NaN where it holds none and blank reads as 0. */
export const numberIn = (cell: unknown): number => (isBlank(cell) ? 0 : isCellValue(cell) ? (numberOf(cell) ?? NaN) : NaN);

export const inUnit = (unit: LengthUnitName): ((value: number) => Metres) => (unit === "in" ? inches : millimetres);

type FoundColumn = { readonly index: number; readonly toMetres: ((value: number) => Metres) | undefined };

function namedColumns(headings: readonly unknown[], fields: readonly RangeField[]): Map<string, FoundColumn> {
  const columns = new Map<string, FoundColumn>();
  headings.forEach((cell, index) => {
    const [, base = "", bracket] = /^\s*(.*?)\s*(?:\(([^()]*)\))?\s*$/.exec(sayCell(cell).toLowerCase()) ?? [];
    const found = fields.find(({ headings: names }) => names.some((one) => one.toLowerCase() === base));
    if (found && !columns.has(found.field)) columns.set(found.field, { index, toMetres: bracket === undefined ? undefined : unitNamed(lengthQuantity, bracket)?.from });
  });
  return columns;
}
