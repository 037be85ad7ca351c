/** How a shop buys: what it may change, each with its default and where that comes from. */
import type { BreakKind } from "./price-breaks";
import type { Service } from "./replenishment";

export interface StockPolicy {
  /** Weeks from one look at the rack to the next. */
  readonly review: number;
  readonly service: Service;
  /** Cost of holding for a year as a share of what was paid [1/year]. */
  readonly holdingRate: number;
  readonly breaks: BreakKind;
}

/** A look a week, nineteen twentieths of demand met at once, a quarter of the price a year for money, space and loss: common practice, no source. */
export const defaultStockPolicy: StockPolicy = { review: 1, service: { measure: "fill", share: 0.95 }, holdingRate: 0.25, breaks: "all-units" };
