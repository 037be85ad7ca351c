/** What to cut from what: checks a cutting job, has it solved in whole numbers and says the plan in lengths and money again. */
import { groupBy } from "../group-by";
import { metres, type Metres } from "../quantity";
import { budgetOf } from "./budget";
import type { CuttingProblem, PatternUse } from "./problem";
import { solveCutting } from "./solve";
import { downToWhole, lengthUnitFor, moneyScaleFor, upToWhole, type LengthUnit } from "./whole-units";

export interface PieceToCut {
  readonly name: string;
  readonly length: Metres;
  readonly count: number;
}

export interface StockToCut {
  readonly name: string;
  readonly length: Metres;
  /** Undefined when not known; when no stock has one, the plan that uses least length is looked for. */
  readonly price?: number | undefined;
  /** Undefined where any number can be had. */
  readonly count?: number | undefined;
}

export interface CuttingJob {
  readonly pieces: readonly PieceToCut[];
  readonly stocks: readonly StockToCut[];
  /** Width of the saw cut between two pieces. */
  readonly kerf: Metres;
  /** Lost at the ends of each length of stock, both ends and their cuts together. */
  readonly endTrim: Metres;
}

export interface CutPlan {
  /** The most used first. */
  readonly patterns: readonly PlannedPattern[];
  /** In money, or in metres of stock where no stock has a price. */
  readonly cost: number;
  /** No plan for the pieces planned here costs less. */
  readonly lowerBound: number;
  readonly proved: boolean;
  /** How far the cost is above the bound, as a share of the bound; 0 when proved. */
  readonly gap: number;
  readonly objective: "price" | "length";
  /** Pieces and stock that could not be used, each with its reason. */
  readonly problems: readonly CutProblem[];
  /** True when lengths had to be rounded to the safe side by up to 0.1 mm. */
  readonly rounded: boolean;
}

export interface PlannedPattern {
  readonly stock: StockToCut;
  readonly times: number;
  /** In sawing order, the longest first. */
  readonly cuts: readonly PlannedCut[];
  /** Pieces and the saw cuts between them and after them. */
  readonly used: Metres;
  /** What stays over of each length, end trim off. */
  readonly left: Metres;
  /** Of all the times together. */
  readonly cost: number;
}

export interface PlannedCut {
  readonly length: Metres;
  readonly count: number;
  /** Every piece of this length. */
  readonly names: readonly string[];
}

export interface CutProblem {
  readonly item: string;
  readonly says: string;
}

export interface Effort {
  /** States visited at most; the default takes about half a second on a desktop machine. */
  readonly mostWork?: number;
  /** Asked often; true ends the search with the best plan so far. */
  readonly shouldStop?: () => boolean;
}

const USUAL_WORK = 12_000_000;

/**
 * Plans the cuts of a job at least cost, as far as its effort goes.
 * What cannot be cut is named with its reason, and everything else is planned. The same job and work give the same plan.
 */
export function planCuts(job: CuttingJob, { mostWork = USUAL_WORK, shouldStop }: Effort = {}): CutPlan {
  const problems: CutProblem[] = [];
  const stocks = usable(job.stocks, problems, stockFault(job));
  const longest = stocks.reduce((most, { length, count }) => (count === 0 ? most : Math.max(most, length - job.endTrim)), 0);
  const pieces = usable(job.pieces, problems, pieceFault(longest));
  const whole = inWholeUnits({ ...job, pieces, stocks });
  const solved = solveCutting(whole.problem, budgetOf(mostWork, shouldStop));
  solved.solution.missing.forEach((count, group) => {
    if (count > 0) problems.push({ item: sayNames(whole.groups[group] ?? []), says: `${count} not planned: no stock is left for ${count === 1 ? "it" : "them"}` });
  });
  const { cost, lowerBound } = solved;
  return {
    patterns: solved.solution.uses.map((use) => plannedPattern({ ...job, stocks }, whole, use)).sort((a, b) => b.times - a.times),
    cost: cost / whole.moneyScale,
    lowerBound: lowerBound / whole.moneyScale,
    proved: cost === lowerBound,
    gap: cost === lowerBound ? 0 : cost / lowerBound - 1,
    objective: whole.objective,
    problems,
    rounded: !whole.unit.exact,
  };
}

/** Those without a fault; the faults of the others are noted. */
function usable<T extends { readonly name: string }>(items: readonly T[], problems: CutProblem[], fault: (item: T) => string | undefined): T[] {
  return items.filter((item) => {
    const says = fault(item);
    if (says !== undefined) problems.push({ item: item.name, says });
    return says === undefined;
  });
}

/** Beyond these a unit or a decimal mark is wrong, and sums would no longer be exact. */
const [LONGEST_STOCK, DEAREST_STOCK, MOST_PIECES] = [metres(10_000), 1_000_000_000, 1_000_000];

const pieceFault = (longest: number) => ({ length, count }: PieceToCut): string | undefined => {
  if (!Number.isFinite(length)) return "its length is not a number";
  if (length <= 0) return "its length is not above 0";
  if (!Number.isSafeInteger(count) || count < 1) return "its count is not a whole number above 0";
  if (count > MOST_PIECES) return "its count is above a million";
  return length > longest + 1e-7 ? "longer than any stock, end trim off" : undefined;
};

const stockFault = ({ stocks, endTrim }: CuttingJob) => {
  const priced = stocks.some(({ price }) => price !== undefined);
  return ({ length, price, count }: StockToCut): string | undefined => {
    if (!Number.isFinite(length)) return "its length is not a number";
    if (length > LONGEST_STOCK) return "its length is above 10 km";
    if (length <= endTrim) return "its length is not above the end trim";
    if (count !== undefined && (!Number.isSafeInteger(count) || count < 0)) return "its count is not a whole number";
    if (price === undefined) return priced ? "it has no price, and other stock has: left out" : undefined;
    if (!Number.isFinite(price) || price < 0) return "its price is not a number from 0 up";
    if (price > DEAREST_STOCK) return "its price is above a thousand million";
    return price === 0 && count === undefined ? "it costs nothing and has no count: left out" : undefined;
  };
};

interface WholeJob {
  readonly problem: CuttingProblem;
  /** Pieces of one length are one piece to the search. */
  readonly groups: readonly (readonly PieceToCut[])[];
  readonly unit: LengthUnit;
  readonly moneyScale: number;
  readonly objective: "price" | "length";
}

function inWholeUnits({ pieces, stocks, kerf, endTrim }: CuttingJob): WholeJob {
  const needs = (piece: PieceToCut): number => piece.length + kerf;
  const has = (stock: StockToCut): number => stock.length - endTrim + kerf;
  const unit = lengthUnitFor([...pieces.map(needs), ...stocks.map(has)]);
  const groups = [...groupBy(pieces, (piece) => String(upToWhole(needs(piece), unit))).values()];
  const prices = stocks.flatMap(({ price }) => price ?? []);
  const objective = prices.length > 0 ? "price" : "length";
  const lengthCost = lengthUnitFor(stocks.map(({ length }) => length));
  const moneyScale = objective === "price" ? moneyScaleFor(prices) : 1 / lengthCost.size;
  const problem = {
    pieces: groups.map((group) => ({ length: upToWhole(needs(group[0] as PieceToCut), unit), count: group.reduce((sum, { count }) => sum + count, 0) })),
    stocks: stocks.map((stock) => ({
      length: downToWhole(has(stock), unit),
      cost: stock.price === undefined ? upToWhole(stock.length, lengthCost) : Math.round(stock.price * moneyScale),
      count: stock.count ?? Infinity,
    })),
  };
  return { problem, groups, unit, moneyScale, objective };
}

function plannedPattern({ stocks, kerf, endTrim }: CuttingJob, { problem, groups, moneyScale }: WholeJob, { pattern, times }: PatternUse): PlannedPattern {
  const stock = stocks[pattern.stock] as StockToCut;
  const cuts = groups
    .map((group, index) => ({ length: (group[0] as PieceToCut).length, count: pattern.counts[index] ?? 0, names: [...new Set(group.map(({ name }) => name))] }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.length - a.length);
  const room = stock.length - endTrim;
  const needed = cuts.reduce((sum, { length, count }) => sum + count * (length + kerf), 0);
  // A piece that ends where the stock ends needs no cut after it.
  const used = metres(Math.min(room, needed));
  return { stock, times, cuts, used, left: metres(room - used), cost: ((problem.stocks[pattern.stock]?.cost ?? 0) * times) / moneyScale };
}

const sayNames = (group: readonly PieceToCut[]): string => [...new Set(group.map(({ name }) => name))].join(", ");
