/** The content of a new sheet, made ready for writing. */
import { cellAddress } from "./address";
import type { CellStyle, CellValue } from "./document";
import type { CellStyleRange, SheetContent } from "./port";
import { rectangular } from "./sheet-rows";

/** A content whose rows are a rectangle of cells that a spreadsheet can hold. */
export interface ReadySheet extends SheetContent {
  readonly rows: CellValue[][];
}

/** @throws RangeError when a number is not finite */
export function readySheet(content: SheetContent | SheetContent["rows"]): ReadySheet {
  const sheet = "rows" in content ? content : { rows: content };
  return { ...sheet, rows: rectangular(sheet.rows) };
}

/** The style of each cell that has one, by address; what a later range says wins. */
export function cellStyles(ranges: readonly CellStyleRange[]): ReadonlyMap<string, CellStyle> {
  const styles = new Map<string, CellStyle>();
  for (const range of ranges) {
    for (let row = range.row; row < range.row + range.rows; row++) {
      for (let column = range.column; column < range.column + range.columns; column++) {
        const address = cellAddress(row, column);
        styles.set(address, { ...styles.get(address), ...styleInRow(range, row) });
      }
    }
  }
  return styles;
}

/** The rules of a range stand above its first row and below its last only. */
function styleInRow({ row: first, rows, style: { top, bottom, ...style } }: CellStyleRange, row: number): CellStyle {
  return {
    ...style,
    ...(top !== undefined && row === first ? { top } : {}),
    ...(bottom !== undefined && row === first + rows - 1 ? { bottom } : {}),
  };
}
