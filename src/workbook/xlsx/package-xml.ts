/** The parts of a package that say what the others are: links and content types. */
import { mainNamespace, relationshipNamespace, xmlHead } from "./xml-text";

export interface Relationship {
  readonly type: string;
  readonly target: string;
}

/** Links of one part to others, numbered rId1, rId2 … in this order. */
export const relationshipsXml = (links: readonly Relationship[]): string =>
  `${xmlHead}<Relationships xmlns="${packageRelationships}">` +
  links.map(({ type, target }, index) => `<Relationship Id="rId${String(index + 1)}" Type="${relationshipNamespace}/${type}" Target="${target}"/>`).join("") +
  "</Relationships>";

export interface PartCounts {
  readonly sheets: number;
  readonly tables: number;
  readonly drawings: number;
}

export const contentTypesXml = ({ sheets, tables, drawings }: PartCounts): string =>
  `${xmlHead}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">` +
  '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
  '<Default Extension="xml" ContentType="application/xml"/>' +
  (drawings > 0 ? '<Default Extension="png" ContentType="image/png"/>' : "") +
  [
    override("xl/workbook.xml", "sheet.main"),
    ...numbers(sheets).map((number) => override(`xl/worksheets/sheet${number}.xml`, "worksheet")),
    ...numbers(tables).map((number) => override(`xl/tables/table${number}.xml`, "table")),
    ...numbers(drawings).map((number) => `<Override PartName="/xl/drawings/drawing${number}.xml" ContentType="application/vnd.openxmlformats-officedocument.drawing+xml"/>`),
    override("xl/styles.xml", "styles"),
    override("xl/sharedStrings.xml", "sharedStrings"),
    override("xl/metadata.xml", "sheetMetadata"),
    '<Override PartName="/docProps/app.xml" ContentType="application/vnd.openxmlformats-officedocument.extended-properties+xml"/>',
    '<Override PartName="/docProps/core.xml" ContentType="application/vnd.openxmlformats-package.core-properties+xml"/>',
  ].join("") +
  "</Types>";

/** The mark of a dynamic array: a cell with cm="1" spills and may change its size. */
export const metadataXml =
  `${xmlHead}<metadata xmlns="${mainNamespace}" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray">` +
  '<metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" ' +
  'splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/></metadataTypes>' +
  '<futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}">' +
  '<xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata>' +
  '<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>';

/** LibreOffice keeps the stored values of functions it does not know only in files that say they come from Excel. */
export const applicationXml =
  `${xmlHead}<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties">` +
  "<Application>Microsoft Excel</Application><AppVersion>16.0300</AppVersion></Properties>";

export const coreXml =
  `${xmlHead}<cp:coreProperties xmlns:cp="http://schemas.openxmlformats.org/package/2006/metadata/core-properties" ` +
  'xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:creator>Plumbline</dc:creator></cp:coreProperties>';

const packageRelationships = "http://schemas.openxmlformats.org/package/2006/relationships";

export const packageRelationshipsXml =
  `${xmlHead}<Relationships xmlns="${packageRelationships}">` +
  `<Relationship Id="rId1" Type="${relationshipNamespace}/officeDocument" Target="xl/workbook.xml"/>` +
  `<Relationship Id="rId2" Type="${packageRelationships}/metadata/core-properties" Target="docProps/core.xml"/>` +
  `<Relationship Id="rId3" Type="${relationshipNamespace}/extended-properties" Target="docProps/app.xml"/></Relationships>`;

const override = (part: string, type: string): string =>
  `<Override PartName="/${part}" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.${type}+xml"/>`;

const numbers = (count: number): readonly string[] => Array.from({ length: count }, (_, index) => String(index + 1));
