/** A car's pedal, booster and master as figures. */
import type { Assembled } from "../assembly";
import { lookUp } from "../catalogue";
import type { Component } from "../component";
import { newtons, pascals, squareMetres, type Newtons, type Pascals, type SquareMetres } from "../quantity";
import { assume, lacks, partFigure, platformFigure, platformFigures, type Reading } from "./figures";
import { boosted, boreArea, inputFor, linePressure, mostAssist, unboosted, type Assist } from "./pedal";

export interface Pedal {
  readonly ratio: number;
  readonly area: SquareMetres;
  /** Undefined without a booster. */
  readonly assist: (Assist & { readonly diaphragms: SquareMetres; readonly vacuum: Pascals; readonly component: Component }) | undefined;
  /** True where nobody has said which booster there is and it is taken as none. */
  readonly boosterUnknown: boolean;
}

/** Undefined while a figure is missing; each is then named. */
export function pedalOf(reading: Reading, { instances }: Assembled): Pedal | undefined {
  const master = instances.find(({ component }) => component.kind === "master")?.component;
  const bore = master ? partFigure(reading, "Components", [master.bore, "Bore", master]) : lacks(reading, "Cars", "Master", reading.car.name);
  const figures = platformFigures(reading, ["pedalRatio"]);
  const assist = assistOf(reading);
  if (bore === undefined || !figures || assist === undefined) return undefined;
  return { ratio: figures.pedalRatio, area: boreArea(bore), assist: typeof assist === "string" ? undefined : assist, boosterUnknown: assist === "unknown" };
}

function assistOf(reading: Reading): NonNullable<Pedal["assist"]> | "none" | "unknown" | undefined {
  const { booster } = reading.car;
  if (!booster.known) {
    assume(reading, "booster not stated, taken as none");
    lacks(reading, "Cars", "Booster", reading.car.name);
    return "unknown";
  }
  if (booster.value === "none") return "none";
  const component = lookUp(reading.catalogue.components, booster.value);
  return component ? assistOfPart(reading, component) : lacks(reading, "Components", "Component", booster.value);
}

/** Gain, diaphragm and vacuum must be stated; a blank jump-in, cut-in or spring counts as none, and a blank count of diaphragms as one. */
function assistOfPart(reading: Reading, component: Component): Pedal["assist"] {
  const { gain, diaphragm, diaphragms, jumpIn, cutIn, spring } = component.booster ?? {};
  const [most, across, vacuum] = [partFigure(reading, "Boosters", [gain, "Gain", component]), partFigure(reading, "Boosters", [diaphragm, "Diaphragm", component]), platformFigure(reading, "vacuum")];
  const blank = Object.entries({ "jump-in": jumpIn, "cut-in": cutIn, spring }).filter(([, value]) => value === undefined).map(([name]) => name);
  if (blank.length > 0) assume(reading, `${component.name}: no ${blank.join(", ")}`);
  if (diaphragms === undefined) assume(reading, `${component.name}: one diaphragm`);
  if (most === undefined || across === undefined || vacuum === undefined) return undefined;
  const area = squareMetres((diaphragms ?? 1) * boreArea(across));
  const rest = spring ?? newtons(0);
  return { component, gain: most, jumpIn: jumpIn ?? newtons(0), cutIn: cutIn ?? newtons(0), spring: rest, most: mostAssist(area, vacuum, rest), diaphragms: area, vacuum };
}

/** Line pressure of a pedal force, boosted or with the booster failed. */
export const pressureOfPedal = ({ ratio, area, assist }: Pedal, force: Newtons, failed = false): Pascals =>
  linePressure((failed ? unboosted : boosted)(assist, newtons(force * ratio)), area);

/** Pedal force that a line pressure takes. */
export const pedalForPressure = ({ ratio, area, assist }: Pedal, pressure: Pascals): Newtons => newtons(inputFor(assist, newtons(pressure * area)) / ratio);

/** Vacuum without which assist runs out before a line pressure; 0 where the driver's own force does. */
export function vacuumFor({ area, assist }: Pedal, pressure: Pascals): Pascals {
  if (!assist) return pascals(0);
  const output = pressure * area;
  const input = Math.max(assist.cutIn, assist.cutIn + (output - assist.jumpIn) / assist.gain);
  return pascals(Math.max(0, output - input + assist.spring) / assist.diaphragms);
}
