/** Lines measured by their points: developed length, and what cannot be bent. Worked by hand from R tan(θ/2) and θ R. */
import { inInches, type Metres } from "../../../src/core/quantity";
import type { Run } from "../../../src/core/runs";
import type { RawTable } from "../../../src/catalogue/table-spec";
import { aboveNoteAnd, allCodes, findingOf, report, table, type Shop } from "../workshop";

const shown = (value: Metres | undefined): number | undefined => value && Number(inInches(value).toFixed(4));
const platform = table("Platform | First year | Last year | Split", "P | 1960 | 1974 | front/rear");
const rest = ["master | valve | 14", "valve | RF | 50", "valve | rear-hose | 90", "axle-tee | LR | 28", "axle-tee | RR | 32"];
const TUBE_ROWS = "Tube | Material | Outside diameter (in) | Wall (in) | Form | Length (in) | Price | Least bend radius (in)";
const tube = (radius: string): RawTable => table(TUBE_ROWS, `CO | mild steel | 0.1875 | 0.028 | coil | 300 | 25 | ${radius}`);
/** The line from the valve to LF by its points; a tube of least radius 1 in unless said. */
function bent(points: string, { measured = "", radius = "1", settings = [] as string[], heading = "Bends (in)" } = {}): Shop {
  const lengths = table(`Platform | From | To | Length (in) | Tube (in) | ${heading}`, `P | valve | LF | ${measured} | 0.1875 | ${points}`, ...rest.map((row) => `P | ${row} | 0.1875 |`));
  return { platforms: [platform, lengths], more: [tube(radius)], settings };
}
function left(shop: Shop): Run {
  const run = report({}, shop).runs.find(({ joint }) => joint.to.instance.label === "HF@LF");
  if (!run) throw new Error("no run to LF");
  return run;
}

// Legs 10 along x, 8 along y, 6 along z at radius 1: 24 - 4 × 1 + 2 × π/2 = 20 + π = 23.1416; sawn with 2 (0.25 + 0.5) more.
const THREE_LEGS = "0 0 0; 10 0 0; 10 8 0; 10 8 6";
test("the developed length goes before the length measured, and is cut with its allowances", () => {
  const run = left(bent(THREE_LEGS, { measured: "30" }));
  expect([shown(run.length), run.basis, shown(run.cut), shown(run.bends?.radius), run.problems]).toEqual([23.1416, "developed", 24.6416, 1, []]);
  expect(allCodes({}, bent(THREE_LEGS))).toBe(allCodes({}, bent("0 0 0; 20 0 0")));
});

test.each([["Bends (mm)", "0 0 0; 254 0 0; 254 203.2 0; 254 203.2 152.4"], ["Bends", THREE_LEGS]])("%s is read in its own unit, and without one in that of Length", (heading, points) =>
  expect(shown(left(bent(points, { heading, measured: "30" })).length)).toBe(23.1416));

test.each(["(0,0,0) (10,0,0) (10,8,0) (10,8,6)", "0, 0, 0; 10, 0, 0; 10, 8, 0; 10, 8, 6;", "[0 0 0];[10 0 0];[10 8 0];[10 8 6]"])("points may be written %s", (points) => expect(shown(left(bent(points)).length)).toBe(23.1416));

test("the radius of Settings goes before the tube's: at 2 in, 24 - 8 + 2π", () => expect(shown(left(bent(THREE_LEGS, { settings: ["bend radius | 2 | in"] })).length)).toBe(22.2832));

describe("without a radius", () => {
  test("a length measured along the line is taken, and the answer says so", () => {
    const shop = bent(THREE_LEGS, { measured: "23", radius: "" });
    expect([shown(left(shop).length), left(shop).basis]).toEqual([23, "measured"]);
    expect(report({}, shop).assumptions.join()).toMatch(/valve to LF has points, but no bend radius is known/);
  });

  test("nothing is guessed where there are points only: the radius is asked for", () => {
    const shop = bent(THREE_LEGS, { radius: "" });
    expect([left(shop).length, left(shop).problems]).toEqual([undefined, ["no bend radius for the points of valve to LF"]]);
    expect(report({}, shop).questions.map(({ table: of, column, subject }) => [of, column, subject])).toEqual([["Tube", "Least bend radius", "CO"]]);
  });

  test("a straight line needs none", () => expect([shown(left(bent("0 0 0; 3 4 0", { radius: "" })).length), left(bent("0 0 0; 3 4 0", { radius: "" })).basis]).toEqual([5, "developed"]));
});

test("a pair bridged over a bent line is as long as its legs: 24 + 6, and stays an estimate", () => {
  const lengths = table("Platform | From | To | Length (in) | Tube (in) | Bends (in)", `P | valve | A | | 0.1875 | ${THREE_LEGS}`, "P | A | LF | 6 | 0.1875 |", ...rest.map((row) => `P | ${row} | 0.1875 |`));
  const run = left({ platforms: [platform, lengths], more: [tube("1")] });
  expect([shown(run.length), run.basis]).toEqual([30, "estimated"]);
});

describe("findings", () => {
  // Two right angles 1.5 apart at radius 1 need 2: the straight between is -0.5.
  const OVERLAP = "0 0 0; 10 0 0; 10 1.5 0; 20 1.5 0";
  // 2.25 apart leaves 0.25, under the bender's 0.5.
  const SHORT = "0 0 0; 10 0 0; 10 2.25 0; 20 2.25 0";
  // 2.5 apart leaves the 0.5 that is asked.
  const JUST = "0 0 0; 10 0 0; 10 2.5 0; 20 2.5 0";

  test.each([
    ["bends that overlap", OVERLAP, [], "bend-impossible"],
    ["a leg that turns back", "0 0 0; 10 0 0; 4 0 0", [], "bend-impossible"],
    ["a straight below the grip", SHORT, [], "straight-below-grip"],
    ["a radius below the tube's", THREE_LEGS, ["bend radius | 0.9 | in"], "bend-below-least-radius"],
  ] as const)("%s", (_, points, settings, code) => expect(aboveNoteAnd("point-without-bend", {}, bent(points, { measured: "30", settings: [...settings] }))).toBe(code));

  test.each([
    ["a straight as long as the grip", JUST, []],
    ["a shorter one for a bender that holds it", SHORT, ["bender grip | 0.25 | in"]],
    ["a radius as large as the tube's", THREE_LEGS, ["bend radius | 1 | in"]],
  ] as const)("%s is none", (_, points, settings) => expect(aboveNoteAnd("point-without-bend", {}, bent(points, { settings: [...settings] }))).toBe(""));

  test("legs in line are a note that names the point", () => {
    const shop = bent("0 0 0; 5 0 0; 10 0 0; 10 8 0");
    expect(findingOf("point-without-bend", {}, shop)).toMatchObject({ severity: "note", place: expect.stringMatching(/^run \d+, BLK L → HF@LF IN: point 2$/) as string });
    // The point in line is left out: 18 - 2 + π/2.
    expect(shown(left(shop).length)).toBe(17.5708);
  });

  test("a line that cannot be made falls back on its measured length, or has none", () => {
    const back = "0 0 0; 10 0 0; 4 0 0";
    expect([shown(left(bent(back, { measured: "17" })).length), left(bent(back, { measured: "17" })).basis]).toEqual([17, "measured"]);
    expect([left(bent(back)).length, left(bent(back)).problems]).toEqual([undefined, ["the points of valve to LF make no line"]]);
  });

  test("one die for all: one finding names the tube and its runs", () => {
    const lengths = table("Platform | From | To | Length (in) | Tube (in) | Bends (in)", `P | valve | LF | | 0.1875 | ${THREE_LEGS}`, `P | valve | RF | | 0.1875 | ${THREE_LEGS}`, ...rest.filter((row) => !row.includes("RF")).map((row) => `P | ${row} | 0.1875 |`));
    const tight = report({}, { platforms: [platform, lengths], more: [tube("1")], settings: ["bend radius | 0.5 | in"] }).findings.filter(({ code }) => code === "bend-below-least-radius");
    expect(tight.map(({ place, says }) => [place.replace(/\d/g, "n"), says.includes("Bends of 0.5 in") && says.includes("no less than 1 in")])).toEqual([["CO, runs n, n", true]]);
  });
});
