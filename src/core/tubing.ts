/** Tube in total: net length, allowances, what to cut and what to buy, by material, size and wall. */
import { allowanceOf } from "./allowance";
import { groupBy } from "./group-by";
import { metres, type Metres } from "./quantity";
import type { Run } from "./runs";
import type { Settings } from "./settings";
import { nominalTube, sameTube, tubeKey, type Material, type TubeStock } from "./tube";
import { pricePerMetre } from "./tube-stock";

export interface TubingTotal {
  /** Undefined for runs whose car does not say. */
  readonly material: Material | undefined;
  readonly outsideDiameter: Metres;
  readonly wall: Metres | undefined;
  readonly net: Metres;
  readonly allowance: Metres;
  readonly cut: Metres;
  readonly runs: number;
  /** Whole pieces of one stock; undefined when no listed stock is long enough for the longest piece. */
  readonly bought: { readonly stock: TubeStock; readonly pieces: number } | undefined;
  readonly scrap: Metres | undefined;
}

export interface Tubing {
  readonly totals: readonly TubingTotal[];
  /** Runs left out because their tube or their length is not known. */
  readonly leftOut: readonly Run[];
}

/** Totals the tube of any number of cars, in order of material, size and wall. */
export function tubingOf(runs: readonly Run[], settings: Settings, rack: readonly TubeStock[]): Tubing {
  const known = runs.filter((run): run is MeasuredRun => run.tube !== undefined && run.length !== undefined);
  const totals = [...groupBy(known, groupKey).values()].map((group) => totalOf(group, settings, rack));
  return { totals: totals.sort(byMaterialAndSize), leftOut: runs.filter((run) => run.tube === undefined || run.length === undefined) };
}

type MeasuredRun = Run & { readonly tube: Metres; readonly length: Metres };

const groupKey = (run: MeasuredRun): string => `${run.material ?? ""}|${tubeKey(run.tube)}|${run.stock?.wall ?? ""}`;

function totalOf(runs: readonly MeasuredRun[], settings: Settings, rack: readonly TubeStock[]): TubingTotal {
  const [first] = runs as [MeasuredRun];
  const extra = allowanceOf(settings);
  const pieces = runs.map(({ length }) => length + extra);
  const net = metres(runs.reduce((sum, { length }) => sum + length, 0));
  const cut = metres(net + extra * runs.length);
  const bought = wholePieces(pieces, stockOf(first, rack));
  const scrap = bought && metres(bought.pieces * (bought.stock.length ?? 0) - cut);
  return { material: first.material, outsideDiameter: nominalTube(first.tube), wall: first.stock?.wall, net, allowance: metres(extra * runs.length), cut, runs: runs.length, bought, scrap };
}

const stockOf = (run: MeasuredRun, rack: readonly TubeStock[]): TubeStock[] =>
  rack.filter((stock) => stock.material === run.material && sameTube(stock.outsideDiameter, run.tube) && stock.wall === run.stock?.wall && stock.form !== "offcut");

/**
 * How many pieces of one stock hold all the cuts: longest first, each into the first piece with room (first-fit decreasing).
 * First-fit decreasing uses at most 11/9 of the least number of pieces, plus 6/9 (Dosa 2007); a cut plan over several stocks may do better.
 */
function wholePieces(cuts: readonly number[], rack: readonly TubeStock[]): { stock: TubeStock; pieces: number } | undefined {
  const longest = cuts.reduce((most, cut) => Math.max(most, cut), 0);
  const options = rack.flatMap((stock) => (stock.length !== undefined && stock.length >= longest ? [{ stock, length: stock.length }] : []));
  const [best] = options
    .map(({ stock, length }) => ({ stock, pieces: firstFitDecreasing(cuts, length), length }))
    .sort((a, b) => outlay(a) - outlay(b) || a.pieces * a.length - b.pieces * b.length || (a.stock.name < b.stock.name ? -1 : 1));
  return best && { stock: best.stock, pieces: best.pieces };
}

/** What so many pieces cost; with no price, the length bought decides. */
const outlay = ({ stock, pieces }: { stock: TubeStock; pieces: number }): number => (pricePerMetre(stock) === Infinity ? Number.MAX_VALUE : pieces * (stock.price ?? 0));

function firstFitDecreasing(cuts: readonly number[], length: number): number {
  const left: number[] = [];
  let [previous, index] = [NaN, 0];
  for (const cut of [...cuts].sort((a, b) => b - a)) {
    // The pieces that had no room for a cut have none for the next of the same length.
    if (cut !== previous) index = 0;
    while (index < left.length && (left[index] ?? 0) + 1e-9 < cut) index += 1;
    left[index] = (left[index] ?? length) - cut;
    previous = cut;
  }
  return left.length;
}

function byMaterialAndSize(a: TubingTotal, b: TubingTotal): number {
  const [m, n] = [a.material ?? "~", b.material ?? "~"];
  return m < n ? -1 : m > n ? 1 : a.outsideDiameter - b.outsideDiameter || (a.wall ?? 0) - (b.wall ?? 0);
}
