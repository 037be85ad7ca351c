import { demandDuring, demandMoments, DEMAND_LAW_KINDS, jobsLaw, type DemandLaw } from "../../../src/core/stock/demand-law";
import { poissonQuantile } from "../../../src/core/stock/distributions";
import { cumulated, momentsOf } from "../../../src/core/stock/lattice";
import { projectedStock, stockOutDay } from "../../../src/core/stock/projection";
import { lotsToday, reorder, type ReorderProblem } from "../../../src/core/stock/reorder";
import { recordedWeeks, weeklyUsage, dailyJobs } from "../../../src/core/stock/usage-history";

/** Ten a week without fail, two weeks of lead time, a look each week, pieces of 10. √(2 · 18 · 521.775/10 / (0.25 · 3)) = 50.0 pieces. */
const certain: ReorderProblem = {
  usage: { kind: "gamma", mean: 10, variance: 0 }, leadTime: 2, review: 1, service: { measure: "cycle", share: 0.95 },
  offer: { kind: "all-units", bands: [{ from: 0, price: 3 }], orderCost: 18 }, sizes: { least: 1, multiple: 1 }, holdingRate: 0.25, piece: 10, onHand: 0, onOrder: 0,
};

describe("certain demand by hand", () => {
  const LOT = Math.round(Math.sqrt((2 * 18 * 52.1775) / 0.75));
  test("the lot is the square-root quantity in whole pieces", () => expect([reorder(certain).lot, LOT]).toEqual([50, 50]));
  // A review finds the position anywhere from 0 to 10 below s; before the order arrives 20 more go. Nothing is short in 95 % when s = 20 + 0.95 · 10.
  test("cycle service", () => expect(Math.abs(reorder(certain).reorderPoint - 29.5)).toBeLessThan(0.15));
  // Positions s to s + 500 are as likely. Short at the end of a review's weeks (30 − s)² / 1000 on average, of which (20 − s)² / 1000 was short at their start
  // already: (500 − 20 s) / 1000 of the 10 asked for in a week. That is 5 % at s = 0.
  test("fill rate", () => expect(reorder({ ...certain, service: { measure: "fill", share: 0.95 } }).reorderPoint).toBeCloseTo(0, 1));
  test.each([[0, 50], [29.3, 50], [29.8, 0], [500, 0], [-480, 100]])("with %d on hand, %d pieces are ordered today", (onHand, pieces) => expect(reorder({ ...certain, onHand }).orderToday).toBe(pieces));
  test("what is on order counts", () => expect(reorder({ ...certain, onHand: 10, onOrder: 30 }).orderToday).toBe(0));
  test("an order costs its pieces and itself", () => expect([reorder(certain).orderCost, reorder({ ...certain, onHand: 100 }).orderCost]).toEqual([50 * 3 + 18, 0]));
  // 40 on hand and on order at 10 a week.
  test("weeks of cover", () => expect(reorder({ ...certain, onHand: 10, onOrder: 30 }).weeksOfCover).toBeCloseTo(4, 12));
  // A quote that is certain adds 15 over the three weeks: 45 in all, as ten a week became fifteen.
  test("a certain pipeline adds to both stretches of time", () => {
    const both = reorder({ ...certain, pipeline: { mean: 15, variance: 0 } });
    expect(both.demand.mean).toBe(45);
    expect(Math.abs(both.reorderPoint - (30 + 0.95 * 15))).toBeLessThan(0.25);
    expect(both.safetyStock).toBeCloseTo(both.reorderPoint - 45, 9);
  });
  // 521.775 pieces' worth of 10 is 52.1775 pieces a year at 3; 52.1775 / 50 orders of 18; on hand about s + Q/2 less demand over 2.5 weeks: 29.5 + 250 − 25 = 254.5.
  test("cost of a year", () => expect(reorder(certain).yearlyCost).toBeCloseTo(52.1775 * 3 + (52.1775 / 50) * 18 + (0.25 * 3 * 254.5) / 10, 0));
  // A look every second week: s covers 20 + 0.95 · 20. As many orders as before; on hand s + Q/2 less demand over 3 weeks: 39 + 250 − 30 = 259.
  test("cost of a year when the rack is looked at every second week", () => expect(reorder({ ...certain, review: 2 }).yearlyCost).toBeCloseTo(52.1775 * 3 + (52.1775 / 50) * 18 + (0.25 * 3 * 259) / 10, 0));
  // Lots of 10 pieces last ten weeks: no order at nine looks out of ten. Lots of 1 piece are ordered at each.
  test.each([[10, 10], [1, 1]])("lots of %d pieces are ordered at one look in %d", (pieces, looks) =>
    expect(reorder({ ...certain, offer: { ...certain.offer, orderCost: 0 }, sizes: { least: pieces, multiple: pieces } }).figures?.reviewsPerOrder).toBeCloseTo(looks, 6));
});

// Quotes fall evenly over lead time and review, so over three weeks 30 with a variance of 180 ask for what usage of 10 and 60 a week asks for.
test("quotes ask for as much stock as usage of the same mean and variance", () => {
  const quotes = reorder({ ...certain, usage: { kind: "gamma", mean: 0, variance: 0 }, pipeline: { mean: 30, variance: 180 } });
  const usage = reorder({ ...certain, usage: { kind: "gamma", mean: 10, variance: 60 } });
  expect(quotes.lot).toBe(usage.lot);
  expect(quotes.reorderPoint).toBeCloseTo(usage.reorderPoint, 6);
});
// One job of 1000 in a thousand weeks, lots of 2000. Only such a job brings the position below s, anywhere from 0 to 1000 below, and in the two weeks until the order
// arrives a second one is rare (2 in 1000): 95 % of orders arrive in time when s = 0.95 · 1000, and a little more for the second.
test("one rare large job: the point is nearly all of it", () => {
  const { reorderPoint } = reorder({ ...certain, usage: jobsLaw([1000], 1), sizes: { least: 200, multiple: 200 } });
  expect(Math.abs(reorderPoint - 952)).toBeLessThan(8);
});
// Mean 1 and deviation 10 a week: of so heavy a tail 8 deviations hold 99.8 %, not the 99.99 % asked for.
test("a service that lies far out in the tail is reached too", () => {
  const { figures, reorderPoint, demand } = reorder({ ...certain, usage: { kind: "gamma", mean: 1, variance: 100 }, service: { measure: "cycle", share: 0.9999 } });
  expect(figures?.cycleService).toBeGreaterThanOrEqual(0.9999);
  expect(reorderPoint).toBeGreaterThan(demand.mean + 8 * Math.sqrt(demand.variance));
});

test("no demand orders nothing, whatever the stock", () => expect(reorder({ ...certain, usage: { kind: "gamma", mean: 0, variance: 0 } })).toMatchObject({ orderToday: 0, reorderPoint: 0, weeksOfCover: undefined, yearlyCost: undefined, figures: undefined }));
test("quotes alone are bought for, with no cost of a year", () => {
  const advice = reorder({ ...certain, usage: { kind: "gamma", mean: 0, variance: 0 }, pipeline: { mean: 40, variance: 400 } });
  expect(advice.reorderPoint).toBeGreaterThan(40);
  expect([advice.orderToday > 0, advice.yearlyCost]).toEqual([true, undefined]);
});
test.each([["least order", { least: 60, multiple: 1 }, 60], ["multiple", { least: 1, multiple: 40 }, 40], ["least order up to the multiple", { least: 60, multiple: 25 }, 75]])("%s", (_name, sizes, lot) => expect(reorder({ ...certain, sizes }).lot).toBe(lot));
test.each(["cycle", "fill"] as const)("more %s service never asks for less stock, and is reached", (measure) => {
  const advice = [0.5, 0.8, 0.9, 0.95, 0.99, 0.999].map((share) => ({ share, ...reorder({ ...certain, usage: jobsLaw([3, 8, 60], 10), sizes: { least: 1, multiple: 1 }, service: { measure, share } }) }));
  advice.forEach(({ share, figures, reorderPoint }, index) => {
    expect(measure === "cycle" ? figures?.cycleService : figures?.fillRate).toBeGreaterThanOrEqual(share);
    expect(reorderPoint).toBeGreaterThanOrEqual(advice[index - 1]?.reorderPoint ?? 0);
  });
});

// At the point: one lot. Thirteen below: two lots of 5 reach 7, three 12.
test.each([[10, 1], [10.001, 0], [-3, 3], [5, 2]])("a position of %d, point 10, lots of 5: %d lots", (position, lots) => expect(lotsToday(position, 10, 5)).toBe(lots));

describe("demand over time", () => {
  const laws: readonly DemandLaw[] = [jobsLaw([1, 2, 9], 4), { kind: "gamma", mean: 4, variance: 9 }, { kind: "normal", mean: 20, variance: 9 }, { kind: "counted", mean: 4, variance: 9 }];
  test("all kinds are tried here", () => expect(laws.map(({ kind }) => kind)).toEqual(DEMAND_LAW_KINDS));
  test.each(laws.map((law) => [law.kind, law] as const))("%s: three weeks on the grid have three times the mean and variance of one", (_kind, law) => {
    const { mean, variance } = momentsOf({ step: 0.5, chances: demandDuring(law, 3, { step: 0.5, cells: 800 }) });
    const wanted = demandMoments(law, 3);
    expect(Math.abs(mean - wanted.mean)).toBeLessThan(0.01);
    expect(Math.abs(variance - wanted.variance)).toBeLessThan(0.1);
  });
  // qpois(0.95, 3) is 6 (R 4.2.2).
  test("counted demand of equal mean and variance is Poisson", () => {
    const shares = cumulated(demandDuring({ kind: "counted", mean: 3, variance: 3 }, 1, { step: 1, cells: 30 }));
    expect([shares.findIndex((share) => share >= 0.95), poissonQuantile(0.95, 3)]).toEqual([6, 6]);
  });
  test.each(laws.map((law) => [law.kind, law] as const))("%s: in no time there is certainly none", (_kind, law) => expect([...demandDuring(law, 0, { step: 0.5, cells: 20 })]).toEqual([1]));
  // P(16 or more) with mean 1 is about e⁻¹ / 16! = 1.8e-14, P(15) 2.8e-13: no service tells the first from nothing, and every sum over the rack takes that long.
  test("cells that hold next to nothing are not kept", () => expect(demandDuring(jobsLaw([1], 1), 1, { step: 1, cells: 800 })).toHaveLength(16));
  test.each([{ step: 0.31, cells: 10 }, { step: 1, cells: 4 }])("never more cells than asked for: %j", (grid) => laws.forEach((law) => expect(demandDuring(law, 1, grid).length).toBeLessThanOrEqual(grid.cells)));
  // Jobs of 1, 2 and 9 have a mean of 4: one a week makes 4 a week, of variance (1 + 4 + 81) / 3.
  test("jobs come as often as the forecast says", () => expect([jobsLaw([1, 2, 9], 4).jobs, demandMoments(jobsLaw([1, 2, 9], 4), 1).variance]).toEqual([1, expect.closeTo(86 / 3, 9)]));
});

describe("past usage", () => {
  const used = [{ date: 100, quantity: 4 }, { date: 107, quantity: 1 }, { date: 107, quantity: 2 }, { date: 114, quantity: 8 }, { date: 115, quantity: 99 }];
  // Weeks end with today, day 114: 108 to 114, 101 to 107, and day 100 falls in the one before.
  test("weeks end with today and reach back to the first row", () => expect(recordedWeeks(100, 114)).toEqual({ today: 114, weeks: 3 }));
  test("usage by week, what is after today left out", () => expect(weeklyUsage(used, { today: 114, weeks: 3 })).toEqual([4, 3, 8]));
  test("the pieces of one day are one job", () => expect(dailyJobs(used, { today: 114, weeks: 3 })).toEqual([4, 3, 8]));
  test("a week without a row is a week without usage", () => expect(weeklyUsage([{ date: 107, quantity: 4 }], { today: 114, weeks: 3 })).toEqual([0, 4, 0]));
  // Two weeks that end with day 114 begin with day 101.
  test("what is older than the weeks looked at is in neither", () => {
    const older = [{ date: 100, quantity: 4 }, { date: 101, quantity: 5 }];
    expect([weeklyUsage(older, { today: 114, weeks: 2 }), dailyJobs(older, { today: 114, weeks: 2 })]).toEqual([[5, 0], [5]]);
  });
  test("jobs stand in order of their days, and a day that took nothing in all has none", () => expect(dailyJobs([{ date: 110, quantity: 3 }, { date: 105, quantity: 2 }, { date: 112, quantity: 0 }, { date: 110, quantity: 1 }], { today: 114, weeks: 3 })).toEqual([2, 4]));
  test("nothing is recorded before today", () => expect(recordedWeeks(120, 114).weeks).toBe(0));
});

describe("stock if nothing is ordered", () => {
  const outlook = { today: 1000, onHand: 10, arrivals: [], weekly: [7] };
  // One a day: ten days are covered, the eleventh is not.
  test("runs out", () => expect(stockOutDay(outlook)).toBe(1010));
  test("an arrival in time moves the day; one too late does not", () => {
    expect(stockOutDay({ ...outlook, arrivals: [{ day: 1010, quantity: 3 }] })).toBe(1013);
    expect(stockOutDay({ ...outlook, arrivals: [{ day: 1011, quantity: 3 }] })).toBe(1010);
  });
  test("one that is late already counts today", () => expect(stockOutDay({ ...outlook, arrivals: [{ day: 900, quantity: 3 }] })).toBe(1013));
  // 7 in the first week, then 14 a week, two a day: 3 left last one day and a half.
  test("weeks of their own, the last going on", () => expect(stockOutDay({ ...outlook, weekly: [7, 14] })).toBe(1008));
  test("never without demand", () => expect(stockOutDay({ ...outlook, weekly: [0] })).toBeUndefined());
  test("week by week, short below 0", () => expect(projectedStock({ ...outlook, arrivals: [{ day: 1014, quantity: 2 }] }, 3).map((stock) => Number(stock.toFixed(9)))).toEqual([3, -4, -9]));
});
