/** Refuses sheets larger than the page can show, before they are read whole. */
import { parseCellAddress } from "../address";
import { type DocumentSheet } from "../document";
import { WorkbookFileError } from "./package-parts";

/**
 * Cells from A1 to the last row and column that a sheet may reach. The grid keeps a place for each: 27 million, one
 * column down to Excel's last row, take it four seconds, and a stray cell in the far corner would hold up the page for good.
 */
const largestSheet = 30_000_000;
/**
 * Cells of a table, which is read whole after each edit of it: 100,000 cars of 20 columns are 2 million. With a formula that repeats them they
 * take half a kilobyte each, and a tab of the browser ends at 4 GB: four columns drawn down to Excel's last row would end it.
 */
const largestTable = 2_500_000;

/** @throws WorkbookFileError that says which sheet is too large and what to do */
export function refuseTooLarge({ name, cells, tables }: DocumentSheet): void {
  let [rows, columns] = [0, 0];
  for (const address of cells.keys()) {
    const place = parseCellAddress(address);
    rows = Math.max(rows, (place?.row ?? 0) + 1);
    columns = Math.max(columns, (place?.column ?? 0) + 1);
  }
  for (const table of tables) {
    rows = Math.max(rows, table.firstRow + 1 + table.rows);
    columns = Math.max(columns, table.firstColumn + table.columns);
    if (table.rows * table.columns > largestTable) throw new WorkbookFileError(`The table ${table.name} has ${said(table.rows)} rows and ${said(table.columns)} columns, more than this page can work with. Make it as large as what it holds, save, and open it again.`);
  }
  // The grid adds room to type in: the least is 26 columns.
  if (rows * Math.max(26, columns) <= largestSheet) return;
  throw new WorkbookFileError(`The sheet ${name} reaches down to row ${said(rows)} and across ${said(columns)} columns, more than this page can show. Delete the rows and columns beyond your data, save, and open it again.`);
}

const said = (number: number): string => number.toLocaleString("en-US");
