/** Writes a document as an .xlsx file. */
import { strToU8, zipSync } from "fflate";
import { type SheetPicture, type WorkbookDocument } from "../document";
import { bytesOf } from "./base64";
import { drawingXml } from "./drawing-xml";
import { fileFormula } from "./formula-text";
import { applicationXml, contentTypesXml, coreXml, metadataXml, packageRelationshipsXml, type PartCounts, type Relationship, relationshipsXml } from "./package-xml";
import { titleRowsName } from "./page-xml";
import { SharedTexts } from "./shared-texts";
import { sheetXml } from "./sheet-xml";
import { CellStyles } from "./styles-xml";
import { type NamedColumnsTable, namedColumns, tableXml } from "./table-xml";
import { mainNamespace, relationshipNamespace, xmlHead, xmlText } from "./xml-text";

/**
 * Writes a workbook as an .xlsx file: real tables, our functions as Excel stores those of add-ins, results that spill marked
 * as dynamic arrays, and the value of every cell, so that a program that does not know the functions still shows them.
 */
export function writeXlsx(document: WorkbookDocument): Uint8Array {
  const parts = workbookParts(document);
  const bytes = (part: string | Uint8Array): Uint8Array => (typeof part === "string" ? strToU8(part) : part);
  return zipSync(Object.fromEntries(Object.entries(parts).map(([path, part]) => [path, [bytes(part), { mtime: earliestZipDate }]])));
}

/** A fixed date, so that the same workbook gives the same bytes. */
const earliestZipDate = new Date(1980, 0, 1);

type Parts = Record<string, string | Uint8Array>;

function workbookParts(document: WorkbookDocument): Parts {
  const shared = { texts: new SharedTexts(), styles: new CellStyles(), tableNames: document.sheets.flatMap((sheet) => sheet.tables.map(({ name }) => name)) };
  const counts = { sheets: document.sheets.length, tables: 0, drawings: 0, images: 0 };
  const parts: Parts = {};
  for (const [index, sheet] of document.sheets.entries()) {
    const named = sheet.tables.map((table) => namedColumns(sheet, table));
    const links = [...tableParts(parts, named, counts), ...drawingParts(parts, sheet.pictures ?? [], counts)];
    parts[`xl/worksheets/sheet${String(index + 1)}.xml`] = sheetXml({ ...shared, sheet, tables: named });
    if (links.length > 0) parts[`xl/worksheets/_rels/sheet${String(index + 1)}.xml.rels`] = relationshipsXml(links);
  }
  return { ...packageParts(document, counts), ...parts, "xl/styles.xml": shared.styles.xml(), "xl/sharedStrings.xml": shared.texts.xml(), "xl/workbook.xml": workbookXml(document, shared.tableNames) };
}

/** How many of each part there are so far. */
interface Counts extends PartCounts {
  tables: number;
  drawings: number;
  images: number;
}

/** Adds the tables of a sheet and gives the sheet's links to them. */
const tableParts = (parts: Parts, tables: readonly NamedColumnsTable[], counts: Counts): readonly Relationship[] =>
  tables.map((table) => {
    const number = ++counts.tables;
    parts[`xl/tables/table${String(number)}.xml`] = tableXml(table, number);
    return { type: "table", target: `../tables/table${String(number)}.xml` };
  });

/** Adds the drawing of a sheet with its pictures, if it has any, and gives the sheet's link to it. */
function drawingParts(parts: Parts, pictures: readonly SheetPicture[], counts: Counts): readonly Relationship[] {
  if (pictures.length === 0) return [];
  const name = `drawing${String(++counts.drawings)}.xml`;
  const links = pictures.map(({ png }) => {
    const image = `image${String(++counts.images)}.png`;
    parts[`xl/media/${image}`] = bytesOf(png);
    return { type: "image", target: `../media/${image}` };
  });
  parts[`xl/drawings/${name}`] = drawingXml(pictures);
  parts[`xl/drawings/_rels/${name}.rels`] = relationshipsXml(links);
  return [{ type: "drawing", target: `../drawings/${name}` }];
}

function packageParts(document: WorkbookDocument, counts: PartCounts): Parts {
  const sheets = document.sheets.map((_, index) => ({ type: "worksheet", target: `worksheets/sheet${String(index + 1)}.xml` }));
  return {
    "[Content_Types].xml": contentTypesXml(counts),
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
  const titles = sheets.map(titleRowsName).filter((name) => name !== "");
  const firstShown = Math.max(0, sheets.findIndex(({ hidden }) => !hidden));
  return (
    `${xmlHead}<workbook xmlns="${mainNamespace}" xmlns:r="${relationshipNamespace}">` +
    `<bookViews><workbookView activeTab="${String(firstShown)}"/></bookViews><sheets>${listed.join("")}</sheets>` +
    (defined.length + titles.length > 0 ? `<definedNames>${[...titles, ...defined].join("")}</definedNames>` : "") +
    '<calcPr calcId="191029"/></workbook>'
  );
}

