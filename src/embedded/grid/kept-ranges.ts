/** Keeps the cells of long ranges from edit to edit: what was calculated since is looked up, the rest is as it was read. */
import { type Cell, type Columns, type Evaluator, type Position, type Range } from "./evaluator";
import { keepLatest } from "./keep-latest";
import { type Zone } from "./sheet-parts";

/** The cells of a range, column by column. */
export type RangeReader = (range: Range) => Columns;

/** Shorter ranges are read as fast as they are looked up. */
const LEAST_CELLS = 1000;
const RANGES_KEPT = 64;
/** More changes than these between two readings, and the range is read anew. */
const CHANGES_KEPT = 20_000;

/**
 * Keeps the ranges that formulas read; the library (19.3.7) collects all cells of a range anew each time, two hundred thousand for a long table.
 * @returns reads any range in the same way, for those who show it
 */
export function keepRanges(evaluator: Evaluator): RangeReader {
  const changes = changesOf(evaluator);
  const forFormulas = keeper(changes, (position) => positioned(evaluator.computeAndSave(position), position));
  const forShowing = keeper(changes, (position) => evaluator.evaluatedCells.get(position) ?? blank);
  const update = evaluator.updateCompilationParameters.bind(evaluator);
  evaluator.updateCompilationParameters = () => {
    update();
    const readAnew = evaluator.compilationParams.ensureRange;
    evaluator.compilationParams.ensureRange = (range) => (range.invalidSheetName === undefined ? forFormulas(range, readAnew) : readAnew(range));
  };
  return (range) => forShowing(range, ({ sheetId, zone }) => columnsOf(zone, (col, row) => evaluator.evaluatedCells.get({ sheetId, col, row }) ?? blank));
}

const blank: Cell = { value: null, type: "empty" };

/** A function may ask of a cell where it stands. */
const positioned = (cell: Cell, position: Position): Cell => (cell.position ? cell : { ...cell, position });

const columnsOf = ({ left, top, right, bottom }: Zone, cell: (col: number, row: number) => Cell): Columns =>
  Array.from({ length: right - left + 1 }, (_, column) => Array.from({ length: bottom - top + 1 }, (__, row) => cell(left + column, top + row)));

/** The places that were calculated or cleared, in order, since the first range of the era was kept. */
interface Changes {
  readonly era: number;
  readonly places: readonly Position[];
  isWanted: boolean;
}

function changesOf(evaluator: Evaluator): Changes {
  const changes = { era: 0, places: [] as Position[], isWanted: false };
  const forget = (): void => {
    changes.era++;
    changes.places = [];
    changes.isWanted = false;
  };
  const note = (position: Position): void => {
    if (!changes.isWanted) return;
    if (changes.places.length < CHANGES_KEPT) changes.places.push(position);
    else forget();
  };
  let watched: unknown;
  const evaluate = evaluator.evaluate.bind(evaluator);
  evaluator.evaluate = (ranges) => {
    // Where all is calculated anew, the cells are another map.
    if (watched !== evaluator.evaluatedCells) {
      watched = watch(evaluator, note);
      forget();
    }
    evaluate(ranges);
  };
  return changes;
}

function watch({ evaluatedCells }: Evaluator, note: (position: Position) => void): unknown {
  const [set, remove] = [evaluatedCells.set.bind(evaluatedCells), evaluatedCells.delete.bind(evaluatedCells)];
  evaluatedCells.set = (position, cell) => {
    note(position);
    set(position, cell);
  };
  evaluatedCells.delete = (position) => {
    note(position);
    remove(position);
  };
  return evaluatedCells;
}

interface Kept {
  readonly era: number;
  readonly seen: number;
  readonly columns: Columns;
}

function keeper(changes: Changes, readCell: (position: Position) => Cell): (range: Range, readAnew: RangeReader) => Columns {
  const kept = new Map<string, Kept>();
  return (range, readAnew) => {
    const { sheetId, zone: { left, top, right, bottom } } = range;
    if ((right - left + 1) * (bottom - top + 1) < LEAST_CELLS) return readAnew(range);
    const key = `${left} ${top} ${right} ${bottom} ${sheetId}`;
    const before = kept.get(key);
    // From before reading: what is calculated on the way is looked up once more next time.
    changes.isWanted = true;
    const { era, places } = changes;
    const seen = places.length;
    const columns = before?.era === era ? withChanges(before, range, places, readCell) : readAnew(range);
    keepLatest(kept, key, { era, seen, columns }, RANGES_KEPT);
    return columns;
  };
}

/** The columns with the changed cells in place; a column without any is the array of before. */
function withChanges({ seen, columns }: Kept, { sheetId, zone }: Range, places: readonly Position[], readCell: (position: Position) => Cell): Columns {
  const renewed = new Map<number, Cell[]>();
  for (let at = seen; at < places.length; at++) {
    const place = places[at];
    if (!place || place.sheetId !== sheetId || place.col < zone.left || place.col > zone.right || place.row < zone.top || place.row > zone.bottom) continue;
    const [column, row, cell] = [place.col - zone.left, place.row - zone.top, readCell(place)];
    const cells = renewed.get(column) ?? columns[column]?.slice() ?? [];
    cells[row] = cell;
    renewed.set(column, cells);
  }
  return renewed.size === 0 ? columns : columns.map((cells, column) => renewed.get(column) ?? cells);
}
