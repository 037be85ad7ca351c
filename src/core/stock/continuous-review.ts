/** Order Q whenever stock falls to r, watched all the time, normal demand: the textbook policy. Lumpy demand has replenishment.ts. */
import type { Normal } from "./distributions";
import { normalQuantile } from "./distributions";
import { economicOrderQuantity, type LotCosts } from "./economic-order";
import { standardNormalLoss } from "./loss";
import { criticalRatio } from "./newsvendor";

export interface SteadyDemand {
  /** [u/time] */
  readonly rate: number;
  /** Standard deviation over one unit of time [u/√time]. */
  readonly deviation: number;
  /** [time] */
  readonly leadTime: number;
}

export interface ContinuousCosts extends LotCosts {
  /** Of one unit short for one unit of time [money/(u·time)]. */
  readonly shortageCost: number;
}

export interface ContinuousPolicy {
  readonly reorderPoint: number;
  readonly quantity: number;
}

/**
 * Expected cost of an (r, Q) policy, exact for normal lead-time demand with backorders.
 * @param costs of an order [money], of holding and of shortage [money/(u·time)]
 * @param demand rate [u/time], deviation [u/√time], lead time [time]
 * @param policy reorder point and quantity [u]
 * @returns cost [money/time]
 * @source Snyder and Shen 2019, example 5.1: (Kλ + ∫ g(y) dy from r to r + Q) / Q, g(y) = h n̄(y) + p n(y)
 * @example continuousReviewCost({ orderCost: 8, holdingCost: 0.225, shortageCost: 7.5 }, { rate: 1300, deviation: 150, leadTime: 1 / 12 }, { reorderPoint: 126.8, quantity: 328.5 }) // => 78.07116250928294
 */
export function continuousReviewCost({ orderCost, holdingCost, shortageCost }: ContinuousCosts, demand: SteadyDemand, { reorderPoint, quantity }: ContinuousPolicy): number {
  const leadTimeDemand = during(demand);
  const [low, high] = [reorderPoint, reorderPoint + quantity];
  const short = secondLoss(low, leadTimeDemand) - secondLoss(high, leadTimeDemand);
  // What is left is x − μ + short, and x − μ integrates to the middle of the range less the mean.
  const left = quantity * ((low + high) / 2 - leadTimeDemand.mean) + short;
  return (orderCost * demand.rate + holdingCost * left + shortageCost * short) / quantity;
}

/**
 * The usual way to set both apart: the square-root quantity, and the level that the costs of holding and shortage call for.
 * @param costs of an order [money], of holding and of shortage [money/(u·time)]
 * @param demand rate [u/time], deviation [u/√time], lead time [time]
 * @returns reorder point and quantity [u]
 * @source Snyder and Shen 2019, example 5.5
 * @example squareRootPolicy({ orderCost: 8, holdingCost: 0.225, shortageCost: 7.5 }, { rate: 1300, deviation: 150, leadTime: 1 / 12 }).reorderPoint // => 190.3369965715624
 */
export const squareRootPolicy = (costs: ContinuousCosts, demand: SteadyDemand): ContinuousPolicy => ({
  reorderPoint: normalQuantile(criticalRatio({ holding: costs.holdingCost, shortage: costs.shortageCost }), during(demand)),
  quantity: economicOrderQuantity(costs, demand.rate).quantity,
});

const during = ({ rate, deviation, leadTime }: SteadyDemand): Normal => ({ mean: rate * leadTime, deviation: deviation * Math.sqrt(leadTime) });

/** ∫ E(X − y)⁺ dy from the level up. */
const secondLoss = (level: number, { mean, deviation }: Normal): number => deviation ** 2 * standardNormalLoss((level - mean) / deviation).second;
