/** What to buy of one tube. Seven metres a week without fail unless a test says otherwise, so 1 m a day, in pieces of 7 m: 52.1775 pieces a year. */
import type { PriceBreak } from "../../../src/core/catalogue";
import { inches, metres } from "../../../src/core/quantity";
import { defaultSettings } from "../../../src/core/settings";
import { stockPolicy } from "../../../src/core/stock/stock-policy";
import { reorderTube, type TubeReorder } from "../../../src/core/stock/tube-reorder";
import type { DatedQuantity } from "../../../src/core/stock/usage-history";
import type { TubeStock } from "../../../src/core/tube";

const TODAY = 1000;
const TOMORROW = TODAY + 1;
const steadily: readonly DatedQuantity[] = Array.from({ length: 30 }, (_, week) => ({ date: TODAY - 7 * week, quantity: 7 }));

const seven: TubeStock = { name: "seven", material: "mild steel", outsideDiameter: inches(3 / 16), wall: inches(0.028), form: "stick", length: metres(7), price: 20, onHand: 1, leadTimeWeeks: 1, orderCost: 18 };

const reorderOf = (over: Partial<TubeStock> = {}, breaks: readonly PriceBreak[] = [], used: readonly DatedQuantity[] = steadily): TubeReorder =>
  reorderTube({ ...seven, ...over }, { used, recorded: { today: TODAY, weeks: 30 } }, breaks, stockPolicy(defaultSettings));

const fromOn = (fromQuantity: number, price: number): PriceBreak => ({ tube: "seven", fromQuantity, price });

describe("a row that lacks what an order takes", () => {
  test.each([
    ["Length is blank", { length: undefined }], ["Lead time is blank", { leadTimeWeeks: undefined }], ["offcuts are not bought", { form: "offcut" }],
  ] as const)("%s: no advice, and the forecast stands", (problem, over) => {
    const line = reorderOf(over);
    expect(line).toMatchObject({ advice: undefined, stockOut: undefined, problems: [problem], priced: true, tube: { name: "seven" } });
    expect(line.forecast.rate).toBeCloseTo(7, 9);
  });
  test("both are named", () => expect(reorderOf({ length: undefined, leadTimeWeeks: undefined }).problems).toEqual(["Length is blank", "Lead time is blank"]));
});

describe("what was taken for granted", () => {
  test("nothing of a whole row", () => expect(reorderOf().assumed).toEqual([]));
  test.each([
    [{ onHand: undefined }, "On hand is blank or 0 and taken as none"],
    [{ orderCost: undefined }, "Order cost is blank and taken as nothing"],
    [{ onOrder: 2 }, "Due is blank: what is on order is taken to arrive after a whole lead time"],
    [{ price: undefined }, "Price is blank: the lot is the least order, and costs leave the tube out"],
  ] as const)("%j", (over, sentence) => expect(reorderOf(over).assumed).toEqual([sentence]));
  test("what is on order with its day is no guess", () => expect(reorderOf({ onOrder: 2, due: TODAY + 5 }).assumed).toEqual([]));
  // Below six days of usage no method is chosen either, which the forecast says after it.
  test.each([[1, "only 1 day of usage to draw job sizes from"], [5, "only 5 days of usage to draw job sizes from"]])("job sizes drawn from %d days", (days, sentence) =>
    expect(reorderOf({}, [], steadily.slice(0, days)).assumed).toEqual([sentence, expect.stringContaining("too little history") as string]));
  test("six days are enough to draw from", () => expect(reorderOf({}, [], steadily.slice(0, 6)).assumed).toEqual([]));
  test("without any usage it is the missing demand that is said", () => expect(reorderOf({}, [], []).assumed).toEqual(["no demand in 30 periods: the rate is taken as 0"]));
});

describe("price", () => {
  test.each([["its own", 20, [], true], ["only of a quantity", undefined, [fromOn(10, 15)], true], ["none", undefined, [], false]] as const)("%s", (_name, price, breaks, priced) => expect(reorderOf({ price }, breaks).priced).toBe(priced));
  // √(2 · 18 · 52.1775 / (0.25 · 20)) = 19.4: 19 pieces cost 49.43 + 47.5, 20 cost 46.96 + 50 a year.
  test("of the tube alone", () => expect(reorderOf({ onHand: 0 }).advice).toMatchObject({ lot: 19, orderToday: 19, orderCost: 19 * 20 + 18 }));
  // A price from the first piece on stands for the tube's own: √(2 · 18 · 52.1775 / (0.25 · 15)) = 22.4.
  test("from one piece on", () => expect(reorderOf({ onHand: 0 }, [fromOn(1, 15)]).advice).toMatchObject({ lot: 22, orderCost: 22 * 15 + 18 }));
  test("from one piece on, where only what exceeds a break is cheaper: no piece costs the tube's own price", () =>
    expect(reorderTube({ ...seven, onHand: 0 }, { used: steadily, recorded: { today: TODAY, weeks: 30 } }, [fromOn(1, 15)], { ...stockPolicy(defaultSettings), breaks: "incremental" }).advice).toMatchObject({ lot: 22, orderCost: 22 * 15 + 18 }));
  // At 40 for 12 a year costs 626.1 + 23.5 + 60 = 709.6; at 22 for 15 782.7 + 42.7 + 41.3 = 866.6. Breaks come in any order.
  test("by quantity only: the first price holds below its quantity too", () => {
    expect(reorderOf({ onHand: 0, price: undefined }, [fromOn(40, 12), fromOn(10, 15)]).advice).toMatchObject({ lot: 40, orderCost: 40 * 12 + 18 });
    expect(reorderOf({ onHand: 0, price: undefined }, [fromOn(100, 15)]).advice).toMatchObject({ lot: 22, orderCost: 22 * 15 + 18 });
  });
  test("without one the lot is the least order", () => expect(reorderOf({ onHand: 0, price: undefined, leastOrder: 6 }).advice).toMatchObject({ lot: 6, orderCost: 18 }));
  test("a least order and a multiple are kept to", () => expect(reorderOf({ onHand: 0, leastOrder: 30, orderMultiple: 25 }).advice?.lot).toBe(50));
});

describe("the day on which it runs out", () => {
  test("one piece of 7 m lasts seven days", () => expect(reorderOf().stockOut).toBe(TOMORROW + 7));
  test("nothing on hand is short tomorrow", () => expect(reorderOf({ onHand: undefined }).stockOut).toBe(TOMORROW));
  // A lead time of a week brings it on the eighth day, in time for that day.
  test("what is on order without a day arrives after a whole lead time, which may be too late", () => {
    expect(reorderOf({ onOrder: 1 }).stockOut).toBe(TOMORROW + 14);
    expect(reorderOf({ onOrder: 1, leadTimeWeeks: 2 }).stockOut).toBe(TOMORROW + 7);
  });
  test("with a day it arrives on that day, which may be too late", () => {
    expect(reorderOf({ onOrder: 1, due: TOMORROW + 7 }).stockOut).toBe(TOMORROW + 14);
    expect(reorderOf({ onOrder: 1, due: TOMORROW + 8 }).stockOut).toBe(TOMORROW + 7);
  });
  test("what is on order counts against the reorder point", () => {
    const [plain, more] = [reorderOf(), reorderOf({ onOrder: 1, due: TOMORROW })];
    expect([plain.advice?.weeksOfCover, more.advice?.weeksOfCover]).toEqual([expect.closeTo(1, 9), expect.closeTo(2, 9)]);
  });
});
