/** Repair of stuck formulas in the workbook that Excel has open. */
import { asTyped, catalogueFirst, isStuck, type FormulaRepair, type RepairOutcome } from "../formula-repair";
import { halves, isTooLarge, rowsInParts } from "./in-parts";
import { refusal } from "./refusal";
import { patientRuns, runInExcel, type RunBatch, type WriteProgress } from "./run";
import { requests } from "./write-cells";

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

/** Two syncs; four where something is stuck. Only what is too large for one request or answer takes more. */
async function repair(context: Excel.RequestContext, progress: WriteProgress): Promise<RepairOutcome> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name, items/protection/protected");
  await context.sync();
  const locked = new Set(worksheets.items.filter(({ protection }) => protection.protected).map(({ name }) => name));
  const stuck = await withoutFilled(context, await stuckCells(context, worksheets.items));
  const open = stuck.filter(({ sheet }) => !locked.has(sheet));
  const refused = [...new Set(stuck.filter(({ sheet }) => locked.has(sheet)).map(({ sheet }) => sheet))];
  const inOrder = catalogueFirst(open.map(({ formula }) => formula)).flatMap((index) => open[index] ?? []);
  for (const group of requests(inOrder, ({ formula }) => SIZE_OF_CELL + formula.length)) {
    for (const { cell, formula } of group) cell.formulas = [[formula]];
    // eslint-disable-next-line office-addins/no-context-sync-in-loop -- a request may hold 5 MB, and this is one of them
    await context.sync();
    progress.written = true;
  }
  return { repaired: open.map(({ cell }) => cell.address), refused };
}

/** Characters in a request that name a cell and what is asked of it, rather too many than too few. */
const SIZE_OF_CELL = 300;

/** A sheet and its cells with formulas, in areas. */
interface Filled {
  readonly sheet: string;
  readonly cells: Excel.RangeAreas;
}

const filledCells = (sheets: readonly Excel.Worksheet[], load: string): readonly Filled[] => sheets.map((sheet) => ({ sheet: sheet.name, cells: sheet.getUsedRange().getSpecialCellsOrNullObject("Formulas").load(load) }));

interface Area {
  readonly sheet: string;
  readonly range: Excel.Range;
}

const areasOf = (filled: readonly Filled[]): readonly Area[] => filled.filter(({ cells }) => !cells.isNullObject).flatMap(({ sheet, cells }) => cells.areas.items.map((range) => ({ sheet, range })));

async function stuckCells(context: Excel.RequestContext, sheets: readonly Excel.Worksheet[]): Promise<readonly StuckCell[]> {
  const whole = filledCells(sheets, "areas/items/formulas, areas/items/values");
  try {
    // All in one answer where it may be that large, as of a table.
    await context.sync();
    return areasOf(whole).flatMap((area) => stuckIn(area, linesOf(area.range)));
  } catch (error) {
    if (!isTooLarge(error)) throw error;
  }
  const sized = filledCells(sheets, "areas/items/rowCount");
  await context.sync();
  const areas = areasOf(sized);
  return halves(areas.length, (first, count) => stuckInAreas(context, areas.slice(first, first + count)));
}

/** Fewer areas at a time until they fit into an answer, and of one that does not fit fewer rows. */
async function stuckInAreas(context: Excel.RequestContext, areas: readonly Area[]): Promise<readonly StuckCell[]> {
  const [only] = areas;
  if (!only) return [];
  if (areas.length === 1) return stuckIn(only, await rowsInParts(context, only.range, { first: 0, count: only.range.rowCount }, { load: LINES, of: linesOf }));
  for (const { range } of areas) range.load(LINES);
  try {
    await context.sync();
    return areas.flatMap((area) => stuckIn(area, linesOf(area.range)));
  } catch (error) {
    if (!isTooLarge(error)) throw error;
  }
  return halves(areas.length, (first, count) => stuckInAreas(context, areas.slice(first, first + count)));
}

const LINES = "formulas, values";

/** A row: of each cell its formula and what it shows. */
type Line = readonly (readonly [formula: string, shown: unknown])[];

const linesOf = ({ formulas, values }: Excel.Range): readonly Line[] =>
  (formulas as unknown[][]).map((line, row) => line.map((formula, column) => [String(formula), (values as unknown[][])[row]?.[column]] as const));

const stuckIn = ({ sheet, range }: Area, lines: readonly Line[]): readonly StuckCell[] =>
  lines.flatMap((line, row) => line.flatMap(([formula, shown], column) => (isStuck(formula, shown) ? [{ cell: range.getCell(row, column), formula: asTyped(formula), sheet }] : [])));

/** A cell that another one fills must not get a formula of its own: it would stand in the way. */
async function withoutFilled(context: Excel.RequestContext, found: readonly StuckCell[]): Promise<readonly StuckCell[]> {
  const parents: Excel.Range[] = [];
  for (const group of requests(found, () => SIZE_OF_CELL)) {
    for (const { cell } of group) parents.push(cell.load("address").getSpillParentOrNullObject().load("address"));
    // eslint-disable-next-line office-addins/no-context-sync-in-loop -- a request may hold 5 MB, and this is one of them
    await context.sync();
  }
  return found.filter(({ cell }, index) => parents[index]?.isNullObject === true || parents[index]?.address === cell.address);
}
