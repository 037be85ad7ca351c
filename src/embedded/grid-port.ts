/** The workbook port over the grid of the local page. */
import { cellAddress, sheetPrefix } from "../workbook/address";
import { gatherChanges } from "../workbook/change-gathering";
import { isCellError, type CellError } from "../workbook/document";
import { headingIndex, newRowCells, sayFormulaRefused, sayRowGone, type CellValue, type TableContent, type TablePlace, type WorkbookPort } from "../workbook/port";
import { type ReferenceTable } from "../workbook/structured-references";
import { type Grid } from "./grid/grid";

/**
 * The workbook port over the grid of the local page.
 * @param name of the workbook
 */
export function gridPort(grid: Grid, name = "Workbook"): WorkbookPort {
  const changes = gatherChanges();
  let known = contentsOf(grid, new Map());
  let isStale = false;
  const changedTables = (): readonly string[] => {
    const [before, now] = [known, contentsOf(grid, known)];
    [known, isStale] = [now, false];
    return [...new Set([...before.keys(), ...now.keys()])].filter((name) => before.get(name) !== now.get(name));
  };
  // The sheet is drawn first: an edit of a long table shows at once.
  grid.onEdit(() => {
    isStale = true;
    changes.noteLater(changedTables);
  });
  return {
    sheetNames: () => promised(() => grid.sheetNames()),
    tableNames: () => promised(() => grid.tables().map(({ name }) => name)),
    readTable: (wanted) =>
      promised(() => {
        const table = tableNamed(grid, wanted);
        return table && ((isStale ? undefined : known.get(table.name)) ?? contentOf(grid, table));
      }),
    selectTableRow: (wanted, row, column) =>
      promised(() => {
        const table = tableWithRow(grid, wanted, row);
        const index = column === undefined ? -1 : headingIndex(table.headings, column);
        const cells = index < 0 ? {} : { firstColumn: table.firstColumn + index, columns: 1 };
        grid.select(table.sheet, { ...table, ...cells, firstRow: table.firstRow + 1 + row, rows: 1 });
      }),
    writeTableCell: (place, value) => promised(() => writeTableCell(grid, place, value)),
    appendTableRow: (table, cells) => promised(() => appendTableRow(grid, table, cells)),
    writeSheet: (wanted, content) => promised(() => grid.writeSheet(wanted, content)),
    writeTables: (parts, formulas) => promised(() => { grid.writeTables(parts, formulas); }),
    formulaAt: (sheet, address) => promised(() => grid.formula(sheet, address)),
    selection: () => promised(() => placeOf(grid)),
    onSelect: (listener) => grid.onSelect(() => { listener(placeOf(grid)); }),
    insertFormula: (formula) => promised(() => insertFormula(grid, formula)),
    workbookName: () => Promise.resolve(name),
    onChange: (listener) => changes.listen(listener),
  };
}

function writeTableCell(grid: Grid, { table: wanted, row, column }: TablePlace, value: CellValue): CellValue {
  const table = tableWithRow(grid, wanted, row);
  const index = headingIndex(table.headings, column);
  if (index < 0) throw new Error(`The table ${table.name} has no column ${column}.`);
  const address = cellAddress(table.firstRow + 1 + row, table.firstColumn + index);
  const before = grid.value(table.sheet, address);
  grid.write(table.sheet, address, value);
  return isCellError(before) ? before.error : before;
}

function appendTableRow(grid: Grid, wanted: string, cells: Readonly<Record<string, CellValue>>): number {
  const table = tableNamed(grid, wanted);
  if (!table) throw new Error(`There is no table ${wanted}.`);
  grid.appendTableRow(table, newRowCells(table.name, table.headings, cells));
  return table.rows;
}

/** Turns a throw into a rejection, as a caller of the port expects. */
const promised = <T>(work: () => T): Promise<T> => new Promise((resolve) => { resolve(work()); });

const tableNamed = (grid: Grid, name: string): ReferenceTable | undefined =>
  grid.tables().find((table) => table.name.toLowerCase() === name.toLowerCase());

function tableWithRow(grid: Grid, name: string, row: number): ReferenceTable {
  const table = tableNamed(grid, name);
  if (!table) throw new Error(`There is no table ${name}.`);
  if (row < 0 || row >= table.rows) throw new Error(sayRowGone(table.name));
  return table;
}

function placeOf(grid: Grid): TablePlace | undefined {
  const { row, column } = grid.selection();
  const table = tableAtSelection(grid);
  if (!table || row === table.firstRow) return undefined;
  return { table: table.name, row: row - table.firstRow - 1, column: table.headings[column - table.firstColumn] ?? "" };
}

/** The table whose heading or row the user stands in. */
function tableAtSelection(grid: Grid): ReferenceTable | undefined {
  const { sheet, row, column } = grid.selection();
  return grid.tables().find((table) =>
    table.sheet === sheet && row >= table.firstRow && row <= table.firstRow + table.rows && column >= table.firstColumn && column < table.firstColumn + table.columns);
}

function insertFormula(grid: Grid, formula: string): string {
  const { sheet, row, column, cells } = grid.selection();
  const address = cellAddress(row, column);
  if (cells !== 1) throw new Error(sayFormulaRefused.several);
  if (tableAtSelection(grid)) throw new Error(sayFormulaRefused.table);
  if (grid.value(sheet, address) !== "" || grid.isFormula(sheet, address)) throw new Error(sayFormulaRefused.filled(address));
  grid.enter(sheet, address, formula);
  return sheetPrefix(sheet) + address;
}

function contentOf(grid: Grid, table: ReferenceTable): TableContent {
  const [headings = [], ...rows] = grid.values(table.sheet, { ...table, rows: table.rows + 1 }).map(plainRow);
  return { name: table.name, sheet: table.sheet, headings, rows, firstRow: table.firstRow + 2 };
}

/** The grid hands out the same row while its cells stand. */
const plainRows = new WeakMap<readonly (CellValue | CellError)[], readonly CellValue[]>();

function plainRow(row: readonly (CellValue | CellError)[]): readonly CellValue[] {
  const plain = plainRows.get(row) ?? row.map((value) => (isCellError(value) ? value.error : value));
  plainRows.set(row, plain);
  return plain;
}

type Contents = ReadonlyMap<string, TableContent>;

/** All tables. Tables and rows that are as they were before are the same objects. */
const contentsOf = (grid: Grid, before: Contents): Contents => new Map(grid.tables().map((table) => [table.name, sharing(before.get(table.name), contentOf(grid, table))]));

function sharing(before: TableContent | undefined, now: TableContent): TableContent {
  if (!before) return now;
  const rows = now.rows.map((row, index) => sameRow(before.rows[index], row));
  const isSame = before.sheet === now.sheet && before.firstRow === now.firstRow && sameRow(before.headings, now.headings) === before.headings && rows.length === before.rows.length && rows.every((row, index) => row === before.rows[index]);
  return isSame ? before : { ...now, rows };
}

const sameRow = (before: readonly CellValue[] | undefined, now: readonly CellValue[]): readonly CellValue[] => (before === now || (before?.length === now.length && now.every((value, index) => value === before[index])) ? before : now);
