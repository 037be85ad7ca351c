/** A cutting job in whole units of length and of money, as the search sees it. */

export interface CuttingProblem {
  readonly pieces: readonly PieceDemand[];
  readonly stocks: readonly StockSupply[];
}

export interface PieceDemand {
  /** The piece and one cut of the saw. */
  readonly length: number;
  readonly count: number;
}

export interface StockSupply {
  /** What can be used, and one cut of the saw: the last piece needs no cut after it. */
  readonly length: number;
  readonly cost: number;
  /** Infinity where any number can be had. */
  readonly count: number;
}

/** What is cut from one length of stock: how many of each piece, in the order of the problem's pieces. */
export interface Pattern {
  readonly stock: number;
  readonly counts: readonly number[];
}

export interface PatternUse {
  readonly pattern: Pattern;
  readonly times: number;
}

/** Patterns with how often each is cut, and the pieces for which there is no stock. */
export interface CuttingSolution {
  readonly uses: readonly PatternUse[];
  readonly missing: readonly number[];
}

export const patternLength = ({ pieces }: CuttingProblem, { counts }: Pattern): number =>
  counts.reduce((sum, count, piece) => sum + count * (pieces[piece]?.length ?? 0), 0);

/** Money for the stock used; pieces left out cost nothing here. */
export const stockCost = ({ stocks }: CuttingProblem, { uses }: CuttingSolution): number =>
  uses.reduce((sum, { pattern, times }) => sum + times * (stocks[pattern.stock]?.cost ?? 0), 0);

/** Every plan costs a whole number of these: the greatest common divisor of the stock costs. */
export const costStep = ({ stocks }: CuttingProblem): number => stocks.reduce((divisor, { cost }) => greatestCommonDivisor(divisor, cost), 0) || 1;

/** What leaving out one piece counts as: far more than any stock could cost, more for a longer piece, and a whole number of cost steps. */
export function penalties(problem: CuttingProblem): number[] {
  const step = costStep(problem);
  const dearest = Math.max(step, ...problem.stocks.map(({ cost }) => cost));
  const longest = Math.max(1, ...problem.pieces.map(({ length }) => length));
  return problem.pieces.map(({ length }) => Math.ceil((100 * dearest * (1 + length / longest)) / step) * step);
}

function greatestCommonDivisor(a: number, b: number): number {
  let high = a;
  let low = b;
  while (low > 0) {
    const rest = high % low;
    high = low;
    low = rest;
  }
  return high;
}

/** Stock and penalties together: what the search makes small. */
export const totalCost = (problem: CuttingProblem, solution: CuttingSolution): number => {
  const each = penalties(problem);
  return stockCost(problem, solution) + solution.missing.reduce((sum, count, piece) => sum + count * (each[piece] ?? 0), 0);
};

/** The same job with other counts: what is left of it after some has been cut. */
export const withCounts = ({ pieces, stocks }: CuttingProblem, demands: readonly number[], supplies: readonly number[]): CuttingProblem => ({
  pieces: pieces.map(({ length }, piece) => ({ length, count: demands[piece] ?? 0 })),
  stocks: stocks.map(({ length, cost }, stock) => ({ length, cost, count: supplies[stock] ?? 0 })),
});
