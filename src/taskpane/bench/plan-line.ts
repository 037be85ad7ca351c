/** How far the plans of tube and cuts have come, with a way to stop them and to go on; in sight once the planning takes long. */
import { element } from "../element";
import { count, sayNumber } from "../words";
import type { KeptPlans, PlanCounts } from "./kept-plans";

export interface PlanLine {
  readonly content: HTMLElement;
  /** Says how the plans stand now. */
  readonly show: () => void;
}

/** Quicker planning is over before its words are read. */
const WORTH_TELLING_MILLISECONDS = 400;

export function planLine(plans: readonly KeptPlans[]): PlanLine {
  const text = element("span", { class: "progress__text" });
  const button = element("button", { type: "button", class: "button button--plain progress__button" });
  const content = element("div", { class: "progress", hidden: true }, text, button);
  let since: number | undefined;
  const show = (): void => {
    const counts = sumOf(plans.map((one) => one.counts()));
    if (counts.open === 0) since = undefined;
    else if (since === undefined) {
      since = performance.now();
      setTimeout(show, WORTH_TELLING_MILLISECONDS);
    }
    content.hidden = since === undefined ? counts.stopped === 0 : performance.now() - since < WORTH_TELLING_MILLISECONDS;
    text.textContent = sayPlans(counts);
    button.textContent = counts.open > 0 ? "Stop" : "Plan the rest";
  };
  button.addEventListener("click", () => {
    const { open } = sumOf(plans.map((one) => one.counts()));
    for (const one of plans) if (open > 0) one.stop(); else one.again();
    show();
  });
  return { content, show };
}

export const sayPlans = ({ wanted, open, stopped }: PlanCounts): string =>
  open > 0 ? `Planning the cuts: ${sayNumber(wanted - open - stopped)} of ${sayNumber(wanted)} …`
    : stopped === wanted ? "Stopped: no plan was made."
    : `Stopped: ${sayNumber(stopped)} of ${count(wanted, "plan")} ${stopped === 1 ? "was" : "were"} not made. The others stand.`;

const sumOf = (counts: readonly PlanCounts[]): PlanCounts =>
  counts.reduce((sum, one) => ({ wanted: sum.wanted + one.wanted, open: sum.open + one.open, stopped: sum.stopped + one.stopped }), { wanted: 0, open: 0, stopped: 0 });
