/** From a document to the data that the grid's model starts from. */
import { areaAddress, parseCellAddress } from "../../workbook/address";
import { isCellError, tableHeadings, type DocumentSheet, type SheetCell, type SheetPicture, type WorkbookDocument } from "../../workbook/document";
import { translateReferences, type ReferenceTable } from "../../workbook/structured-references";
import { gridBorder, gridStyle } from "./cell-look";
import { type GridLibrary } from "./library";
import { choiceRule, figure, rangeText } from "./sheet-parts";
import { type NamedTableData } from "./tables";
import { unresolved } from "./unresolved";

/** The data a grid model starts from. Cells that a formula fills are left out: its result would be blocked by them. */
export function modelData(library: GridLibrary, document: WorkbookDocument): Record<string, unknown> {
  const tables = referenceTables(document);
  const cells = document.sheets.flatMap((sheet) => [...sheet.cells.values()]);
  const formats = numbered(cells.map(({ format }) => format ?? "").filter((format) => format !== "" && canRead(library, format)));
  const styles = numbered(cells.map((cell) => textOf(gridStyle(cell))));
  const borders = numbered(cells.map((cell) => textOf(gridBorder(cell))));
  return {
    sheets: document.sheets.map((sheet, index) => sheetData({ library, sheet, tables, formats, styles, borders, id: sheetId(index) })),
    styles: Object.fromEntries([...styles].map(([style, number]) => [number, JSON.parse(style) as unknown])),
    borders: Object.fromEntries([...borders].map(([border, number]) => [number, JSON.parse(border) as unknown])),
    formats: Object.fromEntries([...formats].map(([format, number]) => [number, format])),
    namedRanges: Object.fromEntries((document.names ?? []).filter(({ formula }) => isPlainRange(formula)).map(({ name, formula }) => [name, formula])),
    namedTables: document.sheets.flatMap((sheet, index) => namedTables(sheet, sheetId(index))),
  };
}

/** The tables of a document as formulas see them. */
export const referenceTables = (document: WorkbookDocument): readonly ReferenceTable[] =>
  document.sheets.flatMap((sheet) =>
    sheet.tables.map((table) => ({ ...table, sheet: sheet.name, headings: tableHeadings(sheet, table) })),
  );

/** Rows a new sheet has below what it holds, so that there is room to type and to spill. */
const spareRows = 200;
const leastRows = 1000;
const spareColumns = 6;
const leastColumns = 26;
/** Pixels of a character of the grid's default font, as the grid itself reckons when it reads files. */
export const pixelsPerCharacter = 7;
/** A pixel is 1/96 inch, a point 1/72. */
export const pixelsPerPoint = 96 / 72;

/** The id that the sheet with this number has in the grid. */
export const sheetId = (index: number): string => `sheet${String(index + 1)}`;

const isPlainRange = (formula: string): boolean => /^('(?:[^']|'')+'|[\w.]+)!\$?[A-Z]+\$?\d+(:\$?[A-Z]+\$?\d+)?$/i.test(formula);

const namedTables = (sheet: DocumentSheet, id: string): readonly NamedTableData[] =>
  sheet.tables.map((table) => ({ sheetId: id, name: table.name, range: tableRange(table) }));

const tableRange = (table: { firstRow: number; firstColumn: number; rows: number; columns: number }): string =>
  areaAddress({ ...table, rows: table.rows + 1 });

/** Each different text with a number, as the grid refers to formats, styles and borders. */
const numbered = (texts: readonly string[]): ReadonlyMap<string, number> =>
  new Map([...new Set(texts)].filter((text) => text !== "").map((text, index) => [text, index + 1]));

const textOf = (part: object | undefined): string => (part ? JSON.stringify(part) : "");

/** A format the grid cannot read is left out and the bare value shows. */
function canRead(library: GridLibrary, format: string): boolean {
  try {
    library.helpers.formatValue(1.5, { format, locale: library.constants.DEFAULT_LOCALE });
    return true;
  } catch {
    return false;
  }
}

interface SheetSource {
  readonly library: GridLibrary;
  readonly sheet: DocumentSheet;
  readonly tables: readonly ReferenceTable[];
  readonly formats: ReadonlyMap<string, number>;
  readonly styles: ReadonlyMap<string, number>;
  readonly borders: ReadonlyMap<string, number>;
  readonly id: string;
}

function sheetData({ library, sheet, tables, formats, styles, borders, id }: SheetSource): Record<string, unknown> {
  const placed = [...sheet.cells].flatMap(([address, cell]) => {
    const place = parseCellAddress(address);
    return place ? [{ address, cell, place: { ...place, sheet: sheet.name } }] : [];
  });
  const enter = (formula: string, place: (typeof placed)[number]["place"]): string => translateReferences(formula, tables, place, unresolved);
  const content = ({ cell, place }: (typeof placed)[number]): string =>
    cell.formula === undefined ? constantContent(library, cell.value) : enter(cell.formula, place);
  const filled = placed.filter(({ cell }) => cell.formula !== undefined || (cell.value !== "" && !cell.spilled));
  return {
    id,
    name: sheet.name,
    isVisible: sheet.hidden !== true,
    panes: { xSplit: sheet.frozen?.columns ?? 0, ySplit: sheet.frozen?.rows ?? 0 },
    ...sheetSize(sheet),
    cells: Object.fromEntries(filled.map((entry) => [entry.address, content(entry)])),
    formats: Object.fromEntries(placed.flatMap(({ address, cell }) => formatEntry(address, cell, formats))),
    styles: Object.fromEntries(placed.flatMap(({ address, cell }) => numberedEntry(address, styles.get(textOf(gridStyle(cell)))))),
    borders: Object.fromEntries(placed.flatMap(({ address, cell }) => numberedEntry(address, borders.get(textOf(gridBorder(cell)))))),
    cols: Object.fromEntries((sheet.columnWidths ?? []).flatMap((width, column) =>
      width === undefined ? [] : [[column, { size: Math.round(width * pixelsPerCharacter) }]])),
    rows: Object.fromEntries((sheet.rowHeights ?? []).flatMap((height, row) => (height === undefined ? [] : [[row, { size: Math.round(height * pixelsPerPoint) }]]))),
    tables: sheet.tables.map((table) => ({ range: tableRange(table), type: "static", config: tableConfig })),
    merges: (sheet.merges ?? []).map(rangeText),
    figures: (sheet.pictures ?? []).map((picture, number) => figureData(picture, `${id}-picture-${String(number + 1)}`)),
    dataValidationRules: (sheet.lists ?? []).map((list, number) => ({ ...choiceRule(`${id}-list-${String(number + 1)}`, list), ranges: [rangeText(list.area)] })),
  };
}

function figureData(picture: SheetPicture, id: string): Record<string, unknown> {
  const { size, definition, ...place } = figure(picture);
  return { id, tag: "image", ...place, ...size, data: definition };
}

const numberedEntry = (address: string, number: number | undefined): [string, number][] => (number === undefined ? [] : [[address, number]]);

/** In the grid a text format would show the apostrophe that keeps "=1+1" a text, so texts go without the format. */
function formatEntry(address: string, { format, value }: SheetCell, formats: ReadonlyMap<string, number>): [string, number][] {
  return format === "@" && value !== "" ? [] : numberedEntry(address, formats.get(format ?? ""));
}

function sheetSize(sheet: DocumentSheet): { rowNumber: number; colNumber: number } {
  let rows = 0;
  let columns = 0;
  for (const address of sheet.cells.keys()) {
    const place = parseCellAddress(address);
    rows = Math.max(rows, (place?.row ?? 0) + 1);
    columns = Math.max(columns, (place?.column ?? 0) + 1);
  }
  for (const { area } of sheet.lists ?? []) rows = Math.max(rows, area.row + area.rows - spareRows);
  for (const table of sheet.tables) {
    rows = Math.max(rows, table.firstRow + table.rows + 1);
    columns = Math.max(columns, table.firstColumn + table.columns);
  }
  return { rowNumber: Math.max(leastRows, rows + spareRows), colNumber: Math.max(leastColumns, columns + spareColumns) };
}

/** How the grid shows our tables: ruled and uncoloured, as a ledger, so that the marks of the panel are the only colour. */
export const tableConfig = {
  hasFilters: false, totalRow: false, firstColumn: false, lastColumn: false, numberOfHeaders: 1,
  bandedRows: false, bandedColumns: false, automaticAutofill: true, styleId: "TableStyleLight1",
};

/** What to type so that the grid holds this very value: an apostrophe keeps a text that looks like something else. */
export function constantContent(library: GridLibrary, value: SheetCell["value"]): string {
  if (isCellError(value)) return value.error === "#REF!" ? "#REF" : value.error;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "number") return String(value);
  return readsAsText(library, value) ? value : `'${value}`;
}

function readsAsText({ helpers, constants }: GridLibrary, text: string): boolean {
  if (text === "" || /^['=+#]/.test(text) || /^(true|false)$/i.test(text)) return false;
  return !helpers.isNumber(text, constants.DEFAULT_LOCALE) && !helpers.isDateTime(text, constants.DEFAULT_LOCALE);
}
