/** Jobs with a known answer, and shop jobs made up by a fixed rule. */
import type { CuttingProblem } from "../../../src/core/cutplan/problem";

/** Gilmore and Gomory 1961, as an open textbook on optimisation in Python gives it: stocks 5, 6, 9 at 6, 7, 10; least cost 170. */
export const gilmoreGomory: CuttingProblem = job([[2, 20], [3, 10], [4, 20]], [[5, 6], [6, 7], [9, 10]]);

/** The log of 100 units from the same textbook, in tenths; 334 logs. */
export const log100: CuttingProblem = job(
  [[750, 189], [538, 33], [530, 36], [510, 41], [502, 35], [322, 37], [308, 44], [298, 49], [201, 37], [162, 36], [145, 42], [110, 33], [86, 47], [82, 35], [66, 49], [51, 42]],
  [[1000, 1]],
);

/** 400 pieces of 30 lengths from 6 to 76 in, stock of 60, 96, 144 and 240 in, kerf 1/16 in, in 1/32 in; prices in cents. Invented. */
export function shopJob(seed: number): CuttingProblem {
  const chance = chances(seed);
  const lengths = new Set<number>();
  while (lengths.size < 30) lengths.add(Math.round((6 + chance() * 70) * 32) + 2);
  const counts = [...lengths].map(() => 0);
  for (let piece = 0; piece < 400; piece += 1) {
    const at = Math.floor(chance() * counts.length);
    counts[at] = (counts[at] ?? 0) + 1;
  }
  const prices = [620, 940, 1330, 2150].map((price) => price + Math.round(chance() * 100));
  return job([...lengths].map((length, at) => [length, counts[at] ?? 0]), [60, 96, 144, 240].map((length, at) => [length * 32 + 2, prices[at] ?? 0]));
}

function job(pieces: readonly (readonly [number, number])[], stocks: readonly (readonly [number, number])[]): CuttingProblem {
  return { pieces: pieces.map(([length, count]) => ({ length, count })), stocks: stocks.map(([length, cost]) => ({ length, cost, count: Infinity })) };
}

/** Numbers from 0 to 1, the same for the same seed. */
function chances(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
