/** Columns of physical figures, in the units of the workbook. */
import { inBar, inCubicCentimetres, inCubicInches, inFeet, inInchesOfMercury, inPoundsForce, inPsi } from "../core/quantity";
import type { OfCar } from "./car-tables";
import { figureIn } from "./columns";

export const pressure = figureIn({ us: ["psi", 1, inPsi], metric: ["bar", 2, inBar] });
export const force = figureIn({ us: ["lbf", 1, inPoundsForce], metric: ["N", 1, Number] });
export const distance = figureIn({ us: ["ft", 1, inFeet], metric: ["m", 2, Number] });
export const volume = figureIn({ us: ["in³", 4, inCubicInches], metric: ["cm³", 3, inCubicCentimetres] });
export const vacuum = figureIn({ us: ["inHg", 1, inInchesOfMercury], metric: ["kPa", 1, (value: number) => value / 1000] });
const plain = (unit: string, digits: number, scale = 1) => { const one = [unit, digits, (value: number) => value * scale] as const; return figureIn({ us: one, metric: one }); };
export const [deceleration, adhesion, share] = [plain("g", 4), plain("adhesion", 4), plain("%", 2, 100)];

export const of = <T, V>(read: (item: T) => V) => ({ item }: OfCar<T>): V | undefined => (item === undefined ? undefined : read(item));
export const assumedText = (assumed: readonly string[]): string => assumed.join("; ");
