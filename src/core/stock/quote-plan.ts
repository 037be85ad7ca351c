/** How the open quotes would be cut if all of them came in: first from what lies on the rack, then from the cheapest lengths to buy. */
import { planCuts, type CutPlan, type PlannedPattern, type StockToCut } from "../cutplan/cut-plan";
import { metres } from "../quantity";
import type { Settings } from "../settings";
import type { TubeStock } from "../tube";
import type { TubeNeed } from "./tube-needs";

export interface QuotePlan {
  readonly pieces: number;
  /** Whole lengths to buy beyond the rack, by the rack's name. */
  readonly buys: readonly { readonly tube: string; readonly count: number }[];
  /** Share of the length of tube taken that is of each row of the rack; together 1. Rows that are only offcuts have none. */
  readonly shares: ReadonlyMap<string, number>;
  readonly cost: number;
  readonly proved: boolean;
  /** What could not be planned, each with its reason. */
  readonly problems: CutPlan["problems"];
}

/** A small part of what CUTPLAN may work: the panel plans every size of the rack at once. */
const MOST_WORK = 400_000;

/**
 * @param needs pieces [m] of every open quote, each counted once whatever its chance
 * @param rows of the rack, all of one material, size and wall: lengths [m], prices [money/piece], on hand [piece]
 * @param settings saw kerf [m]
 * @returns undefined without pieces, or without a length to cut them from
 * @source cutplan/cut-plan.ts; tube on the rack costs nothing more
 */
export function planOpenQuotes(needs: readonly TubeNeed[], rows: readonly TubeStock[], { sawKerf }: Settings): QuotePlan | undefined {
  const pieces = needs.flatMap((need) => need.pieces);
  const toBuy = rows.flatMap(({ form, name, length, price }): StockToCut[] => (form === "offcut" || length === undefined ? [] : [{ name, length, price }]));
  if (pieces.length === 0 || toBuy.length === 0) return undefined;
  const isPriced = toBuy.some(({ price }) => price !== undefined);
  const there = rows.flatMap(({ name, length, onHand = 0 }): StockToCut[] => (length === undefined || onHand < 1 ? [] : [{ name, length, price: isPriced ? 0 : undefined, count: Math.floor(onHand) }]));
  const plan = planCuts({ pieces, stocks: [...toBuy, ...there], kerf: sawKerf, endTrim: metres(0) }, { mostWork: MOST_WORK });
  const bought = new Set(toBuy.map(({ name }) => name));
  const buys = plan.patterns.filter(({ stock }) => stock.count === undefined);
  return {
    pieces: pieces.reduce((sum, { count }) => sum + count, 0), cost: plan.cost, proved: plan.proved, problems: plan.problems,
    buys: [...sumBy(buys, ({ times }) => times)].map(([tube, count]) => ({ tube, count })),
    shares: sharesOf(plan.patterns.filter(({ stock }) => bought.has(stock.name))),
  };
}

function sharesOf(patterns: readonly PlannedPattern[]): ReadonlyMap<string, number> {
  const lengths = sumBy(patterns, ({ times, used }) => times * used);
  const whole = [...lengths.values()].reduce((sum, length) => sum + length, 0);
  return new Map([...lengths].map(([name, length]) => [name, length / whole]));
}

function sumBy(patterns: readonly PlannedPattern[], of: (pattern: PlannedPattern) => number): Map<string, number> {
  const sums = new Map<string, number>();
  for (const pattern of patterns) sums.set(pattern.stock.name, (sums.get(pattern.stock.name) ?? 0) + of(pattern));
  return sums;
}
