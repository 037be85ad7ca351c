import fc from "fast-check";
import type { LineSet, SetRun } from "../../src/core/catalogue";
import type { AdapterStep } from "../../src/core/fittings";
import { kitPlans, type Cover, type KitProblem } from "../../src/core/kit-search";
import { leastCostAssignment } from "../../src/core/least-cost-assignment";
import type { Run } from "../../src/core/runs";
import { property } from "./seeded";

describe("the least-cost assignment", () => {
  const costs = fc.tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 0, max: 2 })).chain(([rows, more]) => fc.array(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: rows + more, maxLength: rows + more }), { minLength: rows, maxLength: rows }));
  property("costs as little as the best of all assignments, and gives no column twice", 500, costs, (table) => {
    const columns = leastCostAssignment(table);
    expect(new Set(columns).size).toBe(table.length);
    expect(sum(columns.map((column, row) => table[row]?.[column] ?? NaN))).toBe(leastByTrying(table, 0, new Set()));
  });

  function leastByTrying(table: readonly (readonly number[])[], row: number, taken: ReadonlySet<number>): number {
    const line = table[row];
    if (!line) return 0;
    return Math.min(...line.map((cost, column) => (taken.has(column) ? Infinity : cost + leastByTrying(table, row + 1, new Set([...taken, column])))));
  }
});

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

interface Drawn {
  readonly madeUp: readonly (number | undefined)[];
  readonly sets: readonly { readonly price: number | undefined; readonly runs: readonly (readonly (number | undefined | null)[])[] }[];
  readonly apart: readonly boolean[];
}

const money = fc.integer({ min: 0, max: 4000 }).map((cents) => cents / 100);
const priceOrNone = fc.option(money, { nil: undefined, freq: 8 });
/** Of each run of a set: what its adapters cost on each run of the car; null where it does not fit. */
const drawn: fc.Arbitrary<Drawn> = fc.integer({ min: 1, max: 5 }).chain((runs) => fc.record({
  madeUp: fc.array(priceOrNone, { minLength: runs, maxLength: runs }),
  sets: fc.array(fc.record({ price: priceOrNone, runs: fc.array(fc.array(fc.oneof(fc.constant(null), fc.constant(0), priceOrNone), { minLength: runs, maxLength: runs }), { minLength: 1, maxLength: 4 }) }), { maxLength: 4 }),
  apart: fc.array(fc.boolean(), { minLength: 16, maxLength: 16 }),
}));

function problemOf({ madeUp, sets, apart }: Drawn): KitProblem {
  const runs = madeUp.map((_, index) => ({ number: index + 1 }) as Run);
  const lineSets = sets.map(({ price, runs: own }, index): LineSet => ({ name: `S${index}`, platform: "P", valves: [], price, runs: own.map((): SetRun => ({ from: "a", to: "b" })) }));
  const covers = sets.flatMap((set, s) => set.runs.flatMap((prices, r) => prices.flatMap((price, index): Cover[] => (price === null ? [] : [{ run: runs[index] as Run, set: lineSets[s] as LineSet, setRun: lineSets[s]?.runs[r] as SetRun, adapters: [], price }]))));
  const index = (set: LineSet): number => lineSets.indexOf(set);
  return { runs, sets: lineSets, covers, madeUp, goTogether: (a, b) => apart[Math.min(index(a), index(b)) * 4 + Math.max(index(a), index(b))] === false };
}

/** Cost of a plan as a pair: how many things without a price, and the rest in cents. */
type Cost = readonly [unpriced: number, cents: number];
const costOf = (prices: readonly (number | undefined)[]): Cost => [prices.filter((price) => price === undefined).length, Math.round(sum(prices.map((price) => price ?? 0)) * 100)];
const less = (a: Cost, b: Cost): boolean => a[0] < b[0] || (a[0] === b[0] && a[1] < b[1]);
const plus = (a: Cost, b: Cost): Cost => [a[0] + b[0], a[1] + b[1]];

/** Every selection of sets that may stand together, and every way to give their runs to the car's. */
function leastOfAll(problem: KitProblem): Cost {
  const selections = problem.sets.reduce<LineSet[][]>((found, set) => [...found, ...found.filter((others) => others.every((other) => problem.goTogether(other, set))).map((others) => [...others, set])], [[]]);
  return selections.map((sets) => plus(costOf(sets.map(({ price }) => price)), leastFrom(problem, sets, 0, []))).reduce((least, one) => (less(one, least) ? one : least));
}

function leastFrom(problem: KitProblem, sets: readonly LineSet[], row: number, taken: readonly SetRun[]): Cost {
  const run = problem.runs[row];
  if (!run) return [0, 0];
  const ways = problem.covers.filter((cover) => cover.run === run && sets.includes(cover.set) && !taken.includes(cover.setRun));
  const rest = [
    plus(costOf([problem.madeUp[row]]), leastFrom(problem, sets, row + 1, taken)),
    ...ways.map((cover) => plus(costOf([cover.price]), leastFrom(problem, sets, row + 1, [...taken, cover.setRun]))),
  ];
  return rest.reduce((least, one) => (less(one, least) ? one : least));
}

property("the chosen kit costs as little as the best of all selections of sets and all assignments of their runs", 1500, drawn, (one) => {
  const problem = problemOf(one);
  const [best] = kitPlans(problem);
  const made = problem.madeUp.filter((_, index) => !best?.covers.some(({ run }) => run === problem.runs[index]));
  expect(costOf([...(best?.sets ?? []).map(({ price }) => price), ...(best?.covers ?? []).map(({ price }) => price), ...made])).toEqual(leastOfAll(problem));
});

property("no plan buys a set that does nothing, lays two lines for one run, or one line of a set twice", 300, drawn, (one) => {
  for (const { sets, covers } of kitPlans(problemOf(one))) {
    expect(sets.filter((set) => !covers.some((cover) => cover.set === set))).toEqual([]);
    expect([new Set(covers.map(({ run }) => run)).size, new Set(covers.map(({ setRun }) => setRun)).size]).toEqual([covers.length, covers.length]);
  }
});

// Two runs that cost 30 each to make; whatever is bought costs the same 60 in all.
describe("of ways that cost the same", () => {
  const best = (madeUp: readonly number[], ...sets: readonly { readonly price: number; readonly does: readonly number[]; readonly adapters?: number; readonly onHand?: number }[]): string => {
    const runs = madeUp.map((_, index) => ({ number: index + 1 }) as Run);
    const shelf = sets.map(({ price, does, onHand }, index): LineSet => ({ name: `S${index + 1}`, platform: "P", valves: [], price, onHand, runs: does.map((): SetRun => ({ from: "a", to: "b" })) }));
    const covers = sets.flatMap(({ does, adapters = 0 }, s) => does.map((row, r): Cover => ({ run: runs[row - 1] as Run, set: shelf[s] as LineSet, setRun: shelf[s]?.runs[r] as SetRun, adapters: Array.from({ length: adapters }, () => ({}) as AdapterStep), price: 0 })));
    const [plan] = kitPlans({ runs, sets: shelf, covers, madeUp, goTogether: () => true });
    return plan?.sets.map(({ name }) => name).join(" ") ?? "nothing";
  };
  test.each([
    ["a set goes before making the runs", () => best([30, 30], { price: 60, does: [1, 2] }), "S1"],
    ["two sets that leave nothing to make go before one that leaves a run", () => best([30, 30], { price: 30, does: [1] }, { price: 30, does: [2] }), "S1 S2"],
    ["the one with fewer adapters goes first, whatever they cost", () => best([30, 30], { price: 50, does: [1, 2], adapters: 1 }, { price: 50, does: [1, 2] }), "S2"],
    ["one set goes before two", () => best([30, 30], { price: 20, does: [1] }, { price: 20, does: [2] }, { price: 40, does: [1, 2] }), "S3"],
    ["what is in stock goes first", () => best([30, 30], { price: 50, does: [1, 2] }, { price: 50, does: [1, 2], onHand: 1 }), "S2"],
    ["none on hand is not in stock", () => best([30, 30], { price: 50, does: [1, 2], onHand: 0 }, { price: 50, does: [1, 2], onHand: 1 }), "S2"],
    ["and else the first by name", () => best([30, 30], { price: 50, does: [1, 2] }, { price: 50, does: [1, 2] }), "S1"],
    ["but a cent cheaper goes before all that", () => best([30, 29.99], { price: 60, does: [1, 2] }), ""],
  ])("%s", (_, chosen, expected) => expect(chosen()).toBe(expected));
});

property("a set more on the shelf never makes the kit dearer", 300, drawn, (one) => {
  const [all] = kitPlans(problemOf(one));
  const [fewer] = kitPlans(problemOf({ ...one, sets: one.sets.slice(0, -1) }));
  expect(all?.rank).toBeLessThanOrEqual(fewer?.rank ?? NaN);
});
