/** Cut plans: reads pieces and stock, has them planned, lays out the total, the patterns and what could not be planned. */
import { isBlank, sayCell } from "../catalogue/cell";
import { planCuts, type CutPlan, type CutProblem, type Effort, type PieceToCut, type PlannedPattern, type StockToCut } from "../core/cutplan/cut-plan";
import { inInches, inMillimetres, metres, type Metres } from "../core/quantity";
import type { CellValue } from "../workbook/document";
import { badValue } from "./answer";
import { readNumber, readUnit } from "./arguments";
import { laidOut, length, rounded, text, type Column, type Units } from "./columns";
import { inUnit, numberIn, rowsOfRange, type LengthUnitName, type Range, type RangeRow } from "./range-rows";

export interface CutPlanArguments {
  readonly pieces: Range;
  readonly stock: Range;
  readonly kerf: unknown;
  readonly trim: unknown;
  readonly unit: unknown;
}

const PIECE_FIELDS = [
  { field: "length", headings: ["Length", "Cut", "Cut length"] },
  { field: "count", headings: ["Count", "Quantity", "Pieces"] },
  { field: "name", headings: ["Piece", "Name", "Run"] },
];
const STOCK_FIELDS = [
  { field: "length", headings: ["Length"] },
  { field: "price", headings: ["Price", "Cost"] },
  { field: "count", headings: ["Count", "Quantity"] },
  { field: "name", headings: ["Stock", "Tube", "Name"] },
];

/** The plan as a table; the first row under the headings is its total. */
export function cutPlanTable({ pieces, stock, kerf, trim, unit }: CutPlanArguments, effort: Effort = {}): CellValue[][] {
  const named = readUnit(unit);
  const units: Units = named === "in" ? "us" : "metric";
  const job = { pieces: readPieces(pieces, named), stocks: readStock(stock, named), kerf: readSmall("kerf", kerf, named), endTrim: readSmall("trim", trim, named) };
  if (job.pieces.length === 0) throw badValue("pieces: no row holds a length.");
  if (job.stocks.length === 0) throw badValue("stock: no row holds a length.");
  const plan = planCuts(job, effort);
  const rows: CutPlanRow[] = [{ plan }, ...plan.patterns.map((pattern, index) => ({ plan, pattern, number: index + 1 })), ...plan.problems.map((problem) => ({ plan, problem }))];
  return laidOut(cutPlanColumns, rows.map((row) => ({ ...row, units })), units);
}

/** Total, pattern or problem. */
export interface CutPlanRow {
  readonly plan: CutPlan;
  readonly pattern?: PlannedPattern;
  readonly number?: number;
  readonly problem?: CutProblem;
  readonly units?: Units;
}

const ofPattern = <V>(read: (pattern: PlannedPattern) => V) => ({ pattern }: CutPlanRow): V | undefined => pattern && read(pattern);
const isTotal = ({ pattern, problem }: CutPlanRow): boolean => !pattern && !problem;
const ofTotal = <V>(read: (plan: CutPlan) => V) => (row: CutPlanRow): V | undefined => (isTotal(row) ? read(row.plan) : undefined);

export const cutPlanColumns: readonly Column<CutPlanRow>[] = [
  text("Pattern", (row) => row.number ?? (isTotal(row) ? "total" : "not planned")),
  text("Stock", (row) => row.pattern?.stock.name ?? row.problem?.item),
  length("Stock length", ofPattern(({ stock }) => stock.length)),
  text("Times", (row) => row.pattern?.times ?? (isTotal(row) ? sumOf(row.plan, ({ times }) => times) : undefined)),
  text("Cuts", (row) => row.pattern && sayCuts(row.pattern, row.units ?? "us")),
  length("Used", (row) => row.pattern?.used ?? (isTotal(row) ? metres(sumOf(row.plan, ({ used, times }) => used * times)) : undefined)),
  length("Left over", (row) => row.pattern?.left ?? (isTotal(row) ? metres(sumOf(row.plan, ({ left, times }) => left * times)) : undefined)),
  text("Cost", (row) => priced(row.plan, row.pattern?.cost ?? (isTotal(row) ? row.plan.cost : undefined))),
  text("Lower bound", ofTotal((plan) => priced(plan, plan.lowerBound))),
  text("Status", ofTotal(sayStatus)),
  text("Pieces", (row) => row.pattern && sayPieces(row.pattern)),
  text("Problem", (row) => row.problem?.says ?? (isTotal(row) ? sayTotalProblem(row.plan) : undefined)),
];

/** `proved`: no plan costs less. */
export function sayStatus({ proved, gap }: CutPlan): string {
  return proved ? "proved" : `gap ${(gap * 100).toFixed(2)} %`;
}

function sayTotalProblem({ problems, objective, rounded: wasRounded }: CutPlan): string {
  return [
    ...(problems.length > 0 ? [`${problems.length} not planned as asked, named below`] : []),
    ...(objective === "length" ? ["no stock has a price: the plan uses the least length of stock"] : []),
    ...(wasRounded ? ["lengths rounded to the safe side by up to 0.1 mm"] : []),
  ].join("; ");
}

const sumOf = ({ patterns }: CutPlan, of: (pattern: PlannedPattern) => number): number => patterns.reduce((sum, pattern) => sum + of(pattern), 0);

/** Nothing where stock has no price: a length is no cost. */
const priced = ({ objective }: CutPlan, cost: number | undefined): number | undefined => (cost === undefined || objective === "length" ? undefined : rounded(cost, 4));

/** `2 × 48.5 + 1 × 22`, in sawing order. */
const sayCuts = ({ cuts }: PlannedPattern, units: Units): string => cuts.map(({ count, length: size }) => `${count} × ${shownLength(size, units)}`).join(" + ");
const shownLength = (size: Metres, units: Units): number => (units === "us" ? rounded(inInches(size), 4) : rounded(inMillimetres(size), 2));
const sayPieces = ({ cuts }: PlannedPattern): string => cuts.map(({ names }) => names.join(" or ")).join(" + ");

function readPieces(range: Range, unit: LengthUnitName): PieceToCut[] {
  const rows = rowsOfRange("pieces", range, PIECE_FIELDS);
  return rows.map((row) => ({ name: nameOf(row, "piece"), length: lengthIn(row, unit), count: row.cell("count") === undefined ? 1 : numberIn(row.cell("count")) }));
}

function readStock(range: Range, unit: LengthUnitName): StockToCut[] {
  const rows = rowsOfRange("stock", range, STOCK_FIELDS);
  const priced = rows.some((row) => !isBlank(row.cell("price")));
  return rows.map((row) => {
    const count = isBlank(row.cell("count")) ? undefined : numberIn(row.cell("count"));
    // Counted tube without a price, beside tube that has one, is what lies on the rack already: it costs nothing more.
    const ours = priced && count !== undefined ? 0 : undefined;
    return { name: nameOf(row, "stock"), length: lengthIn(row, unit), price: isBlank(row.cell("price")) ? ours : numberIn(row.cell("price")), count };
  });
}

const lengthIn = (row: RangeRow, unit: LengthUnitName): Metres => (row.toMetres("length") ?? inUnit(unit))(numberIn(row.cell("length")));

const nameOf = (row: RangeRow, kind: string): string => (isBlank(row.cell("name")) ? `${kind} ${row.number}` : sayCell(row.cell("name")));

/** A kerf or a trim; left out it is none. */
const readSmall = (name: string, value: unknown, unit: LengthUnitName): Metres => {
  const number = readNumber(name, value);
  const length = number === undefined ? metres(0) : inUnit(unit)(number);
  if (length > LARGEST_LOSS) throw badValue(`${name}: read ${String(value)} ${unit}; accepted: up to 10 m.`);
  return length;
};

/** No saw and no bench loses more [m]. */
const LARGEST_LOSS = 10;
