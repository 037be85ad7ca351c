/** The cut plan of the Tube view: one part for each material, size and wall, filled in as the plans come. */
import { cuttingJobOf, onTheBench, type BenchJob, type BenchPlan } from "../../core/bench-plan";
import type { Catalogue } from "../../core/catalogue";
import type { Settings } from "../../core/settings";
import { sayTube } from "../../core/tube";
import type { CarLine } from "../../workbook/workbook-reports";
import { element } from "../element";
import { keyedChildren, type KeyedChild } from "../keyed-children";
import { count, sayNumber, sayWall } from "../words";
import { alikeSticks, benchStrip, saySticks, type AlikeSticks } from "./bench-strip";
import { benchWork, type BenchWork } from "./bench-work";
import type { KeptPlans, PlanOutcome } from "./kept-plans";

export interface BenchSection {
  readonly content: HTMLElement;
  show(catalogue: Catalogue, lines: readonly CarLine[]): void;
}

/** @param planned told after each plan that comes */
export function benchSection(plans: KeptPlans, planned: () => void): BenchSection {
  const [note, list] = [element("p", { class: "bench__note", role: "status" }), element("div", { class: "bench__jobs" })];
  const parts = keyedChildren(list);
  return {
    content: element("section", { class: "bench", "aria-label": "Cut plan" }, element("h3", { class: "bench__heading" }, "On the bench"), note, list),
    show: (catalogue, lines) => {
      const { settings } = catalogue;
      const work = benchWork(catalogue, lines);
      const jobs = work.jobs.map((job) => ({ job, key: keyOf(job) }));
      const draw = (): void => { parts.update(jobs.map(({ key, job }) => jobPart(key, { job, outcome: plans.outcome(key), settings }))); };
      note.textContent = sayWork(work);
      plans.want(jobs.map(({ key, job }) => ({ key, job: cuttingJobOf(job) })), () => { draw(); planned(); });
      draw();
    },
  };
}

/** Two jobs of one key have one plan, for the same runs. */
const keyOf = ({ pieces, stocks, kerf, ...job }: BenchJob): string => JSON.stringify([job, stocks, kerf, pieces.map(({ car, run, length }) => [car, run.number, run.basis, length])]);

function sayWork({ jobs, leftOut, preBent }: BenchWork): string {
  return [
    ...(jobs.length === 0 ? ["No run is to be sawn."] : []),
    ...(preBent > 0 ? [`${count(preBent, "run")} ${preBent === 1 ? "comes" : "come"} bent, in sets, and ${preBent === 1 ? "is" : "are"} not sawn.`] : []),
    ...(leftOut.length > 0 ? [`${count(leftOut.length, "run")} cannot be sawn yet: length, size or tube on the rack is not known.`] : []),
  ].join(" ");
}

interface JobPart {
  readonly job: BenchJob;
  readonly outcome: PlanOutcome | undefined;
  readonly settings: Settings;
}

function jobPart(key: string, { job, outcome, settings }: JobPart): KeyedChild {
  const [plan, waits] = outcome && "plan" in outcome ? [outcome.plan, ""] : [undefined, sayNoPlan(outcome)];
  const make = (): HTMLElement => element("section", { class: "bench__job" },
    element("h4", { class: "bench__tube" }, `${sayTube(job.outsideDiameter)} ${job.material}`, element("span", { class: "tube__detail" }, `wall ${sayWall(job.wall, settings.units)}, ${count(job.pieces.length, "piece")}`)),
    ...(plan ? planParts(onTheBench(job, plan), settings) : [element("p", { class: "bench__waiting" }, waits)]));
  return { key, content: JSON.stringify([waits, settings.units, settings.currency]), make };
}

function sayNoPlan(outcome: Exclude<PlanOutcome, { readonly plan: unknown }> | undefined): string {
  if (outcome === undefined) return "Planning the cuts …";
  return "fault" in outcome ? `The cuts could not be planned, by a fault of Plumbline: ${outcome.fault}` : "No plan was made: you stopped it.";
}

/** Strips drawn before the rest is folded away. */
const MOST_STRIPS = 4;

function planParts({ sticks, plan }: BenchPlan, { units, currency }: Settings): HTMLElement[] {
  const alike = alikeSticks(sticks);
  const strips = (some: readonly AlikeSticks[]): HTMLElement => element("ol", { class: "sticks" }, ...some.map((one) => benchStrip(one, units)));
  const rest = alike.slice(MOST_STRIPS);
  const cost = plan.objective === "price" ? `${sayNumber(plan.cost, 2)} ${currency} of tube; ` : "";
  const proof = plan.proved ? "no plan costs less" : `no plan costs over ${sayNumber(plan.gap * 100, 2)} % less`;
  return [
    ...(sticks.length === 0 ? [] : [element("p", { class: "bench__take" }, element("strong", {}, saySticks(sticks)), ` — ${cost}${plan.objective === "price" ? proof : proof.replace("costs", "takes")}.`)]),
    ...(plan.problems.length > 0 ? [element("ul", { class: "bench__problems" }, ...plan.problems.map(({ item, says }) => element("li", {}, element("strong", {}, item), `: ${says}.`)))] : []),
    ...(alike.length === 0 ? [] : [strips(alike.slice(0, MOST_STRIPS))]),
    ...(rest.length > 0 ? [folded(`${count(rest.length, "more way")} of cutting, ${count(rest.reduce((sum, { length }) => sum + length, 0), "length")}`, () => strips(rest))] : []),
  ];
}

/** What is folded away is made when it is opened. */
function folded(text: string, make: () => HTMLElement): HTMLElement {
  const details = element("details", { class: "bench__rest" }, element("summary", {}, text));
  details.addEventListener("toggle", () => { if (details.open && details.childElementCount === 1) details.append(make()); });
  return details;
}
