import { headingIndex, type CellValue, type TableContent } from "../port";
import { codeOf } from "./run";

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
  const half = Math.ceil(size.rowCount / 2);
  const rows = [...(await someRows(context, table, { first: 0, count: half })), ...(await someRows(context, table, { first: half, count: size.rowCount - half }))];
  return contentOf(name, parts, rows);
}

interface Head {
  readonly sheet: Excel.Worksheet;
  readonly heading: Excel.Range | undefined;
}

const headOf = (table: Excel.Table, showHeaders: boolean): Head => ({ sheet: table.worksheet.load("name"), heading: showHeaders ? table.getHeaderRowRange().load("values") : undefined });

const wholeTable = (table: Excel.Table, showHeaders: boolean): Head & { readonly body: Excel.Range } => ({ ...headOf(table, showHeaders), body: table.getDataBodyRange().load("values") });

/** A table without its heading row cannot be recognised, and blank headings say so. */
function contentOf(name: string, { sheet, heading }: Head, rows: CellValue[][]): TableContent {
  const headings = (heading?.values[0] ?? rows[0]?.map(() => "") ?? []) as CellValue[];
  return { name, sheet: sheet.name, headings, rows };
}

interface Rows {
  readonly first: number;
  readonly count: number;
}

/** Halved until each part fits into an answer. */
async function someRows(context: Excel.RequestContext, table: Excel.Table, { first, count }: Rows): Promise<CellValue[][]> {
  if (count <= 0) return [];
  const part = table.getDataBodyRange().getRow(first).getResizedRange(count - 1, 0).load("values");
  try {
    await context.sync();
    return part.values as CellValue[][];
  } catch (error) {
    if (!isTooLarge(error) || count === 1) throw error;
  }
  const half = Math.ceil(count / 2);
  return [...(await someRows(context, table, { first, count: half })), ...(await someRows(context, table, { first: first + half, count: count - half }))];
}

/** Excel on the web answers with at most 5 MB. */
const isTooLarge = (error: unknown): boolean => codeOf(error) === "ResponsePayloadSizeLimitExceeded";

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
  const sayMissing = `The table ${table.name} has no row ${row + 1}.`;
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
