/** The rows of ranges that are handed out: of a long table of which one row was edited, the others are the rows that were handed out before. */
import { keepLatest } from "./keep-latest";

/** A cell as the grid holds it: the same object until it is calculated again. */
export interface GridCell {
  readonly value: unknown;
  readonly message?: string;
  readonly position?: { readonly sheetId: string; readonly col: number; readonly row: number };
}
type Columns<Cell> = readonly (readonly Cell[])[];

interface Kept<Cell, Value> {
  readonly columns: Columns<Cell>;
  readonly rows: Value[][];
}

/**
 * Hands out ranges by rows. A sheet of ten thousand cars passes here at every edit, so a cell that is as it was is only looked at,
 * and a column that is as it was is not even that. The rows are shared by all who ask and must not be changed.
 * @param read what is handed out for a cell
 * @param most how many ranges are kept, by place and size
 */
export function rowKeeper<Cell extends GridCell, Value>(read: (cell: Cell) => Value, most: number): (columns: Columns<Cell>) => Value[][] {
  const kept = new Map<string, Kept<Cell, Value>>();
  return (columns) => {
    const key = keyOf(columns);
    const rows = rowsOf(columns, kept.get(key), read);
    keepLatest(kept, key, { columns, rows }, most);
    return rows;
  };
}

function rowsOf<Cell, Value>(columns: Columns<Cell>, before: Kept<Cell, Value> | undefined, read: (cell: Cell) => Value): Value[][] {
  const changed = columns.flatMap((column, index) => (column === before?.columns[index] ? [] : [index]));
  const isSame = (row: number): boolean => changed.every((index) => columns[index]?.[row] === before?.columns[index]?.[row]);
  return (columns[0] ?? []).map((_, row) => {
    const known = before?.rows[row];
    return known && isSame(row) ? known : columns.map((column) => read(column[row] as Cell));
  });
}

function keyOf(columns: Columns<GridCell>): string {
  const { sheetId = "", col = 0, row = 0 } = columns[0]?.[0]?.position ?? {};
  return `${columns.length} ${columns[0]?.length ?? 0} ${col} ${row} ${sheetId}`;
}
