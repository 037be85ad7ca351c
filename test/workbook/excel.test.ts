import { cellAddress, parseCellAddress } from "../../src/workbook/address";
import { excelPort } from "../../src/workbook/excel";
import type { TableContent } from "../../src/workbook/port";
import { plainly, workbookContract, type WorkbookUnderTest } from "./contract";
import { FakeExcel } from "./fake-excel";

workbookContract("the adapter to Excel", (tables) => Promise.resolve(open(tables)));

test("the stand-in for Excel holds to the rule that makes the contract worth keeping: no reading before load and sync", async () => {
  const excel = new FakeExcel([cars]);
  const readTooEarly = excel.run(async (context) => {
    const table = context.workbook.tables.getItemOrNullObject("Cars");
    await context.sync();
    return table.name;
  });
  await expect(readTooEarly).rejects.toThrow("PropertyNotLoaded: name");
});

test("a table that stands lower says the sheet's number of its first row", async () => {
  const excel = new FakeExcel([]);
  excel.addTable({ sheet: excel.addSheet("Low").id, row: 3, column: 1, rows: 3, columns: 2 }, "Low");
  expect((await excelPort(excel.run).readTable("Low"))?.firstRow).toBe(5); // index 3 is row 4 with the headings
});

test("the stand-in for Excel reads written text as typing", async () => {
  const excel = new FakeExcel([]);
  await excel.run(async (context) => {
    context.workbook.worksheets.add("Typed").getRangeByIndexes(0, 0, 1, 4).values = [["3/16", "007", "=1+1", "'007"]];
    await context.sync();
  });
  expect(shownOn(excel, "Typed")).toEqual([[expect.any(Number), 7, "#NAME?", "007"]]);
});

test("a recalculated sheet tells its tables, since a cell of a table may hold a formula", async () => {
  const excel = new FakeExcel([cars]);
  const port = excelPort(excel.run);
  const told: string[][] = [];
  port.onChange(({ tables }) => told.push([...tables]));
  await port.tableNames();
  excel.fire("worksheets.onCalculated", { worksheetId: excel.sheets[0]?.id ?? "" });
  await new Promise((resolve) => { setTimeout(resolve, 120); });
  expect(told).toEqual([["Cars"]]);
});

test("an event of a sheet that is gone by the time it is looked at harms nothing", async () => {
  const excel = new FakeExcel([cars]);
  const port = excelPort(excel.run);
  const told: string[][] = [];
  port.onChange(({ tables }) => told.push([...tables]));
  await port.tableNames();
  excel.fire("worksheets.onChanged", { worksheetId: "{gone}" });
  await new Promise((resolve) => { setTimeout(resolve, 120); });
  expect(told).toEqual([]);
});

test("a host that cannot listen makes the reading fail, so that the panel never goes stale unseen, and the next reading tries again", async () => {
  const excel = new FakeExcel([cars]);
  let failures = 2; // the listener coming, and the first reading
  const port = excelPort((batch, choices) => (failures-- > 0 ? Promise.reject(new Error("no events here")) : excel.run(batch, choices)));
  port.onChange(() => undefined);
  await expect(port.tableNames()).rejects.toThrow("no events here");
  await expect(port.tableNames()).resolves.toEqual(["Cars"]);
});

const cars: TableContent = { name: "Cars", sheet: "Cars", headings: ["Car"], rows: [["one"]] };

function open(tables: readonly TableContent[]): WorkbookUnderTest {
  const excel = new FakeExcel(tables);
  return {
    port: excelPort(excel.run),
    edit: (table, row, column, value) => { excel.edit(table, row, column, value); },
    deleteTable: (table) => { excel.deleteTable(table); },
    selection: () => selectedRow(excel),
    sheetNames: () => excel.sheets.map(({ name }) => name),
    sheet: (name) => shownOn(excel, name),
    front: () => excel.sheets.find(({ id }) => id === excel.active)?.name,
    stand: (place) => { stand(excel, place); },
    formula: (sheet, address) => {
      const place = parseCellAddress(address);
      return excel.sheetNamed(sheet).cells.get(`${place?.row ?? -1},${place?.column ?? -1}`)?.formula;
    },
    shownLooks: (name) => {
      const { widths, heights, merges, pictures, page, cells, looks, frozenRows } = excel.sheetNamed(name);
      const formats = [...cells].map(([key, { format }]) => [key, { ...looks.get(key), format }] as const);
      const styles = plainly([...[...looks], ...formats].map(([key, look]) => [addressOf(key), look] as const));
      const shown = pictures.map(({ left: _left, top: _top, ...picture }) => picture);
      // Points of 5 pixels of room and 7 a character.
      return { styles, columnWidths: Array.from({ length: 3 }, (_, column) => charactersOf(widths.get(column))), rowHeights: Array.from({ length: 3 }, (_, row) => heights.get(row)), merges, pictures: shown, page, frozenRows };
    },
    choices: (name, row, column) => {
      const table = excel.tableNamed(name);
      const sheet = excel.sheets.find(({ id }) => id === table.sheet);
      const found = sheet?.lists.find(({ area, alert }) => alert === "Warning" && sheet.cells.get(`0,${area.column}`)?.value === column && row + 1 < area.row + area.rows);
      return found?.values;
    },
    undo: () => { excel.undo(); },
  };
}

const addressOf = (key: string): string => {
  const [row = 0, column = 0] = key.split(",").map(Number);
  return cellAddress(row, column);
};

const charactersOf = (points: number | undefined): number | undefined => (points === undefined ? undefined : (points / 0.75 - 5) / 7);

function stand(excel: FakeExcel, place: Parameters<WorkbookUnderTest["stand"]>[0]): void {
  if ("sheet" in place) {
    const cell = parseCellAddress(place.address) ?? { row: 0, column: 0 };
    excel.select({ sheet: excel.sheetNamed(place.sheet).id, ...cell, rows: 1, columns: 1 });
    return;
  }
  const table = excel.tableNamed(place.table);
  const sheet = excel.sheets.find(({ id }) => id === table.sheet);
  const column = [...Array(table.columns).keys()].find((each) => sheet?.cells.get(`0,${each}`)?.value === place.column) ?? 0;
  excel.select({ sheet: table.sheet, row: place.row + 1, column, rows: 1, columns: 1 });
}

function selectedRow({ selection, active, tables, sheets }: FakeExcel): ReturnType<WorkbookUnderTest["selection"]> {
  const table = tables.find(({ sheet }) => sheet === selection?.sheet && sheet === active);
  if (!table || !selection) return undefined;
  if (selection.columns === table.columns) return { table: table.name, row: selection.row - 1 };
  const heading = sheets.find(({ id }) => id === table.sheet)?.cells.get(`0,${selection.column}`)?.value;
  return { table: table.name, row: selection.row - 1, column: String(heading) };
}

function shownOn(excel: FakeExcel, name: string): ReturnType<WorkbookUnderTest["sheet"]> {
  const cells = excel.sheets.find((sheet) => sheet.name === name)?.cells ?? new Map<string, { value: string }>();
  const places = [...cells.keys()].map((key) => key.split(",").map(Number) as [number, number]);
  const [rows, columns] = [Math.max(-1, ...places.map(([row]) => row)) + 1, Math.max(-1, ...places.map(([, column]) => column)) + 1];
  return Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => cells.get(`${row},${column}`)?.value ?? ""));
}
