import { budgetOf, shareOf } from "../../../src/core/cutplan/budget";
import { costOf, draftFrom, isDone, mostTimes, trimmed } from "../../../src/core/cutplan/draft";
import { completeGreedily } from "../../../src/core/cutplan/greedy";
import { gathered } from "../../../src/core/cutplan/improve";
import type { CuttingProblem } from "../../../src/core/cutplan/problem";

const problem: CuttingProblem = {
  pieces: [{ length: 3, count: 2 }, { length: 7, count: 1 }, { length: 5, count: 2 }],
  stocks: [{ length: 10, cost: 5, count: Infinity }, { length: 20, cost: 8, count: Infinity }],
};

// By hand: a length of 20 costs 0.4 for each unit, one of 10 0.5. The longest first: 7, 5, 5 and one 3 fill the first 20; the other 3 takes another.
test("without time to search, the longest piece comes first on the stock that is cheapest for its length", () => {
  const draft = draftFrom(problem);
  completeGreedily(draft, [0, 0, 0], budgetOf(0));
  expect([isDone(draft), costOf(draft), draft.uses.map(({ pattern, times }) => [pattern.stock, ...pattern.counts, times])]).toEqual([true, 16, [[1, 1, 1, 2, 1], [1, 1, 0, 0, 1]]]);
});

test("a piece that no stock left holds is left out, and the others are cut", () => {
  const draft = draftFrom({ pieces: [{ length: 30, count: 1 }, { length: 3, count: 2 }], stocks: [{ length: 10, cost: 5, count: 1 }] });
  completeGreedily(draft, [0, 0], budgetOf(0));
  expect([draft.demands, draft.supplies]).toEqual([[1, 0], [0]]);
});

// By hand: 7 + 3 and 5 + 5 fill two lengths of 10 at 5; the 3 that is left takes a third: 15, against 16 with the lengths of 20.
test("with time, the filling of most worth for its cost comes first, and no stick is longer than it need be", () => {
  const draft = draftFrom(problem);
  completeGreedily(draft, [1.5, 3.5, 2.5], budgetOf(Infinity));
  expect(isDone(draft)).toBe(true);
  expect(costOf(draft)).toBeLessThanOrEqual(15);
});

test("a pattern is cut down to what is asked for, and to the cheapest stock that still holds it", () => {
  const draft = draftFrom(problem);
  expect(trimmed(draft, { stock: 1, counts: [1, 1, 5] })).toEqual({ stock: 1, counts: [1, 1, 2] });
  expect(trimmed(draft, { stock: 1, counts: [1, 1, 0] })).toEqual({ stock: 0, counts: [1, 1, 0] });
  expect(trimmed(draftFrom({ ...problem, pieces: problem.pieces.map(({ length }) => ({ length, count: 0 })) }), { stock: 1, counts: [1, 1, 0] })).toBeUndefined();
  expect(trimmed(draftFrom({ ...problem, stocks: problem.stocks.map((stock) => ({ ...stock, count: 0 })) }), { stock: 1, counts: [1, 1, 0] })).toBeUndefined();
});

test("a pattern goes as often as its scarcest piece or its stock allows", () => {
  expect(mostTimes(draftFrom(problem), { stock: 0, counts: [1, 0, 0] })).toBe(2);
  expect(mostTimes(draftFrom(problem), { stock: 0, counts: [2, 0, 0] })).toBe(1);
  expect(mostTimes(draftFrom({ ...problem, stocks: problem.stocks.map((stock) => ({ ...stock, count: 1 })) }), { stock: 0, counts: [1, 0, 0] })).toBe(1);
});

test("equal patterns are gathered, those of another stock or of other counts are not", () => {
  const use = (stock: number, counts: readonly number[], times: number) => ({ pattern: { stock, counts }, times });
  expect(gathered([use(0, [1, 2], 3), use(1, [1, 2], 1), use(0, [1, 2], 4), use(0, [2, 1], 1)])).toEqual([use(0, [1, 2], 7), use(1, [1, 2], 1), use(0, [2, 1], 1)]);
});

test("a share of a budget ends with its own work or with the whole's, and the whole knows of it", () => {
  const whole = budgetOf(100);
  const [small, large] = [shareOf(whole, 30), shareOf(whole, 1000)];
  small.spend(30);
  expect([small.isOver(), large.isOver(), whole.isOver()]).toEqual([true, false, false]);
  large.spend(70);
  expect([large.isOver(), whole.isOver()]).toEqual([true, true]);
});

test("a clock ends a search for good, even one that runs backwards", () => {
  const answers = [false, true, false];
  const budget = budgetOf(100, () => answers.shift() ?? false);
  expect([budget.isOver(), budget.isOver(), budget.isOver()]).toEqual([false, true, true]);
});
