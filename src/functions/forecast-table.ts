/** What FORECAST answers: one row on one history. */
import { forecast, type Forecast } from "../core/stock/forecast";
import type { CellValue } from "../workbook/document";
import { laidOut, rounded, text, type Column } from "./columns";
import { readHistory, readMethod, readWeights, type Rows } from "./stock-arguments";

export interface ForecastArguments {
  readonly method: unknown;
  readonly alpha: unknown;
  readonly beta: unknown;
}

const figure = (read: (forecast: Forecast) => number | undefined): ((forecast: Forecast) => number | undefined) => (one) => {
  const value = read(one);
  return value === undefined ? undefined : rounded(value, 6);
};

export const forecastColumns: readonly Column<Forecast>[] = [
  text("Method", ({ method }) => method),
  text("Chosen", ({ chosen }) => chosen),
  text("Rate", figure(({ rate }) => rate)),
  text("Level", figure(({ level }) => level)),
  text("Interval", figure(({ interval }) => interval)),
  text("Alpha", ({ weights }) => weights.alpha),
  text("Beta", ({ method, weights }) => (method === "SES" ? undefined : weights.beta)),
  text("Weights", ({ weightsAre }) => weightsAre),
  text("Error", figure(({ error }) => error)),
  text("Error is", ({ errorIs }) => errorIs),
  text("Deviation", figure(({ deviation }) => deviation)),
  text("Periods", ({ periods }) => periods),
  text("Demands", ({ pattern }) => pattern.demands),
  text("Class", ({ pattern }) => pattern.demandClass ?? "not known"),
  text("Mean interval", figure(({ pattern }) => pattern.interval)),
  text("Size variation", figure(({ pattern }) => pattern.sizeVariation)),
  text("Problem", ({ remarks }) => remarks.join("; ")),
];

/** In the unit of the history; `units` of the workbook has no say. */
export const forecastTable = (history: Rows, { method, alpha, beta }: ForecastArguments): CellValue[][] =>
  laidOut(forecastColumns, [forecast(readHistory(history), readMethod(method), readWeights(alpha, beta))], "us");
