/** The least-cost way to cover a car's runs with any number of sets, runs made up from straight tube, and adapters. */
import type { LineSet, SetRun } from "./catalogue";
import type { AdapterStep } from "./fittings";
import { leastCostAssignment } from "./least-cost-assignment";
import type { Run } from "./runs";

/** A run of the car that a run of a set may do. */
export interface Cover {
  readonly run: Run;
  readonly set: LineSet;
  readonly setRun: SetRun;
  readonly adapters: readonly AdapterStep[];
  readonly price: number | undefined;
}

export interface KitProblem {
  readonly runs: readonly Run[];
  readonly sets: readonly LineSet[];
  /** True when two sets may be for one car. */
  readonly goTogether: (a: LineSet, b: LineSet) => boolean;
  /** Every pair that is possible. */
  readonly covers: readonly Cover[];
  /** Of each run made up from straight tube, in the order of `runs`; undefined when it has no price or cannot be made. */
  readonly madeUp: readonly (number | undefined)[];
}

/** One way to cover the car: the sets bought and what each of their runs does. */
export interface KitPlan {
  readonly sets: readonly LineSet[];
  readonly covers: readonly Cover[];
  /** Compares plans: ten-thousandths of the currency, anything without a price counting more than all that has one. */
  readonly rank: number;
}

/**
 * Compares selections of sets, each with the least-cost assignment of its runs, and proves the best: a set is added to a selection only where
 * it does not make it dearer, and a set that would make it dearer now does so beside more sets too (diminishing returns), so none is missed.
 * @returns the plans looked at, best first, straight tube among them; a plan in which a set does nothing is left out
 * @source L. S. Shapley, Complements and Substitutes in the Optimal Assignment Problem, 1962: the value of an assignment has diminishing returns
 */
export function kitPlans(problem: KitProblem): KitPlan[] {
  const straight: KitPlan = { sets: [], covers: [], rank: sum(problem.madeUp.map(rankOf)) };
  const found: KitPlan[] = [straight];
  grow(problem, straight, problem.sets, found);
  return found.filter(everySetServes).sort(byWorth);
}

const everySetServes = ({ sets, covers }: KitPlan): boolean => sets.every((set) => covers.some((one) => one.set === set));

function grow(problem: KitProblem, plan: KitPlan, candidates: readonly LineSet[], found: KitPlan[]): void {
  const grown = candidates.filter((set) => plan.sets.every((other) => problem.goTogether(other, set))).map((set) => ({ set, with: planOf(problem, [...plan.sets, set]) }));
  found.push(...grown.map((one) => one.with));
  const useful = grown.filter((one) => one.with.rank <= plan.rank && everySetServes(one.with));
  useful.forEach((one, index) => { grow(problem, one.with, useful.slice(index + 1).map(({ set }) => set), found); });
}

const PER_UNIT = 1e4;
/** A million of the currency: more than any car costs, and small enough for two dozen of them to stay exact. */
const UNPRICED = 1e10;
/** Above every tie-break of one plan: 16 a run, and two dozen runs. */
const TIE_BREAKS = 1024;
const MADE_UP = 16;
/** Not to be chosen at all. */
const NEVER = 1e14;

const rankOf = (price: number | undefined): number => (price === undefined ? UNPRICED : Math.round(price * PER_UNIT));

/** Each run takes a run of one of the sets or is made up, at least cost; at one cost, a run is rather covered, and rather with fewer adapters. */
function planOf({ runs, covers, madeUp }: KitProblem, sets: readonly LineSet[]): KitPlan {
  const offered = covers.filter(({ set }) => sets.includes(set));
  const columns = [...new Set(offered.map(({ setRun }) => setRun))];
  const table = runs.map((run) => columns.map((setRun) => offered.find((cover) => cover.run === run && cover.setRun === setRun)));
  const costs = table.map((line, row) => [
    ...line.map((cover) => (cover ? TIE_BREAKS * rankOf(cover.price) + cover.adapters.length : NEVER)),
    ...runs.map((_, other) => (other === row ? TIE_BREAKS * rankOf(madeUp[row]) + MADE_UP : NEVER)),
  ]);
  const chosen = leastCostAssignment(costs).map((column, row) => table[row]?.[column]);
  const rank = sum(sets.map(({ price }) => rankOf(price))) + sum(chosen.map((cover, row) => rankOf(cover ? cover.price : madeUp[row])));
  return { sets, covers: chosen.filter((cover) => cover !== undefined), rank };
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const adapterCount = ({ covers }: KitPlan): number => sum(covers.map(({ adapters }) => adapters.length));
const inStock = ({ sets }: KitPlan): boolean => sets.every(({ onHand }) => onHand !== undefined && onHand > 0);
const names = ({ sets }: KitPlan): string => sets.map(({ name }) => name).join("; ") || "~";

/** The cheaper, then the one that covers more, with fewer adapters, of fewer sets; what is in stock only breaks a tie. */
const byWorth = (a: KitPlan, b: KitPlan): number =>
  a.rank - b.rank || b.covers.length - a.covers.length || adapterCount(a) - adapterCount(b) || a.sets.length - b.sets.length ||
  Number(inStock(b)) - Number(inStock(a)) || (names(a) < names(b) ? -1 : 1);
