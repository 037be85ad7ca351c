/** The rows of ranges that functions are given: of a long table of which one row was edited, the others are the rows that were given before. */

/** A cell as the grid holds it: the same object until it is calculated again. */
export interface GridCell {
  readonly value: unknown;
  readonly message?: string;
  readonly position?: { readonly sheetId: string; readonly col: number; readonly row: number };
}
type Columns = readonly (readonly GridCell[])[];
type ReadCell = (cell: GridCell) => unknown;

interface Kept {
  readonly columns: Columns;
  readonly rows: unknown[][];
}

const RANGES_KEPT = 16;
/** By reader, place and size. */
const kept = new WeakMap<ReadCell, Map<string, Kept>>();

/**
 * The values of a range by rows. A sheet of ten thousand cars passes here at every edit, so a cell that is as it was is only looked at.
 * The rows are shared by all who ask and must not be changed.
 * @param read what a function is given for a cell
 */
export function rowsOfRange(columns: Columns, read: ReadCell): unknown[][] {
  const ranges = rangesOf(read);
  const key = keyOf(columns);
  const before = ranges.get(key);
  const rows = (columns[0] ?? []).map((_, row) => (before && isSame(columns, before.columns, row) ? before.rows[row] ?? [] : columns.map((column) => read(column[row] ?? blank))));
  ranges.delete(key);
  ranges.set(key, { columns, rows });
  if (ranges.size > RANGES_KEPT) ranges.delete(ranges.keys().next().value ?? "");
  return rows;
}

const blank: GridCell = { value: null };

function rangesOf(read: ReadCell): Map<string, Kept> {
  const known = kept.get(read) ?? new Map<string, Kept>();
  kept.set(read, known);
  return known;
}

function keyOf(columns: Columns): string {
  const { sheetId = "", col = 0, row = 0 } = columns[0]?.[0]?.position ?? {};
  return `${columns.length} ${columns[0]?.length ?? 0} ${col} ${row} ${sheetId}`;
}

function isSame(columns: Columns, before: Columns, row: number): boolean {
  for (let column = 0; column < columns.length; column++) if (columns[column]?.[row] !== before[column]?.[row]) return false;
  return true;
}
