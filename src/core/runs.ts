/** The runs of hard line on a car: from which port to which, what tube, how long, and how each end is fitted. */
import { distanceBetween, placeKey, sayJoint, sayPort, type Assembly, type CircuitName, type Instance, type Joint, type PlaceDistance, type PortRef, type WheelPath } from "./assembly";
import { lookUp, type Catalogue } from "./catalogue";
import { axleOf, faceOf, type Wheel } from "./component";
import { fitterFor } from "./fitter";
import type { Fitting, NoFitting } from "./fittings";
import { sayFace } from "./joint";
import { bendRadiusFor, bendRun, type RunBends } from "./bends/run-bends";
import type { Vector } from "./bends/vector";
import { metres, type Metres } from "./quantity";
import type { Question } from "./question";
import { nominalTube, sameTube, sayTube, tubeKey, type Material, type TubeStock } from "./tube";
import { stockFor } from "./tube-stock";
import { sawnLength } from "./allowance";

export interface RunEnd {
  readonly at: PortRef;
  /** Undefined when the port's thread or seat, or the tube, is not known. */
  readonly fitting: Fitting | NoFitting | undefined;
}

export interface Run {
  readonly number: number;
  readonly joint: Joint;
  readonly circuit: CircuitName;
  readonly wheels: readonly Wheel[];
  readonly a: RunEnd;
  readonly b: RunEnd;
  readonly tube: Metres | undefined;
  readonly material: Material | undefined;
  readonly stock: TubeStock | undefined;
  readonly length: Metres | undefined;
  readonly basis: "measured" | "developed" | "estimated" | undefined;
  /** What is sawn for it: the length with a flare and a trim at each end. */
  readonly cut?: Metres | undefined;
  readonly over: readonly string[];
  /** Of a line measured by its points, once a bend radius is known. */
  readonly bends?: RunBends | undefined;
  /** What keeps this run from being made as it stands; one sentence each. */
  readonly problems: readonly string[];
}

export interface RunsOfCar {
  readonly runs: readonly Run[];
  readonly questions: readonly Question[];
  readonly assumptions: readonly string[];
}

/**
 * Reads the hard-line runs off the assembly, in the order fluid meets them, keeping those within the car's scope.
 * Lengths come from the platform's measured pairs: by their points where they have them, else along the line; a bridged pair is estimated and says so.
 */
export function runsOf(catalogue: Catalogue, assembly: Assembly, paths: readonly WheelPath[]): RunsOfCar {
  const reading: Reading = { catalogue, assembly, questions: [], assumptions: [], tubeInto: new Map() };
  const lines = assembly.joints.filter(({ by }) => by === "line").map((joint) => ({ joint, wheels: wheelsBehind(joint, paths) }));
  const inScope = lines.filter(({ wheels }) => assembly.car.scope === "all" || wheels.some((wheel) => axleOf(wheel) === assembly.car.scope));
  const runs = inScope.map(({ joint, wheels }, index) => runOf(reading, joint, wheels, index + 1));
  return { runs, questions: reading.questions, assumptions: reading.assumptions };
}

interface Reading {
  readonly catalogue: Catalogue;
  readonly assembly: Assembly;
  readonly questions: Question[];
  readonly assumptions: string[];
  /** Tube of the line into each part, as far as the lines were read in flow order. */
  readonly tubeInto: Map<Instance, Metres>;
}

const wheelsBehind = (joint: Joint, paths: readonly WheelPath[]): Wheel[] => paths.filter((path) => path.joints.includes(joint)).map(({ wheel }) => wheel);

function runOf(reading: Reading, joint: Joint, wheels: readonly Wheel[], number: number): Run {
  const { car, circuits } = reading.assembly;
  const distance = distanceOf(reading, joint);
  const tube = distance?.tube ?? tubeByPorts(reading, joint, distance);
  if (tube !== undefined) reading.tubeInto.set(joint.to.instance, tube);
  const a = endOf(reading, joint.from, tube);
  const b = endOf(reading, joint.to, tube);
  const stock = tube === undefined || car.material === undefined ? undefined : stockFor(reading.catalogue.tube, car.material, tube);
  if (stock?.others) noteOnce(reading.assumptions, `${sayTube(stock.chosen.outsideDiameter)} ${stock.chosen.material} is taken from ${stock.chosen.name}, the cheapest of several walls`);
  const circuit = circuits.find((one) => wheels.some((wheel) => one.wheels.includes(wheel)))?.name ?? circuits[0]?.name ?? "single";
  const measure = distance && measureOf(reading, joint, { distance, stock: stock?.chosen });
  const problems = [...problemsOf(a, tube), ...problemsOf(b, tube), ...(distance ? [] : [`length ${placesOf(joint)} not measured`]), ...(measure?.problem ?? [])];
  return { number, joint, circuit, wheels, a, b, tube, material: car.material, stock: stock?.chosen, length: measure?.length, basis: measure?.basis, cut: measure?.length === undefined ? undefined : sawnLength(measure.length, reading.catalogue.settings), over: distance?.over ?? [], bends: measure?.bends, problems };
}

type Measure = Pick<Run, "length" | "basis" | "bends"> & { readonly problem?: readonly string[] };

/** By its points the developed length; where they make no line or no radius is known, the length measured along it. */
function measureOf(reading: Reading, joint: Joint, { distance, stock }: { distance: PlaceDistance; stock: TubeStock | undefined }): Measure {
  const { pair, length, basis } = distance;
  if (!pair?.points) return { length, basis };
  const bends = bendsOf(reading, pair.points, stock);
  if (bends?.developed !== undefined) return { length: bends.developed, basis: "developed", bends };
  const places = placesOf(joint);
  if (pair.byPointsOnly && bends === undefined) askRadius(reading, stock);
  if (pair.byPointsOnly) return { length: undefined, basis: undefined, bends, problem: [bends ? `the points of ${places} make no line` : `no bend radius for the points of ${places}`] };
  noteOnce(reading.assumptions, `${places} has points, but ${bends ? "they make no line" : `no bend radius is known (Tube: Least bend radius, or the setting "bend radius")`}: its length along the line is taken`);
  return { length, basis, bends };
}

function distanceOf(reading: Reading, joint: Joint): PlaceDistance | undefined {
  const { car } = reading.assembly;
  const [from, to] = ends(joint);
  for (const [ref, place] of [[joint.from, from], [joint.to, to]] as const) if (place === undefined) askPlace(reading, ref);
  if (from === undefined || to === undefined || car.platform === undefined) return undefined;
  const distance = distanceBetween(lookUp(reading.catalogue.lengths, car.platform) ?? [], from, to, (tube) => nutsFitBoth(reading, joint, tube));
  if (distance) return distance;
  if (placeKey(from) === placeKey(to)) return acrossOnePlace(reading, joint, from);
  askLengths(reading, { column: "Length", ask: `How long is the line from ${from} to ${to}?`, why: "the tube for this run cannot be totalled" });
  return undefined;
}

function bendsOf({ catalogue: { settings } }: Reading, points: readonly Vector[], stock: TubeStock | undefined): RunBends | undefined {
  // A line without a bend needs no radius.
  const radius = bendRadiusFor(settings, stock) ?? (points.length === 2 ? metres(0) : undefined);
  return radius === undefined ? undefined : bendRun(points, radius, { settings, stock });
}

function askRadius(reading: Reading, stock: TubeStock | undefined): void {
  if (!stock) return;
  askOnce(reading, { table: "Tube", column: "Least bend radius", subject: stock.name, blocks: true, ask: `How tight may ${stock.name} be bent?`, why: "the length of a line measured by its points depends on the radius of its bends" });
}

/** Two parts side by side: a short line that few measure, estimated by the shop's own figure. */
function acrossOnePlace({ catalogue, assumptions }: Reading, joint: Joint, place: string): PlaceDistance {
  noteOnce(assumptions, `the line ${sayJoint(joint)}, all at ${place}, is taken by the setting "same-place line"`);
  return { length: catalogue.settings.samePlaceLine, basis: "estimated", tube: undefined, over: [] };
}

const ends = ({ from, to }: Joint) => [from.instance.outletPlace ?? from.instance.place, to.instance.place] as const;
const placesOf = (joint: Joint): string => ends(joint).map((place) => place ?? "?").join(" to ");

/** Asks for a length or a tube of the platform's; with the platform itself unknown, that is the one question. */
function askLengths(reading: Reading, question: Pick<Question, "column" | "ask" | "why">): void {
  const platform = lookUp(reading.catalogue.platforms, reading.assembly.car.platform);
  if (platform) askOnce(reading, { ...question, table: "Lengths", subject: platform.name, blocks: true });
}

function askPlace(reading: Reading, { instance }: PortRef): void {
  askOnce(reading, {
    table: "Components", column: "Place", subject: instance.component.name, blocks: true,
    ask: `Where is ${instance.label} mounted?`, why: "the lengths of its lines depend on it",
  });
}

/** Where no length states the tube, the nuts that fit both ports may leave one size only. */
function tubeByPorts(reading: Reading, joint: Joint, distance: PlaceDistance | undefined): Metres | undefined {
  const sizes = uniqueSizes(reading.catalogue.nuts.map(({ tube }) => tube));
  const both = sizes.filter((tube) => nutsFitBoth(reading, joint, tube));
  const [only] = both;
  if (only !== undefined && both.length === 1) {
    noteOnce(reading.assumptions, `${sayPort(joint.from)} to ${sayPort(joint.to)} is taken as ${sayTube(only)} tube, the one size whose nuts fit both ports`);
    return only;
  }
  const feeding = reading.tubeInto.get(joint.from.instance);
  if (feeding !== undefined && both.some((tube) => sameTube(tube, feeding))) {
    noteOnce(reading.assumptions, `${sayPort(joint.from)} to ${sayPort(joint.to)} is taken as ${sayTube(feeding)} tube, as the line into ${joint.from.instance.label} is`);
    return feeding;
  }
  // A pair without a length is one missing row, and is asked for once.
  if (!distance) return undefined;
  const why = distance.basis === "estimated" ? "the measured legs it goes over state different sizes or none" : "the nuts at both ends depend on it";
  askLengths(reading, { column: "Tube", ask: `Which tube runs from ${placesOf(joint)}?`, why });
  return undefined;
}

function nutsFitBoth({ catalogue }: Reading, { from, to }: Joint, tube: Metres): boolean {
  const faces = [faceOf(from.port), faceOf(to.port)];
  return faces.every((face) => face !== undefined && fitterFor(catalogue).takesNut(tube, face));
}

const uniqueSizes = (sizes: readonly Metres[]): Metres[] => [...new Map(sizes.map((size) => [tubeKey(size), nominalTube(size)])).values()];

function endOf(reading: Reading, at: PortRef, tube: Metres | undefined): RunEnd {
  const face = faceOf(at.port);
  if (!face && !at.instance.unnamed) {
    const column = at.port.thread ? "Seat" : "Thread";
    askOnce(reading, { table: "Ports", column, subject: at.instance.component.name, blocks: true, ask: `What ${column.toLowerCase()} has ${sayPort(at)}?`, why: "the nut at this end depends on it" });
  }
  if (!face || tube === undefined) return { at, fitting: undefined };
  return { at, fitting: fitterFor(reading.catalogue).fit(tube, face) };
}

function problemsOf(end: RunEnd, tube: Metres | undefined): string[] {
  const face = faceOf(end.at.port);
  if (!face) return [`${sayPort(end.at)}: thread or seat not known`];
  if (tube === undefined) return [`${sayPort(end.at)}: tube size not known`];
  if (!end.fitting || end.fitting.fits) return [];
  return [`${sayPort(end.at)}: ${sayTube(tube)} tube cannot be joined to ${sayFace(face)} (${end.fitting.reason})`];
}

function askOnce(reading: Reading, question: Question): void {
  if (!reading.questions.some((other) => other.table === question.table && other.ask === question.ask)) reading.questions.push(question);
}

function noteOnce(assumptions: string[], text: string): void {
  if (!assumptions.includes(text)) assumptions.push(text);
}
