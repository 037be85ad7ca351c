/** Faults of a car's row, as the core and its findings say them. */
import type { CarRow } from "../catalogue/parse-cars";
import { sayFault, type TableError } from "../catalogue/table-error";
import { finding, type Finding } from "../core/finding";
import type { RowProblem } from "../core/report";

export const problemsOfRow = (row: CarRow): readonly RowProblem[] => row.errors.map(problemOf);

/** Findings of a row that names no car, so that no report can be made. */
export const findingsOfRow = (row: CarRow): readonly Finding[] =>
  problemsOfRow(row).map(({ code, column, sentence }) => finding(code, { place: `Cars: ${column}`, seen: sentence }));

const problemOf = (error: TableError): RowProblem => ({ code: error.code === undefined || error.code === "not-used" ? "data-out-of-range" : error.code, column: error.column ?? "", sentence: sayFault(error) });
