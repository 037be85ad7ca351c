/** What each answer about cars looks like: its columns, in the order frozen in docs/functions.md. */
import type { CarRow } from "../catalogue/parse-cars";
import type { BillLine } from "../core/bill";
import type { Car } from "../core/car";
import type { Catalogue } from "../core/catalogue";
import type { Finding } from "../core/finding";
import { kitName } from "../core/kits";
import { madeOnce, madeOnceFor } from "../core/made-once";
import { inFeet, metres } from "../core/quantity";
import type { CarReport } from "../core/report";
import type { Run, RunEnd } from "../core/runs";
import { nominalTube } from "../core/tube";
import { laidOut, length, longLength, rounded, text, type Column } from "./columns";
import type { CellValue } from "../workbook/document";
import { carRows, reportedRow, type ReportedRow } from "./reports";

/** A row about a car, or the problem that stands in its place. */
export type OfCar<T> = { readonly label: string; readonly problem: string; readonly item?: T | undefined };

const carColumn = { heading: () => "Car", cell: ({ label }: OfCar<unknown>) => label };
const of = <T, V>(read: (item: T) => V) => ({ item }: OfCar<T>): V | undefined => (item === undefined ? undefined : read(item));

const adapters = ({ fitting }: RunEnd): string => (fitting?.fits ? fitting.adapters.map(({ adapter }) => adapter.name).join("; ") : "");

const endColumns = (side: "A" | "B", end: (run: Run) => RunEnd): Column<OfCar<Run>>[] => [
  text(`Nut ${side}`, of((run) => { const { fitting } = end(run); return fitting?.fits ? fitting.nut.name : ""; })),
  text(`Flare ${side}`, of((run) => { const { fitting } = end(run); return fitting?.fits ? fitting.flare : ""; })),
  text(`Adapters ${side}`, of((run) => adapters(end(run)))),
];

export const runColumns: readonly Column<OfCar<Run>>[] = [
  carColumn,
  text("Run", of((run) => run.number)),
  text("From", of((run) => run.joint.from.instance.label)),
  text("From port", of((run) => run.joint.from.port.name)),
  text("To", of((run) => run.joint.to.instance.label)),
  text("To port", of((run) => run.joint.to.port.name)),
  text("Circuit", of((run) => run.circuit)),
  length("Tube", of((run) => run.tube && nominalTube(run.tube))),
  length("Wall", of((run) => run.stock?.wall)),
  text("Material", of((run) => run.material)),
  length("Length", of((run) => run.length)),
  text("Basis", of((run) => run.basis)),
  ...endColumns("A", ({ a }) => a),
  ...endColumns("B", ({ b }) => b),
  text("Problem", ({ item, problem }) => (item ? item.problems.join("; ") : problem)),
  length("Cut", of(({ cut }) => cut)),
  text("Bends", of(({ bends }) => bends?.line?.bends.length)),
  length("Bend radius", of(({ bends }) => (bends?.line?.bends.length ? bends.radius : undefined))),
];

export const checkColumns: readonly Column<OfCar<Finding>>[] = [
  carColumn,
  text("Code", of(({ code }) => code)),
  text("Severity", of(({ severity, standing }) => (standing === "open" ? severity : standing))),
  text("Place", of(({ place }) => place)),
  text("What happens", of(({ says }) => says)),
  text("Cure", of(({ cure }) => cure)),
  text("Basis", of(({ basis, because }) => (because === undefined ? basis : `${basis}; ${because}`))),
];

const count = (report: CarReport, severity: Finding["severity"]): number => report.findings.filter((one) => one.severity === severity && one.standing === "open").length;

export const verdictColumns: readonly Column<OfCar<CarReport>>[] = [
  carColumn,
  text("Verdict", ({ item }) => item?.verdict ?? "decide"),
  text("Stop", of((report) => count(report, "stop"))),
  text("Decide", of((report) => count(report, "decide"))),
  text("Watch", of((report) => count(report, "watch"))),
  text("Open questions", of((report) => report.questions.length)),
  text("Worst code", ({ item }) => (item ? (item.findings.find(({ severity, standing }) => severity !== "note" && standing === "open")?.code ?? "") : "data-missing")),
  text("Runs", of((report) => report.runs.length)),
  longLength("Tube", of((report) => metres(report.runs.reduce((sum, run) => sum + (run.length ?? 0), 0)))),
  text("Price", of((report) => report.price)),
  text("Assumed", ({ item, problem }) => (item ? assumed(item) : problem)),
  text("Kit", of(({ kit }) => kit.chosen && kitName(kit.chosen))),
  text("Kit cost", of(({ kit }) => kit.chosen?.cost)),
];

/** What VERDICT answers. It is asked of whole sheets at every edit, so the row of a car that was read before is laid out once. */
export function verdictTable(catalogue: Catalogue, headings: readonly unknown[][], rows: readonly unknown[][]): CellValue[][] {
  const { units } = catalogue.settings;
  const laidOutRows = verdictRows(catalogue);
  const cellsOf = (row: CarRow): CellValue[] => laidOut(verdictColumns, eachOf([reportedRow(catalogue, row)], (report) => [report]), units)[1] ?? [];
  const each = carRows(headings, rows).map((row) => (row.car && row.errors.length === 0 ? laidOutRows(row.car, () => cellsOf(row)) : cellsOf(row)));
  return [...laidOut(verdictColumns, [], units), ...each];
}

const verdictRows = madeOnce((_: Catalogue) => madeOnceFor<Car, CellValue[]>());

function assumed(report: CarReport): string {
  const unmeasured = report.runs.filter((run) => run.length === undefined).length;
  const estimated = report.runs.filter((run) => run.basis === "estimated").length;
  const unpriced = report.bill.filter(({ from, amount }) => from === "needed" && amount === undefined).map(({ part }) => part);
  return [
    ...report.assumptions,
    ...(estimated > 0 ? [`${estimated} of ${report.runs.length} lengths estimated over the places between`] : []),
    ...(unmeasured > 0 ? [`tube leaves out ${unmeasured} ${unmeasured === 1 ? "run" : "runs"} without a length`] : []),
    ...(unpriced.length > 0 ? [`no price for ${unpriced.join(", ")}`] : []),
  ].join("; ");
}

export const partColumns: readonly Column<OfCar<BillLine>>[] = [
  carColumn,
  text("Part", of(({ part }) => part)),
  text("Kind", of(({ kind }) => kind)),
  text("Description", of(({ description }) => description)),
  { heading: () => "Quantity", cell: ({ item }, units) => (item ? quantityOf(item, units) : "") },
  { heading: () => "Unit", cell: ({ item }, units) => (!item ? "" : "count" in item.quantity ? "each" : units === "us" ? "ft" : "m") },
  { heading: () => "Price", cell: ({ item }, units) => (item?.price === undefined ? "" : rounded("count" in item.quantity ? item.price : priceOfLength(item.price, units), 4)) },
  text("Amount", of(({ amount }) => amount)),
  text("From", of(({ from }) => from)),
  text("Problem", ({ item, problem }) => (item ? "" : problem)),
];

const quantityOf = ({ quantity }: BillLine, units: "us" | "metric"): number =>
  "count" in quantity ? quantity.count : rounded(units === "us" ? inFeet(quantity.length) : quantity.length, 3);

const priceOfLength = (perMetre: number, units: "us" | "metric"): number => (units === "us" ? perMetre / inFeet(metres(1)) : perMetre);

/** One row for each item of a car; a row that names no car keeps its place with the problem said. */
export const eachOf = <T>(rows: readonly ReportedRow[], items: (report: CarReport) => readonly T[]): OfCar<T>[] =>
  rows.flatMap(({ label, problem, report }): OfCar<T>[] => (report ? items(report).map((item) => ({ label, problem: "", item })) : [{ label, problem }]));

/** Runs of a car; with none to list, one row says what keeps them open. */
export function runsOrProblem({ label, problem, report }: ReportedRow): OfCar<Run>[] {
  if (!report) return [{ label, problem }];
  if (report.runs.length > 0) return report.runs.map((item) => ({ label, problem: "", item }));
  const open = report.findings.filter(({ code }) => code === "data-missing" || code === "unknown-part" || code === "unknown-platform").map(({ says }) => says);
  return [{ label, problem: open.join(" ") || "no hard line in this scope" }];
}

