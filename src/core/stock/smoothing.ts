/** Five ways to smooth a history of demand by period into a rate. Each forecast uses the periods before it only. */

export const SMOOTHING_METHODS = ["Croston", "SBA", "SBJ", "TSB", "SES"] as const;
export type SmoothingMethod = (typeof SMOOTHING_METHODS)[number];

/** Weights of the newest observation, 0 to 1. */
export interface Weights {
  /** Of the size of a demand (Croston, SBA, SBJ, TSB) or of the level (SES). */
  readonly alpha: number;
  /** Of the interval between demands (Croston, SBA, SBJ) or of the chance of a demand (TSB); SES has none. */
  readonly beta: number;
}

/**
 * Where smoothing starts; what is left out is taken from the first demand.
 * Croston, SBA, SBJ: its size, and the periods up to and including it, so leading zeros lengthen the first interval (R forecast 8.20, croston).
 * TSB: its size, and one over that interval (tsintermittent 1.10, init "naive"); given values stand for period 1, and smoothing goes on from period 2 (the same).
 * SES: the first period's demand, zero or not (R forecast 8.20, ses initial "simple"); a given level stands before period 1 (statsmodels 0.13.5, "known").
 */
export interface StartValues {
  readonly size?: number;
  readonly chance?: number;
  readonly level?: number;
}

export interface Smoothing {
  readonly method: SmoothingMethod;
  readonly history: readonly number[];
  readonly weights: Weights;
  readonly start?: StartValues;
}

export interface Smoothed {
  /** Forecast of every further period [u/period]; 0 when there was no demand at all. */
  readonly rate: number;
  /** Size of a demand [u], or for SES the level [u/period]. */
  readonly level: number;
  /** Periods from one demand to the next; undefined for SES. */
  readonly interval: number | undefined;
  /** Of each period, made before it; NaN before the first demand. */
  readonly forecasts: Float64Array;
}

/**
 * @param method how to smooth
 * @param history demand in each period [u], none below 0
 * @param weights alpha and beta [-], above 0 up to 1
 * @returns rate [u/period], level [u], interval [period] and the forecast of each period [u]
 * @source Croston 1972, Operational Research Quarterly 23(3) (papers from memory, values checked against R forecast 8.20 and tsintermittent 1.10); SBA factor 1 − β/2: Syntetos and Boylan 2005, International Journal of Forecasting 21(2);
 *   SBJ factor 1 − β/(2 − β): Shale, Boylan and Johnston 2006, Journal of the Operational Research Society 57(5);
 *   TSB: Teunter, Syntetos and Babai 2011, European Journal of Operational Research 214(3)
 * @example smooth("Croston", [0, 2, 0, 4], { alpha: 0.5, beta: 0.5 }).rate // => 1.5
 */
export function smooth(method: SmoothingMethod, history: readonly number[], weights: Weights, start: StartValues = {}): Smoothed {
  return smoothInto(new Float64Array(history.length), { method, history, weights, start });
}

/** The same with the forecasts written into an array of the caller's, which a search over many weights uses again and again. */
export function smoothInto(forecasts: Float64Array, { method, history, weights, start = {} }: Smoothing): Smoothed {
  forecasts.fill(NaN);
  switch (method) {
    case "SES":
      return exponential(history, weights, start, forecasts);
    case "TSB":
      return byChance(history, weights, start, forecasts);
    case "Croston":
    case "SBA":
    case "SBJ":
      return byInterval(correction(method, weights), history, weights, forecasts);
  }
}

/** Croston's ratio is biased upwards; both corrections take that off, for the weight of the interval. */
function correction(method: "Croston" | "SBA" | "SBJ", { beta }: Weights): number {
  if (method === "Croston") return 1;
  return method === "SBA" ? 1 - beta / 2 : 1 - beta / (2 - beta);
}

function byInterval(factor: number, history: readonly number[], { alpha, beta }: Weights, forecasts: Float64Array): Smoothed {
  let size = 0;
  let interval = 0;
  let sinceDemand = 0;
  for (let period = 0; period < history.length; period += 1) {
    const demand = history[period] as number;
    if (interval > 0) forecasts[period] = (factor * size) / interval;
    sinceDemand += 1;
    if (demand <= 0) continue;
    size = interval > 0 ? size + alpha * (demand - size) : demand;
    interval = interval > 0 ? interval + beta * (sinceDemand - interval) : sinceDemand;
    sinceDemand = 0;
  }
  return { rate: interval > 0 ? (factor * size) / interval : 0, level: size, interval: interval > 0 ? interval : undefined, forecasts };
}

function byChance(history: readonly number[], { alpha, beta }: Weights, start: StartValues, forecasts: Float64Array): Smoothed {
  const first = history.findIndex((demand) => demand > 0);
  const given = start.size !== undefined && start.chance !== undefined;
  if (first < 0 && !given) return { rate: 0, level: 0, interval: undefined, forecasts };
  let size = start.size ?? history[first] ?? 0;
  let chance = start.chance ?? 1 / (first + 1);
  for (let period = given ? 1 : first + 1; period < history.length; period += 1) {
    const demand = history[period] as number;
    forecasts[period] = size * chance;
    chance += beta * ((demand > 0 ? 1 : 0) - chance);
    if (demand > 0) size += alpha * (demand - size);
  }
  return { rate: size * chance, level: size, interval: 1 / chance, forecasts };
}

function exponential(history: readonly number[], { alpha }: Weights, start: StartValues, forecasts: Float64Array): Smoothed {
  let level = start.level ?? history[0] ?? 0;
  for (let period = start.level === undefined ? 1 : 0; period < history.length; period += 1) {
    forecasts[period] = level;
    level += alpha * ((history[period] as number) - level);
  }
  return { rate: level, level, interval: undefined, forecasts };
}
