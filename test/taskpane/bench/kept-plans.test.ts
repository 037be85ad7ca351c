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
  expect(plans.outcome("a")).toEqual({ fault: "a fault of ours" });
});

test("a stop keeps the plans that are made, says which were not, and lets them be planned later", async () => {
  const signals: (AbortSignal | undefined)[] = [];
  const answers: (() => void)[] = [];
  const planner: CutPlanner = (wanted, _, stop) => new Promise((resolve) => { signals.push(stop); answers.push(() => { resolve(planCuts(wanted)); }); });
  const plans = keptPlans(planner);
  let told = 0;
  plans.want(["a", "b", "c"].map((key, index) => ({ key, job: job(20 + index) })), () => { told += 1; });
  answers[0]?.();
  await settled();
  expect(plans.counts()).toEqual({ wanted: 3, open: 2, stopped: 0 });
  plans.stop();
  expect([signals[1]?.aborted, told, plans.outcome("a") !== undefined, plans.outcome("b"), plans.outcome("c"), plans.counts()])
    .toEqual([true, 2, true, { stopped: true }, { stopped: true }, { wanted: 3, open: 0, stopped: 2 }]);
  answers[1]?.(); // too late: nobody waits for it
  await settled();
  expect([plans.outcome("b"), signals.length]).toEqual([{ stopped: true }, 2]);
  plans.again();
  answers[2]?.();
  await settled();
  expect([plans.outcome("b"), plans.counts()]).toEqual([{ plan: planCuts(job(21)) }, { wanted: 3, open: 1, stopped: 0 }]);
});

test("what was stopped stays so while it is wanted, and other plans are made", async () => {
  const { planner, asked } = counting();
  const plans = keptPlans(planner);
  plans.want([{ key: "a", job: job(20) }], () => undefined);
  plans.stop();
  plans.want([{ key: "a", job: job(20) }, { key: "b", job: job(30) }], () => undefined);
  await settled();
  expect([plans.outcome("a"), plans.outcome("b"), asked.length]).toEqual([{ stopped: true }, { plan: planCuts(job(30)) }, 2]);
});
