import { parseArea } from "../address";
import { type DocumentTable } from "../document";
import { type XmlElement } from "./xml-tree";

/** A table part. One without a heading row has no columns to name, so it stays plain cells. */
export function readTable(table: XmlElement | undefined): DocumentTable | undefined {
  const { ref = "", displayName, name, headerRowCount = "1", totalsRowCount = "0" } = table?.attributes ?? {};
  const area = parseArea(ref);
  const called = displayName ?? name;
  if (!area || called === undefined || headerRowCount !== "1") return undefined;
  const { firstRow, firstColumn, columns } = area;
  const rows = area.rows - 1 - Number(totalsRowCount);
  return rows >= 0 ? { name: called, firstRow, firstColumn, columns, rows } : undefined;
}
