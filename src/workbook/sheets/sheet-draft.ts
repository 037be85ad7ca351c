/** A sheet in the making: rows from the top, each with the looks of its cells and high enough for its text. */
import type { CellArea, CellStyle, CellValue, SheetPicture } from "../document";
import type { CellStyleRange, SheetContent } from "../port";

/** Styles of columns, from the first on; one alone is for all of them. */
export type RowLooks = CellStyle | readonly (CellStyle | undefined)[];

export interface SheetDraft {
  /**
   * Adds one row.
   * @param merges first column and number of columns of cells that are one
   */
  row(cells: readonly CellValue[], looks?: RowLooks, merges?: readonly (readonly [number, number])[]): void;
  /** What is added next begins a page. */
  newPage(): void;
  /** Puts a picture under the row added last, and as many blank rows as it covers. */
  picture(picture: Omit<SheetPicture, "row">): void;
  content(page: NonNullable<SheetContent["page"]>): SheetContent;
}

/** Points of a row of plain text in 11 points, with some air. */
const ROW_HEIGHT = 18;
const PIXELS_OF_POINT = 96 / 72;

/** @param widths of the columns, in characters; every row has as many cells */
export function sheetDraft(widths: readonly number[]): SheetDraft {
  const rows: CellValue[][] = [];
  const heights: number[] = [];
  const [styles, merges, pictures, breaks]: [CellStyleRange[], CellArea[], SheetPicture[], number[]] = [[], [], [], []];
  const row: SheetDraft["row"] = (cells, looks = [], joined = []) => {
    const at = rows.length;
    const widthOf = (column: number): number => widths.slice(column, column + (joined.find(([first]) => first === column)?.[1] ?? 1)).reduce((sum, width) => sum + width, 0);
    const drafted = widths.map((_, column): DraftCell => ({ value: cells[column] ?? "", style: isList(looks) ? looks[column] : looks, width: widthOf(column) }));
    const high = drafted.some((cell) => linesIn(cell) > 1);
    rows.push(drafted.map(({ value }) => value));
    heights.push(Math.max(ROW_HEIGHT, ...drafted.map(heightOf)) + (high ? AIR : 0));
    merges.push(...joined.map(([column, columns]) => ({ row: at, column, rows: 1, columns })));
    drafted.forEach(({ value, style = value === "" || !high ? undefined : {} }, column) => { if (style) styles.push({ row: at, column, rows: 1, columns: 1, style: inRow(style, high) }); });
  };
  return {
    row,
    newPage: () => { if (rows.length > 0) breaks.push(rows.length); },
    picture: (picture) => {
      pictures.push({ ...picture, row: rows.length });
      for (let filled = 0; filled < picture.height; filled += ROW_HEIGHT * PIXELS_OF_POINT) row([]);
    },
    content: (page) => ({ rows, styles, merges, pictures, columnWidths: widths, rowHeights: heights, page: breaks.length > 0 ? { ...page, breaks } : page }),
  };
}

const isList = (looks: RowLooks): looks is readonly (CellStyle | undefined)[] => Array.isArray(looks);

interface DraftCell {
  readonly value: CellValue;
  readonly style: CellStyle | undefined;
  readonly width: number;
}

/** Wrapped text begins at the top of its cell and other text stands at the bottom, so a row wraps all of its cells or none. */
const inRow = ({ wrap: _, ...style }: CellStyle, high: boolean): CellStyle => (high ? { ...style, wrap: true } : style);

/** A line of a font takes this many times its size. Common practice, no source. */
const LINE = 1.32;
/** Letters of running text in a unit of width, which is one digit: those of the usual font average 0.9 of it (from memory); in LibreOffice with another font 1.37 were measured. */
const LETTERS = 1.1;
/** Points under text of several lines. */
const AIR = 4;

const sizeOf = ({ style }: DraftCell): number => style?.size ?? 11;

const linesIn = (cell: DraftCell): number => (cell.style?.wrap ? linesOf(String(cell.value), (cell.width * LETTERS * 11) / sizeOf(cell)) : 1);

/** No spreadsheet measures merged cells, and not every one measures wrapped text of a file, so the height is reckoned. */
const heightOf = (cell: DraftCell): number => Math.ceil(linesIn(cell) * sizeOf(cell) * LINE) + 2;

/** Lines that words take when each line has room for so many letters. */
export function linesOf(text: string, room: number): number {
  let [lines, used] = [1, 0];
  for (const word of text.split(" ")) {
    if (used > 0 && used + 1 + word.length > room) {
      lines += 1;
      used = 0;
    }
    lines += Math.max(0, Math.ceil(word.length / room) - 1);
    used += (used > 0 ? 1 : 0) + Math.min(word.length, room);
  }
  return lines;
}
