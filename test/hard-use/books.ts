/** The workbooks that a panel is tried over: one in memory, the stand-in for Excel, and the grid of the local page. */
import { gridPort } from "../../src/embedded/grid-port";
import { cellAddress } from "../../src/workbook/address";
import { excelPort } from "../../src/workbook/excel";
import { memoryWorkbook } from "../../src/workbook/memory";
import type { CellValue, TableContent, WorkbookPort } from "../../src/workbook/port";
import { openDocument, tableSheet } from "../embedded/sample";
import { FakeExcel } from "../workbook/fake-excel";

export interface Book {
  readonly port: WorkbookPort;
  /** Edits one cell as the user would; row 0 is the first row under the headings. */
  edit(table: string, row: number, column: string, value: CellValue): void;
  /** Everything it holds, to compare. */
  content(): Promise<string>;
  /** Milliseconds after which nothing more comes of an edit. */
  readonly quiet: number;
}
export type OpenBook = (tables: readonly TableContent[]) => Book;

export const memoryBook: OpenBook = (tables) => {
  const book = memoryWorkbook(tables);
  return {
    port: book, quiet: 36, edit: (table, row, column, value) => { book.edit(table, row, column, value); },
    content: async () => {
      const names = [...(await book.tableNames())].sort();
      const read = await Promise.all(names.map((name) => book.readTable(name)));
      return JSON.stringify([read, [...book.contents], [...book.made.keys()], [...book.formulas]]);
    },
  };
};

export const excelBook: OpenBook = (tables) => {
  const excel = new FakeExcel(tables);
  standBeside(excel);
  return {
    // Its events are gathered for 20 ms, then looked into, then told after 20 ms more.
    port: excelPort(excel.run), quiet: 84, edit: (table, row, column, value) => { excel.edit(table, row, column, value); },
    content: () => Promise.resolve(JSON.stringify([
      excel.tables.map(({ name, rows, columns }) => [name, rows, columns]),
      excel.sheets.map(({ name, cells, looks, widths, heights, merges, pictures, lists, page }) => [name, [...cells].filter(([, { value }]) => value !== ""), [...looks], [...widths], [...heights], merges, pictures, lists, page]),
    ])),
  };
};

/** The user stands on a blank cell outside all tables, where a formula may go. */
function standBeside(excel: FakeExcel): void {
  const [sheet] = excel.sheets;
  if (sheet) excel.select({ sheet: sheet.id, row: 500, column: 60, rows: 1, columns: 1 });
}

export const gridBook: OpenBook = (tables) => {
  const grid = openDocument({ sheets: tables.map(({ name, headings, rows }) => tableSheet({ name, rows: [headings, ...rows] })) });
  const [first = ""] = grid.sheetNames();
  grid.select(first, { firstRow: 60, firstColumn: 20, rows: 1, columns: 1 });
  return {
    port: gridPort(grid), quiet: 60,
    edit: (name, row, column, value) => {
      const table = grid.tables().find((one) => one.name === name);
      if (!table) throw new Error(`The test has no table ${name}.`);
      grid.enter(table.sheet, cellAddress(table.firstRow + 1 + row, table.firstColumn + table.headings.indexOf(column)), String(value));
    },
    content: () => Promise.resolve(JSON.stringify(grid.document().sheets.map(({ cells, ...sheet }) => [sheet, [...cells]]))),
  };
};
