import { parseCatalogue } from "../../src/catalogue/parse-catalogue";
import { inches, inInches } from "../../src/core/quantity";
import type { CarReport } from "../../src/core/report";
import type { Run } from "../../src/core/runs";
import { sayRunsOfSets } from "../../src/taskpane/tube-tables";
import { tubeTotals } from "../../src/taskpane/tube-totals";
import type { CarLine } from "../../src/workbook/workbook-reports";

const { catalogue } = parseCatalogue([]);
const [stock] = catalogue.tube.filter(({ material, outsideDiameter }) => material === "mild steel" && outsideDiameter === inches(3 / 16));

// Allowance a run from the shipped Settings: two flares of 0.25 in, two trims of 0.5 in, one saw kerf of 0.0625 in: 1.5625 in.
test("net, allowance and cut are added over cars; estimated runs and cars are counted", () => {
  const totals = tubeTotals({ catalogue, cars: [line("one", run(20), run(30, "estimated")), line("two", run(40))] });
  const [total] = totals.totals;
  expect(totals.totals).toHaveLength(1);
  expect(inInches(total?.net ?? (0 as never))).toBeCloseTo(90, 9);
  expect(inInches(total?.cut ?? (0 as never))).toBeCloseTo(90 + 3 * 1.5625, 9);
  expect([total?.runs, total?.cars, total?.estimated.runs]).toEqual([3, 2, 1]);
  expect(inInches(total?.estimated.net ?? (0 as never))).toBeCloseTo(30, 9);
  expect(totals.leftOut).toEqual([]);
});

test("runs that the chosen set brings bent are counted apart", () => {
  const [sawn, bent] = [run(20), run(30)];
  const one = line("one", sawn, bent);
  const { totals } = tubeTotals({ catalogue, cars: [{ ...one, report: { runs: [sawn, bent], kit: { chosen: { madeUp: [sawn] } } } as unknown as CarReport }, line("two", run(40))] });
  expect([totals[0]?.runs, totals[0]?.preBent]).toEqual([3, 1]);
});

test.each([
  [1, 5, "All 5 runs are counted as straight tube; 1 of them comes bent in a set, and the bench below saws the others only."],
  [6, 44, "All 44 runs are counted as straight tube; 6 of them come bent in a set, and the bench below saws the others only."],
  [6, 6, "All 6 runs are counted as straight tube; all of them come bent in a set, so the bench below saws none."],
  [1, 1, "The run is counted as straight tube; it comes bent in a set, so the bench below saws none."],
])("%d of %d runs that come bent are told in a sentence that fits their number", (preBent, runs, says) => expect(sayRunsOfSets(preBent, runs)).toBe(says));

test("runs without a length stay out of the totals and are told by car", () => {
  const unknown = run(undefined);
  const two = line("two", unknown);
  const totals = tubeTotals({ catalogue, cars: [line("one", run(20)), two, { ...two, name: "none", report: undefined }] });
  expect([totals.totals[0]?.runs, totals.totals[0]?.cars]).toEqual([1, 1]);
  expect(totals.leftOut).toEqual([{ line: two, runs: [unknown] }]);
});

test("sizes and materials are kept apart, 4.75 mm and 3/16 in are one size", () => {
  const quarter = { ...run(10), tube: inches(1 / 4), stock: undefined };
  const metric = { ...run(10), tube: inches(4.75 / 25.4) };
  const stainless: Run = { ...run(10), material: "stainless", stock: undefined };
  const { totals } = tubeTotals({ catalogue, cars: [line("one", run(10), quarter, metric, stainless)] });
  expect(totals.map(({ material, runs }) => `${material ?? ""} ${runs}`).sort()).toEqual(["mild steel 1", "mild steel 2", "stainless 1"]);
});

/** Only what the totals read of a run. */
const run = (length: number | undefined, basis: Run["basis"] = "measured"): Run =>
  ({ material: "mild steel", tube: inches(3 / 16), stock, basis, length: length === undefined ? undefined : inches(length) }) as Run;

const line = (name: string, ...runs: readonly Run[]): CarLine =>
  ({ table: "Cars", row: 0, sheetRow: 2, name, customer: "", verdict: "sound", findings: [], report: { runs, kit: {} } as unknown as CarReport });
