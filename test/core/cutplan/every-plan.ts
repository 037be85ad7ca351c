/** What must hold of every plan, and the least cost of a small job by trying everything. */
import { patternLength, type CuttingProblem } from "../../../src/core/cutplan/problem";
import type { SolvedCutting } from "../../../src/core/cutplan/solve";

/** What is wrong with a plan; nothing for a sound one. */
export function faultsOf(problem: CuttingProblem, { solution, cost, lowerBound }: SolvedCutting): string[] {
  const { pieces, stocks } = problem;
  const made = pieces.map((_, piece) => solution.uses.reduce((sum, { pattern, times }) => sum + times * (pattern.counts[piece] ?? 0), 0));
  const taken = stocks.map((_, stock) => solution.uses.reduce((sum, { pattern, times }) => (pattern.stock === stock ? sum + times : sum), 0));
  const paid = taken.reduce((sum, count, stock) => sum + count * (stocks[stock]?.cost ?? 0), 0);
  return [
    ...solution.uses.flatMap(({ pattern, times }) => (Number.isSafeInteger(times) && times > 0 && patternLength(problem, pattern) <= (stocks[pattern.stock]?.length ?? 0) ? [] : [`pattern ${JSON.stringify(pattern)} × ${times}`])),
    ...pieces.flatMap(({ count }, piece) => ((made[piece] ?? 0) + (solution.missing[piece] ?? 0) === count ? [] : [`piece ${piece}: ${made[piece]} made, ${solution.missing[piece]} missing, ${count} asked for`])),
    ...stocks.flatMap(({ count }, stock) => ((taken[stock] ?? 0) <= count ? [] : [`stock ${stock}: ${taken[stock]} of ${count} taken`])),
    ...(paid === cost ? [] : [`cost ${cost}, and the stock costs ${paid}`]),
    ...(lowerBound <= cost ? [] : [`bound ${lowerBound} above cost ${cost}`]),
  ];
}

/** Least cost of cutting so many of each piece, by trying every filling of every stock; Infinity where the stock does not suffice. */
export function leastCost({ pieces, stocks }: CuttingProblem, asked: readonly number[]): number {
  const known = new Map<string, number>();
  const least = (left: readonly number[], supplies: readonly number[]): number => {
    const first = left.findIndex((count) => count > 0);
    if (first < 0) return 0;
    const key = `${left.join()}|${supplies.join()}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    let best = Infinity;
    stocks.forEach(({ length, cost }, stock) => {
      if ((supplies[stock] ?? 0) <= 0) return;
      const rest = supplies.map((count, index) => (index === stock ? count - 1 : count));
      for (const counts of fillings(pieces.map((piece) => piece.length), left, length)) {
        if ((counts[first] ?? 0) > 0) best = Math.min(best, cost + least(left.map((count, piece) => count - (counts[piece] ?? 0)), rest));
      }
    });
    known.set(key, best);
    return best;
  };
  return least(asked, stocks.map(({ count }) => count));
}

/** Every way to put pieces on one length. */
export function fillings(lengths: readonly number[], most: readonly number[], room: number): number[][] {
  const [length, ...others] = lengths;
  if (length === undefined) return [[]];
  const counts = Array.from({ length: Math.min(most[0] ?? 0, Math.floor(room / length)) + 1 }, (_, count) => count);
  return counts.flatMap((count) => fillings(others, most.slice(1), room - count * length).map((rest) => [count, ...rest]));
}
