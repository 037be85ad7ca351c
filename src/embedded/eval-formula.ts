/** Calculates a formula in a workbook without a page, for `npm run eval` and for the tests of the documentation. */
import { type CellError, type CellValue, isCellError, type WorkbookDocument } from "../workbook/document";
import { type FunctionSet } from "./grid/functions";
import { openGrid } from "./grid/grid";
import { type GridLibrary } from "./grid/library";

export type FormulaAnswer = { readonly rows: readonly (readonly CellValue[])[] } | CellError;

/**
 * Calculates a formula in a workbook, in row 2 of a sheet of its own behind the others: T[@] is the table's row beside it.
 * @returns the rows it fills, a single value being one row of one; or the error of the formula. An error in
 *   another cell of the rows is the text of that error
 */
export const evaluateFormula = (library: GridLibrary, document: WorkbookDocument, functions: FunctionSet, formula: string): FormulaAnswer => formulaEvaluator(library, document, functions)(formula);

/** The same for formula after formula in one workbook, which is opened once. */
export function formulaEvaluator(library: GridLibrary, document: WorkbookDocument, functions: FunctionSet): (formula: string) => FormulaAnswer {
  const grid = openGrid(library, document, functions);
  const sheet = grid.writeSheet("Formula", []);
  return (formula) => {
    grid.enter(sheet, cell, formula.startsWith("=") ? formula : `=${formula}`);
    const rows = grid.results(sheet, cell);
    const first = rows[0]?.[0] ?? "";
    if (isCellError(first)) return { error: first.error, message: first.message ?? "" };
    return { rows: rows.map((row) => row.map((value) => (isCellError(value) ? value.error : value))) };
  };
}

const cell = "A2";
