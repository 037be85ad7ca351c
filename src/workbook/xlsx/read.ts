import { type DocumentSheet, type WorkbookDocument } from "../document";
import { typedFormula } from "./formula-text";
import { leftOutOf } from "./left-out";
import { type PackageParts, packageParts, WorkbookFileError } from "./package-parts";
import { readCells } from "./read-cells";
import { type CellLook, readLooks } from "./read-looks";
import { readTable } from "./read-table";
import { richText } from "./rich-text";
import { fromXmlText } from "./xml-text";
import { childNamed, childrenNamed, isOn, type XmlElement } from "./xml-tree";

export { WorkbookFileError };

/**
 * Reads an .xlsx file, ours or another program's: values, formulas as typed, tables, number formats, column widths, hidden
 * sheets, defined names. Colours are left out; other things left out are listed. Throws WorkbookFileError with a plain sentence.
 * @param largest bytes after unpacking that are refused
 */
export function readXlsx(bytes: Uint8Array, largest?: number): WorkbookDocument {
  const parts = packageParts(bytes, largest);
  const path = first(parts.links("", "officeDocument")) ?? "xl/workbook.xml";
  const workbook = parts.xml(path);
  if (workbook?.name !== "workbook") throw new WorkbookFileError("The file holds no workbook: it may be a document of another kind.");
  const context = workbookContext(parts, workbook, path);
  const paths = parts.links(path, "worksheet");
  const elements = childrenNamed(childNamed(workbook, "sheets"), "sheet").flatMap((entry) => {
    const sheetPath = paths.get(entry.attributes["r:id"] ?? "");
    // A chart sheet has a link of another kind and no cells.
    return sheetPath === undefined ? [] : [{ entry, path: sheetPath, sheet: sheetElement(parts, entry, sheetPath) }];
  });
  if (elements.length === 0) throw new WorkbookFileError("The workbook has no sheets with cells.");
  const leftOut = leftOutOf(workbook, elements.map(({ sheet }) => sheet));
  const sheets = elements.map((element) => readSheet(context, element));
  return { sheets, names: definedNames(workbook), ...(leftOut.length > 0 ? { leftOut } : {}) };
}

interface WorkbookContext {
  readonly parts: PackageParts;
  readonly texts: readonly string[];
  readonly looks: readonly CellLook[];
  readonly startsIn1904: boolean;
}

function workbookContext(parts: PackageParts, workbook: XmlElement, path: string): WorkbookContext {
  const texts = parts.xml(first(parts.links(path, "sharedStrings")) ?? "xl/sharedStrings.xml");
  return {
    parts,
    texts: childrenNamed(texts, "si").map(richText),
    looks: readLooks(parts.xml(first(parts.links(path, "styles")) ?? "xl/styles.xml")),
    startsIn1904: isOn(childNamed(workbook, "workbookPr")?.attributes["date1904"]),
  };
}

function sheetElement(parts: PackageParts, entry: XmlElement, path: string): XmlElement {
  const sheet = parts.xml(path);
  if (!sheet) throw new WorkbookFileError(`The file is damaged: the cells of sheet ${entry.attributes["name"] ?? ""} are missing.`);
  return sheet;
}

interface FoundSheet {
  readonly entry: XmlElement;
  readonly path: string;
  readonly sheet: XmlElement;
}

function readSheet({ parts, texts, looks, startsIn1904 }: WorkbookContext, { entry, path, sheet }: FoundSheet): DocumentSheet {
  const name = fromXmlText(entry.attributes["name"] ?? "");
  const tables = [...parts.links(path, "table").values()].flatMap((table) => readTable(parts.xml(table)) ?? []);
  const state = entry.attributes["state"];
  return {
    name,
    cells: readCells(sheet, { texts, looks, startsIn1904 }),
    tables,
    columnWidths: columnWidths(sheet),
    ...(state === "hidden" || state === "veryHidden" ? { hidden: true } : {}),
    ...frozenPart(sheet),
  };
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
    for (let number = Number(attributes["min"]); number <= last; number++) widths[number - 1] = width;
  }
  return Array.from(widths);
}

const definedNames = (workbook: XmlElement): { name: string; formula: string }[] =>
  childrenNamed(childNamed(workbook, "definedNames"), "definedName")
    .filter(({ attributes }) => attributes["localSheetId"] === undefined && !attributes["name"]?.startsWith("_xl"))
    .map(({ attributes, text }) => ({ name: attributes["name"] ?? "", formula: typedFormula(text).slice(1) }));

const first = (links: ReadonlyMap<string, string>): string | undefined => [...links.values()][0];
