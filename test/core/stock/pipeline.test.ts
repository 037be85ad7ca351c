import fc from "fast-check";
import { shareBetween, spreadOf, type DateSpread } from "../../../src/core/stock/date-spread";
import { meanAndVariance, pipelineByWeek, pipelineDemand, pipelineDistribution, timedNeeds, weekSpan } from "../../../src/core/stock/pipeline";
import { momentsOf } from "../../../src/core/stock/lattice";
import { property } from "../seeded";

const onDay = (day: number): DateSpread => ({ earliest: day, likely: day, latest: day });

// A triangle over 14 days that peaks on the first has 7² / 14² = ¼ of its area in the second week.
test.each([
  ["peak midway", { earliest: 0, likely: 7, latest: 14 }, [0.5, 0.5]],
  ["peak first", { earliest: 0, likely: 0, latest: 14 }, [0.75, 0.25]],
  ["peak last", { earliest: 0, likely: 14, latest: 14 }, [0.25, 0.75]],
  ["one day, the last of the first week", onDay(6), [1, 0]],
  ["one day, the first of the second week", onDay(7), [0, 1]],
] as const)("share by week: %s", (_name, spread, shares) => shares.forEach((share, week) => expect(shareBetween(spread, week * 7, week * 7 + 7)).toBeCloseTo(share, 12)));

describe("dates that are blank", () => {
  test("no date at all cannot be placed", () => expect(spreadOf({})).toBeUndefined());
  test("one date is that day, and nothing is assumed", () => expect(spreadOf({ latest: 9 })).toEqual({ spread: onDay(9), assumed: [] }));
  test("the same day first and last is that day, and nothing is assumed", () => expect(spreadOf({ earliest: 9, latest: 9 })).toEqual({ spread: onDay(9), assumed: [] }));
  test("three dates are taken as they are", () => expect(spreadOf({ earliest: 2, likely: 4, latest: 9 })).toEqual({ spread: { earliest: 2, likely: 4, latest: 9 }, assumed: [] }));
  test("what is taken for a blank is said", () => {
    expect(spreadOf({ likely: 4, latest: 9 })).toEqual({ spread: { earliest: 4, likely: 4, latest: 9 }, assumed: ["Earliest is blank and taken as Likely"] });
    expect(spreadOf({ earliest: 2, latest: 8 })).toEqual({ spread: { earliest: 2, likely: 5, latest: 8 }, assumed: ["Likely is blank and taken midway"] });
    expect(spreadOf({ earliest: 2, likely: 4 })).toEqual({ spread: { earliest: 2, likely: 4, latest: 4 }, assumed: ["Latest is blank and taken as Likely"] });
  });
});

// 60 % of 100 in, half in each week: p w = 0.3. Mean 30, variance 0.3 · 0.7 · 100² = 2100 in either week; over both 0.6 · 0.4 · 100² = 2400, not 4200.
test("one quote over two weeks, and why variances of weeks are not added", () => {
  const needs = [{ chance: 0.6, spread: { earliest: 0, likely: 7, latest: 14 }, quantity: 100 }];
  for (const { mean, variance } of pipelineByWeek(needs, 0, 2)) expect([mean, variance]).toEqual([expect.closeTo(30, 9), expect.closeTo(2100, 9)]);
  expect(pipelineDemand(needs, { from: 0, to: 14, opens: 0 })).toEqual({ mean: 60, variance: expect.closeTo(2400, 9) as number });
});

test("what the dates say lies in the past counts in the first week, as the quote is still open", () =>
  expect(pipelineByWeek([{ chance: 0.5, spread: onDay(3), quantity: 10 }], 100, 2).map(({ mean }) => mean)).toEqual([5, 0]));

test("what lies beyond the last week is in no week", () => expect(pipelineByWeek([{ chance: 0.5, spread: onDay(30), quantity: 10 }], 0, 4).map(({ mean }) => mean)).toEqual([0, 0, 0, 0]));

test("only quotes that may fall into a week are counted in it: not a lost one, nor one of another week", () => {
  const needs = [{ chance: 0.5, spread: onDay(8), quantity: 3 }, { chance: 0, spread: onDay(8), quantity: 4 }, { chance: 0.5, spread: onDay(3), quantity: 5 }];
  expect(timedNeeds(needs, weekSpan(0, 1))).toEqual([{ chance: 0.5, quantity: 3 }]);
});

// Quotes of 1 (½) and 2 (¼): nothing ½·¾, 1 ½·¾, 2 ½·¼, 3 ½·¼.
test("the exact distribution by hand", () =>
  expect([...pipelineDistribution([{ chance: 0.5, quantity: 1 }, { chance: 0.25, quantity: 2 }], 1).chances]).toEqual([0.375, 0.375, 0.125, 0.125]));

const day = fc.integer({ min: 0, max: 60 });
const need = fc.record({
  chance: fc.double({ min: 0, max: 1, noNaN: true }), quantity: fc.integer({ min: 1, max: 40 }),
  spread: fc.tuple(day, day, day).map((days) => [...days].sort((a, b) => a - b)).map(([earliest = 0, likely = 0, latest = 0]) => ({ earliest, likely, latest })),
});
property("mean and variance agree with the exact distribution, week by week", 100, fc.array(need, { maxLength: 10 }), (needs) => {
  pipelineByWeek(needs, 0, 9).forEach(({ mean, variance }, week) => {
    const exact = momentsOf(pipelineDistribution(timedNeeds(needs, weekSpan(0, week)), 1));
    expect(exact.mean).toBeCloseTo(mean, 8);
    expect(exact.variance).toBeCloseTo(variance, 6);
  });
});
property("weeks together hold every quote whole", 100, need, ({ chance, quantity, spread }) =>
  expect(pipelineByWeek([{ chance, quantity, spread }], 0, 9).reduce((sum, { mean }) => sum + mean, 0)).toBeCloseTo(chance * quantity, 8));
test("no quotes: certainly nothing", () => expect([meanAndVariance([]), [...pipelineDistribution([], 1).chances]]).toEqual([{ mean: 0, variance: 0 }, [1]]));
