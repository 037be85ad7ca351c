/** What the order of locking asks of a rear valve or a rear wheel cylinder, exactly: everything here is quadratic in the deceleration, piece by piece. */
import { pascals, type Pascals } from "../quantity";
import { idealRear, rearLoad, type Stance } from "./axles";
import { inletFor, outletAt, type PressureCurve } from "./pressure-curve";
import { quadraticThrough, rootsBetween } from "./quadratic";
import type { Stretch } from "./rear-ahead";

/** One car under one load, with the rear proportioning left out. */
export interface Balanced {
  readonly stance: Stance;
  /** Force over weight for each pascal above the threshold. [1/Pa] */
  readonly frontPerPascal: number;
  readonly rearPerPascal: number;
  /** From line pressure to what is left above the fronts' threshold. */
  readonly frontEffective: PressureCurve;
  /** From line pressure to where the rear valve stands. */
  readonly rearLine: PressureCurve;
  readonly rearThreshold: Pascals;
}

/** Line pressure at which the fronts do their ideal part of a deceleration. [Pa] */
export const linePressureAt = ({ stance, frontPerPascal, frontEffective }: Balanced, z: number): Pascals =>
  inletFor(frontEffective, pascals((z * (1 - rearLoad(stance, z))) / frontPerPascal));

/** Most pressure at the rear wheels that keeps them from passing the fronts. [Pa] */
export const mostRearPressure = ({ stance, rearPerPascal, rearThreshold }: Balanced, z: number): Pascals => pascals(idealRear(stance, z) / rearPerPascal + rearThreshold);

/** Pressure that reaches the rear valve when the fronts do their ideal part. [Pa] */
const atValve = (car: Balanced, z: number): Pascals => outletAt(car.rearLine, linePressureAt(car, z));

/**
 * Largest split point of a rear valve with which the rears nowhere pass the fronts.
 * @param car one load [-, 1/Pa, Pa]
 * @param slope of the valve, below 1 [-]
 * @param range of decelerations [g]
 * @returns split point [Pa]; Infinity where no valve is needed, negative where none of this slope will do
 * @source at each z: split + slope (p - split) may not pass the ideal rear pressure; the largest split is concave in z on each piece, so the least stands at an end
 */
export function largestSplit(car: Balanced, slope: number, range: Stretch): number {
  const excess = (z: number): number => atValve(car, z) - mostRearPressure(car, z);
  const split = (z: number): number => (mostRearPressure(car, z) - slope * atValve(car, z)) / (1 - slope);
  let least = Infinity;
  for (const [from, to] of smoothParts(car, range)) {
    const roots = rootsBetween(quadraticThrough(excess, from, to)).map((t) => from + t * (to - from));
    const ends = [from, ...roots, to];
    for (let i = 0; i < ends.length - 1; i++) {
      const [a, b] = [ends[i] as number, ends[i + 1] as number];
      if (excess((a + b) / 2) > 0) least = Math.min(least, split(a), split(b));
    }
  }
  return least;
}

/**
 * Slope of the valve whose line joins the ideal rear pressure where the rears begin to pass the fronts to the one at the end of the range: the least loss of rear braking.
 * @param car one load [-, 1/Pa, Pa]
 * @param range of decelerations [g]
 * @returns slope [-]; undefined where no valve is needed or a line cannot do it
 * @source the ideal rear pressure is concave over the line pressure, so a chord of it lies below it
 */
export function chordSlope(car: Balanced, range: Stretch): number | undefined {
  const excess = (z: number): number => atValve(car, z) - mostRearPressure(car, z);
  if (excess(range.to) <= 0) return undefined;
  const parts = smoothParts(car, range).flatMap(([from, to]) => rootsBetween(quadraticThrough(excess, from, to)).map((t) => from + t * (to - from)));
  const from = excess(range.from) >= 0 ? range.from : (parts.at(-1) ?? range.from);
  const slope = (mostRearPressure(car, range.to) - mostRearPressure(car, from)) / (atValve(car, range.to) - atValve(car, from));
  return slope > 0 && slope < 1 ? slope : undefined;
}

/**
 * How many times their piston area the rear brakes may have before they pass the fronts.
 * @param car one load [-, 1/Pa, Pa]
 * @param rearEffective from line pressure to what is left above the rears' threshold, with every valve in place [Pa over Pa]
 * @param range of decelerations [g]
 * @returns ratio [-]; Infinity where the rears do nothing
 * @source least of ideal over actual rear force; on each piece a concave over a convex figure, which has no valley: the least stands at an end
 */
export function largestRearScale(car: Balanced, rearEffective: PressureCurve, range: Stretch): number {
  const ends = smoothParts(car, range, rearEffective).flat();
  const actual = (z: number): number => outletAt(rearEffective, linePressureAt(car, z));
  return Math.min(...ends.map((z) => (actual(z) > 0 ? idealRear(car.stance, z) / car.rearPerPascal / actual(z) : Infinity)));
}

/** The range cut where a valve on either line changes its slope. */
function smoothParts(car: Balanced, { from, to }: Stretch, more: PressureCurve = car.rearLine): (readonly [number, number])[] {
  const { frontEffective, rearLine, stance: { front, height }, frontPerPascal } = car;
  const pressures = [...frontEffective.inlet, ...rearLine.inlet, ...more.inlet];
  // The deceleration of which a front force is the ideal part: z (front + height z) = force.
  const cuts = pressures.map((p) => (Math.sqrt(front ** 2 + 4 * height * frontPerPascal * outletAt(frontEffective, p as Pascals)) - front) / (2 * height));
  const ends = [from, ...[...new Set(cuts)].filter((z) => z > from && z < to).sort((a, b) => a - b), to];
  return ends.slice(1).map((end, i) => [ends[i] as number, end] as const);
}
