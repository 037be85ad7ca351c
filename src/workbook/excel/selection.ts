/** Where the user stands, and a formula entered there. */
import { sayFormulaRefused, type CellValue, type TablePlace } from "../port";
import { codeOf, type WriteProgress } from "./run";

export async function selectedPlace(context: Excel.RequestContext): Promise<TablePlace | undefined> {
  const cell = context.workbook.getActiveCell().load("rowIndex, columnIndex");
  const tables = cell.getTables().load("items/name, items/showHeaders");
  await context.sync();
  const [table] = tables.items;
  if (!table?.showHeaders) return undefined;
  const body = table.getDataBodyRange().load("rowIndex, columnIndex, rowCount");
  const headings = table.getHeaderRowRange().load("values");
  await context.sync();
  const row = cell.rowIndex - body.rowIndex;
  const heading = (headings.values[0] as CellValue[] | undefined)?.[cell.columnIndex - body.columnIndex];
  return row < 0 || row >= body.rowCount || heading === undefined ? undefined : { table: table.name, row, column: String(heading) };
}

/** @throws Error with a plain sentence unless one blank cell outside all tables is selected */
export async function insertFormula(context: Excel.RequestContext, progress: WriteProgress, formula: string): Promise<string> {
  const { cell, count, isInTable } = await selectedCell(context);
  if (count !== 1) throw new Error(sayFormulaRefused.several);
  if (isInTable) throw new Error(sayFormulaRefused.table);
  const [[shown = ""] = []] = cell.values as CellValue[][];
  const [[entered = ""] = []] = cell.formulas as CellValue[][];
  if (shown !== "" || entered !== "") throw new Error(sayFormulaRefused.filled(cell.address.slice(cell.address.lastIndexOf("!") + 1)));
  cell.numberFormat = [["General"]]; // a cell of text format would show the formula instead of its result
  cell.formulas = [[formula]];
  await context.sync();
  progress.written = true;
  return cell.address;
}

async function selectedCell(context: Excel.RequestContext): Promise<{ readonly cell: Excel.Range; readonly count: number; readonly isInTable: boolean }> {
  const cell = context.workbook.getActiveCell().load("address, values, formulas");
  const range = context.workbook.getSelectedRange().load("cellCount");
  const tables = cell.getTables().load("items/name");
  try {
    await context.sync();
  } catch (error) {
    // Several areas at once, or a picture, are no range.
    if (codeOf(error) === "InvalidSelection") throw new Error(sayFormulaRefused.several, { cause: error });
    throw error;
  }
  return { cell, count: range.cellCount, isInTable: tables.items.length > 0 };
}
