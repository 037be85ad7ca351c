/** A size of tube over time: above, the stock ahead if nothing is ordered; below, what was used and what is expected, week by week. */
import type { RackGroup, StockBand } from "../../core/stock/rack";
import { drawing } from "../element";
import type { Units } from "../words";
import { sayStock } from "./stock-words";

/** Weeks of the past that are drawn: half a year. */
const WEEKS_SHOWN = 26;
const WEEK = 8;
const [STOCK_TOP, STOCK_HEIGHT, GAP, USE_HEIGHT, FOOT] = [14, 62, 22, 46, 16];
const USE_TOP = STOCK_TOP + STOCK_HEIGHT + GAP;
const HEIGHT = USE_TOP + USE_HEIGHT + FOOT;
/** Room that a label takes under a line. */
const UNDER_LINE = 12;
const TODAY_X = WEEKS_SHOWN * WEEK;

/** The figures stand in the card; the drawing says the same once more for the eye. */
export function stockChart(group: RackGroup, units: Units): SVGSVGElement {
  const width = TODAY_X + group.outlook.length * WEEK;
  return drawing("svg", { class: "stock-chart", viewBox: `0 0 ${width} ${HEIGHT}`, "aria-hidden": true, focusable: "false" },
    ...stockAhead(group, units), ...useByWeek(group, units),
    drawing("path", { class: "stock-chart__today", d: `M${TODAY_X} 2V${HEIGHT - FOOT}` }),
    label("today", TODAY_X, HEIGHT - 4, "middle"), label(`${WEEKS_SHOWN} weeks back`, 0, HEIGHT - 4, "start"), label(`${group.outlook.length} weeks on`, width, HEIGHT - 4, "end"));
}

const label = (text: string, x: number, y: number, anchor: "start" | "middle" | "end"): SVGTextElement => drawing("text", { class: "stock-chart__label", x, y, "text-anchor": anchor }, text);

function stockAhead({ outlook, onHand }: RackGroup, units: Units): SVGElement[] {
  const bands: readonly StockBand[] = [{ mean: onHand, low: onHand, high: onHand }, ...outlook];
  const most = Math.max(...bands.map(({ high }) => high), Number.MIN_VALUE);
  const least = Math.min(0, ...bands.map(({ mean }) => mean));
  const y = (value: number): number => round(STOCK_TOP + (STOCK_HEIGHT * (most - Math.max(value, least))) / (most - least));
  const x = (week: number): number => TODAY_X + week * WEEK;
  const points = (of: (band: StockBand) => number): string[] => bands.map((band, week) => `${x(week)} ${y(of(band))}`);
  const end = x(outlook.length);
  return [
    label(`Stock: ${sayStock(onHand, units)} on hand`, 0, STOCK_TOP + 10, "start"),
    drawing("path", { class: "stock-chart__spread", d: `M${[...points(({ high }) => high), ...points(({ low }) => low).reverse()].join("L")}Z` }),
    drawing("path", { class: "stock-chart__axis", d: `M0 ${y(0)}H${end}` }),
    drawing("path", { class: "stock-chart__stock", d: `M${points(({ mean }) => mean).join("L")}` }),
    // Under the line where the stock goes below it, as the label above would be in the way.
    label("none left", 0, STOCK_TOP + STOCK_HEIGHT - y(0) > UNDER_LINE ? y(0) + 10 : y(0) - 3, "start"),
  ];
}

function useByWeek({ usage, forecast, pipeline }: RackGroup, units: Units): SVGElement[] {
  const past = usage.slice(-WEEKS_SHOWN);
  const { rate, deviation = 0 } = forecast;
  const most = Math.max(...past, rate + deviation, ...pipeline.map(({ mean }) => rate + mean), Number.MIN_VALUE);
  const height = (value: number): number => round((USE_HEIGHT * value) / most);
  const foot = USE_TOP + USE_HEIGHT;
  const bar = (kind: string, week: number, from: number, value: number): SVGElement | undefined =>
    value > 0 ? drawing("rect", { class: kind, x: TODAY_X + week * WEEK + 1, y: round(foot - height(from + value)), width: WEEK - 2, height: height(value) }) : undefined;
  const end = TODAY_X + pipeline.length * WEEK;
  const low = height(Math.max(0, rate - deviation));
  const parts = [
    drawing("rect", { class: "stock-chart__forecast", x: TODAY_X, y: round(foot - height(rate + deviation)), width: end - TODAY_X, height: Math.max(0, height(rate + deviation) - low) }),
    ...past.map((used, index) => bar("stock-chart__used", index - past.length, 0, used)),
    ...pipeline.map(({ mean }, week) => bar("stock-chart__quotes", week, rate, mean)),
    drawing("path", { class: "stock-chart__rate", d: `M${TODAY_X} ${round(foot - height(rate))}H${end}` }),
    drawing("path", { class: "stock-chart__axis", d: `M0 ${foot}H${end}` }),
    label(`Use a week, scale to ${sayStock(most, units)}`, 0, USE_TOP - 5, "start"),
  ];
  return parts.filter((part) => part !== undefined);
}

const round = (value: number): number => Math.round(value * 10) / 10;
