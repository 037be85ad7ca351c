/** How one pressure follows another through valves: piecewise linear and never falling, so every question about it has a closed answer. */
import { pascals, type Pascals } from "../quantity";

export interface PressureCurve {
  /** Inlet pressures where the slope changes, rising, the first 0. [Pa] */
  readonly inlet: readonly number[];
  /** The outlet pressure at each. [Pa] */
  readonly outlet: readonly number[];
  /** Outlet for each unit of inlet beyond the last. */
  readonly slope: number;
}

/** The outlet is the inlet. */
export const straight: PressureCurve = { inlet: [0], outlet: [0], slope: 1 };

/**
 * The outlet pressure at an inlet pressure.
 * @param curve outlet over inlet [Pa over Pa]
 * @param inlet gauge pressure [Pa]
 * @returns gauge pressure [Pa]
 * @source definition of a piecewise linear function
 * @example outletAt({ inlet: [0, 4e6], outlet: [0, 4e6], slope: 0.5 }, megapascals(8)) // => 6e6
 */
export function outletAt(curve: PressureCurve, inlet: Pascals): Pascals {
  const at = curve.inlet;
  let i = at.length - 1;
  while (i > 0 && (at[i] as number) > inlet) i--;
  return pascals((curve.outlet[i] as number) + slopeAfter(curve, i) * (inlet - (at[i] as number)));
}

/**
 * The least inlet pressure that gives an outlet pressure.
 * @param curve outlet over inlet [Pa over Pa]
 * @param outlet gauge pressure [Pa]
 * @returns gauge pressure [Pa]; Infinity where the curve never gets there
 * @source inverse of a function that never falls
 * @example inletFor({ inlet: [0, 4e6], outlet: [0, 4e6], slope: 0.5 }, megapascals(6)) // => 8e6
 */
export function inletFor(curve: PressureCurve, outlet: Pascals): Pascals {
  const reached = curve.outlet.findIndex((one) => one >= outlet);
  if (reached === 0) return pascals(0);
  const i = (reached < 0 ? curve.outlet.length : reached) - 1;
  return pascals((curve.inlet[i] as number) + (outlet - (curve.outlet[i] as number)) / slopeAfter(curve, i));
}

/** The second curve fed by the first: knees of both stay exact, and the order matters. */
export function inSeries(first: PressureCurve, second: PressureCurve): PressureCurve {
  if (second === straight) return first;
  const inlet: number[] = [];
  const outlet: number[] = [];
  for (let i = 0; i < first.inlet.length; i++) {
    const [x, y, slope] = [first.inlet[i] as number, first.outlet[i] as number, slopeAfter(first, i)];
    const end = first.outlet[i + 1] ?? (slope > 0 ? Infinity : y);
    inlet.push(x);
    outlet.push(outletAt(second, y as Pascals));
    for (let j = 0; j < second.inlet.length; j++) {
      const knee = second.inlet[j] as number;
      if (knee <= y || knee >= end) continue;
      inlet.push(x + (knee - y) / slope);
      outlet.push(second.outlet[j] as number);
    }
  }
  return { inlet, outlet, slope: first.slope * second.slope };
}

/** The mean of two curves, as of the left and the right wheel of an axle. */
export function meanOf(a: PressureCurve, b: PressureCurve): PressureCurve {
  if (a === b) return a;
  const inlet = kneesOf(a, b);
  const mean = (x: number): number => (outletAt(a, x as Pascals) + outletAt(b, x as Pascals)) / 2;
  return { inlet, outlet: inlet.map(mean), slope: (a.slope + b.slope) / 2 };
}

/** The inlet pressures where either curve changes its slope, rising. [Pa] */
export const kneesOf = (a: PressureCurve, b: PressureCurve): number[] => (a === b ? [...a.inlet] : [...new Set([...a.inlet, ...b.inlet])].sort((x, y) => x - y));

export function slopeAfter({ inlet, outlet, slope }: PressureCurve, i: number): number {
  if (i >= inlet.length - 1) return slope;
  return ((outlet[i + 1] as number) - (outlet[i] as number)) / ((inlet[i + 1] as number) - (inlet[i] as number));
}
