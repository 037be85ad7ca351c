/** The units that headings may carry, by quantity; past this file everything is SI. */
import {
  bar, centimetres, cubicCentimetres, cubicCentimetresPerFoot, cubicCentimetresPerMetre, cubicInches, degrees, feet, fluidOunces, inches, inchesOfMercury, kilograms,
  kilometresPerHour, kilopascals, megapascals, metres, metresPerSecond, milesPerHour, millimetres, millimetresOfMercury, newtons, perMegapascal, pounds, poundsForce, psi, radians, seconds,
  type CubicMetres, type Kilograms, type Metres, type MetresPerSecond, type Newtons, type Pascals, type PerPascal, type Radians, type Seconds, type SquareMetres,
} from "../core/quantity";

export interface Unit<T extends number = number> {
  /** As headings show it; empty for a heading without a unit. */
  readonly name: string;
  /** Other ways to write it, in lower case. */
  readonly also: readonly string[];
  /** From a figure in this unit to SI. */
  readonly from: (value: number) => T;
}

export interface Quantity<T extends number = number> {
  readonly name: string;
  readonly units: readonly Unit<T>[];
  /** What a figure means under a heading without a unit, where that is allowed. */
  readonly alone?: string;
}

const unit = <T extends number>(name: string, from: (value: number) => T, ...also: string[]): Unit<T> => ({ name, also, from });

export const length: Quantity<Metres> = {
  name: "length",
  units: [unit("in", inches, "inch", "inches", '"'), unit("ft", feet, "foot", "feet"), unit("mm", millimetres), unit("cm", centimetres), unit("m", metres)],
};
/** Points of a line; a heading without a unit leaves it to the column that stands beside. */
export const coordinates: Quantity = { name: "length", units: [...length.units, unit("", (value) => value)], alone: "in the unit of Length" };
export const pressure: Quantity<Pascals> = {
  name: "pressure",
  units: [unit("psi", psi, "lbf/in²", "lbf/in2", "psig"), unit("bar", bar), unit("kPa", kilopascals), unit("MPa", megapascals)],
};
export const force: Quantity<Newtons> = { name: "force", units: [unit("lbf", poundsForce), unit("N", newtons)] };
export const mass: Quantity<Kilograms> = { name: "mass", units: [unit("lb", pounds, "lbs"), unit("kg", kilograms)] };
export const vacuum: Quantity<Pascals> = {
  name: "vacuum",
  units: [unit("inHg", inchesOfMercury, "in hg", "\"hg"), unit("kPa", kilopascals), unit("mmHg", millimetresOfMercury, "mm hg")],
};
export const volume: Quantity<CubicMetres> = {
  name: "volume",
  units: [unit("in³", cubicInches, "in3", "in^3", "cu in"), unit("cc", cubicCentimetres), unit("cm³", cubicCentimetres, "cm3", "cm^3"), unit("ml", cubicCentimetres), unit("fl oz", fluidOunces, "fl. oz", "floz")],
};
export const volumePerLength: Quantity<SquareMetres> = {
  name: "volume per length",
  units: [
    unit("cc/ft", cubicCentimetresPerFoot, "cm³/ft", "cm3/ft", "ml/ft"),
    unit("cc/m", cubicCentimetresPerMetre, "cm³/m", "cm3/m", "ml/m"),
  ],
};
export const speed: Quantity<MetresPerSecond> = { name: "speed", units: [unit("mph", milesPerHour), unit("km/h", kilometresPerHour, "kph"), unit("m/s", metresPerSecond)] };
export const time: Quantity<Seconds> = { name: "time", units: [unit("s", seconds, "seconds"), unit("ms", (value) => seconds(value / 1000))] };
export const angle: Quantity<Radians> = { name: "angle", units: [unit("deg", degrees, "°", "degrees"), unit("rad", radians)] };
export const compressibility: Quantity<PerPascal> = { name: "compressibility", units: [unit("1/MPa", perMegapascal), unit("1/GPa", (value) => perMegapascal(value / 1000))] };
/** A share without a unit is written 0 to 1. */
export const share: Quantity = { name: "share", units: [unit("%", (value) => value / 100, "percent", "pct"), unit("", (value) => value)], alone: "0 to 1" };
/** Time to delivery, in weeks. */
export const leadTime: Quantity = { name: "time", units: [unit("weeks", (value) => value, "week", "wk"), unit("days", (value) => value / 7, "day")] };
/** Threads per inch, or the pitch itself; a heading without a unit leaves it to the size of the figure. */
export const threadPitch: Quantity = { name: "pitch", units: [unit("tpi", (value) => inches(1 / value), "threads per inch", "per inch"), unit("mm", millimetres), unit("", (value) => value)], alone: "threads per inch or millimetres" };
/** A caliper's pistons are counted on one side of the disc; a heading that says otherwise must not be read as if it did. */
export const pistonCount: Quantity = { name: "count", units: [unit("a side", (value) => value, "per side", "each side"), unit("", (value) => value)], alone: "a side" };

/** The unit of a quantity by the text in a heading's brackets; undefined when the quantity has no such unit. */
export function unitNamed<T extends number>(quantity: Quantity<T>, text: string): Unit<T> | undefined {
  const plain = text.trim().replace(/\s+/g, " ").toLowerCase();
  return quantity.units.find(({ name, also }) => name.toLowerCase() === plain || also.includes(plain));
}

/** `Bore (in), Bore (mm) or Bore (m)`: the headings that a quantity's column may carry. */
export function sayHeadings(heading: string, quantity: Quantity): string {
  const written = quantity.units.map(({ name }) => (name === "" ? `${heading} alone, meaning ${quantity.alone ?? "as it is"}` : `${heading} (${name})`));
  return sayChoices(written);
}

/** `a, b or c`. */
export const sayChoices = (choices: readonly string[]): string =>
  choices.length < 2 ? choices.join("") : `${choices.slice(0, -1).join(", ")} or ${choices.at(-1)}`;
