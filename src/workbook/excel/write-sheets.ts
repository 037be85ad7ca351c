/** New sheets and the tables on them. */
import { listWarning, readyTables, tableSheet, type ReadyTable } from "../new-table";
import type { NewTable } from "../port";
import type { ReadySheet } from "../sheet-content";
import { freeSheetName } from "../sheet-name";
import { sheetsLeft } from "./remains";
import type { WriteProgress } from "./run";
import { placePictures, writeContent } from "./write-cells";

/** Two syncs, one of them writing; pictures take one more, and so does every 5 MB. */
export async function writeSheet(context: Excel.RequestContext, progress: WriteProgress, wanted: string, content: ReadySheet): Promise<string> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  await context.sync();
  const name = freeSheetName(wanted, worksheets.items.map((sheet) => sheet.name));
  progress.mayLeave = sheetsLeft([name]);
  const sheet = worksheets.add(name);
  await writeContent(context, sheet, content, progress);
  sheet.activate();
  if (content.pictures?.length) await placePictures(context, sheet, content.pictures, progress);
  else await context.sync();
  progress.written = true;
  return name;
}

/** @returns the names of the tables */
export async function writeTables(context: Excel.RequestContext, progress: WriteProgress, wanted: readonly NewTable[]): Promise<readonly string[]> {
  const { tables, worksheets, names: definedNames } = context.workbook;
  tables.load("items/name");
  worksheets.load("items/name");
  definedNames.load("items/name");
  await context.sync();
  // A defined name stands for something else already, and Excel would refuse it for a table.
  const ready = readyTables(wanted, [...tables.items, ...definedNames.items].map(({ name }) => name));
  const taken = worksheets.items.map(({ name }) => name);
  const names = ready.map((table) => {
    const name = freeSheetName(table.name, taken);
    taken.push(name);
    return name;
  });
  progress.mayLeave = sheetsLeft(names);
  for (const [index, table] of ready.entries()) {
    const sheet = worksheets.add(names[index]);
    await writeContent(context, sheet, tableSheet(table), progress);
    makeTable(sheet, table);
    sheet.activate();
  }
  await context.sync();
  progress.written = true;
  return ready.map(({ name }) => name);
}

function makeTable(sheet: Excel.Worksheet, { name, headings, rows, lists }: ReadyTable): void {
  sheet.tables.add(sheet.getRangeByIndexes(0, 0, rows.length + 1, headings.length), true).name = name;
  for (const { area, values } of lists) {
    const { dataValidation } = sheet.getRangeByIndexes(area.row, area.column, area.rows, area.columns);
    dataValidation.rule = { list: { inCellDropDown: true, source: values.join(",") } };
    dataValidation.errorAlert = { showAlert: true, style: "Warning", ...listWarning };
  }
}
