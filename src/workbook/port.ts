/** What the panel needs of a spreadsheet. Each adapter keeps the contract in test/workbook/contract.ts. */
import type { CellArea, CellStyle, CellValue, PageSetup, SheetPicture } from "./document";

export type { CellArea, CellStyle, CellValue, PageSetup, SheetPicture };

/** A table as it stands now. A blank cell is "", a cell with an error is the text of the error ("#N/A"). */
export interface TableContent {
  readonly name: string;
  /** Name of the sheet the table stands on. */
  readonly sheet: string;
  readonly headings: readonly CellValue[];
  /** As many cells in each row as there are headings. */
  readonly rows: readonly (readonly CellValue[])[];
  /** The sheet's own number of the first row under the headings; left out, the headings stand in row 1. */
  readonly firstRow?: number;
}

/** The sheet's own number of a row of a table: the one way in which the panel names rows. @param row 0 is the first row under the headings */
export const sheetRow = ({ firstRow = 2 }: Pick<TableContent, "firstRow">, row: number): number => firstRow + row;

/** One cell of a table. */
export interface TablePlace {
  readonly table: string;
  /** 0 is the first row under the headings. */
  readonly row: number;
  /** A heading, without regard to case. */
  readonly column: string;
}

/** Of a row that is not there any more, and so has no number. */
export const sayRowGone = (table: string): string => `That row is not in the table ${table} any more.`;

/** Where a heading stands among those of a table; -1 when it is none of them. */
export const headingIndex = (headings: readonly CellValue[], column: string): number => headings.findIndex((heading) => String(heading).trim().toLowerCase() === column.trim().toLowerCase());

/** The cells of a row that is to be added, in the order of a table's headings. */
export function newRowCells(table: string, headings: readonly CellValue[], cells: Readonly<Record<string, CellValue>>): CellValue[] {
  const row: CellValue[] = headings.map(() => "");
  for (const [column, value] of Object.entries(cells)) {
    const index = headingIndex(headings, column);
    if (index < 0) throw new Error(`The table ${table} has no column ${column}.`);
    row[index] = value;
  }
  return row;
}

/** A formula in a cell of a new sheet; row and column count from 0. */
export interface FormulaCell {
  readonly row: number;
  readonly column: number;
  /** As it is typed, with "=" and structured references; one that answers with a table fills the cells beside and below too. */
  readonly formula: string;
}

/** What writeSheet writes. */
export interface SheetContent {
  readonly rows: readonly (readonly CellValue[])[];
  /** The only cells that are formulas: a text in `rows` stays text, whatever it begins with. */
  readonly formulas?: readonly FormulaCell[];
  /** Rows from the top that stay in sight while the rest scrolls. */
  readonly frozenRows?: number;
  /** In characters, from column A on; undefined is the default width. */
  readonly columnWidths?: readonly (number | undefined)[];
  /** In points, from the first row on; undefined is as high as the text needs, which no spreadsheet knows of merged cells. */
  readonly rowHeights?: readonly (number | undefined)[];
  /** Of two for the same cell, what the later one says wins. */
  readonly styles?: readonly CellStyleRange[];
  /** Of merged cells only the first may hold a value. */
  readonly merges?: readonly CellArea[];
  readonly pictures?: readonly SheetPicture[];
  readonly page?: PageSetup;
}

/** A style for all cells of an area; "top" and "bottom" are rules above its first row and below its last. */
export interface CellStyleRange extends CellArea {
  readonly style: CellStyle;
}

/** A table to be made. Names and headings as in a TableContent; short rows are filled up with blanks. */
export interface NewTable {
  readonly name: string;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
  /** Lists to choose from in a column, which warn of another text and let it pass. */
  readonly lists?: readonly { readonly column: string; readonly values: readonly string[] }[];
  /** Headings of columns that hold day numbers, shown as days. */
  readonly days?: readonly string[];
}

/** A sheet to be made beside tables, whose formulas may name them. */
export interface NewSheet {
  readonly name: string;
  readonly content: SheetContent;
}

/** A formula that is there and is to become another; left alone when the cell holds anything else than `from`. */
export interface FormulaChange {
  readonly sheet: string;
  readonly address: string;
  /** As `formulaAt` answered it. */
  readonly from: string;
  readonly to: string;
}

/** What the user's last edits touched; it may name more tables than really changed, never fewer. */
export interface WorkbookChange {
  readonly tables: readonly string[];
}

export interface WorkbookPort {
  /** Names of all sheets, hidden ones too. */
  sheetNames(): Promise<readonly string[]>;
  /** Names of all tables, in no promised order. */
  tableNames(): Promise<readonly string[]>;
  /** @returns undefined when there is no such table; names are matched without regard to case */
  readTable(name: string): Promise<TableContent | undefined>;
  /**
   * Shows the row to the user and selects it, or its one cell under a heading.
   * @param row 0 is the first row under the headings
   * @param column a heading, without regard to case; one the table lacks selects the whole row
   * @throws Error with a plain sentence when there is no such table or row
   */
  selectTableRow(table: string, row: number, column?: string): Promise<void>;
  /**
   * Writes one cell of a table, as one undo step, and tells of it like an edit by the user. Text stays text.
   * @returns what the cell held, so that it can be put back
   * @throws Error with a plain sentence when there is no such table, row or column; then nothing is written
   */
  writeTableCell(place: TablePlace, value: CellValue): Promise<CellValue>;
  /**
   * Adds one row at the end of a table, as one undo step, and tells of it like an edit by the user. Text stays text.
   * @param cells by heading, without regard to case; columns that are not named stay blank
   * @returns which row it is; 0 is the first row under the headings
   * @throws Error with a plain sentence when there is no such table or column, or no room under the table; then nothing is written
   */
  appendTableRow(table: string, cells: Readonly<Record<string, CellValue>>): Promise<number>;
  /**
   * Writes values, and how they look and print, into a new sheet, as one undo step, and never into one that is there.
   * Text stays text, "3/16", "007" and "=1+1" too; short rows are filled up with blanks.
   * @param content plain rows are a sheet without any looks
   * @returns the name the sheet got: "Quote 2" when "Quote" was taken
   * @throws RangeError when a number is not finite
   */
  writeSheet(name: string, content: SheetContent | SheetContent["rows"]): Promise<string>;
  /**
   * Makes tables, each on a new sheet of its own named like it, and sheets beside them, in this order behind the sheets that
   * are there, as one undo step; shows the first and tells of the tables like an edit by the user.
   * A table without rows gets one blank row, since a table has at least one. Formulas are entered when all tables are there.
   * @param changes formulas that are there and are to name the new tables too
   * @throws Error with a plain sentence when a table's name is taken, or no table can be made of what is given; then nothing is written
   */
  writeTables(parts: readonly (NewTable | NewSheet)[], changes?: readonly FormulaChange[]): Promise<void>;
  /** The formula of a cell as it is typed; undefined when there is none or no such sheet. */
  formulaAt(sheet: string, address: string): Promise<string | undefined>;
  /** Where the user stands: the table row and column of the active cell; undefined outside tables and on a heading. */
  selection(): Promise<TablePlace | undefined>;
  /**
   * Tells where the user stands whenever the selection moves.
   * @returns stops the telling
   */
  onSelect(listener: (place: TablePlace | undefined) => void): () => void;
  /**
   * Enters a formula into the selected cell, as one undo step, and only if one cell is selected that is blank and in no table.
   * @returns the cell's address with its sheet: "Sheet1!B2"
   * @throws Error with a plain sentence otherwise; then nothing is written
   */
  insertFormula(formula: string): Promise<string>;
  /** The name of the workbook, which remembered choices are kept under. */
  workbookName(): Promise<string>;
  /**
   * Tells of edits by the user, of tables that come or go, and of recalculated tables; several quick ones arrive as one,
   * and what the port itself writes does not arrive.
   * @returns stops the telling
   */
  onChange(listener: (change: WorkbookChange) => void): () => void;
}

/** Why a formula was not entered, in words that every adapter shares. */
export const sayFormulaRefused = {
  several: "Select one blank cell first: the formula goes into the cell that is selected.",
  table: "The selected cell is in a table, where a formula that fills several rows cannot stand. Select a blank cell outside the tables.",
  filled: (address: string): string => `The selected cell ${address} is not blank, so nothing was written. Select a blank cell.`,
};
