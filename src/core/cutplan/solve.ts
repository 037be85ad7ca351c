/** The search as a whole: relaxation, proof, first plan, then turns of diving and improving until proved or out of budget. */
import { shareOf, type Budget } from "./budget";
import { dive, nothingCut, type Incumbent } from "./dive";
import { gathered, improve } from "./improve";
import { materialBound, provenBound, roundedUp } from "./lower-bound";
import { costStep, stockCost, totalCost, withCounts, type CuttingProblem, type CuttingSolution } from "./problem";
import { searchAll } from "./search-all";
import { EXACT, relax, type PatternPool } from "./relaxation";
import { settleByMixes } from "./stock-mixes";

export interface SolvedCutting {
  /** Cuts no piece that is not asked for; `missing` are those for which no stock was left. */
  readonly solution: CuttingSolution;
  readonly cost: number;
  /** No plan for the pieces cut here costs less. */
  readonly lowerBound: number;
}

/**
 * A plan of little cost, with how little it could be at best.
 * Plans as many pieces as it can, the longest first to count, and only then at the least cost. The same job and budget give the same plan.
 * @throws Error when a bound comes out above a plan's cost, which would be a fault of ours
 */
export function solveCutting(problem: CuttingProblem, budget: Budget): SolvedCutting {
  const first = search(problem, nothingCut(problem), budget);
  const { missing } = first.incumbent.solution;
  if (missing.every((count) => count === 0)) return checked(problem, first);
  const cuttable = withCounts(problem, problem.pieces.map(({ count }, piece) => count - (missing[piece] ?? 0)), problem.stocks.map(({ count }) => count));
  const start = { uses: first.incumbent.solution.uses, missing: missing.map(() => 0) };
  const second = search(cuttable, { solution: start, cost: totalCost(cuttable, start) }, budget);
  return checked(cuttable, second, missing);
}

interface Searched {
  readonly incumbent: Incumbent;
  readonly lowerBound: number;
}

/** Turns without a better plan after which the search gives up. */
const STALE_TURNS = 30;
const WORK_OF_A_TURN = 400_000;
/** Enough for the few mixes of a small job; a large one has too many. */
const WORK_OF_MIXES = 4_000_000;
/** Enough to settle most jobs of a few sticks for certain. */
const WORK_OF_SEARCHING_ALL = 1_000_000;

function search(problem: CuttingProblem, incumbent: Incumbent, budget: Budget): Searched {
  const pool: PatternPool = new Map();
  const material = materialBound(problem, budget);
  const root = relax(problem, pool, budget, EXACT);
  const proof = provenBound(problem, root.values, budget);
  const step = costStep(problem);
  const lowerBound = Math.max(roundedUp(proof?.bound ?? 0, step), roundedUp(material, step));
  dive(problem, root, incumbent, { pool, budget, target: lowerBound, shake: () => 0 });
  if (proof && isSmall(incumbent) && searchAll(problem, proof, incumbent, { target: lowerBound, budget: shareOf(budget, WORK_OF_SEARCHING_ALL) })) return { incumbent, lowerBound: incumbent.cost };
  const raised = settleByMixes(problem, incumbent, { pool, budget: shareOf(budget, WORK_OF_MIXES), lowerBound });
  const chance = chances();
  for (let stale = 0; stale < STALE_TURNS && incumbent.cost > raised && !budget.isOver(); stale += 1) {
    const before = incumbent.cost;
    improve(problem, incumbent, { pool, budget: shareOf(budget, WORK_OF_A_TURN), target: raised, values: root.values, chance });
    dive(problem, root, incumbent, { pool: new Map(pool), budget, target: raised, shake: () => 0.3 * chance() });
    if (incumbent.cost < before) stale = -1;
  }
  return { incumbent, lowerBound: raised };
}

/** Sticks beyond which trying every way is hopeless. */
const FEW_STICKS = 16;
const isSmall = ({ solution }: Incumbent): boolean => solution.uses.reduce((sum, { times }) => sum + times, 0) <= FEW_STICKS;

function checked(problem: CuttingProblem, { incumbent, lowerBound }: Searched, missing: readonly number[] = incumbent.solution.missing): SolvedCutting {
  const solution = { uses: gathered(incumbent.solution.uses), missing };
  const cost = stockCost(problem, solution);
  if (lowerBound > cost) throw new Error(`the cut plan costs ${cost}, below its bound ${lowerBound}`);
  return { solution, cost, lowerBound };
}

/** A fixed sequence of numbers from 0 to 1 (linear congruential, constants of Numerical Recipes). */
function chances(): () => number {
  let state = 1;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
