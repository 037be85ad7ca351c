import { stated, unknown } from "../../src/core/car";
import { inches, psi } from "../../src/core/quantity";
import { parseCars } from "../../src/catalogue/parse-cars";
import { carOf, said } from "./tables";

test("a whole row of the design's headings", () => {
  const { car, says } = carOf({
    Customer: "Invented", Platform: "P-1", Year: 1965, "Front brake": "D-1", "Rear brake": "R-1", Master: "MC-1", Booster: "none", Valves: "HV-1; PV-1@rear", Hoses: "H-1@LF; H-1@rf; H-2@rear hose",
    Material: "Stainless", Scope: "front", Conversion: "yes", Fluid: "DOT 4", "Valve split set (psi)": 450, Supply: "lines; valves", Accepted: "Metering-missing: as built; joint-count: customer's wish", Notes: "call back",
    Split: "diagonal", "Wheelbase (in)": 101,
  });
  expect(says).toEqual([]);
  expect(car).toEqual({
    name: "A", customer: "Invented", platform: "P-1", year: 1965, brakes: { front: "D-1", rear: "R-1" }, master: "MC-1", booster: stated("none"),
    valves: stated([{ component: "HV-1" }, { component: "PV-1", at: "rear" }]),
    hoses: stated([{ component: "H-1", at: "LF" }, { component: "H-1", at: "RF" }, { component: "H-2", at: "rear-hose" }]),
    material: "stainless", otherMaterials: [], scope: "front", conversion: true, fluids: ["DOT 4"], valveSetting: { split: psi(450) }, supply: ["lines", "valves"],
    accepted: new Map([["metering-missing", "as built"], ["joint-count", "customer's wish"]]), notes: "call back", platformFigures: { split: "diagonal", wheelbase: inches(101) },
  });
});

test("a row with a name alone is a car of which nothing is known", () => {
  expect(carOf({})).toMatchObject({
    says: [],
    car: { name: "A", customer: "", platform: undefined, year: undefined, brakes: { front: undefined, rear: undefined }, master: undefined, booster: unknown, valves: unknown, hoses: unknown, scope: "all", valveSetting: undefined, supply: undefined, notes: "", platformFigures: {} },
  });
});

test.each([
  ["Valves", "valves", 0, unknown],
  ["Valves", "valves", "?", unknown],
  ["Valves", "valves", "HV-1; ?", unknown],
  ["Valves", "valves", "HV-1; PV?", unknown],
  ["Valves", "valves", "None", stated([])],
  ["Valves", "valves", 12, stated([{ component: "12" }])],
  ["Hoses", "hoses", "", unknown],
  ["Hoses", "hoses", "none", stated([])],
  ["Hoses", "hoses", " H-1 @ my bracket ", stated([{ component: "H-1", at: "my bracket" }])],
  ["Booster", "booster", "", unknown],
  ["Booster", "booster", "?", unknown],
  ["Booster", "booster", "NONE", stated("none")],
  ["Booster", "booster", "B-1", stated("B-1")],
  ["Scope", "scope", "", "all"],
  ["Scope", "scope", "Rear", "rear"],
  ["Conversion", "conversion", false, false],
  ["Conversion", "conversion", 0, undefined],
  ["Fluid", "fluids", "dot5.1", ["DOT 5.1"]],
  ["Fluid", "fluids", 3, ["DOT 3"]],
  ["Fluid", "fluids", "DOT 5; DOT 4", ["DOT 5", "DOT 4"]],
  ["Material", "otherMaterials", "steel; stainless", ["stainless"]],
  ["Master", "master", "?", undefined],
  ["Platform", "platform", 64, "64"],
  ["Valve split set (bar)", "valveSetting", 40, { split: 4e6 }],
  ["Valve split set (psi)", "valveSetting", "none", "no reduction"],
  ["Valve split set (psi)", "valveSetting", "Open", "no reduction"],
  ["Valve split set (psi)", "valveSetting", "no reduction", "no reduction"],
  ["Accepted", "accepted", "", new Map()],
])("%s: %s reads %p as %p", (heading, field, raw, value) => {
  const { car, says } = carOf({ [heading]: raw });
  expect(says).toEqual([]);
  expect(car[field as keyof typeof car]).toEqual(value);
});

test.each([
  ["Year", 1700, 'Cars row 1 under the headings, Year: read "1700"; accepted: a whole number from 1886 to 2100.'],
  ["Valves", "HV-1; none", 'Cars row 1 under the headings, Valves: read "HV-1; none"; accepted: components split by ; such as HV-1; PV-2@rear, or none, or ? when not known.'],
  ["Valves", "HV-1@", 'Cars row 1 under the headings, Valves: read "HV-1@"; accepted: components split by ; such as HV-1; PV-2@rear, or none, or ? when not known.'],
  ["Material", "rubber", 'Cars row 1 under the headings, Material: read "rubber"; accepted: mild steel, stainless, copper-nickel or copper (several are split by ;).'],
  ["Scope", "left", 'Cars row 1 under the headings, Scope: read "left"; accepted: all, front or rear.'],
  ["Fluid", "oil", 'Cars row 1 under the headings, Fluid: read "oil"; accepted: DOT 3, DOT 4, DOT 5 or DOT 5.1 (several are split by ;).'],
  ["Accepted", "joint-count", 'Cars row 1 under the headings, Accepted: read "joint-count"; accepted: code: reason (several are split by ;).'],
  ["Accepted", "joint-count: ", 'Cars row 1 under the headings, Accepted: read "joint-count:"; accepted: code: reason (several are split by ;).'],
  ["Front share (%)", 120, 'Cars row 1 under the headings, Front share: read "120"; accepted: a share from 5 % to 95 %: 62 under a heading with (%), 0.62 under one without, or the text 62%.'],
  ["Wheelbase (in)", -3, 'Cars row 1 under the headings, Wheelbase: read "-3"; accepted: a length above 1/16 in and below 2000 in (1.6 mm to 50.8 m).'],
  ["Valve split set (psi)", "wide", 'Cars row 1 under the headings, Valve split set: read "wide"; accepted: a pressure above 0, or none when wound out to no reduction.'],
  ["Valve split set", 400, 'Cars headings, Valve split set: read "Valve split set"; accepted: Valve split set (psi), Valve split set (bar), Valve split set (kPa) or Valve split set (MPa).'],
  ["Wheelbase", 101, 'Cars headings, Wheelbase: read "Wheelbase"; accepted: Wheelbase (in), Wheelbase (ft), Wheelbase (mm), Wheelbase (cm) or Wheelbase (m).'],
])("%s %p is an error, and the rest of the car stands", (heading, raw, error) => {
  const { car, says, errors } = carOf({ [heading]: raw, Platform: "P-1", Master: "MC-1" });
  expect(says).toEqual([error]);
  expect(errors.every(({ code }) => code === "data-out-of-range")).toBe(true);
  expect(car).toMatchObject({ platform: "P-1", master: "MC-1", year: undefined, valves: unknown, material: undefined, scope: "all", fluids: [], valveSetting: undefined, platformFigures: {} });
  expect(car.accepted.size).toBe(0);
});

test("several bad cells of one row are all reported", () => expect(carOf({ Year: "soon", Scope: "left", Fluid: "oil" }).says).toHaveLength(3));

test("one entry for each row that is not blank, in order; a row without a name is named by its number and has no car", () => {
  const { cars } = parseCars(["Master", "CAR "], [["MC-1", "B"], ["", 0], ["MC-2", ""], ["MC-3", 7], ["MC-4", "b"]]);
  expect(cars.map(({ row, name, car }) => [row, name, car?.master])).toEqual([[1, "B", "MC-1"], [3, "row 3 under the headings", undefined], [4, "7", "MC-3"], [5, "b", "MC-4"]]);
  expect(cars.flatMap(({ errors }) => said(errors))).toEqual([
    "Cars row 3 under the headings, Car: read nothing; accepted: a name of its own for each car.",
    'Cars row 5 under the headings, Car: read "b"; accepted: a name that no earlier row has (Cars row 1 under the headings has it).',
  ]);
  expect(cars.flatMap(({ errors }) => errors.map(({ code }) => code))).toEqual(["data-missing", "data-duplicate"]);
});

test("headings without Car are an error of the headings, and no row is a car", () => {
  const { cars, headingErrors } = parseCars(["Auto", "Master"], [["A", "MC-1"]]);
  expect(said(headingErrors)).toEqual(["Cars headings, Car: read nothing; accepted: a column Car."]);
  expect(cars).toEqual([{ row: 1, name: "row 1 under the headings", car: undefined, errors: [] }]);
});

test("1,000 rows of 15 columns are read in well under a second", () => {
  const headings = ["Car", "Customer", "Platform", "Year", "Front brake", "Rear brake", "Master", "Booster", "Valves", "Hoses", "Material", "Scope", "Conversion", "Fluid", "Notes"];
  const rows = Array.from({ length: 1000 }, (_, index) => [`Car ${index}`, "Invented", "P-1", 1965, "D-1", "R-1", "MC-1", "none", "HV-1; PV-1@rear", "none", "mild steel", "all", "no", "DOT 4", ""]);
  const times = Array.from({ length: 5 }, () => {
    const start = performance.now();
    expect(parseCars(headings, rows).cars).toHaveLength(1000);
    return performance.now() - start;
  });
  // Alone on the machine it takes 15 to 40 ms; the best of five, and room for what else the machine does.
  expect(Math.min(...times)).toBeLessThan(250);
});

// Every part may be joined to every other: a cell of thousands took seconds.
test("a list of parts longer than any car's is refused, and its quote is cut", () => {
  expect(carOf({ Valves: Array.from({ length: 40 }, (_, index) => `V-${String(index)}`).join("; ") }).says).toEqual([]);
  const { car, says } = carOf({ Valves: "BLK-E; ".repeat(4000) });
  expect(says).toEqual([expect.stringMatching(/^Cars row 1 under the headings, Valves: read "BLK-E; .{73}…"; accepted: no more than 40 components\.$/)]);
  expect(car?.valves).toEqual(unknown);
});
