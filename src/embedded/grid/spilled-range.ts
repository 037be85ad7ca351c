/** Mends A1# where the cell that fills the range stands on another sheet. */
import { type GridLibrary } from "./library";

interface Position {
  readonly sheetId: string;
  readonly col: number;
  readonly row: number;
}
interface Zone {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
interface Cell {
  readonly value: unknown;
  readonly position?: Position;
}
/** What the grid gives a function to work with. */
interface Evaluation {
  readonly __originCellPosition?: Position;
  readonly getters: { getSpreadZone(position: Position): Zone | undefined; getRangeFromZone(sheetId: string, zone: Zone): unknown };
  updateDependencies?(position: Position): void;
  addDependencies?(position: Position, ranges: readonly unknown[]): void;
  getFormulaResult(position: Position): Cell;
}

/**
 * Mends A1# for a cell of another sheet: the library (19.3.7) looks up the size of the spill there, but reads the cells
 * of the formula's own sheet.
 */
export function mendSpilledRange(library: GridLibrary): void {
  const registry = library.registries.functionRegistry;
  const original = registry.get(functionName);
  const { compute } = original;
  if (mended.has(compute)) return;
  function spilledRange(this: Evaluation, reference: Cell | readonly (readonly Cell[])[]): unknown {
    const cell = Array.isArray(reference) && reference.length === 1 && reference[0]?.length === 1 ? (reference[0][0] as Cell) : (reference as Cell);
    const origin = this.__originCellPosition;
    const place = cell.position;
    // Its answers on the same sheet, and its errors, are right.
    if (!place || !origin || place.sheetId === origin.sheetId) return compute.call(this as never, reference as never);
    this.updateDependencies?.(origin);
    const zone = this.getters.getSpreadZone(place);
    if (!zone) return compute.call(this as never, reference as never);
    this.addDependencies?.(origin, [this.getters.getRangeFromZone(place.sheetId, zone)]);
    return columnsOf(zone).map((col) => rowsOf(zone).map((row) => this.getFormulaResult({ sheetId: place.sheetId, col, row })));
  }
  mended.add(spilledRange);
  registry.replace(functionName, { ...original, compute: spilledRange as never });
}

const functionName = "SPILLED.RANGE";
const mended = new Set<unknown>();

const columnsOf = ({ left, right }: Zone): number[] => Array.from({ length: right - left + 1 }, (_, index) => left + index);
const rowsOf = ({ top, bottom }: Zone): number[] => Array.from({ length: bottom - top + 1 }, (_, index) => top + index);
