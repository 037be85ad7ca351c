/** What DEMAND answers: the tube that open quotes will need, by tube and week. */
import { readTableLeavingOutCells } from "../catalogue/read-table";
import { sayTableError } from "../catalogue/table-error";
import { pipelineTable } from "../catalogue/tables/stock-history";
import { nameKey, type Catalogue } from "../core/catalogue";
import { groupBy } from "../core/group-by";
import { metres } from "../core/quantity";
import { pipelineByWeek, timedNeeds, weekSpan, type MeanAndVariance } from "../core/stock/pipeline";
import { tubeNeeds, type TubeNeed } from "../core/stock/tube-needs";
import type { CellValue } from "../workbook/document";
import { badValue } from "./answer";
import { laidOut, longLength, text, type Column } from "./columns";
import { reportRows } from "./reports";
import { readDay, readWeeks, type Rows } from "./stock-arguments";

interface DemandRow {
  readonly tube: string;
  readonly week?: number;
  readonly starts?: number;
  readonly demand?: MeanAndVariance;
  /** That may fall into the week. */
  readonly quotes?: number;
  readonly problem: string;
}

export const demandColumns: readonly Column<DemandRow>[] = [
  text("Tube", ({ tube }) => tube),
  text("Week", ({ week }) => week),
  text("Starts", ({ starts }) => starts),
  longLength("Mean", ({ demand }) => demand && metres(demand.mean)),
  longLength("Deviation", ({ demand }) => demand && metres(Math.sqrt(demand.variance))),
  text("Quotes", ({ quotes }) => quotes),
  text("Problem", ({ problem }) => problem),
];

export interface PipelineArguments {
  readonly quotes: { readonly headings: Rows; readonly rows: Rows };
  readonly cars: { readonly headings: Rows; readonly rows: Rows };
  readonly firstWeek: unknown;
  readonly weeks: unknown;
}

/** One row a tube and week, weeks without demand too; then one row for each quote that was not counted in full or had a blank taken for something. */
export function demandTable(catalogue: Catalogue, { quotes, cars, firstWeek, weeks }: PipelineArguments): CellValue[][] {
  const first = readDay("first week", firstWeek);
  const count = readWeeks(weeks);
  const read = readTableLeavingOutCells(pipelineTable, { headings: quotes.headings[0] ?? [], rows: quotes.rows }, pipelineTable.name);
  if (read.headingErrors.length > 0) throw badValue(read.headingErrors.map(sayTableError).join(" "));
  const reports = new Map(reportRows(catalogue, cars.headings, cars.rows).flatMap(({ label, report }) => (report ? [[nameKey(label), report] as const] : [])));
  const { needs, problems, assumed } = tubeNeeds(read.rows.flatMap(({ value }) => (value ? [value] : [])), reports, catalogue.settings);
  const unread = read.rows.flatMap(({ errors }) => errors.map(sayTableError));
  const remarks = [...unread, ...[...problems, ...assumed].map(({ quote, says }) => `quote ${quote}: ${says}`)];
  const byWeek = [...groupBy(needs, ({ tube }) => tube)].sort(([a], [b]) => (a < b ? -1 : 1)).flatMap(([tube, some]) => weekRows(tube, some, { first, count }));
  return laidOut(demandColumns, [...byWeek, ...remarks.map((problem): DemandRow => ({ tube: "", problem }))], catalogue.settings.units);
}

const weekRows = (tube: string, needs: readonly TubeNeed[], { first, count }: { readonly first: number; readonly count: number }): DemandRow[] =>
  pipelineByWeek(needs, first, count).map((demand, week) => {
    const span = weekSpan(first, week);
    return { tube, week: week + 1, starts: span.from, demand, quotes: timedNeeds(needs, span).length, problem: "" };
  });
