/** Plans cuts beside the page, so that the page never waits for a plan. */
import { planCuts } from "../../core/cutplan/cut-plan";
import type { PlanAnswer, PlanRequest } from "./cut-planner";

onmessage = ({ data: { number, job, effort } }: MessageEvent<PlanRequest>): void => {
  const answer = (said: Omit<PlanAnswer, "number">): void => { postMessage({ number, ...said } satisfies PlanAnswer); };
  try {
    answer({ plan: planCuts(job, effort) });
  } catch (error) {
    answer({ fault: error instanceof Error ? error.message : String(error) });
  }
};
