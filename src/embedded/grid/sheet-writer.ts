/** A command of the grid that writes new sheets, with tables, looks and formulas. */
import { cellAddress, parseCellAddress } from "../../workbook/address";
import { type ChoiceList } from "../../workbook/document";
import { type ReadyPart } from "../../workbook/new-table";
import { cellStyles, type ReadySheet } from "../../workbook/sheet-content";
import { type SheetContent } from "../../workbook/port";
import { gridBorder, gridStyle } from "./cell-look";
import { type GridLibrary, type GridModel } from "./library";
import { constantContent, pixelsPerCharacter, pixelsPerPoint, tableConfig } from "./model-data";
import { choiceRule, figure, zoneOf } from "./sheet-parts";
import { type NamedTableSetter } from "./tables";

/** A command of ours, so that the new sheets and all that is on them are one step to undo. */
const writeCommand = "PLUMBLINE_WRITE_SHEETS";

interface NewSheet extends ReadyPart {
  /** Not called sheetId: the grid refuses commands for a sheet that is not there yet. */
  readonly id: string;
}

/** A formula to be entered; its cell keeps how it looks. */
interface Entry {
  readonly sheetId: string;
  readonly row: number;
  readonly col: number;
  readonly content: string;
}

interface WriteSheets {
  readonly type: string;
  readonly position: number;
  readonly sheets: readonly NewSheet[];
  /** Entered when all new tables have their names. */
  readonly entries: readonly Entry[];
}

/** Dispatches a command of the grid; the payloads are the grid's own. */
type Dispatch = (type: string, payload: Readonly<Record<string, unknown>>) => unknown;

/** Teaches the grid the command. Call before a model is made. */
export function registerSheetWriter(library: GridLibrary): void {
  const registry = library.registries.featurePluginRegistry;
  if (registry.contains(writeCommand)) return;
  const Base = library.UIPlugin as unknown as new (config: never) => {
    dispatch: Dispatch;
    readonly getters: GridModel["getters"] & NamedTableSetter;
  };
  class SheetWriter extends Base {
    handle(command: WriteSheets): void {
      if (command.type !== writeCommand) return;
      const dispatch: Dispatch = (type, payload) => this.dispatch(type, payload);
      command.sheets.forEach((sheet, index) => {
        write(library, dispatch, sheet, command.position + index);
        if (!sheet.table) return;
        dispatch("CREATE_TABLE", { sheetId: sheet.id, tableType: "static", ranges: [rangeData(sheet.id, wholeArea(sheet.content))], config: tableConfig });
        this.getters.nameTable(sheet.id, "A1", sheet.table.name);
        for (const list of sheet.table.lists) dispatch("ADD_DATA_VALIDATION_RULE", listPayload(sheet.id, list));
      });
      for (const entry of command.entries) dispatch("UPDATE_CELL", { ...entry });
      const [first] = command.sheets;
      if (first) dispatch("ACTIVATE_SHEET", { sheetIdFrom: this.getters.getActiveSheetId(), sheetIdTo: first.id });
    }
  }
  // The base class gives plugins static lists of their getters and layers; ours has none.
  registry.add(writeCommand, Object.assign(SheetWriter, { getters: [], layers: [] }) as never);
}

/**
 * Writes into new sheets behind the others and shows the first. Their names must be free. Gives their ids.
 * @param changes formulas for cells that are there
 */
export function writeSheets(model: GridModel, sheets: readonly ReadyPart[], changes: readonly Entry[] = []): readonly string[] {
  const identified = sheets.map((sheet) => ({ ...sheet, id: model.uuidGenerator.uuidv4() }));
  const formulas = identified.flatMap(({ id, content }) => (content.formulas ?? []).map(({ row, column, formula }): Entry => ({ sheetId: id, row, col: column, content: formula })));
  model.dispatch(writeCommand as never, { position: model.getters.getSheetIds().length, sheets: identified, entries: [...formulas, ...changes] } as never);
  return identified.map(({ id }) => id);
}

function write(library: GridLibrary, dispatch: Dispatch, { id: sheetId, name, content, table }: NewSheet, position: number): void {
  const { rows } = content;
  const longestList = Math.max(0, ...(table?.lists ?? []).map(({ area }) => area.row + area.rows));
  const size = { rows: Math.max(1000, rows.length + 200, longestList), cols: Math.max(26, (rows[0]?.length ?? 0) + 6) };
  dispatch("CREATE_SHEET", { sheetId, name, position, ...size });
  (content.columnWidths ?? []).forEach((width, column) => {
    if (width !== undefined) dispatch("RESIZE_COLUMNS_ROWS", { sheetId, dimension: "COL", elements: [column], size: Math.round(width * pixelsPerCharacter) });
  });
  (content.rowHeights ?? []).forEach((height, row) => {
    if (height !== undefined) dispatch("RESIZE_COLUMNS_ROWS", { sheetId, dimension: "ROW", elements: [row], size: Math.round(height * pixelsPerPoint) });
  });
  writeCells(library, dispatch, sheetId, content);
  if (content.frozenRows) dispatch("FREEZE_ROWS", { sheetId, quantity: content.frozenRows });
  const target = (content.merges ?? []).map(zoneOf);
  if (target.length > 0) dispatch("ADD_MERGE", { sheetId, target, force: true });
  (content.pictures ?? []).forEach((picture, number) => dispatch("CREATE_IMAGE", { sheetId, figureId: `${sheetId}-picture-${String(number + 1)}`, ...figure(picture) }));
}

function writeCells(library: GridLibrary, dispatch: Dispatch, sheetId: string, { rows, styles = [] }: SheetContent): void {
  const looks = cellStyles(styles);
  rows.forEach((cells, row) => {
    cells.forEach((value, col) => {
      const content = value === "" ? "" : constantContent(library, value);
      // A text goes without a number format: it would only be in the way when the cell is edited.
      const format = typeof value === "string" ? undefined : looks.get(cellAddress(row, col))?.format;
      if (content !== "") dispatch("UPDATE_CELL", { sheetId, row, col, content, ...(format === undefined ? {} : { format }) });
    });
  });
  for (const [address, look] of looks) {
    const place = parseCellAddress(address);
    const style = gridStyle(look);
    const border = gridBorder(look);
    const isBlank = place !== undefined && (rows[place.row]?.[place.column] ?? "") === "";
    const format = isBlank && look.format !== undefined ? { format: look.format } : undefined;
    if (place && (style ?? format)) dispatch("UPDATE_CELL", { sheetId, row: place.row, col: place.column, ...(style ? { style } : {}), ...format });
    if (place && border) dispatch("SET_BORDER", { sheetId, row: place.row, col: place.column, border });
  }
}

const wholeArea = ({ rows }: ReadySheet) => ({ row: 0, column: 0, rows: rows.length, columns: rows[0]?.length ?? 0 });

const rangeData = (sheetId: string, area: Parameters<typeof zoneOf>[0]) => ({ _sheetId: sheetId, _zone: zoneOf(area) });

const listPayload = (sheetId: string, list: ChoiceList) => ({
  sheetId,
  ranges: [rangeData(sheetId, list.area)],
  rule: choiceRule(`${sheetId}-list-${String(list.area.column)}`, list),
});
