import { areaAddress, parseCellAddress } from "../../workbook/address";
import { isCellError, tableHeadings, type DocumentSheet, type SheetCell, type WorkbookDocument } from "../../workbook/document";
import { translateReferences, type ReferenceTable } from "../../workbook/structured-references";
import { type GridLibrary } from "./library";
import { type NamedTableData } from "./tables";
import { unresolved } from "./unresolved";

/** The data a grid model starts from. Cells that a formula fills are left out: its result would be blocked by them. */
export function modelData(library: GridLibrary, document: WorkbookDocument): Record<string, unknown> {
  const tables = referenceTables(document);
  const formats = numbered(library, document.sheets.flatMap((sheet) => [...sheet.cells.values()].map(({ format }) => format ?? "")));
  return {
    sheets: document.sheets.map((sheet, index) => sheetData({ library, sheet, tables, formats, id: sheetId(index) })),
    styles: { [boldStyle]: { bold: true } },
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
const boldStyle = 1;
/** Pixels of a character of the grid's default font, as the grid itself reckons when it reads files. */
const pixelsPerCharacter = 7;

const sheetId = (index: number): string => `sheet${String(index + 1)}`;

const isPlainRange = (formula: string): boolean => /^('(?:[^']|'')+'|[\w.]+)!\$?[A-Z]+\$?\d+(:\$?[A-Z]+\$?\d+)?$/i.test(formula);

const namedTables = (sheet: DocumentSheet, id: string): readonly NamedTableData[] =>
  sheet.tables.map((table) => ({ sheetId: id, name: table.name, range: tableRange(table) }));

const tableRange = (table: { firstRow: number; firstColumn: number; rows: number; columns: number }): string =>
  areaAddress({ ...table, rows: table.rows + 1 });

/** The formats the grid can show, each with a number; a format it cannot read is left out and the bare value shows. */
function numbered(library: GridLibrary, formats: readonly string[]): ReadonlyMap<string, number> {
  const readable = [...new Set(formats)].filter((format) => format !== "" && canRead(library, format));
  return new Map(readable.map((format, index) => [format, index + 1]));
}

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
  readonly id: string;
}

function sheetData({ library, sheet, tables, formats, id }: SheetSource): Record<string, unknown> {
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
    styles: Object.fromEntries(placed.filter(({ cell }) => cell.bold).map(({ address }) => [address, boldStyle])),
    cols: Object.fromEntries((sheet.columnWidths ?? []).flatMap((width, column) =>
      width === undefined ? [] : [[column, { size: Math.round(width * pixelsPerCharacter) }]])),
    tables: sheet.tables.map((table) => ({ range: tableRange(table), type: "static", config: tableConfig })),
  };
}

/** In the grid a text format would show the apostrophe that keeps "=1+1" a text, so texts go without the format. */
function formatEntry(address: string, { format, value }: SheetCell, formats: ReadonlyMap<string, number>): [string, number][] {
  const number = formats.get(format ?? "");
  return number === undefined || (format === "@" && value !== "") ? [] : [[address, number]];
}

function sheetSize(sheet: DocumentSheet): { rowNumber: number; colNumber: number } {
  let rows = 0;
  let columns = 0;
  for (const address of sheet.cells.keys()) {
    const place = parseCellAddress(address);
    rows = Math.max(rows, (place?.row ?? 0) + 1);
    columns = Math.max(columns, (place?.column ?? 0) + 1);
  }
  for (const table of sheet.tables) {
    rows = Math.max(rows, table.firstRow + table.rows + 1);
    columns = Math.max(columns, table.firstColumn + table.columns);
  }
  return { rowNumber: Math.max(leastRows, rows + spareRows), colNumber: Math.max(leastColumns, columns + spareColumns) };
}

const tableConfig = {
  hasFilters: false, totalRow: false, firstColumn: false, lastColumn: false, numberOfHeaders: 1,
  bandedRows: true, bandedColumns: false, automaticAutofill: true, styleId: "TableStyleMedium2",
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
