/** A plan being made: what is cut so far, what is still asked for and what stock is left. */
import { patternLength, totalCost, withCounts, type CuttingProblem, type CuttingSolution, type Pattern, type PatternUse } from "./problem";

export interface Draft {
  readonly problem: CuttingProblem;
  readonly uses: PatternUse[];
  readonly demands: number[];
  readonly supplies: number[];
}

export const draftFrom = (problem: CuttingProblem, uses: readonly PatternUse[] = []): Draft => {
  const draft = { problem, uses: [], demands: problem.pieces.map(({ count }) => count), supplies: problem.stocks.map(({ count }) => count) };
  for (const { pattern, times } of uses) cut(draft, pattern, times);
  return draft;
};

export const copyOf = ({ problem, uses, demands, supplies }: Draft): Draft => ({ problem, uses: [...uses], demands: [...demands], supplies: [...supplies] });

export const isDone = ({ demands }: Draft): boolean => demands.every((count) => count === 0);

/** The job that is left. */
export const restOf = ({ problem, demands, supplies }: Draft): CuttingProblem => withCounts(problem, demands, supplies);

/** The draft as a plan that leaves out what it has not cut. */
export const solutionOf = ({ uses, demands }: Draft): CuttingSolution => ({ uses, missing: demands });

export const costOf = (draft: Draft): number => totalCost(draft.problem, solutionOf(draft));

/** Only as much of a pattern as is still asked for, from the cheapest stock that holds it; undefined when that is nothing. */
export function trimmed({ problem, demands, supplies }: Draft, pattern: Pattern): Pattern | undefined {
  const counts = pattern.counts.map((count, piece) => Math.min(count, demands[piece] ?? 0));
  if (counts.every((count) => count === 0)) return undefined;
  const needed = patternLength(problem, { stock: pattern.stock, counts });
  let stock = -1;
  problem.stocks.forEach(({ length, cost }, index) => {
    if ((supplies[index] ?? 0) > 0 && length >= needed && (stock < 0 || cost < (problem.stocks[stock]?.cost ?? 0))) stock = index;
  });
  return stock < 0 ? undefined : { stock, counts };
}

/** How often a pattern can be cut without cutting more than is asked for. */
export function mostTimes({ demands, supplies }: Draft, { stock, counts }: Pattern): number {
  let most = supplies[stock] ?? 0;
  counts.forEach((count, piece) => {
    if (count > 0) most = Math.min(most, Math.floor((demands[piece] ?? 0) / count));
  });
  return most;
}

export function cut({ uses, demands, supplies }: Draft, pattern: Pattern, times: number): void {
  uses.push({ pattern, times });
  pattern.counts.forEach((count, piece) => {
    demands[piece] = (demands[piece] ?? 0) - count * times;
  });
  supplies[pattern.stock] = (supplies[pattern.stock] ?? 0) - times;
}
