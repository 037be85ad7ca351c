/** The Tube view: how much tube all cars or the chosen one take, by material, size and wall, and how it is cut on the bench. */
import { purchaseEffort } from "../core/tubing";
import type { WorkbookReading } from "../workbook/workbook-reports";
import { benchSection } from "./bench/bench-section";
import { planCutsBeside } from "./bench/cut-planner";
import { keptPlans } from "./bench/kept-plans";
import { planLine } from "./bench/plan-line";
import { carBar } from "./car-bar";
import { element } from "./element";
import { keyedChildren, type KeyedChild } from "./keyed-children";
import { tubeTables } from "./tube-tables";
import { tubeTotals, type LeftOutRuns, type TubeTotal, type TubeTotals } from "./tube-totals";
import { twoWayChoice } from "./two-way-choice";
import { showTally } from "./unparted";
import type { View, ViewActions } from "./view";
import { count, sayLength, type Units } from "./words";

export function tubeView(actions: ViewActions): View {
  const state: { reading: WorkbookReading | undefined } = { reading: undefined };
  const bar = carBar(actions);
  const summary = element("h2", { class: "tally" });
  const list = element("div", { class: "materials" });
  const parts = keyedChildren(list);
  const [purchases, cuts] = [keptPlans(planCutsBeside), keptPlans(planCutsBeside)];
  const planned = planLine([purchases, cuts]);
  const bench = benchSection(cuts, planned.show);
  const draw = (): void => {
    if (!state.reading) return;
    const { catalogue } = state.reading;
    const line = bar.show(state.reading);
    bar.content.hidden = !scope.isSecond();
    const cars = scope.isSecond() ? (line ? [line] : []) : state.reading.cars;
    const totals = tubeTotals({ catalogue, cars });
    showTally(summary, sayTotal(totals, catalogue.settings.units));
    const effort = purchaseEffort(totals.totals.length);
    const keyed = totals.totals.map((total) => ({ total, key: JSON.stringify([total.purchase, effort]) }));
    const drawTotals = (): void => {
      const shown = keyed.map(({ total, key }) => ({ total, purchase: purchases.outcome(key) }));
      parts.update([...tubeTables(shown, catalogue.settings.units), ...leftOutNotice(totals, actions)]);
    };
    purchases.want(keyed.map(({ total, key }) => ({ key, job: total.purchase, effort })), () => { drawTotals(); planned.show(); });
    drawTotals();
    bench.show(catalogue, cars);
    planned.show();
  };
  const scope = twoWayChoice("tube-scope", "Tube for", [{ value: "all", text: "All cars" }, { value: "one", text: "One car" }]);
  scope.content.addEventListener("input", draw);
  return {
    id: "tube", name: "Tube",
    content: element("div", { class: "tube-view" }, scope.content, bar.content, summary, list, bench.content, planned.content),
    show: (reading) => {
      state.reading = reading;
      draw();
    },
  };
}

function sayTotal({ totals }: TubeTotals, units: Units): string {
  if (totals.length === 0) return "No run has a length yet.";
  const cut = totals.reduce((sum, total) => sum + total.cut, 0) as TubeTotal["cut"];
  const runs = totals.reduce((sum, total) => sum + total.runs, 0);
  return `${sayLength(cut, units)} of tube to cut, in ${count(runs, "run")}.`;
}

function leftOutNotice({ leftOut }: TubeTotals, { selectRow }: ViewActions): KeyedChild[] {
  if (leftOut.length === 0) return [];
  const content = JSON.stringify(leftOut.map(({ line, runs }) => [line.table, line.row, line.name, runs.length]));
  return [{ key: "left out", content, make: () => drawLeftOut(leftOut, selectRow) }];
}

/** As many as one looks through; the flags name the missing figure of each. */
const MOST_CARS = 12;

function drawLeftOut(leftOut: readonly LeftOutRuns[], selectRow: ViewActions["selectRow"]): HTMLElement {
  const runs = leftOut.reduce((sum, one) => sum + one.runs.length, 0);
  const more = leftOut.length - MOST_CARS;
  return element("section", { class: "notice" },
    element("h3", { class: "notice__heading" }, `${count(runs, "run")} without a known length or tube ${runs === 1 ? "is" : "are"} not in these totals`),
    element("ul", { class: "notice__lines" }, ...leftOut.slice(0, MOST_CARS).map((one) => drawCar(one, selectRow))),
    more > 0 ? element("p", { class: "notice__more" }, `and ${count(more, "car")} more`) : undefined);
}

function drawCar({ line, runs }: LeftOutRuns, selectRow: ViewActions["selectRow"]): HTMLElement {
  const button = element("button", { type: "button", class: "link" }, line.name);
  button.addEventListener("click", () => { selectRow(line.table, line.row); });
  return element("li", {}, button, `: ${count(runs.length, "run")}`);
}
