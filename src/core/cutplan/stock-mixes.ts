/** Settles small jobs of several stocks: a plan that costs less takes no more of each stock than some mix of lengths that costs less, and the mixes are few. */
import { shareOf, type Budget } from "./budget";
import { dive, type Incumbent } from "./dive";
import { provenBound, roundedUp } from "./lower-bound";
import { costStep, withCounts, type CuttingProblem } from "./problem";
import { EXACT, relax, type PatternPool } from "./relaxation";
import { searchAll } from "./search-all";

/** More mixes than this are not gone through, nor more beginnings of mixes looked at to find them. */
const [MOST_MIXES, MOST_BEGUN] = [300, 5_000];
const WORK_OF_A_MIX = 300_000;
/** What the simplex of one small mix takes, in states of the search. */
const WORK_OF_A_SIMPLEX = 10_000;

export interface MixSearch {
  readonly pool: PatternPool;
  readonly budget: Budget;
  /** No plan costs less. */
  readonly lowerBound: number;
}

/**
 * Goes through the largest mixes of stock that cost less than the incumbent: shows of each that it does not hold the pieces, or finds the plan in it.
 * @returns a bound on every plan, not below the one given; the incumbent may be better afterwards
 */
export function settleByMixes(problem: CuttingProblem, incumbent: Incumbent, { pool, budget, lowerBound }: MixSearch): number {
  const step = costStep(problem);
  // A plan that leaves pieces out may be bettered by one that takes more stock: nothing is shown of it here.
  if (incumbent.solution.missing.some((count) => count > 0)) return lowerBound;
  for (;;) {
    const [before, mixes] = [incumbent.cost, largestMixes(problem, incumbent.cost - step, lowerBound)];
    if (!mixes) return lowerBound;
    let least = before;
    for (const mix of mixes) {
      if (budget.isOver()) return lowerBound;
      least = Math.min(least, boundOfMix(problem, mix, incumbent, { pool, budget: shareOf(budget, WORK_OF_A_MIX), lowerBound }));
      if (incumbent.cost < before) break;
    }
    if (incumbent.cost === before) return Math.max(lowerBound, least);
    if (incumbent.cost <= lowerBound) return lowerBound;
  }
}

/** No plan within the mix costs less than this, or than the incumbent. */
function boundOfMix(problem: CuttingProblem, mix: readonly number[], incumbent: Incumbent, { pool, budget, lowerBound }: MixSearch): number {
  budget.spend(WORK_OF_A_SIMPLEX);
  const limited = withCounts(problem, problem.pieces.map(({ count }) => count), mix);
  const relaxed = relax(limited, new Map(pool), budget, EXACT);
  const proof = provenBound(limited, relaxed.values, budget);
  const bound = Math.max(lowerBound, roundedUp(proof?.bound ?? 0, costStep(problem)));
  if (bound >= incumbent.cost) return incumbent.cost;
  dive(limited, relaxed, incumbent, { pool: new Map(pool), budget, target: bound, shake: () => 0 });
  const settled = incumbent.cost <= bound || (proof !== undefined && searchAll(limited, proof, incumbent, { target: bound, budget }));
  return settled ? incumbent.cost : bound;
}

interface BegunMix {
  readonly counts: readonly number[];
  readonly cost: number;
  readonly length: number;
}

/**
 * Mixes of at most so much cost that hold the pieces end to end, each with as much of the cheapest stock as the rest of the money buys.
 * @returns undefined when they are too many
 */
function largestMixes({ pieces, stocks }: CuttingProblem, most: number, least: number): number[][] | undefined {
  const needed = pieces.reduce((sum, { length, count }) => sum + length * count, 0);
  const order = stocks.map((_, stock) => stock).sort((a, b) => (stocks[b]?.cost ?? 0) - (stocks[a]?.cost ?? 0));
  let begun: BegunMix[] = most < 0 ? [] : [{ counts: [], cost: 0, length: 0 }];
  for (const [place, index] of order.entries()) {
    const { cost, length, count } = stocks[index] as CuttingProblem["stocks"][number];
    const isLast = place === order.length - 1;
    const next: BegunMix[] = [];
    for (const mix of begun) {
      const top = Math.min(count, cost > 0 ? Math.floor((most - mix.cost) / cost + 1e-9) : Infinity);
      if (!Number.isFinite(top) || (!isLast && next.length + top > MOST_BEGUN)) return undefined;
      for (let taken = isLast || cost === 0 ? top : 0; taken <= top; taken += 1) next.push({ counts: [...mix.counts, taken], cost: mix.cost + taken * cost, length: mix.length + taken * length });
    }
    begun = next;
  }
  const holding = begun.filter((mix) => mix.cost >= least && mix.length >= needed);
  return holding.length > MOST_MIXES ? undefined : holding.map(({ counts }) => stocks.map((_, stock) => counts[order.indexOf(stock)] ?? 0));
}
