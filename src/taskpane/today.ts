/** The clock, which the core has not. */
const DAY_ZERO = Date.UTC(1899, 11, 30);
const MILLISECONDS_PER_DAY = 86_400_000;

/** Today where the user is, as the spreadsheet counts days. */
export function todayHere(now = new Date()): number {
  return (Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) - DAY_ZERO) / MILLISECONDS_PER_DAY;
}
