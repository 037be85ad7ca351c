/** Keeps the cells that a formula fills when what they show did not change. */
import { type GridLibrary } from "./library";

interface Position {
  readonly sheetId: string;
  readonly col: number;
  readonly row: number;
}
interface Cell {
  readonly value: unknown;
  readonly format?: string;
  readonly message?: string;
  readonly origin?: unknown;
}
type Columns = readonly (readonly Cell[])[];
type SpreadOne = (column: number, row: number) => void;

/** Of the library's evaluator, what is used here; `spreadValues` is not written down anywhere. */
interface Evaluator {
  readonly getters: { getCell(position: Position): unknown; getLocale(): unknown };
  readonly evaluatedCells: { get(position: Position): Cell | undefined; set(position: Position, cell: Cell): void };
  spreadValues(formula: Position, result: Columns): SpreadOne;
}

/**
 * Keeps the cells that a formula filled: the library (19.3.7) makes and formats each of a hundred thousand anew when one of them changes.
 * A plain value that stays the same in a cell without a look of its own is the same cell.
 */
export function keepSpilledCells(library: GridLibrary): void {
  const registry = library.registries.coreViewsPluginRegistry;
  const Original = registry.get(pluginName) as unknown as new (config: never) => { readonly evaluator: Evaluator };
  if (keeping.has(Original)) return;
  class KeptCells extends Original {
    constructor(config: never) {
      super(config);
      keepCellsOf(this.evaluator);
    }
  }
  keeping.add(KeptCells);
  registry.replace(pluginName, KeptCells as never);
}

const pluginName = "evaluation";
const keeping = new Set<unknown>();

interface Spilled {
  readonly locale: unknown;
  /** By column and row; the formula's own cell is not among them. */
  readonly cells: (Cell | undefined)[][];
}

/** Formulas whose cells are kept: a sheet has few that fill thousands. */
const FORMULAS_KEPT = 32;

function keepCellsOf(evaluator: Evaluator): void {
  const spreadAnew = evaluator.spreadValues.bind(evaluator);
  const kept = new Map<string, Spilled>();
  evaluator.spreadValues = (formula, result) => {
    const key = `${formula.col} ${formula.row} ${formula.sheetId}`;
    const locale = evaluator.getters.getLocale();
    const known = kept.get(key);
    const before = known && known.locale === locale ? known.cells : [];
    const cells: (Cell | undefined)[][] = result.map((column) => new Array<Cell | undefined>(column.length));
    kept.delete(key);
    kept.set(key, { locale, cells });
    if (kept.size > FORMULAS_KEPT) kept.delete(kept.keys().next().value ?? "");
    const spread = spreadAnew(formula, result);
    return (column, row) => {
      const at = { sheetId: formula.sheetId, col: formula.col + column, row: formula.row + row };
      const old = before[column]?.[row];
      const isKept = old && isPlain(result[column]?.[row], old) && evaluator.getters.getCell(at) === undefined;
      if (isKept) evaluator.evaluatedCells.set(at, old);
      else spread(column, row);
      (cells[column] ?? [])[row] = isKept ? old : evaluator.evaluatedCells.get(at);
    };
  };
}

/** Whether the result would make the cell that was made before: errors, formats and links are made anew. */
const isPlain = (result: Cell | undefined, { value, format, message }: Cell): boolean =>
  result !== undefined && result.value === value && format === undefined && result.format === undefined && message === undefined && result.message === undefined && result.origin === undefined;
