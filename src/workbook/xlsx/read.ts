/** Reads an .xlsx file into a document. */
import { type CellStyle, type DocumentSheet, type WorkbookDocument } from "../document";
import { typedFormula } from "./formula-text";
import { type ReadDrawing, readDrawing } from "./drawing-xml";
import { leftOutOf } from "./left-out";
import { type PackageParts, packageParts, WorkbookFileError } from "./package-parts";
import { readCells } from "./read-cells";
import { readLooks } from "./read-looks";
import { readPage } from "./page-xml";
import { readLists, readMerges } from "./sheet-parts-xml";
import { readTable } from "./read-table";
import { richText } from "./rich-text";
import { refuseTooLarge } from "./size";
import { fromXmlText } from "./xml-text";
import { childNamed, childrenNamed, isOn, type XmlElement } from "./xml-tree";

export { WorkbookFileError };

/**
 * Reads an .xlsx file, ours or another program's: values, formulas as typed, tables, number formats, column widths, hidden
 * sheets, defined names, how cells look and sheets print, merged cells, pictures, lists to choose from. Colours of a theme, kinds of
 * rules and other fonts are left out; other things left out are listed. Throws WorkbookFileError with a plain sentence.
 * @param largest bytes after unpacking that are refused
 */
export function readXlsx(bytes: Uint8Array, largest?: number): WorkbookDocument {
  const parts = packageParts(bytes, largest);
  const path = first(parts.links("", "officeDocument")) ?? "xl/workbook.xml";
  const workbook = parts.xml(path);
  if (workbook?.name !== "workbook") throw new WorkbookFileError("The file holds no workbook: it may be a document of another kind.");
  const context = workbookContext(parts, workbook, path);
  const paths = parts.links(path, "worksheet");
  const elements = childrenNamed(childNamed(workbook, "sheets"), "sheet").flatMap((entry, number) => {
    const sheetPath = paths.get(entry.attributes["r:id"] ?? "");
    // A chart sheet has a link of another kind and no cells.
    return sheetPath === undefined ? [] : [{ entry, number, path: sheetPath, sheet: sheetElement(parts, entry, sheetPath) }];
  });
  if (elements.length === 0) throw new WorkbookFileError("The workbook has no sheets with cells.");
  const sheets = elements.map((element) => readSheet(context, element));
  sheets.forEach(refuseTooLarge);
  const drawn = leftOutOf(workbook, elements.map(({ sheet, path: part }) => ({ sheet, hasMoreDrawn: drawingOf(context, sheet, part).hasMore })));
  const leftOut = [...drawn, ...(parts.links(path, "vbaProject").size > 0 ? ["macros"] : [])];
  return { sheets, names: definedNames(workbook), ...(leftOut.length > 0 ? { leftOut } : {}) };
}

interface WorkbookContext {
  readonly parts: PackageParts;
  readonly texts: readonly string[];
  readonly looks: readonly CellStyle[];
  /** What every page of a sheet repeats, by the number of the sheet. */
  readonly titles: ReadonlyMap<string, string>;
  readonly startsIn1904: boolean;
}

function workbookContext(parts: PackageParts, workbook: XmlElement, path: string): WorkbookContext {
  const texts = parts.xml(first(parts.links(path, "sharedStrings")) ?? "xl/sharedStrings.xml");
  return {
    parts,
    texts: childrenNamed(texts, "si").map(richText),
    looks: readLooks(parts.xml(first(parts.links(path, "styles")) ?? "xl/styles.xml")),
    startsIn1904: isOn(childNamed(workbook, "workbookPr")?.attributes["date1904"]),
    titles: new Map(
      childrenNamed(childNamed(workbook, "definedNames"), "definedName")
        .filter(({ attributes }) => attributes["name"] === "_xlnm.Print_Titles")
        .map(({ attributes, text }) => [attributes["localSheetId"] ?? "", text]),
    ),
  };
}

function sheetElement(parts: PackageParts, entry: XmlElement, path: string): XmlElement {
  const sheet = parts.xml(path);
  if (!sheet) throw new WorkbookFileError(`The file is damaged: the cells of sheet ${entry.attributes["name"] ?? ""} are missing.`);
  return sheet;
}

interface FoundSheet {
  readonly entry: XmlElement;
  /** Among all sheets of the file, from 0. */
  readonly number: number;
  readonly path: string;
  readonly sheet: XmlElement;
}

function readSheet(context: WorkbookContext, { entry, number, path, sheet }: FoundSheet): DocumentSheet {
  const { parts } = context;
  const name = fromXmlText(entry.attributes["name"] ?? "");
  const cells = readCells(sheet, context);
  const tables = [...parts.links(path, "table").values()].flatMap((table) => readTable(parts.xml(table), cells) ?? []);
  const state = entry.attributes["state"];
  return {
    name,
    cells,
    tables,
    columnWidths: columnWidths(sheet),
    ...heightsPart(sheet),
    ...(state === "hidden" || state === "veryHidden" ? { hidden: true } : {}),
    ...frozenPart(sheet),
    ...partsBesideCells(context, { number, path, sheet }),
  };
}

function partsBesideCells(context: WorkbookContext, { number, path, sheet }: Omit<FoundSheet, "entry">): Partial<DocumentSheet> {
  const merges = readMerges(sheet);
  const { lists } = readLists(sheet);
  const { pictures } = drawingOf(context, sheet, path);
  const page = readPage(sheet, context.titles.get(String(number)));
  return { ...(merges.length > 0 ? { merges } : {}), ...(lists.length > 0 ? { lists } : {}), ...(pictures.length > 0 ? { pictures } : {}), ...(page ? { page } : {}) };
}

function drawingOf({ parts }: WorkbookContext, sheet: XmlElement, path: string): ReadDrawing {
  const drawing = parts.links(path, "drawing").get(childNamed(sheet, "drawing")?.attributes["r:id"] ?? "");
  return drawing === undefined ? { pictures: [], hasMore: false } : readDrawing(parts, drawing);
}

function frozenPart(sheet: XmlElement): Pick<DocumentSheet, "frozen"> {
  const { state = "", xSplit = "0", ySplit = "0" } = childNamed(childNamed(childNamed(sheet, "sheetViews"), "sheetView"), "pane")?.attributes ?? {};
  return state.startsWith("frozen") ? { frozen: { rows: Number(ySplit), columns: Number(xSplit) } } : {};
}

function columnWidths(sheet: XmlElement): (number | undefined)[] {
  const widths: (number | undefined)[] = [];
  for (const { attributes } of childrenNamed(childNamed(sheet, "cols"), "col")) {
    const width = Number(attributes["width"]);
    // A style for "all other columns" runs to the last of 16,384 and says nothing about a width.
    const last = Math.min(Number(attributes["max"]), 256);
    if (!isOn(attributes["customWidth"]) || !(width > 0)) continue;
    for (let number = Math.max(1, Number(attributes["min"])); number <= last; number++) widths[number - 1] = width;
  }
  return Array.from(widths);
}

/** Heights that somebody set; the others follow the text. */
function heightsPart(sheet: XmlElement): Pick<DocumentSheet, "rowHeights"> {
  const heights: (number | undefined)[] = [];
  for (const { attributes } of childrenNamed(childNamed(sheet, "sheetData"), "row")) {
    const height = Number(attributes["ht"]);
    if (isOn(attributes["customHeight"]) && height > 0) heights[Number(attributes["r"]) - 1] = height;
  }
  return heights.length > 0 ? { rowHeights: Array.from(heights) } : {};
}

const definedNames = (workbook: XmlElement): { name: string; formula: string }[] =>
  childrenNamed(childNamed(workbook, "definedNames"), "definedName")
    .filter(({ attributes }) => attributes["localSheetId"] === undefined && !attributes["name"]?.startsWith("_xl"))
    .map(({ attributes, text }) => ({ name: attributes["name"] ?? "", formula: typedFormula(text).slice(1) }));

const first = (links: ReadonlyMap<string, string>): string | undefined => [...links.values()][0];
