/** Tables to be made, checked before anything is written. */
import { parseCellAddress } from "./address";
import type { CellValue, ChoiceList } from "./document";
import { headingIndex, type NewSheet, type NewTable } from "./port";
import { readySheet, type ReadySheet } from "./sheet-content";
import { freeSheetName } from "./sheet-name";
import { rectangular } from "./sheet-rows";

/** A table that a spreadsheet will take: rows as wide as the headings, at least one of them. */
export interface ReadyTable {
  readonly name: string;
  readonly headings: readonly string[];
  readonly rows: CellValue[][];
  /** Areas as the table stands at A1 of its sheet. */
  readonly lists: readonly ChoiceList[];
  /** Columns of day numbers, from 0. */
  readonly days: readonly number[];
}

/** A sheet that is to be made, with the name it gets. */
export interface ReadyPart {
  readonly name: string;
  readonly content: ReadySheet;
  /** A table over all of its rows. */
  readonly table?: ReadyTable;
}

/**
 * The sheets of new tables and of those beside them, each under a name that is free when the ones before have theirs.
 * @param taken names that no new table may have, and names of the sheets that are there
 * @throws Error with a plain sentence when a name is taken or no table can be made
 */
export function readyParts(parts: readonly (NewTable | NewSheet)[], taken: { readonly tables: readonly string[]; readonly sheets: readonly string[] }): readonly ReadyPart[] {
  const tables = new Map(readyTables(parts.filter(isTable), taken.tables).map((table) => [table.name, table]));
  const names = [...taken.sheets];
  return parts.map((part) => {
    const name = freeSheetName(part.name, names);
    names.push(name);
    const table = tables.get(part.name);
    return isTable(part) && table ? { name, content: tableSheet(table), table } : { name, content: readySheet("content" in part ? part.content : []) };
  });
}

const isTable = (part: NewTable | NewSheet): part is NewTable => "headings" in part;

function readyTables(tables: readonly NewTable[], taken: readonly string[]): readonly ReadyTable[] {
  const names = new Set(taken.map((name) => name.toLowerCase()));
  return tables.map((table) => {
    if (names.has(table.name.toLowerCase())) throw new Error(`There is a table ${table.name} already, so nothing was written.`);
    names.add(table.name.toLowerCase());
    return readyTable(table);
  });
}

/** A list and the format of days go on below the table, so that rows yet to be typed have them too. */
const ROWS_TO_SPARE = 200;

/** What a spreadsheet says of a text that is not in a list. Excel takes 32 and 255 characters. */
export const listWarning = {
  title: "Not in the list",
  message: "Plumbline knows this column by the words of its list. Another word stays as typed, but it may not be understood.",
} as const;

/**
 * The sheet a table stands on, from A1. Cells of a list whose words a spreadsheet would take for a number or a date, such as
 * 3/8-24, have text format, so that a chosen word stays what it is.
 */
const tableSheet = ({ headings, rows, lists, days }: ReadyTable): ReadySheet => ({
  rows: [[...headings], ...rows],
  frozenRows: 1,
  columnWidths: headings.map((heading, column) => widthFor(heading, rows.map((row) => row[column]))),
  styles: [
    ...lists.filter(({ values }) => values.some((value) => /\d/.test(value))).map(({ area }) => ({ ...area, style: { format: "@" } })),
    ...days.map((column) => ({ row: 1, column, rows: rows.length + ROWS_TO_SPARE, columns: 1, style: { format: DAY_FORMAT } })),
  ],
});

/** Days in cells, the same in every country. */
export const DAY_FORMAT = "yyyy-mm-dd";

/** Wide enough for the heading and most of what the column holds, and not so wide that one long note pushes the rest away. */
function widthFor(heading: string, values: readonly (CellValue | undefined)[]): number {
  const longest = Math.max(0, ...values.map((value) => String(value ?? "").length));
  return Math.max(9, heading.length + ROOM_FOR_BUTTON, Math.min(WIDEST, longest + 2));
}

/** Characters. */
const WIDEST = 36;

/** Characters that the button of a heading needs. */
const ROOM_FOR_BUTTON = 4;

/** What Excel takes as a list between quotes: 255 characters, separated by commas. */
const LONGEST_LIST = 255;

function readyTable({ name, headings, rows: given, lists = [], days = [] }: NewTable): ReadyTable {
  if (!isTableName(name)) throw new Error(`No table can be named "${name}".`);
  const different = new Set(headings.map((heading) => heading.trim().toLowerCase()));
  if (headings.length === 0 || different.has("") || different.size < headings.length) throw new Error(`The headings of a table ${name} must be there and differ.`);
  const [, ...rows] = rectangular([headings, ...(given.length > 0 ? given : [[]])]);
  if (rows.some((row) => row.length > headings.length)) throw new Error(`A row of the new table ${name} is longer than its headings.`);
  const dayColumns = days.map((day) => headingIndex(headings, day)).filter((column) => column >= 0);
  return { name, headings, rows, days: dayColumns, lists: lists.map(({ column, values }) => choiceList({ name, headings, column, values, rows: rows.length })) };
}

const isTableName = (name: string): boolean => /^[\p{L}_][\p{L}\p{N}_.]{0,254}$/u.test(name) && !parseCellAddress(name) && !/^[rc]$/i.test(name);

interface ListWanted {
  readonly name: string;
  readonly headings: readonly string[];
  readonly column: string;
  readonly values: readonly string[];
  readonly rows: number;
}

function choiceList({ name, headings, column, values, rows }: ListWanted): ChoiceList {
  const index = headingIndex(headings, column);
  if (index < 0) throw new Error(`The new table ${name} has no column ${column}.`);
  if (values.length === 0 || values.some((value) => value.includes(",")) || values.join(",").length > LONGEST_LIST) {
    throw new RangeError(`The list for ${name}, ${column} must have values without commas, ${LONGEST_LIST} characters in all.`);
  }
  return { area: { row: 1, column: index, rows: rows + ROWS_TO_SPARE, columns: 1 }, values };
}
