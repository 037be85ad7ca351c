/** How a shop buys, as the stock mathematics reads it. */
import type { StockSettings } from "../stock-settings";
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

export const stockPolicy = ({ stockReview, serviceMeasure, serviceShare, holdingRate, priceBreakKind }: StockSettings): StockPolicy => ({
  review: stockReview, service: { measure: serviceMeasure, share: serviceShare }, holdingRate, breaks: priceBreakKind,
});
