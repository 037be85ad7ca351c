/** What is wrong with a table the user typed, said so that the cell can be found and mended. */

export type TableErrorCode = "data-missing" | "data-out-of-range" | "data-duplicate" | "not-used";

/** True for a row that is told of and otherwise passed over: everything else of its table holds. */
export const isPassedOver = ({ code }: TableError): boolean => code === "not-used";

export interface TableError {
  /** The table's name, or which range it was when its headings name no table. */
  readonly table: string;
  /** 1 is the first row under the headings; undefined when the headings are at fault. */
  readonly row?: number | undefined;
  readonly column?: string | undefined;
  /** What the cell or heading says; empty when it is blank. */
  readonly read: string;
  readonly accepted: string;
  /** The row that has already what this one has. */
  readonly earlier?: { readonly table: string; readonly row: number } | undefined;
  readonly code?: TableErrorCode | undefined;
}

/** How a row of a table is named. @param row 1 is the first row under the headings */
export type SayRow = (table: string, row: number) => string;

/** A row of a range whose place in the sheet is not known. */
export const rowUnderHeadings = (row: number): string => `row ${row} under the headings`;

/** One plain sentence, with rows named so: `Ports row 4, Thread: read "9/16-19x"; accepted: a thread such as 3/8-24.` */
export const tableErrorSayer = (sayRow: SayRow) => ({ table, row, column, read, accepted, earlier }: TableError): string => {
  const where = row === undefined ? " headings" : ` ${sayRow(table, row)}`;
  const before = earlier ? ` (${earlier.table} ${sayRow(earlier.table, earlier.row)} has it)` : "";
  return `${table}${where}${column === undefined ? "" : `, ${column}`}: ${sayRead(read)}; accepted: ${accepted}${before}.`;
};

/** The same where all that is known is the range: `Ports row 3 under the headings, Thread: …` */
export const sayTableError = tableErrorSayer((_, row) => rowUnderHeadings(row));

/** The same of a row that is named beside it: `Cars, Valves: read nothing; accepted: …` */
export const sayFault = ({ table, column, read, accepted }: TableError): string => `${table}${column === undefined ? "" : `, ${column}`}: ${sayRead(read)}; accepted: ${accepted}.`;

const sayRead = (read: string): string => (read === "" ? "read nothing" : `read "${quoted(read)}"`);

/** Enough to find the cell by; a cell may hold 32,767 characters. */
const LONGEST_QUOTE = 80;

const quoted = (text: string): string => (text.length <= LONGEST_QUOTE ? text : `${text.slice(0, LONGEST_QUOTE)}…`);
