/** When something may happen: a triangle over days. Days are whole numbers, the spreadsheet's. */

export interface DateSpread {
  readonly earliest: number;
  readonly likely: number;
  readonly latest: number;
}

export const DAYS_PER_WEEK = 7;

/**
 * The share of a spread that lies before a day.
 * A triangular density rises from nothing at the earliest day to its peak at the likely one and falls to nothing at the latest; a day is the instant it begins,
 * so a spread of one day only lies before the next.
 * @param spread earliest, likely and latest [day], in that order
 * @param day [day]
 * @returns share [-], 0 to 1
 * @source triangular distribution: (x − a)² / ((b − a)(m − a)) below the peak m, 1 − (b − x)² / ((b − a)(b − m)) above it
 * @example shareBefore({ earliest: 0, likely: 7, latest: 14 }, 7) // => 0.5
 */
export function shareBefore({ earliest, likely, latest }: DateSpread, day: number): number {
  if (day > latest) return 1;
  if (day <= earliest) return 0;
  const whole = latest - earliest;
  return day <= likely ? (day - earliest) ** 2 / (whole * (likely - earliest)) : 1 - (latest - day) ** 2 / (whole * (latest - likely));
}

/** The share of a spread from a day up to, not including, another [-]. */
export const shareBetween = (spread: DateSpread, from: number, to: number): number => shareBefore(spread, to) - shareBefore(spread, from);

/**
 * Dates as a spread. A single date is that day. A blank earliest or latest is the likely day, so that the triangle is one-sided; a blank likely day is midway.
 * @returns undefined without any date, as a date cannot be guessed; `assumed` says what was blank and taken
 */
export function spreadOf({ earliest, likely, latest }: { readonly [K in keyof DateSpread]?: number | undefined }): { readonly spread: DateSpread; readonly assumed: readonly string[] } | undefined {
  const peak = likely ?? midway(earliest, latest);
  if (peak === undefined) return undefined;
  const blanks = Object.entries({ Earliest: earliest, Likely: likely, Latest: latest }).filter(([, day]) => day === undefined).map(([name]) => name);
  const single = blanks.length === 2 || (earliest === latest && earliest !== undefined);
  return { spread: { earliest: earliest ?? peak, likely: peak, latest: latest ?? peak }, assumed: single ? [] : blanks.map((name) => `${name} is blank and taken ${name === "Likely" ? "midway" : "as Likely"}`) };
}

const midway = (earliest: number | undefined, latest: number | undefined): number | undefined =>
  earliest !== undefined && latest !== undefined ? (earliest + latest) / 2 : (earliest ?? latest);
