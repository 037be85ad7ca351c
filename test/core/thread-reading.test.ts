import { standardThreads } from "../../src/catalogue/standard/threads";
import { inches, millimetres, type Metres } from "../../src/core/quantity";
import { defaultSettings } from "../../src/core/settings";
import { readThread, type ThreadCandidate } from "../../src/core/thread-reading";

const limits = { diameter: defaultSettings.nearMissDiameter, pitchShare: defaultSettings.nearMissPitchShare };
const read = (diameter: Metres, pitch?: Metres, gender: "male" | "female" = "male"): ThreadCandidate[] => readThread(standardThreads.map(({ thread }) => thread), { diameter, pitch, gender }, limits);
const named = (candidates: readonly ThreadCandidate[], match: ThreadCandidate["match"]): string[] => candidates.filter((one) => one.match === match).map(({ thread }) => thread.name).sort();
const perInch = (count: number): Metres => inches(1 / count);

// The window of 3/8-24 outside is 0.3667 to 0.3739 in (ASME B1.1 table, check value B38); M10x1 begins at 9.794 mm, 0.3856 in.
test("0.3705 in with 24 threads to the inch is 3/8-24, and M10x1 the one it is mistaken for", () => {
  const candidates = read(inches(0.3705), perInch(24));
  expect(named(candidates, "fits")).toEqual(["3/8-24"]);
  expect(candidates[0]?.thread.name).toBe("3/8-24");
  expect(candidates.find(({ thread }) => thread.name === "M10x1")?.match).toBe("near miss");
  expect(candidates[0]?.mistakenFor).toContain("M10x1");
});

/**
 * 11.0 mm: M11x1.5 measures 10.732 to 10.968 (0.032 off), 7/16-20 10.874 to 11.081, 7/16-24 10.899 to 11.083
 * (../shared/data/thread-windows.json); a worn or plated thread may be 0.05 off, so all three are offered.
 */
test.each([
  ["without a pitch all three are offered", undefined, ["7/16-20", "7/16-24", "M11x1.5"]],
  ["a pitch of 1.5 mm leaves M11x1.5", millimetres(1.5), ["M11x1.5"]],
  ["20 threads to the inch leave 7/16-20", perInch(20), ["7/16-20"]],
  ["24 threads to the inch leave 7/16-24", perInch(24), ["7/16-24"]],
] as const)("11.0 mm outside: %s", (_, pitch, names) => expect(named(read(millimetres(11), pitch), "fits")).toEqual(names));

// 1/2-20 measures up to 12.667 mm and M13x1.5 from 12.732: 0.064 mm apart.
test("a reading between 1/2-20 and M13x1.5 offers both", () => expect(named(read(millimetres(12.7)), "fits")).toEqual(expect.arrayContaining(["1/2-20", "M13x1.5"])));

// Minor diameters inside: 3/8-24 8.379 to 8.626 mm, 3/8-20 8.150 to 8.442, M10x1 8.918 to 9.154 (same data set).
test.each([
  ["8.55 mm and 24 threads to the inch", 8.55, perInch(24), ["3/8-24"]],
  ["9.05 mm and 1 mm", 9.05, millimetres(1), ["M10x1"]],
])("an inside reading of %s is read across the minor diameter", (_, diameter, pitch, names) => expect(named(read(millimetres(diameter), pitch, "female"), "fits")).toEqual(names));

test("the same reading outside and inside names different threads", () => expect(named(read(millimetres(9.4)), "fits")).not.toEqual(named(read(millimetres(9.4), undefined, "female"), "fits")));

test.each([["diameter", millimetres(30), undefined], ["pitch", millimetres(9.4), millimetres(4)]] as const)("nothing listed near in %s answers nothing", (_, diameter, pitch) => expect(read(diameter, pitch)).toEqual([]));

// M10x1 outside begins at 9.794 mm.
test.each([
  ["0.04 mm under its window", 9.754, true],
  ["0.06 mm under its window", 9.734, false],
])("a thread that reads %s fits or not: a damaged one is 0.05 mm off at most", (_, diameter, fits) => expect(named(read(millimetres(diameter), millimetres(1)), "fits").includes("M10x1")).toBe(fits));

test("candidates come nearest first, with how far each is off", () => {
  const off = read(millimetres(9.4)).map(({ diameterOff }) => diameterOff);
  expect(off).toEqual([...off].sort((a, b) => a - b));
  expect(read(millimetres(9.6)).find(({ thread }) => thread.name === "M10x1")?.diameterOff).toBeCloseTo(0.194e-3, 6); // 9.794 - 9.6
});

// Outside, 3/8-24 measures up to 9.497 mm (the same data set) and M10x1 from 9.794; an honest error is 0.05 mm or 2 % of the pitch.
test("both the diameter and the pitch say which is nearer", () => {
  const order = (pitch?: Metres): string[] => read(millimetres(9.62), pitch).map(({ thread }) => thread.name).filter((name) => name === "3/8-24" || name === "M10x1");
  // 9.62 is 0.123 mm above the one (2.5 errors) and 0.174 below the other (3.5): a pitch of 1 mm adds 2.7 to the first and turns it round.
  expect(order()).toEqual(["3/8-24", "M10x1"]);
  expect(order(millimetres(1))).toEqual(["M10x1", "3/8-24"]);
});

test("threads equally near come by name, however they are listed", () => {
  // 11.0 mm lies in the windows of 7/16-20 and 7/16-24 alike.
  const both = standardThreads.map(({ thread }) => thread).filter(({ name }) => name === "7/16-20" || name === "7/16-24");
  for (const listed of [both, [...both].reverse()]) {
    expect(readThread(listed, { diameter: millimetres(11), gender: "male" }, limits).map(({ thread }) => thread.name)).toEqual(["7/16-20", "7/16-24"]);
  }
});
