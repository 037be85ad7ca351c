/** What to buy of one thing: reorder point, order quantity, what to order today, and what the policy costs. */
import { sayShare } from "../say-quantity";
import { certainOrGamma, gridFor, type DemandPlan } from "./demand-grid";
import { demandDuring, demandMoments, type DemandLaw } from "./demand-law";
import { convolve } from "./lattice";
import type { MeanAndVariance } from "./pipeline";
import { bestLot, orderPrice, roundedUp, type Offer, type OrderSizes } from "./price-breaks";
import { replenishment, type CycleDemand, type PolicyFigures, type Service } from "./replenishment";

/** A mean Gregorian year of 365.2425 days. */
export const WEEKS_PER_YEAR = 365.2425 / 7;

export interface ReorderProblem {
  /** Of past usage, by week. */
  readonly usage: DemandLaw;
  /** From open quotes over lead time and review, on top of usage [u, u²]. */
  readonly pipeline?: MeanAndVariance | undefined;
  /** Weeks from order to arrival. */
  readonly leadTime: number;
  /** Weeks from one look at the rack to the next, above 0. */
  readonly review: number;
  readonly service: Service;
  /** Prices by piece. */
  readonly offer: Offer;
  /** Pieces. */
  readonly sizes: OrderSizes;
  /** Cost of holding for a year as a share of what was paid [1/year]. */
  readonly holdingRate: number;
  /** Length of a piece [u]. */
  readonly piece: number;
  /** [u] */
  readonly onHand: number;
  /** [u] */
  readonly onOrder: number;
}

export interface ReorderAdvice {
  /** Order when stock on hand and on order is at or below it [u]. */
  readonly reorderPoint: number;
  /** What the reorder point holds beyond mean demand over lead time and review [u]; below 0 when a large lot alone gives the service. */
  readonly safetyStock: number;
  /** Pieces of each lot; several lots are ordered at once when one does not lift stock above the reorder point. */
  readonly lot: number;
  readonly orderToday: number;
  /** What is ordered today, with the cost of the order; 0 for no order. */
  readonly orderCost: number;
  /** Mean and variance over lead time and review, pipeline included [u, u²]. */
  readonly demand: MeanAndVariance;
  /** Weeks that stock on hand and on order lasts at the mean rate; undefined without demand. */
  readonly weeksOfCover: number | undefined;
  readonly figures: PolicyFigures | undefined;
  /** Buying, ordering and holding in a year [money]; undefined without steady demand. */
  readonly yearlyCost: number | undefined;
}

/**
 * @param problem demand by week [u], times [week], service [-], prices [money/piece], stock [u]
 * @returns advice; without any demand nothing is ordered
 * @source replenishment.ts for service and stock; price-breaks.ts for the lot
 */
export function reorder(problem: ReorderProblem): ReorderAdvice {
  const { usage, pipeline, leadTime, review, piece, onHand, onOrder } = problem;
  const horizon = leadTime + review;
  const steady = demandMoments(usage, horizon);
  const demand = { mean: steady.mean + (pipeline?.mean ?? 0), variance: steady.variance + (pipeline?.variance ?? 0) };
  const cover = demand.mean > 0 ? ((onHand + onOrder) * horizon) / demand.mean : undefined;
  if (demand.mean <= 0) return { reorderPoint: 0, safetyStock: 0, lot: 0, orderToday: 0, orderCost: 0, demand, weeksOfCover: cover, figures: undefined, yearlyCost: undefined };
  const lot = lotOf(problem, demand.mean / horizon);
  const { point, figures } = reorderPoint(problem, demand, lot * piece);
  const orderToday = lotsToday(onHand + onOrder, point, lot * piece) * lot;
  return {
    reorderPoint: point, safetyStock: point - demand.mean, lot, orderToday, demand, weeksOfCover: cover, figures,
    orderCost: orderToday > 0 ? problem.offer.orderCost + orderPrice(problem.offer, orderToday) : 0,
    yearlyCost: policyCost(problem, steady.mean / horizon, lot, figures),
  };
}

/** Lots that lift the position above the reorder point; none while it stands above. */
export const lotsToday = (position: number, point: number, lot: number): number => (position > point + ROUNDING * lot ? 0 : Math.floor((point - position) / lot + ROUNDING) + 1);

const ROUNDING = 1e-9;

/** Pieces. Steady demand decides; with demand from quotes alone, it is taken as if it went on. */
function lotOf({ usage, offer, holdingRate, sizes, piece }: ReorderProblem, weekly: number): number {
  const rate = demandMoments(usage, 1).mean || weekly;
  const multiple = Math.max(1, Math.ceil(sizes.multiple));
  const least = roundedUp(Math.max(1, sizes.least), multiple);
  return bestLot(offer, { holdingRate, demand: (rate * WEEKS_PER_YEAR) / piece }, { least, multiple })?.quantity ?? least;
}

/** The grid grows until it is long enough for the service asked. */
function reorderPoint(problem: ReorderProblem, demand: MeanAndVariance, lot: number): { point: number; figures: PolicyFigures } {
  const plan: DemandPlan = { demand, law: problem.usage, lot };
  for (let reach = 1; ; reach *= 2) {
    const grid = gridFor(plan, reach);
    const policy = replenishment(cycleDemand(problem, grid), Math.max(1, Math.round(lot / grid.step)));
    const point = policy.reorderPointFor(problem.service);
    if (point !== undefined) return { point: point * grid.step, figures: policy.figuresAt(point) };
    if (reach > LONGEST_REACH) throw new RangeError(`no reorder point reaches a service of ${sayShare(problem.service.share)}`);
  }
}

const LONGEST_REACH = 64;

/** The pipeline falls evenly over lead time and review. */
function cycleDemand({ usage, pipeline, leadTime, review }: ReorderProblem, grid: { step: number; cells: number }): CycleDemand {
  const during = (weeks: number): Float64Array => {
    const share = weeks / (leadTime + review);
    const steady = demandDuring(usage, weeks, grid);
    if (pipeline === undefined || pipeline.mean <= 0) return steady;
    return convolve(steady, certainOrGamma({ mean: pipeline.mean * share, variance: pipeline.variance * share }, grid), grid.cells);
  };
  return { ...grid, lead: during(leadTime), review: during(review) };
}

/** Buying and ordering by the lot's price, holding by the stock the policy keeps. */
function policyCost({ offer, holdingRate, piece, review }: ReorderProblem, weekly: number, lot: number, figures: PolicyFigures): number | undefined {
  if (weekly <= 0) return undefined;
  const price = orderPrice(offer, lot) / lot;
  const bought = (weekly * WEEKS_PER_YEAR * price) / piece;
  const orders = (WEEKS_PER_YEAR / review / figures.reviewsPerOrder) * offer.orderCost;
  return bought + orders + (holdingRate * price * figures.onHand) / piece;
}
