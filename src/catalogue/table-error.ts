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
  readonly code?: TableErrorCode | undefined;
}

/** One plain sentence: `Ports row 3, Thread: read "9/16-19x"; accepted: a thread such as 3/8-24.` */
export function sayTableError(error: TableError): string {
  const row = error.row === undefined ? " headings" : ` row ${error.row}`;
  const column = error.column === undefined ? "" : `, ${error.column}`;
  const read = error.read === "" ? "nothing" : `"${quoted(error.read)}"`;
  return `${error.table}${row}${column}: read ${read}; accepted: ${error.accepted}.`;
}

/** Enough to find the cell by; a cell may hold 32,767 characters. */
const LONGEST_QUOTE = 80;

const quoted = (text: string): string => (text.length <= LONGEST_QUOTE ? text : `${text.slice(0, LONGEST_QUOTE)}…`);
