/** Keeps the cells that a formula fills when what they show did not change. */
import { placeKey, type Cell, type Evaluator } from "./evaluator";
import { keepLatest } from "./keep-latest";
import { standUntilCalculated, type SpillSize } from "./standing-spills";

/** What a formula filled last. */
interface Spilled extends SpillSize {
  /** By column and row; the formula's own cell is not among them. */
  readonly cells: (Cell | undefined)[][];
}

/** Formulas whose cells are kept: a sheet has few that fill thousands. */
const FORMULAS_KEPT = 32;

/**
 * Keeps the cells that a formula filled: the library (19.3.7) takes away and makes anew each of a hundred thousand when one of them changes.
 * While a formula of the same size is calculated again its cells stand where they are; a plain value that stays the same is the same cell.
 */
export function keepSpills(evaluator: Evaluator): void {
  const kept = new Map<string, Spilled>();
  const stillStands = standUntilCalculated(evaluator, kept);
  const spreadAnew = evaluator.spreadValues.bind(evaluator);
  evaluator.spreadValues = (formula, result) => {
    const key = placeKey(formula);
    const locale = evaluator.getters.getLocale();
    const before = kept.get(key);
    const isStanding = stillStands(formula);
    const cells = before && before.locale === locale ? before.cells : [];
    keepLatest(kept, key, { locale, width: result.length, height: result[0]?.length ?? 0, cells }, FORMULAS_KEPT);
    const spread = spreadAnew(formula, result);
    const sheet = isStanding ? evaluator.evaluatedCells.getSheet(formula.sheetId) : undefined;
    return (column, row) => {
      const old = cells[column]?.[row];
      const isSame = old !== undefined && isPlain(result[column]?.[row], old);
      if (isSame && sheet?.[formula.col + column]?.[formula.row + row] === old) return;
      const at = { sheetId: formula.sheetId, col: formula.col + column, row: formula.row + row };
      if (isSame && evaluator.getters.getCell(at) === undefined) evaluator.evaluatedCells.set(at, old);
      else spread(column, row);
      (cells[column] ??= [])[row] = evaluator.evaluatedCells.get(at);
    };
  };
}

/** Whether the result would make the cell that was made before: errors, formats and links are made anew. */
const isPlain = (result: Cell | undefined, { value, format, message }: Cell): boolean =>
  result !== undefined && result.value === value && format === undefined && result.format === undefined && message === undefined && result.message === undefined && result.origin === undefined;
