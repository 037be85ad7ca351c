/** What is to be drawn of one car, with the words for it and without a coordinate. */
import { portKey, sayPort, type CircuitName, type Instance, type Joint, type PortRef } from "../../core/assembly";
import { lookUp, type Catalogue } from "../../core/catalogue";
import { WHEELS, type ComponentKind, type Port, type Wheel } from "../../core/component";
import { inInches } from "../../core/quantity";
import type { CarReport } from "../../core/report";
import type { Run, RunEnd } from "../../core/runs";
import { sayTube } from "../../core/tube";
import { sayNumber, type Units } from "../words";
import { faultsOf, type Fault } from "./faults";

export interface SketchEnd {
  readonly at: PortRef;
  readonly key: string;
  /** Thread of the nut, as a fitter writes it beside the tick; "" where one part is screwed straight into the other. */
  readonly nut: string;
  readonly fits: boolean;
}

export interface SketchLine {
  /** Place in the list of joints; names the line. */
  readonly index: number;
  readonly joint: Joint;
  readonly circuit: CircuitName;
  /** Undefined for a joint without a tube, and for a line outside what the quote is for. */
  readonly run: Run | undefined;
  readonly ends: readonly [SketchEnd, SketchEnd];
  /** `3/16 × ≈96″`; "" without a run. */
  readonly size: string;
}

export interface SketchPort {
  readonly port: Port;
  readonly key: string;
  readonly name: string;
  /** Whether the drawing needs the name to tell it from its brothers. */
  readonly named: boolean;
  readonly state: "joined" | "plugged" | "switch" | "open";
}

export interface SketchPart {
  readonly instance: Instance;
  readonly label: string;
  /** What it is, in a word or two. */
  readonly kind: string;
  readonly ports: readonly SketchPort[];
  readonly placed: boolean;
}

export interface SketchWheel {
  readonly wheel: Wheel;
  readonly brake: Instance | undefined;
  readonly hose: Instance | undefined;
}

export interface Sketch {
  readonly name: string;
  /** Platform and year, as far as they are known. */
  readonly model: string;
  readonly driverSide: "left" | "right" | undefined;
  readonly circuits: readonly CircuitName[];
  readonly parts: readonly SketchPart[];
  readonly wheels: readonly SketchWheel[];
  readonly lines: readonly SketchLine[];
  readonly faults: readonly Fault[];
}

/** @param catalogue says on which side the driver of the platform sits */
export function sketchOf(report: CarReport, catalogue: Catalogue): Sketch {
  const { car, assembly } = report;
  const platform = lookUp(catalogue.platforms, car.platform);
  const joined = new Set(assembly.joints.flatMap(({ from, to }) => [portKey(from), portKey(to)]));
  return {
    name: car.name,
    model: [car.platform, car.year].filter((one) => one !== undefined).join(", "),
    driverSide: car.platformFigures.driverSide ?? platform?.figures.driverSide,
    circuits: assembly.circuits.map(({ name }) => name),
    parts: assembly.instances.filter(({ wheel, component }) => wheel === undefined && component.kind !== "switch").map((instance) => partOf(report, instance, joined)),
    wheels: WHEELS.map((wheel) => ({ wheel, brake: atWheel(assembly.instances, wheel, false), hose: atWheel(assembly.instances, wheel, true) })),
    lines: assembly.joints.map((joint, index) => lineOf(report, joint, { index, units: catalogue.settings.units })),
    faults: faultsOf(assembly, report.findings),
  };
}

/** Circuits are told apart by name, by the pattern of the line and by colour. */
export const sayCircuit = (name: CircuitName): string => (name === "single" ? "all wheels" : name === "1" || name === "2" ? `circuit ${name}` : name);

/** `3/16 × 17″`, with ≈ before a length that is bridged over other places and ? for what is not known. */
export function saySize({ tube, length, basis }: Pick<Run, "tube" | "length" | "basis">, units: Units): string {
  const size = tube === undefined ? "?" : sayTube(tube).replace(/ in$/, "");
  const around = basis === "estimated" ? "≈" : "";
  return `${size} × ${length === undefined ? "?" : around + (units === "us" ? `${sayInches(inInches(length))}″` : `${sayNumber(length, 2)} m`)}`;
}

/** Whole inches, and tenths where there are any. */
export const sayInches = (inches: number): string => sayNumber(inches, Math.abs(inches - Math.round(inches)) < 0.05 ? 0 : 1);

const atWheel = (instances: readonly Instance[], wheel: Wheel, hose: boolean): Instance | undefined =>
  instances.find((instance) => instance.wheel === wheel && (instance.component.kind === "hose") === hose);

const KIND_WORDS: Readonly<Record<ComponentKind, string>> = {
  master: "master", booster: "booster", "distribution-block": "block", "hold-off-valve": "hold-off", "proportioning-valve": "proportioning",
  "adjustable-proportioning-valve": "adjustable", "combination-valve": "combination", "residual-valve": "residual", "anti-lock-unit": "anti-lock",
  tee: "tee", union: "union", switch: "switch", hose: "hose", disc: "disc", drum: "drum",
};

/** One port of a tee is like the other, and a hose has two ends. */
const UNNAMED_PORTS: ReadonlySet<ComponentKind> = new Set(["tee", "union", "hose"]);

function partOf({ assembly }: CarReport, instance: Instance, joined: ReadonlySet<string>): SketchPart {
  const shown = instance.component.ports.filter(({ use }) => use !== "bleed");
  const named = shown.length > 2 && !UNNAMED_PORTS.has(instance.component.kind);
  const ports = shown.map((port): SketchPort => {
    const key = portKey({ instance, port });
    return { port, key, name: port.name, named, state: joined.has(key) ? "joined" : port.plugged || assembly.plugged.has(key) ? "plugged" : port.use === "switch" ? "switch" : "open" };
  });
  const added = instance.proposed ? ", to add" : "";
  return { instance, label: instance.label, kind: `${KIND_WORDS[instance.component.kind]}${added}`, ports, placed: !assembly.unplaced.includes(instance) };
}

function lineOf(report: CarReport, joint: Joint, { index, units }: { readonly index: number; readonly units: Units }): SketchLine {
  const run = report.runs.find((one) => one.joint === joint);
  return {
    index, joint, run, circuit: run?.circuit ?? circuitOf(report, joint),
    ends: [endOf(joint.from, run?.a), endOf(joint.to, run?.b)],
    size: run ? saySize(run, units) : "",
  };
}

function circuitOf({ assembly, paths }: CarReport, joint: Joint): CircuitName {
  const wheels = paths.filter((path) => path.joints.includes(joint)).map(({ wheel }) => wheel);
  const wheel = wheels[0] ?? joint.to.instance.wheel;
  return assembly.circuits.find((circuit) => wheel !== undefined && circuit.wheels.includes(wheel))?.name ?? assembly.circuits[0]?.name ?? "single";
}

function endOf(at: PortRef, end: RunEnd | undefined): SketchEnd {
  return { at, key: portKey(at), nut: end ? nutOf(end) : "", fits: end?.fitting?.fits !== false };
}

/** The thread is what the fitter looks for; the whole nut stands in the list. */
function nutOf({ fitting }: RunEnd): string {
  if (!fitting) return "nut ?";
  if (!fitting.fits) return "no nut";
  return `${fitting.nut.face.thread.name}${fitting.adapters.length > 0 ? ` +${fitting.adapters.length}` : ""}`;
}

/** The whole of one end, for the list. */
export function sayEnd(end: RunEnd): string {
  const { at, fitting } = end;
  if (!fitting) return `${sayPort(at)}: nut not known`;
  if (!fitting.fits) return `${sayPort(at)}: no nut joins it`;
  const adapters = fitting.adapters.map(({ adapter }) => adapter.name);
  return `${sayPort(at)}: ${[fitting.nut.name, ...adapters].join(" with ")}, ${fitting.flare} flare`;
}
