import { planCuts, type CuttingJob } from "../../../src/core/cutplan/cut-plan";
import { inches } from "../../../src/core/quantity";
import type { CutPlanner } from "../../../src/taskpane/bench/cut-planner";
import { keptPlans } from "../../../src/taskpane/bench/kept-plans";

const job = (length: number): CuttingJob => ({ pieces: [{ name: "a", length: inches(length), count: 1 }], stocks: [{ name: "S", length: inches(60), price: 6 }], kerf: inches(0), endTrim: inches(0) });
const settled = () => new Promise((resolve) => { setTimeout(resolve, 0); });

/** Counts what it is asked for. */
function counting(): { readonly planner: CutPlanner; readonly asked: CuttingJob[] } {
  const asked: CuttingJob[] = [];
  return { asked, planner: (wanted) => { asked.push(wanted); return Promise.resolve(planCuts(wanted)); } };
}

test("a plan is made once for each key, kept while it is wanted and forgotten afterwards", async () => {
  const { planner, asked } = counting();
  const plans = keptPlans(planner);
  const [a, b] = [{ key: "a", job: job(20) }, { key: "b", job: job(30) }];
  const told: number[] = [];
  plans.want([a, b], () => { told.push(asked.length); });
  expect(plans.outcome("a")).toBeUndefined();
  await settled();
  expect([told, plans.outcome("a"), plans.outcome("b")]).toEqual([[1, 2], { plan: planCuts(a.job) }, { plan: planCuts(b.job) }]);
  plans.want([b], () => undefined);
  await settled();
  expect([asked.length, plans.outcome("a") === undefined, plans.outcome("b") === undefined]).toEqual([2, true, false]);
});

test("what is wanted later does not wait for what is wanted no more", async () => {
  const { planner, asked } = counting();
  const plans = keptPlans(planner);
  let old = 0;
  plans.want([{ key: "a", job: job(20) }, { key: "b", job: job(30) }], () => { old += 1; });
  plans.want([{ key: "c", job: job(40) }], () => undefined);
  await settled();
  expect([old, asked.map(({ pieces }) => pieces[0]?.length), plans.outcome("c") !== undefined]).toEqual([0, [inches(20), inches(40)], true]);
});

test("a fault is an outcome too", async () => {
  const plans = keptPlans(() => Promise.reject(new Error("a fault of ours")));
  plans.want([{ key: "a", job: job(20) }], () => undefined);
  await settled();
  expect(plans.outcome("a")).toEqual({ fault: "Error: a fault of ours" });
});
