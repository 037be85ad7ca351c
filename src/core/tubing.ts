/** Tube in total: net length, allowances, what to cut and what to buy, by material, size and wall. */
import { allowanceOf } from "./allowance";
import { planCuts, type CutPlan, type CuttingJob } from "./cutplan/cut-plan";
import { groupBy } from "./group-by";
import { metres, type Kilograms, type Metres } from "./quantity";
import type { Run } from "./runs";
import type { Settings } from "./settings";
import { nominalTube, sameTube, tubeKey, type Material, type TubeStock } from "./tube";
import { tubeMass } from "./tube-mass";

export interface TubingTotal {
  /** Undefined for runs whose car does not say. */
  readonly material: Material | undefined;
  readonly outsideDiameter: Metres;
  readonly wall: Metres | undefined;
  readonly net: Metres;
  readonly allowance: Metres;
  readonly cut: Metres;
  readonly runs: number;
  /** Undefined when no listed stock is long enough for the longest piece. */
  readonly bought: Bought | undefined;
  readonly scrap: Metres | undefined;
  /** Of the net length; undefined where the wall or the material is not known. */
  readonly mass: Kilograms | undefined;
}

/** Whole pieces to buy, by a cut plan over every stock of the rack. */
export interface Bought {
  readonly lots: readonly { readonly stock: TubeStock; readonly pieces: number }[];
  /** Undefined where no stock has a price: then the least length is bought. */
  readonly cost?: number | undefined;
  /** No purchase that holds all the cuts costs less. */
  readonly leastCost?: number | undefined;
  /** How far the purchase is above the least, as a share of it; 0 when nothing better exists. */
  readonly gap: number;
}

export interface Tubing {
  readonly totals: readonly TubingTotal[];
  /** Runs left out because their tube or their length is not known. */
  readonly leftOut: readonly Run[];
}

/** A total whose purchase is still to be planned. */
export interface TubingNeed extends Omit<TubingTotal, "bought" | "scrap"> {
  /** Its plan says what to buy. */
  readonly purchase: CuttingJob;
  readonly rack: readonly TubeStock[];
}

export interface TubingNeeds {
  readonly needs: readonly TubingNeed[];
  readonly leftOut: readonly Run[];
}

/** Totals the tube of any number of cars, in order of material, size and wall. */
export function tubingOf(runs: readonly Run[], settings: Settings, rack: readonly TubeStock[]): Tubing {
  const { needs, leftOut } = tubingNeeds(runs, settings, rack);
  return { totals: needs.map((need) => boughtBy(need, planCuts(need.purchase, purchaseEffort(needs.length)))), leftOut };
}

/** The same without the purchases, for a page that has them planned elsewhere with the same effort. */
export function tubingNeeds(runs: readonly Run[], settings: Settings, rack: readonly TubeStock[]): TubingNeeds {
  const known = runs.filter((run): run is MeasuredRun => run.tube !== undefined && run.length !== undefined);
  const needs = [...groupBy(known, groupKey).values()].map((group) => needOf(group, settings, rack));
  return { needs: needs.sort(byMaterialAndSize), leftOut: runs.filter((run) => run.tube === undefined || run.length === undefined) };
}

/** Work of all the purchases together: a tenth of a second or two, so that a sheet answers at once whatever it holds. CUTPLAN and the bench look longer. */
const WORK_OF_PURCHASES = 1_600_000;
const MOST_WORK_OF_A_PURCHASE = 400_000;

/** @param purchases that are planned together, and share the work */
export const purchaseEffort = (purchases: number): { readonly mostWork: number } => ({ mostWork: Math.floor(Math.min(MOST_WORK_OF_A_PURCHASE, WORK_OF_PURCHASES / purchases)) });

type MeasuredRun = Run & { readonly tube: Metres; readonly length: Metres };

const groupKey = (run: MeasuredRun): string => `${run.material ?? ""}|${tubeKey(run.tube)}|${run.stock?.wall ?? ""}`;

function needOf(runs: readonly MeasuredRun[], settings: Settings, rack: readonly TubeStock[]): TubingNeed {
  const [first] = runs as [MeasuredRun];
  const extra = allowanceOf(settings);
  const net = metres(runs.reduce((sum, { length }) => sum + length, 0));
  const { material, stock } = first;
  const mass = material && stock && tubeMass(material, { outsideDiameter: stock.outsideDiameter, wall: stock.wall, length: net });
  const own = stockOf(first, rack);
  return {
    material, outsideDiameter: nominalTube(first.tube), wall: stock?.wall, net, allowance: metres(extra * runs.length), cut: metres(net + extra * runs.length), runs: runs.length, mass,
    rack: own, purchase: purchaseOf(runs.map(({ length }) => length + extra), own),
  };
}

const stockOf = (first: MeasuredRun, rack: readonly TubeStock[]): TubeStock[] =>
  rack.filter((stock) => stock.material === first.material && sameTube(stock.outsideDiameter, first.tube) && stock.wall === first.stock?.wall && stock.form !== "offcut");

/** Whole pieces of the rack that hold all the cuts at least cost, as far as that little work goes; each cut counts with its saw cut. The longest first, so that a plan cut short does not hang on the order of the cars. */
function purchaseOf(cuts: readonly number[], rack: readonly TubeStock[]): CuttingJob {
  const pieces = [...groupBy([...cuts].sort((a, b) => b - a), (cut) => cut.toFixed(6)).values()].map((same) => ({ name: "", length: metres(same[0] ?? 0), count: same.length }));
  const stocks = rack.flatMap(({ name, length, price }) => (length === undefined ? [] : [{ name, length, price }]));
  return { pieces, stocks, kerf: metres(0), endTrim: metres(0) };
}

/** @param plan of the need's purchase */
export function boughtBy({ purchase: _purchase, rack, ...total }: TubingNeed, plan: CutPlan): TubingTotal {
  const bought = lotsOf(plan, rack, total.runs);
  const scrap = bought && metres(bought.lots.reduce((sum, lot) => sum + lot.pieces * (lot.stock.length ?? 0), 0) - total.cut);
  return { ...total, bought, scrap };
}

function lotsOf({ patterns, cost, lowerBound, gap, objective }: CutPlan, rack: readonly TubeStock[], cuts: number): Bought | undefined {
  const planned = patterns.reduce((sum, { times, cuts: each }) => sum + times * each.reduce((all, { count }) => all + count, 0), 0);
  if (planned < cuts) return undefined;
  const lots = [...groupBy(patterns, ({ stock }) => stock.name).values()].map((same) => ({
    stock: rack.find(({ name }) => name === same[0]?.stock.name) as TubeStock, pieces: same.reduce((sum, { times }) => sum + times, 0),
  }));
  return { lots: lots.sort((a, b) => b.pieces * (b.stock.length ?? 0) - a.pieces * (a.stock.length ?? 0)), gap, ...(objective === "price" ? { cost, leastCost: lowerBound } : {}) };
}

/** Why nothing is bought. @param wall undefined when no row of Tube is of the material and size */
export function sayUnbought({ material, wall }: Pick<TubingNeed, "material" | "wall">): string {
  if (material === undefined) return "not known before the material is stated";
  return wall === undefined ? "no such tube in the table Tube" : "no length in the table Tube is long enough";
}

/** `4 × MS-3/16 stick; 1 × MS-3/16 coil`. */
export const sayLots = ({ lots }: Bought): string => lots.map(({ stock, pieces }) => `${pieces} × ${stock.name}`).join("; ");

function byMaterialAndSize(a: TubingNeed, b: TubingNeed): number {
  const [m, n] = [a.material ?? "~", b.material ?? "~"];
  return m < n ? -1 : m > n ? 1 : a.outsideDiameter - b.outsideDiameter || (a.wall ?? 0) - (b.wall ?? 0);
}
