/** What REORDER answers: one row a tube of the rack. */
import { readTableLeavingOutCells, type ReadRow } from "../catalogue/read-table";
import { rowUnderHeadings, sayTableError } from "../catalogue/table-error";
import { tubeTable } from "../catalogue/tables/tube";
import { usageTable } from "../catalogue/tables/stock-history";
import { textOf } from "../catalogue/cell";
import { nameKey, type Catalogue } from "../core/catalogue";
import { groupBy } from "../core/group-by";
import { feet, inFeet, metres, type Metres } from "../core/quantity";
import { stockPolicy } from "../core/stock/stock-policy";
import type { MeanAndVariance } from "../core/stock/pipeline";
import { reorderTube, type TubeReorder } from "../core/stock/tube-reorder";
import { recordedWeeks, type RecordedWeeks } from "../core/stock/usage-history";
import type { TubeUsed } from "../core/stock-history";
import type { TubeStock } from "../core/tube";
import type { CellValue } from "../workbook/document";
import { badValue } from "./answer";
import { laidOut, longLength, rounded, text, type Column, type Units } from "./columns";
import { readDay, readPerRow, type Rows } from "./stock-arguments";

interface ReorderRow {
  readonly name: string;
  readonly found: TubeReorder | undefined;
  readonly problem: string;
}

const of = <V>(read: (found: TubeReorder) => V) => ({ found }: ReorderRow): V | undefined => found && read(found);
const advised = (read: (found: NonNullable<TubeReorder["advice"]>) => number | undefined, digits: number) => ({ found }: ReorderRow): number | undefined => {
  const value = found?.advice && read(found.advice);
  return value === undefined ? undefined : rounded(value, digits);
};
const share = (value: number | undefined): number | undefined => (value === undefined ? undefined : value * 100);

export const reorderColumns: readonly Column<ReorderRow>[] = [
  text("Tube", ({ name }) => name),
  { heading: (units) => `Rate (${units === "us" ? "ft" : "m"}/week)`, cell: ({ found }, units) => (found ? rounded(inUnits(metres(found.forecast.rate), units), 3) : "") },
  text("Method", of(({ forecast }) => forecast.method)),
  text("Class", of(({ forecast }) => forecast.pattern.demandClass ?? "not known")),
  text("Weeks of history", of(({ forecast }) => forecast.periods)),
  text("On hand", of(({ tube }) => tube.onHand ?? 0)),
  text("On order", of(({ tube }) => tube.onOrder ?? 0)),
  text("Weeks of cover", advised(({ weeksOfCover }) => weeksOfCover, 1)),
  longLength("Reorder point", ({ found }) => found?.advice && metres(found.advice.reorderPoint)),
  longLength("Safety stock", ({ found }) => found?.advice && metres(found.advice.safetyStock)),
  text("Lot", advised(({ lot }) => lot, 3)),
  text("Order today", advised(({ orderToday }) => orderToday, 3)),
  text("Order cost", advised(({ orderCost }) => orderCost, 2)),
  text("Stock-out", of(({ stockOut }) => stockOut)),
  text("Cycle service (%)", advised(({ figures }) => share(figures?.cycleService), 2)),
  text("Fill rate (%)", advised(({ figures }) => share(figures?.fillRate), 2)),
  text("Cost a year", advised(({ yearlyCost }) => yearlyCost, 2)),
  text("Assumed", of(({ assumed }) => assumed.join("; "))),
  text("Problem", ({ problem }) => problem),
];

export interface ReorderArguments {
  readonly tube: { readonly headings: Rows; readonly rows: Rows };
  readonly usage: { readonly headings: Rows; readonly rows: Rows };
  readonly today: unknown;
  /** Over lead time and review: in ft, and ft² (m and m² in a metric workbook). */
  readonly pipelineMean: unknown;
  readonly pipelineVariance: unknown;
}

/** One row for each row of tube that is not blank, bad ones keeping their place; a last row for each row of usage that was not counted. */
export function reorderTable(catalogue: Catalogue, { tube, usage, today, pipelineMean, pipelineVariance }: ReorderArguments): CellValue[][] {
  const day = readDay("today", today);
  const read = readTableLeavingOutCells(tubeTable, { headings: tube.headings[0] ?? [], rows: tube.rows }, tubeTable.name);
  const history = readTableLeavingOutCells(usageTable, { headings: usage.headings[0] ?? [], rows: usage.rows }, usageTable.name);
  const headingErrors = [...read.headingErrors, ...history.headingErrors];
  if (headingErrors.length > 0) throw badValue(headingErrors.map(sayTableError).join(" "));
  const used = history.rows.flatMap(({ value }) => (value ? [value] : []));
  const earliest = used.reduce((least, { date }) => Math.min(least, date), Infinity);
  const recorded: RecordedWeeks = used.length > 0 ? recordedWeeks(earliest, day) : { today: day, weeks: 0 };
  const quotes = pipelineOf(catalogue.settings.units, { mean: readPerRow("pipeline mean", pipelineMean, tube.rows.length), variance: readPerRow("variance", pipelineVariance, tube.rows.length) });
  const reader: RowReader = { catalogue, recorded, quotes, byTube: groupBy(used, (one) => nameKey(one.tube)) };
  const rows = read.rows.map((row) => rowOf(reader, row));
  return laidOut(reorderColumns, [...rows, ...notCounted(history.rows, { known: read.rows, day })], catalogue.settings.units);
}

interface RowReader {
  readonly catalogue: Catalogue;
  readonly recorded: RecordedWeeks;
  /** By place in the range, 0 for the first row. */
  readonly quotes: (index: number) => MeanAndVariance | undefined;
  readonly byTube: ReadonlyMap<string, readonly TubeUsed[]>;
}

function rowOf({ catalogue, recorded, quotes, byTube }: RowReader, { row, value, errors, cells }: ReadRow<TubeStock>): ReorderRow {
  const unread = errors.map(sayTableError);
  if (!value) return { name: textOf(cells["name"]) ?? rowUnderHeadings(row), found: undefined, problem: unread.join(" ") };
  const key = nameKey(value.name);
  const used = (byTube.get(key) ?? []).map(({ date, length }) => ({ date, quantity: length }));
  const breaks = catalogue.priceBreaks.filter(({ tube }) => nameKey(tube) === key);
  const found = reorderTube(value, { used, recorded, pipeline: quotes(row - 1) }, breaks, stockPolicy(catalogue.settings));
  return { name: value.name, found, problem: [...unread, ...found.problems].join(" ") };
}

/** Rows of usage that could not be read, name no tube given here, or lie after today. */
function notCounted(usage: readonly ReadRow<TubeUsed>[], { known, day }: { readonly known: readonly ReadRow<TubeStock>[]; readonly day: number }): ReorderRow[] {
  const names = new Set(known.map(({ cells }) => nameKey(textOf(cells["name"]) ?? "")));
  const unread = usage.flatMap(({ value, errors }) => (value ? [] : errors.map(sayTableError)));
  const after = usage.filter(({ value }) => value !== undefined && value.date > day).length;
  const strange = new Set(usage.flatMap(({ value }) => (value && !names.has(nameKey(value.tube)) ? [value.tube] : [])));
  const says = [
    ...unread,
    ...(after > 0 ? [`${after} ${after === 1 ? "row" : "rows"} of Usage after today left out`] : []),
    ...(strange.size > 0 && known.length > 1 ? [`Usage of tube that is not in these rows: ${[...strange].join(", ")}`] : []),
  ];
  return says.map((problem) => ({ name: "", found: undefined, problem }));
}

/** A mean without a variance is certain; a variance without a mean is refused. */
function pipelineOf(units: Units, { mean, variance }: { readonly mean: readonly number[] | undefined; readonly variance: readonly number[] | undefined }): RowReader["quotes"] {
  if (mean === undefined && variance !== undefined) throw badValue("pipeline mean: read nothing beside a variance; accepted: a number of 0 or more.");
  const metre = units === "us" ? feet(1) : 1;
  return (index) => (mean === undefined ? undefined : { mean: (mean[index] ?? 0) * metre, variance: (variance?.[index] ?? 0) * metre ** 2 });
}

const inUnits = (length: Metres, units: Units): number => (units === "us" ? inFeet(length) : length);
