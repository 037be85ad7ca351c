/** Reads the arguments of the worksheet functions about stock. */
import { FORECAST_METHODS, type ForecastMethod } from "../core/stock/forecast";
import type { Weights } from "../core/stock/smoothing";
import { badValue } from "./answer";
import { readNumber } from "./arguments";

/** A range as it arrives: row by row, blanks as 0. */
export type Rows = readonly (readonly unknown[])[];

const FIRST_DAY = 61; // 1 March 1900: before it, spreadsheets count a day that never was
const USUAL_WEEKS = 13; // a quarter
const MOST_WEEKS = 520;

/** @throws #VALUE! unless it is a date cell or TODAY(), which arrive as a whole day number, perhaps with a time of day */
export function readDay(name: string, value: unknown): number {
  const day = typeof value === "number" ? Math.floor(value) : NaN;
  if (!(day >= FIRST_DAY)) throw badValue(`${name}: read "${String(value ?? "")}"; accepted: a date, such as a date cell, TODAY() or DATE(2030,1,31).`);
  return day;
}

/** A quarter of a year when left out. */
export function readWeeks(value: unknown): number {
  const weeks = readNumber("weeks", value) ?? USUAL_WEEKS;
  if (!Number.isInteger(weeks) || weeks > MOST_WEEKS) throw badValue(`weeks: read "${String(value)}"; accepted: a whole number from 1 to ${MOST_WEEKS}.`);
  return weeks;
}

/** A method's name without regard to case; `auto` when left out. */
export function readMethod(value: unknown): ForecastMethod {
  const plain = String(value ?? "").trim().toLowerCase();
  const method = plain === "" || plain === "0" ? "auto" : FORECAST_METHODS.find((one) => one.toLowerCase() === plain);
  if (!method) throw badValue(`method: read "${String(value)}"; accepted: ${FORECAST_METHODS.join(", ")}.`);
  return method;
}

/** Weights of smoothing; undefined when neither is given, and one given alone stands for both. */
export function readWeights(alpha: unknown, beta: unknown): Weights | undefined {
  const [first, second] = [readWeight("alpha", alpha), readWeight("beta", beta)];
  if (first === undefined && second !== undefined) throw badValue("alpha: read nothing beside a beta; accepted: a number above 0 and up to 1.");
  return first === undefined ? undefined : { alpha: first, beta: second ?? first };
}

function readWeight(name: string, value: unknown): number | undefined {
  const weight = readNumber(name, value);
  if (weight !== undefined && weight > 1) throw badValue(`${name}: read "${String(value)}"; accepted: a number above 0 and up to 1.`);
  return weight;
}

/** One row or one column of demand, oldest first; a blank is a period without demand. */
export function readHistory(range: Rows): number[] {
  if (range.length > 1 && (range[0]?.length ?? 0) > 1) throw badValue("history: read several rows and columns; accepted: one row or one column, oldest first.");
  return range.flat().map((cell, index) => {
    const demand = cell === "" || cell === null || cell === undefined ? 0 : cell;
    if (typeof demand !== "number" || !(demand >= 0) || !Number.isFinite(demand)) throw badValue(`history, period ${index + 1}: read "${String(cell)}"; accepted: a number of 0 or more.`);
    return demand;
  });
}

/** A number of 0 or more, or a range with one for each row; undefined when left out. */
export function readPerRow(name: string, value: unknown, rows: number): readonly number[] | undefined {
  if (value === null || value === undefined || value === "") return undefined;
  const cells = (Array.isArray(value) ? (value as unknown[]).flat() : [value]).map((cell) => (cell === "" || cell === null ? 0 : cell));
  if (cells.length !== rows) throw badValue(`${name}: read ${cells.length} cells for ${rows} rows; accepted: one for each row.`);
  return cells.map((cell) => {
    if (typeof cell !== "number" || !(cell >= 0)) throw badValue(`${name}: read "${String(cell)}"; accepted: a number of 0 or more.`);
    return cell;
  });
}
