/** The workbook that Excel has open, through Office.js. */
import { gatherChanges, type ChangeGathering } from "./change-gathering";
import { headingIndex, type CellValue, type TableContent, type TablePlace, type WorkbookPort } from "./port";
import { freeSheetName } from "./sheet-name";
import { rectangular } from "./sheet-rows";

/** Runs a batch against the open workbook; Excel.run, or a stand-in for it in tests. */
export type RunBatch = <T>(batch: (context: Excel.RequestContext) => Promise<T>) => Promise<T>;

const runInExcel: RunBatch = (batch) => Excel.run(batch);

export function excelPort(run: RunBatch = runInExcel): WorkbookPort {
  const changes = gatherChanges();
  let watching: Promise<void> | undefined;
  const listen = async (): Promise<void> => {
    try {
      await (watching ??= watch(run, changes));
    } catch (error) {
      watching = undefined; // so that the next reading tries again
      throw error;
    }
  };
  return {
    // A workbook that is read but not listened to would go stale unseen, so listening comes first.
    tableNames: () => listen().then(() => run(tableNames)),
    readTable: (name) => run((context) => readTable(context, name)),
    selectTableRow: (table, row, column) => run((context) => selectTableRow(context, { table, row, column })),
    writeTableCell: (place, value) => run((context) => writeTableCell(context, place, value)),
    writeSheet: (name, rows) => run((context) => writeSheet(context, name, rectangular(rows))),
    onChange: (listener) => changes.listen(listener),
  };
}

async function tableNames(context: Excel.RequestContext): Promise<readonly string[]> {
  const { tables } = context.workbook;
  tables.load("items/name");
  await context.sync();
  return tables.items.map(({ name }) => name);
}

async function readTable(context: Excel.RequestContext, name: string): Promise<TableContent | undefined> {
  const table = context.workbook.tables.getItemOrNullObject(name);
  table.load("name, showHeaders");
  await context.sync();
  if (table.isNullObject) return undefined;
  const sheet = table.worksheet.load("name");
  const body = table.getDataBodyRange().load("values");
  const heading = table.showHeaders ? table.getHeaderRowRange().load("values") : undefined;
  await context.sync();
  const rows = body.values as CellValue[][];
  // A table without its heading row cannot be recognised, and blank headings say so.
  const headings = (heading?.values[0] ?? rows[0]?.map(() => "") ?? []) as CellValue[];
  return { name: table.name, sheet: sheet.name, headings, rows };
}

interface RowWanted {
  readonly table: string;
  readonly row: number;
  readonly column: string | undefined;
}

interface FoundRow {
  readonly table: Excel.Table;
  readonly body: Excel.Range;
  /** -1 when no column was asked for, or the table lacks it. */
  readonly index: number;
}

async function findRow(context: Excel.RequestContext, { table: name, row, column }: RowWanted): Promise<FoundRow> {
  const table = context.workbook.tables.getItemOrNullObject(name);
  table.load("name");
  await context.sync();
  if (table.isNullObject) throw new Error(`There is no table ${name}.`);
  const body = table.getDataBodyRange().load("rowCount");
  const headings = column === undefined ? undefined : table.getHeaderRowRange().load("values");
  await context.sync();
  if (row < 0 || row >= body.rowCount) throw new Error(`The table ${table.name} has no row ${row + 1}.`);
  return { table, body, index: column === undefined ? -1 : headingIndex((headings?.values[0] ?? []) as CellValue[], column) };
}

async function selectTableRow(context: Excel.RequestContext, wanted: RowWanted): Promise<void> {
  const { table, body, index } = await findRow(context, wanted);
  table.worksheet.activate();
  (index < 0 ? body.getRow(wanted.row) : body.getCell(wanted.row, index)).select();
  await context.sync();
}

async function writeTableCell(context: Excel.RequestContext, place: TablePlace, value: CellValue): Promise<CellValue> {
  const { table, body, index } = await findRow(context, place);
  if (index < 0) throw new Error(`The table ${table.name} has no column ${place.column}.`);
  const cell = body.getCell(place.row, index).load("values");
  await context.sync();
  const [[before = ""] = []] = cell.values as CellValue[][];
  cell.numberFormat = [[formatOf(value)]];
  cell.values = [[enteredAs(value)]];
  await context.sync();
  return before;
}

/** Everything that writes goes out in one batch, which Excel takes back in one step. */
async function writeSheet(context: Excel.RequestContext, wanted: string, rows: CellValue[][]): Promise<string> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  await context.sync();
  const name = freeSheetName(wanted, worksheets.items.map((sheet) => sheet.name));
  const sheet = worksheets.add(name);
  const width = rows[0]?.length ?? 0;
  if (width > 0) {
    const range = sheet.getRangeByIndexes(0, 0, rows.length, width);
    range.numberFormat = rows.map((row) => row.map(formatOf));
    range.values = rows.map((row) => row.map(enteredAs));
  }
  sheet.activate();
  await context.sync();
  return name;
}

/** Excel shows a longer text in a cell of text format as a row of number signs. */
const LONGEST_TEXT_FORMAT = 255;

/** Text format keeps Excel from reading "3/16" as a date; an apostrophe in front does it where that format is of no use. */
const formatOf = (cell: CellValue): string => (typeof cell === "string" && cell !== "" && !needsApostrophe(cell) ? "@" : "General");
const enteredAs = (cell: CellValue): CellValue => (typeof cell === "string" && needsApostrophe(cell) ? `'${cell}` : cell);
const needsApostrophe = (text: string): boolean => text.startsWith("'") || text.length > LONGEST_TEXT_FORMAT;

/**
 * Listens to edits, to tables that come and go, and to sheets that were recalculated, for a cell of a table may hold a formula.
 * What the port writes stands on a sheet without tables, so nobody hears of it.
 */
async function watch(run: RunBatch, changes: ChangeGathering): Promise<void> {
  const noteSheet = ({ worksheetId }: { worksheetId: string }): Promise<void> => run((context) => noteTablesOn(context, changes, worksheetId));
  await run(async (context) => {
    const { tables, worksheets } = context.workbook;
    worksheets.onChanged.add(noteSheet);
    worksheets.onCalculated.add(noteSheet);
    tables.onAdded.add(noteSheet);
    tables.onDeleted.add(({ tableName }) => Promise.resolve(changes.note([tableName])));
    await context.sync();
  });
}

async function noteTablesOn(context: Excel.RequestContext, changes: ChangeGathering, worksheetId: string): Promise<void> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(worksheetId);
  sheet.load("name");
  await context.sync();
  if (sheet.isNullObject) return;
  sheet.tables.load("items/name");
  await context.sync();
  changes.note(sheet.tables.items.map(({ name }) => name));
}
