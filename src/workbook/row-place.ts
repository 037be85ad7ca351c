/** Where in the workbook a figure of a named row belongs, so that the user can be led there. */
import { sayCell } from "../catalogue/cell";
import { findHeadings } from "../catalogue/headings";
import { recognise } from "../catalogue/recognise";
import { nameKey } from "../core/catalogue";
import type { TableContent, TablePlace, WorkbookPort } from "./port";

/** A figure as the core names it: one of our tables, its row by name, and a heading without its unit. */
export interface NamedFigure {
  readonly table: string;
  /** The name in the row's first column of ours, or the first two, as of a port. */
  readonly subject: string;
  readonly column: string;
}

/**
 * Of several rows of one name the first whose cell is blank, else the first.
 * @returns the heading as the sheet writes it; undefined when no table of that kind has such a row
 */
export async function placeOf(port: WorkbookPort, figure: NamedFigure): Promise<TablePlace | undefined> {
  const names = [...(await port.tableNames())].sort();
  const tables = await Promise.all(names.map((name) => port.readTable(name)));
  return tables.map((table) => table && placeIn(table, figure)).find((place) => place !== undefined);
}

function placeIn({ name, headings, rows }: TableContent, { table, subject, column }: NamedFigure): TablePlace | undefined {
  const { spec } = recognise(headings, name);
  if (spec?.name !== table) return undefined;
  const found = findHeadings(spec, headings, name).columns;
  const [first, second] = Object.keys(spec.columns).map((field) => found.get(field)?.index);
  const at = found.get(Object.keys(spec.columns).find((field) => spec.columns[field]?.heading === column) ?? "")?.index;
  const cell = (row: TableContent["rows"][number], index: number | undefined): string => (index === undefined ? "" : sayCell(row[index]));
  const named = rows.flatMap((row, index) => ([cell(row, first), `${cell(row, first)} ${cell(row, second)}`].some((one) => nameKey(one) === nameKey(subject)) ? [{ row, index }] : []));
  const place = named.find(({ row }) => cell(row, at) === "") ?? named[0];
  return place && { table: name, row: place.index, column: at === undefined ? column : sayCell(headings[at]) };
}
