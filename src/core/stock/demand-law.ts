/** How demand is distributed over a stretch of time: jobs of random size at random times, or a gamma, normal or counted demand of the same mean and variance. */
import { gammaCdf, negativeBinomialCdf, normalCdf, poissonCdf } from "./distributions";
import { compoundPoisson, onSteps, type SizeChance } from "./lattice";
import type { MeanAndVariance } from "./pipeline";

/** Over one week. `counted` is for whole pieces: Poisson where the variance is no more than the mean, else negative binomial. */
export type DemandLaw =
  | { readonly kind: "compound Poisson"; readonly jobs: number; readonly sizes: readonly SizeChance[] }
  | ({ readonly kind: "gamma" | "normal" | "counted" } & MeanAndVariance);

export const DEMAND_LAW_KINDS = ["compound Poisson", "gamma", "normal", "counted"] as const satisfies readonly DemandLaw["kind"][];

/** So many steps of one size. */
export interface Grid {
  /** [u] */
  readonly step: number;
  readonly cells: number;
}

/**
 * Jobs as they came in the past, as often as the forecast says.
 * @param jobs sizes seen [u]; at least one
 * @param rate forecast [u/week]
 * @returns demand of mean `rate`, its jobs drawn from those seen
 * @source compound Poisson: mean λ E S, variance λ E S² a week (Silver, Pyke and Thomas 2017, section on lumpy demand, from memory)
 * @example jobsLaw([1, 3], 4).jobs // => 2
 */
export function jobsLaw(jobs: readonly number[], rate: number): Extract<DemandLaw, { kind: "compound Poisson" }> {
  const mean = jobs.reduce((sum, size) => sum + size, 0) / jobs.length;
  const seen = new Map<number, number>();
  for (const size of jobs) seen.set(size, (seen.get(size) ?? 0) + 1 / jobs.length);
  return { kind: "compound Poisson", jobs: rate / mean, sizes: [...seen].map(([size, chance]) => ({ size, chance })) };
}

/**
 * @param law of one week [u/week]
 * @param weeks [week]
 * @returns mean [u] and variance [u²]; weeks are independent, so both grow in step with time
 * @source compound Poisson: λ t E S and λ t E S²
 * @example demandMoments({ kind: "compound Poisson", jobs: 2, sizes: [{ size: 3, chance: 1 }] }, 2).variance // => 36
 */
export function demandMoments(law: DemandLaw, weeks: number): MeanAndVariance {
  if (law.kind !== "compound Poisson") return { mean: law.mean * weeks, variance: law.variance * weeks };
  const moment = (power: number): number => law.sizes.reduce((sum, { size, chance }) => sum + chance * size ** power, 0);
  return { mean: law.jobs * weeks * moment(1), variance: law.jobs * weeks * moment(2) };
}

/**
 * @param law of one week [u/week]
 * @param weeks [week], 0 for no time
 * @param grid step [u] and cells
 * @returns chance of a demand of 0, 1, 2 … steps; negative normal demand counts as none
 */
export function demandDuring(law: DemandLaw, weeks: number, { step, cells }: Grid): Float64Array {
  return withoutTail(wholeGrid(law, weeks, { step, cells }));
}

/** What no service asked for can tell from nothing. */
const NEGLIGIBLE = 1e-13;

function withoutTail(chances: Float64Array): Float64Array {
  let [end, left] = [chances.length, 0];
  while (end > 1 && left + (chances[end - 1] as number) < NEGLIGIBLE) {
    end -= 1;
    left += chances[end] as number;
  }
  return chances.slice(0, end);
}

function wholeGrid(law: DemandLaw, weeks: number, { step, cells }: Grid): Float64Array {
  const { mean, variance } = demandMoments(law, weeks);
  if (mean <= 0) return Float64Array.of(1);
  switch (law.kind) {
    case "compound Poisson":
      return compoundPoisson(law.jobs * weeks, onSteps(law.sizes, step), cells);
    case "gamma":
      return variance > 0 ? rounded((x) => gammaCdf(x, { shape: mean ** 2 / variance, scale: variance / mean }), { step, cells }) : certain(mean, step);
    case "normal":
      return variance > 0 ? rounded((x) => normalCdf(x, { mean, deviation: Math.sqrt(variance) }), { step, cells }) : certain(mean, step);
    case "counted":
      return counted({ mean, variance }, { step, cells });
  }
}

const certain = (mean: number, step: number): Float64Array => onSteps([{ size: mean, chance: 1 }], step);

/** Each cell takes what lies within half a step of it. */
function rounded(cumulative: (x: number) => number, { step, cells }: Grid): Float64Array {
  let before = 0;
  return new Float64Array(cells).map((_, k) => {
    const upTo = cumulative((k + 0.5) * step);
    const chance = Math.max(0, upTo - before);
    before = upTo;
    return chance;
  });
}

function counted({ mean, variance }: MeanAndVariance, { step, cells }: Grid): Float64Array {
  const chance = mean / variance;
  const cumulative = variance > mean ? (x: number) => negativeBinomialCdf(x, { size: (mean * chance) / (1 - chance), chance }) : (x: number) => poissonCdf(x, mean);
  const pieces = Array.from({ length: Math.ceil(cells * step) }, (_, count) => ({ size: count, chance: cumulative(count) - (count > 0 ? cumulative(count - 1) : 0) }));
  return onSteps(pieces, step).slice(0, cells);
}
