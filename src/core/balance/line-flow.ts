/** Flow in brake lines while the pedal moves. At rest none of it matters: pressure is then the same everywhere. */
import type { Metres, Pascals } from "../quantity";

/**
 * Reynolds number; laminar below about 2000, and nothing here holds above.
 * @param speed mean speed [m/s]
 * @param bore inside diameter [m]
 * @param viscosity kinematic [m2/s]
 * @returns number [-]
 * @source Re = V D / nu (check values C04, C05)
 * @example reynoldsNumber(2, millimetres(3), 1.2e-5) // => 500
 */
export const reynoldsNumber = (speed: number, bore: Metres, viscosity: number): number => (speed * bore) / viscosity;

/**
 * Resistance of a line to laminar flow.
 * @param length of the line [m]
 * @param bore inside diameter [m]
 * @param viscosity dynamic [Pa s]
 * @returns pressure for each flow [Pa s/m3]
 * @source 128 mu L / (pi D^4), OpenStax, College Physics, ch. 12.4 (check values C10 to C12)
 * @example flowResistance(metres(1), millimetres(4), 0.02) // => 3.183e9
 */
export const flowResistance = (length: Metres, bore: Metres, viscosity: number): number => (128 * viscosity * length) / (Math.PI * bore ** 4);

/**
 * Inertance of a line.
 * @param length of the line [m]
 * @param bore inside diameter [m]
 * @param density of the fluid [kg/m3]
 * @returns pressure for each rate of change of flow [kg/m4]
 * @source rho L / A, brake-hydraulics research notes (check value C13)
 * @example flowInertance(metres(3), millimetres(3), 1000) // => 4.244e8
 */
export const flowInertance = (length: Metres, bore: Metres, density: number): number => (density * length) / ((Math.PI / 4) * bore ** 2);

/**
 * Frequency at which a line and what it feeds swing.
 * @param inertance of the line [kg/m4]
 * @param compliance of what it feeds, volume for each pressure [m3/Pa]
 * @returns frequency [Hz]
 * @source 1 / (2 pi sqrt(I C)), brake-hydraulics research notes (check value C14)
 * @example lineFrequency(1e8, 1e-12) // => 15.92
 */
export const lineFrequency = (inertance: number, compliance: number): number => 1 / (2 * Math.PI * Math.sqrt(inertance * compliance));

/**
 * Speed of a pressure wave in fluid between stiff walls.
 * @param modulus bulk modulus [Pa]
 * @param density of the fluid [kg/m3]
 * @returns speed [m/s]
 * @source sqrt(beta / rho) (check value C15)
 * @example waveSpeed(pascals(1.6e9), 1000) // => 1264.9
 */
export const waveSpeed = (modulus: Pascals, density: number): number => Math.sqrt(modulus / density);

export interface Viscosity {
  /** Kinematic. [mm2/s] */
  readonly viscosity: number;
  /** [°C] */
  readonly temperature: number;
}

/**
 * Kinematic viscosity between two known points.
 * @param cold one point [mm2/s, °C]
 * @param hot another [mm2/s, °C]
 * @param temperature wanted [°C]
 * @returns viscosity [mm2/s]
 * @source Walther, ASTM D341: log log (nu + 0.7) = A - B log T (from memory; check value C30 through the limits of DOT 4)
 * @example viscosityAt({ viscosity: 1800, temperature: -40 }, { viscosity: 1.5, temperature: 100 }, 20) // => 11.53
 */
export function viscosityAt(cold: Viscosity, hot: Viscosity, temperature: number): number {
  const double = (viscosity: number): number => Math.log10(Math.log10(viscosity + 0.7));
  const kelvin = (celsius: number): number => Math.log10(celsius + 273.15);
  const slope = (double(cold.viscosity) - double(hot.viscosity)) / (kelvin(cold.temperature) - kelvin(hot.temperature));
  return 10 ** (10 ** (double(cold.viscosity) + slope * (kelvin(temperature) - kelvin(cold.temperature)))) - 0.7;
}
