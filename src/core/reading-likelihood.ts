/** How likely a caliper and pitch reading is on a thread, with the error of reading as a normal one. */
import type { Gender } from "./joint";
import type { Metres } from "./quantity";
import { externalMajorWindow, internalMinorWindow, type Thread } from "./thread";

export interface ReadingSpread {
  /** Standard deviation of the diameter [m]. */
  readonly diameter: Metres;
  /** Standard deviation of the pitch as a share of it. */
  readonly pitch: number;
}

export interface Reading {
  readonly diameter: Metres;
  readonly pitch?: Metres | undefined;
}

/**
 * Density of a reading on a thread: its true size lies anywhere within the thread's limits alike, and the reading off it by a normal error.
 * @param reading diameter [m] and, if it was taken, pitch [m]
 * @returns density per metre of diameter, and per unit share of pitch when a pitch was read; only ratios of it between threads mean anything
 * @source convolution of a uniform and a normal distribution: (Φ((d − least) / σ) − Φ((d − most) / σ)) / (most − least)
 */
export function readingLikelihood(thread: Thread, gender: Gender, reading: Reading, spread: ReadingSpread): number {
  const { least, most } = gender === "male" ? externalMajorWindow(thread) : internalMinorWindow(thread);
  const below = normalBelow((reading.diameter - least) / spread.diameter) - normalBelow((reading.diameter - most) / spread.diameter);
  const onDiameter = below / (most - least);
  if (reading.pitch === undefined) return onDiameter;
  const off = (reading.pitch - thread.pitch) / thread.pitch / spread.pitch;
  return (onDiameter * Math.exp(-(off ** 2) / 2)) / (spread.pitch * Math.sqrt(2 * Math.PI));
}

/** That a reading is of each thread, 0 to 1, all of them alike beforehand; all 0 when it is far from every one. */
export function threadProbabilities(threads: readonly Thread[], gender: Gender, reading: Reading, spread: ReadingSpread): number[] {
  const likelihoods = threads.map((thread) => readingLikelihood(thread, gender, reading, spread));
  const total = likelihoods.reduce((sum, likelihood) => sum + likelihood, 0);
  return likelihoods.map((likelihood) => (total > 0 ? likelihood / total : 0));
}

/**
 * Share of a standard normal distribution below a value.
 * @source M. Abramowitz, I. Stegun, Handbook of Mathematical Functions, 1964, 7.1.26 for the error function: within 1.5e-7 (from memory)
 * @example normalBelow(0) // => 0.5
 */
export function normalBelow(value: number): number {
  const x = Math.abs(value) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const polynomial = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const above = (polynomial * Math.exp(-(x ** 2))) / 2;
  return value < 0 ? above : 1 - above;
}
