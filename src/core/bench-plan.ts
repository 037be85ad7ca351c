/** The bench: which pieces of tube the runs of some cars need, and from which length of the rack each is sawn, in sawing order. */
import type { CutPlan, CutProblem, CuttingJob, Effort, PieceToCut, StockToCut } from "./cutplan/cut-plan";
import { planCuts } from "./cutplan/cut-plan";
import { groupBy } from "./group-by";
import { metres, type Metres } from "./quantity";
import type { Run } from "./runs";
import type { Settings } from "./settings";
import { sameTube, tubeKey, type Material, type TubeStock } from "./tube";
import { sawnLength } from "./allowance";

export interface RunsOfOneCar {
  readonly car: string;
  readonly runs: readonly Run[];
}

/** A run on its way to the saw. */
export interface BenchPiece {
  readonly car: string;
  readonly run: Run;
  /** Flares and trim of both ends in it; the saw's own width is not. */
  readonly length: Metres;
}

/** All pieces of one material, size and wall, and what the rack has for them. */
export interface BenchJob {
  readonly material: Material;
  readonly outsideDiameter: Metres;
  readonly wall: Metres;
  readonly pieces: readonly BenchPiece[];
  readonly stocks: readonly StockToCut[];
  readonly kerf: Metres;
  /** Stock of the rack that is not counted on, with the reason. */
  readonly problems: readonly CutProblem[];
}

export interface BenchJobs {
  readonly jobs: readonly BenchJob[];
  /** Runs that cannot be sawn yet: no length, no tube or none on the rack. */
  readonly leftOut: readonly { readonly car: string; readonly run: Run }[];
}

export interface BenchCut {
  readonly piece: BenchPiece;
  /** From the end of the stick. */
  readonly from: Metres;
  readonly to: Metres;
}

/** One length of stock. */
export interface BenchStick {
  readonly stock: StockToCut;
  /** In sawing order, the longest first. */
  readonly cuts: readonly BenchCut[];
  /** Where the last cut ends; what lies behind it stays over. */
  readonly used: Metres;
  readonly left: Metres;
}

export interface BenchPlan {
  readonly job: BenchJob;
  /** The fullest sticks of the most used patterns first. */
  readonly sticks: readonly BenchStick[];
  readonly plan: CutPlan;
}

type SawableRun = Run & { readonly length: Metres; readonly stock: TubeStock };

const isSawable = (run: Run): run is SawableRun => run.length !== undefined && run.stock !== undefined;

/** Sorts the runs into one job for each material, size and wall, by name of the material, then by size. */
export function benchJobs(cars: readonly RunsOfOneCar[], settings: Settings, rack: readonly TubeStock[]): BenchJobs {
  const all = cars.flatMap(({ car, runs }) => runs.map((run) => ({ car, run })));
  const sawable = all.flatMap(({ car, run }) => (isSawable(run) ? [{ car, run }] : []));
  const groups = [...groupBy(sawable, ({ run: { stock } }) => `${stock.material}|${tubeKey(stock.outsideDiameter)}|${stock.wall}`).values()];
  const jobs = groups.map((group) => jobOf(group, settings, rack));
  return { jobs: jobs.sort((a, b) => (a.material < b.material ? -1 : a.material > b.material ? 1 : a.outsideDiameter - b.outsideDiameter || a.wall - b.wall)), leftOut: all.filter(({ run }) => !isSawable(run)) };
}

function jobOf(group: readonly { readonly car: string; readonly run: SawableRun }[], settings: Settings, rack: readonly TubeStock[]): BenchJob {
  const [{ run: { stock } }] = group as [(typeof group)[number]];
  const { material, outsideDiameter, wall } = stock;
  const alike = rack.filter((one) => one.material === material && sameTube(one.outsideDiameter, outsideDiameter) && Math.abs(one.wall - wall) < SAME_WALL);
  const uncounted = alike.filter(({ form, onHand }) => form === "offcut" && onHand === undefined);
  return {
    material, outsideDiameter, wall, kerf: settings.sawKerf,
    pieces: group.map(({ car, run }) => ({ car, run, length: sawnLength(run.length, settings) })),
    stocks: alike.filter((one) => !uncounted.includes(one)).flatMap(stockToCut),
    problems: uncounted.map(({ name }) => ({ item: name, says: "an offcut without a number on hand: left out" })),
  };
}

const SAME_WALL = 1e-6;

/** Sticks and coils can be bought in any number; offcuts are there as counted and cost nothing more. */
function stockToCut({ name, form, length, price, onHand }: TubeStock): StockToCut[] {
  if (length === undefined) return [];
  return [form === "offcut" ? { name, length, price: price ?? 0, count: onHand } : { name, length, price }];
}

/** The job as the planner takes it: pieces of one length together under one name. */
export function cuttingJobOf({ pieces, stocks, kerf }: BenchJob): CuttingJob {
  const lengths = [...groupBy(pieces, lengthKey)].map(([name, of]): PieceToCut => ({ name, length: (of[0] as BenchPiece).length, count: of.length }));
  return { pieces: lengths, stocks, kerf, endTrim: metres(0) };
}

/** Hundredths of a millimetre: no saw tells them apart. */
const lengthKey = ({ length }: BenchPiece): string => (length * 1e5).toFixed(0);

/** Plans a job here and now; a page that must not wait has the plan made elsewhere and calls `onTheBench`. */
export const planOnTheBench = (job: BenchJob, effort?: Effort): BenchPlan => onTheBench(job, planCuts(cuttingJobOf(job), effort));

/** Gives each cut of a plan the piece it is for, in the order of the cars. */
export function onTheBench(job: BenchJob, plan: CutPlan): BenchPlan {
  const waiting = new Map([...groupBy(job.pieces, lengthKey)].map(([name, pieces]) => [name, [...pieces].reverse()]));
  const next = (names: readonly string[]): BenchPiece | undefined => waiting.get(names.find((name) => (waiting.get(name)?.length ?? 0) > 0) ?? "")?.pop();
  const sticks = plan.patterns.flatMap(({ stock, times, cuts }) => Array.from({ length: times }, () => {
    const pieces = cuts.flatMap(({ names, count }) => Array.from({ length: count }, () => next(names))).filter((piece) => piece !== undefined);
    return stickOf(stock, pieces, job.kerf);
  }));
  const problems = plan.problems.map(({ item, says }) => ({ item: sayPieces(job.pieces, item), says }));
  return { job, sticks, plan: { ...plan, problems: [...job.problems, ...problems] } };
}

function stickOf(stock: StockToCut, pieces: readonly BenchPiece[], kerf: Metres): BenchStick {
  let at = 0;
  const cuts = pieces.map((piece): BenchCut => {
    const from = metres(at);
    at = from + piece.length + kerf;
    return { piece, from, to: metres(from + piece.length) };
  });
  const used = metres(Math.min(at, stock.length));
  return { stock, cuts, used, left: metres(stock.length - used) };
}

/** A problem of the planner names a length; the bench names the runs that need it. */
function sayPieces(pieces: readonly BenchPiece[], item: string): string {
  const keys = item.split(", ");
  const named = pieces.filter((piece) => keys.includes(lengthKey(piece))).map(({ car, run }) => `${car} run ${run.number}`);
  return named.length === 0 ? item : named.length > MOST_NAMED ? `${named.slice(0, MOST_NAMED).join(", ")} and ${named.length - MOST_NAMED} more` : named.join(", ");
}

const MOST_NAMED = 4;
