import { budgetOf } from "../../../src/core/cutplan/budget";
import { dive, nothingCut, type Incumbent } from "../../../src/core/cutplan/dive";
import { improve } from "../../../src/core/cutplan/improve";
import { provenBound } from "../../../src/core/cutplan/lower-bound";
import { totalCost, type CuttingProblem, type CuttingSolution } from "../../../src/core/cutplan/problem";
import { EXACT, NEAR, relax, type PatternPool } from "../../../src/core/cutplan/relaxation";
import { searchAll } from "../../../src/core/cutplan/search-all";
import { faultsOf } from "./every-plan";
import { gilmoreGomory, shopJob } from "./jobs";

/** The search from no plan at all. */
function searched(problem: CuttingProblem, work: number, target = 0) {
  const proof = provenBound(problem, relax(problem, new Map(), budgetOf(Infinity), EXACT).values, budgetOf(Infinity));
  if (!proof) throw new Error("no proof");
  const incumbent = nothingCut(problem);
  return { isSettled: searchAll(problem, proof, incumbent, { target, budget: budgetOf(work) }), ...incumbent };
}

const coils: CuttingProblem = { pieces: [{ length: 70, count: 13 }], stocks: [{ length: 300, cost: 1800, count: Infinity }, { length: 60, cost: 690, count: Infinity }] };

// Thirteen pieces of 70 go four to a coil of 300 and never into a stick of 60: four coils, 72.00.
test("the least plan is found and known to be it", () => expect(searched(coils, 1_000_000)).toMatchObject({ isSettled: true, cost: 7200 }));

test("a search that is cut short says so", () => expect(searched(coils, 0).isSettled).toBe(false));

// By hand: three coils hold twelve; the one left out counts 100 × 18.00 × (1 + 70/70), in steps of 0.30: 3,600.00.
test("a piece that the stock does not suffice for is left out last", () => {
  const { isSettled, cost, solution } = searched({ ...coils, stocks: coils.stocks.map((stock, index) => ({ ...stock, count: index === 0 ? 3 : 2 })) }, 1_000_000);
  expect([isSettled, cost, solution.missing]).toEqual([true, 5400 + 360_000, [1]]);
});

// By hand: 91 of length, so one 46 is not enough; 8 8 15 15 and 8 10 10 10 7 fill two, at 48.
test("pieces of four lengths and three stocks", () => {
  const problem = { pieces: [[8, 3], [10, 3], [15, 2], [7, 1]].map(([length = 0, count = 0]) => ({ length, count })), stocks: [[22, 12], [25, 18], [46, 24]].map(([length = 0, cost = 0]) => ({ length, cost, count: Infinity })) };
  expect(searched(problem, 1_000_000)).toMatchObject({ isSettled: true, cost: 48 });
});

/** Takes sticks apart, with chances that are the same in every run. */
function improved(uses: CuttingSolution["uses"], { target, work }: { readonly target: number; readonly work: number }): Incumbent {
  const pool: PatternPool = new Map();
  const { values } = relax(gilmoreGomory, pool, budgetOf(Infinity), EXACT);
  const solution = { uses, missing: [0, 0, 0] };
  const incumbent = { solution, cost: totalCost(gilmoreGomory, solution) };
  let state = 7;
  improve(gilmoreGomory, incumbent, { pool, budget: budgetOf(work), target, values, chance: () => (state = (state * 16807) % 2147483647) / 2147483647 });
  return incumbent;
}

// Published least cost: see the job. From every piece on a stick of 5 of its own: 50 at 6.
test("taking sticks apart leads from a wasteful plan to the published least cost, and never away from it", () => {
  const wasteful = gilmoreGomory.pieces.map(({ count }, piece) => ({ times: count, pattern: { stock: 0, counts: gilmoreGomory.pieces.map((_, index) => Number(index === piece)) } }));
  const best = improved(wasteful, { target: 170, work: 20_000_000 });
  expect(best.cost).toBe(170);
  const still = improved(best.solution.uses, { target: 0, work: 2_000_000 });
  expect([still.cost, faultsOf(gilmoreGomory, { ...still, lowerBound: 170 })]).toEqual([170, []]);
});

test("sticks that cannot be cut better stay as they were", () => {
  const problem = shopJob(4);
  const pool: PatternPool = new Map();
  const root = relax(problem, pool, budgetOf(Infinity), NEAR);
  const incumbent = nothingCut(problem);
  dive(problem, root, incumbent, { pool, budget: budgetOf(Infinity), target: 0, shake: () => 0 });
  const costs = [incumbent.cost];
  let state = 7;
  for (let round = 0; round < 12; round += 1) {
    improve(problem, incumbent, { pool, budget: budgetOf(60_000), target: 0, values: root.values, chance: () => (state = (state * 16807) % 2147483647) / 2147483647 });
    costs.push(incumbent.cost);
  }
  expect(costs).toEqual([...costs].sort((a, b) => b - a));
  expect(faultsOf(problem, { ...incumbent, lowerBound: 0 })).toEqual([]);
});

test("a dive ends where no plan can cost less, and goes on where one could", () => {
  const [problem, budget] = [shopJob(3), budgetOf(Infinity)];
  const root = relax(problem, new Map(), budget, EXACT);
  const poolAfter = (target: number): number => {
    const pool: PatternPool = new Map();
    dive(problem, root, nothingCut(problem), { pool, budget, target, shake: () => 0 });
    return pool.size;
  };
  expect(poolAfter(Infinity)).toBe(0);
  expect(poolAfter(0)).toBeGreaterThan(0);
});
