/** Cut plans of what is in sight, made once for each content; what goes out of sight is forgotten, and what is newer is not kept waiting by what is old. */
import type { CutPlan, CuttingJob } from "../../core/cutplan/cut-plan";
import type { CutPlanner, PlanEffort } from "./cut-planner";

/** A plan, or the fault of ours that kept it from being made. */
export type PlanOutcome = { readonly plan: CutPlan } | { readonly fault: string };

export interface WantedPlan {
  /** Two wanted plans of one key are the same plan. */
  readonly key: string;
  readonly job: CuttingJob;
  readonly effort?: PlanEffort;
}

export interface KeptPlans {
  readonly outcome: (key: string) => PlanOutcome | undefined;
  /** @param planned called after each plan that comes, until others are wanted */
  want(plans: readonly WantedPlan[], planned: () => void): void;
}

export function keptPlans(planner: CutPlanner): KeptPlans {
  let outcomes = new Map<string, PlanOutcome>();
  let turn = 0;
  const planAll = async (plans: readonly WantedPlan[], planned: () => void): Promise<void> => {
    turn += 1;
    const mine = turn;
    for (const { key, job, effort } of plans.filter(({ key: wanted }) => !outcomes.has(wanted))) {
      const outcome = await planner(job, effort).then((plan): PlanOutcome => ({ plan }), (fault: unknown): PlanOutcome => ({ fault: String(fault) }));
      if (mine !== turn) return;
      outcomes.set(key, outcome);
      planned();
    }
  };
  return {
    outcome: (key) => outcomes.get(key),
    want: (plans, planned) => {
      outcomes = new Map([...outcomes].filter(([key]) => plans.some((one) => one.key === key)));
      void planAll(plans, planned);
    },
  };
}
