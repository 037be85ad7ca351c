import { parseCatalogue } from "../../src/catalogue/parse-catalogue";
import { readTable } from "../../src/catalogue/read-table";
import { sayTableError } from "../../src/catalogue/table-error";
import { pipelineTable, usageTable } from "../../src/catalogue/tables/stock-history";
import { catalogueOf, errorsOf, said, tableOf } from "./tables";

// All parts here are invented.
const components = tableOf("Component|Kind", ["DC-1", "disc"], ["CV-1", "combination-valve"]);
const tube = tableOf("Tube|Material|Outside diameter (in)|Wall (in)|Form", ["MS coil", "mild steel", "3/16", 0.028, "coil"]);
const FLUIDS = "Fluid|Bottle (fl oz)|Price";

test("kits, price breaks, fluids and operations are in the catalogue as their rows say", () => {
  const catalogue = catalogueOf(
    components, tube,
    tableOf("Kit|Component|Quantity|Price", ["Front discs", "DC-1", 2, 310], ["Front discs", "cv-1", 1, ""]),
    tableOf("Tube|From quantity|Price", ["MS coil", 5, 19.5], ["ms coil", 20, "0"]),
    tableOf(FLUIDS, ["DOT 4", 12, 8.5], ["4", 32, ""]),
    tableOf("Operation|Applies to|Minutes", ["flare an end", "end", 4], ["bleed", "", 35]),
  );
  expect(catalogue.kits).toEqual([{ kit: "Front discs", component: "DC-1", quantity: 2, price: 310 }, { kit: "Front discs", component: "cv-1", quantity: 1, price: undefined }]);
  expect(catalogue.priceBreaks).toEqual([{ tube: "MS coil", fromQuantity: 5, price: 19.5 }, { tube: "ms coil", fromQuantity: 20, price: 0 }]);
  // A US fluid ounce is 29.5735295625 cm³ (231 in³ / 128), so 12 are 354.88 cm³.
  expect(catalogue.fluids.map(({ fluid, bottle, price }) => [fluid, Number((bottle * 1e6).toFixed(3)), price])).toEqual([["DOT 4", 354.882, 8.5], ["DOT 4", 946.353, undefined]]);
  expect(catalogue.operations).toEqual([{ name: "flare an end", appliesTo: "end", minutes: 4 }, { name: "bleed", appliesTo: undefined, minutes: 35 }]);
});

test("a workbook without these tables has none of them", () => {
  const { kits, priceBreaks, fluids, operations } = catalogueOf(components);
  expect([kits, priceBreaks, fluids, operations]).toEqual([[], [], [], []]);
});

test.each([
  ["a kit of a part that Components lacks", tableOf("Kit|Component|Quantity", ["K", "DC-9", 1]), 'Kits row 1 under the headings, Component: read "DC-9"; accepted: a component of the Components table.'],
  ["a component twice in one kit", tableOf("Kit|Component|Quantity", ["K", "DC-1", 1], ["k", "dc-1", 2]), 'Kits row 2 under the headings, Component: read "dc-1"; accepted: what no earlier row has (Kits row 1 under the headings has it).'],
  ["a negative price", tableOf("Kit|Component|Quantity|Price", ["K", "DC-1", 1, -3]), 'Kits row 1 under the headings, Price: read "-3"; accepted: a number of 0 or more.'],
  ["no quantity", tableOf("Kit|Component|Quantity", ["K", "DC-1", ""]), 'Kits row 1 under the headings, Quantity: read nothing; accepted: a number above 0.'],
  ["a price of a tube that Tube lacks", tableOf("Tube|From quantity|Price", ["SS coil", 5, 20]), 'PriceBreaks row 1 under the headings, Tube: read "SS coil"; accepted: a tube of the Tube table.'],
  ["two prices from one quantity on", tableOf("Tube|From quantity|Price", ["MS coil", 5, 20], ["MS coil", 5, 19]), 'PriceBreaks row 2 under the headings, From quantity: read "5"; accepted: what no earlier row has (PriceBreaks row 1 under the headings has it).'],
  ["a fluid that is none", tableOf(FLUIDS, ["DOT 6", 12, 8]), 'Fluids row 1 under the headings, Fluid: read "DOT 6"; accepted: DOT 3, DOT 4, DOT 5 or DOT 5.1.'],
  ["a bottle without a unit", tableOf("Fluid|Bottle|Price", ["DOT 4", 12, 8]), /Fluids headings, Bottle: read "Bottle"; accepted: Bottle \(in³\), .*Bottle \(fl oz\)/],
  ["one bottle of one fluid twice, in two units", tableOf(FLUIDS, ["DOT 4", 12, 8], ["DOT 4", 12, 9]), 'Fluids row 2 under the headings, Bottle: read "DOT 4"; accepted: what no earlier row has (Fluids row 1 under the headings has it).'],
  ["no minutes", tableOf("Operation|Applies to|Minutes", ["bleed", "", ""]), 'Operations row 1 under the headings, Minutes: read nothing; accepted: a number of 0 or more.'],
  ["an operation twice", tableOf("Operation|Minutes", ["bleed", 5], ["Bleed", 6]), 'Operations row 2 under the headings, Operation: read "Bleed"; accepted: what no earlier row has (Operations row 1 under the headings has it).'],
])("%s is an error with its place", (_, table, says) => {
  const [error, ...others] = errorsOf(components, tube, table);
  if (typeof says === "string") expect(error).toBe(says);
  else expect(error).toMatch(says);
  expect(others).toEqual([]);
});

test("a bad row of one of them leaves the others standing", () => {
  const { catalogue, errors } = parseCatalogue([components, tableOf("Kit|Component|Quantity", ["K", "DC-9", 1], ["K", "DC-1", 2])]);
  expect(errors).toHaveLength(1);
  expect(catalogue.kits.map(({ component }) => component)).toEqual(["DC-1"]);
});

test("prices may be of the tube that ships when there is no Tube table", () => {
  const shipped = parseCatalogue([]).catalogue.tube[0]?.name ?? "";
  expect(parseCatalogue([tableOf("Tube|From quantity|Price", [shipped, 10, 4])]).catalogue.priceBreaks).toHaveLength(1);
  expect(errorsOf(tableOf("Tube|From quantity|Price", ["MS coil", 10, 4]))[0]).toContain("no such table was given");
});

const read = (spec: typeof pipelineTable | typeof usageTable, headings: string, row: readonly unknown[]) => {
  const { rows } = readTable<never, unknown>(spec as never, tableOf(headings, row), spec.name);
  return { value: rows[0]?.value, errors: said(rows[0]?.errors ?? []) };
};

const PIPELINE = "Quote|Car|Chance (%)|Earliest|Likely|Latest|Quantity";
test("an open quote has its chance, its days and its number of cars", () => {
  // 2030-01-07 is day 47490 of a spreadsheet: 47482 is 2029-12-30.
  expect(read(pipelineTable, PIPELINE, ["Q1", "Car 1", 60, "2030-01-07", 47497, "", 2]).value).toEqual({ quote: "Q1", car: "Car 1", chance: 0.6, earliest: 47490, likely: 47497, latest: undefined, quantity: 2 });
  expect(read(pipelineTable, "Quote|Car|Chance|Likely", ["Q1", "Car 1", 0.25, 47490]).value).toMatchObject({ chance: 0.25 });
  expect(read(pipelineTable, "Quote|Car|Chance|Likely", ["Q1", "Car 1", "25%", 47490]).value).toMatchObject({ chance: 0.25 });
});

test.each([
  ["a chance above one", ["Q1", "Car 1", 160, "", 47490, "", 1], /Chance: read "160"; accepted: a chance from 0 to 100 %/],
  ["no chance", ["Q1", "Car 1", "", "", 47490, "", 1], /Chance: read nothing/],
  ["a likely day before the earliest", ["Q1", "Car 1", 60, 47497, 47490, "", 1], /Likely: read "47490"; accepted: a date not before Earliest/],
  ["a latest day before the likely one", ["Q1", "Car 1", 60, "", 47497, 47490, 1], /Latest: read "47490"; accepted: a date not before Earliest and Likely/],
])("%s is refused", (_, row, says) => expect(read(pipelineTable, PIPELINE, row).errors).toEqual([expect.stringMatching(says)]));

test("tube used has its day, its tube and its length, and none of them may be left out", () => {
  expect(read(usageTable, "Date|Tube|Length (in)", [47490, "MS coil", 120]).value).toEqual({ date: 47490, tube: "MS coil", length: 3.048 }); // 120 × 0.0254 m
  for (const column of [0, 1, 2]) expect(read(usageTable, "Date|Tube|Length (in)", [47490, "MS coil", 120].map((cell, index) => (index === column ? 0 : cell))).errors).toHaveLength(1);
});

test("a catalogue takes neither of the two, and says where their rows go", () => {
  const [error] = parseCatalogue([tableOf("Date|Tube|Length (in)", [47490, "MS coil", 120])]).errors;
  expect(error && sayTableError(error)).toContain("rows of Usage go to the functions that answer about them");
});

test("a row of usage may hold a week of a busy shop, and not a figure in the wrong unit", () => {
  const { rows } = readTable(usageTable, tableOf("Date|Tube|Length (in)", [46_346, "MS coil", 24_000], [46_346, "MS coil", 25_000]), "Usage");
  expect(rows[0]?.value?.length).toBeCloseTo(609.6, 9); // 24,000 in of 0.0254 m
  expect(rows[1]?.errors.map(sayTableError)).toEqual(['Usage row 2 under the headings, Length: read "25000"; accepted: a length above 1/16 in and up to 2000 ft (1.6 mm to 609.6 m).']);
});
