/** What only Excel does to an add-in: events, syncs that cost, limits, protection, faults that pass. */
import { excelPort } from "../../src/workbook/excel";
import { patientRuns } from "../../src/workbook/excel/run";
import type { TableContent, WorkbookPort } from "../../src/workbook/port";
import { FakeError } from "./fake-excel/book";
import { FakeExcel } from "./fake-excel";

const cars: TableContent = { name: "Cars", sheet: "Cars", headings: ["Car", "Tube"], rows: [["one", "3/16"], ["two", ""]], firstRow: 2 };
const parts: TableContent = { name: "Parts", sheet: "Parts", headings: ["Part"], rows: [["BLOCK"]], firstRow: 2 };

const quiet = (): Promise<void> => new Promise((resolve) => { setTimeout(resolve, 120); });

/** Where Excel would wait before it is asked again, the tests do not. */
const open = (tables: readonly TableContent[] = [cars, parts]) => {
  const excel = new FakeExcel(tables);
  return { excel, port: excelPort(excel.run) };
};

describe("events", () => {
  const listening = async (tables?: readonly TableContent[]) => {
    const { excel, port } = open(tables);
    const told: string[][] = [];
    const stop = port.onChange((change) => told.push([...change.tables].sort()));
    await port.tableNames();
    return { excel, port, told, stop };
  };
  const handlers = (excel: FakeExcel): number => [...excel.handlers.values()].reduce((sum, each) => sum + each.size, 0);

  test("Excel is not listened to before anyone listens here, and no more when all have stopped", async () => {
    const { excel, port } = open();
    await port.tableNames();
    expect(handlers(excel)).toBe(0);
    const stops = [port.onChange(() => undefined), port.onSelect(() => undefined), port.onChange(() => undefined)];
    await port.tableNames();
    expect(handlers(excel)).toBe(6);
    for (const stop of stops) stop();
    stops[0]?.(); // twice does no harm
    await quiet();
    expect(handlers(excel)).toBe(0);
  });

  test("who comes back after all have stopped is told again, once", async () => {
    const { excel, port, told, stop } = await listening();
    stop();
    await quiet();
    port.onChange((change) => told.push([...change.tables]));
    await port.tableNames();
    excel.edit("Cars", 0, "Car", "three");
    await quiet();
    expect(told).toEqual([["Cars"]]);
  });

  test("many events are one look at the workbook", async () => {
    const { excel, told } = await listening();
    const before = excel.host.syncs;
    for (let edit = 0; edit < 50; edit += 1) excel.edit(edit % 2 === 0 ? "Cars" : "Parts", 0, edit % 2 === 0 ? "Car" : "Part", edit);
    await quiet();
    expect(told).toEqual([["Cars", "Parts"]]);
    expect(excel.host.syncs - before).toBe(1);
  });

  test("a table with another name is told under both, though Excel has no event for it, once the selection moves", async () => {
    const { excel, port, told } = await listening();
    excel.renameTable(excel.tableNamed("Parts"), "Components");
    excel.select({ sheet: excel.sheetNamed("Cars").id, row: 5, column: 5, rows: 1, columns: 1 });
    await quiet();
    expect(told).toEqual([["Components", "Parts"]]);
    expect(await port.readTable("Components")).toEqual({ ...parts, name: "Components" });
  });

  test("a table that is made by the user, and a sheet that goes with its table, are told", async () => {
    const { excel, told } = await listening();
    const sheet = excel.sheetNamed("Cars");
    const added = excel.addTable({ sheet: sheet.id, row: 10, column: 0, rows: 2, columns: 1 }, "Nuts");
    excel.fire("tables.onAdded", { tableId: added.id, worksheetId: sheet.id });
    await quiet();
    excel.sheets = excel.sheets.filter(({ name }) => name !== "Parts");
    excel.tables = excel.tables.filter(({ name }) => name !== "Parts");
    excel.fire("worksheets.onDeleted", { worksheetId: "{gone}" });
    await quiet();
    expect(told).toEqual([["Nuts"], ["Parts"]]);
  });

  test("events of the add-in's own writes are not looked into", async () => {
    const { excel, port } = await listening();
    const before = excel.host.syncs;
    await port.writeSheet("Quote", [["a"]]);
    await quiet();
    expect(excel.host.syncs - before).toBe(2); // the two of writing
  });

  test("when the look fails, every table counts as touched", async () => {
    const { excel, told } = await listening();
    excel.edit("Cars", 0, "Car", "x");
    excel.host.failures.push("GeneralException");
    await quiet();
    expect(told).toEqual([["Cars", "Parts"]]);
  });
});

describe("syncs, which are what an add-in waits for", () => {
  const cost = async (work: (port: WorkbookPort, excel: FakeExcel) => Promise<unknown>): Promise<number> => {
    const { excel, port } = open();
    const blank = { sheet: excel.sheetNamed("Cars").id, row: 20, column: 5, rows: 1, columns: 1 };
    excel.select(blank);
    await work(port, excel);
    return excel.host.syncs;
  };

  test.each<[string, number, (port: WorkbookPort) => Promise<unknown>]>([
    ["names of tables", 1, (port) => port.tableNames()],
    ["a table", 2, (port) => port.readTable("Cars")],
    ["a table that is not there", 1, (port) => port.readTable("Nowhere")],
    ["a jump to a cell", 3, (port) => port.selectTableRow("Cars", 1, "Tube")],
    ["one cell written", 3, (port) => port.writeTableCell({ table: "Cars", row: 1, column: "Tube" }, "1/4")],
    ["a sheet written", 2, (port) => port.writeSheet("Quote", { rows: [["a", 1]], styles: [{ row: 0, column: 0, rows: 1, columns: 2, style: { bold: true } }], page: { fitWide: true } })],
    ["a sheet with two pictures", 3, (port) => port.writeSheet("Quote", { rows: [["a"]], pictures: [picture, picture] })],
    ["three tables made", 2, (port) => port.writeTables(["A_", "B_", "C_"].map((name) => ({ name, headings: ["x"], rows: [] })))],
    ["a table made and a formula changed", 3, (port) => port.writeTables([{ name: "A_", headings: ["x"], rows: [] }], [{ sheet: "Cars", address: "H9", from: "=1", to: "=2" }])],
    ["the formula of a cell", 2, (port) => port.formulaAt("Cars", "H9")],
    ["where the user stands, outside tables", 1, (port) => port.selection()],
    ["a formula entered", 2, (port) => port.insertFormula("=SUM(1)")],
    ["the workbook's name", 1, (port) => port.workbookName()],
  ])("%s: %d", async (_, syncs, work) => {
    expect(await cost(work)).toBe(syncs);
  });

  const picture = { png: "iVBORw0KGgo=", alt: "a dot", row: 0, column: 0, width: 1, height: 1 };
});

describe("Excel on the web takes and gives 5 MB at once", () => {
  const many: TableContent = { name: "Many", sheet: "Many", headings: ["Text", "Number"], rows: Array.from({ length: 301 }, (_, row) => [`text ${row} ${"x".repeat(100)}`, row]), firstRow: 2 };

  test("a table too large for one answer is read in parts, in its order", async () => {
    const { excel, port } = open([many]);
    excel.host.largest = 10_000; // the table has some 35,000
    expect(await port.readTable("Many")).toEqual(many);
    expect(excel.host.syncs).toBeGreaterThan(6);
  });

  test("one row that is too large is an error, not an endless halving", async () => {
    const { excel, port } = open([many]);
    excel.host.largest = 100;
    await expect(port.readTable("Many")).rejects.toThrow("ResponsePayloadSizeLimitExceeded");
  });

  test("a sheet too large for one request goes out in parts that are not, and is taken back in one step", async () => {
    const { excel, port } = open();
    const rows = Array.from({ length: 3000 }, (_, row) => [row, "y".repeat(200), `z${"é".repeat(800)}`]);
    const before = excel.sheets.length;
    expect(await port.writeSheet("Long", rows)).toBe("Long");
    expect(excel.host.syncs).toBe(4); // names, then some 3.1 million characters in three parts of 1.2 million at most
    const { cells } = excel.sheetNamed("Long");
    expect([cells.get("0,0")?.value, cells.get("2999,0")?.value, String(cells.get("2999,2")?.value).length]).toEqual([0, 2999, 801]);
    excel.undo();
    expect(excel.sheets.length).toBe(before);
  });

  test("where a host cannot merge syncs into one step, the sheet is written all the same", async () => {
    const { excel, port } = open();
    excel.host.mergesUndo = false;
    await port.writeSheet("Quote", { rows: [["a"]], pictures: [{ png: "iVBORw0KGgo=", alt: "", row: 0, column: 0, width: 1, height: 1 }] });
    expect(excel.sheetNamed("Quote").pictures).toHaveLength(1);
  });
});

describe("a workbook that may not be changed is answered with a sentence", () => {
  test("a protected sheet, for one cell and for a formula", async () => {
    const { excel, port } = open();
    excel.sheetNamed("Cars").isProtected = true;
    await expect(port.writeTableCell({ table: "Cars", row: 0, column: "Tube" }, "x")).rejects.toThrow("The sheet Cars is protected, so nothing was written. Unprotect it on the Review tab and try again.");
    excel.select({ sheet: excel.sheetNamed("Cars").id, row: 20, column: 5, rows: 1, columns: 1 });
    await expect(port.insertFormula("=SUM(1)")).rejects.toThrow("The sheet Cars is protected");
  });

  test("a workbook protected against new sheets, for sheets and tables", async () => {
    const { excel, port } = open();
    excel.isProtected = true;
    await expect(port.writeSheet("Quote", [["a"]])).rejects.toThrow("protected against new sheets");
    await expect(port.writeTables([{ name: "Nuts", headings: ["Nut"], rows: [] }])).rejects.toThrow("protected against new sheets");
    expect(excel.sheets.map(({ name }) => name)).toEqual(["Cars", "Parts"]);
  });

  test("a workbook open for reading only still reads, and says why it is not written", async () => {
    const { excel, port } = open();
    excel.isReadOnly = true;
    expect(await port.readTable("Cars")).toEqual(cars);
    await expect(port.writeSheet("Quote", [["a"]])).rejects.toThrow("open for reading only");
  });

  test("a refusal without a cause to be seen is a sentence too, and an error of ours stays as it is", async () => {
    const { excel, port } = open();
    excel.host.failures.push("AccessDenied");
    await expect(port.writeSheet("Quote", [["a"]])).rejects.toThrow("Excel does not let this add-in change the workbook");
    await expect(port.writeTableCell({ table: "Nowhere", row: 0, column: "x" }, 1)).rejects.toThrow("There is no table Nowhere.");
  });
});

describe("faults that pass", () => {
  const noPause = (): Promise<void> => Promise.resolve();

  test.each(["RequestAborted", "ServiceNotAvailable", "ActivityLimitReached", "InvalidOperationInCellEditMode", "InactiveWorkbook"])("%s is tried again", async (code) => {
    const { excel, port } = open();
    excel.host.failures.push(code);
    expect(await port.readTable("Cars")).toEqual(cars);
  });

  test("three times, with longer pauses, and then it is said", async () => {
    const pauses: number[] = [];
    const runs = patientRuns(() => Promise.reject(new FakeError("ServiceNotAvailable")), (milliseconds) => { pauses.push(milliseconds); return Promise.resolve(); });
    await expect(runs.reading(() => Promise.resolve(1))).rejects.toThrow("ServiceNotAvailable");
    expect(pauses).toEqual([150, 400, 1000]);
  });

  test("any other fault is not", async () => {
    let tries = 0;
    const runs = patientRuns(() => { tries += 1; return Promise.reject(new FakeError("GeneralException")); }, noPause);
    await expect(runs.reading(() => Promise.resolve(1))).rejects.toThrow("GeneralException");
    expect(tries).toBe(1);
  });

  test("a write is tried again while nothing was written, and never after", async () => {
    const { excel } = open();
    const runs = patientRuns(excel.run, noPause);
    const tries: boolean[] = [];
    await expect(runs.writing(async (context, progress) => {
      tries.push(progress.written);
      if (tries.length === 2) progress.written = true;
      await context.sync();
      throw new FakeError("RequestAborted");
    })).rejects.toThrow("RequestAborted");
    expect(tries).toEqual([false, false]);
  });

  test("where something in a step cannot be undone, it is written without merging", async () => {
    const merged: (boolean | undefined)[] = [];
    const { excel } = open();
    const runs = patientRuns((batch, choices) => {
      merged.push(choices?.oneUndoStep);
      return choices?.oneUndoStep ? Promise.reject(new FakeError("UndoNotSupported")) : excel.run(batch, choices);
    }, noPause);
    expect(await runs.writing(() => Promise.resolve("done"))).toBe("done");
    expect(merged).toEqual([true, false]);
  });

  test("a cell that stays in editing is said in a sentence", async () => {
    const { excel, port } = open();
    excel.host.failures.push(...Array.from({ length: 4 }, () => "InvalidOperationInCellEditMode"));
    await expect(port.writeSheet("Quote", [["a"]])).rejects.toThrow("Press Enter and try again.");
  });
});

test("a table without its heading row reads with blank headings, and its rows are found", async () => {
  const { excel, port } = open();
  excel.tableNamed("Cars").showHeaders = false;
  expect(await port.readTable("Cars")).toEqual({ ...cars, headings: ["", ""] });
  await port.selectTableRow("Cars", 1, "Tube");
  expect(excel.selection).toMatchObject({ row: 2, column: 0, columns: 2 });
});

test("dates are day numbers and a typed fraction is a date unless the cell is text, as Excel has it", async () => {
  const { excel, port } = open();
  const sheet = excel.sheetNamed("Cars");
  excel.type(sheet, { row: 1, column: 0 }, "3/16"); // text format, as the test's texts have
  sheet.cells.delete("2,0");
  excel.type(sheet, { row: 2, column: 0 }, "3/16");
  expect((await port.readTable("Cars"))?.rows.map(([first]) => typeof first)).toEqual(["string", "number"]);
});

test("a defined name keeps a table from being called so", async () => {
  const { excel, port } = open();
  excel.definedNames = ["Nuts"];
  await expect(port.writeTables([{ name: "Nuts", headings: ["Nut"], rows: [] }])).rejects.toThrow("Nuts");
  expect(excel.sheets).toHaveLength(2);
});

test("of several cells, or a picture, no formula is entered", async () => {
  const { excel, port } = open();
  excel.select({ sheet: excel.sheetNamed("Cars").id, row: 20, column: 5, rows: 2, columns: 1 });
  await expect(port.insertFormula("=SUM(1)")).rejects.toThrow("Select one blank cell first");
  excel.selection = undefined;
  await expect(port.insertFormula("=SUM(1)")).rejects.toThrow("Select one blank cell first");
});
