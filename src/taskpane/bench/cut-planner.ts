/** Has cut plans made in a worker of the page, one after the other, until they are stopped; a host that allows no worker gets short searches between which the page can draw. */
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

/** Why there is no plan: the reader stopped it. */
export class PlanStopped extends Error {
  override readonly name = "PlanStopped";
}

/** Rejects when the planner itself fails, which would be a fault of ours, and with PlanStopped once `stop` is signalled. */
export type CutPlanner = (job: CuttingJob, effort?: PlanEffort, stop?: AbortSignal) => Promise<CutPlan>;

/** One for the whole page: the worker starts with the first plan that is asked for. */
export const planCutsBeside: CutPlanner = (...asked) => {
  planner ??= plannerOf(startWorker);
  return planner(...asked);
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

/** @param start makes a worker, again after each stop; where it makes none, plans are made on the page itself */
export function plannerOf(start: () => Worker | undefined): CutPlanner {
  const waiting = new Map<number, Waiting>();
  let next = 0;
  const settle = (number: number, act: (one: Waiting) => void): void => {
    const one = waiting.get(number);
    waiting.delete(number);
    if (one) act(one);
  };
  const here = (number: number, { job, effort }: Waiting): void => {
    planHere(job, effort).then((plan) => { settle(number, ({ resolve }) => { resolve(plan); }); }, (fault: unknown) => { settle(number, ({ reject }) => { reject(fault as Error); }); });
  };
  const ask = (number: number, one: Waiting): void => {
    if (working) working.postMessage({ number, job: one.job, effort: one.effort } satisfies PlanRequest);
    else here(number, one);
  };
  const begin = (): Worker | undefined => heard(start(), {
    answer: ({ number, plan, fault }) => { settle(number, ({ resolve, reject }) => { if (plan) resolve(plan); else reject(new Error(fault)); }); },
    fail: (worker) => {
      if (worker !== working) return;
      working = undefined;
      for (const [number, one] of waiting) here(number, one);
    },
  });
  let working = begin();
  /** A worker hears nothing while it searches, so it is ended; what others wait for goes to the next one. */
  const stopOne = (number: number): void => {
    if (!waiting.has(number)) return;
    settle(number, ({ reject }) => { reject(new PlanStopped()); });
    if (!working) return;
    working.terminate();
    working = begin();
    for (const [other, one] of waiting) ask(other, one);
  };
  return (job, effort = {}, stop = undefined) => new Promise((resolve, reject) => {
    const number = (next += 1);
    const one = { job, effort, resolve, reject };
    waiting.set(number, one);
    stop?.addEventListener("abort", () => { stopOne(number); }, { once: true });
    ask(number, one);
  });
}

interface Ears {
  readonly answer: (answer: PlanAnswer) => void;
  readonly fail: (worker: Worker) => void;
}

/** A worker that cannot be loaded tells so by an event, long after it was started. */
function heard(worker: Worker | undefined, { answer, fail }: Ears): Worker | undefined {
  if (!worker) return undefined;
  worker.onmessage = ({ data }: MessageEvent<PlanAnswer>) => { answer(data); };
  worker.onerror = () => { fail(worker); };
  return worker;
}

/** A plan that is found at once, or the best within a slice of time that nobody notices. */
const SLICE = { work: 500_000, milliseconds: 30 };

async function planHere(job: CuttingJob, { mostWork = SLICE.work }: PlanEffort): Promise<CutPlan> {
  await new Promise((resolve) => { setTimeout(resolve, 0); });
  const end = performance.now() + SLICE.milliseconds;
  return planCuts(job, { mostWork: Math.min(mostWork, SLICE.work), shouldStop: () => performance.now() > end });
}
