/** Days: a date cell arrives as the spreadsheet's day number, a date typed as text as year-month-day. */
import { numberOf, textOf } from "./cell";
import { column, Refusal } from "./column";

const ISO_DAY = /^(\d{4})-(\d{2})-(\d{2})$/;
const MILLISECONDS_PER_DAY = 86_400_000;
/** Day number 1 is 1900-01-01; from 1 March 1900 on, the numbers count a 29 February 1900 that never was, hence 30 December 1899. */
const DAY_ZERO = Date.UTC(1899, 11, 30);
const FIRST_DAY = 61;
const LAST_DAY = 2_958_465; // 9999-12-31

/** A date, as the spreadsheet's day number. */
export const day = (heading: string) => column(heading, "a date, or text such as 2030-01-31", (raw) => dayOf(raw) ?? new Refusal());

function dayOf(raw: unknown): number | undefined {
  const day = isoDay(textOf(raw) ?? "") ?? numberOf(raw);
  return day !== undefined && Number.isInteger(day) && day >= FIRST_DAY && day <= LAST_DAY ? day : undefined;
}

function isoDay(text: string): number | undefined {
  const [, year, month, dayOfMonth] = ISO_DAY.exec(text) ?? [];
  if (year === undefined) return undefined;
  const instant = new Date(Date.UTC(Number(year), Number(month) - 1, Number(dayOfMonth)));
  return instant.toISOString().startsWith(text) ? Math.round((instant.getTime() - DAY_ZERO) / MILLISECONDS_PER_DAY) : undefined;
}
