/** A car's brakes as figures: what is known, what is missing and what is assumed. The rules, the tables and the adviser all start here. */
import type { Assembled, CircuitName, WheelPath } from "../assembly";
import type { Catalogue } from "../catalogue";
import { axleOf, WHEELS, type Axle, type Duty } from "../component";
import { madeOnce, madeOnceByKey, madeOnceFor } from "../made-once";
import { pascals, weightOf, type Metres, type Newtons } from "../quantity";
import type { Stance } from "./axles";
import { brakingOf, effectiveOf, type AxleStrength, type Braking, type Effective } from "./braking";
import { lacks, platformFigures, readingOf, type Gap, type Reading } from "./figures";
import { lineTo, readDuties, sensesLoad, type LineState, type WheelPaths } from "./lines";
import { pedalOf, type Pedal } from "./pedal-figures";
import { inSeries, type PressureCurve } from "./pressure-curve";
import { wheelEndOf, type WheelEnd } from "./wheel-end";

export interface BrakingFacts {
  readonly catalogue: Catalogue;
  readonly assembly: Assembled;
  readonly paths: readonly WheelPath[];
}

export interface LoadCase {
  readonly load: "unladen" | "laden";
  readonly weight: Newtons;
  readonly stance: Stance;
}

export interface Axles {
  readonly paths: WheelPaths;
  readonly ends: Readonly<Record<Axle, WheelEnd>>;
  readonly tyreRadius: Metres;
}

type Adjustable = Extract<Duty, { does: "adjustable-proportioning" }>;

export interface CarBraking {
  readonly facts: BrakingFacts;
  readonly missing: readonly Gap[];
  readonly assumed: readonly string[];
  /** Why no figure would help: a wheel without a line, a valve fed backwards. */
  readonly blocked: string | undefined;
  readonly axles: Axles | undefined;
  /** Unladen first; the ones whose figures are all stated. */
  readonly loads: readonly LoadCase[];
  readonly pedal: Pedal | undefined;
  /** An adjustable valve on a rear path. */
  readonly adjustable: { readonly duty: Adjustable; readonly name: string } | undefined;
  /** What it is set to, Infinity for no reduction; undefined while the row does not say. [Pa] */
  readonly adjustedTo: number | undefined;
}

/** Reads everything that the physics needs of one car. */
export function carBraking(facts: BrakingFacts): CarBraking {
  const reading = readingOf(facts.catalogue, facts.assembly.car);
  const { paths, ends, missing, assumed, adjustable } = structureOf(facts);
  // A structure is shared by cars of other names, so what it lacks in a car's row is named for this one.
  reading.missing.push(...missing.map((gap) => (gap.table === "Cars" ? { ...gap, subject: facts.assembly.car.name } : gap)));
  reading.assumed.push(...assumed);
  const blocked = typeof paths === "string" ? paths : undefined;
  const figures = blocked === undefined ? platformFigures(reading, ["tyreRadius"]) : undefined;
  const axles = typeof paths !== "string" && ends && figures ? { paths, ends, tyreRadius: figures.tyreRadius } : undefined;
  const loads = [loadCase(reading, "unladen"), loadCase(reading, "laden")].filter((load) => load !== undefined);
  const pedal = pedalOf(reading, facts.assembly);
  const setting = facts.assembly.car.valveSetting;
  const adjustedTo = setting === "no reduction" ? Infinity : setting?.split;
  return { facts, axles, loads, pedal, adjustable, adjustedTo, blocked, missing: reading.missing, assumed: reading.assumed };
}

/** What hangs on the parts alone, whatever the car weighs. */
interface Structure extends Pick<CarBraking, "missing" | "assumed" | "adjustable"> {
  readonly paths: WheelPaths | string;
  readonly ends: Axles["ends"] | undefined;
}

/** Cars of the same parts share their paths, and are read once. */
const structureOf = (facts: BrakingFacts): Structure => structures(facts.paths, () => structureAnew(facts));

const structures = madeOnceFor<BrakingFacts["paths"], Structure>();

function structureAnew(facts: BrakingFacts): Structure {
  const reading = readingOf(facts.catalogue, facts.assembly.car);
  const paths = pathsByWheel(facts, reading);
  const of = typeof paths === "string" ? undefined : { ends: endsOf(reading, paths), adjustable: adjustableOf(paths) };
  return { paths, ends: of?.ends, adjustable: of?.adjustable, missing: reading.missing, assumed: reading.assumed };
}

function pathsByWheel({ assembly, paths }: BrakingFacts, reading: Reading): WheelPaths | string {
  for (const { table, column, subject } of assembly.questions.filter(({ blocks, table }) => blocks && table !== "Lengths")) if (paths.length === 0) lacks(reading, table, column, subject);
  const unfed = WHEELS.filter((wheel) => !paths.some((path) => path.wheel === wheel));
  if (unfed.length > 0) return `no line is known to ${unfed.join(", ")}`;
  const reversed = paths.flatMap(({ steps }) => steps).find((step) => step.reversed && step.duty.does !== "through");
  if (reversed) return `${reversed.instance.label} is fed against its flow`;
  for (const { component } of paths.flatMap(({ unknown }) => unknown)) lacks(reading, "Passages", "Does", component.name);
  return Object.fromEntries(WHEELS.map((wheel) => [wheel, paths.find((path) => path.wheel === wheel)])) as WheelPaths;
}

function endsOf(reading: Reading, paths: WheelPaths): Axles["ends"] | undefined {
  const all = WHEELS.map((wheel) => paths[wheel]);
  readDuties(reading, all);
  const end = (axle: Axle): WheelEnd | undefined => {
    const { brake } = paths[axle === "front" ? "LF" : "LR"];
    return brake.unnamed ? lacks(reading, "Cars", `${axle === "front" ? "Front" : "Rear"} brake`, reading.car.name) : wheelEndOf(reading, brake.component);
  };
  const [front, rear] = [end("front"), end("rear")];
  return front && rear && all.every(({ unknown }) => unknown.length === 0) ? { front, rear } : undefined;
}

function loadCase(reading: Reading, load: LoadCase["load"]): LoadCase | undefined {
  const keys = load === "unladen" ? (["wheelbase", "mass", "frontShare", "centreOfGravityHeight"] as const) : (["wheelbase", "ladenMass", "ladenFrontShare", "ladenCentreOfGravityHeight"] as const);
  const figures = platformFigures<(typeof keys)[number]>(reading, keys);
  if (!figures) return undefined;
  const [wheelbase, mass, front, height] = keys.map((key) => (figures as Record<string, number>)[key]) as [number, typeof figures.mass, number, number];
  return { load, weight: weightOf(mass), stance: { front, height: height / wheelbase } };
}

function adjustableOf({ LR, RR }: WheelPaths): CarBraking["adjustable"] {
  const step = [...LR.steps, ...RR.steps].find(({ duty }) => duty.does === "adjustable-proportioning");
  return step && { duty: step.duty as Adjustable, name: step.instance.label };
}

/** Which brake factor of the drums' band. */
export type Factor = "low" | "middle" | "high";

/** How the lines of a car are looked at. */
export interface View extends Pick<LineState, "valve"> {
  readonly factor?: Factor;
  /** Rear brakes of so many times the piston area. */
  readonly rearScale?: number;
  /** Circuit that has failed: its wheels do nothing. */
  readonly failed?: CircuitName | undefined;
}

export interface AxleLines {
  /** To the pressure at the wheels, mean of left and right. */
  readonly front: PressureCurve;
  readonly rear: PressureCurve;
  readonly effective: Effective;
}

/** From master pressure to the pressure at the wheels of each axle; undefined while a figure is missing. */
export function linesOf(car: CarBraking, load: LoadCase["load"], view: View = {}): AxleLines | undefined {
  const { axles } = car;
  if (!axles) return undefined;
  const laden = load === "laden" && sensesLoad(axles.paths);
  const bypassing = view.failed !== undefined;
  const make = (): AxleLines | undefined => linesAnew(axles, { ...stateOf(car, laden ? "laden" : "unladen"), bypassing, valve: view.valve });
  // Of other valves there are too many to keep.
  return typeof view.valve === "object" ? make() : keptLines(axles.ends)(`${laden} ${car.adjustedTo} ${bypassing} ${view.valve}`, make);
}

/** Lines of the same parts at the same setting are made once. */
const keptLines = madeOnce((_: Axles["ends"]) => madeOnceByKey<AxleLines | undefined>(LINES_KEPT));

/** A valve whose setting is solved for stands otherwise on every car. */
const LINES_KEPT = 32;

function linesAnew({ paths, ends }: Axles, state: LineState): AxleLines | undefined {
  const [front, rear] = [lineTo(paths, "front", state), lineTo(paths, "rear", state)];
  return front && rear && { front, rear, effective: effectiveOf(aboveThreshold(front, ends.front), aboveThreshold(rear, ends.rear)) };
}

/** What the duties of a car depend on beside their own rows. */
export const stateOf = ({ facts, adjustedTo }: Pick<CarBraking, "facts" | "adjustedTo">, load: LoadCase["load"]): LineState =>
  ({ laden: load === "laden", holdOffRest: facts.catalogue.settings.holdOffRest, adjustedTo });

/** Both axles of a car under one load, with its lines as given. */
export function brakingWith({ facts, axles }: CarBraking & { readonly axles: Axles }, { stance, weight }: LoadCase, { effective }: AxleLines, view: View = {}): Braking {
  const axle = (name: Axle): AxleStrength => {
    const { factor = "middle", rearScale = 1 } = view;
    const scale = (factor === "middle" ? 1 : (axles.ends[name].band?.[factor] ?? 1)) * (name === "rear" ? rearScale : 1);
    return { perPascal: scale * forcePerPascal(axles, name, weight), working: workingShare(facts, name, view.failed) };
  };
  return brakingOf(stance, effective, { front: axle("front"), rear: axle("rear") });
}

/** Braking force of an axle over the car's weight for each pascal above the threshold. [1/Pa] */
export const forcePerPascal = ({ ends, tyreRadius }: Axles, axle: Axle, weight: Newtons): number => (2 * ends[axle].torque) / (tyreRadius * weight);

/** What is left of a line's pressure above the threshold of the brakes it feeds. */
export const aboveThreshold = (line: PressureCurve, { threshold }: WheelEnd): PressureCurve =>
  inSeries(line, { inlet: [0, threshold], outlet: [0, 0], slope: 1 });

/** Share of an axle's wheels that stay alive when a circuit has failed. */
function workingShare({ assembly }: BrakingFacts, axle: Axle, failed: CircuitName | undefined): number {
  if (failed === undefined) return 1;
  const dead = assembly.circuits.find(({ name }) => name === failed)?.wheels ?? [];
  return 1 - dead.filter((wheel) => axleOf(wheel) === axle).length / 2;
}

/** One car's braking under one load, seen another way than it stands. */
export function brakingUnder(car: CarBraking, load: LoadCase, view: View): Braking | undefined {
  const lines = linesOf(car, load.load, view);
  return lines && car.axles && brakingWith({ ...car, axles: car.axles }, load, lines, view);
}

/** The least and the most that an adjustable valve's knob gives. */
export const rangeOf = ({ leastSplit, mostSplit }: Adjustable): readonly [number, number] => [leastSplit ?? pascals(0), mostSplit ?? Infinity];
