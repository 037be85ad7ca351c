/** Rows on their way into a new sheet. */
import type { CellValue } from "./document";

/**
 * The rows as one rectangle, short ones filled up with blanks.
 * @throws RangeError when a number is not finite: a spreadsheet would store it as a blank or an error
 */
export function rectangular(rows: readonly (readonly CellValue[])[]): CellValue[][] {
  const wrong = rows.flat().find((cell) => typeof cell === "number" && !Number.isFinite(cell));
  if (wrong !== undefined) throw new RangeError(`A sheet cannot hold the number ${String(wrong)}.`);
  const width = Math.max(0, ...rows.map((row) => row.length));
  return rows.map((row) => [...row, ...Array.from({ length: width - row.length }, () => "")]);
}
