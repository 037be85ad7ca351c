/** Days as text. */
const DAY_ZERO = Date.UTC(1899, 11, 30);
const MILLISECONDS_PER_DAY = 86_400_000;

/** A spreadsheet's day number as `2030-01-31`. */
export const dayText = (day: number): string => new Date(DAY_ZERO + Math.floor(day) * MILLISECONDS_PER_DAY).toISOString().slice(0, 10);
