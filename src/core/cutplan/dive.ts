/** Makes whole plans from fractional ones: fix the patterns that are whole or nearly so, relax what is left, and again. */
import type { Budget } from "./budget";
import { copyOf, costOf, cut, draftFrom, isDone, mostTimes, restOf, solutionOf, trimmed, type Draft } from "./draft";
import { completeGreedily } from "./greedy";
import { roundedUp } from "./lower-bound";
import { costStep, stockCost, totalCost, type CuttingProblem, type CuttingSolution } from "./problem";
import { NEAR, relax, remember, type PatternPool, type Relaxation } from "./relaxation";

export interface Incumbent {
  solution: CuttingSolution;
  cost: number;
}

export interface Dive {
  readonly pool: PatternPool;
  readonly budget: Budget;
  /** No plan can cost less: the dive ends when it gets there. */
  readonly target: number;
  /** A fixed pattern is chosen by its fraction and this; the same for the same arguments. */
  readonly shake: (index: number) => number;
}

/** The plan of no stick at all, which every other one betters. */
export const nothingCut = (problem: CuttingProblem): Incumbent => {
  const solution = solutionOf(draftFrom(problem));
  return { solution, cost: totalCost(problem, solution) };
};

/** One descent from a relaxation to a whole plan; betters the incumbent where it can. */
export function dive(problem: CuttingProblem, root: Relaxation, incumbent: Incumbent, { pool, budget, target, shake }: Dive): void {
  const draft = draftFrom(problem);
  const step = costStep(problem);
  let relaxed = root;
  for (;;) {
    tryCompletion(draft, relaxed, incumbent, budget);
    if (incumbent.cost <= target || budget.isOver()) return;
    fixPatterns(draft, relaxed, shake);
    if (isDone(draft)) return tryCompletion(draft, relaxed, incumbent, budget);
    for (const { pattern } of relaxed.uses) {
      const rest = trimmed(draft, pattern);
      if (rest) remember(pool, rest);
    }
    relaxed = relax(restOf(draft), pool, budget, NEAR);
    if (stockCost(problem, solutionOf(draft)) + roundedUp(relaxed.bound, step) >= incumbent.cost) return;
  }
}

function tryCompletion(draft: Draft, { values }: Relaxation, incumbent: Incumbent, budget: Budget): void {
  const whole = copyOf(draft);
  completeGreedily(whole, values, budget);
  const cost = costOf(whole);
  if (cost < incumbent.cost) Object.assign(incumbent, { cost, solution: solutionOf(whole) });
}

/** From this fraction on a pattern is taken as one more. */
const NEARLY_WHOLE = 0.8;

/** Cuts every pattern as often as the relaxation wholly does; where none is whole, the nearest to it. */
function fixPatterns(draft: Draft, { uses }: Relaxation, shake: (index: number) => number): void {
  let fixed = 0;
  const fractions: { index: number; fraction: number }[] = [];
  uses.forEach(({ pattern, times }, index) => {
    const whole = Math.min(Math.floor(times + 1e-4), mostTimes(draft, pattern));
    if (whole > 0) cut(draft, pattern, whole);
    fixed += Math.max(0, whole);
    fractions.push({ index, fraction: times - Math.floor(times + 1e-4) + shake(index) });
  });
  if (fixed > 0) return;
  fractions.sort((a, b) => b.fraction - a.fraction || a.index - b.index);
  for (const [rank, { index, fraction }] of fractions.entries()) {
    if (rank > 0 && fraction < NEARLY_WHOLE) return;
    const pattern = uses[index] && trimmed(draft, uses[index].pattern);
    if (pattern) cut(draft, pattern, 1);
  }
}
