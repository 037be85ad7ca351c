/** What each duty of a passage does to the pressure, as a curve. Quasi-static and for rising pressure: hysteresis on release is left out. */
import type { Duty } from "../component";
import type { Pascals } from "../quantity";
import { inSeries, straight, type PressureCurve } from "./pressure-curve";

/** A hold-off whose full pressure is its opening pressure opens within this share of it, so that the curve stays one. */
const SUDDEN = 1e-9;

/**
 * Hold-off (metering): shut but for its rest pressure, then a straight blend from opening to full opening, then open.
 * @param opens inlet pressure where it begins to open [Pa]
 * @param full inlet pressure from which it is fully open [Pa]
 * @param rest pressure it lets past while shut [Pa]
 * @returns outlet over inlet [Pa over Pa]
 * @source quasi-static model, common practice (from memory)
 * @example outletAt(holdOff(bar(6), bar(30), bar(0)), bar(18)) // => 15e5
 */
export function holdOff(opens: Pascals, full: Pascals, rest: Pascals): PressureCurve {
  const [shut, open] = [Math.min(rest, opens), Math.max(full, opens * (1 + SUDDEN))];
  return shut > 0 && shut < opens ? { inlet: [0, shut, opens, open], outlet: [0, shut, shut, open], slope: 1 } : { inlet: [0, opens, open], outlet: [0, shut, open], slope: 1 };
}

/**
 * Proportioning: even pressure up to the split point, then the slope on the increment only. A limiting valve has the slope 0.
 * @param split inlet pressure at the split point [Pa]
 * @param slope outlet for each unit of inlet above it [-]
 * @returns outlet over inlet [Pa over Pa]
 * @source course notes on braking systems, slide 19 (check value A23), and manual data
 * @example outletAt(proportioning(bar(40), 0.5), bar(80)) // => 60e5
 */
export const proportioning = (split: Pascals, slope: number): PressureCurve => ({ inlet: [0, split], outlet: [0, split], slope });

/**
 * Residual: what stands behind it never falls below the pressure it holds, once the brakes have been applied.
 * A cracking drop, which some makes have, is left out.
 * @param holds pressure held after release [Pa]
 * @returns outlet over inlet [Pa over Pa]
 * @source common practice (from memory)
 * @example outletAt(residual(psi(10)), psi(4)) // => 68947.6
 */
export const residual = (holds: Pascals): PressureCurve => ({ inlet: [0, holds], outlet: [holds, holds], slope: 1 });

/** What a duty depends on beside its own row. */
export interface DutyState {
  readonly laden: boolean;
  /** The split that an adjustable valve is set to; Infinity when it is wound out to no reduction. [Pa] */
  readonly adjustedTo: number | undefined;
  readonly holdOffRest: Pascals;
}

/** The curve of one duty; undefined while a figure of it is not stated. */
export function curveOf(duty: Duty, state: DutyState): PressureCurve | undefined {
  switch (duty.does) {
    case "through": return straight;
    case "hold-off": return both(duty.opens, duty.full, (opens, full) => holdOff(opens, full, state.holdOffRest));
    case "proportioning": return both(duty.split, duty.slope, proportioning);
    case "load-sensing-proportioning": return both(state.laden ? duty.ladenSplit : duty.split, duty.slope, proportioning);
    case "adjustable-proportioning":
      if (state.adjustedTo === Infinity) return straight;
      return both(state.adjustedTo as Pascals | undefined, duty.slope, proportioning);
    case "limiting": return duty.split && proportioning(duty.split, 0);
    case "residual": return duty.holds === undefined ? straight : residual(duty.holds); // what it holds at rest changes no pressure above it
    default: return duty satisfies never;
  }
}

/** Any number of duties in flow order. */
export const chainOf = (curves: readonly PressureCurve[]): PressureCurve => curves.reduce(inSeries, straight);

const both = <A, B, T>(a: A | undefined, b: B | undefined, make: (a: A, b: B) => T): T | undefined => (a === undefined || b === undefined ? undefined : make(a, b));
