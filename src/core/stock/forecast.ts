/** The rate of demand that a history promises, by a method asked for or by the one that would have erred least. */
import { demandPattern, type DemandPattern } from "./demand-class";
import { fitWeights, squaredError } from "./fitting-weights";
import { smooth, SMOOTHING_METHODS, type SmoothingMethod, type Weights } from "./smoothing";

export const FORECAST_METHODS = ["auto", ...SMOOTHING_METHODS] as const;
export type ForecastMethod = (typeof FORECAST_METHODS)[number];

export interface Forecast {
  readonly method: SmoothingMethod;
  readonly chosen: "asked for" | "least rolling-origin error" | "too little history to choose";
  /** Of every further period [u/period]. */
  readonly rate: number;
  /** Size of a demand [u]; for SES the level [u/period]. */
  readonly level: number;
  /** Periods from one demand to the next, smoothed; undefined for SES and without demand. */
  readonly interval: number | undefined;
  readonly weights: Weights;
  readonly weightsAre: "given" | "fitted" | "usual";
  /** Root of the mean squared error of forecasts one period ahead [u]; undefined when there was none to judge by. */
  readonly error: number | undefined;
  /** Rolling-origin: over the last third of the history, with weights fitted before it; else over all forecasts, with the weights used. */
  readonly errorIs: "rolling-origin" | "in-sample" | undefined;
  /** Standard deviation of demand by period in the history (n − 1) [u]; undefined below two periods. */
  readonly deviation: number | undefined;
  readonly periods: number;
  readonly pattern: DemandPattern;
  /** What the reader must know before trusting it, in sentences. */
  readonly remarks: readonly string[];
}

/** Below these a history cannot be split into a part to fit and a part to judge. Common practice, no source. */
export const LEAST_PERIODS = 24;
export const LEAST_DEMANDS = 6;

/** What R forecast 8.20 takes when nothing else is said (croston, alpha = 0.1). */
export const USUAL_WEIGHTS: Weights = { alpha: 0.1, beta: 0.1 };

/**
 * @param history demand in each period, oldest first [u]; it starts when recording did, so that leading zeros count
 * @param method a method, or auto: the one with the least mean squared error one period ahead over the last third (rolling origin), weights fitted on the
 *   periods before. Squared errors, because absolute ones favour forecasts of zero on lumpy demand
 * @param weights given [-], else fitted by least squared error one period ahead
 * @returns rate [u/period], level [u], interval [period], error [u] and what they rest on
 * @source Tashman 2000, International Journal of Forecasting 16(4) (from memory): rolling origin, fixed fit; squared errors: Kolassa 2016, same journal 32(3) (from memory)
 * @example forecast([0, 2, 0, 4], "Croston", { alpha: 0.5, beta: 0.5 }).rate // => 1.5
 */
export function forecast(history: readonly number[], method: ForecastMethod = "auto", weights?: Weights): Forecast {
  const pattern = demandPattern(history);
  const enough = history.length >= LEAST_PERIODS && pattern.demands >= LEAST_DEMANDS;
  const chosen = method === "auto" ? (enough ? leastError(history, weights) : undefined) : method;
  const used = chosen ?? "SBA";
  const fitted = weights ?? (enough ? fitWeights(used, history, history.length) : USUAL_WEIGHTS);
  const { rate, level, interval, forecasts } = smooth(used, history, fitted);
  const error = enough ? rollingError(used, history, weights) : squaredError(history, forecasts, 0);
  return {
    method: used, rate, level, interval, weights: fitted, pattern, periods: history.length, deviation: deviationOf(history),
    chosen: method !== "auto" ? "asked for" : chosen ? "least rolling-origin error" : "too little history to choose",
    weightsAre: weights ? "given" : enough ? "fitted" : "usual",
    error: error === undefined ? undefined : Math.sqrt(error), errorIs: error === undefined ? undefined : enough ? "rolling-origin" : "in-sample",
    remarks: remarksOn(history, pattern, enough),
  };
}

/** The last third of the periods, or less where fewer than half of the demands would come before it. */
export function firstJudged(history: readonly number[]): number {
  const half = demandPattern(history).demands / 2;
  let [seen, period] = [0, 0];
  for (; seen < half; period += 1) if ((history[period] as number) > 0) seen += 1;
  return Math.max(period, Math.ceil((history.length * 2) / 3));
}

function leastError(history: readonly number[], weights: Weights | undefined): SmoothingMethod {
  const errors = SMOOTHING_METHODS.map((method) => ({ method, error: rollingError(method, history, weights) ?? Infinity }));
  return errors.reduce((best, one) => (one.error < best.error ? one : best)).method;
}

/** Weights are fitted once, on the periods before; the origin then rolls on one period at a time. */
function rollingError(method: SmoothingMethod, history: readonly number[], weights: Weights | undefined): number | undefined {
  const from = firstJudged(history);
  const fitted = weights ?? fitWeights(method, history, from);
  return squaredError(history, smooth(method, history, fitted).forecasts, from);
}

function deviationOf(history: readonly number[]): number | undefined {
  if (history.length < 2) return undefined;
  const mean = history.reduce((sum, demand) => sum + demand, 0) / history.length;
  return Math.sqrt(history.reduce((sum, demand) => sum + (demand - mean) ** 2, 0) / (history.length - 1));
}

function remarksOn(history: readonly number[], { demands }: DemandPattern, enough: boolean): string[] {
  if (history.length === 0) return ["no history: there is nothing to forecast from"];
  if (demands === 0) return [`no demand in ${history.length} periods: the rate is taken as 0`];
  const counted = `${demands} ${demands === 1 ? "demand" : "demands"} in ${history.length} ${history.length === 1 ? "period" : "periods"}`;
  return enough ? [] : [`too little history: ${counted}, fewer than ${LEAST_DEMANDS} in ${LEAST_PERIODS}, so the usual method and weights stand`];
}
