/** The demo as a document that the grid opens: the parts that set-up would write into an empty workbook. */
import { cellAddress } from "../workbook/address";
import { demoParts } from "../workbook/demo-parts";
import { readyParts, type ReadyPart } from "../workbook/new-table";
import { cellStyles } from "../workbook/sheet-content";
import { type DocumentSheet, type SheetCell, type WorkbookDocument } from "../workbook/document";

/**
 * The demo workbook, as it is also written into Excel.
 * @param today the spreadsheet's day number; its history and its quotes move to it by whole weeks. Left out, they stay where they were written
 */
export const demoDocument = (today?: number): WorkbookDocument => ({ sheets: readyParts(demoParts(today), { tables: [], sheets: [] }).map(documentSheet) });

function documentSheet({ name, content, table }: ReadyPart): DocumentSheet {
  const { rows, formulas = [], styles = [], frozenRows = 0, columnWidths } = content;
  const cells = new Map<string, SheetCell>([...cellStyles(styles)].map(([address, style]) => [address, { value: "", ...style }]));
  const put = (row: number, column: number, cell: SheetCell): void => {
    const address = cellAddress(row, column);
    cells.set(address, { ...cells.get(address), ...cell });
  };
  rows.forEach((row, down) => { row.forEach((value, right) => { if (value !== "") put(down, right, { value }); }); });
  for (const { row, column, formula } of formulas) put(row, column, { value: "", formula });
  const tables = table ? [{ name: table.name, firstRow: 0, firstColumn: 0, rows: table.rows.length, columns: table.headings.length }] : [];
  return { name, cells, tables, ...(columnWidths ? { columnWidths } : {}), ...(frozenRows > 0 ? { frozen: { rows: frozenRows, columns: 0 } } : {}) };
}
