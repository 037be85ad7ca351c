/** How much to order at a time when demand is steady: the square-root rule and its variants with backorders and by period. */

export interface LotCosts {
  /** Of placing and receiving one order [money]. */
  readonly orderCost: number;
  /** Of keeping one unit for one unit of time [money/(u·time)]. */
  readonly holdingCost: number;
}

/**
 * @param costs of an order [money] and of holding [money/(u·time)], above 0
 * @param demand [u/time]
 * @returns quantity [u] and cost of ordering and holding [money/time]
 * @source Snyder and Shen 2019 (place from memory): Q = √(2KD/h), cost √(2KDh)
 * @example economicOrderQuantity({ orderCost: 8, holdingCost: 0.225 }, 1300).quantity // => 304.0467800264368
 */
export const economicOrderQuantity = ({ orderCost, holdingCost }: LotCosts, demand: number): { readonly quantity: number; readonly cost: number } => ({
  quantity: Math.sqrt((2 * orderCost * demand) / holdingCost),
  cost: Math.sqrt(2 * orderCost * demand * holdingCost),
});

/**
 * The square-root rule when customers wait at a price.
 * @param costs of an order [money] and of holding [money/(u·time)], above 0
 * @param shortageCost of one unit short for one unit of time [money/(u·time)], above 0
 * @param demand [u/time]
 * @returns quantity [u], share of demand that waits [-], cost [money/time]
 * @source Snyder and Shen 2019, example 3.8
 * @example economicOrderWithBackorders({ orderCost: 8, holdingCost: 0.225 }, 5, 1300).quantity // => 310.81255515896464
 */
export function economicOrderWithBackorders({ orderCost, holdingCost }: LotCosts, shortageCost: number, demand: number): { readonly quantity: number; readonly waiting: number; readonly cost: number } {
  const waiting = holdingCost / (holdingCost + shortageCost);
  return {
    quantity: Math.sqrt((2 * orderCost * demand) / (holdingCost * (1 - waiting))),
    waiting,
    cost: Math.sqrt(2 * orderCost * demand * holdingCost * (1 - waiting)),
  };
}

export interface PlannedLot {
  readonly period: number;
  readonly quantity: number;
}

/**
 * Least cost of meeting a known demand period by period, nothing short. Work grows with the square of the periods.
 * @param costs of an order [money] and of holding one unit over the end of one period [money/u]
 * @param demand in each period [u]
 * @returns cost [money] and lots; period 0 is the first
 * @source Wagner and Whitin 1958, Management Science 5(1) (from memory); Snyder and Shen 2019, example 3.9
 * @example planLots({ orderCost: 500, holdingCost: 2 }, [90, 120, 80, 70]).cost // => 1380
 */
export function planLots(costs: LotCosts, demand: readonly number[]): { readonly cost: number; readonly lots: readonly PlannedLot[] } {
  const best = [{ cost: 0, from: 0 }];
  for (let end = 1; end <= demand.length; end += 1) best.push(cheapestLastLot(costs, demand, best, end));
  const lots: PlannedLot[] = [];
  for (let end = demand.length; end > 0; end = best[end]?.from ?? 0) lots.unshift(lotBetween(demand, best[end]?.from ?? 0, end));
  return { cost: best.at(-1)?.cost ?? 0, lots: lots.filter(({ quantity }) => quantity > 0) };
}

/** The last lot covers demand from some period up to, not including, `end`; it is tried from every one. */
function cheapestLastLot({ orderCost, holdingCost }: LotCosts, demand: readonly number[], best: readonly { readonly cost: number }[], end: number): { cost: number; from: number } {
  let [cheapest, quantity, holding] = [{ cost: Infinity, from: 0 }, 0, 0];
  for (let from = end - 1; from >= 0; from -= 1) {
    holding += holdingCost * quantity;
    quantity += demand[from] ?? 0;
    const cost = (best[from]?.cost ?? 0) + (quantity > 0 ? orderCost : 0) + holding;
    if (cost < cheapest.cost) cheapest = { cost, from };
  }
  return cheapest;
}

const lotBetween = (demand: readonly number[], from: number, end: number): PlannedLot => ({ period: from, quantity: demand.slice(from, end).reduce((sum, one) => sum + one, 0) });
