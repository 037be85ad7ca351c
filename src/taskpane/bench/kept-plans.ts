/** Cut plans of what is in sight, made once for each content; what goes out of sight is forgotten, and what is newer is not kept waiting by what is old. */
import type { CutPlan, CuttingJob } from "../../core/cutplan/cut-plan";
import type { CutPlanner, PlanEffort } from "./cut-planner";

/** A plan, or why there is none: a fault of ours, or the reader stopped it. */
export type PlanOutcome = { readonly plan: CutPlan } | { readonly fault: string } | { readonly stopped: true };

export interface WantedPlan {
  /** Two wanted plans of one key are the same plan. */
  readonly key: string;
  readonly job: CuttingJob;
  readonly effort?: PlanEffort;
}

/** How many plans are wanted, still open, and stopped. */
export interface PlanCounts {
  readonly wanted: number;
  readonly open: number;
  readonly stopped: number;
}

export interface KeptPlans {
  readonly outcome: (key: string) => PlanOutcome | undefined;
  readonly counts: () => PlanCounts;
  /** @param planned called after each plan that comes, until others are wanted */
  want(plans: readonly WantedPlan[], planned: () => void): void;
  /** Plans that are made stay; those still open are not made until `again`. */
  stop(): void;
  again(): void;
}

export function keptPlans(planner: CutPlanner): KeptPlans {
  let outcomes = new Map<string, PlanOutcome>();
  let [wanted, tell]: [readonly WantedPlan[], () => void] = [[], () => undefined];
  let turn = 0;
  let asked = new AbortController();
  const planAll = async (): Promise<void> => {
    turn += 1;
    const [mine, told] = [turn, tell];
    for (const { key, job, effort } of wanted.filter((one) => !outcomes.has(one.key))) {
      asked = new AbortController();
      const outcome = await planner(job, effort, asked.signal).then((plan): PlanOutcome => ({ plan }), (fault: unknown): PlanOutcome => ({ fault: sayFault(fault) }));
      if (mine !== turn) return;
      outcomes.set(key, outcome);
      told();
    }
  };
  const keys = (): readonly string[] => [...new Set(wanted.map(({ key }) => key))];
  const stopped = (): readonly string[] => keys().filter((key) => isStopped(outcomes.get(key)));
  return {
    outcome: (key) => outcomes.get(key),
    counts: () => ({ wanted: keys().length, open: keys().filter((key) => !outcomes.has(key)).length, stopped: stopped().length }),
    want: (plans, planned) => {
      [wanted, tell] = [plans, planned];
      outcomes = new Map([...outcomes].filter(([key]) => plans.some((one) => one.key === key)));
      void planAll();
    },
    stop: () => {
      turn += 1;
      for (const key of keys()) if (!outcomes.has(key)) outcomes.set(key, { stopped: true });
      asked.abort();
      tell();
    },
    again: () => {
      for (const key of stopped()) outcomes.delete(key);
      void planAll();
      tell();
    },
  };
}

const isStopped = (outcome: PlanOutcome | undefined): boolean => outcome !== undefined && "stopped" in outcome;

const sayFault = (fault: unknown): string => (fault instanceof Error ? fault.message : String(fault));
