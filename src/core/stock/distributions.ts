/** Cumulative shares and quantiles of four distributions. The one file that names the package behind them, so that it loads as its own chunk. */
import gammaCumulative from "@stdlib/stats-base-dists-gamma-cdf";
import gammaInverse from "@stdlib/stats-base-dists-gamma-quantile";
import negativeBinomialCumulative from "@stdlib/stats-base-dists-negative-binomial-cdf";
import negativeBinomialInverse from "@stdlib/stats-base-dists-negative-binomial-quantile";
import normalCumulative from "@stdlib/stats-base-dists-normal-cdf";
import normalInverse from "@stdlib/stats-base-dists-normal-quantile";
import poissonCumulative from "@stdlib/stats-base-dists-poisson-cdf";
import poissonInverse from "@stdlib/stats-base-dists-poisson-quantile";

/** The normal distribution by its mean and standard deviation [u]. */
export interface Normal {
  readonly mean: number;
  readonly deviation: number;
}

/** The gamma distribution by shape [-] and scale [u]: mean shape × scale, variance shape × scale². */
export interface Gamma {
  readonly shape: number;
  readonly scale: number;
}

/** Failures before the `size`-th success of chance `chance`; `size` [-] need not be whole. Mean size (1 − chance) / chance. */
export interface NegativeBinomial {
  readonly size: number;
  readonly chance: number;
}

export const normalCdf = (x: number, { mean, deviation }: Normal): number => normalCumulative(x, mean, deviation);

/**
 * @param share cumulative share [-], 0 to 1
 * @param normal mean and standard deviation [u]
 * @returns the value not exceeded in that share of cases [u]; NaN outside 0 to 1
 * @source R 4.2.2 qnorm agrees to 1e-11 (test)
 * @example normalQuantile(0.95, { mean: 0, deviation: 1 }) // => 1.64485362695147
 */
export const normalQuantile = (share: number, { mean, deviation }: Normal): number => normalInverse(share, mean, deviation);

export const gammaCdf = (x: number, { shape, scale }: Gamma): number => gammaCumulative(x, shape, 1 / scale);

/**
 * @param share cumulative share [-], 0 to 1
 * @param gamma shape [-] and scale [u]; the package below takes the rate, 1 / scale
 * @returns the value not exceeded in that share of cases [u]; NaN outside 0 to 1
 * @source R 4.2.2 qgamma agrees to 1e-11 (test)
 * @example gammaQuantile(0.95, { shape: 0.5, scale: 2 }) // => 3.84145882069412
 */
export const gammaQuantile = (share: number, { shape, scale }: Gamma): number => gammaInverse(share, shape, 1 / scale);

export const poissonCdf = (x: number, mean: number): number => poissonCumulative(x, mean);

/**
 * @param share cumulative share [-], 0 to 1
 * @param mean of the count [-]
 * @returns the least count whose cumulative share reaches it [-]
 * @source R 4.2.2 qpois agrees (test)
 * @example poissonQuantile(0.95, 3) // => 6
 */
export const poissonQuantile = (share: number, mean: number): number => poissonInverse(share, mean);

export const negativeBinomialCdf = (x: number, { size, chance }: NegativeBinomial): number => negativeBinomialCumulative(x, size, chance);

/**
 * @param share cumulative share [-], 0 to 1
 * @param law size [-] and chance [-]
 * @returns the least count whose cumulative share reaches it [-]
 * @source R 4.2.2 qnbinom agrees, sizes that are not whole included (test)
 * @example negativeBinomialQuantile(0.95, { size: 2.5, chance: 0.4 }) // => 10
 */
export const negativeBinomialQuantile = (share: number, { size, chance }: NegativeBinomial): number => negativeBinomialInverse(share, size, chance);
