import { cellAddress } from "../workbook/address";
import { gatherChanges } from "../workbook/change-gathering";
import { isCellError } from "../workbook/document";
import { headingIndex, type TableContent, type WorkbookPort } from "../workbook/port";
import { rectangular } from "../workbook/sheet-rows";
import { type ReferenceTable } from "../workbook/structured-references";
import { type Grid } from "./grid/grid";

/** The workbook port over the grid of the local page. */
export function gridPort(grid: Grid): WorkbookPort {
  const changes = gatherChanges();
  let known = contentsOf(grid);
  grid.onEdit(() => {
    const now = contentsOf(grid);
    // What the port writes is a sheet without tables, so no table of it can differ.
    changes.note([...new Set([...known.keys(), ...now.keys()])].filter((name) => known.get(name) !== now.get(name)));
    known = now;
  });
  return {
    tableNames: () => promised(() => grid.tables().map(({ name }) => name)),
    readTable: (name) =>
      promised(() => {
        const table = tableNamed(grid, name);
        return table && contentOf(grid, table);
      }),
    selectTableRow: (name, row, column) =>
      promised(() => {
        const table = tableWithRow(grid, name, row);
        const index = column === undefined ? -1 : headingIndex(table.headings, column);
        const cells = index < 0 ? {} : { firstColumn: table.firstColumn + index, columns: 1 };
        grid.select(table.sheet, { ...table, ...cells, firstRow: table.firstRow + 1 + row, rows: 1 });
      }),
    writeTableCell: ({ table: name, row, column }, value) =>
      promised(() => {
        const table = tableWithRow(grid, name, row);
        const index = headingIndex(table.headings, column);
        if (index < 0) throw new Error(`The table ${table.name} has no column ${column}.`);
        const address = cellAddress(table.firstRow + 1 + row, table.firstColumn + index);
        const before = grid.value(table.sheet, address);
        grid.write(table.sheet, address, value);
        return isCellError(before) ? before.error : before;
      }),
    writeSheet: (name, rows) => promised(() => grid.writeSheet(name, rectangular(rows))),
    onChange: (listener) => changes.listen(listener),
  };
}

/** Turns a throw into a rejection, as a caller of the port expects. */
const promised = <T>(work: () => T): Promise<T> => new Promise((resolve) => { resolve(work()); });

const tableNamed = (grid: Grid, name: string): ReferenceTable | undefined =>
  grid.tables().find((table) => table.name.toLowerCase() === name.toLowerCase());

function tableWithRow(grid: Grid, name: string, row: number): ReferenceTable {
  const table = tableNamed(grid, name);
  if (!table) throw new Error(`There is no table ${name}.`);
  if (row < 0 || row >= table.rows) throw new Error(`The table ${table.name} has no row ${String(row + 1)}.`);
  return table;
}

function contentOf(grid: Grid, table: ReferenceTable): TableContent {
  const shown = grid.values(table.sheet, { ...table, rows: table.rows + 1 });
  const [headings = [], ...rows] = shown.map((row) => row.map((value) => (isCellError(value) ? value.error : value)));
  return { name: table.name, sheet: table.sheet, headings, rows };
}

/** All tables as texts to compare: 170,000 cells take some 15 ms. */
const contentsOf = (grid: Grid): ReadonlyMap<string, string> =>
  new Map(grid.tables().map((table) => [table.name, JSON.stringify(contentOf(grid, table))]));
