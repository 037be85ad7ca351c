import fc from "fast-check";
import { budgetOf } from "../../../src/core/cutplan/budget";
import { bestFillings, type Room, type Thing } from "../../../src/core/cutplan/knapsack";
import { property } from "../seeded";
import { fillings } from "./every-plan";

const things = fc.array(fc.record({ weight: fc.integer({ min: 1, max: 15 }), value: fc.integer({ min: 0, max: 20 }), most: fc.integer({ min: 0, max: 5 }) }), { minLength: 1, maxLength: 5 });
const valueOf = (list: readonly Thing[], counts: readonly number[]): number => list.reduce((sum, { value }, at) => sum + value * (counts[at] ?? 0), 0);
const best = (list: readonly Thing[], room: Room) => bestFillings(list, [room], budgetOf(Infinity))?.[0];

describe("the most valuable filling", () => {
  property("is what trying everything finds, for several rooms at once", 300, fc.tuple(things, fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 1, maxLength: 3 })), ([list, capacities]) => {
    const found = bestFillings(list, capacities.map((capacity) => ({ capacity, above: 0, step: 0.5 })), budgetOf(Infinity));
    capacities.forEach((capacity, room) => {
      const all = fillings(list.map(({ weight }) => weight), list.map(({ most }) => most), capacity);
      const most = all.reduce((value, counts) => Math.max(value, valueOf(list, counts)), 0);
      const filling = found?.[room];
      expect(filling?.value ?? 0).toBe(most);
      if (filling) expect(all).toContainEqual(filling.counts);
      if (filling) expect(valueOf(list, filling.counts)).toBe(filling.value);
    });
  });

  property("scaling all values scales it, and more room never makes it less", 200, fc.tuple(things, fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 20 })), ([list, capacity, more]) => {
    const value = best(list, { capacity, above: 0, step: 0.5 })?.value ?? 0;
    const tripled = list.map((thing) => ({ ...thing, value: 3 * thing.value }));
    expect(best(tripled, { capacity, above: 0, step: 0.5 })?.value ?? 0).toBe(3 * value);
    expect(best(list, { capacity: capacity + more, above: 0, step: 0.5 })?.value ?? 0).toBeGreaterThanOrEqual(value);
  });

  test("is not given when it is worth no more than asked for", () => {
    const list = [{ weight: 3, value: 5, most: 2 }];
    expect(best(list, { capacity: 6, above: 9, step: 0.5 })?.value).toBe(10);
    expect(best(list, { capacity: 6, above: 10, step: 0.5 })).toBeUndefined();
  });

  test("is not given at all when the budget is over", () => {
    expect(bestFillings([{ weight: 1, value: 1, most: 9 }], [{ capacity: 9, above: 0, step: 0.5 }], budgetOf(0))).toBeUndefined();
  });
});
