import fc from "fast-check";
import { property } from "../core/seeded";
import { LENGTH_ROWS, NUTS, table, TUBE, type CarCells } from "../core/workshop";
import { about, carRow, failure, HEADINGS, keyOf, rowsOf, tableFrom, type Cell, type Range } from "./sheet";

const key = keyOf();
const metric = keyOf({ settings: ["units | metric |"] });

// The headings as they were frozen in design decision 0, with each unit as it stands in US units.
const FROZEN: readonly (readonly [string, readonly string[]])[] = [
  ["RUNS", ["Car", "Run", "From", "From port", "To", "To port", "Circuit", "Tube (in)", "Wall (in)", "Material", "Length (in)", "Basis", "Nut A", "Flare A", "Adapters A", "Nut B", "Flare B", "Adapters B", "Problem"]],
  ["CHECK", ["Car", "Code", "Severity", "Place", "What happens", "Cure", "Basis"]],
  ["VERDICT", ["Car", "Verdict", "Stop", "Decide", "Watch", "Open questions", "Worst code", "Runs", "Tube (ft)", "Price", "Assumed"]],
  ["TUBING", ["Material", "Tube (in)", "Wall (in)", "Net (in)", "Allowance (in)", "Cut (in)", "Bought", "Scrap (in)"]],
];
test.each(FROZEN)("%s answers under its frozen headings; new ones only come after them", (name, headings) => expect(about(name, [{}], key)[0]?.slice(0, headings.length)).toEqual(headings));

test.each(["RUNS", "PARTS", "CHECK", "VERDICT", "TUBING"])("every row of %s is as wide as its headings, and no cell is null", (name) => {
  const cars: CarCells[] = [{}, { Car: "D", Valves: "HO; CV; TEE" }, { Car: "E", Valves: "?" }, { Car: "F", Master: "", Platform: "" }, { Car: "" }];
  for (const row of about(name, cars, key)) {
    expect(row).toHaveLength(about(name, [{}], key)[0]?.length ?? NaN);
    expect(row.every((cell) => ["string", "number", "boolean"].includes(typeof cell))).toBe(true);
  }
});

const column = (name: string, heading: string, cars: readonly CarCells[], catalogue: string): Cell[] => {
  const [headings = [], ...rows] = about(name, cars, catalogue);
  const index = headings.indexOf(heading);
  if (index < 0) throw new Error(`${name} has no ${heading}`);
  return rows.map((row) => row[index] as Cell);
};

// 3/16 in is 4.7625 mm, 14 in 355.6 mm, 268 in 22.333 ft and 6.807 m (an inch is 25.4 mm).
test("units us and metric", () => {
  expect([column("RUNS", "Tube (in)", [{}], key)[0], column("RUNS", "Length (in)", [{}], key)[0], column("VERDICT", "Tube (ft)", [{}], key)]).toEqual([0.1875, 14, [22.333]]);
  expect([column("RUNS", "Tube (mm)", [{}], metric)[0], column("RUNS", "Length (mm)", [{}], metric)[0], column("VERDICT", "Tube (m)", [{}], metric)]).toEqual([4.76, 355.6, [6.807]]);
  expect(about("TUBING", [{}], metric)[0]?.slice(1, 6)).toEqual(["Tube (mm)", "Wall (mm)", "Net (mm)", "Allowance (mm)", "Cut (mm)"]);
});

// 14 in with 0.25 + 0.5 at each end is sawn at 15.5.
test("one run as a row: ports, tube, length, nuts and flares", () => {
  expect(about("RUNS", [{}], key)[1]).toEqual(["C", 1, "MC", "F", "BLK", "FI", "front", 0.1875, 0.028, "mild steel", 14, "measured", "N-3/16-1/2-20", "double 45°", "", "N-3/16-1/2-20", "double 45°", "", "", 15.5, "", ""]);
});

const tools = [table(NUTS, ...["3/8-24", "1/2-20", "9/16-18", "7/16-24"].map((thread) => `N-${thread} | 0.1875 | ${thread} | inverted-flare-45 | male | 1`)), table(TUBE, "CO | mild steel | 0.1875 | 0.028 | coil | 300 | 30")];
// 14 nuts at 1, and 268 + 7 × 1.5625 = 278.9375 in of tube at 30 / 300: 27.89.
test("a car summed up in one row", () => {
  expect(rowsOf(about("VERDICT", [{}], keyOf({ more: tools })), "C")[0]?.slice(0, 10)).toEqual(["C", "sound", 0, 0, 0, 0, "", 7, 22.333, 41.89]);
  expect(rowsOf(about("VERDICT", [{ Valves: "HO; CV; TEE", "Rear brake": "WR-BARE" }], keyOf({ more: tools })), "C")[0]?.slice(0, 7)).toEqual(["C", "decide", 0, 1, 1, 0, "metering-doubled"]);
});

test("tube in total: net, allowance, cut, bought, scrap, mass, cost; then the parts by kind", () => {
  const blank = Array<Cell>(12).fill("");
  // 600 - 557.875; 536 in weigh twice 0.48370 kg (see tubing.test.ts), 2.133 lb. One coil at 30 is too short, so two are the least.
  // Ends: 9 × 3/8-24, 3 × 1/2-20, 1 × 9/16-18, 1 × 7/16-24 a car. Clips at 18 in: 14, 30, 50, 14, 100, 28 and 32 in take 0 1 2 0 5 1 1.
  expect(about("TUBING", [{}, { Car: "D" }], keyOf({ more: tools })).slice(1)).toEqual([
    ["mild steel", 0.1875, 0.028, 536, 21.875, 557.875, "2 × CO", 42.125, 2.133, 14, 60, 60, "proved", "", "", ""],
    ...[["1/2-20", 6], ["3/8-24", 18], ["7/16-24", 2], ["9/16-18", 2]].map(([thread, count]) => ["nut", ...blank, `N-${thread ?? ""}`, count, "each"]),
    ["tee", ...blank, "TEE", 2, "each"],
    ["clip", ...blank, "clip 3/16 in", 20, "each"],
  ]);
});

// From the axle tee to both wheels: 28 + 32 in, 5 ft.
test("armour is counted by place, over whole lines", () => {
  const rows = about("TUBING", [{}], keyOf({ more: [...tools, { headings: ["Setting", "Value", "Unit"], rows: [["armoured places", "frame-front; axle-tee", 0], ["clip spacing", "0", "in"]] }] }));
  expect(rows.filter(([kind]) => kind === "armour" || kind === "clip").map((row) => row.slice(-3))).toEqual([["armour 3/16 in", 5, "ft"]]);
});

test("a total over 500 cars answers within a second", () => {
  const cars = Array.from({ length: 500 }, (_, index) => ({ Car: `C${index}` }));
  const catalogue = keyOf({ more: tools });
  about("RUNS", cars, catalogue);
  const start = performance.now();
  about("TUBING", cars, catalogue);
  expect(performance.now() - start).toBeLessThan(1000);
});

test("runs that cannot be totalled are counted in a last row", () => {
  const catalogue = keyOf({ platforms: [table("Platform | Split", "P | front/rear"), table(LENGTH_ROWS, "P | valve | LF | 30 | 0.1875")] });
  expect(about("TUBING", [{}], catalogue).at(-1)).toEqual(["not totalled", "", "", "", "", "", "6 runs without tube size or length", "", "", 6, "", "", "", "", "", ""]);
});

test("a car with nothing to list keeps its row, and says what keeps it open", () => {
  expect(rowsOf(about("RUNS", [{ Valves: "?" }], key), "C").map((row) => row[18])).toEqual(["Which valves are on the car now, from the master on? Every line and joint depends on them."]);
});

test("parts of a car with quantity, unit and amount", () => {
  const rows = about("PARTS", [{}], keyOf({ more: tools })).slice(1).map((row) => [row[1], row[4], row[5], row[7], row[8]]);
  expect(rows).toContainEqual(["HF", 2, "each", 24, "listed"]);
  expect(rows).toContainEqual(["N-3/8-24", 9, "each", 9, "needed"]);
  expect(rows).toContainEqual(["CO", 23.245, "ft", 27.89, "needed"]); // 278.9375 / 12
});

describe("the rows of Cars", () => {
  const base: readonly CarCells[] = [{}, { Car: "D", Valves: "HO; CV; TEE" }];
  const expected = about("CHECK", base, key);
  const shuffled = [...HEADINGS].reverse();
  const rows = base.map((cells) => carRow(cells));

  test("columns may stand in any order", () => expect(tableFrom("CHECK", [shuffled], rows.map((row) => [...row].reverse()), key)).toEqual(expected));
  test("columns of the shop's own are ignored", () => expect(tableFrom("CHECK", [["Colour", ...HEADINGS, "Due"]], rows.map((row) => ["red", ...row, 45000]), key)).toEqual(expected));
  test("headings are read without regard to case and outer space", () => expect(tableFrom("CHECK", [HEADINGS.map((heading) => ` ${heading.toUpperCase()} `)], rows, key)).toEqual(expected));
  test("empty rows are skipped, whether blank as 0 or as empty text", () => expect(tableFrom("CHECK", [HEADINGS], [HEADINGS.map(() => 0), rows[0], HEADINGS.map(() => ""), rows[1]], key)).toEqual(expected));
  test("one row gives its part of the whole", () => expect(tableFrom("CHECK", [HEADINGS], [rows[1]], key).slice(1)).toEqual(rowsOf(expected, "D")));
  test("no rows give the headings alone", () => expect(tableFrom("CHECK", [HEADINGS], [HEADINGS.map(() => 0)], key)).toEqual([expected[0]]));

  test("a blank cell reads the same as 0, as empty text and as null", () => {
    const index = HEADINGS.indexOf("Year");
    const [zero, text, nothing] = [0, "", null].map((blank) => tableFrom("VERDICT", [HEADINGS], [carRow({}).map((cell, position) => (position === index ? blank : cell))], key));
    expect([text, nothing]).toEqual([zero, zero]);
  });

  test("without a heading for the car's name nothing can be answered, and the message says which", () => {
    const { kind, message } = failure("CHECK", [HEADINGS.slice(1)], [carRow({}).slice(1)], key);
    expect([kind, message]).toEqual(["value", expect.stringContaining("Car")]);
  });
});

describe("a bad row", () => {
  test("keeps its place, with what was read and what is accepted", () => {
    expect(rowsOf(about("CHECK", [{ Material: "gold" }], key), "C").map((row) => row[1])).toEqual(expect.arrayContaining(["data-out-of-range"]));
    expect(about("CHECK", [{ Material: "gold" }], key).flat()).toEqual(expect.arrayContaining([expect.stringMatching(/Material: read "gold"; accepted: mild steel/)]));
  });

  test("without a name is called by its number", () => {
    expect(tableFrom("VERDICT", [HEADINGS], [carRow({}), carRow({ Car: "" })], key).slice(1).map(([car, verdict]) => [car, verdict])).toEqual([["C", "sound"], ["row 2 under the headings", "decide"]]);
  });

  test("of a name that an earlier row has says so, and the earlier row stands", () => {
    const codes = about("CHECK", [{}, { Valves: "HO; BLK; TEE" }], key).slice(1).map((row) => row[1]);
    expect(codes.filter((code) => code === "data-duplicate")).toHaveLength(1);
  });
});

const junk: fc.Arbitrary<Cell[]> = fc.array(fc.oneof(fc.string(), fc.integer(), fc.double({ noNaN: true }), fc.boolean(), fc.constantFrom("?", "none", "#REF!", "1e9", "Ω; @; |", "BLK; BLK; BLK")), { minLength: HEADINGS.length, maxLength: HEADINGS.length })
  .map((row) => [`junk ${String(row[0])}`, ...row.slice(1)]);
const FIVE: readonly CarCells[] = [{ Car: "one" }, { Car: "two", Valves: "CV; TEE" }, { Car: "three", Valves: "HO; CV; TEE" }, { Car: "four", Valves: "?" }, { Car: "five", "Rear brake": "WR-BARE" }];
const CARS = FIVE.map((cells) => carRow(cells));

property("replacing any one row by junk never changes another row's rows", 150, fc.tuple(fc.nat({ max: CARS.length - 1 }), junk, fc.constantFrom("RUNS", "PARTS", "CHECK", "VERDICT")), ([position, row, name]) => {
  const replaced: Range = CARS.map((car, index) => (index === position ? row : car));
  const [before, after] = [tableFrom(name, [HEADINGS], CARS, key), tableFrom(name, [HEADINGS], replaced, key)];
  for (const [index, [car]] of CARS.entries()) if (index !== position) expect(rowsOf(after, String(car))).toEqual(rowsOf(before, String(car)));
  // A car always has a verdict and a line, be it only to say what is wrong.
  if (name === "VERDICT" || name === "RUNS") expect(rowsOf(after, String(row[0]).trim()).length).toBeGreaterThan(0);
});

test("a thousand cars are judged in reasonable time", () => {
  const valves = ["BLK; TEE", "HO; BLK; PV; TEE", "CV; TEE", "HO; CV; TEE", "BLK; APV; TEE"];
  const cars = Array.from({ length: 1000 }, (_, index) => carRow({ Car: `car ${index}`, Year: String(1960 + (index % 15)), Valves: valves[index % valves.length] ?? "" }));
  const start = performance.now();
  const rows = tableFrom("VERDICT", [HEADINGS], cars, key);
  const seconds = (performance.now() - start) / 1000;
  console.log(`VERDICT: ${Math.round(1000 / seconds)} cars a second`);
  expect(rows).toHaveLength(1001);
  expect(seconds).toBeLessThan(10);
});
