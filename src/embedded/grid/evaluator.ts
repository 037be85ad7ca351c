/** Of the grid library's evaluator, what those that keep its results need to know. */
import { type Zone } from "./sheet-parts";

export interface Position {
  readonly sheetId: string;
  readonly col: number;
  readonly row: number;
}
export interface Range {
  readonly sheetId: string;
  readonly zone: Zone;
  /** Of a reference to a sheet that is not there; such ranges are told apart by nothing else. */
  readonly invalidSheetName?: string;
}
/** A calculated cell: the same object until it is calculated again. */
export interface Cell {
  readonly value: unknown;
  readonly type: string;
  readonly format?: string;
  readonly message?: string;
  readonly origin?: unknown;
  readonly position?: Position;
}
export type Columns = readonly (readonly Cell[])[];
/** A cell as it was typed. */
export interface TypedCell {
  readonly id: number;
  readonly isFormula: boolean;
  readonly content?: string;
}
/** Calculated cells by sheet, column and row. */
export interface CellMap {
  get(position: Position): Cell | undefined;
  set(position: Position, cell: Cell): void;
  delete(position: Position): void;
  getSheet(sheetId: string): Readonly<Record<number, Readonly<Record<number, Cell>>>> | undefined;
}
/** A set of ranges, as the library keeps them. */
interface Ranges extends Iterable<Range> {
  hasPosition(position: Position): boolean;
  addMany(ranges: Iterable<Range>): void;
}
type OneCell = (column: number, row: number) => void;

/** Of the library's evaluator (19.3.7), what is used here; most of it is not written down anywhere. */
export interface Evaluator {
  readonly getters: {
    getCell(position: Position): TypedCell | undefined;
    getLocale(): unknown;
    getRowCellIds(sheetId: string, row: number): readonly number[];
  };
  readonly evaluatedCells: CellMap;
  readonly spreadingRelations: { getArrayResultZone(formula: Position): Zone | undefined };
  readonly nextRangesToUpdate: Ranges;
  readonly compilationParams: { ensureRange: (range: Range) => Columns };
  formulaDependencies(): { getCellsDependingOn(ranges: readonly Range[]): Ranges };
  getArrayFormulasBlockedBy(sheetId: string, zone: Zone): Ranges;
  invalidatePositionsDependingOnSpread(sheetId: string, zone: Zone): void;
  /** Takes the cells away that a formula filled. */
  invalidateSpreading(formula: Position): void;
  computeFormulaCell(formula: Position, cell: TypedCell): Cell;
  assertSheetHasEnoughSpaceToSpreadFormulaResult(formula: Position, result: Columns): void;
  checkCollision(formula: Position): OneCell;
  spreadValues(formula: Position, result: Columns): OneCell;
  computeAndSave(position: Position): Cell;
  evaluate(ranges: readonly Range[]): void;
  updateCompilationParameters(): void;
}

/** A place as a key of a map. */
export const placeKey = ({ sheetId, col, row }: Position): string => `${col} ${row} ${sheetId}`;
