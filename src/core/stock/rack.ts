/** The whole rack, by material and size: what is there, what will be asked of it, what to order today. Lengths in metres, orders in whole pieces. */
import { nameKey, type PriceBreak } from "../catalogue";
import { groupBy } from "../group-by";
import type { Metres } from "../quantity";
import type { Settings } from "../settings";
import type { TubeUsed } from "../stock-history";
import { nominalTube, tubeKey, type Material, type TubeStock } from "../tube";
import { planOpenQuotes, type QuotePlan } from "./quote-plan";
import { DAYS_PER_WEEK } from "./date-spread";
import { forecast, type Forecast } from "./forecast";
import { pipelineByWeek, pipelineDemand, type MeanAndVariance } from "./pipeline";
import { projectedStock, stockOutDay, type StockOutlook } from "./projection";
import { stockPolicy } from "./stock-policy";
import type { TubeNeed } from "./tube-needs";
import { reorderTube, type TubeReorder } from "./tube-reorder";
import { recordedWeeks, weeklyUsage, type DatedQuantity, type RecordedWeeks } from "./usage-history";

export interface RackFacts {
  readonly rack: readonly TubeStock[];
  readonly used: readonly TubeUsed[];
  /** Of open quotes. */
  readonly needs: readonly TubeNeed[];
  readonly priceBreaks: readonly PriceBreak[];
  readonly settings: Settings;
  /** The last day that counts as past [day]. */
  readonly today: number;
}

/** Tube of one material, size and wall, in whatever lengths it is bought. */
export interface RackGroup {
  readonly material: Material;
  readonly outsideDiameter: Metres;
  readonly wall: Metres;
  /** One for each row of the rack that is bought. */
  readonly lines: readonly TubeReorder[];
  /** By week, oldest first [m]. */
  readonly usage: readonly number[];
  readonly forecast: Forecast;
  /** By week from today on [m, m²]. */
  readonly pipeline: readonly MeanAndVariance[];
  /** At the end of each week if nothing more is ordered [m]. */
  readonly outlook: readonly StockBand[];
  readonly onHand: number;
  readonly onOrder: number;
  /** What is on hand and on order over mean demand [week]; undefined without demand. */
  readonly weeksOfCover: number | undefined;
  /** First day on which mean demand is not met if nothing more is ordered [day]. */
  readonly stockOut: number | undefined;
  /** How the open quotes would be cut; undefined when none needs this tube. */
  readonly plan: QuotePlan | undefined;
}

/** Mean stock, and where it lies eight times in ten, below 0 for what is short. */
export interface StockBand {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

/** A quarter of a year. */
export const WEEKS_AHEAD = 13;

/** Standard normal: a tenth lies below −1.2816. */
const TENTH = 1.2815515655446004;

/**
 * @param facts rack [m, piece], usage and needs [m, day], today [day]
 * @returns groups in order of material, size and wall; offcuts are in the cut plan only, as they are not bought
 * @source tube-reorder.ts for each row of the rack. What open quotes need is shared among the rows as their cut plan would cut it.
 *   Spread of stock: variances of usage by week and of the pipeline add up (independent); its edges as of a normal distribution
 */
export function rackGroups(facts: RackFacts): RackGroup[] {
  const earliest = facts.used.reduce((least, { date }) => Math.min(least, date), Infinity);
  const recorded = facts.used.length > 0 ? recordedWeeks(earliest, facts.today) : { today: facts.today, weeks: 0 };
  const usedBy = groupBy(facts.used, ({ tube }) => nameKey(tube));
  const needsBy = groupBy(facts.settings.pipelineUse === "added" ? facts.needs : [], ({ tube }) => nameKey(tube));
  const reading = { facts, recorded, usedBy, needsBy };
  return [...groupBy(facts.rack, groupKey).values()].flatMap((rows) => (rows.some(isBought) ? [groupOf(reading, rows)] : [])).sort(inOrder);
}

const groupKey = ({ material, outsideDiameter, wall }: TubeStock): string => `${material}|${tubeKey(outsideDiameter)}|${Math.round(wall * 1e6)}`;
const isBought = ({ form }: TubeStock): boolean => form !== "offcut";
const inOrder = (a: RackGroup, b: RackGroup): number => (a.material < b.material ? -1 : a.material > b.material ? 1 : a.outsideDiameter - b.outsideDiameter || a.wall - b.wall);

interface RackReading {
  readonly facts: RackFacts;
  readonly recorded: RecordedWeeks;
  readonly usedBy: ReadonlyMap<string, readonly TubeUsed[]>;
  readonly needsBy: ReadonlyMap<string, readonly TubeNeed[]>;
}

function groupOf({ facts, recorded, usedBy, needsBy }: RackReading, rows: readonly TubeStock[]): RackGroup {
  const { today, settings } = facts;
  const bought = rows.filter(isBought);
  const usedOf = (row: TubeStock): DatedQuantity[] => (usedBy.get(nameKey(row.name)) ?? []).map(({ date, length }) => ({ date, quantity: length }));
  const needs = rows.flatMap((row) => needsBy.get(nameKey(row.name)) ?? []);
  const plan = planOpenQuotes(needs, rows, settings);
  const lines = bought.map((row) => reorderTube(row, { used: usedOf(row), recorded, pipeline: shareOf(needs, row, { plan, facts, count: bought.length }) }, breaksOf(facts, row), stockPolicy(settings)));
  const usage = weeklyUsage(rows.flatMap(usedOf), recorded);
  // Of a size in one length the history is that length's, and so is the forecast.
  const predicted = (rows.length === 1 ? lines[0]?.forecast : undefined) ?? forecast(usage);
  const pipeline = pipelineByWeek(needs, today + 1, WEEKS_AHEAD);
  const stock = stockOf(bought, today, [...pipeline.map(({ mean }) => predicted.rate + mean), predicted.rate]);
  const weekly = predicted.rate + pipeline.reduce((sum, { mean }) => sum + mean, 0) / WEEKS_AHEAD;
  const onOrder = stock.arrivals.reduce((sum, { quantity }) => sum + quantity, 0);
  const [first] = rows as [TubeStock];
  return {
    material: first.material, outsideDiameter: nominalTube(first.outsideDiameter), wall: first.wall, lines, usage, forecast: predicted, pipeline, plan,
    outlook: bandOf(stock, needs, predicted), onHand: stock.onHand, onOrder, weeksOfCover: weekly > 0 ? (stock.onHand + onOrder) / weekly : undefined, stockOut: stockOutDay(stock),
  };
}

const breaksOf = ({ priceBreaks }: RackFacts, { name }: TubeStock): PriceBreak[] => priceBreaks.filter(({ tube }) => nameKey(tube) === nameKey(name));

/** What of the open quotes falls to one row over its lead time and review; parts of the same quotes come or stay away together. */
function shareOf(needs: readonly TubeNeed[], { name, leadTimeWeeks = 0 }: TubeStock, { plan, facts, count }: { plan: QuotePlan | undefined; facts: RackFacts; count: number }): MeanAndVariance | undefined {
  if (needs.length === 0) return undefined;
  const from = facts.today + 1;
  const { mean, variance } = pipelineDemand(needs, { from, opens: from, to: from + Math.ceil((leadTimeWeeks + facts.settings.stockReview) * DAYS_PER_WEEK) });
  const share = plan && plan.shares.size > 0 ? (plan.shares.get(name) ?? 0) : 1 / count;
  return { mean: mean * share, variance: variance * share ** 2 };
}

function stockOf(rows: readonly TubeStock[], today: number, weekly: readonly number[]): StockOutlook {
  const tomorrow = today + 1;
  return {
    today: tomorrow, weekly,
    onHand: rows.reduce((sum, { onHand = 0, length = 0 }) => sum + onHand * length, 0),
    arrivals: rows.map(({ onOrder = 0, length = 0, due, leadTimeWeeks = 0 }) => ({ day: due ?? tomorrow + Math.ceil(leadTimeWeeks * DAYS_PER_WEEK), quantity: onOrder * length })),
  };
}

function bandOf(stock: StockOutlook, needs: readonly TubeNeed[], { deviation = 0 }: Forecast): StockBand[] {
  return projectedStock(stock, WEEKS_AHEAD).map((mean, week) => {
    const quotes = pipelineDemand(needs, { from: stock.today, opens: stock.today, to: stock.today + (week + 1) * DAYS_PER_WEEK });
    const edge = TENTH * Math.sqrt((week + 1) * deviation ** 2 + quotes.variance);
    return { mean, low: mean - edge, high: mean + edge };
  });
}
