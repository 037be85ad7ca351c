/** Names what a file holds and we do not keep. */
import { readLists } from "./sheet-parts-xml";
import { childNamed, type XmlElement } from "./xml-tree";

/** What a workbook's file holds that a document has no place for, each named once, in the words of a user. */
export function leftOutOf(workbook: XmlElement, read: readonly ReadSheet[]): readonly string[] {
  const sheets = read.map(({ sheet }) => sheet);
  const found = (parts: readonly XmlElement[], names: Readonly<Record<string, string>>): string[] =>
    Object.entries(names).flatMap(([element, words]) => (parts.some((part) => childNamed(part, element)) ? [words] : []));
  const drawn = read.some(({ hasMoreDrawn }) => hasMoreDrawn) ? ["charts, shapes and pictures that are no PNG in one place"] : [];
  const limits = sheets.some((sheet) => readLists(sheet).hasMore) ? ["limits on what may be typed"] : [];
  return [...new Set([...found(sheets, inSheets), ...drawn, ...limits, ...found([workbook], inWorkbook)])];
}

interface ReadSheet {
  readonly sheet: XmlElement;
  readonly hasMoreDrawn: boolean;
}

const inSheets = {
  conditionalFormatting: "conditional formats",
  legacyDrawing: "comments",
  sheetProtection: "protection",
  hyperlinks: "links",
};

const inWorkbook = { pivotCaches: "pivot tables", externalReferences: "values from other workbooks" };
