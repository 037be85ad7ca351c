/** Catalogues and car reports, kept by content: the functions and the panel share them, so they cannot disagree. */
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
const REPORTS_KEPT = 200_000;

const catalogues = new Map<string, Catalogue>();
const reports = new WeakMap<Catalogue, Map<string, CarReport>>();

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
  const found = typeof key === "string" ? catalogues.get(key.trim()) : undefined;
  if (!found) throw notAvailable(`${key ? `"${String(key)}" is no catalogue key known here` : "The catalogue key is blank"}: point this argument at the cell with =PLUMB.CATALOG(…), then recalculate that cell (F2, Enter) or open the Plumbline panel.`);
  return rememberCatalogue(found);
}

/** Reports on every row, one bad row never touching another. Memoised by catalogue and content of the row. */
export function reportRows(catalogue: Catalogue, headings: readonly (readonly unknown[])[], rows: readonly (readonly unknown[])[]): ReportedRow[] {
  const parsed = parseCars(headings[0] ?? [], rows);
  if (parsed.headingErrors.length > 0) throw badValue(parsed.headingErrors.map(sayTableError).join(" "));
  return parsed.cars.map((row) => ({ label: row.name, problem: row.errors.map(sayTableError).join(" "), report: row.car && remembered(catalogue, row) }));
}

/** The report on one parsed row, made once for its content. */
export function remembered(catalogue: Catalogue, row: CarRow): CarReport | undefined {
  const { car } = row;
  if (!car) return undefined;
  const kept = reports.get(catalogue) ?? new Map<string, CarReport>();
  reports.set(catalogue, kept);
  const problems = problemsOfRow(row);
  const key = JSON.stringify([car, [...car.accepted], problems]);
  const known = kept.get(key);
  if (known) return known;
  const report = reportOn(catalogue, car, problems);
  if (kept.size >= REPORTS_KEPT) kept.clear();
  kept.set(key, report);
  return report;
}
