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

/** What leaving out one piece counts as: more than any stock could cost, and more for a longer piece. */
export function penalties({ pieces, stocks }: CuttingProblem): number[] {
  const dearest = Math.max(1, ...stocks.map(({ cost }) => cost));
  const longest = Math.max(1, ...pieces.map(({ length }) => length));
  return pieces.map(({ length }) => 100 * dearest * (1 + length / longest));
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
