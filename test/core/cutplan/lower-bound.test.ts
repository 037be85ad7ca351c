import fc from "fast-check";
import { budgetOf } from "../../../src/core/cutplan/budget";
import { materialBound, provenBound, roundedUp } from "../../../src/core/cutplan/lower-bound";
import { property } from "../seeded";
import { leastCost } from "./every-plan";
import { gilmoreGomory } from "./jobs";

describe("bounds", () => {
  // By hand: 20 × 2 + 10 × 3 + 20 × 4 = 150 of length; sixteen 9s hold 144 for 160, and one 6 the rest for 7: 167.
  test("material alone, in whole lengths", () => expect(materialBound(gilmoreGomory, budgetOf(Infinity))).toBe(167));
  test("material from limited stock goes on to the next dearer one", () => {
    // By hand: 10 needed; 4 for 2, and the other 6 for 6.
    expect(materialBound({ pieces: [{ length: 5, count: 2 }], stocks: [{ length: 4, cost: 2, count: 1 }, { length: 6, cost: 6, count: Infinity }] }, budgetOf(Infinity))).toBe(8);
  });
  test("a very large job counts parts of lengths", () => {
    // By hand: 5 000 000 needed; 4 000 000 for 2, and the other 1 000 000 of 3 000 000 for a third of 6.
    expect(materialBound({ pieces: [{ length: 5e6, count: 1 }], stocks: [{ length: 4e6, cost: 2, count: 1 }, { length: 3e6, cost: 6, count: Infinity }] }, budgetOf(Infinity))).toBeCloseTo(4, 9);
  });
  test("a job whose budget ran out counts parts of lengths too", () => {
    // By hand: 10 needed from a stock of 8 for 4: two of them in whole lengths, one and a quarter in parts.
    const problem = { pieces: [{ length: 5, count: 2 }], stocks: [{ length: 8, cost: 4, count: Infinity }] };
    expect(materialBound(problem, budgetOf(Infinity))).toBe(8);
    expect(materialBound(problem, budgetOf(0))).toBe(5);
  });

  const job = fc.record({
    pieces: fc.array(fc.record({ length: fc.integer({ min: 2, max: 12 }), count: fc.integer({ min: 1, max: 3 }) }), { minLength: 2, maxLength: 3 }),
    stocks: fc.array(fc.record({ length: fc.integer({ min: 12, max: 30 }), cost: fc.integer({ min: 1, max: 20 }), count: fc.oneof(fc.constant(Infinity), fc.integer({ min: 1, max: 4 })) }), { minLength: 1, maxLength: 3 }),
  });

  property("any piece values at all prove a bound that no plan goes below", 200, fc.tuple(job, fc.array(fc.double({ min: 0, max: 30, noNaN: true }), { minLength: 3, maxLength: 3 })), ([problem, values]) => {
    const least = leastCost(problem, problem.pieces.map(({ count }) => count));
    expect(materialBound(problem, budgetOf(Infinity))).toBeLessThanOrEqual(least);
    const bound = provenBound(problem, values, budgetOf(Infinity))?.bound ?? Infinity;
    expect(bound).toBeLessThanOrEqual(least + 1e-9);
  });

  test.each([[166.7, 1, 167], [167, 1, 167], [166.7, 5, 170], [0, 5, 0]])("%f in steps of %i is at least %i", (bound, step, least) => expect(roundedUp(bound, step)).toBe(least));
});
