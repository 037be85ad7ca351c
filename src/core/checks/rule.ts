/** What a rule reads, and the readings that several rules share. */
import type { Assembled, Instance, PathStep, WheelPath } from "../assembly";
import type { Catalogue } from "../catalogue";
import { axleOf, PROPORTIONING_NAMES, type Axle } from "../component";
import { groupBy } from "../group-by";
import type { Finding } from "../finding";
import type { Pascals } from "../quantity";
import type { Run } from "../runs";

export interface CarFacts {
  readonly catalogue: Catalogue;
  readonly assembly: Assembled;
  readonly paths: readonly WheelPath[];
  readonly runs: readonly Run[];
}

/** One rule of the list: reads the facts, answers what it finds. */
export type Rule = (facts: CarFacts) => readonly Finding[];

/** True while the row leaves the circuit itself open, or a port could not be read: then a port without a line is unknown, not open. */
export const circuitIsOpen = (facts: CarFacts): boolean => facts.assembly.joints.length === 0 || facts.assembly.circuits.length === 0 || hasUnreadPorts(facts);

/** A part with a port left out for an error in its row lacks a line that the car has. */
export const hasUnreadPorts = ({ assembly }: CarFacts): boolean => assembly.instances.some(({ component }) => component.portsUnread === true);

/** Proportioning that acts: a gutted passage is `through`, and an adjustable valve wound out to no reduction does nothing. */
export const proportioningOn = (facts: CarFacts, path: WheelPath): PathStep[] =>
  path.steps.filter(({ duty }) => {
    if (!PROPORTIONING_NAMES.has(duty.does)) return false;
    if (duty.does === "adjustable-proportioning" && facts.assembly.car.valveSetting === "no reduction") return false;
    return !("slope" in duty && duty.slope !== undefined && duty.slope >= 1);
  });

export const holdOffOn = (path: WheelPath): PathStep[] => path.steps.filter(({ duty }) => duty.does === "hold-off");

export interface HeldPressure {
  readonly id: string;
  readonly label: string;
  /** The part it is in. */
  readonly part: string;
  readonly holds: Pascals | undefined;
  readonly builtIn: boolean;
}

/** Every residual on a path, the one built into the master's outlet first. */
export function residualsOn(facts: CarFacts, path: WheelPath): HeldPressure[] {
  const external = path.steps.flatMap(({ id, instance, duty }) => (duty.does === "residual" ? [{ id, label: instance.label, part: instance.label, holds: duty.holds, builtIn: false }] : []));
  const holds = builtInResidual(facts, path);
  if (holds === undefined) return external;
  return [{ id: `${path.outlet.instance.label}|${path.outlet.port.name}`, label: `${path.outlet.instance.label} ${path.outlet.port.name}`, part: path.outlet.instance.label, holds, builtIn: true }, ...external];
}

/** Stated at the outlet; stated for the master as a whole, it is in the outlets that feed drums, or, with no drum left on the car, in all. */
function builtInResidual(facts: CarFacts, path: WheelPath): Pascals | undefined {
  const { instance, port } = path.outlet;
  if (port.builtInResidual !== undefined) return port.builtInResidual;
  const stated = instance.component.ports.some((other) => other.builtInResidual !== undefined);
  if (stated || instance.component.builtInResidual === undefined) return undefined;
  const feedsDrum = (outlet: string): boolean => facts.paths.some((other) => other.outlet.port.name === outlet && brakeKind(other.brake) === "drum");
  const noDrums = !facts.paths.some((other) => brakeKind(other.brake) === "drum");
  return noDrums || feedsDrum(port.name) ? instance.component.builtInResidual : undefined;
}

export const isDrumResidual = (facts: CarFacts, residual: HeldPressure): boolean =>
  residual.holds !== undefined && residual.holds > facts.catalogue.settings.discResidualLimit + 1e-6;

/** Disc or drum; undefined while the row does not say what is at the wheel. */
export const brakeKind = (brake: Instance): "disc" | "drum" | undefined => {
  const { kind } = brake.component;
  return brake.unnamed || (kind !== "disc" && kind !== "drum") ? undefined : kind;
};

/** Disc or drum at an axle, by the paths that reach it. */
export function axleKind(facts: CarFacts, axle: Axle): "disc" | "drum" | undefined {
  const brake = facts.assembly.instances.find(({ wheel, component }) => wheel !== undefined && axleOf(wheel) === axle && component.kind !== "hose");
  return brake && brakeKind(brake);
}

export const pathsTo = (facts: CarFacts, axle: Axle): WheelPath[] => facts.paths.filter(({ wheel }) => axleOf(wheel) === axle);

/** Groups the cases of one cause: the same parts on several wheels are one finding that names the wheels. */
export function oncePerCause<T>(items: readonly T[], cause: (item: T) => string): { readonly cause: string; readonly items: readonly T[] }[] {
  return [...groupBy(items, cause)].map(([key, members]) => ({ cause: key, items: members }));
}

export const sayWheels = (paths: readonly WheelPath[]): string => [...new Set(paths.map(({ wheel }) => wheel))].join(", ");
export const labels = (steps: readonly { readonly instance: Instance }[]): string => [...new Set(steps.map(({ instance }) => instance.label))].join(" and ");
