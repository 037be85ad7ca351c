/** Fluid that brakes, hoses, lines and the fluid itself take up. */
import { cubicMetres, metres, pascals, type CubicMetres, type Metres, type Pascals, type PerPascal, type SquareMetres } from "../quantity";
import type { Material } from "../tube";

/**
 * Fluid that brings the pads of one disc brake on.
 * @param gap of each pad to the disc [m]
 * @param pistonArea on one side of a fixed caliper, of all pistons of a floating one [m2]
 * @returns volume [m3]; two faces, whether two pistons travel one gap or one travels two
 * @source faces x gap x area, brake-hydraulics research notes
 * @example padClearance(millimetres(0.15), squareMetres(2e-3)) // => 6e-7
 */
export const padClearance = (gap: Metres, pistonArea: SquareMetres): CubicMetres => cubicMetres(2 * gap * pistonArea);

/**
 * Fluid that brings both shoes of one drum brake on.
 * @param gap of a shoe to the drum at the lining's middle [m]
 * @param cylinderArea of one piston [m2]
 * @param lever wheel-cylinder travel over that gap: anchor to cylinder over anchor to lining [-]
 * @returns volume [m3]
 * @source V = 2 x A (from memory)
 * @example shoeClearance(millimetres(0.3), squareMetres(4e-4), 2) // => 4.8e-7
 */
export const shoeClearance = (gap: Metres, cylinderArea: SquareMetres, lever: number): CubicMetres => cubicMetres(2 * gap * lever * cylinderArea);

/**
 * Growth of a hose, taken as straight in pressure.
 * @param length of the hose [m]
 * @param expansion volume for each length at the stated pressure [m2]
 * @param share of the stated pressure [-]
 * @returns volume [m3]
 * @source V = e L (SAE J1401 by way of a patent; check values C18, C19)
 * @example hoseGrowth(metres(0.4), cubicCentimetresPerFoot(0.33), 1) // => 4.33e-7
 */
export const hoseGrowth = (length: Metres, expansion: SquareMetres, share: number): CubicMetres => cubicMetres(length * expansion * share);

/** Young's modulus of tube. [Pa] (from memory) */
const STIFFNESS: Readonly<Record<Material, number>> = { "mild steel": 207e9, stainless: 193e9, "copper-nickel": 135e9, copper: 117e9 };
const POISSON = 0.3;

/**
 * Growth of a line with closed ends.
 * @param tube bore, wall, length and material [m, m, m]
 * @param pressure in it [Pa]
 * @returns volume [m3]; about 2e-4 of its own at 100 bar
 * @source dV/V = (p / E) (d / t) (5/4 - nu), thin wall (from memory)
 * @example lineGrowth({ bore: millimetres(3.33), wall: millimetres(0.71), length: metres(3), material: "mild steel" }, bar(100)) // => 5.624e-9
 */
export const lineGrowth = ({ bore, wall, length, material }: { readonly bore: Metres; readonly wall: Metres; readonly length: Metres; readonly material: Material }, pressure: Pascals): CubicMetres =>
  cubicMetres((Math.PI / 4) * bore ** 2 * length * (pressure / STIFFNESS[material]) * (bore / wall) * (1.25 - POISSON));

/**
 * Volume by which fluid gives way.
 * @param volume of the fluid [m3]
 * @param compressibility of it without air [1/Pa]
 * @param pressure in it [Pa]
 * @returns volume [m3]
 * @source dV = V kappa p; 0.0007 1/MPa is a bulk modulus of 1.43 GPa (check values C16, C17)
 * @example fluidCompression(cubicCentimetres(100), perMegapascal(0.0007), megapascals(10)) // => 7e-7
 */
export const fluidCompression = (volume: CubicMetres, compressibility: PerPascal, pressure: Pascals): CubicMetres => cubicMetres(volume * compressibility * pressure);

const ATMOSPHERE = pascals(101_325);
const ADIABATIC = 1.4;

/**
 * Volume by which air in the fluid gives way, pressed too fast to lose its heat.
 * @param air its volume at rest [m3]
 * @param pressure in it, gauge [Pa]
 * @returns volume [m3]; nearly all of the air at brake pressures
 * @source p V^1.4 = const; the integral of the bulk modulus below
 * @example airCompression(cubicCentimetres(1), pascals(101325)) // => 3.905e-7
 */
export const airCompression = (air: CubicMetres, pressure: Pascals): CubicMetres => cubicMetres(air * (1 - (1 + pressure / ATMOSPHERE) ** (-1 / ADIABATIC)));

/**
 * Bulk modulus of fluid with air in it.
 * @param compressibility of the fluid without air [1/Pa]
 * @param share of air to fluid by volume at rest [-]
 * @param pressure gauge [Pa]
 * @returns bulk modulus [Pa]; without air that of the fluid
 * @source Cho, thesis eqs 3.47 to 3.49, as re-derived in research notes
 * @example bulkModulus(perMegapascal(0.0007), 0, megapascals(5)) // => 1.42857e9
 */
export function bulkModulus(compressibility: PerPascal, share: number, pressure: Pascals): Pascals {
  const shrunk = (1 + pressure / ATMOSPHERE) ** (1 / ADIABATIC);
  return pascals((share + shrunk) / (share / (ADIABATIC * (pressure + ATMOSPHERE)) + shrunk * compressibility));
}

/**
 * Pedal travel of what there is.
 * @param height of the pedal above the floor at rest [m]
 * @param left height left under the force of the test [m]
 * @returns share [-]
 * @source 49 CFR 570.55 (c): (A - B) / A (check value A66)
 * @example travelShare(inches(7), inches(2)) // => 0.7143
 */
export const travelShare = (height: Metres, left: Metres): number => (height - left) / height;

/** Inside volume of a line. [m3] */
export const lineVolume = (bore: Metres, length: Metres): CubicMetres => cubicMetres((Math.PI / 4) * bore ** 2 * length);
/** Bore of a tube. [m] */
export const tubeBore = (outside: Metres, wall: Metres): Metres => metres(outside - 2 * wall);
