/** How much to order when the price depends on how much: all-units and incremental breaks, least order, multiples, whole pieces. */
import type { StockSettings } from "../stock-settings";

/** The price of a unit from a quantity on. */
export interface Band {
  readonly from: number;
  readonly price: number;
}

export type BreakKind = StockSettings["priceBreakKind"];

export interface Offer {
  readonly kind: BreakKind;
  /** By rising quantity, the first from 0. */
  readonly bands: readonly Band[];
  /** Of placing and receiving one order [money]. */
  readonly orderCost: number;
}

export interface Keeping {
  /** Cost of holding for a year as a share of what was paid [1/year]. */
  readonly holdingRate: number;
  /** [u/year] */
  readonly demand: number;
}

export interface Lot {
  /** [u] */
  readonly quantity: number;
  /** Number of the band, 0 for the first. */
  readonly band: number;
  /** Of buying, ordering and holding [money/year]. */
  readonly cost: number;
}

/** What an order may be: whole multiples of `multiple`, at least `least`. A multiple of 0 lets any quantity be ordered. */
export interface OrderSizes {
  readonly least: number;
  readonly multiple: number;
}

const ANY_QUANTITY: OrderSizes = { least: 0, multiple: 0 };

/**
 * What one order costs to buy.
 * @param offer bands [u], prices [money/u]
 * @param quantity ordered [u]
 * @returns the price of the whole order [money]
 * @source Snyder and Shen 2019, all-units and incremental discounts (place from memory)
 * @example orderPrice({ kind: "incremental", bands: [{ from: 0, price: 2 }, { from: 10, price: 1 }], orderCost: 0 }, 15) // => 25
 */
export function orderPrice({ kind, bands }: Offer, quantity: number): number {
  const band = bands.filter(({ from }) => from <= quantity).length - 1;
  return fixedPart(kind, bands, band) + (bands[band] as Band).price * quantity;
}

/**
 * The cost of a year when every order has one size.
 * @param offer prices [money/u] and cost of an order [money]
 * @param keeping holding rate [1/year] and demand [u/year]
 * @param quantity of each order [u], above 0
 * @returns buying, ordering and holding half an order on average [money/year]
 * @source Snyder and Shen 2019 (place from memory): (K + c(Q)) D / Q + i c(Q) / 2, c(Q) the price of an order
 * @example yearlyCost({ kind: "all-units", bands: [{ from: 0, price: 0.68 }], orderCost: 8 }, { holdingRate: 0.3, demand: 1300 }, 800) // => 978.6
 */
export function yearlyCost(offer: Offer, { holdingRate, demand }: Keeping, quantity: number): number {
  const price = orderPrice(offer, quantity);
  return ((offer.orderCost + price) * demand) / quantity + (holdingRate * price) / 2;
}

/**
 * The lot of least yearly cost. In each band the cost is convex, so its best whole multiple stands beside the band's square-root quantity.
 * @param offer bands [u], prices [money/u], cost of an order [money]; a price of 0 has no best lot but the largest break or least order
 * @param keeping holding rate [1/year], above 0, and demand [u/year], above 0
 * @param sizes least order and multiple [u]
 * @returns quantity [u], band [-], cost [money/year]; undefined when no quantity has a cost
 * @source Snyder and Shen 2019, examples 3.6 (all-units) and 3.7 (incremental)
 * @example bestLot({ kind: "all-units", bands: [{ from: 0, price: 0.75 }, { from: 400, price: 0.72 }, { from: 800, price: 0.68 }], orderCost: 8 }, { holdingRate: 0.3, demand: 1300 })?.quantity // => 800
 */
export function bestLot(offer: Offer, keeping: Keeping, sizes: OrderSizes = ANY_QUANTITY): Lot | undefined {
  const lots = offer.bands.flatMap((_, band) => candidates(offer, keeping, sizes, band).map((quantity): Lot => ({ quantity, band, cost: yearlyCost(offer, keeping, quantity) })));
  return lots.sort((a, b) => a.cost - b.cost || a.quantity - b.quantity)[0];
}

/** The whole multiples beside the band's square-root quantity, and the first and last of the band, for where that lies outside. */
function candidates({ kind, bands, orderCost }: Offer, { holdingRate, demand }: Keeping, { least, multiple }: OrderSizes, band: number): number[] {
  const { from: start, price } = bands[band] as Band;
  const [from, end] = [Math.max(start, least), bands[band + 1]?.from ?? Infinity];
  const rooted = Math.sqrt((2 * (orderCost + fixedPart(kind, bands, band)) * demand) / (holdingRate * price));
  const wanted = Math.max(from, Number.isFinite(rooted) ? rooted : from);
  const lastBeforeEnd = roundedUp(end, multiple) - multiple;
  const both = multiple > 0 ? [roundedDown(wanted, multiple), roundedUp(wanted, multiple), roundedUp(from, multiple), lastBeforeEnd] : [wanted];
  return [...new Set(both)].filter((quantity) => quantity > 0 && quantity >= from && quantity < end);
}

const ROUNDING = 1e-9;

/** The least whole multiple that is not below a quantity. */
export const roundedUp = (quantity: number, multiple: number): number => (multiple > 0 ? Math.ceil(quantity / multiple - ROUNDING) * multiple : quantity);
const roundedDown = (quantity: number, multiple: number): number => Math.floor(quantity / multiple + ROUNDING) * multiple;

/** What incremental breaks leave to pay above the band's own price: Σ cᵢ(bᵢ₊₁ − bᵢ) − cⱼbⱼ over the bands before it. */
function fixedPart(kind: BreakKind, bands: readonly Band[], band: number): number {
  if (kind === "all-units") return 0;
  const own = bands[band] as Band;
  const before = bands.slice(0, band).reduce((sum, { from, price }, index) => sum + price * ((bands[index + 1] as Band).from - from), 0);
  return before - own.price * own.from;
}
