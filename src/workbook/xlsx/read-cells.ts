/** Reads the cells of a worksheet part. */
import { type Area, cellAddress, parseArea, parseCellAddress } from "../address";
import { type CellError, type CellStyle, type CellValue, type SheetCell } from "../document";
import { shiftedFormula, typedFormula } from "./formula-text";
import { isDateFormat } from "./number-formats";
import { richText } from "./rich-text";
import { fromXmlText } from "./xml-text";
import { childNamed, childrenNamed, type XmlElement } from "./xml-tree";

export interface CellContext {
  readonly texts: readonly string[];
  readonly looks: readonly CellStyle[];
  readonly startsIn1904: boolean;
}

/** The cells of a worksheet by address. Cells that an array formula fills are marked, so that nobody enters them as constants. */
export function readCells(sheet: XmlElement, context: CellContext): ReadonlyMap<string, SheetCell> {
  const cells = new Map<string, SheetCell>();
  const shared = new Map<string, SharedFormula>();
  const spills: Area[] = [];
  for (const placed of placedCells(sheet)) {
    const cell = readCell(placed, context, shared);
    if (cell.formula !== undefined && cell.spill) spills.push({ firstRow: placed.row, firstColumn: placed.column, ...cell.spill });
    if (cell.formula !== undefined || cell.value !== "" || Object.keys(cell).length > 1) cells.set(cellAddress(placed.row, placed.column), cell);
  }
  spills.forEach((area) => {
    markSpilled(cells, area);
  });
  return cells;
}

interface PlacedCell {
  readonly element: XmlElement;
  readonly row: number;
  readonly column: number;
}
interface SharedFormula {
  readonly text: string;
  readonly row: number;
  readonly column: number;
}

/** Rows and cells may leave out where they are: then they follow the one before. */
function placedCells(sheet: XmlElement): readonly PlacedCell[] {
  const placed: PlacedCell[] = [];
  let row = -1;
  for (const rowElement of childrenNamed(childNamed(sheet, "sheetData"), "row")) {
    row = rowElement.attributes["r"] === undefined ? row + 1 : Number(rowElement.attributes["r"]) - 1;
    let column = -1;
    for (const element of childrenNamed(rowElement, "c")) {
      const place = parseCellAddress(element.attributes["r"] ?? "");
      column = place?.column ?? column + 1;
      placed.push({ element, row: place?.row ?? row, column });
    }
  }
  return placed;
}

function readCell({ element, row, column }: PlacedCell, context: CellContext, shared: Map<string, SharedFormula>): SheetCell {
  const { format = "", ...look } = context.looks[Number(element.attributes["s"] ?? 0)] ?? {};
  const value = readValue(element, context, format);
  const formula = readFormula(childNamed(element, "f"), { row, column }, shared);
  // Typed text is text here whatever its format says, so the format of texts says nothing more.
  return { value, ...formula, ...(format === "" || (format === "@" && value !== "") ? {} : { format }), ...look };
}

function readValue(element: XmlElement, { texts, startsIn1904 }: CellContext, format: string): CellValue | CellError {
  const text = childNamed(element, "v")?.text ?? "";
  switch (element.attributes["t"]) {
    case "s":
      return texts[Number(text)] ?? "";
    case "inlineStr": {
      const inline = childNamed(element, "is");
      return inline ? richText(inline) : "";
    }
    case "str":
      return fromXmlText(text);
    case "b":
      return text.trim() === "1" || text.trim() === "true";
    case "e":
      return text === "" ? "" : { error: text };
    case "d":
      return dateSerial(text);
    default: {
      if (text.trim() === "") return "";
      const number = Number(text);
      return startsIn1904 && isDateFormat(format) ? number + daysFrom1900To1904 : number;
    }
  }
}

const daysFrom1900To1904 = 1462;
const millisecondsPerDay = 86_400_000;
/** Day 0 of the serial numbers of dates, as they count after February 1900. */
const serialStart = Date.UTC(1899, 11, 30);

function dateSerial(text: string): number | string {
  const moment = Date.parse(/[zZ]|[+-]\d\d:\d\d$/.test(text) ? text : text.includes("T") ? `${text}Z` : `${text}T00:00:00Z`);
  return Number.isNaN(moment) ? text : (moment - serialStart) / millisecondsPerDay;
}

function readFormula(
  element: XmlElement | undefined,
  { row, column }: { readonly row: number; readonly column: number },
  shared: Map<string, SharedFormula>,
): Pick<SheetCell, "formula" | "spill"> {
  const { t: type = "normal", si = "", ref = "" } = element?.attributes ?? {};
  const text = element?.text.trim() ?? "";
  if (!element || type === "dataTable") return {};
  if (type === "shared" && text !== "") shared.set(si, { text, row, column });
  const master = type === "shared" ? shared.get(si) : undefined;
  const own = text === "" && master ? shiftedFormula(master.text, row - master.row, column - master.column) : text;
  if (own === "") return {};
  const area = type === "array" ? parseArea(ref) : undefined;
  const spill = area && area.rows * area.columns > 1 ? { spill: { rows: area.rows, columns: area.columns } } : {};
  return { formula: typedFormula(own), ...spill };
}

function markSpilled(cells: Map<string, SheetCell>, area: Area): void {
  // A few cells are looked up one by one; for a large area it is quicker to look at what there is.
  const addresses = area.rows * area.columns < cells.size ? addressesIn(area) : cells.keys();
  for (const address of [...addresses]) {
    const [place, cell] = [parseCellAddress(address), cells.get(address)];
    if (!place || !cell || cell.formula !== undefined) continue;
    const [down, right] = [place.row - area.firstRow, place.column - area.firstColumn];
    if (down >= 0 && down < area.rows && right >= 0 && right < area.columns) cells.set(address, { ...cell, spilled: true });
  }
}

function* addressesIn({ firstRow, firstColumn, rows, columns }: Area): Iterable<string> {
  for (let down = 0; down < rows; down++) for (let right = 0; right < columns; right++) yield cellAddress(firstRow + down, firstColumn + right);
}
