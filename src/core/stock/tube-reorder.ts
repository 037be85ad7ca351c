/** What to buy of one tube of the rack, from its past usage and the quotes that may ask for it. Quantities are metres of tube; orders are whole pieces. */
import type { PriceBreak } from "../catalogue";
import type { Metres } from "../quantity";
import type { TubeStock } from "../tube";
import { DAYS_PER_WEEK } from "./date-spread";
import { jobsLaw, type DemandLaw } from "./demand-law";
import { forecast, LEAST_DEMANDS, type Forecast } from "./forecast";
import type { MeanAndVariance } from "./pipeline";
import type { Band, Offer } from "./price-breaks";
import { stockOutDay } from "./projection";
import { reorder, type ReorderAdvice } from "./reorder";
import type { StockPolicy } from "./stock-policy";
import { dailyJobs, weeklyUsage, type DatedQuantity, type RecordedWeeks } from "./usage-history";

export interface TubeDemand {
  /** Of this tube [day, m]. */
  readonly used: readonly DatedQuantity[];
  /** Of the shop, whatever the tube. */
  readonly recorded: RecordedWeeks;
  /** Over lead time and review, on top of usage [m, m²]. */
  readonly pipeline?: MeanAndVariance | undefined;
}

export interface TubeReorder {
  readonly tube: TubeStock;
  readonly forecast: Forecast;
  /** Undefined when the row lacks what it takes: `problems` says what. */
  readonly advice: ReorderAdvice | undefined;
  /** Whether costs hold the tube itself. */
  readonly priced: boolean;
  /** First day on which mean demand is not met if nothing more is ordered [day]. */
  readonly stockOut: number | undefined;
  readonly problems: readonly string[];
  readonly assumed: readonly string[];
}

/**
 * @param tube lengths [m], price [money/piece], stock [piece], lead time [week]
 * @param demand dated usage [m] and quotes [m, m²]
 * @param breaks prices by quantity of this tube [money/piece]
 * @param policy review [week], service [-], holding rate [1/year]
 * @returns forecast [m/week], advice [m, piece, money] and the day of stock-out [day]
 * @source forecast.ts for the rate; jobs drawn from past days (demand-law.ts); reorder.ts for the rest
 */
export function reorderTube(tube: TubeStock, demand: TubeDemand, breaks: readonly PriceBreak[], policy: StockPolicy): TubeReorder {
  const predicted = forecast(weeklyUsage(demand.used, demand.recorded));
  const jobs = dailyJobs(demand.used, demand.recorded);
  const [problems, priced] = [problemsOf(tube), isPriced(tube, breaks)];
  const assumed = [...assumedOf(tube, breaks), ...(jobs.length > 0 && jobs.length < LEAST_DEMANDS ? [`only ${jobs.length} ${jobs.length === 1 ? "day" : "days"} of usage to draw job sizes from`] : []), ...predicted.remarks];
  if (!isBuyable(tube)) return { tube, forecast: predicted, advice: undefined, priced, stockOut: undefined, problems, assumed };
  const usage: DemandLaw = jobs.length > 0 ? jobsLaw(jobs, predicted.rate) : { kind: "gamma", mean: 0, variance: 0 };
  const advice = reorder({
    usage, pipeline: demand.pipeline, leadTime: tube.leadTimeWeeks, review: policy.review, service: policy.service, offer: offerOf(tube, breaks, policy), holdingRate: policy.holdingRate,
    sizes: { least: tube.leastOrder ?? 1, multiple: tube.orderMultiple ?? 1 }, piece: tube.length, onHand: (tube.onHand ?? 0) * tube.length, onOrder: (tube.onOrder ?? 0) * tube.length,
  });
  return { tube, forecast: predicted, advice, priced, stockOut: stockOutOf(tube, demand, predicted.rate, policy), problems, assumed };
}

/** Whether the tube has any price to reckon with. */
export const isPriced = ({ price }: TubeStock, breaks: readonly PriceBreak[]): boolean => price !== undefined || breaks.length > 0;

function problemsOf({ form, length, leadTimeWeeks }: TubeStock): string[] {
  if (form === "offcut") return ["offcuts are not bought"];
  const blanks = Object.entries({ Length: length, "Lead time": leadTimeWeeks }).filter(([, value]) => value === undefined).map(([heading]) => heading);
  return blanks.map((heading) => `${heading} is blank`);
}

/** A row that says what it takes to order from it. */
type BuyableTube = TubeStock & { readonly length: Metres; readonly leadTimeWeeks: number };
const isBuyable = (tube: TubeStock): tube is BuyableTube => problemsOf(tube).length === 0;

function assumedOf(tube: TubeStock, breaks: readonly PriceBreak[]): string[] {
  return [
    ...(tube.onHand === undefined ? ["On hand is blank or 0 and taken as none"] : []),
    ...(tube.orderCost === undefined ? ["Order cost is blank and taken as nothing"] : []),
    ...(tube.onOrder !== undefined && tube.due === undefined ? ["Due is blank: what is on order is taken to arrive after a whole lead time"] : []),
    ...(isPriced(tube, breaks) ? [] : ["Price is blank: the lot is the least order, and costs leave the tube out"]),
  ];
}

/** The tube's own price holds up to the first break. */
function offerOf({ price, orderCost }: TubeStock, breaks: readonly PriceBreak[], { breaks: kind }: StockPolicy): Offer {
  const steps = [...breaks].sort((a, b) => a.fromQuantity - b.fromQuantity).map(({ fromQuantity, price: from }): Band => ({ from: fromQuantity, price: from }));
  const first = steps[0];
  const bands = first !== undefined && first.from <= 1 ? [{ from: 0, price: first.price }, ...steps.slice(1)] : [{ from: 0, price: price ?? first?.price ?? 0 }, ...steps];
  return { kind, bands, orderCost: orderCost ?? 0 };
}

/** The pipeline falls evenly over the weeks of lead time and review; after them usage goes on alone. */
function stockOutOf(tube: BuyableTube, { recorded, pipeline }: TubeDemand, rate: number, { review }: StockPolicy): number | undefined {
  const { length, leadTimeWeeks, onHand = 0, onOrder = 0, due } = tube;
  const weeks = Math.ceil(leadTimeWeeks + review);
  const tomorrow = recorded.today + 1;
  return stockOutDay({
    today: tomorrow, onHand: onHand * length, arrivals: [{ day: due ?? tomorrow + Math.ceil(leadTimeWeeks * DAYS_PER_WEEK), quantity: onOrder * length }],
    weekly: [...Array.from({ length: weeks }, () => rate + (pipeline?.mean ?? 0) / weeks), rate],
  });
}
