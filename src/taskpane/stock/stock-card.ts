/** One material and size of the rack: what is there, how long it lasts, what to order today. */
import { capital } from "../../core/finding";
import type { DemandClass } from "../../core/stock/demand-class";
import type { RackGroup } from "../../core/stock/rack";
import type { SmoothingMethod } from "../../core/stock/smoothing";
import type { TubeReorder } from "../../core/stock/tube-reorder";
import type { Settings } from "../../core/settings";
import { element } from "../element";
import { count, sayNumber, sayWall } from "../words";
import { stockChart } from "./stock-chart";
import { sayDay, sayGroup, sayPrice, sayRate, sayStock } from "./stock-words";

export function stockCard(group: RackGroup, settings: Settings): HTMLElement {
  const { units } = settings;
  const ordered = group.lines.filter(isOrdered);
  // No weeks of use and no open quotes: what lasts how long is not known, and no order is no advice.
  const isUnknown = group.forecast.periods === 0 && group.weeksOfCover === undefined && group.stockOut === undefined;
  const none = isUnknown ? "No usage yet, so no order can be advised." : "Nothing to order today.";
  return element("article", { class: "stock-card", "data-orders": ordered.length > 0 ? "yes" : "no" },
    element("h3", { class: "stock-card__name" }, sayGroup(group), element("span", { class: "stock-card__detail" }, `wall ${sayWall(group.wall, units)}`)),
    element("p", { class: "stock-card__order" }, ordered.length === 0 ? none : `Order today: ${ordered.map((line) => sayOrder(line, settings)).join("; ")}.`),
    element("dl", { class: "stock-card__figures" },
      ...figure("On hand", sayStock(group.onHand, units)), ...figure("On order", sayStock(group.onOrder, units)),
      ...figure("Cover", group.weeksOfCover === undefined ? (isUnknown ? "not known" : "no demand") : count(Math.floor(group.weeksOfCover), "week")),
      ...figure("Runs out", group.stockOut === undefined ? (isUnknown ? "not known" : "not in ten years") : sayDay(group.stockOut))),
    stockChart(group, units),
    element("p", { class: "stock-card__text" }, sayForecast(group, settings)),
    ...(group.plan ? [element("p", { class: "stock-card__text" }, sayPlan(group.plan, settings))] : []),
    linesOf(group, settings));
}

export const isOrdered = ({ advice }: TubeReorder): boolean => (advice?.orderToday ?? 0) > 0;

const sayOrder = ({ tube, advice, priced }: TubeReorder, settings: Settings): string =>
  `${sayNumber(advice?.orderToday ?? 0)} × ${tube.name}, ${priced ? sayPrice(advice?.orderCost ?? 0, settings) : "no price"}`;

const figure = (name: string, value: string): HTMLElement[] => [element("div", { class: "stock-card__figure" }, element("dt", {}, name), element("dd", {}, value))];

/** What each method looks at, with the name it is known by. */
const METHOD_WORDS: Readonly<Record<SmoothingMethod, string>> = {
  SES: "the use of each week, smoothed (SES)",
  Croston: "size and spacing of the uses (Croston)", SBA: "size and spacing of the uses (SBA)", SBJ: "size and spacing of the uses (SBJ)", TSB: "size and chance of a use (TSB)",
};

/** What each class means at the rack, with the name it is known by. */
const CLASS_WORDS: Readonly<Record<DemandClass, string>> = {
  smooth: "used steadily (smooth)", erratic: "used steadily, in unlike amounts (erratic)",
  intermittent: "used now and then (intermittent)", lumpy: "used now and then, in unlike amounts (lumpy)",
};

function sayForecast({ forecast: { rate, method, pattern, periods, remarks } }: RackGroup, { units }: Settings): string {
  if (periods === 0) return "No usage is recorded, so nothing is forecast.";
  const classed = pattern.demandClass === undefined ? "" : `, ${CLASS_WORDS[pattern.demandClass]}`;
  return `Forecast: ${sayRate(rate, units)}, by ${METHOD_WORDS[method]}${classed}; ${count(pattern.demands, "week")} with use out of ${sayNumber(periods)}.${remarks.length > 0 ? ` ${capital(remarks.join("; "))}.` : ""}`;
}

function sayPlan({ pieces, buys, cost, proved, problems }: NonNullable<RackGroup["plan"]>, settings: Settings): string {
  const what = `If every open quote came in: ${count(pieces, "piece")}, `;
  const missing = problems.length > 0 ? ` Not planned: ${problems.map(({ item, says }) => `${item} (${says})`).join("; ")}.` : "";
  if (buys.length === 0) return `${what}all cut from what is on the rack.${missing}`;
  return `${what}cut from the rack and ${buys.map(({ tube, count: times }) => `${sayNumber(times)} × ${tube}`).join(", ")} for ${sayPrice(cost, settings)}${proved ? ", the least cost" : ""}.${missing}`;
}

/** Each length it is bought in, with what its order rests on. */
function linesOf({ lines }: RackGroup, settings: Settings): HTMLElement {
  const heading = (text: string, kind = ""): HTMLElement => element("th", { scope: "col", class: kind }, text);
  return element("details", { class: "stock-card__lines" }, element("summary", {}, "Each length, and what its order rests on"),
    element("table", {},
      element("thead", {}, element("tr", {}, heading("Tube"), heading("On hand", "number"), heading("Order at", "number"), heading("Lot", "number"), heading("Order", "number"))),
      element("tbody", {}, ...lines.map((line) => lineRow(line, settings)))),
    ...lines.flatMap(remarksOf));
}

function lineRow({ tube, advice }: TubeReorder, { units }: Settings): HTMLElement {
  const number = (text: string): HTMLElement => element("td", { class: "number" }, text);
  return element("tr", {}, element("th", { scope: "row" }, tube.name), number(sayNumber(tube.onHand ?? 0)),
    ...(advice ? [number(sayStock(advice.reorderPoint, units)), number(sayNumber(advice.lot)), number(sayNumber(advice.orderToday))] : [element("td", { colspan: 3 }, "not worked out")]));
}

const remarksOf = ({ tube, problems, assumed }: TubeReorder): HTMLElement[] =>
  problems.length + assumed.length === 0 ? [] : [element("p", { class: "stock-card__text" }, `${tube.name}: ${[...problems, ...assumed].join("; ")}.`)];
