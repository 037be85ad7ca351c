/** Stopping distances, and what a rule asks for. */
import { joules, metres, seconds, STANDARD_GRAVITY, type Joules, type Kilograms, type Metres, type MetresPerSecond, type Seconds } from "../quantity";

/** Between the foot and the full braking force. */
export interface Delay {
  readonly response: Seconds;
  readonly buildUp: Seconds;
}

/** Response and half the build-up, in which the speed hardly falls. [s] */
const lost = ({ response, buildUp }: Delay): number => response + buildUp / 2;

/**
 * Stopping distance on the level at one deceleration after a delay.
 * @param speed before the stop [m/s]
 * @param z deceleration [g]
 * @param delay response and build-up [s]
 * @returns distance [m]; Infinity at no deceleration
 * @source S = v (tr + tb/2) + v^2 / (2 z g) (OpenStax, College Physics, ch. 2.5: check values A05 to A08)
 * @example stoppingDistance(metresPerSecond(30), 7 / 9.80665, { response: seconds(0.5), buildUp: seconds(0) }) // => 79.29
 */
export const stoppingDistance = (speed: MetresPerSecond, z: number, delay: Delay): Metres =>
  metres(z > 0 ? speed * lost(delay) + speed ** 2 / (2 * z * STANDARD_GRAVITY) : Infinity);

/**
 * Deceleration that a stopping distance asks for.
 * @param speed before the stop [m/s]
 * @param distance within which to stop [m]
 * @param delay response and build-up [s]
 * @returns deceleration [g]; Infinity where the delay takes the whole distance
 * @source the function above, solved for z
 * @example decelerationFor(metresPerSecond(30), metres(79.2857), { response: seconds(0.5), buildUp: seconds(0) }) // => 0.7138
 */
export const decelerationFor = (speed: MetresPerSecond, distance: Metres, delay: Delay): number => {
  const left = distance - speed * lost(delay);
  return left > 0 ? speed ** 2 / (2 * left * STANDARD_GRAVITY) : Infinity;
};

/**
 * Time to stop at one deceleration.
 * @param speed before the stop [m/s]
 * @param z deceleration [g]
 * @returns time [s]
 * @source t = v / a (OpenStax, ch. 2.5: check values A09, A10, A118)
 * @example stoppingTime(metresPerSecond(19.6133), 0.5) // => 4
 */
export const stoppingTime = (speed: MetresPerSecond, z: number): Seconds => seconds(speed / (z * STANDARD_GRAVITY));

/**
 * Energy that the brakes take up in a stop.
 * @param mass of the car [kg]
 * @param speed before the stop [m/s]
 * @returns energy [J]
 * @source m v^2 / 2 (check values A11, A44, A117)
 * @example stoppingEnergy(kilograms(1500), metresPerSecond(20)) // => 300e3
 */
export const stoppingEnergy = (mass: Kilograms, speed: MetresPerSecond): Joules => joules((mass * speed ** 2) / 2);

/**
 * Mean fully developed deceleration of a measured stop.
 * @param stop speeds at 0.8 and 0.1 of the first, and the way between them [m/s, m/s, m]
 * @returns deceleration [g]
 * @source UN R13, annex 4, 1.1.2: (vb^2 - ve^2) / (25.92 (se - sb)) in km/h, which is a / 2 of the two speeds (check value A58)
 * @example meanFullyDevelopedDeceleration({ begins: metresPerSecond(20), ends: metresPerSecond(2.5), way: metres(40) }) // => 0.5019
 */
export const meanFullyDevelopedDeceleration = ({ begins, ends, way }: { readonly begins: MetresPerSecond; readonly ends: MetresPerSecond; readonly way: Metres }): number =>
  (begins ** 2 - ends ** 2) / (2 * way * STANDARD_GRAVITY);

/**
 * Least deceleration that a rule's efficiency line asks for at an adhesion utilised.
 * @param utilised adhesion utilised, 0.2 to 0.8 [-]
 * @param coefficient of the line: 0.85 in EEC 71/320 (read), 0.7 in UN R13-H and 49 CFR 571.135 (from memory) [-]
 * @returns deceleration [g]
 * @source z = 0.1 + c (k - 0.2) (check values A51 to A53)
 * @example efficiencyLine(0.8, 0.85) // => 0.61
 */
export const efficiencyLine = (utilised: number, coefficient: number): number => 0.1 + coefficient * (utilised - 0.2);
