/** Distributions of a quantity that comes in whole steps: sums of independent ones, and of a random number of equal ones. */

export interface Lattice {
  /** [u] */
  readonly step: number;
  /** Chance of 0, 1, 2 … steps; what is missing from 1 lies beyond the last. */
  readonly chances: Float64Array;
}

export interface SizeChance {
  /** [u], above 0 */
  readonly size: number;
  readonly chance: number;
}

/** Panjer's first value is e to minus the mean count; above this it nears the least number a double can hold, so the time is halved. */
const MOST_EVENTS = 500;

/**
 * The distribution of a sum of two independent quantities, cut off after so many cells.
 * @param a chances by step [-]
 * @param b chances by step [-], of the same step
 * @param cells kept [-]
 * @returns chances by step
 * @source definition of the sum of independent variables (convolution)
 * @example convolve(new Float64Array([0.5, 0.5]), new Float64Array([0.5, 0.5]), 3) // => [0.25, 0.5, 0.25]
 */
export function convolve(a: Float64Array, b: Float64Array, cells: number): Float64Array {
  const sum = new Float64Array(Math.min(cells, a.length + b.length - 1));
  for (let i = 0; i < a.length; i += 1) {
    const chance = a[i] as number;
    if (chance === 0) continue;
    const end = Math.min(b.length, sum.length - i);
    for (let j = 0; j < end; j += 1) sum[i + j] = (sum[i + j] as number) + chance * (b[j] as number);
  }
  return sum;
}

/**
 * The distribution of the total of a Poisson number of independent sizes.
 * @param events mean number of them [-]
 * @param sizes chance of a size of 0, 1, 2 … steps [-], together 1
 * @param cells kept [-]
 * @returns chance of a total of 0, 1, 2 … steps
 * @source Panjer 1981, Recursive evaluation of a family of compound distributions, ASTIN Bulletin 12(1) (from memory): g(s) = (λ/s) Σ j f(j) g(s − j)
 * @example compoundPoisson(2, new Float64Array([0, 1]), 3)[1] // => 0.27067056647322535
 */
export function compoundPoisson(events: number, sizes: Float64Array, cells: number): Float64Array {
  if (events > MOST_EVENTS) {
    const half = compoundPoisson(events / 2, sizes, cells);
    return convolve(half, half, cells);
  }
  const total = new Float64Array(cells);
  const present = [...sizes.keys()].filter((size) => size > 0 && (sizes[size] as number) > 0);
  const weights = present.map((size) => events * size * (sizes[size] as number));
  total[0] = Math.exp(-events * (1 - (sizes[0] ?? 0)));
  for (let steps = 1; steps < cells; steps += 1) {
    let sum = 0;
    for (let k = 0; k < present.length && (present[k] as number) <= steps; k += 1) sum += (weights[k] as number) * (total[steps - (present[k] as number)] as number);
    total[steps] = sum / steps;
  }
  return total;
}

/**
 * Sizes as whole steps. One between two steps is shared by both so that its mean is kept; its variance grows by at most step² / 4.
 * @param sizes [u] with their chances
 * @param step [u]
 * @returns chance of 0, 1, 2 … steps
 * @source Gerber 1982, On the numerical evaluation of the distribution of aggregate claims, Insurance: Mathematics and Economics 1(1): first moment kept (from memory)
 * @example onSteps([{ size: 1.25, chance: 1 }], 1) // => [0, 0.75, 0.25]
 */
export function onSteps(sizes: readonly SizeChance[], step: number): Float64Array {
  const largest = sizes.reduce((most, { size }) => Math.max(most, size), 0);
  const chances = new Float64Array(Math.floor(largest / step) + 2);
  for (const { size, chance } of sizes) {
    const nearest = Math.round(size / step);
    const exact = Math.abs(size / step - nearest) < 1e-9;
    const below = exact ? nearest : Math.floor(size / step);
    const above = exact ? 0 : size / step - below;
    chances[below] = (chances[below] as number) + chance * (1 - above);
    chances[below + 1] = (chances[below + 1] as number) + chance * above;
  }
  return withoutTrailingZeros(chances);
}

/** Mean [u] and variance [u²] of what lies on the lattice. */
export function momentsOf({ step, chances }: Lattice): { readonly mean: number; readonly variance: number } {
  let [mass, first, second] = [0, 0, 0];
  for (let k = 0; k < chances.length; k += 1) {
    const chance = chances[k] as number;
    mass += chance;
    first += k * chance;
    second += k * k * chance;
  }
  const mean = first / mass;
  return { mean: mean * step, variance: (second / mass - mean ** 2) * step ** 2 };
}

/** Chance of no more than 0, 1, 2 … steps. */
export function cumulated(chances: Float64Array): Float64Array {
  let sum = 0;
  return chances.map((chance) => (sum += chance));
}

function withoutTrailingZeros(chances: Float64Array): Float64Array {
  let end = chances.length;
  while (end > 1 && chances[end - 1] === 0) end -= 1;
  return chances.slice(0, end);
}
