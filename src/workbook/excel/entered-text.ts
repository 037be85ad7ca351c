/** How a value is entered so that Excel keeps it as it is. */
import type { CellValue } from "../port";

/** Excel shows a longer text in a cell of text format as a row of number signs. */
const LONGEST_TEXT_FORMAT = 255;

/**
 * Text format keeps Excel from reading "3/16" as a date; an apostrophe in front does it where that format is of no use.
 * @param format the number format the cell is to have if it holds no text
 */
export const formatOf = (cell: CellValue, format = "General"): string => (typeof cell === "string" && cell !== "" ? (needsApostrophe(cell) ? "General" : "@") : format);

export const enteredAs = (cell: CellValue): CellValue => (typeof cell === "string" && needsApostrophe(cell) ? `'${cell}` : cell);

const needsApostrophe = (text: string): boolean => text.startsWith("'") || text.length > LONGEST_TEXT_FORMAT;
