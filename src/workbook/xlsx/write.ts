import { strToU8, zipSync } from "fflate";
import { type WorkbookDocument } from "../document";
import { fileFormula } from "./formula-text";
import { applicationXml, contentTypesXml, coreXml, metadataXml, packageRelationshipsXml, relationshipsXml } from "./package-xml";
import { SharedTexts } from "./shared-texts";
import { sheetXml } from "./sheet-xml";
import { CellStyles } from "./styles-xml";
import { namedColumns, tableXml } from "./table-xml";
import { mainNamespace, relationshipNamespace, xmlHead, xmlText } from "./xml-text";

/**
 * Writes a workbook as an .xlsx file: real tables, our functions as Excel stores those of add-ins, results that spill marked
 * as dynamic arrays, and the value of every cell, so that a program that does not know the functions still shows them.
 */
export function writeXlsx(document: WorkbookDocument): Uint8Array {
  const parts = workbookParts(document);
  return zipSync(Object.fromEntries(Object.entries(parts).map(([path, text]) => [path, [strToU8(text), { mtime: earliestZipDate }]])));
}

/** A fixed date, so that the same workbook gives the same bytes. */
const earliestZipDate = new Date(1980, 0, 1);

function workbookParts(document: WorkbookDocument): Record<string, string> {
  const texts = new SharedTexts();
  const styles = new CellStyles();
  const tableNames = document.sheets.flatMap((sheet) => sheet.tables.map(({ name }) => name));
  const parts: Record<string, string> = {};
  let tableNumber = 0;
  document.sheets.forEach((sheet, index) => {
    const named = sheet.tables.map((table) => namedColumns(sheet, table));
    const numbers = named.map(() => ++tableNumber);
    const path = `xl/worksheets/sheet${String(index + 1)}.xml`;
    parts[path] = sheetXml({ sheet, tables: named, tableNames, texts, styles });
    named.forEach((table, at) => {
      parts[`xl/tables/table${String(numbers[at])}.xml`] = tableXml(table, numbers[at] ?? 0);
    });
    if (numbers.length > 0) {
      const links = numbers.map((number) => ({ type: "table", target: `../tables/table${String(number)}.xml` }));
      parts[`xl/worksheets/_rels/sheet${String(index + 1)}.xml.rels`] = relationshipsXml(links);
    }
  });
  return { ...packageParts(document, tableNumber), ...parts, "xl/styles.xml": styles.xml(), "xl/sharedStrings.xml": texts.xml(), "xl/workbook.xml": workbookXml(document, tableNames) };
}

function packageParts(document: WorkbookDocument, tables: number): Record<string, string> {
  const sheets = document.sheets.map((_, index) => ({ type: "worksheet", target: `worksheets/sheet${String(index + 1)}.xml` }));
  return {
    "[Content_Types].xml": contentTypesXml(document.sheets.length, tables),
    "_rels/.rels": packageRelationshipsXml,
    "docProps/app.xml": applicationXml,
    "docProps/core.xml": coreXml,
    "xl/metadata.xml": metadataXml,
    "xl/_rels/workbook.xml.rels": relationshipsXml([
      ...sheets,
      { type: "styles", target: "styles.xml" },
      { type: "sharedStrings", target: "sharedStrings.xml" },
      { type: "sheetMetadata", target: "metadata.xml" },
    ]),
  };
}

function workbookXml({ sheets, names = [] }: WorkbookDocument, tableNames: readonly string[]): string {
  const listed = sheets.map(({ name, hidden }, index) => {
    const number = String(index + 1);
    return `<sheet name="${xmlText(name)}" sheetId="${number}"${hidden ? ' state="hidden"' : ""} r:id="rId${number}"/>`;
  });
  const defined = names.map(({ name, formula }) => `<definedName name="${xmlText(name)}">${xmlText(fileFormula(formula, tableNames))}</definedName>`);
  const firstShown = Math.max(0, sheets.findIndex(({ hidden }) => !hidden));
  return (
    `${xmlHead}<workbook xmlns="${mainNamespace}" xmlns:r="${relationshipNamespace}">` +
    `<bookViews><workbookView activeTab="${String(firstShown)}"/></bookViews><sheets>${listed.join("")}</sheets>` +
    (defined.length > 0 ? `<definedNames>${defined.join("")}</definedNames>` : "") +
    '<calcPr calcId="191029"/></workbook>'
  );
}

