/** Tables to be made, checked before anything is written. */
import { parseCellAddress } from "./address";
import type { CellValue, ChoiceList } from "./document";
import { headingIndex, type NewTable } from "./port";
import type { ReadySheet } from "./sheet-content";
import { rectangular } from "./sheet-rows";

/** A table that a spreadsheet will take: rows as wide as the headings, at least one of them. */
export interface ReadyTable {
  readonly name: string;
  readonly headings: readonly string[];
  readonly rows: CellValue[][];
  /** Areas as the table stands at A1 of its sheet. */
  readonly lists: readonly ChoiceList[];
}

/**
 * @param taken names that no new table may have
 * @throws Error with a plain sentence when a name is taken or no table can be made
 */
export function readyTables(tables: readonly NewTable[], taken: readonly string[]): readonly ReadyTable[] {
  const names = new Set(taken.map((name) => name.toLowerCase()));
  return tables.map((table) => {
    if (names.has(table.name.toLowerCase())) throw new Error(`There is a table ${table.name} already, so nothing was written.`);
    names.add(table.name.toLowerCase());
    return readyTable(table);
  });
}

/** A list goes on below the table, so that rows yet to be typed have it too. */
export const LIST_ROWS_TO_SPARE = 200;

/** What a spreadsheet says of a text that is not in a list. Excel takes 32 and 255 characters. */
export const listWarning = {
  title: "Not in the list",
  message: "Plumbline knows this column by the words of its list. Another word stays as typed, but it may not be understood.",
} as const;

/**
 * The sheet a table stands on, from A1. Cells of a list whose words a spreadsheet would take for a number or a date, such as
 * 3/8-24, have text format, so that a chosen word stays what it is.
 */
export const tableSheet = ({ headings, rows, lists }: ReadyTable): ReadySheet => ({
  rows: [[...headings], ...rows],
  columnWidths: headings.map((heading) => Math.max(9, heading.length + ROOM_FOR_BUTTON)),
  styles: lists.filter(({ values }) => values.some((value) => /\d/.test(value))).map(({ area }) => ({ ...area, style: { format: "@" } })),
});

/** Characters that the button of a heading needs. */
const ROOM_FOR_BUTTON = 4;

/** What Excel takes as a list between quotes: 255 characters, separated by commas. */
const LONGEST_LIST = 255;

function readyTable({ name, headings, rows: given, lists = [] }: NewTable): ReadyTable {
  if (!isTableName(name)) throw new Error(`No table can be named "${name}".`);
  const different = new Set(headings.map((heading) => heading.trim().toLowerCase()));
  if (headings.length === 0 || different.has("") || different.size < headings.length) throw new Error(`The headings of a table ${name} must be there and differ.`);
  const [, ...rows] = rectangular([headings, ...(given.length > 0 ? given : [[]])]);
  if (rows.some((row) => row.length > headings.length)) throw new Error(`A row of the new table ${name} is longer than its headings.`);
  return { name, headings, rows, lists: lists.map(({ column, values }) => choiceList({ name, headings, column, values, rows: rows.length })) };
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
  return { area: { row: 1, column: index, rows: rows + LIST_ROWS_TO_SPARE, columns: 1 }, values };
}
