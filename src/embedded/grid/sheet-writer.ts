import { type CellValue } from "../../workbook/document";
import { type GridLibrary, type GridModel } from "./library";
import { constantContent } from "./model-data";

/** A command of ours, so that the new sheet and all its cells are one step to undo. */
const writeCommand = "PLUMBLINE_WRITE_SHEET";

interface WriteSheet {
  readonly type: string;
  /** Not called sheetId: the grid refuses commands for a sheet that is not there yet. */
  readonly newSheetId: string;
  readonly name: string;
  readonly position: number;
  readonly rows: readonly (readonly string[])[];
}

/** Teaches the grid the command. Call before a model is made. */
export function registerSheetWriter(library: GridLibrary): void {
  const registry = library.registries.featurePluginRegistry;
  if (registry.contains(writeCommand)) return;
  const Base = library.UIPlugin as unknown as new (config: never) => {
    dispatch(type: string, payload: Record<string, unknown>): unknown;
    readonly getters: { getActiveSheetId(): string };
  };
  class SheetWriter extends Base {
    handle(command: WriteSheet): void {
      if (command.type !== writeCommand) return;
      const { newSheetId: sheetId, name, position, rows } = command;
      const size = { rows: Math.max(1000, rows.length + 200), cols: Math.max(26, (rows[0]?.length ?? 0) + 6) };
      this.dispatch("CREATE_SHEET", { sheetId, name, position, ...size });
      rows.forEach((cells, row) => {
        cells.forEach((content, col) => {
          if (content !== "") this.dispatch("UPDATE_CELL", { sheetId, row, col, content });
        });
      });
      this.dispatch("ACTIVATE_SHEET", { sheetIdFrom: this.getters.getActiveSheetId(), sheetIdTo: sheetId });
    }
  }
  // The base class gives plugins static lists of their getters and layers; ours has none.
  registry.add(writeCommand, Object.assign(SheetWriter, { getters: [], layers: [] }) as never);
}

/** Writes values into a new sheet behind the others and shows it. The name must be free. */
export function writeSheet(library: GridLibrary, model: GridModel, name: string, rows: readonly (readonly CellValue[])[]): void {
  const contents = rows.map((row) => row.map((value) => (value === "" ? "" : constantContent(library, value))));
  const payload = { newSheetId: model.uuidGenerator.uuidv4(), name, position: model.getters.getSheetIds().length, rows: contents };
  model.dispatch(writeCommand as never, payload as never);
}
