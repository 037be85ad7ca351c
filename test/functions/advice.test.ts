import { demoTables } from "../../src/catalogue/demo";
import { catalogueTables } from "../../src/catalogue/table-specs";
import { NUTS, table, TUBE, type CarCells, type Shop } from "../core/workshop";
import { about, call, carRow, failure, HEADINGS, keyOf, rowsOf, tableFrom, type Cell, type Range } from "./sheet";

const SETS = "Set | Platform | First year | Last year | Valves | Front | Rear | Material | Price | On hand | Frequency";
const SET_RUNS = "Set | From | To | Tube (in) | Length (in) | Thread A | Seat A | Thread B | Seat B";
const seat = "inverted-flare-45";
const ALL = ["master | valve | 1/2-20 | 1/2-20", "master | valve | 9/16-18 | 1/2-20", "valve | LF | 3/8-24 | 3/8-24", "valve | RF | 3/8-24 | 3/8-24", "valve | rear-hose | 7/16-24 | 3/8-24", "axle-tee | LR | 3/8-24 | 3/8-24"];
const runs = ALL.map((run) => run.split(" | ")).map(([from, to, a, b]) => `EARLY | ${from} | ${to} | 0.1875 | 20 | ${a} | ${seat} | ${b} | ${seat}`);
const tools = [table(TUBE, "MS | mild steel | 0.1875 | 0.028 | coil | 300 | 30"), table(NUTS, ...["3/8-24", "1/2-20", "9/16-18", "7/16-24"].map((thread) => `N-${thread} | 0.1875 | ${thread} | ${seat} | male | 1`))];
const shop: Shop = { more: [...tools, table(SETS, "EARLY | P | 1960 | 1974 | BLK | disc | drum | mild steel | 95 | 2 | 3", "LATER | P | 1960 | 1974 | CV | disc | drum | mild steel | 88 | 1 | 1"), table(SET_RUNS, ...runs, `EARLY | valve | valve | 0.1875 | 5 | 3/8-24 | ${seat} | 3/8-24 | ${seat}`)] };
const key = keyOf(shop);

// Names and order are frozen in docs/functions.md; new columns only come after them.
test.each<[string, readonly string[]]>([
  ["ASK", ["Car", "Rank", "Question", "Table", "Column", "About", "Answers", "Why", "Decides", "Bits"]],
  ["KIT", ["Car", "Set", "Price", "On hand", "Covered", "Made up", "Adapters", "Cost", "Straight tube cost", "Possible sets", "Problem", "Unused", "Next best"]],
])("%s answers under its frozen headings", (name, headings) => expect(about(name, [{}], key)[0]).toEqual(headings));

const record = (rows: Range, index = 1): Record<string, Cell | undefined> => Object.fromEntries((rows[0] ?? []).map((heading, position) => [String(heading), rows[index]?.[position]]));

describe("ASK", () => {
  test("a car with nothing open has no row", () => expect(about("ASK", [{}], key)).toHaveLength(1));

  test("the best question comes first, with its answers, its reason and what each answer decides", () => {
    // Three to one between the two sets: 0.811 bit.
    expect(record(about("ASK", [{ Valves: "?", Material: "" }], key))).toEqual({
      Car: "C", Rank: 1, Question: "Which valves are on the car now, from the master on?", Table: "Cars", Column: "Valves", About: "C", Answers: "BLK | CV",
      Why: "every line and joint depends on them", Decides: "BLK → EARLY | CV → LATER", Bits: 0.811,
    });
    expect(record(about("ASK", [{ Valves: "?", Material: "" }], key), 2)).toMatchObject({ Rank: 2, Column: "Material", Bits: 0 });
  });

  test("an answer written to the row takes its question off the list", () => expect(about("ASK", [{ Valves: "BLK; TEE", Material: "" }], key).slice(1).map((row) => row[4])).toEqual(["Material"]));

  test("a row without a name says so in its place, and the others are asked as before", () => {
    const rows = about("ASK", [{ Car: "" }, { Valves: "?" }], key);
    expect(rows[1]?.[0]).toBe("row 1 under the headings");
    expect(rowsOf(rows, "C")).toHaveLength(1);
  });
});

describe("KIT", () => {
  // Seven runs: all but the one from the axle tee to RR are in the set, which brings one that is of no use. To RR made up: 2 nuts at 1,
  // 30 to make, 32 + 1.5625 in of tube at 30 / 300: 3.36. 95 + 35.36 = 130.36.
  // Straight: 14 nuts, 7 × 30, tube of 268 in and 7 × 1.5625 in rounded run by run: 1.56 + 1.56 + 3.16 + 5.16 + 10.16 + 2.96 + 3.36 = 27.92. In all 251.92.
  test("the set, what it covers and leaves, what goes unused, and why the next best lost", () => {
    const row = record(about("KIT", [{}], key));
    expect(row).toMatchObject({ Car: "C", Set: "EARLY", Price: 95, "On hand": 2, Adapters: "", Cost: 130.36, "Straight tube cost": 251.92, "Possible sets": "EARLY", Problem: "", Unused: "valve to valve", "Next best": "straight tube: 121.56 dearer, covers 6 runs fewer" });
    expect([row["Covered"], row["Made up"]]).toEqual(["1; 2; 3; 4; 5; 6", "7"]);
  });

  test("with no set straight tube is the kit", () => expect(record(about("KIT", [{}], keyOf({ more: tools })))).toMatchObject({ Set: "straight tube", Price: "", Cost: 251.92, Covered: "", "Next best": "" }));

  test("while the car is not plumbed it says what to ask", () => {
    expect(record(about("KIT", [{ Valves: "?" }], key))).toMatchObject({ Set: "", Cost: "", Problem: "no runs to cover yet: Which valves are on the car now, from the master on?", "Possible sets": "EARLY; LATER" });
  });

  test("an ambiguous car names the sets and the question that decides", () => {
    const two = keyOf({ more: [...tools, table(SETS, "EARLY | P | 1960 | 1974 | BLK | disc | drum | mild steel | 95 | 2 | 3", "STAINLESS | P | 1960 | 1974 | BLK | disc | drum | stainless | 160 | 2 | 3"), table(SET_RUNS, ...runs)] });
    expect(record(about("KIT", [{ Material: "" }], two))["Problem"]).toBe("2 sets fit what is known (EARLY, STAINLESS): the wrong set may be sent. Which tube material does the customer want?");
    expect(about("CHECK", [{ Material: "" }], two).map((row) => row[1])).toContain("kit-ambiguous");
  });

  test("one bad row never changes another", () => expect(rowsOf(about("KIT", [{ Car: "" }, {}], key), "C")).toEqual(rowsOf(about("KIT", [{}], key), "C")));
});

describe("VERDICT", () => {
  test("names the kit and its cost after the columns it always had", () => {
    expect(record(about("VERDICT", [{}], key))).toMatchObject({ Kit: "EARLY", "Kit cost": 130.36, "Open questions": 0 });
    expect(record(about("VERDICT", [{ Valves: "?", Material: "" }], key))).toMatchObject({ Kit: "", "Kit cost": "", "Open questions": 2 });
  });
});

describe("CHECK", () => {
  const dragging: CarCells = { Valves: "RV10@front; HO; BLK; TEE" };
  const accepted: readonly [Range, Range, string] = [[[...HEADINGS, "Accepted"]], [[...carRow(dragging), "residual-on-disc: race car"]], key];

  test("an accepted stop has the severity accepted and its reason in Basis, and VERDICT does not count it", () => {
    const row = tableFrom("CHECK", ...accepted).find(([, code]) => code === "residual-on-disc");
    expect([row?.[2], row?.[6]]).toEqual(["accepted", "common practice, no source; accepted for this car: race car"]);
    expect(record(tableFrom("VERDICT", ...accepted))).toMatchObject({ Verdict: "sound", Stop: 0, "Worst code": "" });
    expect(record(about("VERDICT", [dragging], key))).toMatchObject({ Verdict: "stop", Stop: 1 });
  });

  test("a rule switched off has the severity off, one graded otherwise says so in Basis", () => {
    const graded = (grade: string) => about("CHECK", [{ Valves: "HO; CV; TEE" }], keyOf({ settings: [`rule metering-doubled | ${grade} |`] })).find(([, code]) => code === "metering-doubled");
    expect([graded("off")?.[2], graded("watch")?.[2]]).toEqual(["off", "watch"]);
    expect(graded("watch")?.[6]).toMatch(/; graded watch in Settings; the rule says decide$/);
  });
});

describe("IDENTIFY", () => {
  const [seen] = demoTables.filter(({ name }) => name === "Seen");
  const demoKey = call("CATALOG", demoTables.filter(({ name }) => catalogueTables.some((spec) => spec.name === name)).map(({ headings, rows }) => [headings, ...rows])) as string;
  const rows = tableFrom("IDENTIFY", [seen?.headings ?? []], seen?.rows ?? [], demoKey);
  const first = (car: string): Record<string, Cell | undefined> => record(rows, rows.findIndex(([name]) => name === car));

  test("answers under its headings, new ones after the first ones", () => {
    expect(rows[0]).toEqual(["Car", "Body", "Rank", "Component", "Kind", "Matched", "Unexplained", "Not seen", "Against", "Deciding port", "Problem", "Probability"]);
  });

  test("a later combination valve, an early block, a metric master, and nothing at all", () => {
    expect(["Car 24", "Car 22", "Car 17", "Car 20"].map((car) => first(car)["Component"])).toEqual(["CV-L", "BLK-E", "MC-M2", ""]);
    expect(first("Car 20")).toMatchObject({ Rank: "", Problem: "no listed body has a port like these" });
    expect(first("Car 17")["Probability"]).toBeGreaterThan(0.9);
    expect(first("Car 24")).toMatchObject({ Rank: 1, Unexplained: "", "Deciding port": "none: CV-N has the same ports and other contents" });
  });

  test("each body has at most five names and those as probable as the fifth, in order of probability", () => {
    const block = rows.filter(([car]) => car === "Car 22");
    expect(block.map((row) => row[2])).toEqual(block.map((_, index) => index + 1));
    expect(block.map((row) => row[11])).toEqual([...block.map((row) => Number(row[11]))].sort((a, b) => b - a));
  });

  test("a cell that cannot be read is said beside the names, and rows without a body alone answer #VALUE!", () => {
    const headings = ["Car", "Body", "Diameter (in)"];
    expect(record(tableFrom("IDENTIFY", [headings], [["C", "valve", "wide"], ["C", "valve", 0.4525]], demoKey))["Problem"]).toMatch(/Seen row 1 under the headings, Diameter: read "wide"/);
    expect(failure("IDENTIFY", [headings], [["C", "", 0.4525]], demoKey)).toEqual({ kind: "value", message: expect.stringContaining("Body: read nothing") as string });
  });
});

test("THREAD gives each candidate its probability, and without a pitch leaves all three of 11.0 mm open", () => {
  const rows = tableFrom("THREAD", 11, null, "mm", "male");
  const odds = Object.fromEntries(rows.slice(1).map((row) => [String(row[0]), Number(row.at(-1))]));
  expect(rows[0]?.at(-1)).toBe("Probability");
  for (const name of ["M11x1.5", "7/16-20", "7/16-24"]) expect(odds[name]).toBeGreaterThan(0.05);
  expect(Math.max(...Object.values(odds))).toBeLessThan(0.6);
});
