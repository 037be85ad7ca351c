import fc from "fast-check";
import { budgetOf } from "../../../src/core/cutplan/budget";
import { dive, nothingCut, type Incumbent } from "../../../src/core/cutplan/dive";
import { totalCost, type CuttingProblem } from "../../../src/core/cutplan/problem";
import { EXACT, relax, type PatternPool } from "../../../src/core/cutplan/relaxation";
import { settleByMixes } from "../../../src/core/cutplan/stock-mixes";
import { property } from "../seeded";
import { leastCost } from "./every-plan";

/** A first plan, then what the mixes make of it. */
function settled(problem: CuttingProblem, lowerBound: number) {
  const pool: PatternPool = new Map();
  const [budget, incumbent] = [budgetOf(Infinity), nothingCut(problem)];
  dive(problem, relax(problem, pool, budget, EXACT), incumbent, { pool, budget, target: 0, shake: () => 0 });
  const bound = settleByMixes(problem, incumbent, { pool, budget: budgetOf(5_000_000), lowerBound });
  return { bound, cost: incumbent.cost };
}

// Thirteen pieces of 70 go four to a coil of 300 and never into a stick of 60: four coils, 72. Tube joined end to end would be 910:
// three coils and a stick, 60.90, and that is the bound it starts from. No mix below 72 has four coils.
test("no mix that costs less holds the pieces: the bound rises to the plan", () => {
  const problem = { pieces: [{ length: 70, count: 13 }], stocks: [{ length: 300, cost: 1800, count: Infinity }, { length: 60, cost: 690, count: Infinity }] };
  expect(settled(problem, 6090)).toEqual({ bound: 7200, cost: 7200 });
});

// By hand: three of 100 to a length of 300, none to one of 10; two of 300 are the least, at 12 000. Below it a mix has one of 300 or none, and as
// many of 10 as the rest of the money buys: two mixes. With the cheap stock first there would be twelve thousand beginnings.
test.each([["cheapest", [0, 1]], ["dearest", [1, 0]]])("the dear stock is chosen first, though the %s is listed first", (_, order) => {
  const stocks = [{ length: 10, cost: 1, count: Infinity }, { length: 300, cost: 6000, count: Infinity }];
  expect(settled({ pieces: [{ length: 100, count: 4 }], stocks: order.map((index) => stocks[index] as (typeof stocks)[number]) }, 40)).toEqual({ bound: 12_000, cost: 12_000 });
});

test("a plan that leaves one kind of piece out raises nothing, though another is cut whole", () => {
  const problem = { pieces: [{ length: 70, count: 13 }, { length: 50, count: 1 }], stocks: [{ length: 300, cost: 1800, count: 2 }, { length: 60, cost: 690, count: 4 }] };
  expect(settled(problem, 100).bound).toBe(100);
});

test("a plan that leaves pieces out raises nothing", () => {
  const problem = { pieces: [{ length: 70, count: 13 }], stocks: [{ length: 300, cost: 1800, count: 2 }, { length: 60, cost: 690, count: 4 }] };
  expect(settled(problem, 100).bound).toBe(100);
});

test("too many mixes are not gone through", () => {
  const problem = { pieces: [{ length: 7, count: 4000 }], stocks: [5, 6, 7, 8].map((cost) => ({ length: 10 * cost, cost, count: Infinity })) };
  expect(settled(problem, 1).bound).toBe(1);
});

const job = fc.record({
  pieces: fc.array(fc.record({ length: fc.integer({ min: 2, max: 20 }), count: fc.integer({ min: 1, max: 3 }) }), { minLength: 1, maxLength: 4 }),
  stocks: fc.array(fc.record({ length: fc.integer({ min: 20, max: 50 }), cost: fc.integer({ min: 1, max: 30 }) }), { minLength: 1, maxLength: 3 }),
});
/** The dearest plan: every piece a length of its own, of the first stock that holds it. */
function oneByOne(problem: CuttingProblem): Incumbent {
  const uses = problem.pieces.map(({ length, count }, piece) => ({ times: count, pattern: { stock: problem.stocks.findIndex((stock) => stock.length >= length), counts: problem.pieces.map((_, index) => Number(index === piece)) } }));
  const solution = { uses, missing: problem.pieces.map(() => 0) };
  return { solution, cost: totalCost(problem, solution) };
}
property("from whatever plan and with however little work, the bound is never above the least cost and the plan never below it", 300, fc.tuple(job, fc.integer({ min: 0, max: 60_000 })), ([{ pieces, stocks }, work]) => {
  const problem = { pieces, stocks: stocks.map((stock) => ({ ...stock, count: Infinity })) };
  const [least, incumbent] = [leastCost(problem, pieces.map(({ count }) => count)), oneByOne(problem)];
  expect(settleByMixes(problem, incumbent, { pool: new Map(), budget: budgetOf(work), lowerBound: 0 })).toBeLessThanOrEqual(least);
  expect(incumbent.cost).toBeGreaterThanOrEqual(least);
});

// By hand: 91 of length, so one 46 is not enough; 8 8 15 15 and 8 10 10 10 7 fill two, at 48.
test.each(Array.from({ length: 60 }, (_, thousand) => thousand * 1000 + 451))("a mix that work of %i does not settle raises nothing", (work) => {
  const problem = { pieces: [[8, 3], [10, 3], [15, 2], [7, 1]].map(([length = 0, count = 0]) => ({ length, count })), stocks: [[22, 12], [25, 18], [46, 24]].map(([length = 0, cost = 0]) => ({ length, cost, count: Infinity })) };
  expect(settleByMixes(problem, oneByOne(problem), { pool: new Map(), budget: budgetOf(work), lowerBound: 0 })).toBeLessThanOrEqual(48);
});
