/** One chance to buy: what a level costs when left-over stock and shortage each have a price. */
import { normalQuantile, type Normal } from "./distributions";
import { normalLoss, type Loss } from "./loss";

export interface OverAndUnder {
  /** For each unit left over. */
  readonly holding: number;
  /** For each unit short. */
  readonly shortage: number;
}

/**
 * The share of cases in which the best level suffices, so a cost of shortage becomes a cycle service.
 * @param costs of a unit left over and a unit short [money/u], not both 0
 * @returns cycle service [-]
 * @source Snyder and Shen 2019 (place from memory): p / (p + h)
 * @example criticalRatio({ holding: 1, shortage: 4 }) // => 0.8
 */
export const criticalRatio = ({ holding, shortage }: OverAndUnder): number => shortage / (shortage + holding);

/**
 * @param costs of a unit left over and a unit short [money/u]
 * @param loss of demand at the level [u]
 * @returns expected cost [money]
 * @source Snyder and Shen 2019 (place from memory): g(S) = h n̄(S) + p n(S)
 * @example newsvendorCost({ holding: 1, shortage: 4 }, { short: 2, left: 3 }) // => 11
 */
export const newsvendorCost = ({ holding, shortage }: OverAndUnder, { short, left }: Loss): number => holding * left + shortage * short;

/**
 * @param costs of a unit left over and a unit short [money/u]
 * @param demand mean and standard deviation [u]; limits: normal demand may be below 0, so not for lumpy demand
 * @returns best level [u] and its expected cost [money]
 * @source Snyder and Shen 2019, example 4.3
 * @example normalNewsvendor({ holding: 0.18, shortage: 0.7 }, { mean: 50, deviation: 8 }).level // => 56.60395592743389
 */
export function normalNewsvendor(costs: OverAndUnder, demand: Normal): { readonly level: number; readonly cost: number } {
  const level = normalQuantile(criticalRatio(costs), demand);
  return { level, cost: newsvendorCost(costs, normalLoss(level, demand)) };
}
