/** Values, looks and pictures on their way to a sheet that was just added. */
import { cellAddress } from "../address";
import type { CellArea, CellStyle, CellValue, PageSetup, SheetPicture } from "../port";
import { footerText, margins, pageNumber } from "../page-setup";
import { cellStyles, type ReadySheet } from "../sheet-content";
import { catalogueFirst } from "../formula-repair";
import { enteredAs, formatOf } from "./entered-text";
import type { WriteProgress } from "./run";

/** Queues widths, looks and rows; rows too large for one request go out in several. What is queued last the caller syncs. */
export async function writeContent(context: Excel.RequestContext, sheet: Excel.Worksheet, content: ReadySheet, progress: WriteProgress): Promise<void> {
  (content.columnWidths ?? []).forEach((width, column) => {
    if (width !== undefined) sheet.getRangeByIndexes(0, column, 1, 1).format.columnWidth = pointsOf(width);
  });
  (content.rowHeights ?? []).forEach((height, row) => {
    if (height !== undefined) sheet.getRangeByIndexes(row, 0, 1, 1).format.rowHeight = height;
  });
  for (const { style, ...area } of content.styles ?? []) applyStyle(rangeOf(sheet, area), style);
  await writeRows(context, sheet, content, progress);
  for (const area of content.merges ?? []) rangeOf(sheet, area).merge();
  if (content.frozenRows) sheet.freezePanes.freezeRows(content.frozenRows);
  if (content.page) setUpPage(sheet.pageLayout, content.page);
  for (const row of content.page?.breaks ?? []) sheet.horizontalPageBreaks.add(cellAddress(row, 0));
}

/** Queues formulas, those that read the catalogue first: the others ask for what they have read. */
export function enterFormulas(cells: readonly { readonly cell: Excel.Range | undefined; readonly formula: string }[]): void {
  for (const index of catalogueFirst(cells.map(({ formula }) => formula))) {
    const { cell, formula } = cells[index] ?? {};
    if (!cell || formula === undefined) continue;
    cell.numberFormat = [["General"]]; // a cell of text format would show the formula instead of its result
    cell.formulas = [[formula]];
  }
}

/** Pictures stand by points, so it is asked where their cells are; that sync also sends what was queued before. */
export async function placePictures(context: Excel.RequestContext, sheet: Excel.Worksheet, pictures: readonly SheetPicture[], progress: WriteProgress): Promise<void> {
  const placed = pictures.map((picture) => ({ picture, cell: sheet.getCell(picture.row, picture.column).load("left, top") }));
  await context.sync();
  progress.written = true;
  for (const group of requests(placed, ({ picture }) => picture.png.length)) {
    for (const { picture, cell } of group) {
      const shape = sheet.shapes.addImage(picture.png);
      shape.lockAspectRatio = false;
      shape.set({ left: cell.left, top: cell.top, width: picture.width * POINTS_PER_PIXEL, height: picture.height * POINTS_PER_PIXEL, altTextDescription: picture.alt });
    }
    // eslint-disable-next-line office-addins/no-context-sync-in-loop -- a request may hold 5 MB, and this is one of them
    await context.sync();
  }
}

/** Characters of JSON in one request; at three bytes each they stay under the 5 MB that Excel on the web takes. */
const LARGEST_REQUEST = 1_200_000;

const POINTS_PER_PIXEL = 0.75; // a pixel is 1/96 inch, a point 1/72

/** ECMA-376 part 1, 18.3.1.13: a column is its characters of 7 pixels and 5 pixels of room, in the font of a new workbook. */
const pointsOf = (characters: number): number => (Math.trunc(characters * 7) + 5) * POINTS_PER_PIXEL;

const rangeOf = (sheet: Excel.Worksheet, { row, column, rows, columns }: CellArea): Excel.Range => sheet.getRangeByIndexes(row, column, rows, columns);

async function writeRows(context: Excel.RequestContext, sheet: Excel.Worksheet, { rows, styles = [] }: ReadySheet, progress: WriteProgress): Promise<void> {
  const width = rows[0]?.length ?? 0;
  if (width === 0) return;
  const looks = cellStyles(styles);
  const lines = rows.map((values, row) => ({
    formats: values.map((value, column) => formatOf(value, looks.get(cellAddress(row, column))?.format)),
    values: values.map(enteredAs),
  }));
  let first = 0;
  for (const group of requests(lines, (line) => JSON.stringify(line).length)) {
    if (first > 0) {
      // eslint-disable-next-line office-addins/no-context-sync-in-loop -- a request may hold 5 MB, and this is one of them
      await context.sync();
      progress.written = true;
    }
    const range = sheet.getRangeByIndexes(first, 0, group.length, width);
    range.numberFormat = group.map(({ formats }) => formats);
    range.values = group.map(({ values }): CellValue[] => values);
    first += group.length;
  }
}

/** Items in groups that are small enough for a request each; a single item that is not goes alone. */
export function requests<T>(items: readonly T[], sizeOf: (item: T) => number): readonly (readonly T[])[] {
  const groups: T[][] = [];
  let size = LARGEST_REQUEST;
  for (const item of items) {
    size += sizeOf(item);
    if (size > LARGEST_REQUEST) {
      groups.push([]);
      size = sizeOf(item);
    }
    groups[groups.length - 1]?.push(item);
  }
  return groups;
}

function applyStyle(range: Excel.Range, { bold, italic, size, fill, colour, align, wrap, top, bottom, format }: CellStyle): void {
  const look = range.format;
  look.font.set({
    ...(bold === undefined ? {} : { bold }), ...(italic === undefined ? {} : { italic }),
    ...(size === undefined ? {} : { size }), ...(colour === undefined ? {} : { color: colour }),
  });
  if (fill !== undefined) look.fill.color = fill;
  if (align !== undefined) look.horizontalAlignment = alignments[align];
  if (wrap !== undefined) look.wrapText = wrap;
  if (wrap) look.verticalAlignment = "Top";
  if (top) look.borders.getItem("EdgeTop").style = "Continuous";
  if (bottom) look.borders.getItem("EdgeBottom").style = "Continuous";
  // The reference allows one value for all cells of a range, its types do not.
  if (format !== undefined) range.numberFormat = format as unknown as string[][];
}

const alignments = { left: "Left", center: "Center", right: "Right" } as const;

function setUpPage(layout: Excel.PageLayout, { landscape, fitWide, titleRows, footer }: PageSetup): void {
  layout.orientation = landscape ? "Landscape" : "Portrait";
  layout.setPrintMargins("Inches", { ...margins });
  if (fitWide) layout.zoom = { horizontalFitToPages: 1 };
  if (titleRows) layout.setPrintTitleRows(`$1:$${titleRows}`);
  if (footer !== undefined) layout.headersFooters.defaultForAllPages.set({ leftFooter: footerText(footer), rightFooter: pageNumber });
}
