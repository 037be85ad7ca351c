/** The Tube view: how much tube all cars or the chosen one take, by material, size and wall, and how it is cut on the bench. */
import { sayTube, type Material } from "../core/tube";
import { sayLots } from "../core/tubing";
import type { WorkbookReading } from "../workbook/workbook-reports";
import { benchSection } from "./bench/bench-section";
import { planCutsBeside } from "./bench/cut-planner";
import { carBar } from "./car-bar";
import { element } from "./element";
import { keyedChildren, type KeyedChild } from "./keyed-children";
import { tubeDrawing } from "./marks";
import { tubeTotals, type LeftOutRuns, type TubeTotal, type TubeTotals } from "./tube-totals";
import { twoWayChoice } from "./two-way-choice";
import type { View, ViewActions } from "./view";
import { count, sayLength, sayNumber, sayWall, type Units } from "./words";

export function tubeView(actions: ViewActions): View {
  const state: { reading: WorkbookReading | undefined } = { reading: undefined };
  const bar = carBar(actions);
  const summary = element("h2", { class: "tally" });
  const list = element("div", { class: "materials" });
  const parts = keyedChildren(list);
  const bench = benchSection(planCutsBeside);
  const draw = (): void => {
    if (!state.reading) return;
    const { catalogue } = state.reading;
    const line = bar.show(state.reading);
    bar.content.hidden = !scope.isSecond();
    const cars = scope.isSecond() ? (line ? [line] : []) : state.reading.cars;
    const totals = tubeTotals({ catalogue, cars });
    summary.textContent = sayTotal(totals, catalogue.settings.units);
    parts.update([...materialTables(totals, catalogue.settings.units), ...leftOutNotice(totals, actions)]);
    bench.show(catalogue, cars);
  };
  const scope = twoWayChoice("tube-scope", "Tube for", [{ value: "all", text: "All cars" }, { value: "one", text: "One car" }]);
  scope.content.addEventListener("input", draw);
  return {
    id: "tube", name: "Tube",
    content: element("div", { class: "tube-view" }, scope.content, bar.content, summary, list, bench.content),
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

function materialTables({ totals }: TubeTotals, units: Units): KeyedChild[] {
  const longest = Math.max(...totals.map(({ cut }) => cut));
  const materials = [...new Set(totals.map(({ material }) => material))];
  return materials.map((material) => {
    const those = totals.filter((total) => total.material === material);
    return { key: material ?? "", content: JSON.stringify([units, longest, those]), make: () => tableOf(sayMaterial(material), those, { units, longest }) };
  });
}

const sayMaterial = (material: Material | undefined): string => (material ? material.charAt(0).toUpperCase() + material.slice(1) : "Material not said");

interface Scale {
  readonly units: Units;
  readonly longest: number;
}

function tableOf(material: string, totals: readonly TubeTotal[], scale: Scale): HTMLElement {
  const heading = (text: string, kind = ""): HTMLElement => element("th", { scope: "col", class: kind }, text);
  return element("table", { class: "tube" },
    element("caption", {}, material),
    element("thead", {}, element("tr", {},
      heading("Tube"), heading("Cut", "number"), heading("Net", "number"), heading("Runs", "number"), heading("Cars", "number"), heading("To buy", "wide"), heading("Scrap", "number wide"))),
    ...totals.map((total) => rowsOf(total, scale)));
}

/** Two rows a size, so that 320 pixels hold the figures: the figures, then the drawing with what is estimated. */
function rowsOf(total: TubeTotal, { units, longest }: Scale): HTMLElement {
  const { outsideDiameter, wall, cut, net, runs, cars, scrap, estimated } = total;
  const number = (text: string, kind = ""): HTMLElement => element("td", { class: `number ${kind}` }, text);
  return element("tbody", {},
    element("tr", {},
      element("th", { scope: "row" }, sayTube(outsideDiameter), element("span", { class: "tube__detail" }, wall === undefined ? "wall not known" : `wall ${sayWall(wall, units)}`)),
      number(sayLength(cut, units), "tube__cut"), number(sayLength(net, units)), number(sayNumber(runs)), number(sayNumber(cars)),
      element("td", { class: "wide" }, sayBought(total)),
      number(scrap === undefined ? "" : sayLength(scrap, units), "wide")),
    element("tr", { class: "tube__second" }, element("td", { colspan: 5 }, tubeDrawing(cut / longest, estimated.net / net),
      element("span", { class: "tube__buy" }, `To buy: ${sayBought(total)}${scrap === undefined ? "" : `, scrap ${sayLength(scrap, units)}`}.`), sayEstimated(total, units))));
}

function sayBought({ bought, wall }: TubeTotal): string {
  if (bought) return sayLots(bought);
  return wall === undefined ? "not on the list" : "no piece on the list is long enough";
}

function sayEstimated({ estimated }: TubeTotal, units: Units): HTMLElement | undefined {
  if (estimated.runs === 0) return undefined;
  return element("span", { class: "tube__estimated" }, `${sayLength(estimated.net, units)} of the net is estimated, in ${count(estimated.runs, "run")}.`);
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
