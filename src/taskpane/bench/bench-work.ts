/** What the chosen cars need at the bench, and its plan once there is one. */
import { benchJobs, cuttingJobOf, onTheBench, type BenchJobs, type BenchPlan } from "../../core/bench-plan";
import type { Catalogue } from "../../core/catalogue";
import { madeUpRuns } from "../../core/kits";
import type { CarLine } from "../../workbook/workbook-reports";
import type { CutPlanner } from "./cut-planner";

export interface BenchWork extends BenchJobs {
  /** Runs that come bent, in a set. */
  readonly preBent: number;
  /** Cars with an open stop: what is sawn for them may be waste. */
  readonly held: readonly string[];
}

/** Runs that a chosen set brings bent are not sawn. */
export function benchWork({ settings, tube }: Catalogue, lines: readonly CarLine[]): BenchWork {
  const cars = lines.flatMap(({ name, report }) => (report ? [{ car: name, runs: madeUpRuns(report), all: report.runs.length }] : []));
  const held = lines.filter(({ report, verdict }) => verdict === "stop" && report && madeUpRuns(report).length > 0).map(({ name }) => name);
  return { ...benchJobs(cars, settings, tube), held, preBent: cars.reduce((sum, { runs, all }) => sum + all - runs.length, 0) };
}

export const planBench = async ({ jobs }: BenchWork, planner: CutPlanner): Promise<readonly BenchPlan[]> => {
  const plans: BenchPlan[] = [];
  for (const job of jobs) plans.push(onTheBench(job, await planner(cuttingJobOf(job))));
  return plans;
};
