import type { CuttingJob } from "../../../src/core/cutplan/cut-plan";
import { planCuts } from "../../../src/core/cutplan/cut-plan";
import { inches } from "../../../src/core/quantity";
import { plannerOf, PlanStopped, type PlanAnswer, type PlanRequest } from "../../../src/taskpane/bench/cut-planner";

const job: CuttingJob = { pieces: [{ name: "a", length: inches(20), count: 3 }], stocks: [{ name: "S", length: inches(60), price: 6 }], kerf: inches(0.0625), endTrim: inches(0) };

/** A worker whose answers the test gives. */
class StandIn {
  onmessage: ((event: { readonly data: PlanAnswer }) => void) | null = null;
  onerror: (() => void) | null = null;
  readonly asked: PlanRequest[] = [];
  isEnded = false;
  terminate(): void { this.isEnded = true; }
  postMessage(request: PlanRequest): void { this.asked.push(request); }
  answer(answer: PlanAnswer): void { this.onmessage?.({ data: answer }); }
}

/** The first worker, and after a stop the next. */
const over = (...workers: StandIn[]) => plannerOf(() => workers.shift() as unknown as Worker);

test("each plan goes to the job that asked for it, in whatever order the answers come", async () => {
  const worker = new StandIn();
  const plan = over(worker);
  const [first, second] = [plan(job), plan({ ...job, kerf: inches(0.125) })];
  const answers = worker.asked.map(({ number, job: of }) => ({ number, plan: planCuts(of) }));
  for (const answer of [...answers].reverse()) worker.answer(answer);
  expect([await first, await second]).toEqual(answers.map(({ plan: made }) => made));
});

test("a fault in the worker is told", async () => {
  const worker = new StandIn();
  const plan = over(worker)(job);
  worker.answer({ number: worker.asked[0]?.number ?? 0, fault: "the cut plan costs 1, below its bound 2" });
  await expect(plan).rejects.toThrow("below its bound");
});

test("where no worker can be loaded, what waited and what comes is planned on the page", async () => {
  const worker = new StandIn();
  const plan = over(worker);
  const waiting = plan(job);
  worker.onerror?.();
  const later = plan(job);
  expect([(await waiting).cost, (await later).cost, worker.asked.length]).toEqual([12, 12, 1]);
});

// 3 × 20 in with cuts are 60 3/16 in: two sticks of 60 in, at 6 each.
test("without workers plans are made on the page", async () => expect((await plannerOf(() => undefined)(job)).cost).toBe(12));

test("a plan that is stopped ends its worker, and what others wait for and what comes later goes to a new one", async () => {
  const [first, second] = [new StandIn(), new StandIn()];
  const plan = over(first, second);
  const stop = new AbortController();
  const stopped = plan(job, {}, stop.signal);
  const waiting = plan(job);
  stop.abort();
  await expect(stopped).rejects.toThrow(PlanStopped);
  const later = plan(job);
  expect([first.isEnded, second.isEnded, second.asked.length]).toEqual([true, false, 2]);
  for (const { number, job: of } of second.asked) second.answer({ number, plan: planCuts(of) });
  expect([(await waiting).cost, (await later).cost]).toEqual([12, 12]);
});

test("a stop that comes after the plan ends nothing", async () => {
  const worker = new StandIn();
  const stop = new AbortController();
  const plan = over(worker)(job, {}, stop.signal);
  worker.answer({ number: worker.asked[0]?.number ?? 0, plan: planCuts(job) });
  await plan;
  stop.abort();
  expect(worker.isEnded).toBe(false);
});

test("a plan that is being made on the page can be stopped too", async () => {
  const stop = new AbortController();
  const plan = plannerOf(() => undefined)(job, {}, stop.signal);
  stop.abort();
  await expect(plan).rejects.toThrow(PlanStopped);
});

test("a worker that was ended and fails afterwards does not take the new one's work to the page", async () => {
  const [first, second] = [new StandIn(), new StandIn()];
  const plan = over(first, second);
  const stop = new AbortController();
  const stopped = plan(job, {}, stop.signal);
  stop.abort();
  await expect(stopped).rejects.toThrow(PlanStopped);
  first.onerror?.();
  void plan(job);
  expect(second.asked).toHaveLength(1);
});
