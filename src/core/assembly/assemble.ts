/** Builds a car's assembly: parts, circuits, stations, lines, tees, and what was found instead. */
import type { Car } from "../car";
import { lookUp, nameKey, type Catalogue } from "../catalogue";
import { faceOf, isPlain, WHEELS, type Wheel } from "../component";
import { mates } from "../joint";
import type { Question } from "../question";
import { linePorts, masterCircuits, type MasterCircuits } from "./circuits";
import { asFound, type FoundLink } from "./found-joins";
import { placeKey, type Assembly, type Circuit, type Instance, type Joint, type PortRef } from "./graph";
import type { UnknownPart } from "./open-points";
import { partsOf, type Parts } from "./parts";
import { plumbCircuit, type CircuitToPlumb } from "./plumb";
import { stationsOf, type Station } from "./stations";
import { unlistedPort } from "./stand-in";
import { linksOf, type Link, type TeePool } from "./tees";

export interface Assembled extends Assembly {
  readonly unknownParts: readonly UnknownPart[];
  readonly unfed: readonly Wheel[];
  readonly unknownPlatform: boolean;
}

/**
 * The assembly of one car, from its row and the shop's catalogue.
 * What cannot be resolved is a question with the column that would answer it; what was taken for granted is an assumption.
 * Where the master or the list of valves is not known, no joint is inferred: each of them would be a guess.
 */
export function assemble(catalogue: Catalogue, car: Car): Assembled {
  const parts = partsOf(catalogue, car);
  const { open } = parts;
  const platform = lookUp(catalogue.platforms, car.platform);
  const master = parts.master && masterCircuits(parts.master.component, car.platformFigures.split ?? platform?.figures.split);
  const questions = [...askPlatform(car), ...open.questions, ...(master?.questions ?? []), ...contentsQuestions(parts)];
  const known = { car, unknownParts: open.unknownParts, unknownPlatform: car.platform !== undefined && !platform };
  if (!master || parts.valvesUnknown) {
    const nothing = { joints: [], plugged: new Set<string>(), unplaced: [], unfed: [] };
    return { ...known, ...nothing, circuits: master?.circuits ?? [], instances: listedInstances(parts), questions, assumptions: open.assumptions };
  }
  const joined = join(catalogue, car, { parts, master });
  return { ...known, ...joined, questions: [...questions, ...joined.questions] };
}

interface Circuits {
  readonly parts: Parts;
  readonly master: MasterCircuits;
}

type Joined = Omit<Assembled, "car" | "unknownParts" | "unknownPlatform">;

function join(catalogue: Catalogue, car: Car, { parts, master }: Circuits): Joined {
  const placed = stationsOf(parts, master, catalogue.settings.discResidualLimit);
  const plumbed = master.circuits.map((circuit) => ({ circuit, ...plumbCircuit(toPlumb({ parts, master }, circuit, placed.stations)) }));
  const pool: TeePool = { catalogue, car, hasRearHose: parts.hoses.toRearAxle !== undefined, listed: [...parts.tees], proposed: [], assumptions: [] };
  const lines = linksOf(pool, plumbed.flatMap(({ circuit, supplies }) => supplies.map((supply) => ({ ...supply, circuit: circuit.name }))));
  const inferred = [...lines, ...hoseEnds(parts, lines)];
  const instances = unique([...listedInstances(parts), ...inferred.flatMap(({ from, to }) => [from.instance, to.instance])]);
  const found = asFound(inferred, instances, catalogue.joins.get(nameKey(car.name)) ?? []);
  const splitHose = isDiagonal(master) ? parts.hoses.toRearAxle : undefined;
  const joints = found.links.map(asJoint);
  return {
    circuits: master.circuits,
    instances: instances.filter((instance) => instance !== splitHose),
    joints,
    plugged: found.plugged,
    unplaced: placed.unplaced,
    questions: [...placed.questions, ...found.unmatched.map(askJoin)],
    assumptions: [...[parts.open, master, placed, ...plumbed, pool, found].flatMap(({ assumptions }) => assumptions), ...takenToFit(joints)],
    unfed: plumbed.flatMap(({ unfed }) => unfed),
  };
}

const isDiagonal = (master: MasterCircuits): boolean => master.circuits[0]?.name === "1";

const toPlumb = ({ parts, master }: Circuits, circuit: Circuit, stations: readonly Station[]): CircuitToPlumb => ({
  wheels: circuit.wheels,
  outlets: masterOutlets(parts, master, circuit.name),
  stations: stations.filter((station) => station.circuit === circuit.name),
  rearHose: hoseOf(parts, circuit.name, master),
  ends: endsOf(parts),
});

const masterOutlets = (parts: Parts, master: MasterCircuits, circuit: string): PortRef[] =>
  [parts.master].flatMap((instance) => (instance ? linePorts(instance.component, "out").map((port) => ({ instance, port })) : [])).filter(({ port }) => master.circuitOfOutlet.get(port.name) === circuit);

/** On a diagonal split each circuit has a rear hose of its own, even where one name stands for both. */
function hoseOf(parts: Parts, circuit: string, master: MasterCircuits): Instance | undefined {
  const hose = parts.hoses.toRearAxle;
  if (!hose || circuit === "front") return undefined;
  return isDiagonal(master) ? { ...hose, label: `${hose.component.name}@${circuit}` } : hose;
}

/** The hard line at a wheel ends at its hose; without one, or beyond the rear hose, at the brake. */
function endsOf(parts: Parts): Record<Wheel, PortRef> {
  const end = (wheel: Wheel): PortRef => {
    const instance = parts.hoses.atWheel[wheel] ?? parts.brakes[wheel];
    return { instance, port: linePorts(instance.component, "in")[0] ?? unlistedPort("in") };
  };
  return { LF: end("LF"), RF: end("RF"), LR: end("LR"), RR: end("RR") };
}

/** The far end of each wheel's hose that a line reaches. */
function hoseEnds(parts: Parts, lines: readonly Link[]): Link[] {
  return WHEELS.flatMap((wheel) => {
    const [hose, brake] = [parts.hoses.atWheel[wheel], parts.brakes[wheel]];
    const outlet = hose && linePorts(hose.component, "out")[0];
    const inlet = linePorts(brake.component, "in")[0];
    if (!hose || !outlet || !inlet || !lines.some(({ to }) => to.instance === hose)) return [];
    return [{ from: { instance: hose, port: outlet }, to: { instance: brake, port: inlet } }];
  });
}

function listedInstances(parts: Parts): Instance[] {
  const hoses = [parts.hoses.toRearAxle, ...WHEELS.map((wheel) => parts.hoses.atWheel[wheel])];
  const all = [parts.master, ...[...parts.valves, ...parts.tees].map(({ instance }) => instance), ...parts.switches, ...hoses, ...WHEELS.map((wheel) => parts.brakes[wheel])];
  return all.filter((instance): instance is Instance => instance !== undefined);
}

const unique = (instances: readonly Instance[]): Instance[] => [...new Map(instances.map((instance) => [instance.label, instance])).values()];

function asJoint(link: FoundLink): Joint {
  const { from, to, found } = link;
  return found ? { from, to, found, by: isDirect(link) ? "direct" : "line" } : { from, to, by: isDirect(link) ? "direct" : "line" };
}

/** Ports that screw straight into one another and cannot be compared; each pair of kinds is told once, as both wheels have it. */
function takenToFit(joints: readonly Joint[]): readonly string[] {
  const kindOf = ({ instance, port }: PortRef): string => `${instance.component.name} ${port.name}`;
  const said = joints.filter(({ by, from, to }) => by === "direct" && !from.instance.unnamed && !to.instance.unnamed).flatMap(({ from, to }) => {
    const unknown = [from, to].filter(({ port }) => !faceOf(port));
    return unknown.length === 0 ? [] : [`${kindOf(from)} is taken to fit into ${kindOf(to)}, since Ports has no thread and seat of ${unknown.map(kindOf).join(" and ")}`];
  });
  return [...new Set(said)];
}

/** A hose end screws straight into what stands where it ends; a valve with a male inlet into the port it stands at. */
function isDirect({ from, to }: Link): boolean {
  const [here, there] = [from.instance.outletPlace ?? from.instance.place, to.instance.place];
  const samePlace = here === undefined || there === undefined || placeKey(here) === placeKey(there);
  if (from.instance.component.kind === "hose") return samePlace;
  const [a, b] = [faceOf(from.port), faceOf(to.port)];
  return samePlace && a !== undefined && b !== undefined && mates(a, b);
}

function askPlatform(car: Car): Question[] {
  if (car.platform !== undefined) return [];
  return [{ table: "Cars", column: "Platform", subject: car.name, ask: "Which platform is the car built on?", why: "its split and the lengths of its lines depend on it", blocks: true }];
}

/** A valve is known by its contents, never by its name. */
function contentsQuestions(parts: Parts): Question[] {
  const components = [...new Set(parts.valves.map(({ instance }) => instance.component))].filter((component) => !isPlain(component));
  return components
    .filter((component) => component.passages.length === 0 || component.passages.some(({ duties }) => duties === undefined))
    .map((component) => ({
      table: "Passages", column: "Does", subject: component.name, blocks: false,
      ask: `What is inside ${component.name}: hold-off, proportioning, residual, or nothing?`, why: "two valves of one kind on a line fight each other",
    }));
}

const askJoin = (join: { readonly from: { component: string; port: string }; readonly to?: { component: string; port: string } | undefined; readonly car: string }): Question => ({
  table: "Joins", column: "From component", subject: join.car, blocks: true,
  ask: `Which part of the car is ${join.from.component} ${join.from.port}${join.to ? ` to ${join.to.component} ${join.to.port}` : ""}?`, why: "the joint as found names a part or port that is not on this car",
});
