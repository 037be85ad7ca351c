/** Disc brakes. */
import { metres, newtonMetres, type Metres, type NewtonMetres, type Pascals, type SquareMetres } from "../quantity";

/**
 * Torque of one disc brake.
 * @param pressure at the caliper above the threshold that brings the pads on [Pa]
 * @param pistonArea on ONE side of a fixed caliper; of all pistons of a floating one [m2]
 * @param friction of the pads [-]
 * @param radius effective radius [m]
 * @returns torque of one wheel [N m]; two pads, so twice the clamping force
 * @source T = 2 mu p A r, brake-hydraulics research notes (check values A26, A83, A84)
 * @example discTorque(megapascals(5), squareMetres(2e-3), 0.4, metres(0.12)) // => 960
 */
export const discTorque = (pressure: Pascals, pistonArea: SquareMetres, friction: number, radius: Metres): NewtonMetres =>
  newtonMetres(2 * friction * Math.max(0, pressure) * pistonArea * radius);

/**
 * Effective radius of worn-in pads.
 * @param outer radius of the rubbed ring [m]
 * @param inner radius of the rubbed ring [m]
 * @returns radius [m]
 * @source uniform wear: (ro + ri) / 2, brake-hydraulics research notes
 * @example uniformWearRadius(metres(0.14), metres(0.09)) // => 0.115
 */
export const uniformWearRadius = (outer: Metres, inner: Metres): Metres => metres((outer + inner) / 2);

/**
 * Effective radius of new pads.
 * @param outer radius of the rubbed ring [m]
 * @param inner radius of the rubbed ring [m]
 * @returns radius [m]
 * @source uniform pressure: 2/3 (ro^3 - ri^3) / (ro^2 - ri^2) (from memory)
 * @example uniformPressureRadius(metres(0.12), metres(0.06)) // => 0.09333
 */
export const uniformPressureRadius = (outer: Metres, inner: Metres): Metres =>
  metres(((2 / 3) * (outer ** 2 + outer * inner + inner ** 2)) / (outer + inner));
