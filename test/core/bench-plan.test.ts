/** The bench by hand working: small jobs whose best plan can be seen. Prices are invented. */
import * as fc from "fast-check";
import { benchJobs, planOnTheBench, type BenchPlan } from "../../src/core/bench-plan";
import { inInches, inches } from "../../src/core/quantity";
import type { Run } from "../../src/core/runs";
import { defaultSettings } from "../../src/core/settings";
import type { TubeStock } from "../../src/core/tube";

const stick: TubeStock = { name: "S60", material: "mild steel", outsideDiameter: inches(0.1875), wall: inches(0.028), form: "stick", length: inches(60), price: 6 };
const coil: TubeStock = { ...stick, name: "C300", form: "coil", length: inches(300), price: 25 };
const run = (number: number, length: number | undefined, stock: TubeStock | undefined = stick): Run =>
  ({ number, tube: stick.outsideDiameter, material: "mild steel", stock, length: length === undefined ? undefined : inches(length) }) as Run;

const planned = (lengths: readonly number[], rack: readonly TubeStock[] = [stick]): BenchPlan => {
  const [job] = benchJobs([{ car: "Car 1", runs: lengths.map((length, index) => run(index + 1, length)) }], defaultSettings, rack).jobs;
  if (!job) throw new Error("no job");
  return planOnTheBench(job);
};

test("each end adds a flare and a trim to the piece, and the saw its width between two", () => {
  // 20 in net is 20 + 2 (0.25 + 0.5) = 21.5 in to saw; the kerf is 1/16 in, so the second begins at 21.5625 and both with their cuts take 43.125.
  const [first] = planned([20, 20]).sticks;
  expect(first?.cuts.map(({ from, to }) => [inInches(from), inInches(to)].map((at) => Number(at.toFixed(4))))).toEqual([[0, 21.5], [21.5625, 43.0625]]);
  expect([inInches(first?.used ?? inches(0)), inInches(first?.left ?? inches(0))].map((at) => Number(at.toFixed(4)))).toEqual([43.125, 16.875]);
});

test("a piece that ends where the stick ends needs no cut after it", () => {
  // 58.5 + 1.5 = 60.
  expect(planned([58.5]).sticks.map(({ left }) => left)).toEqual([0]);
});

test("the longest is sawn first, and every run is sawn once", () => {
  const { sticks, plan } = planned([10, 30, 20, 40, 12]);
  expect(sticks.every(({ cuts }) => cuts.every(({ piece }, index) => piece.length <= (cuts[index - 1]?.piece.length ?? Infinity)))).toBe(true);
  expect(sticks.flatMap(({ cuts }) => cuts.map(({ piece }) => piece.run.number)).sort()).toEqual([1, 2, 3, 4, 5]);
  expect([plan.cost, plan.proved]).toEqual([18, true]); // 119.5 in with cuts is more than one stick; 41.5 + 31.5 do not share one, and 21.5 + 13.5 + 11.5 leave no two sticks that hold all
});

test("an offcut that is counted is used before new tube is paid for, and one that is not is named", () => {
  const offcut: TubeStock = { ...stick, name: "OFF", form: "offcut", length: inches(25), price: undefined, onHand: 1 };
  const { sticks, plan } = planned([20, 20], [stick, offcut, { ...offcut, name: "HEAP", onHand: undefined }]);
  expect([sticks.map(({ stock }) => stock.name).sort(), plan.cost]).toEqual([["OFF", "S60"], 6]);
  expect(plan.problems).toEqual([{ item: "HEAP", says: "an offcut without a number on hand: left out" }]);
});

test("tube of another wall, size or material is another job, and runs that cannot be sawn are named", () => {
  const thick: TubeStock = { ...stick, name: "thick", wall: inches(0.035) };
  const wide: TubeStock = { ...stick, name: "wide", outsideDiameter: inches(0.25) };
  const { jobs, leftOut } = benchJobs([{ car: "A", runs: [run(1, 10), run(2, 10, thick), run(3, undefined), { ...run(4, 10), stock: undefined }] }, { car: "B", runs: [run(1, 10, wide), run(2, 11)] }], defaultSettings, [stick, coil, thick, wide]);
  expect(jobs.map(({ pieces, stocks }) => [pieces.map(({ car, run: { number } }) => `${car}${number}`), stocks.map(({ name }) => name)])).toEqual([[["A1", "B2"], ["S60", "C300"]], [["A2"], ["thick"]], [["B1"], ["wide"]]]);
  expect(leftOut.map(({ car, run: { number } }) => `${car}${number}`)).toEqual(["A3", "A4"]);
});

test("jobs come by the name of their material, then by size, then by wall, whatever the order of the runs", () => {
  const kinds: readonly TubeStock[] = [{ ...stick, material: "stainless" }, { ...stick, outsideDiameter: inches(0.25) }, { ...stick, wall: inches(0.035) }, stick, { ...stick, material: "copper-nickel", outsideDiameter: inches(0.25) }];
  const named = (order: readonly TubeStock[]): unknown =>
    benchJobs([{ car: "Car 1", runs: order.map((stock, index) => run(index + 1, 20, stock)) }], defaultSettings, kinds).jobs.map(({ material, outsideDiameter, wall }) => [material, ...[outsideDiameter, wall].map((size) => Number(inInches(size).toFixed(4)))]);
  const inOrder = [["copper-nickel", 0.25, 0.028], ["mild steel", 0.1875, 0.028], ["mild steel", 0.1875, 0.035], ["mild steel", 0.25, 0.028], ["stainless", 0.1875, 0.028]];
  expect(named(kinds)).toEqual(inOrder);
  expect(named([...kinds].reverse())).toEqual(inOrder);
});

test("a piece that no stock can hold is named by car and run, and the others are planned", () => {
  const { sticks, plan } = planned([20, 90]);
  expect(plan.problems).toEqual([{ item: "Car 1 run 2", says: "longer than any stock, end trim off" }]);
  expect(sticks.flatMap(({ cuts }) => cuts).length).toBe(1);
});

test("whatever the lengths, no stick is overfilled and every run is sawn exactly once", () => {
  fc.assert(fc.property(fc.array(fc.integer({ min: 16, max: 58 * 16 }), { minLength: 1, maxLength: 14 }), (sixteenths) => {
    const { sticks } = planned(sixteenths.map((length) => length / 16), [stick, coil]);
    for (const { stock, cuts, used, left } of sticks) {
      expect((cuts.at(-1)?.to ?? 0) <= stock.length + 1e-9).toBe(true);
      expect(used + left).toBeCloseTo(stock.length, 9);
      expect(cuts.every(({ from }, index) => from >= (cuts[index - 1]?.to ?? 0) && (index === 0 || from - (cuts[index - 1]?.to ?? 0) > defaultSettings.sawKerf - 1e-9))).toBe(true);
    }
    expect(sticks.flatMap(({ cuts }) => cuts.map(({ piece }) => piece.run.number)).sort((a, b) => a - b)).toEqual(sixteenths.map((_, index) => index + 1));
  }), { numRuns: 40, seed: 5 });
});
