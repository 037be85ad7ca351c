/** How finely demand is divided when a reorder point is sought. */
import { demandDuring, type DemandLaw, type Grid } from "./demand-law";
import type { MeanAndVariance } from "./pipeline";

export interface DemandPlan {
  /** Over lead time and review [u, u²]. */
  readonly demand: MeanAndVariance;
  readonly law: DemandLaw;
  /** [u] */
  readonly lot: number;
}

/** So many steps from none to the most that is looked at: fine enough that a step is a small part of a deviation. */
const STEPS = 400;
const MOST_STEPS = 1600;
/** Deviations above the mean, beside the largest job: beyond it little is left even of lumpy demand. */
const DEVIATIONS = 8;

/**
 * @param plan demand over lead time and review, and the lot [u]
 * @param reach how many times the usual length [-]
 * @returns step [u] of which the lot is a whole number, and cells
 */
export function gridFor({ demand, law, lot }: DemandPlan, reach: number): Grid {
  const largest = law.kind === "compound Poisson" ? law.sizes.reduce((most, { size }) => Math.max(most, size), 0) : 0;
  const most = (demand.mean + DEVIATIONS * Math.sqrt(demand.variance) + largest) * reach;
  const whole = law.kind === "counted" && most <= MOST_STEPS ? 1 : most / STEPS;
  const fitting = lot / Math.max(1, Math.round(lot / whole));
  const step = most / fitting <= MOST_STEPS ? fitting : most / MOST_STEPS;
  return { step, cells: Math.ceil(most / step) + 1 };
}

/** A demand of which only mean and variance are known. */
export const certainOrGamma = (moments: MeanAndVariance, grid: Grid): Float64Array => demandDuring({ kind: "gamma", ...moments }, 1, grid);
