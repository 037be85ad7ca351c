/** Loss functions: how much demand exceeds a level on average, and how much of the level is left over. */
import { gammaCdf, normalCdf, poissonCdf, type Gamma, type Normal } from "./distributions";

/** Of demand X against a level x, in the unit of demand. */
export interface Loss {
  /** Mean of what is short, E(X − x)⁺. */
  readonly short: number;
  /** Mean of what is left over, E(x − X)⁺ = x − E X + short. */
  readonly left: number;
}

/**
 * First- and second-order loss of the standard normal distribution. Keeps its digits in the tail, where φ(z) − z(1 − Φ(z)) loses them.
 * @param z standardised level [-]
 * @returns short E(Z − z)⁺, left E(z − Z)⁺ and second ½ E((Z − z)⁺)², all [-]
 * @source Snyder and Shen, Fundamentals of Supply Chain Theory, 2nd ed. 2019, loss functions (place from memory); above z = 3 Laplace's
 *   continued fraction of Mills' ratio (Abramowitz and Stegun 26.2.14, from memory)
 * @example standardNormalLoss(1.3).short // => 0.04552796208651397
 */
export function standardNormalLoss(z: number): Loss & { readonly second: number } {
  const { short, second } = upperTail(Math.abs(z));
  const distance = Math.abs(z);
  return z >= 0 ? { short, left: z + short, second } : { short: short + distance, left: short, second: (distance ** 2 + 1) / 2 - second };
}

/**
 * @param level [u]
 * @param demand mean and standard deviation [u]; deviation above 0
 * @returns short and left [u]
 * @source Snyder and Shen 2019, loss functions (place from memory): n(x) = σ 𝓛((x − μ) / σ)
 * @example normalLoss(18.6, { mean: 15, deviation: 3 }).left // => 3.7683073521514903
 */
export function normalLoss(level: number, { mean, deviation }: Normal): Loss {
  const { short, left } = standardNormalLoss((level - mean) / deviation);
  return { short: short * deviation, left: left * deviation };
}

/**
 * @param level [u]
 * @param demand shape [-] and scale [u], both above 0
 * @returns short and left [u]
 * @source by parts: E(X − x)⁺ = kθ(1 − F(x; k + 1)) − x(1 − F(x; k)); exponential demand of mean 1 gives e⁻ˣ
 * @example gammaLoss(1, { shape: 1, scale: 1 }).short // => 0.36787944117144233
 */
export function gammaLoss(level: number, { shape, scale }: Gamma): Loss {
  const mean = shape * scale;
  if (level <= 0) return { short: mean - level, left: 0 };
  const short = mean * (1 - gammaCdf(level, { shape: shape + 1, scale })) - level * (1 - gammaCdf(level, { shape, scale }));
  return { short, left: level - mean + short };
}

/**
 * @param level [u], whole or not
 * @param mean of the count [u], up to 10,000
 * @returns short and left [u]
 * @source Snyder and Shen 2019, loss functions (place from memory); summed from the thinner side
 * @example poissonLoss(18, 15).short // => 0.5176095282584724
 */
export function poissonLoss(level: number, mean: number): Loss {
  if (level < 0) return { short: mean - level, left: 0 };
  const whole = Math.floor(level);
  const below = whole - mean;
  const atWhole = whole > mean ? shortAbove(whole, mean) : leftBelow(whole, mean) - below;
  const short = atWhole - (level - whole) * (1 - poissonCdf(whole, mean));
  return { short, left: level - mean + short };
}

const FRACTION_TERMS = 150;

/** For z of 0 and more. With Mills' ratio 1 / (z + a), a = 1 / (z + b), b = 2 / (z + …), short is φ a / (z + a) and second φ a b / (z + a) / 2. */
function upperTail(z: number): { short: number; second: number } {
  const density = Math.exp(-(z ** 2) / 2) / Math.sqrt(2 * Math.PI);
  if (z > 3) {
    let b = 0;
    for (let term = FRACTION_TERMS; term >= 2; term -= 1) b = term / (z + b);
    const a = 1 / (z + b);
    return { short: (density * a) / (z + a), second: (density * a * b) / (z + a) / 2 };
  }
  const above = normalCdf(-z, { mean: 0, deviation: 1 });
  return { short: density - z * above, second: ((z ** 2 + 1) * above - z * density) / 2 };
}

/** Σ (y − x) P(y) over y above x. */
function shortAbove(x: number, mean: number): number {
  let chance = poissonChance(x + 1, mean);
  let sum = 0;
  for (let y = x + 1; chance > 0 && (y <= mean || (y - x) * chance > sum * 1e-17); y += 1) {
    sum += (y - x) * chance;
    chance *= mean / (y + 1);
  }
  return sum;
}

/** Σ (x − y) P(y) over y below x. */
function leftBelow(x: number, mean: number): number {
  let chance = poissonChance(x, mean);
  let sum = 0;
  for (let y = x; y >= 0; y -= 1) {
    sum += (x - y) * chance;
    chance *= y / mean;
  }
  return sum;
}

function poissonChance(count: number, mean: number): number {
  if (mean === 0) return count === 0 ? 1 : 0;
  let logarithm = -mean;
  for (let k = 1; k <= count; k += 1) logarithm += Math.log(mean / k);
  return Math.exp(logarithm);
}
