/** The sheets that show what the worksheet functions answer: one list for a workbook that is set up and for the demo. */
import { sheetPrefix } from "./address";
import { DAY_FORMAT } from "./new-table";
import type { CellStyleRange, NewSheet } from "./port";
import { KEY_SHEET, type AnswerName } from "./set-up-groups";

interface AnswerSheet {
  readonly name: AnswerName;
  readonly title: string;
  /** @param table the name in this workbook of one of our tables */
  readonly formula: (table: (name: string) => string, key: string) => string;
  /** Of the answer's columns, in characters. */
  readonly widths: readonly number[];
  /** The answer's column of days, from 0; such a sheet has the day that it takes for today in B2. */
  readonly days?: number;
}

/** A sheet for each question a shop has every day. */
const answerSheetList: readonly AnswerSheet[] = [
  ofCars({ name: "Verdict", title: "One row a car: does it hold, and what is still open", widths: [12, 10, 8, 9, 9, 17, 26, 8, 11, 10, 60] }, "VERDICT"),
  ofCars({ name: "Runs", title: "Every hard line of every car, with a nut and a flare at each end", widths: [12, 6, 14, 12, 14, 12, 9, 10, 10, 14, 12, 12, 18, 22, 30, 18, 22, 30, 50, 10, 8, 16] }, "RUNS"),
  ofCars({ name: "Flags", title: "What will not work, car by car, and what cures it", widths: [12, 26, 11, 34, 90, 70, 40] }, "CHECK"),
  ofCars({ name: "Tubing", title: "Tube to cut for all cars, by material and size", widths: [16, 12, 12, 12, 14, 12, 28, 14, 10, 8, 10, 11, 12, 24, 10, 8] }, "TUBING"),
  {
    name: "Demand", title: "Tube that the open quotes will need, by week", days: 2, widths: [18, 12, 12, 12, 15, 9, 70],
    formula: (table, key) => `=PLUMB.DEMAND(${headed(table("Pipeline"))},${headed(table("Cars"))},${key},B2,8)`,
  },
  {
    name: "Reorder", title: "What to order today, tube by tube", days: 13, widths: [18, 17, 10, 14, 20, 11, 12, 18, 20, 19, 7, 14, 13, 13, 20, 15, 14, 50, 40],
    formula: (table, key) => `=PLUMB.REORDER(${headed(table("Tube"))},${headed(table("Usage"))},${key},B2)`,
  },
];

function ofCars(sheet: Pick<AnswerSheet, "name" | "title" | "widths">, id: string): AnswerSheet {
  return { ...sheet, formula: (table, key) => `=PLUMB.${id}(${headed(table("Cars"))},${key})` };
}

const headed = (table: string): string => `${table}[#Headers],${table}`;

/** A cell of another sheet as formulas name it. */
export const cellOf = (sheet: string, address: string): string => sheetPrefix(sheet) + address;

export interface AnswerWish {
  readonly sheets: readonly AnswerName[];
  /** The name in this workbook of one of our tables. */
  readonly table: (name: string) => string;
  /** The cell of the catalogue's key: "Catalog!B2". */
  readonly key: string;
  /** The spreadsheet's day number, typed in, so that the workbook does not change by itself. */
  readonly today: number;
}

export const answerSheets = ({ sheets, table, key, today }: AnswerWish): readonly NewSheet[] =>
  answerSheetList.filter(({ name }) => sheets.includes(name)).map((sheet) => (sheet.days === undefined ? plainSheet(sheet, sheet.formula(table, key)) : dayedSheet(sheet, sheet.formula(table, key), today)));

/** A title, and the formula from the third row on, so that it has the sheet to itself to fill. */
function plainSheet({ name, title, widths }: AnswerSheet, formula: string): NewSheet {
  return { name, content: { rows: [[title]], formulas: [{ row: 2, column: 0, formula }], frozenRows: 3, columnWidths: widths, styles: [bold(0, 1), bold(2, widths.length)] } };
}

/** The same under the day that the formula takes for today. */
function dayedSheet({ name, title, widths, days = 0 }: AnswerSheet, formula: string, today: number): NewSheet {
  const style = { format: DAY_FORMAT };
  const styles = [bold(0, 1), { row: 1, column: 1, rows: 1, columns: 1, style }, bold(3, widths.length), { row: 4, column: days, rows: DAY_ROWS, columns: 1, style }];
  return { name, content: { rows: [[title], ["Today", today]], formulas: [{ row: 3, column: 0, formula }], frozenRows: 4, columnWidths: widths, styles } };
}

const bold = (row: number, columns: number): CellStyleRange => ({ row, column: 0, rows: 1, columns, style: { bold: true } });

/** So many rows of an answer show their days as days. */
const DAY_ROWS = 80;

/**
 * The catalogue's key: every other formula takes this cell, and so follows when a price or a port changes.
 * @param tables names of the tables to be read
 */
export const catalogSheet = (tables: readonly string[]): NewSheet => ({
  name: KEY_SHEET,
  content: {
    rows: [["The catalogue, read from the tables behind this sheet"], ["Catalogue key"]],
    formulas: [{ row: 1, column: 1, formula: `=PLUMB.CATALOG(${tables.map((name) => `${name}[#All]`).join(",")})` }],
    columnWidths: [18, 44], styles: [bold(0, 1)],
  },
});

/** The formula of a key that reads these tables too; undefined when it is no formula of the catalogue alone. */
export function readingAlso(formula: string, tables: readonly string[]): string | undefined {
  const [, inside] = /^=PLUMB\.CATALOG\((.*)\)$/i.exec(formula) ?? [];
  if (inside === undefined) return undefined;
  const missing = tables.filter((name) => !new RegExp(`(^|,)\\s*${name.replaceAll(".", "\\.")}(\\[#All\\])?\\s*(,|$)`, "i").test(inside));
  return `=PLUMB.CATALOG(${[inside, ...missing.map((name) => `${name}[#All]`)].join(",")})`;
}
