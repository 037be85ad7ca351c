/** Physical quantities: the unit is in the type, and SI is the only unit inside. */

declare const unit: unique symbol;
type Quantity<U extends string> = number & { readonly [unit]: U };

export type Metres = Quantity<"m">;
export type Pascals = Quantity<"Pa">;
export type Newtons = Quantity<"N">;
export type Kilograms = Quantity<"kg">;
export type CubicMetres = Quantity<"m3">;
export type SquareMetres = Quantity<"m2">;
export type NewtonMetres = Quantity<"N m">;
export type Radians = Quantity<"rad">;
export type Seconds = Quantity<"s">;
export type MetresPerSecond = Quantity<"m/s">;
export type Joules = Quantity<"J">;
/** Share of its volume that a fluid gives way for each unit of pressure. */
export type PerPascal = Quantity<"1/Pa">;

const METRES_PER_INCH = 0.0254; // exact, international yard and pound agreement of 1959
const KILOGRAMS_PER_POUND = 0.45359237; // exact, same agreement
export const STANDARD_GRAVITY = 9.80665; // m/s2, exact, 3rd CGPM 1901
const NEWTONS_PER_POUND_FORCE = KILOGRAMS_PER_POUND * STANDARD_GRAVITY;
const PASCALS_PER_PSI = NEWTONS_PER_POUND_FORCE / METRES_PER_INCH ** 2;
const PASCALS_PER_BAR = 1e5;
const PASCALS_PER_INCH_OF_MERCURY = 3386.389; // conventional mercury at 0 degC (NIST SP 811, table B.8)

export const metres = (value: number) => value as Metres;
export const inches = (value: number) => (value * METRES_PER_INCH) as Metres;
export const feet = (value: number) => (value * 12 * METRES_PER_INCH) as Metres;
export const millimetres = (value: number) => (value / 1000) as Metres;
export const centimetres = (value: number) => (value / 100) as Metres;
export const inInches = (length: Metres): number => length / METRES_PER_INCH;
export const inFeet = (length: Metres): number => length / METRES_PER_INCH / 12;
export const inMillimetres = (length: Metres): number => length * 1000;

export const pascals = (value: number) => value as Pascals;
export const psi = (value: number) => (value * PASCALS_PER_PSI) as Pascals;
export const bar = (value: number) => (value * PASCALS_PER_BAR) as Pascals;
export const kilopascals = (value: number) => (value * 1000) as Pascals;
export const megapascals = (value: number) => (value * 1e6) as Pascals;
export const inchesOfMercury = (value: number) => (value * PASCALS_PER_INCH_OF_MERCURY) as Pascals;
export const millimetresOfMercury = (value: number) => ((value * PASCALS_PER_INCH_OF_MERCURY) / 25.4) as Pascals;
export const inPsi = (pressure: Pascals): number => pressure / PASCALS_PER_PSI;
export const inBar = (pressure: Pascals): number => pressure / PASCALS_PER_BAR;

export const inInchesOfMercury = (pressure: Pascals): number => pressure / PASCALS_PER_INCH_OF_MERCURY;

export const newtons = (value: number) => value as Newtons;
export const poundsForce = (value: number) => (value * NEWTONS_PER_POUND_FORCE) as Newtons;
export const inPoundsForce = (force: Newtons): number => force / NEWTONS_PER_POUND_FORCE;

export const kilograms = (value: number) => value as Kilograms;
export const pounds = (value: number) => (value * KILOGRAMS_PER_POUND) as Kilograms;
/** Weight of a mass under standard gravity. */
export const inPounds = (mass: Kilograms): number => mass / KILOGRAMS_PER_POUND;
export const weightOf = (mass: Kilograms) => (mass * STANDARD_GRAVITY) as Newtons;

export const squareMetres = (value: number) => value as SquareMetres;
export const newtonMetres = (value: number) => value as NewtonMetres;
export const radians = (value: number) => value as Radians;
export const degrees = (value: number) => ((value * Math.PI) / 180) as Radians;
export const joules = (value: number) => value as Joules;

export const seconds = (value: number) => value as Seconds;
export const metresPerSecond = (value: number) => value as MetresPerSecond;
export const kilometresPerHour = (value: number) => (value / 3.6) as MetresPerSecond;
export const milesPerHour = (value: number) => ((value * 5280 * 12 * METRES_PER_INCH) / 3600) as MetresPerSecond;

export const cubicMetres = (value: number) => value as CubicMetres;
export const cubicInches = (value: number) => (value * METRES_PER_INCH ** 3) as CubicMetres;
export const cubicCentimetres = (value: number) => (value * 1e-6) as CubicMetres;
export const inCubicInches = (volume: CubicMetres): number => volume / METRES_PER_INCH ** 3;
export const inCubicCentimetres = (volume: CubicMetres): number => volume * 1e6;
export const perMegapascal = (value: number) => (value * 1e-6) as PerPascal;
/** US fluid ounces, 231/128 cubic inches exactly: 231 cubic inches are a gallon of 128 (NIST Handbook 44, appendix C). */
export const inFluidOunces = (volume: CubicMetres): number => volume / ((231 / 128) * METRES_PER_INCH ** 3);
export const fluidOunces = (value: number) => (value * (231 / 128) * METRES_PER_INCH ** 3) as CubicMetres;

/** Volume for each unit of length, as hose makers state the growth of a hose. */
export const cubicCentimetresPerFoot = (value: number) => ((value * 1e-6) / (12 * METRES_PER_INCH)) as SquareMetres;
export const cubicCentimetresPerMetre = (value: number) => (value * 1e-6) as SquareMetres;
