import fc from "fast-check";
import { planLots } from "../../../src/core/stock/economic-order";
import { bestLot, orderPrice, roundedUp, yearlyCost, type Offer } from "../../../src/core/stock/price-breaks";
import { BREAK_KINDS } from "../../../src/core/stock-settings";
import { replenishment } from "../../../src/core/stock/replenishment";
import { property } from "../seeded";

// A year's demand of 1000 at 10, order cost 40, rate 20 %: √(2 · 40 · 1000 / 2) = 200. Cost at 200: 10000 + 200 + 200.
const plain: Offer = { kind: "all-units", bands: [{ from: 0, price: 10 }], orderCost: 40 };
const keeping = { holdingRate: 0.2, demand: 1000 };
test("square root of the whole", () => expect(bestLot(plain, keeping, { least: 1, multiple: 1 })).toEqual({ quantity: 200, band: 0, cost: 10_400 }));
// Multiples of 150: at 150 40 · 1000 / 150 + 150 = 416.67, at 300 133.33 + 300 = 433.33.
test("a multiple moves it to the cheaper neighbour", () => expect(bestLot(plain, keeping, { least: 0, multiple: 150 })?.quantity).toBe(150));
test("the least order is a floor, rounded up to the multiple", () => expect(bestLot(plain, keeping, { least: 320, multiple: 50 })?.quantity).toBe(350));
// From 500 on at 9.8: 9800 + 80 + 490 = 10370, less than 10400 at 200; without whole multiples in reach of the band the price stays.
test("a break is taken when it pays", () => expect(bestLot({ ...plain, bands: [{ from: 0, price: 10 }, { from: 500, price: 9.8 }] }, keeping, { least: 1, multiple: 1 })).toMatchObject({ quantity: 500, band: 1, cost: expect.closeTo(10_370, 9) as number }));
test("an order across a break: all at the lower price, or the first part at the higher", () => {
  const bands = [{ from: 0, price: 2 }, { from: 10, price: 1 }];
  expect(BREAK_KINDS.map((kind) => orderPrice({ kind, bands, orderCost: 0 }, 15))).toEqual([15, 25]);
});
test("without a price there is no best lot but the least", () => expect(bestLot({ ...plain, bands: [{ from: 0, price: 0 }] }, keeping, { least: 5, multiple: 5 })?.quantity).toBe(5));
test("a whole multiple is not rounded further up", () => expect([roundedUp(0.3, 0.1), roundedUp(7, 5), roundedUp(10, 5)]).toEqual([expect.closeTo(0.3, 12), 10, 10]));

const offer = fc.record({
  kind: fc.constantFrom(...BREAK_KINDS), orderCost: fc.integer({ min: 0, max: 60 }),
  // Prices that rise with the quantity make no sense in a list, but typed by mistake they must still be counted right.
  bands: fc.tuple(fc.array(fc.integer({ min: 5, max: 20 }), { minLength: 4, maxLength: 4 }), fc.uniqueArray(fc.integer({ min: 2, max: 90 }), { maxLength: 3 })).map(([prices, froms]) =>
    [0, ...froms.sort((a, b) => a - b)].map((from, band) => ({ from, price: prices[band] ?? 1 }))),
});
const sizes = fc.record({ least: fc.integer({ min: 1, max: 30 }), multiple: fc.integer({ min: 1, max: 12 }) });
property("no whole multiple costs less than the lot chosen", 300, fc.tuple(offer, sizes, fc.integer({ min: 1, max: 400 })), ([given, { least, multiple }, demand]) => {
  const tried = Array.from({ length: 400 }, (_, index) => (index + 1) * multiple).filter((quantity) => quantity >= least);
  const cheapest = Math.min(...tried.map((quantity) => yearlyCost(given, { holdingRate: 0.25, demand }, quantity)));
  const best = bestLot(given, { holdingRate: 0.25, demand }, { least, multiple });
  if (!best) throw new Error("no lot");
  expect(best.cost).toBeLessThanOrEqual(cheapest + 1e-8);
  expect(best.cost).toBeCloseTo(yearlyCost(given, { holdingRate: 0.25, demand }, best.quantity), 9);
  expect([best.quantity >= least, best.quantity % multiple]).toEqual([true, 0]);
  expect(best.band).toBe(given.bands.filter(({ from }) => from <= best.quantity).length - 1);
});

property("lots by period cost no more than any other way to part the periods", 100, fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 7 }), (demand) => {
  const costs = { orderCost: 11, holdingCost: 2 };
  // Each way is a set of periods that a lot may start in; the first with demand must be covered.
  const ways = Array.from({ length: 2 ** demand.length }, (_, mask) => costOf(costs, demand, mask));
  const { cost, lots } = planLots(costs, demand);
  expect(cost).toBe(Math.min(...ways));
  expect(lots.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(demand.reduce((sum, one) => sum + one, 0));
});

// An order costs 10, keeping 10 for a period 10 as well: two orders and one cost 20 alike.
test("of plans that cost the same the one that keeps less is taken", () => expect(planLots({ orderCost: 10, holdingCost: 1 }, [5, 10])).toEqual({ cost: 20, lots: [{ period: 0, quantity: 5 }, { period: 1, quantity: 10 }] }));
// An order costs 500, keeping one for a period 2: 300 kept for three periods would cost 1800, 70 for one cost 140.
test("lots stand in the periods they are for, and periods without demand have none", () => {
  expect(planLots({ orderCost: 500, holdingCost: 2 }, [0, 80, 0, 0, 300]).lots).toEqual([{ period: 1, quantity: 80 }, { period: 4, quantity: 300 }]);
  expect(planLots({ orderCost: 500, holdingCost: 2 }, [0, 80, 70]).lots).toEqual([{ period: 1, quantity: 150 }]);
  expect(planLots({ orderCost: 500, holdingCost: 2 }, [])).toEqual({ cost: 0, lots: [] });
});

function costOf({ orderCost, holdingCost }: { orderCost: number; holdingCost: number }, demand: readonly number[], mask: number): number {
  let [cost, lastLot] = [0, -1];
  demand.forEach((quantity, period) => {
    if ((mask & (1 << period)) !== 0) [cost, lastLot] = [cost + orderCost, period];
    if (quantity > 0) cost += lastLot < 0 ? Infinity : holdingCost * quantity * (period - lastLot);
  });
  return cost;
}

/** Between reviews 0 or 3 is asked for, each half of the time; lots of 2. By hand: positions after a review are s + 1 and s + 2. */
const review = Float64Array.of(0.5, 0, 0, 0.5);
const atOnce = () => replenishment({ step: 1, lead: Float64Array.of(1), review, cells: 12 }, 2);
const afterOneReview = () => replenishment({ step: 1, lead: review, review, cells: 12 }, 2);

describe("a policy by hand", () => {
  // s = 0: half of the time 3 meet 1 or 2, short 2 or 1 of a mean of 1.5. An order finds 1 or 2 below s = 0: always short.
  test.each([[0, 0.5, 0], [1, 1 - 0.25 / 1.5, 0.5], [2, 1, 1]])("no lead time, reorder point %d", (point, fillRate, cycleService) =>
    expect(atOnce().figuresAt(point)).toMatchObject({ fillRate: expect.closeTo(fillRate, 12) as number, cycleService: expect.closeTo(cycleService, 12) as number, reviewsPerOrder: expect.closeTo(2, 12) as number }));
  // s = 1: 2 or 3 after an order; before the next, the same half of the time, else none: (2.5 + 1.25) / 2.
  test("stock on hand", () => expect(atOnce().figuresAt(1).onHand).toBeCloseTo(1.875, 12));
  // s = 4, lead time of one review: positions 5 and 6; demand over both 0, 3, 6 by ¼, ½, ¼, short 1 for 6 against 5, half of the time: 0.125 of 1.5.
  // An order stands 1 or 2 below 4; with 3 more asked for before it arrives, 2 below is short: ¼.
  test("a lead time of one review", () => expect(afterOneReview().figuresAt(4)).toMatchObject({ fillRate: expect.closeTo(1 - 0.125 / 1.5, 12) as number, cycleService: expect.closeTo(0.75, 12) as number }));
  test("the least reorder point that reaches a service", () => {
    expect([0.5, 0.51, 0.9].map((share) => atOnce().reorderPointFor({ measure: "fill", share }))).toEqual([0, 1, 2]);
    expect([0.5, 0.51].map((share) => atOnce().reorderPointFor({ measure: "cycle", share }))).toEqual([1, 2]);
    expect(replenishment({ step: 1, lead: review, review, cells: 3 }, 2).reorderPointFor({ measure: "cycle", share: 0.9 })).toBeUndefined();
  });
});
