import { cellAddress, parseArea } from "../../src/workbook/address";
import { type DocumentSheet, isCellError } from "../../src/workbook/document";
import { type TableContent } from "../../src/workbook/port";
import { type Grid } from "../../src/embedded/grid/grid";
import { gridPort } from "../../src/embedded/grid-port";
import { plainly, workbookContract, type WorkbookUnderTest } from "../workbook/contract";
import { openDocument, plainSheet, tableSheet } from "./sample";

workbookContract("the grid of the local page", (tables) => Promise.resolve(openWorkbook(tables)));

test("a table that moves down says the sheet's number of its first row, and that is told as a change", async () => {
  const grid = openDocument({ sheets: [tableSheet({ name: "Cars", rows: [["Car"], ["one"]] })] });
  const port = gridPort(grid);
  expect((await port.readTable("Cars"))?.firstRow).toBe(2);
  const told = new Promise((resolve) => { port.onChange(({ tables }) => { resolve(tables); }); });
  grid.model.dispatch("ADD_COLUMNS_ROWS", { sheetId: grid.model.getters.getActiveSheetId(), sheetName: "Cars", dimension: "ROW", base: 0, quantity: 2, position: "before" });
  expect([await told, (await port.readTable("Cars"))?.firstRow]).toEqual([["Cars"], 4]);
});

function openWorkbook(tables: readonly TableContent[]): WorkbookUnderTest {
  const sheets = tables.map(({ name, headings, rows }) => tableSheet({ name, rows: [headings, ...rows] }));
  const grid = openDocument({ sheets: [...sheets, ...(sheets.length === 0 ? [plainSheet("Sheet1", {})] : [])] });
  return {
    port: gridPort(grid, "Shop.xlsx"),
    edit: (name, row, column, value) => {
      const table = tableNamed(grid, name);
      const address = cellAddress(table.firstRow + 1 + row, table.firstColumn + table.headings.indexOf(column));
      grid.enter(table.sheet, address, String(value));
    },
    deleteTable: (name) => {
      const { getters } = grid.model;
      const sheetId = getters.getSheetIds().find((id) => getters.getSheetName(id) === tableNamed(grid, name).sheet) ?? "";
      grid.model.dispatch("DELETE_SHEET", { sheetId, sheetName: name });
    },
    selection: () => selection(grid),
    sheetNames: () => grid.sheetNames(),
    sheet: (name) => contentOf(grid, name),
    front: () => grid.selection().sheet,
    stand: (place) => { stand(grid, place); },
    formula: (sheet, address) => sheetOf(grid, sheet).cells.get(address)?.formula,
    shownLooks: (name) => {
      const { cells, columnWidths = [], rowHeights = [], merges = [], pictures = [], page, frozen } = sheetOf(grid, name);
      const looks = [...cells].map(([address, { value: _value, formula: _formula, spill: _spill, spilled: _spilled, ...look }]) => [address, look] as const);
      return { styles: plainly(looks), columnWidths, rowHeights, merges, pictures, page, frozenRows: frozen?.rows ?? 0 };
    },
    choices: (name, row, column) => {
      const table = tableNamed(grid, name);
      const [r, c] = [table.firstRow + 1 + row, table.firstColumn + table.headings.indexOf(column)];
      return sheetOf(grid, table.sheet).lists?.find(({ area }) => r >= area.row && r < area.row + area.rows && c >= area.column && c < area.column + area.columns)?.values;
    },
    undo: () => void grid.model.dispatch("REQUEST_UNDO"),
  };
}

function stand(grid: Grid, place: Parameters<WorkbookUnderTest["stand"]>[0]): void {
  if ("sheet" in place) {
    const area = parseArea(place.address);
    if (area) grid.select(place.sheet, area);
    return;
  }
  const table = tableNamed(grid, place.table);
  grid.select(table.sheet, { firstRow: table.firstRow + 1 + place.row, firstColumn: table.firstColumn + table.headings.indexOf(place.column), rows: 1, columns: 1 });
}

function sheetOf(grid: Grid, name: string): DocumentSheet {
  const sheet = grid.document().sheets.find((each) => each.name === name);
  if (!sheet) throw new Error(`The test has no sheet ${name}.`);
  return sheet;
}

function tableNamed(grid: Grid, name: string) {
  const table = grid.tables().find((each) => each.name === name);
  if (!table) throw new Error(`The test has no table ${name}.`);
  return table;
}

function selection(grid: Grid) {
  const { getters } = grid.model;
  const zone = getters.getSelectedZone();
  const sheet = getters.getActiveSheetId();
  const table = grid.tables().find((each) => each.sheet === getters.getSheetName(sheet));
  if (!table || zone.top !== zone.bottom) return undefined;
  const row = zone.top - table.firstRow - 1;
  if (zone.left === table.firstColumn && zone.right === table.firstColumn + table.columns - 1) return { table: table.name, row };
  return { table: table.name, row, column: String(table.headings[zone.left - table.firstColumn]) };
}

/** The used cells of a sheet from A1 on. */
function contentOf(grid: Grid, name: string) {
  const sheet = grid.document().sheets.find((each) => each.name === name);
  const area = { firstRow: 0, firstColumn: 0, rows: 4, columns: 4 };
  const rows = sheet ? grid.values(name, area).map((row) => row.map((value) => (isCellError(value) ? value.error : value))) : [];
  const used = rows.filter((row) => row.some((value) => value !== ""));
  const width = Math.max(0, ...used.map((row) => row.reduce<number>((last, value, at) => (value === "" ? last : at + 1), 0)));
  return used.map((row) => row.slice(0, width));
}
