/** Leaves the cells that a formula filled where they are until its new result is there: mostly they are the new result. */
import { placeKey, type Columns, type Evaluator, type Position, type Range, type TypedCell } from "./evaluator";
import { type Zone } from "./sheet-parts";

/** The size of what a formula filled last, and the locale it was written in. */
export interface SpillSize {
  readonly locale: unknown;
  readonly width: number;
  readonly height: number;
}

/**
 * The library takes the cells away first and looks at each place for something in the way before it fills it again.
 * Here they go only when the result has another size, is none, or something else stands among them.
 * @returns whether the cells of a formula whose result is about to be spread still stand; from then on they are its new ones
 */
export function standUntilCalculated(evaluator: Evaluator, kept: ReadonlyMap<string, SpillSize>): (formula: Position) => boolean {
  const standing = new StandingSpills(evaluator, kept);
  const takeAway = evaluator.invalidateSpreading.bind(evaluator);
  evaluator.invalidateSpreading = (formula) => {
    const zone = evaluator.spreadingRelations.getArrayResultZone(formula);
    if (!zone) return;
    if (!standing.begin(formula, zone)) {
      takeAway(formula);
      return;
    }
    evaluator.invalidatePositionsDependingOnSpread(formula.sheetId, zone);
    evaluator.nextRangesToUpdate.addMany(evaluator.getArrayFormulasBlockedBy(formula.sheetId, zone));
  };
  const compute = evaluator.computeFormulaCell.bind(evaluator);
  evaluator.computeFormulaCell = (formula, cell) => {
    try {
      return compute(formula, cell);
    } finally {
      standing.release(formula);
    }
  };
  const needRoom = evaluator.assertSheetHasEnoughSpaceToSpreadFormulaResult.bind(evaluator);
  evaluator.assertSheetHasEnoughSpaceToSpreadFormulaResult = (formula, result) => {
    if (!standing.hasSizeOf(formula, result)) standing.release(formula);
    needRoom(formula, result);
  };
  const collide = evaluator.checkCollision.bind(evaluator);
  evaluator.checkCollision = (formula) => {
    if (standing.isAlone(formula)) return () => undefined;
    standing.release(formula);
    return collide(formula);
  };
  return (formula) => standing.end(formula);
}

class StandingSpills {
  readonly #evaluator: Evaluator;
  readonly #kept: ReadonlyMap<string, SpillSize>;
  readonly #zones = new Map<string, Zone>();

  constructor(evaluator: Evaluator, kept: ReadonlyMap<string, SpillSize>) {
    this.#evaluator = evaluator;
    this.#kept = kept;
  }

  /** @returns false where the cells must go first: they are not all known, or the formula hangs on them */
  begin(formula: Position, zone: Zone): boolean {
    const { getters } = this.#evaluator;
    const [cell, spilled] = [getters.getCell(formula), this.#kept.get(placeKey(formula))];
    if (!cell?.isFormula) return false;
    if (!spilled || spilled.locale !== getters.getLocale() || !hasSize(zone, spilled.width, spilled.height)) return false;
    if (this.#evaluator.formulaDependencies().getCellsDependingOn(withoutFirst(formula.sheetId, zone)).hasPosition(formula)) return false;
    this.#zones.set(placeKey(formula), zone);
    return true;
  }

  end(formula: Position): boolean {
    return this.#zones.delete(placeKey(formula));
  }

  hasSizeOf(formula: Position, result: Columns): boolean {
    const zone = this.#zones.get(placeKey(formula));
    return zone !== undefined && hasSize(zone, result.length, result[0]?.length);
  }

  /** Takes the cells away after all. */
  release(formula: Position): void {
    const zone = this.#zones.get(placeKey(formula));
    if (!zone) return;
    this.#zones.delete(placeKey(formula));
    const { getters, evaluatedCells } = this.#evaluator;
    const { sheetId } = formula;
    for (let col = zone.left; col <= zone.right; col++) {
      for (let row = zone.top; row <= zone.bottom; row++) if (!isTyped(getters.getCell({ sheetId, col, row }))) evaluatedCells.delete({ sheetId, col, row });
    }
  }

  /** Whether nothing is typed in the zone but the formula. */
  isAlone(formula: Position): boolean {
    const zone = this.#zones.get(placeKey(formula));
    if (!zone) return false;
    const { getters } = this.#evaluator;
    const { sheetId } = formula;
    for (let row = zone.top; row <= zone.bottom; row++) {
      if (getters.getRowCellIds(sheetId, row).length === 0) continue;
      for (let col = zone.left; col <= zone.right; col++) {
        if ((row !== formula.row || col !== formula.col) && isTyped(getters.getCell({ sheetId, col, row }))) return false;
      }
    }
    return true;
  }
}

const hasSize = ({ left, top, right, bottom }: Zone, columns: number, rows: number | undefined): boolean => right - left + 1 === columns && bottom - top + 1 === rows;

const isTyped = (cell: TypedCell | undefined): boolean => cell !== undefined && (cell.isFormula || (cell.content ?? "") !== "");

/** The zone in two parts that leave out its first cell, the formula's own. */
const withoutFirst = (sheetId: string, zone: Zone): Range[] =>
  [{ ...zone, left: zone.left + 1, bottom: zone.top }, { ...zone, top: zone.top + 1 }].filter(({ left, top, right, bottom }) => left <= right && top <= bottom).map((part) => ({ sheetId, zone: part }));
