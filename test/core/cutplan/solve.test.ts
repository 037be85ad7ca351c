import fc from "fast-check";
import { budgetOf } from "../../../src/core/cutplan/budget";
import type { CuttingProblem } from "../../../src/core/cutplan/problem";
import { solveCutting, type SolvedCutting } from "../../../src/core/cutplan/solve";
import { property } from "../seeded";
import { faultsOf, leastCost } from "./every-plan";
import { gilmoreGomory, log100, shopJob } from "./jobs";

const WORK = 20_000_000;

describe("published jobs", () => {
  test.each([["Gilmore and Gomory 1961", gilmoreGomory, 170], ["the log of 100 units", log100, 334]] as const)("%s is proved", (_, problem, published) => {
    const solved = solveCutting(problem, budgetOf(WORK));
    expect(faultsOf(problem, solved)).toEqual([]);
    expect([solved.cost, solved.lowerBound]).toEqual([published, published]);
  });
});

describe("shop jobs", () => {
  test.each([1, 2])("400 pieces of 30 lengths from 4 stocks, made up by seed %i, come within 0.3 %% of the bound", (seed) => {
    const problem = shopJob(seed);
    const solved = solveCutting(problem, budgetOf(8_000_000));
    expect(faultsOf(problem, solved)).toEqual([]);
    expect(solved.cost / solved.lowerBound - 1).toBeLessThanOrEqual(0.003);
  });

  test("the same job and work give the same plan", () => {
    expect(solveCutting(shopJob(5), budgetOf(1_000_000))).toEqual(solveCutting(shopJob(5), budgetOf(1_000_000)));
  });

  test("a search that is stopped at once still plans every piece", () => {
    const problem = shopJob(6);
    const solved = solveCutting(problem, budgetOf(WORK, () => true));
    expect(faultsOf(problem, solved)).toEqual([]);
    expect(solved.solution.missing.every((count) => count === 0)).toBe(true);
    expect(solved.lowerBound).toBeGreaterThan(0);
  });

  test("limited stock and offcuts that cost nothing are never overdrawn", () => {
    const { pieces, stocks } = shopJob(7);
    const counts = [Infinity, Infinity, 15, 20];
    const limited = [...stocks.map((stock, at) => ({ ...stock, count: counts[at] ?? 0 })), { length: 1282, cost: 0, count: 5 }, { length: 2402, cost: 0, count: 3 }];
    const solved = solveCutting({ pieces, stocks: limited }, budgetOf(5_000_000));
    expect(faultsOf({ pieces, stocks: limited }, solved)).toEqual([]);
    expect(solved.cost / solved.lowerBound - 1).toBeLessThanOrEqual(0.006);
  });
});

const smallJob: fc.Arbitrary<CuttingProblem> = fc.record({
  pieces: fc.array(fc.record({ length: fc.integer({ min: 2, max: 20 }), count: fc.integer({ min: 1, max: 3 }) }), { minLength: 1, maxLength: 4 }),
  stocks: fc.array(fc.record({ length: fc.integer({ min: 20, max: 50 }), cost: fc.integer({ min: 1, max: 30 }), count: fc.oneof(fc.constant(Infinity), fc.integer({ min: 0, max: 3 })) }), { minLength: 1, maxLength: 3 }),
});

const leastFor = (problem: CuttingProblem, { solution }: SolvedCutting): number => leastCost(problem, problem.pieces.map(({ count }, piece) => count - (solution.missing[piece] ?? 0)));

describe("small jobs against trying everything", () => {
  property("the plan is sound, proved, and costs the least", 150, smallJob, (problem) => {
    const solved = solveCutting(problem, budgetOf(WORK));
    expect(faultsOf(problem, solved)).toEqual([]);
    expect([solved.cost, solved.lowerBound]).toEqual([leastFor(problem, solved), leastFor(problem, solved)]);
  });

  property("with little work the cost may be more and the bound less, never the other way round", 150, fc.tuple(smallJob, fc.integer({ min: 0, max: 400 })), ([problem, work]) => {
    const solved = solveCutting(problem, budgetOf(work));
    expect(faultsOf(problem, solved)).toEqual([]);
    expect(solved.lowerBound).toBeLessThanOrEqual(leastFor(problem, solved));
    expect(solved.cost).toBeGreaterThanOrEqual(leastFor(problem, solved));
  });

  property("a piece is left out only where the stock does not suffice for all", 150, smallJob, (problem) => {
    const { missing } = solveCutting(problem, budgetOf(WORK)).solution;
    const suffices = leastCost(problem, problem.pieces.map(({ count }) => count)) < Infinity;
    expect(missing.every((count) => count === 0)).toBe(suffices);
  });
});
