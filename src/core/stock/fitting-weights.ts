/** Chooses the weights of a smoothing method by the error its forecasts would have had. */
import { smoothInto, type SmoothingMethod, type Weights } from "./smoothing";

/** Weights tried. More than 0.3 chases single demands; the usual range is 0.05 to 0.3 (Silver, Pyke and Thomas, Inventory and Production Management, 4th ed. 2017, from memory). */
const TRIED = [0.01, 0.02, 0.03, 0.05, 0.07, 0.1, 0.13, 0.16, 0.2, 0.25, 0.3] as const;

/**
 * The weights of least mean squared error one period ahead over the periods before `end`. One weight serves sizes and intervals in Croston, SBA and SBJ
 * (R forecast 8.20, croston); TSB has two of its own.
 * @param method to fit
 * @param history demand in each period [u]
 * @param end number of periods used [-]; later ones are not looked at
 * @returns weights [-]; the usual 0.1 when no forecast falls before `end`
 */
export function fitWeights(method: SmoothingMethod, history: readonly number[], end: number): Weights {
  const seen = history.slice(0, end);
  const forecasts = new Float64Array(end);
  let best: { weights: Weights; error: number } = { weights: { alpha: 0.1, beta: 0.1 }, error: Infinity };
  for (const weights of method === "TSB" ? PAIRS : SAME) {
    const error = squaredError(seen, smoothInto(forecasts, { method, history: seen, weights }).forecasts, 0) ?? Infinity;
    if (error < best.error) best = { weights, error };
  }
  return best.weights;
}

/** Mean squared error of the forecasts from a period on [u²]; periods without a forecast are left out; undefined when none has one. */
export function squaredError(history: readonly number[], forecasts: Float64Array, from: number): number | undefined {
  let sum = 0;
  let count = 0;
  for (let period = from; period < history.length; period += 1) {
    const error = (history[period] as number) - (forecasts[period] as number);
    if (Number.isNaN(error)) continue;
    sum += error * error;
    count += 1;
  }
  return count > 0 ? sum / count : undefined;
}

const SAME: readonly Weights[] = TRIED.map((alpha) => ({ alpha, beta: alpha }));
const PAIRS: readonly Weights[] = TRIED.flatMap((alpha) => TRIED.map((beta) => ({ alpha, beta })));
