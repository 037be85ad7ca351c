/** A command of the grid that adds a row at the end of a table. */
import { cellAddress } from "../../workbook/address";
import { type CellValue } from "../../workbook/document";
import { type ReferenceTable } from "../../workbook/structured-references";
import { type GridLibrary, type GridModel } from "./library";
import { constantContent } from "./model-data";
import { zoneOf } from "./sheet-parts";

/** A command of ours, so that the longer table and what stands in its new row are one step to undo. */
const appendCommand = "PLUMBLINE_APPEND_ROW";

interface AppendRow {
  readonly type: string;
  readonly sheet: string;
  /** The heading row and the rows before. */
  readonly area: Parameters<typeof zoneOf>[0];
  readonly cells: readonly CellValue[];
}

/** Teaches the grid the command. Call before a model is made. */
export function registerRowAppender(library: GridLibrary): void {
  const registry = library.registries.featurePluginRegistry;
  if (registry.contains(appendCommand)) return;
  const Base = library.UIPlugin as unknown as new (config: never) => { dispatch(type: string, payload: Readonly<Record<string, unknown>>): unknown };
  class RowAppender extends Base {
    handle({ type, sheet: sheetId, area, cells }: AppendRow): void {
      if (type !== appendCommand) return;
      this.dispatch("UPDATE_TABLE", { sheetId, zone: zoneOf(area), newTableRange: { _sheetId: sheetId, _zone: zoneOf({ ...area, rows: area.rows + 1 }) } });
      cells.forEach((value, index) => {
        if (value !== "") this.dispatch("UPDATE_CELL", { sheetId, row: area.row + area.rows, col: area.column + index, content: constantContent(library, value) });
      });
    }
  }
  registry.add(appendCommand, Object.assign(RowAppender, { getters: [], layers: [] }) as never);
}

/** @throws Error with a plain sentence when something stands under the table */
export function appendRow(model: GridModel, table: ReferenceTable, cells: readonly CellValue[]): void {
  const sheet = model.getters.getSheetIdByName(table.sheet);
  if (sheet === undefined) throw new Error(`There is no table ${table.name}.`);
  const row = table.firstRow + 1 + table.rows;
  const taken = cells.findIndex((_, index) => model.getters.getEvaluatedCell({ sheetId: sheet, row, col: table.firstColumn + index }).value !== null);
  if (taken >= 0) throw new Error(`The cell ${cellAddress(row, table.firstColumn + taken)} under the table ${table.name} is not blank, so no row was added.`);
  if (row >= model.getters.getNumberRows(sheet)) model.dispatch("ADD_COLUMNS_ROWS", { sheetId: sheet, sheetName: table.sheet, dimension: "ROW", base: row - 1, position: "after", quantity: 100 });
  model.dispatch(appendCommand as never, { sheet, area: { row: table.firstRow, column: table.firstColumn, rows: table.rows + 1, columns: table.columns }, cells } as never);
}
