/** Repair of stuck formulas in the workbook that Excel has open. */
import { asTyped, catalogueFirst, isStuck, type FormulaRepair, type RepairOutcome } from "../formula-repair";
import { refusal } from "./refusal";
import { patientRuns, runInExcel, type RunBatch, type WriteProgress } from "./run";

export function excelRepair(run: RunBatch = runInExcel): FormulaRepair {
  const runs = patientRuns(run);
  return {
    repairFormulas: async () => {
      try {
        return await runs.writing(repair);
      } catch (error) {
        throw await refusal(runs, error, (context) => context.workbook.worksheets.getActiveWorksheet());
      }
    },
  };
}

interface StuckCell {
  readonly cell: Excel.Range;
  readonly formula: string;
  readonly sheet: string;
}

/** Two syncs; four where something is stuck. */
async function repair(context: Excel.RequestContext, progress: WriteProgress): Promise<RepairOutcome> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name, items/protection/protected");
  await context.sync();
  const locked = new Set(worksheets.items.filter(({ protection }) => protection.protected).map(({ name }) => name));
  const stuck = await stuckCells(context, worksheets.items);
  const open = stuck.filter(({ sheet }) => !locked.has(sheet));
  const refused = [...new Set(stuck.filter(({ sheet }) => locked.has(sheet)).map(({ sheet }) => sheet))];
  if (open.length === 0) return { repaired: [], refused };
  for (const index of catalogueFirst(open.map(({ formula }) => formula))) {
    const found = open[index];
    if (found) found.cell.formulas = [[found.formula]];
  }
  await context.sync();
  progress.written = true;
  return { repaired: open.map(({ cell }) => cell.address), refused };
}

async function stuckCells(context: Excel.RequestContext, sheets: readonly Excel.Worksheet[]): Promise<readonly StuckCell[]> {
  const formulas = sheets.map((sheet) => ({ sheet: sheet.name, cells: sheet.getRange().getSpecialCellsOrNullObject("Formulas").load("areas/items/formulas, areas/items/values") }));
  await context.sync();
  const found = formulas.filter(({ cells }) => !cells.isNullObject).flatMap(({ sheet, cells }) => cells.areas.items.flatMap((area) => stuckIn(area, sheet)));
  if (found.length === 0) return [];
  const parents = found.map(({ cell }) => cell.load("address").getSpillParentOrNullObject().load("address"));
  await context.sync();
  // A cell that another one fills must not get a formula of its own: it would stand in the way.
  return found.filter(({ cell }, index) => parents[index]?.isNullObject === true || parents[index]?.address === cell.address);
}

const stuckIn = (area: Excel.Range, sheet: string): readonly StuckCell[] =>
  (area.formulas as unknown[][]).flatMap((line, row) =>
    line.flatMap((formula, column) => (isStuck(String(formula), (area.values as unknown[][])[row]?.[column]) ? [{ cell: area.getCell(row, column), formula: asTyped(String(formula)), sheet }] : [])));
