import { budgetOf } from "../../../src/core/cutplan/budget";
import { roundedUp } from "../../../src/core/cutplan/lower-bound";
import type { CuttingProblem } from "../../../src/core/cutplan/problem";
import { EXACT, NEAR, relax, remember, type PatternPool, type Relaxation } from "../../../src/core/cutplan/relaxation";
import { shopJob } from "./jobs";

type Row = readonly [length: number, count: number];
const job = (pieces: readonly Row[], stocks: readonly (readonly [length: number, cost: number, count?: number])[]): CuttingProblem =>
  ({ pieces: pieces.map(([length, count]) => ({ length, count })), stocks: stocks.map(([length, cost, count = Infinity]) => ({ length, cost, count })) });
const relaxed = (problem: CuttingProblem, work = Infinity): Relaxation => relax(problem, new Map(), budgetOf(work), EXACT);

describe("fractions of patterns", () => {
  // By hand: three to a stick of 6, so ten take 3 1/3 sticks, 20; each is worth 2.
  test("one length from one stock", () => {
    const { value, values, uses, bound } = relaxed(job([[3, 10]], [[10, 6]]));
    expect(value).toBeCloseTo(20, 3);
    expect(values[0]).toBeCloseTo(2, 6);
    expect(uses.map(({ pattern }) => pattern)).toEqual([{ stock: 0, counts: [3] }]);
    expect(uses[0]?.times).toBeCloseTo(10 / 3, 3);
    expect(roundedUp(bound, 6)).toBe(24);
  });

  // By hand: two to a stick; one stick at 4 and then one at 9. A piece is worth half of 9, and the one cheap stick saves 5.
  test("limited stock is worth what the next dearer costs more", () => {
    const { value, values, bound } = relaxed(job([[5, 4]], [[10, 4, 1], [10, 9]]));
    expect(value).toBeCloseTo(13, 3);
    expect(values[0]).toBeCloseTo(4.5, 6);
    expect(roundedUp(bound, 1)).toBe(13);
  });

  // By hand: 4 + 3 + 3 fill one stick, 6 and 4 another: 1 of each of 10 at 5.
  test("pieces of several lengths share a stick", () => expect(relaxed(job([[6, 1], [4, 2], [3, 2]], [[10, 5]])).value).toBeCloseTo(10, 3));

  test("a piece that is not asked for is worth nothing, and stock that has run out is not used", () => {
    const { values, uses } = relaxed(job([[3, 10], [4, 0]], [[12, 1, 0], [10, 6]]));
    expect(values[1]).toBe(0);
    expect(new Set(uses.map(({ pattern }) => pattern.stock))).toEqual(new Set([1]));
  });

  // By hand: steps of 4, so 100 × 4 × (1 + 50/50) = 800 for the piece that no stock holds.
  test("a piece longer than any stock costs its penalty", () => expect(relaxed(job([[50, 1]], [[10, 4]])).value).toBeCloseTo(800, 2));

  test("without any work nothing is shown", () => expect(relaxed(job([[3, 10]], [[10, 6]]), 0).bound).toBe(0));
});

// Strong duality: at the best, what the pieces are worth together is what the patterns cost (any textbook of linear programming).
test("on a shop's job the patterns cut what is asked for, cost what the pieces are worth, and are proved to a step of the price", () => {
  const problem = shopJob(3);
  const { value, values, uses, bound } = relaxed(problem, 50_000_000);
  const worth = problem.pieces.reduce((sum, { count }, piece) => sum + count * (values[piece] ?? 0), 0);
  expect(worth / value).toBeCloseTo(1, 6);
  expect(bound).toBeLessThanOrEqual(value + 1e-6);
  expect(bound / value).toBeGreaterThan(0.9999);
  problem.pieces.forEach(({ count }, piece) => { expect(uses.reduce((sum, { pattern, times }) => sum + times * (pattern.counts[piece] ?? 0), 0)).toBeGreaterThan(count - 1e-3); });
});

test("patterns found are there for the next time, each once", () => {
  const pool: PatternPool = new Map();
  relax(shopJob(3), pool, budgetOf(50_000_000), NEAR);
  const before = pool.size;
  expect(before).toBeGreaterThan(5);
  const [first] = pool.values();
  if (!first) throw new Error("no pattern");
  expect(remember(pool, { ...first, counts: [...first.counts] })).toBe(first);
  expect(pool.size).toBe(before);
});
