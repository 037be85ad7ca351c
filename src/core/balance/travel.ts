/** Where the pedal's travel goes: what each circuit's brakes, hoses, lines and fluid take up, and what its piston displaces. */
import type { Assembled, CircuitName, Instance, WheelPath } from "../assembly";
import { madeLately, madeOnce, madeOnceFor } from "../made-once";
import type { Run } from "../runs";
import { cubicMetres, metres, pascals, psi, type CubicMetres, type Metres, type Pascals, type SquareMetres } from "../quantity";
import { pointAtDeceleration } from "./braking";
import { linesOf, type AxleLines, type BrakingFacts, type CarBraking } from "./car-braking";
import { assume, lacks, partFigure, platformFigure, readingOf, type Gap, type Reading } from "./figures";
import { judge, type Judgement } from "./judgement";
import { boreArea, vacuumLeft } from "./pedal";
import { pressureOfPedal } from "./pedal-figures";
import { outletAt } from "./pressure-curve";
import { airCompression, fluidCompression, hoseGrowth, lineGrowth, lineVolume, padClearance, shoeClearance, tubeBore } from "./volume";

/** What one circuit takes up at a line pressure. [m3] */
export interface Demand {
  readonly clearance: CubicMetres;
  readonly brakes: CubicMetres;
  readonly hoses: CubicMetres;
  readonly lines: CubicMetres;
  readonly fluid: CubicMetres;
  readonly air: CubicMetres;
  readonly total: CubicMetres;
}

export interface CircuitTravel {
  readonly circuit: CircuitName;
  readonly stroke: Metres | undefined;
  /** What the stroke displaces. */
  readonly displaces: CubicMetres | undefined;
  /** At the pedal force of the travel test; undefined while a figure is missing. */
  readonly atTest: Demand | undefined;
  /** At the hardest deceleration of Settings. */
  readonly atHardest: Demand | undefined;
  /** Piston travel that the hardest stop takes, port closing included. */
  readonly needed: Metres | undefined;
  /** Pedal travel with this circuit failed, of what there is. */
  readonly failedShare: number | undefined;
}

export interface CarTravel {
  readonly circuits: readonly CircuitTravel[];
  /** Of the pedal travel there is, at the force of the test. */
  readonly share: number | undefined;
  readonly testPressure: Pascals | undefined;
  readonly hardestPressure: Pascals | undefined;
  /** Vacuum left in the booster after the stops of Settings with no source of it; undefined where its chambers are not stated. */
  readonly vacuumLeft: Pascals | undefined;
  readonly missing: readonly Gap[];
  readonly assumed: readonly string[];
}

export interface TravelFacts extends BrakingFacts {
  readonly runs: readonly Run[];
}

/**
 * The volume budget of a car and what it makes of the pedal's travel. Both pistons of a tandem add up; with a circuit failed its
 * whole stroke is used up and the other works on at the same pressure for the same force.
 * @param facts one car, all in SI [m, Pa, m3]
 * @returns volumes [m3] and travel [m, -]; what is missing is named
 * @source brake-hydraulics research notes: x = x_free + x_port + sum of V / A; US Army OD1615, OD1616 for the failed circuit
 */
export const travelOf = (facts: TravelFacts): CarTravel => travels(facts.assembly, () => travelAnew(facts));

const travels = madeLately<Assembled, CarTravel>();

function travelAnew(facts: TravelFacts): CarTravel {
  const judged = judge(facts);
  const { car } = judged;
  const reading = readingOf(facts.catalogue, facts.assembly.car);
  const [testPressure, hardestPressure] = [car.pedal && pressureOfPedal(car.pedal, facts.catalogue.settings.travelForce), pressureOfHardestStop(judged)];
  const travel = platformFigure(reading, "pedalTravel");
  const known = car.blocked === undefined && car.axles ? circuitsOf(facts) : NO_CIRCUITS;
  reading.missing.push(...known.missing);
  reading.assumed.push(...known.assumed);
  const lines = judged.under[0]?.lines ?? linesOf(car, "unladen");
  const circuits = known.parts.map((parts) => circuitTravel({ car, lines }, parts, { testPressure, hardestPressure }));
  const pedalShare = (rod: number | undefined): number | undefined => (rod === undefined || travel === undefined || !car.pedal ? undefined : (car.pedal.ratio * rod) / travel);
  return {
    circuits: circuits.map((one) => ({ ...one, failedShare: pedalShare(rodTravel(car, circuits, one.circuit)) })),
    share: pedalShare(rodTravel(car, circuits)), testPressure, hardestPressure, vacuumLeft: reserveOf(car, circuits),
    missing: [...car.missing, ...reading.missing.filter((gap) => !car.missing.some((other) => sameGap(gap, other)))], assumed: [...car.assumed, ...reading.assumed.filter((text) => !car.assumed.includes(text))],
  };
}

/** Each stop moves the diaphragm as far as the hardest stop moves the pistons. */
function reserveOf({ pedal, facts }: CarBraking, circuits: readonly Omit<CircuitTravel, "failedShare">[]): Pascals | undefined {
  const { vacuumSide, airSide } = pedal?.assist?.component.booster ?? {};
  const needed = circuits.map((one) => one.needed);
  if (!pedal?.assist || vacuumSide === undefined || airSide === undefined || circuits.length === 0 || !needed.every((one) => one !== undefined)) return undefined;
  const travel = metres(needed.reduce((sum, one) => sum + one, 0));
  return vacuumLeft({ vacuumSide, airSide, area: pedal.assist.diaphragms, travel }, pedal.assist.vacuum, facts.catalogue.settings.stopsWithoutVacuum);
}

const sameGap = (a: Gap, b: Gap): boolean => a.table === b.table && a.column === b.column && a.subject === b.subject;

/** Of the load that takes most. */
function pressureOfHardestStop({ car, under }: Judgement): Pascals | undefined {
  const pressures = under.flatMap(({ braking }) => pointAtDeceleration(braking, car.facts.catalogue.settings.highDeceleration)?.pressure ?? []);
  return pressures.length === 0 ? undefined : pascals(Math.max(...pressures));
}

/** Travel of the push rod; with a circuit failed that one's whole stroke. Undefined while a volume is, or nothing is left to stop. */
function rodTravel({ pedal, facts }: CarBraking, circuits: readonly Omit<CircuitTravel, "failedShare">[], failed?: CircuitName): number | undefined {
  const { freeTravel, portTravel } = facts.catalogue.settings;
  if (!pedal || circuits.length === 0 || (failed !== undefined && circuits.length < 2)) return undefined;
  const each = circuits.map(({ circuit, stroke, atTest }) => (circuit === failed ? stroke : atTest && atTest.total / pedal.area));
  return each.every((one) => one !== undefined) ? freeTravel + portTravel + each.reduce((sum: number, one) => sum + one, 0) : undefined;
}

/** What hangs on one circuit. */
interface CircuitParts {
  readonly circuit: CircuitName;
  readonly paths: readonly WheelPath[];
  readonly hoses: readonly { readonly length: Metres; readonly expansion: SquareMetres; readonly path: WheelPath }[];
  readonly lines: readonly { readonly bore: Metres; readonly wall: Metres; readonly length: Metres; readonly material: NonNullable<Run["material"]> }[];
  readonly clearance: CubicMetres;
  /** At 1000 psi. */
  readonly brakes: readonly { readonly path: WheelPath; readonly volume: CubicMetres }[];
  /** In lines and parts, without what stands in the stroke. */
  readonly held: number;
  readonly stroke: Metres | undefined;
  readonly complete: boolean;
  /** What was assumed, and what is missing. */
  readonly reading: Pick<Reading, "missing" | "assumed">;
}

interface Circuits extends Pick<Reading, "missing" | "assumed"> {
  readonly parts: readonly CircuitParts[];
}

const NO_CIRCUITS: Circuits = { parts: [], missing: [], assumed: [] };

/** Cars of the same lines and runs share what hangs on their circuits, whatever they weigh. */
const circuitsOf = (facts: TravelFacts): Circuits => circuitsKept(facts.paths)(facts.runs, () => {
  const parts = facts.assembly.circuits.map(({ name }) => partsOf(facts, name));
  const missing = parts.flatMap(({ reading }) => reading.missing);
  return {
    parts, assumed: [...new Set(parts.flatMap(({ reading }) => reading.assumed))],
    missing: missing.filter((gap, index) => missing.findIndex((other) => sameGap(gap, other)) === index),
  };
});

const circuitsKept = madeOnce((_: TravelFacts["paths"]) => madeOnceFor<TravelFacts["runs"], Circuits>());

/** Each circuit is read by itself: a figure that two circuits lack leaves both of them open. */
function partsOf(facts: TravelFacts, circuit: CircuitName): CircuitParts {
  const reading = readingOf(facts.catalogue, facts.assembly.car);
  const wheels = facts.assembly.circuits.find(({ name }) => name === circuit)?.wheels ?? [];
  const paths = facts.paths.filter(({ wheel }) => wheels.includes(wheel));
  const stroke = strokeOf(reading, paths, facts.assembly.circuits.length);
  const lines = linesIn(reading, facts, paths);
  const inside = new Set([...paths.map(({ brake }) => brake), ...paths.flatMap(({ through }) => through)]);
  const held = [...inside].reduce((sum, { component }) => sum + (component.fluidHeld ?? 0), 0) + lines.reduce((sum, { bore, length }) => sum + lineVolume(bore, length), 0);
  const clearance = cubicMetres(paths.reduce((sum, { brake }) => sum + (clearanceOf(reading, brake) ?? 0), 0));
  const brakes = paths.map((path) => ({ path, volume: partFigure(reading, "Components", [path.brake.component.volumeAt1000Psi, "Volume at 1000 psi", path.brake.component]) ?? cubicMetres(0) }));
  return { circuit, paths, hoses: hosesIn(reading, paths), lines, clearance, brakes, held, stroke, reading, complete: reading.missing.length === 0 };
}

function strokeOf(reading: Reading, paths: readonly WheelPath[], circuits: number): Metres | undefined {
  const outlets = paths.map(({ outlet }) => outlet);
  const [first] = outlets;
  const stated = outlets.find(({ port }) => port.stroke !== undefined)?.port.stroke ?? (circuits === 1 ? first?.instance.component.stroke : undefined);
  return stated ?? (first && lacks(reading, "Ports", "Stroke", `${first.instance.component.name} ${first.port.name}`));
}

function clearanceOf(reading: Reading, { component }: Instance): CubicMetres | undefined {
  const { clearance, piston, pistons } = component.wheelBrake ?? {};
  const gap = partFigure(reading, "WheelBrakes", [clearance, "Clearance", component]);
  if (gap === undefined || piston === undefined) return undefined;
  return component.kind === "disc" ? cubicMetres((pistons ?? 1) * padClearance(gap, boreArea(piston))) : shoeClearance(gap, boreArea(piston), reading.catalogue.settings.shoeLever);
}

function hosesIn(reading: Reading, paths: readonly WheelPath[]): CircuitParts["hoses"] {
  const { hoseExpansion } = reading.catalogue.settings;
  const each = paths.flatMap((path) => path.through.filter(({ component }) => component.kind === "hose").map((hose) => [hose.label, { hose, path }] as const));
  return [...new Map(each).values()].flatMap(({ hose: { component, unnamed }, path }) => {
    if (unnamed) lacks(reading, "Cars", "Hoses", reading.car.name);
    if (unnamed) return [];
    if (component.expansion === undefined) assume(reading, `${component.name}: expansion from Settings`);
    const length = partFigure(reading, "Components", [component.length, "Length", component]);
    return length === undefined ? [] : [{ length, expansion: component.expansion ?? hoseExpansion, path }];
  });
}

/** Lines whose length and wall are known; the others hold too little to matter and are said to be left out. */
function linesIn(reading: Reading, { runs }: TravelFacts, paths: readonly WheelPath[]): CircuitParts["lines"] {
  const joints = new Set(paths.flatMap((path) => path.joints.filter(({ by }) => by === "line")));
  return [...joints].flatMap((joint) => {
    const { tube, stock, length, material } = runs.find((run) => run.joint === joint) ?? {};
    if (tube !== undefined && stock && length !== undefined && material !== undefined) return [{ bore: tubeBore(tube, stock.wall), wall: stock.wall, length, material }];
    assume(reading, "lines without a length or a wall are left out");
    return [];
  });
}

/** The car as read, with its lines unladen. */
interface Filled {
  readonly car: CarBraking;
  readonly lines: AxleLines | undefined;
}

function circuitTravel({ car, lines }: Filled, parts: CircuitParts, { testPressure, hardestPressure }: Pick<CarTravel, "testPressure" | "hardestPressure">): Omit<CircuitTravel, "failedShare"> {
  const { stroke, circuit } = parts;
  const area = car.pedal?.area;
  const atHardest = demandAt({ car, lines }, parts, hardestPressure);
  return {
    circuit, stroke, displaces: stroke !== undefined && area !== undefined ? cubicMetres(stroke * area) : undefined,
    atTest: demandAt({ car, lines }, parts, testPressure), atHardest, needed: atHardest && area !== undefined ? metres(atHardest.total / area + car.facts.catalogue.settings.portTravel) : undefined,
  };
}

const THOUSAND_PSI = psi(1000);

/** Lines and fluid are taken at the master's pressure, brakes and hoses at that of their wheel. */
function demandAt({ car, lines }: Filled, parts: CircuitParts, pressure: Pascals | undefined): Demand | undefined {
  if (pressure === undefined || !parts.complete || !lines) return undefined;
  const { hosePressure, fluidCompressibility, airShare } = car.facts.catalogue.settings;
  const at = ({ wheel }: WheelPath): number => outletAt(wheel === "LF" || wheel === "RF" ? lines.front : lines.rear, pressure);
  const held = parts.held + (parts.stroke ?? 0) * (car.pedal?.area ?? 0);
  const total = (volumes: readonly number[]): CubicMetres => cubicMetres(volumes.reduce((sum, one) => sum + one, 0));
  const each = {
    clearance: parts.clearance,
    brakes: total(parts.brakes.map(({ path, volume }) => (volume * at(path)) / THOUSAND_PSI)),
    hoses: total(parts.hoses.map(({ length, expansion, path }) => hoseGrowth(length, expansion, at(path) / hosePressure))),
    lines: total(parts.lines.map((line) => lineGrowth(line, pressure))),
    fluid: fluidCompression(cubicMetres(held * (1 - airShare)), fluidCompressibility, pressure),
    air: airCompression(cubicMetres(held * airShare), pressure),
  };
  return { ...each, total: total(Object.values(each)) };
}
