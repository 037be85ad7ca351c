/** From the grid's model back to a document that can be saved. */
import { cellAddress } from "../../workbook/address";
import { type CellError, type CellValue, type DocumentSheet, type PageSetup, type SheetCell, type WorkbookDocument } from "../../workbook/document";
import { type ReferenceTable, toStructured } from "../../workbook/structured-references";
import { excelError } from "./functions";
import { lookOf } from "./cell-look";
import { type GridModel } from "./library";
import { pixelsPerCharacter, pixelsPerPoint } from "./model-data";
import { sheetParts } from "./sheet-parts";
import { type NamedTableGetters } from "./tables";
import { restoreUnresolved } from "./unresolved";

export interface EvaluatedCell {
  readonly value: unknown;
  readonly message?: string;
  readonly type: string;
}

/**
 * Everything the grid holds, with calculated values, as a document.
 * @param pages how sheets print, by sheet id; the grid itself has no place for it
 */
export function modelDocument(model: GridModel, pages: ReadonlyMap<string, PageSetup> = new Map()): WorkbookDocument {
  const { getters } = model;
  const tables = (getters as unknown as NamedTableGetters).getNamedTables();
  const names = Object.values(getters.getNamedRanges()).map(({ name, range }) => ({ name, formula: getters.getRangeString(range, "") }));
  return { sheets: getters.getSheetIds().map((id) => ({ ...sheetOf(model, id, tables), ...pagePart(pages.get(id)) })), names };
}

/** What a cell shows, with errors as Excel names them. */
export function shownValue(cell: EvaluatedCell): CellValue | CellError {
  const { value, message } = cell;
  if (typeof value === "string" && cell.type === "error") {
    const error = excelError(value) ?? "#VALUE!";
    return message ? { error, message } : { error };
  }
  return typeof value === "string" || typeof value === "number" || typeof value === "boolean" ? value : "";
}

const pagePart = (page: PageSetup | undefined): Pick<DocumentSheet, "page"> => (page ? { page } : {});

function sheetOf(model: GridModel, sheetId: string, tables: readonly ReferenceTable[]): DocumentSheet {
  const { getters } = model;
  const name = getters.getSheetName(sheetId);
  const cells = new Map<string, SheetCell>();
  const typed = Object.values(getters.getCells(sheetId)).map(({ id }) => getters.getCellPosition(id));
  for (const position of [...getters.getEvaluatedCellsPositions(sheetId), ...typed, ...ruledPositions(model, sheetId)]) {
    const address = cellAddress(position.row, position.col);
    if (cells.has(address)) continue;
    const cell = cellAt(model, position, { name, tables });
    if (cell) cells.set(address, cell);
  }
  return {
    name,
    cells,
    tables: tables.filter(({ sheet }) => sheet === name).map(({ name: table, firstRow, firstColumn, rows, columns }) => ({ name: table, firstRow, firstColumn, rows, columns })),
    columnWidths: columnWidths(model, sheetId),
    ...heightsPart(model, sheetId),
    ...(getters.isSheetVisible(sheetId) ? {} : { hidden: true }),
    ...frozenPart(model, sheetId),
    ...sheetParts(model, sheetId),
  };
}

function frozenPart({ getters }: GridModel, sheetId: string): Pick<DocumentSheet, "frozen"> {
  const { xSplit, ySplit } = getters.getPaneDivisions(sheetId);
  return xSplit + ySplit > 0 ? { frozen: { rows: ySplit, columns: xSplit } } : {};
}

type Position = Parameters<GridModel["getters"]["getCell"]>[0];

/** The sheet a cell stands on and the tables its formula may name. */
interface Surroundings {
  readonly name: string;
  readonly tables: readonly ReferenceTable[];
}

function cellAt({ getters }: GridModel, position: Position, { name, tables }: Surroundings): SheetCell | undefined {
  const cell = getters.getCell(position);
  const value = shownValue(getters.getEvaluatedCell(position));
  const look = lookOf(cell?.format, cell?.style, getters.getCellBorder(position) ?? undefined);
  const formula = formulaIn(getters, position, { name, tables });
  if (formula !== undefined) {
    const zone = getters.getSpreadZone(position);
    const spill = zone && { rows: zone.bottom - zone.top + 1, columns: zone.right - zone.left + 1 };
    return { value, formula, ...(spill && spill.rows * spill.columns > 1 ? { spill } : {}), ...look };
  }
  if (cell && !cell.isFormula && cell.content) return { value, ...look };
  const spilled = getters.getArrayFormulaSpreadingOn(position) !== undefined;
  if (spilled) return { value, spilled, ...look };
  return Object.keys(look).length > 0 ? { value: "", ...look } : undefined;
}

/** The formula of a cell as it is typed; undefined when it holds none. */
export function formulaText({ getters }: GridModel, position: Position): string | undefined {
  return formulaIn(getters, position, { name: getters.getSheetName(position.sheetId), tables: (getters as unknown as NamedTableGetters).getNamedTables() });
}

function formulaIn(getters: GridModel["getters"], position: Position, { name, tables }: Surroundings): string | undefined {
  const cell = getters.getCell(position);
  if (!cell?.isFormula) return undefined;
  const place = { sheet: name, row: position.row, column: position.col };
  return restoreUnresolved(toStructured(cell.compiledFormula.toFormulaString(getters), tables, place));
}

/** Cells with a rule above or below, which may hold nothing else. */
function ruledPositions({ getters }: GridModel, sheetId: string): Position[] {
  const [rows, columns] = [getters.getNumberRows(sheetId), getters.getNumberCols(sheetId)];
  const ruled: Position[] = [];
  // A sheet may have millions of places, so they are not listed first.
  const position = { sheetId, col: 0, row: 0 };
  for (position.row = 0; position.row < rows; position.row += 1) {
    for (position.col = 0; position.col < columns; position.col += 1) if (getters.getCellBorder(position) !== null) ruled.push({ ...position });
  }
  return ruled;
}

/** Widths in characters; a column of the grid's own width has none. */
function columnWidths({ getters }: GridModel, sheetId: string): (number | undefined)[] {
  const widths = Array.from({ length: getters.getNumberCols(sheetId) }, (_, column) => {
    const size = getters.getColSize(sheetId, column);
    return size === defaultWidth ? undefined : Math.round((size / pixelsPerCharacter) * 100) / 100;
  });
  while (widths.length > 0 && widths[widths.length - 1] === undefined) widths.pop();
  return widths;
}

/** Heights that somebody set, in points. */
function heightsPart({ getters }: GridModel, sheetId: string): Pick<DocumentSheet, "rowHeights"> {
  const heights = Array.from({ length: getters.getNumberRows(sheetId) }, (_, row) => getters.getUserRowSize(sheetId, row)).map((pixels) => (pixels === undefined ? undefined : pixels / pixelsPerPoint));
  while (heights.length > 0 && heights[heights.length - 1] === undefined) heights.pop();
  return heights.length > 0 ? { rowHeights: heights } : {};
}

/** Pixels of a column nobody has touched. */
const defaultWidth = 96;
