/** Past usage of one tube, from dated rows: by week, and by the day's job. */
import { groupBy } from "../group-by";
import { DAYS_PER_WEEK } from "./date-spread";

/** So much used on one day. */
export interface DatedQuantity {
  readonly date: number;
  /** [u] */
  readonly quantity: number;
}

/** Whole weeks that end with today and reach back to when recording began. */
export interface RecordedWeeks {
  readonly today: number;
  readonly weeks: number;
}

/**
 * @param earliest date of any row of usage [day], of whatever tube: from then on a week without a row is a week without usage
 * @param today last day that counts [day]
 * @returns whole weeks, the first of them holding the earliest date; none when that lies after today
 */
export const recordedWeeks = (earliest: number, today: number): RecordedWeeks => ({ today, weeks: Math.max(0, Math.ceil((today - earliest + 1) / DAYS_PER_WEEK)) });

/**
 * Usage by week, oldest first. Rows after today are left out: the caller says so.
 * @param used dates [day] and quantities [u]
 * @param recorded today [day] and number of weeks
 * @returns total of each week [u]
 * @source weeks end with today: day d falls (today − d) / 7 whole weeks back
 * @example weeklyUsage([{ date: 14, quantity: 2 }, { date: 1, quantity: 3 }], { today: 14, weeks: 2 }) // => [3, 2]
 */
export function weeklyUsage(used: readonly DatedQuantity[], { today, weeks }: RecordedWeeks): number[] {
  const totals = Array.from({ length: weeks }, () => 0);
  for (const { date, quantity } of used) {
    const week = weeks - 1 - Math.floor((today - date) / DAYS_PER_WEEK);
    if (date <= today && week >= 0) totals[week] = (totals[week] ?? 0) + quantity;
  }
  return totals;
}

/** What was used on each day that used any, in order of days [u]: the pieces of one day belong to one job more often than not, so they are not independent. */
export const dailyJobs = (used: readonly DatedQuantity[], { today, weeks }: RecordedWeeks): number[] => {
  const counted = used.filter(({ date }) => date <= today && date > today - weeks * DAYS_PER_WEEK);
  const days = [...groupBy(counted, ({ date }) => String(date)).values()].sort((a, b) => (a[0]?.date ?? 0) - (b[0]?.date ?? 0));
  return days.map((rows) => rows.reduce((sum, { quantity }) => sum + quantity, 0)).filter((quantity) => quantity > 0);
};
