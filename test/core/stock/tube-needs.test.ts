/** What open quotes need. The workshop's car takes 268 in of tube over 7 runs; each run is sawn 1.5 in longer, and the saw takes 1/16 in (test/core/tubing.test.ts). */
import { inches } from "../../../src/core/quantity";
import type { CarReport } from "../../../src/core/report";
import { defaultSettings } from "../../../src/core/settings";
import type { OpenQuote } from "../../../src/core/stock-history";
import { tubeNeeds, type PipelineNeeds } from "../../../src/core/stock/tube-needs";
import { report, table, TUBE } from "../workshop";

const whole = report({}, { more: [table(TUBE, "CO-300 | mild steel | 0.1875 | 0.028 | coil | 300 | 25")] });

const needsOf = (over: Partial<OpenQuote> = {}, car: CarReport = whole): PipelineNeeds => tubeNeeds([{ quote: "Q1", car: "C", chance: 0.5, likely: 100, quantity: 2, ...over }], new Map([["c", car]]), defaultSettings);

const inInches = (lengths: readonly number[]): number => lengths.reduce((sum, length) => sum + length, 0) / inches(1);

/** The car with some of its runs changed. */
const withRuns = (change: (run: CarReport["runs"][number], index: number) => CarReport["runs"][number]): CarReport => ({ ...whole, runs: whole.runs.map(change) });

test("a quote for two cars needs twice the tube of one, saw cuts included", () => {
  const { needs, problems, assumed } = needsOf();
  expect(needs.map(({ quote, tube, chance }) => [quote, tube, chance])).toEqual([["Q1", "CO-300", 0.5]]);
  expect(inInches(needs.map(({ quantity }) => quantity))).toBeCloseTo(2 * 278.9375, 9);
  expect([problems, assumed]).toEqual([[], []]);
});

test("its pieces are what is sawn, each run once for each car, with a name that tells it from the others", () => {
  const pieces = needsOf().needs[0]?.pieces ?? [];
  expect(pieces.map(({ count }) => count)).toEqual([2, 2, 2, 2, 2, 2, 2]);
  expect(inInches(pieces.map(({ length }) => length))).toBeCloseTo(268 + 7 * 1.5, 9);
  expect(pieces[0]?.name).toBe("Q1 C, run 1");
  expect(new Set(pieces.map(({ name }) => name)).size).toBe(7);
});

test("a blank quantity is one car, and it is said", () => {
  const { needs, assumed } = needsOf({ quantity: undefined });
  expect(inInches(needs.map(({ quantity }) => quantity))).toBeCloseTo(278.9375, 9);
  expect(assumed).toEqual([{ quote: "Q1", says: "Quantity is blank and taken as 1" }]);
});

test("a date that was taken for a blank one is said of the quote", () => expect(needsOf({ likely: undefined, earliest: 90, latest: 110 }).assumed).toEqual([{ quote: "Q1", says: "Likely is blank and taken midway" }]));

test("runs cut from different tubes are needs of their own", () => {
  const { needs } = needsOf({}, withRuns((run, index) => (index === 0 && run.stock ? { ...run, stock: { ...run.stock, name: "OTHER" } } : run)));
  expect(needs.map(({ tube, pieces }) => [tube, pieces.length])).toEqual([["OTHER", 1], ["CO-300", 6]]);
});

test.each(["length", "stock"] as const)("a run without its %s is left out and counted as such, and the other six stand", (missing) => {
  const [first] = whole.runs;
  const { needs, problems } = needsOf({}, withRuns((run, index) => (index === 0 ? { ...run, [missing]: undefined } : run)));
  expect(inInches(needs.map(({ quantity }) => quantity))).toBeCloseTo(2 * (278.9375 - inInches([first?.length ?? NaN]) - 1.5625), 9);
  expect(problems).toEqual([{ quote: "Q1", says: "1 of 7 runs of C has no tube of the rack or no length and is left out" }]);
});

test("a car without runs needs nothing, and it is said", () => expect(needsOf({}, { ...whole, runs: [] })).toEqual({ needs: [], problems: [{ quote: "Q1", says: "C has no runs yet" }], assumed: [] }));
