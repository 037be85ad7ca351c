/** What DEMAND answers: the tube that open quotes will need, by tube and week. */
import { readTableLeavingOutCells } from "../catalogue/read-table";
import { sayTableError } from "../catalogue/table-error";
import { pipelineTable } from "../catalogue/tables/stock-history";
import { nameKey, type Catalogue } from "../core/catalogue";
import { groupBy } from "../core/group-by";
import { feet, metres, type Metres } from "../core/quantity";
import { cumulated } from "../core/stock/lattice";
import { pipelineByWeek, pipelineDistribution, timedNeeds, weekSpan, type MeanAndVariance } from "../core/stock/pipeline";
import { tubeNeeds, type TubeNeed } from "../core/stock/tube-needs";
import type { CellValue } from "../workbook/document";
import { badValue } from "./answer";
import { readNumber } from "./arguments";
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

interface DemandChanceRow {
  readonly tube: string;
  readonly week?: number;
  readonly starts?: number;
  readonly need?: Metres;
  readonly chance?: number;
  readonly noMore?: number;
  readonly problem: string;
}

export const demandChanceColumns: readonly Column<DemandChanceRow>[] = [
  text("Tube", ({ tube }) => tube),
  text("Week", ({ week }) => week),
  text("Starts", ({ starts }) => starts),
  longLength("Need", ({ need }) => need),
  text("Chance", ({ chance }) => chance),
  text("Chance of no more", ({ noMore }) => noMore),
  text("Problem", ({ problem }) => problem),
];

export interface PipelineArguments {
  readonly quotes: { readonly headings: Rows; readonly rows: Rows };
  readonly cars: { readonly headings: Rows; readonly rows: Rows };
  readonly firstWeek: unknown;
  readonly weeks: unknown;
  /** Of the exact distribution, in ft (m in a metric workbook); left out, mean and deviation are answered. */
  readonly step: unknown;
}

/** One row a tube and week, weeks without demand too, or one a length that can come about; then one row for each quote that was not counted in full or had a blank taken for something. */
export function demandTable(catalogue: Catalogue, { quotes, cars, firstWeek, weeks, step }: PipelineArguments): CellValue[][] {
  const first = readDay("first week", firstWeek);
  const count = readWeeks(weeks);
  const { units } = catalogue.settings;
  const [asked, metre] = [readNumber("step", step), units === "us" ? feet(1) : 1];
  const read = readTableLeavingOutCells(pipelineTable, { headings: quotes.headings[0] ?? [], rows: quotes.rows }, pipelineTable.name);
  if (read.headingErrors.length > 0) throw badValue(read.headingErrors.map(sayTableError).join(" "));
  const reports = new Map(reportRows(catalogue, cars.headings, cars.rows).flatMap(({ label, report }) => (report ? [[nameKey(label), report] as const] : [])));
  const { needs, problems, assumed } = tubeNeeds(read.rows.flatMap(({ value }) => (value ? [value] : [])), reports, catalogue.settings);
  const unread = read.rows.flatMap(({ errors }) => errors.map(sayTableError));
  const remarks = [...unread, ...[...problems, ...assumed].map(({ quote, says }) => `quote ${quote}: ${says}`)].map((problem) => ({ tube: "", problem }));
  const byTube = [...groupBy(needs, ({ tube }) => tube)].sort(([a], [b]) => (a < b ? -1 : 1));
  if (asked === undefined) return laidOut(demandColumns, [...byTube.flatMap(([tube, some]) => weekRows(tube, some, { first, count })), ...remarks], units);
  return laidOut(demandChanceColumns, [...notTooMany(byTube.flatMap(([tube, some]) => chanceRows(tube, some, { first, count, step: asked * metre }))), ...remarks], units);
}

interface Weeks {
  readonly first: number;
  readonly count: number;
}

const weekRows = (tube: string, needs: readonly TubeNeed[], { first, count }: Weeks): DemandRow[] =>
  pipelineByWeek(needs, first, count).map((demand, week) => {
    const span = weekSpan(first, week);
    return { tube, week: week + 1, starts: span.from, demand, quotes: timedNeeds(needs, span).length, problem: "" };
  });

/** A sheet would take more, but nobody reads them, and the step can be larger. */
const MOST_ROWS = 20_000;

/** Lengths that cannot come about have no row. */
const chanceRows = (tube: string, needs: readonly TubeNeed[], { first, count, step }: Weeks & { readonly step: number }): DemandChanceRow[] =>
  Array.from({ length: count }, (_, week) => weekSpan(first, week)).flatMap((span, week) => {
    const timed = timedNeeds(needs, span);
    if (timed.reduce((sum, { quantity }) => sum + quantity, 0) > MOST_ROWS * step) throw stepTooSmall();
    const { chances } = pipelineDistribution(timed, step);
    const noMore = cumulated(chances);
    return [...chances].flatMap((chance, steps) => (chance > 0 ? [{ tube, week: week + 1, starts: span.from, need: metres(steps * step), chance, noMore: noMore[steps] ?? 1, problem: "" }] : []));
  });

function notTooMany(rows: DemandChanceRow[]): DemandChanceRow[] {
  if (rows.length > MOST_ROWS) throw stepTooSmall();
  return rows;
}

const stepTooSmall = () => badValue(`step: this one gives more than ${MOST_ROWS} rows; take a larger one, or fewer weeks.`);
