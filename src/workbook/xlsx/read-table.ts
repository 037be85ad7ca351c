/** Reads a table part. */
import { cellAddress, parseArea } from "../address";
import { type DocumentSheet, type DocumentTable } from "../document";
import { childNamed, childrenNamed, type XmlElement } from "./xml-tree";

/** A table part. One without a heading row has no columns to name, so it stays plain cells. */
export function readTable(table: XmlElement | undefined, cells: DocumentSheet["cells"]): DocumentTable | undefined {
  const { ref = "", displayName, name, headerRowCount = "1", totalsRowCount = "0" } = table?.attributes ?? {};
  const area = parseArea(ref);
  const called = displayName ?? name;
  if (!table || !area || called === undefined) return undefined;
  const { firstRow, firstColumn, columns } = area;
  if (headerRowCount !== "1" && !showsItsHeadings(table, area, cells)) return undefined;
  const rows = area.rows - 1 - Number(totalsRowCount);
  return rows >= 0 ? { name: called, firstRow, firstColumn, columns, rows } : undefined;
}

/** Some writers put a heading count of 0 where the file they read had left the default out; the names of the columns then still stand in the first row. */
function showsItsHeadings(table: XmlElement, { firstRow, firstColumn }: { readonly firstRow: number; readonly firstColumn: number }, cells: DocumentSheet["cells"]): boolean {
  const names = childrenNamed(childNamed(table, "tableColumns"), "tableColumn").map(({ attributes }) => attributes["name"]);
  return names.length > 0 && names.every((name, index) => cells.get(cellAddress(firstRow, firstColumn + index))?.value === name);
}
