/** Figures in sentences, in the units of the workbook. */
import { inBar, inCubicCentimetres, inCubicInches, inFluidOunces, inFeet, inInches, inInchesOfMercury, inMillimetres, inPoundsForce, inPsi, type CubicMetres, type Metres, type Newtons, type Pascals } from "./quantity";
import type { Settings } from "./settings";

type Units = Pick<Settings, "units">;
const say = (value: number, digits: number, unit: string): string => `${Number(value.toFixed(digits))} ${unit}`;

export const sayPressure = ({ units }: Units, pressure: Pascals): string => (units === "us" ? say(inPsi(pressure), 0, "psi") : say(inBar(pressure), 1, "bar"));
export const sayForce = ({ units }: Units, force: Newtons): string => (units === "us" ? say(inPoundsForce(force), 0, "lbf") : say(force, 0, "N"));
export const sayVacuum = ({ units }: Units, vacuum: Pascals): string => (units === "us" ? say(inInchesOfMercury(vacuum), 1, "inHg") : say(vacuum / 1000, 0, "kPa"));
export const sayLength = ({ units }: Units, length: Metres): string => (units === "us" ? say(inInches(length), 3, "in") : say(inMillimetres(length), 1, "mm"));
export const sayDistance = ({ units }: Units, distance: Metres): string => (units === "us" ? say(inFeet(distance), 0, "ft") : say(distance, 1, "m"));
export const sayVolume = ({ units }: Units, volume: CubicMetres): string => (units === "us" ? say(inCubicInches(volume), 3, "in³") : say(inCubicCentimetres(volume), 2, "cm³"));
/** What a residual holds: so little that it needs a digit more than a line pressure. */
export const sayResidual = ({ units }: Units, pressure: Pascals): string => (units === "us" ? say(inPsi(pressure), 1, "psi") : say(inBar(pressure), 2, "bar"));
/** As a bottle's label has it. */
export const sayBottle = ({ units }: Units, volume: CubicMetres): string => (units === "us" ? say(inFluidOunces(volume), 1, "fl oz") : say(inCubicCentimetres(volume), 0, "ml"));
export const sayFigure = (value: number, digits = 2): string => String(Number(value.toFixed(digits)));
export const sayShare = (value: number): string => `${Number((value * 100).toFixed(1))} %`;

/**
 * A length as a tape shows it: `41 1/2 in`, to the nearest sixteenth, or `1054 mm`.
 * @source common practice, no source
 */
export function sayOnTape({ units }: Units, length: Metres): string {
  if (units !== "us") return say(inMillimetres(length), 0, "mm");
  const sixteenths = Math.round(inInches(length) * 16);
  const [whole, rest] = [Math.floor(sixteenths / 16), sixteenths % 16];
  const divisor = [8, 4, 2, 1].find((by) => rest % by === 0) ?? 1;
  const fraction = rest === 0 ? "" : `${rest / divisor}/${16 / divisor}`;
  return `${[whole > 0 || fraction === "" ? String(whole) : "", fraction].filter((part) => part !== "").join(" ")} in`;
}
