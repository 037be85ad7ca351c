/** Writes a worksheet part. */
import { areaAddress, cellAddress, parseCellAddress } from "../address";
import { isCellError, type CellError, type CellStyle, type CellValue, type DocumentSheet, type SheetCell } from "../document";
import { fileFormula } from "./formula-text";
import { fitXml, pageXml } from "./page-xml";
import { type SharedTexts } from "./shared-texts";
import { listsXml, mergesXml } from "./sheet-parts-xml";
import { type CellStyles } from "./styles-xml";
import { type NamedColumnsTable } from "./table-xml";
import { mainNamespace, relationshipNamespace, xmlHead, xmlText } from "./xml-text";

export interface SheetSource {
  readonly sheet: DocumentSheet;
  readonly tables: readonly NamedColumnsTable[];
  /** Of the whole workbook. */
  readonly tableNames: readonly string[];
  readonly texts: SharedTexts;
  readonly styles: CellStyles;
}

/** A worksheet; its links are rId1, rId2 … for the tables, then one for the drawing. Element order: ECMA-376 part 1, 18.3.1.99. */
export function sheetXml(source: SheetSource): string {
  const { sheet, tables } = source;
  const links = tables.map((_, index) => `<tablePart r:id="rId${String(index + 1)}"/>`);
  const drawing = sheet.pictures?.length ? `<drawing r:id="rId${String(tables.length + 1)}"/>` : "";
  return (
    `${xmlHead}<worksheet xmlns="${mainNamespace}" xmlns:r="${relationshipNamespace}">` +
    fitXml(sheet) +
    `<sheetViews><sheetView workbookViewId="0">${frozenXml(sheet)}</sheetView></sheetViews><sheetFormatPr defaultRowHeight="15"/>` +
    columnsXml(sheet) +
    `<sheetData>${rowsXml(source)}</sheetData>` +
    mergesXml(sheet) + listsXml(sheet) + pageXml(sheet) + drawing +
    (links.length > 0 ? `<tableParts count="${String(links.length)}">${links.join("")}</tableParts>` : "") +
    "</worksheet>"
  );
}

function frozenXml({ frozen }: DocumentSheet): string {
  if (!frozen || frozen.rows + frozen.columns === 0) return "";
  const { rows, columns } = frozen;
  const splits = `${columns > 0 ? ` xSplit="${String(columns)}"` : ""}${rows > 0 ? ` ySplit="${String(rows)}"` : ""}`;
  const pane = rows === 0 ? "topRight" : columns === 0 ? "bottomLeft" : "bottomRight";
  return `<pane${splits} topLeftCell="${cellAddress(rows, columns)}" activePane="${pane}" state="frozen"/>`;
}

function columnsXml({ columnWidths = [] }: DocumentSheet): string {
  const columns = columnWidths.flatMap((width, index) => {
    const number = String(index + 1);
    return width === undefined ? [] : [`<col min="${number}" max="${number}" width="${String(width)}" customWidth="1"/>`];
  });
  return columns.length > 0 ? `<cols>${columns.join("")}</cols>` : "";
}

function rowsXml(source: SheetSource): string {
  const rows = new Map<number, { readonly column: number; readonly xml: string }[]>();
  for (const [address, cell] of cellsWithHeadings(source)) {
    const place = parseCellAddress(address);
    if (!place) continue;
    const row = rows.get(place.row) ?? [];
    row.push({ column: place.column, xml: cellXml(source, address, cell) });
    rows.set(place.row, row);
  }
  const { rowHeights = [] } = source.sheet;
  rowHeights.forEach((height, row) => { if (height !== undefined && !rows.has(row)) rows.set(row, []); });
  return [...rows]
    .sort(([a], [b]) => a - b)
    .map(([row, cells]) => `<row r="${String(row + 1)}"${heightXml(rowHeights[row])}>${cells.sort((a, b) => a.column - b.column).map(({ xml }) => xml).join("")}</row>`)
    .join("");
}

const heightXml = (height: number | undefined): string => (height === undefined ? "" : ` ht="${String(height)}" customHeight="1"`);

/** Heading cells must hold, as text, exactly the names of their table's columns, or Excel calls the file damaged. */
function cellsWithHeadings({ sheet, tables }: SheetSource): ReadonlyMap<string, SheetCell> {
  const cells = new Map(sheet.cells);
  for (const table of tables) {
    table.headings.forEach((heading, index) => {
      const address = cellAddress(table.firstRow, table.firstColumn + index);
      // A number format would be one for the number that the heading may have been.
      cells.set(address, { ...styleOf(cells.get(address)), value: heading });
    });
  }
  return cells;
}

function styleOf(cell: SheetCell | undefined): CellStyle {
  const { value: _value, formula: _formula, spill: _spill, spilled: _spilled, format: _format, ...style } = cell ?? { value: "" };
  return style;
}

function cellXml(source: SheetSource, address: string, cell: SheetCell): string {
  const style = source.styles.number({ ...cell, format: cell.format ?? (mayBeMistaken(cell) ? "@" : "") });
  const look = style === 0 ? "" : ` s="${String(style)}"`;
  if (cell.formula !== undefined) return formulaXml(source, { address, cell, look, formula: cell.formula });
  const { value } = cell;
  if (value === "") return `<c r="${address}"${look}/>`;
  if (typeof value === "string" && !cell.spilled) return `<c r="${address}"${look} t="s"><v>${String(source.texts.number(value))}</v></c>`;
  return `<c r="${address}"${look}${typeOf(value)}>${valueXml(value)}</c>`;
}

/** A typed text that Excel would take for a number, a date or a formula the next time someone edits the cell. */
const mayBeMistaken = ({ value, formula, spilled }: SheetCell): boolean =>
  formula === undefined && !spilled && typeof value === "string" && /^[\s=+\-@.\d$(']|\d/.test(value);

interface FormulaCell {
  readonly address: string;
  readonly cell: SheetCell;
  readonly look: string;
  readonly formula: string;
}

function formulaXml({ tableNames }: SheetSource, { address, cell, look, formula }: FormulaCell): string {
  const text = xmlText(fileFormula(formula, tableNames));
  const { value } = cell;
  const result = `${typeOf(value)}>`;
  if (!isDynamic(cell, formula)) return `<c r="${address}"${look}${result}<f>${text}</f>${valueXml(value)}</c>`;
  const place = parseCellAddress(address) ?? { row: 0, column: 0 };
  const area = areaAddress({ firstRow: place.row, firstColumn: place.column, ...(cell.spill ?? { rows: 1, columns: 1 }) });
  return `<c r="${address}"${look} cm="1"${result}<f t="array" ref="${area}">${text}</f>${valueXml(value)}</c>`;
}

/** A formula that fills more than its cell, or would if nothing were wrong: unmarked, Excel would cut it to one cell for good. */
const isDynamic = ({ value, spill }: SheetCell, formula: string): boolean =>
  (spill !== undefined && spill.rows * spill.columns > 1) ||
  (isCellError(value) && (value.error === "#SPILL!" || /\bPLUMB\./i.test(formula)));

function typeOf(value: CellValue | CellError): string {
  if (isCellError(value)) return ' t="e"';
  return typeof value === "string" ? ' t="str"' : typeof value === "boolean" ? ' t="b"' : "";
}

function valueXml(value: CellValue | CellError): string {
  if (isCellError(value)) return `<v>${xmlText(storedErrors.has(value.error) ? value.error : "#VALUE!")}</v>`;
  return `<v>${typeof value === "boolean" ? (value ? "1" : "0") : xmlText(String(value))}</v>`;
}

/** Errors a file may hold; the newer ones stand in it as #VALUE!. */
const storedErrors = new Set(["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"]);
