/** Reads tables and rows from Excel, in parts where one answer would be too large. */
import { headingIndex, sayRowGone, type CellValue, type TableContent } from "../port";
import { halves, isTooLarge, rowsInParts, type WantedRows } from "./in-parts";

export async function tableNames(context: Excel.RequestContext): Promise<readonly string[]> {
  const { tables } = context.workbook;
  tables.load("items/name");
  await context.sync();
  return tables.items.map(({ name }) => name);
}

/** Two syncs; more only when the table is too large for one answer. */
export async function readTable(context: Excel.RequestContext, wanted: string): Promise<TableContent | undefined> {
  const table = context.workbook.tables.getItemOrNullObject(wanted);
  table.load("name, showHeaders");
  await context.sync();
  if (table.isNullObject) return undefined;
  const { name, showHeaders } = table;
  const whole = wholeTable(table, showHeaders);
  try {
    // All in one answer where it may be that large: how large it would be only the host can tell.
    await context.sync();
    return contentOf(name, whole, whole.body.values as CellValue[][]);
  } catch (error) {
    if (!isTooLarge(error)) throw error;
  }
  return readInParts(context, table, { name, showHeaders });
}

/** What did not come through must be asked for again, headings and all. */
async function readInParts(context: Excel.RequestContext, table: Excel.Table, { name, showHeaders }: { readonly name: string; readonly showHeaders: boolean }): Promise<TableContent> {
  const parts = headOf(table, showHeaders);
  const size = table.getDataBodyRange().load("rowCount");
  await context.sync();
  const rows = await halves(size.rowCount, (first, count) => rowsInParts(context, table.getDataBodyRange(), { first, count }, cellValues));
  return contentOf(name, parts, rows);
}

const cellValues: WantedRows<CellValue[]> = { load: "values", of: ({ values }) => values as CellValue[][] };

interface Head {
  readonly sheet: Excel.Worksheet;
  readonly heading: Excel.Range | undefined;
  readonly top: Excel.Range;
}

const headOf = (table: Excel.Table, showHeaders: boolean): Head => ({ sheet: table.worksheet.load("name"), heading: showHeaders ? table.getHeaderRowRange().load("values") : undefined, top: table.getDataBodyRange().load("rowIndex") });

const wholeTable = (table: Excel.Table, showHeaders: boolean): Head & { readonly body: Excel.Range } => ({ ...headOf(table, showHeaders), body: table.getDataBodyRange().load("values") });

/** A table without its heading row cannot be recognised, and blank headings say so. */
function contentOf(name: string, { sheet, heading, top }: Head, rows: readonly CellValue[][]): TableContent {
  const headings = (heading?.values[0] ?? rows[0]?.map(() => "") ?? []) as CellValue[];
  return { name, sheet: sheet.name, headings, rows, firstRow: top.rowIndex + 1 };
}

export interface RowWanted {
  readonly table: string;
  readonly row: number;
  readonly column: string | undefined;
}

export interface FoundRow {
  readonly table: Excel.Table;
  readonly range: Excel.Range;
  readonly values: readonly CellValue[];
  /** -1 when no column was asked for, or the table lacks it. */
  readonly index: number;
}

/**
 * Two syncs.
 * @throws Error with a plain sentence when there is no such table or row
 */
export async function findRow(context: Excel.RequestContext, { table: name, row, column }: RowWanted): Promise<FoundRow> {
  const table = context.workbook.tables.getItemOrNullObject(name);
  table.load("name, showHeaders");
  await context.sync();
  if (table.isNullObject) throw new Error(`There is no table ${name}.`);
  const sayMissing = sayRowGone(table.name);
  if (row < 0) throw new Error(sayMissing);
  const body = table.getDataBodyRange();
  // A cell may be taken from outside a range, so that it is the workbook that says whether the row is there.
  const range = body.getIntersectionOrNullObject(body.getCell(row, 0).getEntireRow()).load("values");
  const headings = table.showHeaders ? table.getHeaderRowRange().load("values") : undefined;
  await context.sync();
  if (range.isNullObject) throw new Error(sayMissing);
  const [values = []] = range.values as CellValue[][];
  return { table, range, values, index: column === undefined ? -1 : headingIndex((headings?.values[0] ?? []) as CellValue[], column) };
}
