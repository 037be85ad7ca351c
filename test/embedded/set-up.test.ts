import { gridLibrary } from "../../scripts/grid-library";
import { gridPort } from "../../src/embedded/grid-port";
import { openGrid, type Grid } from "../../src/embedded/grid/grid";
import { shownValue } from "../../src/embedded/grid/model-document";
import { productFunctions } from "../../src/embedded/product-functions";
import { exampleFormulas } from "../../src/functions/examples";
import { isCellError } from "../../src/workbook/document";
import { exampleHere } from "../../src/workbook/example-here";
import { setUpWorkbook } from "../../src/workbook/set-up";
import { setUpGroups } from "../../src/workbook/set-up-groups";
import { plainSheet } from "./sample";

const all = setUpGroups.flatMap(({ tables }) => tables);
const SHEETS = [["Verdict", "A3", "Car"], ["Runs", "A3", "Car"], ["Flags", "A3", "Car"], ["Tubing", "A3", "Material"], ["Demand", "A4", "Tube"], ["Reorder", "A4", "Tube"]] as const;
const TODAY = 46_346;

test("a workbook that is set up without a car has the headings of every answer, no error, and is one step to take back", async () => {
  const grid = await setUp({ tables: all, samples: false });
  for (const [sheet, address, heading] of SHEETS) expect([sheet, grid.value(sheet, address)]).toEqual([sheet, heading]);
  expect(errorsIn(grid)).toEqual([]);
  grid.model.dispatch("REQUEST_UNDO");
  expect([grid.sheetNames(), grid.tables()]).toEqual([["Sheet1"], []]);
});

test("set up with a sample car it answers at once, and every example of the Functions view works in it", async () => {
  const grid = await setUp({ tables: all, samples: true });
  expect(String(grid.value("Catalog", "B2"))).toMatch(/^PLUMB-/);
  expect(["Verdict", "Runs"].map((sheet) => grid.value(sheet, "A4"))).toEqual(["Car 1", "Car 1"]);
  const port = gridPort(grid);
  const shown: unknown[] = [];
  for (const [index, example] of Object.values(exampleFormulas).entries()) {
    grid.select("Sheet1", { firstRow: index * 25, firstColumn: 0, rows: 1, columns: 1 });
    await port.insertFormula(`=${await exampleHere(port, example)}`);
    shown.push(grid.value("Sheet1", `A${index * 25 + 1}`));
  }
  expect(shown.filter((value) => value === "")).toEqual([]);
  expect(errorsIn(grid)).toEqual([]);
});

test("an example says what the workbook lacks, and follows another name of the table of cars", async () => {
  const grid = await setUp({ tables: ["Cars", "Ports"], samples: false, answers: false });
  const port = gridPort(grid);
  await expect(exampleHere(port, "PLUMB.IDENTIFY(Seen[#Headers], Seen, Catalog!B2)")).rejects.toThrow("It reads the table Seen, which this workbook has not.");
  await expect(exampleHere(port, "PLUMB.VERDICT(Cars[#Headers], Cars, Catalog!B2)")).rejects.toThrow("catalogue's key in Catalog!B2");
  expect(await exampleHere(port, 'PLUMB.THREAD(0.3705, 24, "in")')).toBe('PLUMB.THREAD(0.3705, 24, "in")');
  const jobs = openGrid(gridLibrary, { sheets: [plainSheet("Sheet1", {})] }, productFunctions);
  const { headings = [] } = await port.readTable("Cars") ?? {};
  await gridPort(jobs).writeTables([{ name: "Jobs", headings: headings.map(String), rows: [] }]);
  expect(await exampleHere(gridPort(jobs), "PLUMB.X(Cars[#Headers], INDEX(Cars, 1, 0), Cars)")).toBe("PLUMB.X(Jobs[#Headers], INDEX(Jobs, 1, 0), Jobs)");
});

test("tables that come later are read by the key that is there, and their sheets come beside them", async () => {
  const grid = await setUp({ tables: ["Cars", "Ports", "Tube"], samples: false });
  const before = grid.value("Catalog", "B2");
  await setUpWorkbook(gridPort(grid), { tables: ["Kits", "Usage"], units: "us", samples: false, answers: true, today: TODAY });
  expect(grid.formula("Catalog", "B2")).toBe("=PLUMB.CATALOG(Ports[#All],Tube[#All],Kits[#All])"); // Usage is asked about, not part of the catalogue
  expect(grid.value("Catalog", "B2")).not.toBe(before);
  expect(grid.sheetNames()).toEqual(["Sheet1", "Cars", "Verdict", "Runs", "Flags", "Tubing", "Catalog", "Ports", "Tube", "Reorder", "Kits", "Usage"]);
  expect(errorsIn(grid)).toEqual([]);
});

test("a sheet Catalog of the user's own stays, and the key stands on another, which the formulas name", async () => {
  const grid = openGrid(gridLibrary, { sheets: [plainSheet("Catalog", { B2: "mine" })] }, productFunctions);
  await setUpWorkbook(gridPort(grid), { tables: setUpGroups[0]?.tables ?? [], units: "us", samples: true, answers: true, today: TODAY });
  expect([grid.value("Catalog", "B2"), grid.formula("Verdict", "A3")]).toEqual(["mine", "=PLUMB.VERDICT(Cars[#Headers],Cars,'Catalog 2'!B2)"]);
  expect(await exampleHere(gridPort(grid), "PLUMB.FITTING(1, Catalog!B2)")).toBe("PLUMB.FITTING(1, 'Catalog 2'!B2)");
  expect(errorsIn(grid)).toEqual([]);
});

async function setUp({ tables, samples, answers = true }: { readonly tables: readonly string[]; readonly samples: boolean; readonly answers?: boolean }): Promise<Grid> {
  const grid = openGrid(gridLibrary, { sheets: [plainSheet("Sheet1", {})] }, productFunctions);
  await setUpWorkbook(gridPort(grid), { tables, units: "us", samples, answers, today: TODAY });
  return grid;
}

/** Every cell that shows an error, with its sheet. */
function errorsIn({ model: { getters } }: Grid): readonly string[] {
  const places = getters.getSheetIds().flatMap((id) => getters.getEvaluatedCellsPositions(id));
  return places.flatMap((place) => {
    const value = shownValue(getters.getEvaluatedCell(place));
    return isCellError(value) ? [`${getters.getSheetName(place.sheetId)} row ${place.row + 1} ${value.error} ${value.message ?? ""}`] : [];
  });
}
