/** Catalogues kept by content, and the reports made with them: the functions and the panel share them, so they cannot disagree. */
import { parseCars, type CarRow } from "../catalogue/parse-cars";
import { sayTableError } from "../catalogue/table-error";
import type { Catalogue } from "../core/catalogue";
import { reportOn, type CarReport } from "../core/report";
import { problemsOfRow } from "../workbook/row-problems";
import { badValue, notAvailable } from "./answer";

/** One row of Cars: its report, or why there is none. */
export interface ReportedRow {
  readonly label: string;
  readonly report?: CarReport | undefined;
  /** Said when the row names no car. */
  readonly problem: string;
}

const CATALOGUES_KEPT = 8;

const catalogues = new Map<string, Catalogue>();

/**
 * Keeps a catalogue under its key; the eight last used stay.
 * @returns the one kept: of two with the same content the first, so that its reports are made once
 */
export function rememberCatalogue(catalogue: Catalogue): Catalogue {
  const kept = catalogues.get(catalogue.key) ?? catalogue;
  catalogues.delete(catalogue.key);
  catalogues.set(catalogue.key, kept);
  for (const key of [...catalogues.keys()].slice(0, -CATALOGUES_KEPT)) catalogues.delete(key);
  return kept;
}

/** @throws #N/A with the repair when the key is not known in this session */
export function catalogueFor(key: unknown): Catalogue {
  const name = typeof key === "string" ? key.trim() : "";
  const found = catalogues.get(name);
  if (!found) throw notAvailable(`${key ? `"${String(key)}" is no catalogue key known here` : "The catalogue key is blank"}: point this argument at the cell with =PLUMB.CATALOG(…), then recalculate that cell (F2, Enter) or open the Plumbline panel.`, name === "" ? undefined : name);
  return rememberCatalogue(found);
}

/** Reports on every row, one bad row never touching another. */
export const reportRows = (catalogue: Catalogue, headings: Rows, rows: Rows): ReportedRow[] => carRows(headings, rows).map((row) => reportedRow(catalogue, row));

type Rows = readonly (readonly unknown[])[];

/** @throws #VALUE! where the headings cannot be read */
export function carRows(headings: Rows, rows: Rows): readonly CarRow[] {
  const { cars, headingErrors } = parseCars(headings[0] ?? [], rows);
  if (headingErrors.length > 0) throw badValue(headingErrors.map(sayTableError).join(" "));
  return cars;
}

export const reportedRow = (catalogue: Catalogue, row: CarRow): ReportedRow => ({ label: row.name, problem: row.errors.map(sayTableError).join(" "), report: reportOnRow(catalogue, row) });

/** The report on one parsed row. */
export const reportOnRow = (catalogue: Catalogue, row: CarRow): CarReport | undefined => row.car && reportOn(catalogue, row.car, problemsOfRow(row));
