/** New sheets and the tables on them. */
import { parseCellAddress } from "../address";
import { asTyped } from "../formula-repair";
import { listWarning, readyParts, type ReadyTable } from "../new-table";
import type { FormulaChange, NewSheet, NewTable } from "../port";
import type { ReadySheet } from "../sheet-content";
import { freeSheetName } from "../sheet-name";
import { sheetsLeft } from "./remains";
import type { WriteProgress } from "./run";
import { enterFormulas, placePictures, writeContent } from "./write-cells";

/** Two syncs, one of them writing; pictures take one more, and so does every 5 MB. */
export async function writeSheet(context: Excel.RequestContext, progress: WriteProgress, wanted: string, content: ReadySheet): Promise<string> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  await context.sync();
  const name = freeSheetName(wanted, worksheets.items.map((sheet) => sheet.name));
  progress.mayLeave = sheetsLeft([name]);
  const sheet = worksheets.add(name);
  await writeContent(context, sheet, content, progress);
  enterFormulas((content.formulas ?? []).map(({ row, column, formula }) => ({ cell: sheet.getCell(row, column), formula })));
  sheet.activate();
  if (content.pictures?.length) await placePictures(context, sheet, content.pictures, progress);
  else await context.sync();
  progress.written = true;
  return name;
}

/** Two syncs; three where formulas are to change. @returns the names of the tables */
export async function writeTables(context: Excel.RequestContext, progress: WriteProgress, { parts, changes }: Wanted): Promise<readonly string[]> {
  const { tables, worksheets, names: definedNames } = context.workbook;
  tables.load("items/name");
  worksheets.load("items/name");
  definedNames.load("items/name");
  await context.sync();
  // A defined name stands for something else already, and Excel would refuse it for a table.
  const ready = readyParts(parts, { tables: [...tables.items, ...definedNames.items].map(({ name }) => name), sheets: worksheets.items.map(({ name }) => name) });
  const changed = changes.length === 0 ? [] : await unchangedCells(context, changes);
  progress.mayLeave = sheetsLeft(ready.map(({ name }) => name));
  const made: Excel.Worksheet[] = [];
  for (const part of ready) {
    const sheet = worksheets.add(part.name);
    made.push(sheet);
    await writeContent(context, sheet, part.content, progress);
    if (part.table) makeTable(sheet, part.table);
  }
  const formulas = ready.flatMap(({ content: { formulas: own = [] } }, index) => own.map(({ row, column, formula }) => ({ cell: made[index]?.getCell(row, column), formula })));
  enterFormulas([...formulas, ...changed]);
  made[0]?.activate();
  await context.sync();
  progress.written = true;
  return ready.flatMap(({ table }) => table?.name ?? []);
}

interface Wanted {
  readonly parts: readonly (NewTable | NewSheet)[];
  readonly changes: readonly FormulaChange[];
}

/** The cells that still hold the formula they are known to hold. */
async function unchangedCells(context: Excel.RequestContext, changes: readonly FormulaChange[]): Promise<readonly { readonly cell: Excel.Range; readonly formula: string }[]> {
  const found = changes.map(({ sheet, address, from, to }) => ({ cell: cellAt(context, sheet, address)?.load("formulas"), from, to }));
  await context.sync();
  return found.flatMap(({ cell, from, to }) => (cell && asTyped(String((cell.formulas as unknown[][])[0]?.[0] ?? "")) === from ? [{ cell, formula: to }] : []));
}

/** @returns undefined when there is no such sheet; the names of the sheets must have been loaded */
function cellAt({ workbook: { worksheets } }: Excel.RequestContext, name: string, address: string): Excel.Range | undefined {
  const place = parseCellAddress(address);
  const sheet = worksheets.items.find((one) => one.name.toLowerCase() === name.toLowerCase());
  return place && sheet?.getCell(place.row, place.column);
}

/** Two syncs. */
export async function formulaAt(context: Excel.RequestContext, sheet: string, address: string): Promise<string | undefined> {
  context.workbook.worksheets.load("items/name");
  await context.sync();
  const cell = cellAt(context, sheet, address)?.load("formulas, values");
  if (!cell) return undefined;
  await context.sync();
  const [formula, shown] = [cell.formulas, cell.values].map((cells: unknown[][]) => String(cells[0]?.[0] ?? ""));
  // Of a text that begins with "=" Excel gives the text for both.
  return formula?.startsWith("=") && formula !== shown ? asTyped(formula) : undefined;
}

function makeTable(sheet: Excel.Worksheet, { name, headings, rows, lists }: ReadyTable): void {
  sheet.tables.add(sheet.getRangeByIndexes(0, 0, rows.length + 1, headings.length), true).name = name;
  for (const { area, values } of lists) {
    const { dataValidation } = sheet.getRangeByIndexes(area.row, area.column, area.rows, area.columns);
    dataValidation.rule = { list: { inCellDropDown: true, source: values.join(",") } };
    dataValidation.errorAlert = { showAlert: true, style: "Warning", ...listWarning };
  }
}
