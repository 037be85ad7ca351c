/** Settles a small job for certain: every way to cut the longest piece left, then the next, except where a bound shows nothing is to be gained. */
import type { Budget } from "./budget";
import type { Incumbent } from "./dive";
import { roundedUp, type Proof } from "./lower-bound";
import { costStep, penalties, type CuttingProblem, type PatternUse } from "./problem";

export interface WholeSearch {
  readonly target: number;
  readonly budget: Budget;
}

/**
 * Betters the incumbent where any plan does.
 * @param proof values by which the rest of a plan is bounded: what its pieces are worth, and the stock values of what stock is left
 * @returns true when the incumbent is now a plan of least cost; false when the budget ran out first
 */
export function searchAll(problem: CuttingProblem, proof: Proof, incumbent: Incumbent, whole: WholeSearch): boolean {
  const order = problem.pieces.map((_, piece) => piece).sort((a, b) => (problem.pieces[b]?.length ?? 0) - (problem.pieces[a]?.length ?? 0) || a - b);
  const search: Search = { ...whole, problem, proof, incumbent, order, penalties: penalties(problem), step: costStep(problem), seen: new Map() };
  return descend(search, { cost: 0, uses: undefined, demands: problem.pieces.map(({ count }) => count), supplies: problem.stocks.map(({ count }) => count), missing: problem.pieces.map(() => 0) });
}

interface Search extends WholeSearch {
  readonly problem: CuttingProblem;
  readonly proof: Proof;
  readonly incumbent: Incumbent;
  /** Pieces by length, the longest first. */
  readonly order: readonly number[];
  readonly penalties: readonly number[];
  readonly step: number;
  /** The least cost at which each rest was met. */
  readonly seen: Map<string, number>;
}

/** A plan begun: what it has cut, what is left to cut and to cut it from. */
interface Begun {
  readonly cost: number;
  readonly uses: { readonly use: PatternUse; readonly before: Begun["uses"] } | undefined;
  readonly demands: readonly number[];
  readonly supplies: readonly number[];
  readonly missing: readonly number[];
}

interface Move {
  readonly begun: Begun;
  readonly bound: number;
}

const MOST_RESTS_KEPT = 100_000;

/** @returns false when the budget ran out */
function descend(search: Search, begun: Begun): boolean {
  const { incumbent, budget, target, order } = search;
  const longest = order.find((piece) => (begun.demands[piece] ?? 0) > 0);
  if (longest === undefined) {
    if (begun.cost < incumbent.cost) Object.assign(incumbent, { cost: begun.cost, solution: { uses: usesOf(begun), missing: begun.missing } });
    return true;
  }
  const moves = movesFrom(search, begun, longest);
  for (const { begun: next, bound } of moves ?? []) {
    if (incumbent.cost <= target) return true;
    if (bound < incumbent.cost && isNew(search, next) && !descend(search, next)) return false;
  }
  return moves !== undefined && !budget.isOver();
}

function usesOf({ uses }: Begun): PatternUse[] {
  const list: PatternUse[] = [];
  for (let at = uses; at; at = at.before) list.push(at.use);
  return list;
}

/** False for a rest that was met before at no more cost. */
function isNew({ seen }: Search, { cost, demands, supplies }: Begun): boolean {
  const key = `${demands.join()}|${supplies.join()}`;
  const known = seen.get(key);
  if (known !== undefined && known <= cost) return false;
  if (known !== undefined || seen.size < MOST_RESTS_KEPT) seen.set(key, cost);
  return true;
}

/** The next sticks worth trying, the most promising first; undefined when the budget ran out. Leaving the longest piece out comes last. */
function movesFrom(search: Search, begun: Begun, longest: number): Move[] | undefined {
  const moves: Move[] = [];
  const add = (next: Begun): void => {
    const bound = roundedUp(next.cost + boundOfRest(search, next), search.step);
    if (bound < search.incumbent.cost) moves.push({ begun: next, bound });
  };
  for (const [stock, { length, cost }] of search.problem.stocks.entries()) {
    if ((begun.supplies[stock] ?? 0) <= 0) continue;
    const supplies = begun.supplies.map((count, index) => (index === stock ? count - 1 : count));
    const wholly = eachFullFilling(search, begun, { longest, length }, (counts) => {
      const uses = { use: { pattern: { stock, counts }, times: 1 }, before: begun.uses };
      add({ ...begun, cost: begun.cost + cost, uses, supplies, demands: begun.demands.map((demand, piece) => demand - (counts[piece] ?? 0)) });
    });
    if (!wholly) return undefined;
  }
  const without = { demands: withChange(begun.demands, longest, -1), missing: withChange(begun.missing, longest, 1) };
  add({ ...begun, ...without, cost: begun.cost + (search.penalties[longest] ?? 0) });
  return moves.sort((a, b) => a.bound - b.bound);
}

const withChange = (counts: readonly number[], at: number, change: number): number[] => counts.map((count, index) => (index === at ? count + change : count));

function boundOfRest({ proof: { pieceValues, stockValues } }: Search, { demands, supplies }: Begun): number {
  let bound = 0;
  demands.forEach((count, piece) => (bound += count * (pieceValues[piece] ?? 0)));
  // A stock without limit has no value of its own, and Infinity times 0 is no number.
  supplies.forEach((count, stock) => (bound += stockValues[stock] ? count * stockValues[stock] : 0));
  return bound;
}

/** Every filling with the longest piece that has no room for another piece: one piece more on a stick never makes the rest dearer. */
function eachFullFilling({ order, problem, budget }: Search, { demands }: Begun, { longest, length }: { longest: number; length: number }, visit: (counts: number[]) => void): boolean {
  const asked = order.filter((piece) => (demands[piece] ?? 0) > 0);
  const counts = problem.pieces.map(() => 0);
  const fill = (place: number, room: number, spared: number): boolean => {
    budget.spend(1);
    if (budget.isOver()) return false;
    const piece = asked[place];
    if (piece === undefined) {
      if (room < spared) visit([...counts]);
      return true;
    }
    const size = problem.pieces[piece]?.length ?? 1;
    const most = Math.min(demands[piece] ?? 0, Math.floor(room / size));
    for (let count = most; count >= (piece === longest ? 1 : 0); count -= 1) {
      counts[piece] = count;
      if (!fill(place + 1, room - count * size, count < (demands[piece] ?? 0) ? Math.min(spared, size) : spared)) return false;
    }
    counts[piece] = 0;
    return true;
  };
  return fill(0, length, Infinity);
}
