/** Writes a table part. */
import { areaAddress } from "../address";
import { tableHeadings, type DocumentSheet, type DocumentTable } from "../document";
import { mainNamespace, xmlHead, xmlText } from "./xml-text";

/** A table with headings a file may have: none blank, none twice. */
export interface NamedColumnsTable extends DocumentTable {
  readonly headings: readonly string[];
}

/** Headings as Excel would name them: a blank one "Column1", a repeated one with a number. The heading cells must show the same. */
export function namedColumns(sheet: DocumentSheet, table: DocumentTable): NamedColumnsTable {
  const headings: string[] = [];
  const taken = (name: string): boolean => headings.some((heading) => heading.toLowerCase() === name.toLowerCase());
  for (const [index, heading] of tableHeadings(sheet, table).entries()) {
    const wanted = heading === "" ? `Column${String(index + 1)}` : heading;
    let name = wanted;
    for (let number = 2; taken(name); number++) name = `${wanted}${String(number)}`;
    headings.push(name);
  }
  // A file's table has at least one row under its headings.
  return { ...table, rows: Math.max(1, table.rows), headings };
}

export function tableXml(table: NamedColumnsTable, number: number): string {
  const name = xmlText(table.name);
  const area = areaAddress({ ...table, rows: table.rows + 1 });
  const columns = table.headings.map((heading, index) => `<tableColumn id="${String(index + 1)}" name="${xmlText(heading).replaceAll("\n", "_x000a_")}"/>`);
  return (
    `${xmlHead}<table xmlns="${mainNamespace}" id="${String(number)}" name="${name}" displayName="${name}" ref="${area}" headerRowCount="1" totalsRowShown="0">` + // the default said, as some readers take its absence for 0
    `<autoFilter ref="${area}"/><tableColumns count="${String(columns.length)}">${columns.join("")}</tableColumns>` +
    '<tableStyleInfo name="TableStyleLight1" showFirstColumn="0" showLastColumn="0" showRowStripes="0" showColumnStripes="0"/></table>'
  );
}
