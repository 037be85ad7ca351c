/** What the panel needs of a spreadsheet. Each adapter keeps the contract in test/workbook/contract.ts. */
import type { CellValue } from "./document";

export type { CellValue };

/** A table as it stands now. A blank cell is "", a cell with an error is the text of the error ("#N/A"). */
export interface TableContent {
  readonly name: string;
  /** Name of the sheet the table stands on. */
  readonly sheet: string;
  readonly headings: readonly CellValue[];
  /** As many cells in each row as there are headings. */
  readonly rows: readonly (readonly CellValue[])[];
}

/** One cell of a table. */
export interface TablePlace {
  readonly table: string;
  /** 0 is the first row under the headings. */
  readonly row: number;
  /** A heading, without regard to case. */
  readonly column: string;
}

/** Where a heading stands among those of a table; -1 when it is none of them. */
export const headingIndex = (headings: readonly CellValue[], column: string): number => headings.findIndex((heading) => String(heading).trim().toLowerCase() === column.trim().toLowerCase());

/** What the user's last edits touched; it may name more tables than really changed, never fewer. */
export interface WorkbookChange {
  readonly tables: readonly string[];
}

export interface WorkbookPort {
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
   * Writes values into a new sheet, as one undo step, and never into one that is there.
   * Text stays text, "3/16", "007" and "=1+1" too; short rows are filled up with blanks.
   * @returns the name the sheet got: "Quote 2" when "Quote" was taken
   * @throws RangeError when a number is not finite
   */
  writeSheet(name: string, rows: readonly (readonly CellValue[])[]): Promise<string>;
  /**
   * Tells of edits by the user, of tables that come or go, and of recalculated tables; several quick ones arrive as one,
   * and what the port itself writes does not arrive.
   * @returns stops the telling
   */
  onChange(listener: (change: WorkbookChange) => void): () => void;
}
