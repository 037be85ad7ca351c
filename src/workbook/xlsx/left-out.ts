import { childNamed, type XmlElement } from "./xml-tree";

/** What a workbook's file holds that a document has no place for, each named once, in the words of a user. */
export function leftOutOf(workbook: XmlElement, sheets: readonly XmlElement[]): readonly string[] {
  const found = (parts: readonly XmlElement[], names: Readonly<Record<string, string>>): string[] =>
    Object.entries(names).flatMap(([element, words]) => (parts.some((part) => childNamed(part, element)) ? [words] : []));
  return [...new Set([...found(sheets, inSheets), ...found([workbook], inWorkbook)])];
}

const inSheets = {
  mergeCells: "merged cells",
  conditionalFormatting: "conditional formats",
  dataValidations: "drop-down lists and other limits on what may be typed",
  drawing: "pictures and charts",
  legacyDrawing: "comments",
  sheetProtection: "protection",
  hyperlinks: "links",
};

const inWorkbook = { pivotCaches: "pivot tables", externalReferences: "values from other workbooks" };
