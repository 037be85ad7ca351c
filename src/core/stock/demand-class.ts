/** What kind of demand a history shows: how often it comes, and how much its size varies. */

export const DEMAND_CLASSES = ["smooth", "erratic", "intermittent", "lumpy"] as const;
export type DemandClass = (typeof DEMAND_CLASSES)[number];

export interface DemandPattern {
  /** Periods with demand. */
  readonly demands: number;
  /** Periods for each demand: all periods, leading zeros too, over those with demand; undefined without demand. */
  readonly interval: number | undefined;
  /** Squared coefficient of variation of the sizes, by the sample variance (n − 1); undefined below two demands. */
  readonly sizeVariation: number | undefined;
  /** Undefined below two demands: nothing can be said of how sizes vary. */
  readonly demandClass: DemandClass | undefined;
}

/** Periods for each demand, and squared coefficient of variation of sizes, that part the classes; at the cut-off counts as above it. */
export const INTERVAL_CUT_OFF = 1.32;
export const VARIATION_CUT_OFF = 0.49;

/**
 * @param history demand in each period [u]
 * @returns demands [-], interval [period], variation [-] and class
 * @source Syntetos, Boylan and Croston 2005, On the categorization of demand patterns, Journal of the Operational Research Society 56(5): 1.32 and 0.49 (from memory)
 * @example demandPattern([0, 2, 0, 2]).demandClass // => "intermittent"
 */
export function demandPattern(history: readonly number[]): DemandPattern {
  const sizes = history.filter((demand) => demand > 0);
  const demands = sizes.length;
  const interval = demands > 0 ? history.length / demands : undefined;
  const sizeVariation = demands > 1 ? squaredVariation(sizes) : undefined;
  return { demands, interval, sizeVariation, demandClass: classOf(interval, sizeVariation) };
}

function classOf(interval: number | undefined, sizeVariation: number | undefined): DemandClass | undefined {
  if (interval === undefined || sizeVariation === undefined) return undefined;
  if (interval < INTERVAL_CUT_OFF) return sizeVariation < VARIATION_CUT_OFF ? "smooth" : "erratic";
  return sizeVariation < VARIATION_CUT_OFF ? "intermittent" : "lumpy";
}

function squaredVariation(sizes: readonly number[]): number {
  const mean = sizes.reduce((sum, size) => sum + size, 0) / sizes.length;
  return sizes.reduce((sum, size) => sum + (size - mean) ** 2, 0) / (sizes.length - 1) / mean ** 2;
}
