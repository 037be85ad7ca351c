/** The rows of ranges that are handed out: of a long table of which one row was edited, the others are the rows that were handed out before. */

/** A cell as the grid holds it: the same object until it is calculated again. */
export interface GridCell {
  readonly value: unknown;
  readonly message?: string;
  readonly position?: { readonly sheetId: string; readonly col: number; readonly row: number };
}
type Columns<Cell> = readonly (readonly Cell[])[];

interface Kept {
  readonly columns: Columns<unknown>;
  readonly rows: readonly unknown[][];
}

const RANGES_KEPT = 64;
/** By reader, place and size. */
const kept = new WeakMap<object, Map<string, Kept>>();

/**
 * The values of a range by rows. A sheet of ten thousand cars passes here at every edit, so a cell that is as it was is only looked at,
 * and a column that is as it was not even that. The rows are shared by all who ask and must not be changed.
 * @param read what is handed out for a cell; the same function each time
 */
export function rowsOfRange<Cell extends GridCell, Value>(columns: Columns<Cell>, read: (cell: Cell) => Value): Value[][] {
  const ranges = rangesOf(read);
  const key = keyOf(columns);
  const before = ranges.get(key);
  const changed = columns.flatMap((column, index) => (column === before?.columns[index] ? [] : [index]));
  const isSame = (row: number): boolean => changed.every((index) => columns[index]?.[row] === before?.columns[index]?.[row]);
  const rows = (columns[0] ?? []).map((_, row) => {
    const known = before?.rows[row] as Value[] | undefined;
    return known && isSame(row) ? known : columns.map((column) => read(column[row] as Cell));
  });
  ranges.delete(key);
  ranges.set(key, { columns, rows });
  if (ranges.size > RANGES_KEPT) ranges.delete(ranges.keys().next().value ?? "");
  return rows;
}

function rangesOf(read: object): Map<string, Kept> {
  const known = kept.get(read) ?? new Map<string, Kept>();
  kept.set(read, known);
  return known;
}

function keyOf(columns: Columns<GridCell>): string {
  const { sheetId = "", col = 0, row = 0 } = columns[0]?.[0]?.position ?? {};
  return `${columns.length} ${columns[0]?.length ?? 0} ${col} ${row} ${sheetId}`;
}
