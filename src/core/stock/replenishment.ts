/**
 * Service and stock of the policy "at each review, when stock on hand and on order is at or below s, order as many lots of Q as lift it above s".
 * Unmet demand waits. In the long run the position after a review is as likely at any step from s + 1 to s + Q, so every figure here is exact for demand on the
 * grid's steps, undershoot included; only demand in multiples coarser than the step is spread finer than it comes.
 * @source Hadley and Whitin, Analysis of Inventory Systems, 1963, chapter 5: the (nQ, r, T) model (from memory)
 */
import type { StockSettings } from "../stock-settings";
import { convolve, cumulated, momentsOf } from "./lattice";

/** Chance of 0, 1, 2 … steps of demand over each stretch of time. */
export interface CycleDemand {
  readonly step: number;
  /** From an order to its arrival. */
  readonly lead: Float64Array;
  /** From one review to the next. */
  readonly review: Float64Array;
  /** Steps looked at; demand over both beyond them is left out of account. */
  readonly cells: number;
}

/** `cycle`: share of orders that arrive before anything is short. `fill`: share of demand met at once. */
export interface Service {
  readonly measure: StockSettings["serviceMeasure"];
  /** Above 0, below 1. */
  readonly share: number;
}

export interface PolicyFigures {
  readonly cycleService: number;
  readonly fillRate: number;
  /** Mean stock on hand, of just after an arrival and just before the next review's [u]. */
  readonly onHand: number;
  /** Mean number of reviews for each order. */
  readonly reviewsPerOrder: number;
}

export interface Replenishment {
  /**
   * The least reorder point that reaches a service.
   * @param service measure and share [-]
   * @returns steps [-], or undefined when the grid is too short to reach it
   */
  readonly reorderPointFor: (service: Service) => number | undefined;
  /** @param reorderPoint in steps [-], 0 or more */
  readonly figuresAt: (reorderPoint: number) => PolicyFigures;
}

/**
 * @param demand chances by step
 * @param lot Q in steps [-], 1 or more
 * @returns figures of any reorder point, made from sums that are worked out once
 */
export function replenishment({ step, lead, review, cells }: CycleDemand, lot: number): Replenishment {
  const beforeArrival = excess(lead, lot + cells);
  const beforeNext = excess(convolve(lead, review, cells), lot + cells);
  const undershoot = undershootOf(review, lot);
  const orderChance = undershoot.reduce((sum, chance) => sum + chance, 0) / lot;
  const reviewMean = momentsOf({ step: 1, chances: review }).mean;
  const cycles = cumulated(convolve(undershoot.map((chance) => chance / (orderChance * lot)), lead, cells));
  const cycleService = (point: number): number => cycles[Math.min(point, cycles.length - 1)] ?? 0;
  const fillRate = (point: number): number => 1 - (average(beforeNext, point, lot) - average(beforeArrival, point, lot)) / reviewMean;
  const onHand = (point: number): number => {
    const position = point + (lot + 1) / 2;
    return position - (beforeArrival.mean + beforeNext.mean) / 2 + (average(beforeArrival, point, lot) + average(beforeNext, point, lot)) / 2;
  };
  return {
    reorderPointFor: ({ measure, share }) => firstReaching(measure === "cycle" ? cycleService : fillRate, share, cells),
    figuresAt: (point) => ({ cycleService: cycleService(point), fillRate: fillRate(point), onHand: onHand(point) * step, reviewsPerOrder: 1 / orderChance }),
  };
}

/** Mean demand above x for x = 0, 1, 2 … steps, summed up from 0 to before x. */
interface Excess {
  readonly mean: number;
  readonly sums: Float64Array;
}

function excess(chances: Float64Array, cells: number): Excess {
  const { mean } = momentsOf({ step: 1, chances });
  const sums = new Float64Array(cells + 2);
  let [above, below] = [mean, 0];
  for (let x = 0; x <= cells; x += 1) {
    sums[x + 1] = (sums[x] as number) + Math.max(0, above);
    below += chances[x] ?? 0;
    above -= Math.max(0, 1 - below);
  }
  return { mean, sums };
}

/** Mean excess over positions point + 1 to point + lot, each as likely; beyond the grid there is none. */
function average({ sums }: Excess, point: number, lot: number): number {
  const at = (x: number): number => sums[Math.min(x, sums.length - 1)] ?? 0;
  return (at(point + lot + 1) - at(point + 1)) / lot;
}

/** How far below the reorder point a review finds the position, as weights: chance of 0, 1, 2 … steps times the lot. */
function undershootOf(review: Float64Array, lot: number): Float64Array {
  const shares = cumulated(review);
  const at = (x: number): number => shares[Math.min(x, shares.length - 1)] ?? 0;
  return review.map((_, below) => at(below + lot) - at(below));
}

/** Service never falls as the reorder point rises, so halving finds the first that reaches it. */
function firstReaching(service: (point: number) => number, share: number, cells: number): number | undefined {
  if (service(cells) < share) return undefined;
  let [low, high] = [0, cells];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (service(middle) >= share) high = middle;
    else low = middle + 1;
  }
  return low;
}
