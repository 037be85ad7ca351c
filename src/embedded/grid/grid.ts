/** A calculated workbook: the grid library behind an interface of ours, the only one that the rest of the page knows. */
import { type Area, parseCellAddress } from "../../workbook/address";
import { type CellError, type CellValue, type PageSetup, type WorkbookDocument } from "../../workbook/document";
import { freeSheetName } from "../../workbook/sheet-name";
import { readyParts } from "../../workbook/new-table";
import { type FormulaChange, type NewSheet, type NewTable, type SheetContent } from "../../workbook/port";
import { readySheet } from "../../workbook/sheet-content";
import { type ReferenceTable } from "../../workbook/structured-references";
import { keepCalculatedCells, type KeptGetters } from "./calculated-cells";
import { type FunctionSet, registerFunctions } from "./functions";
import { provideGroupBy } from "./group-by";
import { keepHeaderPositions } from "./header-positions";
import { type GridLibrary, type GridModel } from "./library";
import { constantContent, modelData, sheetId } from "./model-data";
import { formulaText, modelDocument, shownValue } from "./model-document";
import { type Zone } from "./sheet-parts";
import { rowKeeper } from "./range-rows";
import { appendRow, registerRowAppender } from "./row-appender";
import { registerSheetWriter, writeSheets } from "./sheet-writer";
import { mendSpilledRange } from "./spilled-range";
import { keepTableStyles } from "./table-styles";
import { type NamedTableGetters, registerNamedTables } from "./tables";

/** A calculated workbook. Sheets go by name, cells by address ("B2"). */
export interface Grid {
  /** For the view of the grid only. */
  readonly model: GridModel;
  tables(): readonly ReferenceTable[];
  sheetNames(): readonly string[];
  /** Everything, with calculated values, for saving. */
  document(): WorkbookDocument;
  /** Enters a text as if typed: "=…" is a formula, "3/16" a date. */
  enter(sheet: string, address: string, text: string): void;
  /** Writes a value as it is: text stays text. */
  write(sheet: string, address: string, value: CellValue): void;
  /** Whether a formula stands in the cell, or fills it from another. */
  isFormula(sheet: string, address: string): boolean;
  /** The formula of a cell as it is typed; undefined when there is none or no such sheet. */
  formula(sheet: string, address: string): string | undefined;
  value(sheet: string, address: string): CellValue | CellError;
  /** What the cells of an area show, row by row. */
  values(sheet: string, area: Area): readonly (readonly (CellValue | CellError)[])[];
  /** The rows a cell's formula fills; a single value is one row of one. */
  results(sheet: string, address: string): readonly (readonly (CellValue | CellError)[])[];
  /** Shows the sheet with this area selected. */
  select(sheet: string, area: Area): void;
  /** Writes into a new sheet behind the others, as one step to undo, and gives the name it got. */
  writeSheet(name: string, content: SheetContent | SheetContent["rows"]): string;
  /** Makes tables and sheets beside them, as one step to undo, and shows the first. Throws an Error with a plain sentence when a name is taken. */
  writeTables(parts: readonly (NewTable | NewSheet)[], changes?: readonly FormulaChange[]): void;
  /** Adds a row at the end of a table, as one step to undo. Throws an Error with a plain sentence when there is no room for it. */
  appendTableRow(table: ReferenceTable, cells: readonly CellValue[]): void;
  /** What is selected, and the cell that typing goes into. */
  selection(): GridSelection;
  /** Calls back after the selection moved. */
  onSelect(listener: () => void): () => void;
  /** Calls back after every edit, undo and redo, whoever made it. */
  onEdit(listener: () => void): void;
}

export interface GridSelection {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  /** How many cells are selected. */
  readonly cells: number;
}

/** Opens a document in a new grid and calculates it. Errors in formulas are values of their cells, never thrown. */
export function openGrid(library: GridLibrary, document: WorkbookDocument, functions: FunctionSet): Grid {
  provideGroupBy();
  mendSpilledRange(library);
  keepCalculatedCells(library);
  keepTableStyles(library);
  keepHeaderPositions(library);
  registerFunctions(library, functions);
  registerNamedTables(library);
  registerSheetWriter(library);
  registerRowAppender(library);
  const model = new library.Model(modelData(library, document), {}, [], undefined, false);
  const pages = new Map(document.sheets.flatMap(({ page }, index) => (page ? [[sheetId(index), page] as const] : [])));
  const listeners: (() => void)[] = [];
  watchEdits(library, model, (isUndo) => {
    // Room made anew after its own undo would keep the user from ever getting further back.
    if (!isUndo) makeRoom(model);
    for (const listener of listeners) listener();
  });
  makeRoom(model);
  return {
    model,
    document: () => modelDocument(model, pages),
    ...cellPart(library, model),
    ...sheetPart(model, pages),
    select: (sheet, area) => {
      select(model, sheetIdOf(model, sheet), zoneOf(area));
    },
    selection: () => selectionOf(model),
    onSelect: (listener) => watchSelection(model, listener),
    onEdit: (listener) => void listeners.push(listener),
  };
}

function cellPart(library: GridLibrary, model: GridModel): Pick<Grid, "enter" | "write" | "isFormula" | "formula" | "value" | "values" | "results"> {
  const { getters } = model;
  const at = (sheet: string, address: string): Position => positionOf(model, sheet, address);
  const valuesIn = valueReader(model);
  return {
    enter: (sheet, address, text) => void model.dispatch("UPDATE_CELL", { ...at(sheet, address), content: text }),
    write: (sheet, address, value) => void model.dispatch("UPDATE_CELL", { ...at(sheet, address), content: constantContent(library, value) }),
    isFormula: (sheet, address) => getters.getCell(at(sheet, address))?.isFormula === true || getters.getArrayFormulaSpreadingOn(at(sheet, address)) !== undefined,
    formula: (sheet, address) => formulaAt(model, sheet, address),
    value: (sheet, address) => valueAt(model, at(sheet, address)),
    values: (sheet, area) => valuesIn(sheetIdOf(model, sheet), zoneOf(area)),
    results: (sheet, address) => {
      const place = at(sheet, address);
      return valuesIn(place.sheetId, spreadZone(model, place));
    },
  };
}

/** @param pages how sheets print, by sheet id; the grid itself has no place for it */
function sheetPart(model: GridModel, pages: Map<string, PageSetup>): Pick<Grid, "tables" | "sheetNames" | "writeSheet" | "writeTables" | "appendTableRow"> {
  const tables = (): readonly ReferenceTable[] => (model.getters as GridModel["getters"] & NamedTableGetters).getNamedTables();
  return {
    tables,
    sheetNames: () => sheetNames(model),
    writeSheet: (wanted, given) => {
      const content = readySheet(given);
      const name = freeSheetName(wanted, sheetNames(model));
      const [id = ""] = writeSheets(model, [{ name, content }]);
      if (content.page) pages.set(id, content.page);
      return name;
    },
    appendTableRow: (table, cells) => { appendRow(model, table, cells); },
    writeTables: (parts, changes = []) => {
      const ready = readyParts(parts, { tables: tables().map(({ name }) => name), sheets: sheetNames(model) });
      const stillThere = changes.filter(({ sheet, address, from }) => formulaAt(model, sheet, address) === from);
      writeSheets(model, ready, stillThere.map(({ sheet, address, to }) => ({ ...positionOf(model, sheet, address), content: to })));
    },
  };
}

/** Tells of commands that changed what the workbook holds or shows, once each is done with. */
function watchEdits(library: GridLibrary, model: GridModel, listener: (isUndo: boolean) => void): void {
  const owner = { watches: "edits" };
  let edited = false;
  let undone = false;
  model.on("command-dispatched", owner, (command) => {
    const { type } = command as { type: string };
    const isUndo = type === "UNDO" || type === "REDO";
    if (isUndo) (model.getters as unknown as NamedTableGetters).forgetFormulaCells();
    undone ||= isUndo;
    edited ||= isUndo || type === "EVALUATE_CELLS" || library.coreTypes.has(type as never);
  });
  model.on("update", owner, () => {
    // The grid also calls while it is still saving a step; what is entered then would not be calculated.
    if (!edited || (model as unknown as { readonly status: number }).status !== ready) return;
    const isUndo = undone;
    edited = undone = false;
    listener(isUndo);
  });
}

/** The grid's own number for "no command is running". */
const ready = 0;

/**
 * Excel's sheets end at row 1,048,576, the grid's where it was told to. A result that would stick out gets the rows and
 * columns it needs. This is a step to undo of its own, so it runs after the edit that needs it, never inside.
 */
function makeRoom(model: GridModel): void {
  for (let round = 0; round < 10; round++) {
    const cut = model.getters.getSheetIds().flatMap((sheetId) => cutOff(model, sheetId));
    const first = cut[0];
    if (!first) return;
    extend(model, first);
  }
}

interface Position {
  readonly sheetId: string;
  readonly col: number;
  readonly row: number;
}

const sheetNames = ({ getters }: GridModel): readonly string[] => getters.getSheetIds().map((id) => getters.getSheetName(id));

function sheetIdOf({ getters }: GridModel, sheet: string): string {
  const id = getters.getSheetIds().find((each) => getters.getSheetName(each).toLowerCase() === sheet.toLowerCase());
  if (id === undefined) throw new Error(`There is no sheet ${sheet}.`);
  return id;
}

function positionOf(model: GridModel, sheet: string, address: string): Position {
  const place = parseCellAddress(address);
  if (!place) throw new Error(`There is no cell ${sheet}!${address}.`);
  return { sheetId: sheetIdOf(model, sheet), col: place.column, row: place.row };
}

const zoneOf = ({ firstRow, firstColumn, rows, columns }: Area): Zone =>
  ({ left: firstColumn, top: firstRow, right: firstColumn + columns - 1, bottom: firstRow + rows - 1 });

function formulaAt(model: GridModel, sheet: string, address: string): string | undefined {
  const isThere = sheetNames(model).some((name) => name.toLowerCase() === sheet.toLowerCase());
  return isThere ? formulaText(model, positionOf(model, sheet, address)) : undefined;
}

const valueAt = ({ getters }: GridModel, position: Position): CellValue | CellError =>
  shownValue(getters.getEvaluatedCell(position));

type Rows = readonly (readonly (CellValue | CellError)[])[];

/** A workbook with all its tables. */
const RANGES_KEPT = 64;

function valueReader({ getters }: GridModel): (sheetId: string, zone: Zone) => Rows {
  const rows = rowKeeper(shownValue, RANGES_KEPT);
  return (sheetId, zone) => rows((getters as unknown as KeptGetters).getKeptColumns(sheetId, zone));
}

function spreadZone({ getters }: GridModel, position: Position): Zone {
  const { row, col } = position;
  return getters.getSpreadZone(position) ?? { top: row, bottom: row, left: col, right: col };
}

function select(model: GridModel, sheetId: string, zone: Zone): void {
  const from = model.getters.getActiveSheetId();
  if (from !== sheetId) model.dispatch("ACTIVATE_SHEET", { sheetIdFrom: from, sheetIdTo: sheetId });
  model.selection.selectZone({ cell: { col: zone.left, row: zone.top }, zone }, { scrollIntoView: true });
}

function selectionOf({ getters }: GridModel): GridSelection {
  const { sheetId, col, row } = getters.getActivePosition();
  const cells = getters.getSelectedZones().reduce((sum, { left, top, right, bottom }) => sum + (right - left + 1) * (bottom - top + 1), 0);
  return { sheet: getters.getSheetName(sheetId), row, column: col, cells };
}

/** The grid tells of a move before it has moved, so what is selected is looked at a moment later. */
function watchSelection(model: GridModel, listener: () => void): () => void {
  const owner = { watches: "selection" };
  let last = JSON.stringify(selectionOf(model));
  const look = (): void => {
    queueMicrotask(() => {
      const now = JSON.stringify(selectionOf(model));
      if (now === last) return;
      last = now;
      listener();
    });
  };
  model.selection.observe(owner, { handleEvent: look });
  model.on("update", owner, look);
  return () => {
    model.selection.unobserve(owner);
    model.off("update", owner);
  };
}

/** Formulas whose result the sheet is too small for, with the size of that result. */
function cutOff({ getters }: GridModel, sheetId: string): readonly (Position & { readonly rows: number; readonly columns: number })[] {
  return Object.values(getters.getCells(sheetId)).flatMap((cell) => {
    if (!cell.isFormula) return [];
    const position = getters.getCellPosition(cell.id);
    if (getters.getEvaluatedCell(position).value !== "#SPILL!") return [];
    const result = getters.evaluateFormulaResult(sheetId, cell.compiledFormula.toFormulaString(getters), position);
    if (!Array.isArray(result)) return [];
    const size = { rows: result[0]?.length ?? 0, columns: result.length };
    const fits = position.row + size.rows <= getters.getNumberRows(sheetId) && position.col + size.columns <= getters.getNumberCols(sheetId);
    return fits ? [] : [{ ...position, ...size }];
  });
}

function extend(model: GridModel, { sheetId, col, row, rows, columns }: ReturnType<typeof cutOff>[number]): void {
  const dimensions = [
    { dimension: "ROW", present: model.getters.getNumberRows(sheetId), needed: row + rows + 100 },
    { dimension: "COL", present: model.getters.getNumberCols(sheetId), needed: col + columns + 2 },
  ] as const;
  for (const { dimension, present, needed } of dimensions) {
    if (needed <= present) continue;
    const sheetName = model.getters.getSheetName(sheetId);
    model.dispatch("ADD_COLUMNS_ROWS", { sheetId, sheetName, dimension, base: present - 1, quantity: needed - present, position: "after" });
  }
}
