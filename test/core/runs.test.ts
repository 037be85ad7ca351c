/** Lengths, tube, ends and scope of the runs. Lengths in inches are the workshop's own, summed here by hand. */
import { inInches, type Metres } from "../../src/core/quantity";
import type { Run } from "../../src/core/runs";
import { fourDiscs, LENGTH_ROWS, report, table, type CarCells, type Shop } from "./workshop";

const length = (value: Metres | undefined): number | undefined => value && Number(inInches(value).toFixed(6));
const run = (to: string, cells: CarCells = {}, shop?: Shop): Run => {
  const found = report(cells, shop).runs.find(({ joint }) => joint.to.instance.label === to);
  if (!found) throw new Error(`no run to ${to}`);
  return found;
};
const platform = table("Platform | First year | Last year | Split", "P | 1960 | 1974 | front/rear");
/** Platform P with these lengths alone. */
const measured = (...rows: readonly string[]): Shop => ({ platforms: [platform, table(LENGTH_ROWS, ...rows.map((row) => `P | ${row}`))] });
const REST = ["master | valve | 14 | 0.1875", "valve | RF | 50 | 0.1875", "valve | rear-hose | 90 | 0.1875", "axle-tee | LR | 28 | 0.1875", "axle-tee | RR | 32 | 0.1875"];

test("a measured pair is taken as it is", () => {
  const line = run("HF@LF");
  expect([length(line.length), line.basis, line.over]).toEqual([30, "measured", []]);
});

test("a measured pair holds both ways", () => expect(length(run("HF@LF", {}, measured("LF | valve | 31 | 0.1875", ...REST)).length)).toBe(31));

test("a pair not measured is bridged over the places between and called estimated: 60 + 40", () => {
  const line = run("HR");
  expect([length(line.length), line.basis, line.over]).toEqual([100, "estimated", ["frame-mid"]]);
});

test("of two ways the shorter is bridged: 20 + 25 against 10 + 60", () => {
  const line = run("HF@LF", {}, measured("valve | A | 20 | 0.1875", "A | LF | 25 | 0.1875", "valve | B | 10 | 0.1875", "B | LF | 60 | 0.1875", ...REST));
  expect([length(line.length), line.over]).toEqual([45, ["a"]]);
});

test("a measured pair goes before a shorter way round", () => expect(length(run("HF@LF", {}, measured("valve | LF | 99 | 0.1875", "valve | A | 1 | 0.1875", "A | LF | 1 | 0.1875", ...REST)).length)).toBe(99));

test("places that no measured pairs connect leave the run without a length, and the pair is asked for", () => {
  const shop = measured(...REST);
  expect([run("HF@LF", {}, shop).length, run("HF@LF", {}, shop).basis, run("HF@LF", {}, shop).problems]).toEqual([undefined, undefined, ["length valve to LF not measured"]]);
  expect(report({}, shop).questions.map(({ ask }) => ask)).toEqual(["How long is the line from valve to LF?"]);
});

test("a line between two parts at one place is as long as that place's own pair, and without one the setting estimates it", () => {
  expect(length(run("BLK", { Valves: "HO; BLK; TEE" }).length)).toBe(6);
  const { runs, assumptions } = report({ Valves: "HO; BLK; TEE" }, measured("valve | LF | 30 | 0.1875", ...REST));
  const short = runs.find(({ joint }) => joint.to.instance.label === "BLK" && joint.from.instance.label === "HO");
  // The setting's default is 12 in; the line into HO is 3/16 in, which fits both ports here.
  expect([length(short?.length), short?.basis, length(short?.tube)]).toEqual([12, "estimated", 0.1875]);
  expect(assumptions).toContain('the line HO OUT → BLK FI, all at valve, is taken by the setting "same-place line"');
});

const WIDE_BLOCK: Shop["parts"] = ["BLK distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 5/8-18 | >R front RF 3/8-24 | >RO rear 7/16-24", "HF hose @front | <IN 5/8-18 | >OUT 7/16-20 banjo", "HF-R hose @RF | <IN 3/8-24 | >OUT 7/16-20 banjo"];
// Nuts by tube (SAE J512 as remembered): 3/8-24 is for 3/16 in, 5/8-18 for 3/8 in.
test.each([["3/8 in", WIDE_BLOCK, 31, 0.375], ["3/16 in", [], 30, 0.1875]] as const)("of two tubes between one pair of places, ports for %s take theirs", (_, parts, inchesLong, tube) => {
  const shop = { ...measured("valve | LF | 30 | 0.1875", "valve | LF | 31 | 0.375", ...REST), parts };
  const line = run("HF@LF", parts.length > 0 ? { Hoses: "HF-R; HF; HR" } : { Hoses: "HF; HR" }, shop);
  expect([length(line.length), length(line.tube)]).toEqual([inchesLong, tube]);
});

test("where no length states the tube, the one size whose nuts fit both ports is taken, and the answer says so", () => {
  const shop = measured("valve | LF | 30 |", ...REST);
  expect(length(run("HF@LF", {}, shop).tube)).toBe(0.1875);
  expect(report({}, shop).assumptions).toEqual(["BLK L to HF@LF IN is taken as 3/16 in tube, the one size whose nuts fit both ports"]);
});

// 1/2-20 has nuts for 5/16 in, and as an oversize for 3/16 and 1/4 in.
test("where the nuts leave several sizes, the tube is asked for and the ends stay open", () => {
  const shop = measured("master | valve | 14 |", "valve | LF | 30 | 0.1875", ...REST.slice(1));
  const line = report({}, shop).runs[0];
  expect(line?.tube).toBeUndefined();
  expect(line?.problems).toEqual(["MC F: tube size not known", "BLK FI: tube size not known"]);
  expect(report({}, shop).questions.map(({ table: asked, column }) => `${asked} ${column}`)).toEqual(["Lengths Tube"]);
});

test("a bridged pair whose legs state different tubes has no tube of its own", () => {
  const line = run("HF@LF", {}, measured("valve | A | 20 | 0.1875", "A | LF | 25 | 0.25", ...REST));
  expect([length(line.length), length(line.tube)]).toEqual([45, 0.1875]);
  expect(report({}, measured("valve | A | 20 | 0.1875", "A | LF | 25 | 0.25", ...REST)).assumptions).toHaveLength(1);
});

test("an end that cannot be joined is a problem of the run, with the reason", () => {
  const { problems } = run("HF@LF", {}, { parts: ["BLK distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/4-16 | >R front RF 3/8-24 | >RO rear 7/16-24"] });
  expect(problems).toEqual(["BLK L: 3/16 in tube cannot be joined to 3/4-16 45° inverted flare, female (thread)"]);
});

test("a port without a thread is a problem of the run", () => {
  const shop: Shop = { parts: ["BLK distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF | >R front RF 3/8-24 | >RO rear 7/16-24"] };
  expect(run("HF@LF", {}, shop).problems).toEqual(["BLK L: thread or seat not known"]);
});

const scoped = (scope: string, cells: CarCells = {}): string[] => report({ ...cells, Scope: scope }).runs.map(({ joint }) => joint.to.instance.label);
test.each([
  ["front", ["BLK", "HF@LF", "HF@RF"]],
  ["rear", ["BLK", "HR", "WR@LR", "WR@RR"]],
  ["all", ["BLK", "HF@LF", "HF@RF", "BLK", "HR", "WR@LR", "WR@RR"]],
])("scope %s lists the runs that feed its wheels", (scope, ends) => expect(scoped(scope)).toEqual(ends));

test("a run that feeds both axles is in either scope", () => {
  const single = { Master: "MC-ONE", Valves: "BLK-4; TEE", Year: "1962" };
  expect([scoped("front", single), scoped("rear", single)]).toEqual([["BLK-4", "HF@LF", "HF@RF"], ["BLK-4", "HR", "WR@LR", "WR@RR"]]);
});

test("runs are numbered from 1 in the order fluid meets them, whatever the scope", () => {
  expect([report().runs, report({ Scope: "rear" }).runs].map((runs) => runs.map(({ number }) => number))).toEqual([[1, 2, 3, 4, 5, 6, 7], [1, 2, 3, 4]]);
});

test("each run knows its circuit and the wheels behind it", () => {
  expect(report().runs.map(({ circuit, wheels }) => `${circuit} ${wheels.join("+")}`)).toEqual(["front LF+RF", "front LF", "front RF", "rear LR+RR", "rear LR+RR", "rear LR", "rear RR"]);
});

test("two rear hoses end two runs", () => expect(scoped("rear", { ...fourDiscs, Valves: "BLK; TEE-F@frame-mid" })).toEqual(["BLK", "TEE-F", "HR2@LR", "HR2@RR"]));

test("no run is listed without a material being asked for", () => expect(report({ Material: "" }).runs.map(({ stock }) => stock)).toEqual(Array(7).fill(undefined)));
