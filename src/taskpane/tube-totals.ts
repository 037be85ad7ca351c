/** What the Tube view shows: tube over all cars, and which runs are not in it. */
import { madeUpRuns } from "../core/kits";
import { metres, type Metres } from "../core/quantity";
import type { Run } from "../core/runs";
import { tubeKey } from "../core/tube";
import { tubingNeeds, type TubingNeed } from "../core/tubing";
import type { CarLine, WorkbookReading } from "../workbook/workbook-reports";

/** What to buy is planned beside the page and comes later. */
export interface TubeTotal extends TubingNeed {
  readonly cars: number;
  /** Runs of the total that the set chosen for their car brings bent; with that set they need none of this tube. */
  readonly preBent: number;
  /** The part of the net length that is bridged over places between instead of measured. */
  readonly estimated: { readonly runs: number; readonly net: Metres };
}

export interface LeftOutRuns {
  readonly line: CarLine;
  readonly runs: readonly Run[];
}

export interface TubeTotals {
  readonly totals: readonly TubeTotal[];
  /** Runs without a known length or tube, by car. */
  readonly leftOut: readonly LeftOutRuns[];
}

export function tubeTotals({ cars, catalogue }: Pick<WorkbookReading, "cars" | "catalogue">): TubeTotals {
  const tubing = tubingNeeds(cars.flatMap(({ report }) => report?.runs ?? []), catalogue.settings, catalogue.tube);
  const byTube = runsByTube(cars, new Set(tubing.leftOut));
  const totals = tubing.needs.map((total) => ({ ...total, ...countsOf(byTube.get(tubeOf(total)) ?? []) }));
  const leftOut = new Set(tubing.leftOut);
  const lines = cars.map((line) => ({ line, runs: (line.report?.runs ?? []).filter((run) => leftOut.has(run)) }));
  return { totals, leftOut: lines.filter(({ runs }) => runs.length > 0) };
}

interface CountedRun {
  readonly line: CarLine;
  readonly run: Run;
  readonly isPreBent: boolean;
}

function runsByTube(cars: readonly CarLine[], leftOut: ReadonlySet<Run>): ReadonlyMap<string, readonly CountedRun[]> {
  const byTube = new Map<string, CountedRun[]>();
  for (const line of cars) {
    const sawn = new Set(line.report ? madeUpRuns(line.report) : []);
    for (const run of line.report?.runs ?? []) {
      if (run.tube === undefined || leftOut.has(run)) continue;
      const key = tubeOf({ material: run.material, outsideDiameter: run.tube, wall: run.stock?.wall });
      const group = byTube.get(key);
      const counted = { line, run, isPreBent: !sawn.has(run) };
      if (group) group.push(counted);
      else byTube.set(key, [counted]);
    }
  }
  return byTube;
}

const tubeOf = ({ material, outsideDiameter, wall }: Pick<TubingNeed, "material" | "outsideDiameter" | "wall">): string => [material, tubeKey(outsideDiameter), wall].join("|");

function countsOf(runs: readonly CountedRun[]): Pick<TubeTotal, "cars" | "preBent" | "estimated"> {
  const estimated = runs.filter(({ run }) => run.basis === "estimated");
  const net = metres(estimated.reduce((sum, { run }) => sum + (run.length ?? 0), 0));
  return { cars: new Set(runs.map(({ line }) => line)).size, preBent: runs.filter(({ isPreBent }) => isPreBent).length, estimated: { runs: estimated.length, net } };
}
