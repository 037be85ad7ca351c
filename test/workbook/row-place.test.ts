/** The way from a figure that is missing to its cell. */
import { demoTables } from "../../src/catalogue/demo";
import { memoryWorkbook } from "../../src/workbook/memory";
import { placeOf } from "../../src/workbook/row-place";

const demo = demoTables.map((table) => ({ ...table, sheet: table.name }));
const rowIn = (table: string, first: string): number => demo.find(({ name }) => name === table)?.rows.findIndex(([cell]) => cell === first) ?? -1;
const place = (table: string, subject: string, column: string) => placeOf(memoryWorkbook(demo), { table, subject, column });

test("by the name in the first column, with the heading as the sheet writes it", async () => {
  expect(await place("Platforms", "harrow 6 coupe", "CG height")).toEqual({ table: "Platforms", row: rowIn("Platforms", "Harrow 6 Coupe"), column: "CG height (in)" });
  expect(await place("WheelBrakes", "DR-10", "Factor")).toEqual({ table: "WheelBrakes", row: rowIn("WheelBrakes", "DR-10"), column: "Factor" });
});

test("a port by its component and its own name", async () => {
  const ports = demo.find(({ name }) => name === "Ports");
  const wanted = ports?.rows.findIndex(([component, port]) => component === "MC-1" && port === "Rear out") ?? -1;
  expect(wanted).toBeGreaterThan(-1);
  expect(await place("Ports", "MC-1 Rear out", "Stroke")).toMatchObject({ table: "Ports", row: wanted });
});

test("of several rows of one name the one whose cell is blank", async () => {
  // CV-L: two hold-off passages without a split, then the rear one with it.
  expect(await place("Passages", "CV-L", "Split")).toEqual({ table: "Passages", row: rowIn("Passages", "CV-L"), column: "Split (psi)" });
  expect(await place("Passages", "CV-L", "Opens")).toEqual({ table: "Passages", row: rowIn("Passages", "CV-L") + 2, column: "Opens (psi)" });
});

test("under whatever name the table goes, and nowhere when there is no such row or table", async () => {
  const renamed = demo.map((table) => (table.name === "Platforms" ? { ...table, name: "Table7" } : table));
  expect(await placeOf(memoryWorkbook(renamed), { table: "Platforms", subject: "Pellin Van", column: "Weight" })).toMatchObject({ table: "Table7" });
  expect(await place("Platforms", "Nobody's", "Weight")).toBeUndefined();
  expect(await placeOf(memoryWorkbook([]), { table: "Platforms", subject: "Pellin Van", column: "Weight" })).toBeUndefined();
});

test("a column that the table lacks leads to the row all the same", async () => {
  expect(await place("WheelBrakes", "DR-10", "Shoe pivot")).toEqual({ table: "WheelBrakes", row: rowIn("WheelBrakes", "DR-10"), column: "Shoe pivot" });
});
