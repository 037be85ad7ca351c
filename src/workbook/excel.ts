/** The workbook that Excel has open, through Office.js. */
import { gatherChanges } from "./change-gathering";
import { newRowCells, type CellValue, type TablePlace, type WorkbookPort } from "./port";
import { enteredAs, formatOf } from "./excel/entered-text";
import { findRow, readTable, tableNames, type RowWanted } from "./excel/read-table";
import { refusal, type SheetOf } from "./excel/refusal";
import { rowLeft } from "./excel/remains";
import { patientRuns, runInExcel, type PatientRuns, type RunBatch, type WriteProgress } from "./excel/run";
import { insertFormula, selectedPlace } from "./excel/selection";
import { watchWorkbook } from "./excel/watch";
import { formulaAt, writeSheet, writeTables } from "./excel/write-sheets";
import { readySheet } from "./sheet-content";
import { telling } from "./telling";

export type { RunBatch } from "./excel/run";

export function excelPort(run: RunBatch = runInExcel): WorkbookPort {
  const runs = patientRuns(run);
  const changes = gatherChanges();
  const listening = telling<TablePlace | undefined>();
  const selected = (): void => {
    if (listening.hasListeners) runs.reading(selectedPlace).then(listening.tell, () => undefined);
  };
  const watching = watchWorkbook(run, runs, { changes, selected });
  const listeners = listenerCount(watching.want);
  return {
    sheetNames: () => runs.reading(sheetNames),
    // A workbook that is read but not listened to would go stale unseen, so listening comes first.
    tableNames: async () => {
      if (listeners.any()) await watching.ready();
      return runs.reading(tableNames);
    },
    readTable: (name) => runs.reading((context) => readTable(context, name)),
    selectTableRow: (table, row, column) => runs.reading((context) => selectTableRow(context, { table, row, column })),
    writeTableCell: async (place, value) => {
      const written = await writing(runs, (context, progress) => writeTableCell(context, progress, { place, value }), (context) => context.workbook.tables.getItem(place.table).worksheet);
      changes.note([written.table]);
      return written.before;
    },
    appendTableRow: async (table, cells) => {
      const written = await writing(runs, (context, progress) => appendTableRow(context, progress, { table, cells }), (context) => context.workbook.tables.getItem(table).worksheet);
      changes.note([written.table]);
      return written.row;
    },
    writeSheet: async (name, content) => {
      const ready = readySheet(content);
      return writing(runs, (context, progress) => writeSheet(context, progress, name, ready), newSheet);
    },
    writeTables: async (parts, formulas = []) => { changes.note(await writing(runs, (context, progress) => writeTables(context, progress, { parts, changes: formulas }), newSheet)); },
    formulaAt: (sheet, address) => runs.reading((context) => formulaAt(context, sheet, address)),
    selection: () => runs.reading(selectedPlace),
    onSelect: (listener) => listeners.with(listening.listen(listener)),
    insertFormula: (formula) => writing(runs, (context, progress) => insertFormula(context, progress, formula), (context) => context.workbook.worksheets.getActiveWorksheet()),
    workbookName: () => runs.reading(workbookName),
    onChange: (listener) => listeners.with(changes.listen(listener)),
  };
}

const newSheet: SheetOf = () => undefined;

async function writing<T>(runs: PatientRuns, batch: (context: Excel.RequestContext, progress: WriteProgress) => Promise<T>, sheetOf: SheetOf): Promise<T> {
  const progress: WriteProgress = { written: false };
  try {
    return await runs.writing(batch, progress);
  } catch (error) {
    throw await refusal(runs, error, sheetOf, progress);
  }
}

/** Counts who listens, and says when the first comes and when the last has gone. */
function listenerCount(changed: (isAny: boolean) => void) {
  let count = 0;
  return {
    any: () => count > 0,
    with: (stop: () => void): (() => void) => {
      let isStopped = false;
      if (++count === 1) changed(true);
      return () => {
        if (isStopped) return;
        isStopped = true;
        stop();
        if (--count === 0) changed(false);
      };
    },
  };
}

async function selectTableRow(context: Excel.RequestContext, wanted: RowWanted): Promise<void> {
  const { table, range, index } = await findRow(context, wanted);
  table.worksheet.activate();
  (index < 0 ? range : range.getCell(0, index)).select();
  await context.sync();
}

interface CellWanted {
  readonly place: TablePlace;
  readonly value: CellValue;
}

async function writeTableCell(context: Excel.RequestContext, progress: WriteProgress, { place, value }: CellWanted): Promise<{ readonly table: string; readonly before: CellValue }> {
  const { table, range, values, index } = await findRow(context, place);
  if (index < 0) throw new Error(`The table ${table.name} has no column ${place.column}.`);
  const cell = range.getCell(0, index);
  cell.numberFormat = [[formatOf(value)]];
  cell.values = [[enteredAs(value)]];
  await context.sync();
  progress.written = true;
  return { table: table.name, before: values[index] ?? "" };
}

async function sheetNames(context: Excel.RequestContext): Promise<readonly string[]> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  await context.sync();
  return worksheets.items.map(({ name }) => name);
}

interface RowToAdd {
  readonly table: string;
  readonly cells: Readonly<Record<string, CellValue>>;
}

/** Three syncs. The formats come first, so that a text that looks like a number stays one. */
async function appendTableRow(context: Excel.RequestContext, progress: WriteProgress, { table: wanted, cells }: RowToAdd): Promise<{ readonly table: string; readonly row: number }> {
  const table = context.workbook.tables.getItemOrNullObject(wanted);
  table.load("name, showHeaders");
  await context.sync();
  if (table.isNullObject) throw new Error(`There is no table ${wanted}.`);
  if (!table.showHeaders) throw new Error(`The table ${table.name} shows no headings, so no row was added.`);
  const head = table.getHeaderRowRange().load("values");
  const body = table.getDataBodyRange().load("rowCount");
  await context.sync();
  const row = newRowCells(table.name, (head.values as CellValue[][])[0] ?? [], cells);
  progress.mayLeave = rowLeft(table.name, body.rowCount);
  const added = table.rows.add().getRange();
  added.numberFormat = [row.map((value) => formatOf(value))];
  added.values = [row.map(enteredAs)];
  await context.sync();
  progress.written = true;
  return { table: table.name, row: body.rowCount };
}

async function workbookName(context: Excel.RequestContext): Promise<string> {
  const { workbook } = context;
  workbook.load("name");
  await context.sync();
  return workbook.name;
}
