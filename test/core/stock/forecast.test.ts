import fc from "fast-check";
import { demandPattern } from "../../../src/core/stock/demand-class";
import { firstJudged, forecast, FORECAST_METHODS, USUAL_WEIGHTS } from "../../../src/core/stock/forecast";
import { fitWeights } from "../../../src/core/stock/fitting-weights";
import { smooth, SMOOTHING_METHODS } from "../../../src/core/stock/smoothing";
import { property } from "../seeded";
import { entries } from "./published-values";

/** A printed series of 36 months, 11 of them with demand (Hyndman and Athanasopoulos 2018, section 12.2). */
const productC = entries.find(({ id }) => id === "croston-productC-a0.1")?.inputs.y ?? [];

describe("class of demand", () => {
  // Intervals 4/3 ≥ 1.32 and 5/4 < 1.32. Sizes 1, 1, 4: mean 2, variance 3, squared variation 0.75 ≥ 0.49; equal sizes 0.
  test.each([
    [[2, 2, 2, 0], "intermittent"], [[1, 1, 4, 0], "lumpy"], [[2, 2, 2, 2, 0], "smooth"], [[1, 1, 4, 1, 0], "erratic"],
  ] as const)("%j is %s", (history, demandClass) => expect(demandPattern(history).demandClass).toBe(demandClass));
  test("sizes 1, 1, 4 vary by 3 / 2²", () => expect(demandPattern([1, 1, 4]).sizeVariation).toBeCloseTo(0.75, 12));
  // Thirty-three periods and 25 demands are exactly 1.32.
  test("at the cut-off counts as above it", () => expect(demandPattern([...Array<number>(25).fill(1), ...Array<number>(8).fill(0)]).demandClass).toBe("intermittent"));
  test("one demand has no class, and none no interval", () => {
    expect(demandPattern([0, 3])).toEqual({ demands: 1, interval: 2, sizeVariation: undefined, demandClass: undefined });
    expect(demandPattern([0, 0]).interval).toBeUndefined();
  });
});

// [0, 2, 0, 4] with ½ and ½: Croston starts at 2 and 2, then 3 and 2; SBA × ¾, SBJ × ⅔; TSB chance ½ → ¼ → ⅝ by 3; SES 0 → 1 → ½ → 2¼.
test.each([["Croston", 1.5], ["SBA", 1.125], ["SBJ", 1], ["TSB", 1.875], ["SES", 2.25]] as const)("%s by hand", (method, rate) =>
  expect(smooth(method, [0, 2, 0, 4], { alpha: 0.5, beta: 0.5 }).rate).toBeCloseTo(rate, 12));

// Before each period: Croston 2 / 2; SBA × ¾; SBJ × ⅔; TSB 2 × ½, then 2 × ¼; SES the level before. None before the first demand, for SES before the second period.
test.each([["Croston", [NaN, NaN, 1, 1]], ["SBA", [NaN, NaN, 0.75, 0.75]], ["SBJ", [NaN, NaN, 2 / 3, 2 / 3]], ["TSB", [NaN, NaN, 1, 0.5]], ["SES", [NaN, 0, 1, 0.5]]] as const)("%s, each forecast by hand", (method, forecasts) =>
  expect(Array.from(smooth(method, [0, 2, 0, 4], { alpha: 0.5, beta: 0.5 }).forecasts, (one) => Number(one.toFixed(12)))).toEqual(forecasts.map((one) => Number(one.toFixed(12)))));

test("TSB forgets a product that no one asks for any more, Croston does not", () => {
  const dying = [4, 4, 4, ...Array<number>(50).fill(0)];
  expect(smooth("TSB", dying, { alpha: 0.1, beta: 0.1 }).rate).toBeCloseTo(4 * 0.9 ** 50, 12);
  expect(smooth("Croston", dying, { alpha: 0.1, beta: 0.1 }).rate).toBe(4);
});

const history = fc.array(fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, { weight: 2, arbitrary: fc.integer({ min: 1, max: 500 }) }), { minLength: 1, maxLength: 80 });
const method = fc.constantFrom(...SMOOTHING_METHODS);
property("a forecast never looks at its own period or a later one", 200, fc.tuple(history, method, fc.nat(79), fc.integer({ min: 1, max: 900 })), ([demands, one, at, other]) => {
  const changed = demands.map((demand, period) => (period === at ? other : demand));
  const weights = { alpha: 0.2, beta: 0.1 };
  const upTo = (list: readonly number[]): number[] => [...smooth(one, list, weights).forecasts.slice(0, at + 1)];
  // Before the first demand there is no forecast, so a demand put there makes later ones only.
  expect(upTo(changed)).toEqual(upTo(demands));
});
property("twice the demand is twice the forecast", 200, fc.tuple(history, fc.constantFrom(...FORECAST_METHODS)), ([demands, one]) => {
  const [once, twice] = [forecast(demands, one), forecast(demands.map((demand) => 2 * demand), one)];
  expect([twice.method, twice.rate]).toEqual([once.method, expect.closeTo(2 * once.rate, 9)]);
});
property("auto errs no more than any method asked for", 100, fc.tuple(history, method), ([demands, one]) => {
  const auto = forecast(demands);
  if (auto.chosen === "least rolling-origin error") expect(auto.error).toBeLessThanOrEqual(forecast(demands, one).error ?? Infinity);
});

describe("what a forecast rests on", () => {
  test("the printed series is long enough to choose by", () => {
    const auto = forecast(productC);
    expect(auto).toMatchObject({ chosen: "least rolling-origin error", weightsAre: "fitted", errorIs: "rolling-origin", periods: 36, remarks: [] });
    expect(auto.pattern).toMatchObject({ demands: 11, interval: expect.closeTo(36 / 11, 12) as number, demandClass: "lumpy" });
  });
  test("the last third is judged, unless fewer than half of the demands come before it", () => {
    expect(firstJudged(productC)).toBe(24);
    expect(firstJudged([...Array<number>(20).fill(0), 1, 1, 1, 1, 0, 0, 0, 0, 0, 0])).toBe(22);
  });
  test("given weights are used and named so", () => expect(forecast(productC, "Croston", { alpha: 0.3, beta: 0.3 })).toMatchObject({ weightsAre: "given", rate: expect.closeTo(0.7155873796, 9) as number }));
  test("too little history: SBA with usual weights, and it is said", () => {
    const few = forecast([0, 3, 0, 0, 2]);
    expect(few).toMatchObject({ method: "SBA", chosen: "too little history to choose", weights: USUAL_WEIGHTS, weightsAre: "usual", errorIs: "in-sample" });
    expect(few.remarks).toEqual(["too little history: 2 demands in 5 periods, fewer than 6 in 24, so the usual method and weights stand"]);
  });
  test("six demands in 24 periods are enough, five or 23 are not", () => {
    const spaced = (demands: number, periods: number): number[] => Array.from({ length: periods }, (_, period) => (period % 3 === 0 && period / 3 < demands ? 5 + period : 0));
    expect([[6, 24], [5, 24], [6, 23]].map(([demands = 0, periods = 0]) => forecast(spaced(demands, periods)).chosen)).toEqual(["least rolling-origin error", "too little history to choose", "too little history to choose"]);
  });
  test("one demand in one period is said in the singular", () => expect(forecast([3]).remarks).toEqual(["too little history: 1 demand in 1 period, fewer than 6 in 24, so the usual method and weights stand"]));
  // Before periods 3 and 4 Croston says 1: errors −1 and 3, squares 1 and 9. Deviation of 0, 2, 0, 4: squares about 1.5 are 11 in all, over 3.
  test("its error is that of the forecasts it would have made, beside how demand itself strays", () => expect(forecast([0, 2, 0, 4], "Croston", { alpha: 0.5, beta: 0.5 })).toMatchObject({
    chosen: "asked for", errorIs: "in-sample", error: expect.closeTo(Math.sqrt(5), 12) as number, deviation: expect.closeTo(Math.sqrt(11 / 3), 12) as number,
  }));
  test("demand of one period strays by nothing that can be said", () => expect(forecast([3]).deviation).toBeUndefined());
  // Ten in each of 16 weeks, then none in 14; the last ten are judged. What waits for the next demand errs by 8.5 and more in each of them (10, less 15 % of bias at the
  // largest weight 0.3). What forgets, by 0.3 a week, errs by 10 · 0.7⁴ in the first and less in each later one; after the last week 10 · 0.7¹⁴ is left.
  test("when demand has stopped, a method that forgets is chosen", () => {
    const stopped = forecast([...Array<number>(16).fill(10), ...Array<number>(14).fill(0)]);
    expect(["TSB", "SES"]).toContain(stopped.method);
    expect(stopped.rate).toBeCloseTo(10 * 0.7 ** 14, 9);
    expect(stopped.error).toBeCloseTo(Math.sqrt(Array.from({ length: 10 }, (_, week) => (10 * 0.7 ** (4 + week)) ** 2).reduce((sum, one) => sum + one) / 10), 9);
  });
  test("none at all", () => {
    expect(forecast([])).toMatchObject({ rate: 0, error: undefined, errorIs: undefined, remarks: ["no history: there is nothing to forecast from"] });
    expect(forecast([0, 0, 0])).toMatchObject({ rate: 0, remarks: ["no demand in 3 periods: the rate is taken as 0"] });
  });
});

describe("weights that are fitted", () => {
  const jumped = [...Array<number>(12).fill(2), ...Array<number>(12).fill(10)];
  // The level stays where it jumped to, so the sooner a method follows, the less it errs: 0.3 is the most that is tried.
  test.each(["Croston", "SES"] as const)("%s: a level that jumped is followed as fast as may be", (one) => expect(fitWeights(one, jumped, 24)).toEqual({ alpha: 0.3, beta: 0.3 }));
  test("TSB: the same for its sizes, while the chance, always 1, needs no weight", () => expect(fitWeights("TSB", jumped, 24)).toEqual({ alpha: 0.3, beta: 0.01 }));
  // What lies above is followed by what lies below: every step towards the last demand is a step away from the next.
  test("a level that only sways is followed as little as may be", () => expect(fitWeights("SES", [10, ...Array.from({ length: 23 }, (_, week) => (week % 2 === 0 ? 9 : 11))], 24)).toEqual({ alpha: 0.01, beta: 0.01 }));
  test("what comes after the end is not looked at: a level that never moved is served by any weight, the least of them", () => expect(fitWeights("SES", jumped, 12)).toEqual({ alpha: 0.01, beta: 0.01 }));
  test("the usual weights when there is nothing to err by", () => expect(fitWeights("Croston", [0, 0, 0, 5], 4)).toEqual(USUAL_WEIGHTS));
});
