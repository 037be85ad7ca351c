/** Has cut plans made in a worker of the page, one after the other; a host that allows none gets short searches between which the page can draw. */
import { planCuts, type CutPlan, type CuttingJob, type Effort } from "../../core/cutplan/cut-plan";

export interface PlanRequest {
  readonly number: number;
  readonly job: CuttingJob;
  readonly effort: PlanEffort;
}

export type PlanEffort = Pick<Effort, "mostWork">;

export interface PlanAnswer {
  readonly number: number;
  readonly plan?: CutPlan;
  /** Why there is no plan: a fault of ours. */
  readonly fault?: string;
}

/** Rejects when the planner itself fails, which would be a fault of ours. */
export type CutPlanner = (job: CuttingJob, effort?: PlanEffort) => Promise<CutPlan>;

/** One for the whole page: the worker starts with the first plan that is asked for. */
export const planCutsBeside: CutPlanner = (job, effort) => {
  planner ??= plannerOf(startWorker());
  return planner(job, effort);
};

let planner: CutPlanner | undefined;

function startWorker(): Worker | undefined {
  try {
    return new Worker(new URL("./cut-plan-worker.ts", import.meta.url), { name: "cut-plans" });
  } catch {
    return undefined; // no workers here, or none allowed
  }
}

interface Waiting {
  readonly job: CuttingJob;
  readonly effort: PlanEffort;
  readonly resolve: (plan: CutPlan) => void;
  readonly reject: (fault: Error) => void;
}

/** @param worker undefined plans on the page itself */
export function plannerOf(worker: Worker | undefined): CutPlanner {
  const waiting = new Map<number, Waiting>();
  let [next, working] = [0, worker];
  const settle = (number: number, act: (one: Waiting) => void): void => {
    const one = waiting.get(number);
    waiting.delete(number);
    if (one) act(one);
  };
  const here = (number: number): void => { settle(number, ({ job, effort, resolve, reject }) => { planHere(job, effort).then(resolve, reject); }); };
  if (working) {
    working.onmessage = ({ data: { number, plan, fault } }: MessageEvent<PlanAnswer>) => {
      settle(number, ({ resolve, reject }) => { if (plan) resolve(plan); else reject(new Error(fault)); });
    };
    // A worker that cannot be loaded tells so by an event, long after it was started.
    working.onerror = () => {
      working = undefined;
      for (const number of [...waiting.keys()]) here(number);
    };
  }
  return (job, effort = {}) => new Promise((resolve, reject) => {
    next += 1;
    waiting.set(next, { job, effort, resolve, reject });
    if (working) working.postMessage({ number: next, job, effort } satisfies PlanRequest);
    else here(next);
  });
}

/** A plan that is found at once, or the best within a slice of time that nobody notices. */
const SLICE = { work: 500_000, milliseconds: 30 };

async function planHere(job: CuttingJob, { mostWork = SLICE.work }: PlanEffort): Promise<CutPlan> {
  await new Promise((resolve) => { setTimeout(resolve, 0); });
  const end = performance.now() + SLICE.milliseconds;
  return planCuts(job, { mostWork: Math.min(mostWork, SLICE.work), shouldStop: () => performance.now() > end });
}
