/** Betters a whole plan by taking a few sticks apart and cutting their pieces anew (large neighbourhood search). */
import { shareOf, type Budget } from "./budget";
import { dive, type Incumbent } from "./dive";
import { draftFrom, solutionOf } from "./draft";
import { roundedUp, type PieceValues } from "./lower-bound";
import { costStep, totalCost, withCounts, type CuttingProblem, type CuttingSolution, type Pattern, type PatternUse } from "./problem";
import { NEAR, relax, type PatternPool } from "./relaxation";

export interface Improvement {
  readonly pool: PatternPool;
  readonly budget: Budget;
  readonly target: number;
  readonly values: PieceValues;
  /** The next of a fixed sequence of numbers from 0 to 1. */
  readonly chance: () => number;
}

const FEWEST_STICKS = 4;
const MOST_STICKS = 14;
/** Work for one neighbourhood; most need far less. */
const NEIGHBOURHOOD_WORK = 400_000;

/** Rounds of taking apart, until the target is met or the budget is over. */
export function improve(problem: CuttingProblem, incumbent: Incumbent, improvement: Improvement): void {
  const { budget, target, chance } = improvement;
  while (incumbent.cost > target && !budget.isOver()) {
    const places = placesByLoss(problem, incumbent.solution, improvement.values);
    const size = FEWEST_STICKS + Math.floor(chance() * (MOST_STICKS - FEWEST_STICKS + 1));
    const { chosen, others } = takenApart(incumbent.solution, chooseFrom(places, size, chance));
    const anew = cutAnew(problem, chosen, { others, missing: incumbent.solution.missing }, improvement);
    budget.spend(1000);
    if (anew) accept(problem, incumbent, others, anew);
  }
}

/** No neighbourhood needs more of one pattern. */
const MOST_OF_A_PATTERN = 8;

/** The places of patterns in the plan, one for each stick, those that cost most beyond what their pieces are worth first. */
function placesByLoss({ stocks }: CuttingProblem, { uses }: CuttingSolution, values: PieceValues): number[] {
  const graded = uses.map(({ pattern, times }, place) => ({ place, times, loss: (stocks[pattern.stock]?.cost ?? 0) - pattern.counts.reduce((sum, count, piece) => sum + count * (values[piece] ?? 0), 0) }));
  return graded.sort((a, b) => b.loss - a.loss || a.place - b.place).flatMap(({ place, times }) => Array.from({ length: Math.min(times, MOST_OF_A_PATTERN) }, () => place));
}

/** So many sticks, the first of the list far oftener than the last. */
function chooseFrom(places: readonly number[], size: number, chance: () => number): number[] {
  const chosen = new Set<number>();
  for (let tries = 0; chosen.size < Math.min(size, places.length) && tries < 20 * size; tries += 1) chosen.add(Math.floor(places.length * chance() ** 2));
  return places.filter((_, index) => chosen.has(index));
}

function takenApart({ uses }: CuttingSolution, places: readonly number[]): { chosen: PatternUse[]; others: PatternUse[] } {
  const taken = new Map<number, number>();
  for (const place of places) taken.set(place, (taken.get(place) ?? 0) + 1);
  const chosen = [...taken].flatMap(([place, times]) => (uses[place] ? [{ pattern: uses[place].pattern, times }] : []));
  const others = uses.map(({ pattern, times }, place) => ({ pattern, times: times - (taken.get(place) ?? 0) })).filter(({ times }) => times > 0);
  return { chosen, others };
}

/** A plan for the pieces of some sticks and those left out that costs no more than it does now; undefined when none was found. */
function cutAnew(problem: CuttingProblem, chosen: readonly PatternUse[], { others, missing }: { others: readonly PatternUse[]; missing: readonly number[] }, { pool, budget, chance }: Improvement): CuttingSolution | undefined {
  const supplies = problem.stocks.map(({ count }, stock) => count - others.reduce((sum, { pattern, times }) => (pattern.stock === stock ? sum + times : sum), 0));
  const demands = problem.pieces.map((_, piece) => (missing[piece] ?? 0) + chosen.reduce((sum, { pattern, times }) => sum + times * (pattern.counts[piece] ?? 0), 0));
  const part = withCounts(problem, demands, supplies);
  const present = totalCost(part, { uses: chosen, missing });
  const share = shareOf(budget, NEIGHBOURHOOD_WORK);
  const own: PatternPool = new Map([...pool].filter(([, { counts }]) => counts.every((count, piece) => count <= (demands[piece] ?? 0))));
  const root = relax(part, own, share, NEAR);
  const least = roundedUp(root.bound, costStep(problem));
  if (least >= present) return undefined;
  const incumbent: Incumbent = { cost: present, solution: solutionOf(draftFrom(part)) };
  dive(part, root, incumbent, { pool: own, budget: share, target: least, shake: () => 0.3 * chance() });
  return incumbent.cost < present ? incumbent.solution : undefined;
}

function accept(problem: CuttingProblem, incumbent: Incumbent, others: readonly PatternUse[], { uses, missing }: CuttingSolution): void {
  const solution = { uses: gathered([...others, ...uses]), missing };
  incumbent.solution = solution;
  incumbent.cost = totalCost(problem, solution);
}

/** Equal patterns together. */
export function gathered(uses: CuttingSolution["uses"]): CuttingSolution["uses"] {
  const times = new Map<string, { pattern: Pattern; times: number }>();
  for (const { pattern, times: more } of uses) {
    const key = `${pattern.stock}|${pattern.counts.join()}`;
    const known = times.get(key);
    times.set(key, { pattern, times: (known?.times ?? 0) + more });
  }
  return [...times.values()];
}
