/** A rectangle of cells; rows and columns count from 0. */
export interface Area {
  readonly firstRow: number;
  readonly firstColumn: number;
  readonly rows: number;
  readonly columns: number;
}

/** Column letters of a column that counts from 0: 0 is A, 26 is AA. */
export function columnLetters(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : columnLetters(Math.floor(column / 26) - 1) + last;
}

/** Column number, from 0, of column letters in either case. */
export function columnNumber(letters: string): number {
  return [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

/** "B3" for row 2, column 1. */
export const cellAddress = (row: number, column: number): string => columnLetters(column) + String(row + 1);

/** Row and column, from 0, of an address such as "B3" or "$B$3"; undefined if it is none. */
export function parseCellAddress(address: string): { readonly row: number; readonly column: number } | undefined {
  const match = /^\$?([A-Z]{1,3})\$?([1-9]\d{0,6})$/i.exec(address);
  return match ? { row: Number(match[2]) - 1, column: columnNumber(match[1] ?? "") } : undefined;
}

/** The area of "A1:C5", or of one cell "B2"; undefined if it is neither. */
export function parseArea(text: string): Area | undefined {
  const [from, to = from, more] = text.split(":");
  const first = parseCellAddress(from ?? "");
  const last = parseCellAddress(to ?? "");
  if (!first || !last || more !== undefined) return undefined;
  const firstRow = Math.min(first.row, last.row);
  const firstColumn = Math.min(first.column, last.column);
  return {
    firstRow,
    firstColumn,
    rows: Math.abs(last.row - first.row) + 1,
    columns: Math.abs(last.column - first.column) + 1,
  };
}

/** "A1:C5"; one cell reads "B2". */
export function areaAddress({ firstRow, firstColumn, rows, columns }: Area): string {
  const first = cellAddress(firstRow, firstColumn);
  const last = cellAddress(firstRow + rows - 1, firstColumn + columns - 1);
  return first === last ? first : `${first}:${last}`;
}

/** The sheet name as a formula writes it before "!": quoted unless it is a plain word that no cell address looks like. */
export function sheetPrefix(sheet: string): string {
  const plain = /^[\p{L}_][\p{L}\p{N}_.]*$/u.test(sheet) && !parseCellAddress(sheet) && !/^(R\d*C\d*|R|C|TRUE|FALSE)$/i.test(sheet);
  return (plain ? sheet : `'${sheet.replaceAll("'", "''")}'`) + "!";
}
