/** Stock week by week if nothing more is ordered, and the day it runs out. */
import { DAYS_PER_WEEK } from "./date-spread";

export interface Arrival {
  /** Day on which it can be used. */
  readonly day: number;
  /** [u] */
  readonly quantity: number;
}

export interface StockOutlook {
  readonly today: number;
  /** At the start of today [u]. */
  readonly onHand: number;
  /** What is on order. One due before today counts as arriving today. */
  readonly arrivals: readonly Arrival[];
  /** Mean demand of each week, the first starting today [u]; the last goes on for ever. */
  readonly weekly: readonly number[];
}

/** Longer than this is not looked ahead. */
export const LONGEST_OUTLOOK_DAYS = 3653;

/**
 * The first day on which mean demand is more than there is, demand falling evenly over the days of a week.
 * @param outlook today [day], stock and arrivals [u], demand by week [u]
 * @returns day, or undefined when stock lasts ten years
 * @source day by day: stock + arrivals − weekly / 7
 * @example stockOutDay({ today: 100, onHand: 10, arrivals: [], weekly: [7] }) // => 110
 */
export function stockOutDay(outlook: StockOutlook): number | undefined {
  let stock = outlook.onHand;
  for (let day = outlook.today; day < outlook.today + LONGEST_OUTLOOK_DAYS; day += 1) {
    stock += arriving(outlook, day) - demandOn(outlook, day);
    if (stock < -ROUNDING * (1 + outlook.onHand)) return day;
  }
  return undefined;
}

/**
 * Mean stock at the end of each week, below 0 for what is short.
 * @param outlook today [day], stock and arrivals [u], demand by week [u]
 * @param weeks [week]
 * @returns [u]
 * @source week by week: stock + arrivals − demand
 * @example projectedStock({ today: 100, onHand: 10, arrivals: [{ day: 107, quantity: 5 }], weekly: [7] }, 2) // => [3, 1]
 */
export function projectedStock(outlook: StockOutlook, weeks: number): number[] {
  let stock = outlook.onHand;
  return Array.from({ length: weeks }, (_, week) => {
    for (let day = 0; day < DAYS_PER_WEEK; day += 1) {
      const date = outlook.today + week * DAYS_PER_WEEK + day;
      stock += arriving(outlook, date) - demandOn(outlook, date);
    }
    return stock;
  });
}

const ROUNDING = 1e-9;

const arriving = ({ arrivals, today }: StockOutlook, date: number): number =>
  arrivals.reduce((sum, { day, quantity }) => sum + (Math.max(day, today) === date ? quantity : 0), 0);

function demandOn({ weekly, today }: StockOutlook, date: number): number {
  const week = Math.min(Math.floor((date - today) / DAYS_PER_WEEK), weekly.length - 1);
  return (weekly[week] ?? 0) / DAYS_PER_WEEK;
}
