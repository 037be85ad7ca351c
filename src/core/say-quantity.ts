/** Figures in sentences, in the units of the workbook. */
import { inBar, inCubicCentimetres, inCubicInches, inFeet, inInches, inInchesOfMercury, inMillimetres, inPoundsForce, inPsi, type CubicMetres, type Metres, type Newtons, type Pascals } from "./quantity";
import type { Settings } from "./settings";

type Units = Pick<Settings, "units">;
const say = (value: number, digits: number, unit: string): string => `${Number(value.toFixed(digits))} ${unit}`;

export const sayPressure = ({ units }: Units, pressure: Pascals): string => (units === "us" ? say(inPsi(pressure), 0, "psi") : say(inBar(pressure), 1, "bar"));
export const sayForce = ({ units }: Units, force: Newtons): string => (units === "us" ? say(inPoundsForce(force), 0, "lbf") : say(force, 0, "N"));
export const sayVacuum = ({ units }: Units, vacuum: Pascals): string => (units === "us" ? say(inInchesOfMercury(vacuum), 1, "inHg") : say(vacuum / 1000, 0, "kPa"));
export const sayLength = ({ units }: Units, length: Metres): string => (units === "us" ? say(inInches(length), 3, "in") : say(inMillimetres(length), 1, "mm"));
export const sayDistance = ({ units }: Units, distance: Metres): string => (units === "us" ? say(inFeet(distance), 0, "ft") : say(distance, 1, "m"));
export const sayVolume = ({ units }: Units, volume: CubicMetres): string => (units === "us" ? say(inCubicInches(volume), 3, "in³") : say(inCubicCentimetres(volume), 2, "cm³"));
export const sayFigure = (value: number, digits = 2): string => String(Number(value.toFixed(digits)));
export const sayShare = (value: number): string => `${Number((value * 100).toFixed(1))} %`;
