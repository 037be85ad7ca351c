/** What open quotes will ask for if they become orders: mean, variance and distribution by week. Each quote is won or lost as a whole, independently of others. */
import { DAYS_PER_WEEK, shareBefore, shareBetween, type DateSpread } from "./date-spread";
import { convolve, onSteps, type Lattice } from "./lattice";

/** What one quote needs of one thing, if it is won. */
export interface QuoteNeed {
  /** That it is won, 0 to 1. */
  readonly chance: number;
  readonly spread: DateSpread;
  /** [u] */
  readonly quantity: number;
}

export interface MeanAndVariance {
  /** [u] */
  readonly mean: number;
  /** [u²] */
  readonly variance: number;
}

/** That a quote asks for its quantity within one span of time. */
export interface TimedNeed {
  /** Chance of being won times the share of its dates within the span. */
  readonly chance: number;
  /** [u] */
  readonly quantity: number;
}

/**
 * Demand from quotes within a span of days. What a quote's dates say lies before today counts at its start: the quote is still open.
 * Variances of single weeks must not be added up, as a quote falls into one of them only: ask for the longer span instead.
 * @param needs chance [-], dates [day], quantity [u] of each quote
 * @param span first day, and the day after the last [day]; `opens` is the day from which dates count, earlier ones being moved there
 * @returns mean [u], variance [u²]
 * @source independent two-valued variables: mean Σ p w q, variance Σ p w (1 − p w) q²
 * @example pipelineDemand([{ chance: 0.5, spread: { earliest: 3, likely: 3, latest: 3 }, quantity: 10 }], { from: 0, to: 7, opens: 0 }).variance // => 25
 */
export function pipelineDemand(needs: readonly QuoteNeed[], span: DaySpan): MeanAndVariance {
  return meanAndVariance(timedNeeds(needs, span));
}

/** The same for so many weeks, the first starting on the first day; week by week. */
export const pipelineByWeek = (needs: readonly QuoteNeed[], firstDay: number, weeks: number): MeanAndVariance[] =>
  Array.from({ length: weeks }, (_, week) => pipelineDemand(needs, weekSpan(firstDay, week)));

export interface DaySpan {
  readonly from: number;
  /** Not included. */
  readonly to: number;
  readonly opens: number;
}

export const weekSpan = (firstDay: number, week: number): DaySpan => ({ from: firstDay + week * DAYS_PER_WEEK, to: firstDay + (week + 1) * DAYS_PER_WEEK, opens: firstDay });

/** Needs of a span, those that cannot fall into it left out. */
export const timedNeeds = (needs: readonly QuoteNeed[], { from, to, opens }: DaySpan): TimedNeed[] =>
  needs.flatMap(({ chance, spread, quantity }) => {
    const share = from <= opens ? shareBefore(spread, to) : shareBetween(spread, from, to);
    return share > 0 && chance > 0 ? [{ chance: chance * share, quantity }] : [];
  });

export const meanAndVariance = (needs: readonly TimedNeed[]): MeanAndVariance => ({
  mean: needs.reduce((sum, { chance, quantity }) => sum + chance * quantity, 0),
  variance: needs.reduce((sum, { chance, quantity }) => sum + chance * (1 - chance) * quantity ** 2, 0),
});

/**
 * The exact distribution of demand within a span, by convolving quote after quote. Exact when quantities are whole steps; others keep their mean and add at most
 * p w step² / 4 each to the variance. Work grows with quotes × total steps.
 * @param needs chance [-] and quantity [u] of each quote
 * @param step [u]
 * @returns chance of 0, 1, 2 … steps
 * @source definition of the sum of independent variables (convolution)
 * @example pipelineDistribution([{ chance: 0.5, quantity: 1 }, { chance: 0.5, quantity: 2 }], 1).chances // => [0.25, 0.25, 0.25, 0.25]
 */
export function pipelineDistribution(needs: readonly TimedNeed[], step: number): Lattice {
  let chances: Float64Array = new Float64Array([1]);
  for (const { chance, quantity } of needs) {
    const one = onSteps([{ size: quantity, chance }], step);
    one[0] = (one[0] as number) + 1 - chance;
    // The quote has few sizes, and convolve passes over chances of 0 in its first.
    chances = convolve(one, chances, Infinity);
  }
  return { step, chances };
}
