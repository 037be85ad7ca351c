/** Stations: each inlet of a listed valve, with the circuit it is on and the wheels behind it. */
import type { Component, Duty, Port, Wheel } from "../component";
import { axleOf, PROPORTIONING_NAMES } from "../component";
import { inPsi, type Pascals } from "../quantity";
import type { Question } from "../question";
import { linePorts, outletsFedBy, wheelsServed } from "./circuits";
import { isBeyondRearHose, placeKey, type Circuit, type CircuitName, type Instance } from "./graph";
import type { ListedInstance } from "./listed-parts";
import type { Parts } from "./parts";

export interface Station {
  readonly instance: Instance;
  readonly inlet: Port;
  readonly outlets: readonly Port[];
  readonly circuit: CircuitName;
  readonly wheels: readonly Wheel[];
  readonly beyondRearHose: boolean;
}

export interface Stations {
  readonly stations: readonly Station[];
  readonly unplaced: readonly Instance[];
  readonly questions: readonly Question[];
  readonly assumptions: readonly string[];
}

const sayCircuit = (name: CircuitName): string => (name === "1" || name === "2" ? `circuit ${name}` : `the ${name} line`);

interface Inlet {
  readonly listed: ListedInstance;
  readonly inlet: Port;
  readonly outlets: readonly Port[];
}

/**
 * Places every listed valve on its circuit: by what the row says (`RV-2@rear`), by its ports, by what it does, in that order.
 * A valve that could be on either is a question, never a guess.
 */
export function stationsOf(parts: Parts, circuits: readonly Circuit[], discResidualLimit: Pascals): Stations {
  const stations: Station[] = [];
  const unplaced: Instance[] = [];
  const questions: Question[] = [];
  const assumptions: string[] = [];
  const inlets = parts.valves.flatMap(inletsOf);
  for (const [position, inlet] of inlets.entries()) {
    const { circuit, assumed } = circuitOf(inlet, circuits, { parts, discResidualLimit, twin: twinOf(inlets, position, circuits) });
    if (!circuit) {
      unplaced.push(inlet.listed.instance);
      questions.push(askCircuit(inlet.listed.instance.component, circuits));
      continue;
    }
    if (assumed) assumptions.push(`${inlet.listed.instance.label} is taken to be in ${sayCircuit(circuit.name)}, by ${assumed}`);
    stations.push(stationOn(circuit, inlet));
  }
  return { stations, unplaced, questions, assumptions };
}

function inletsOf(listed: ListedInstance): Inlet[] {
  const { component } = listed.instance;
  const claimed = new Set<string>();
  return linePorts(component, "in").flatMap((inlet) => {
    const outlets = outletsFedBy(component, inlet).filter((port) => !claimed.has(port.name));
    if (outlets.length === 0) return [];
    for (const port of outlets) claimed.add(port.name);
    return [{ listed, inlet, outlets }];
  });
}

function stationOn(circuit: Circuit, { listed, inlet, outlets }: Inlet): Station {
  const { instance, at } = listed;
  const byPorts = circuit.wheels.filter((wheel) => outlets.some((port) => wheelsServed(port.serves, [wheel]).length > 0 && servesCircuit(port, wheel, circuit)));
  const byRow = byPorts.filter((wheel) => at === undefined || isWheelOrAxle(at, wheel) !== false);
  const byDuty = outlets.every((port) => port.serves === "any" && port.circuit === "any") ? dutyWheels(instance.component, inlet, byRow) : byRow;
  return { instance, inlet, outlets, circuit: circuit.name, wheels: byDuty.length > 0 ? byDuty : byRow, beyondRearHose: isBeyondRearHose(instance.place) };
}

/** On a diagonal or single circuit an outlet marked front or rear serves that axle's wheels of the circuit. */
const servesCircuit = (port: Port, wheel: Wheel, circuit: Circuit): boolean =>
  circuit.name === "front" || circuit.name === "rear" || (port.circuit !== "front" && port.circuit !== "rear") || port.circuit === axleOf(wheel);

/** True or false when `at` names a wheel or an axle, undefined when it names something else. */
function isWheelOrAxle(at: string, wheel: Wheel): boolean | undefined {
  const where = placeKey(at);
  if (where === "front" || where === "rear") return axleOf(wheel) === where;
  return ["lf", "rf", "lr", "rr"].includes(where) ? wheel.toLowerCase() === where : undefined;
}

/** Proportioning belongs to the rear wheels and hold-off to the front ones of a circuit that has both. */
function dutyWheels(component: Component, inlet: Port, wheels: readonly Wheel[]): readonly Wheel[] {
  const axle = axleByDuty(dutiesFrom(component, inlet));
  return axle ? wheels.filter((wheel) => axleOf(wheel) === axle) : wheels;
}

interface Context {
  readonly parts: Parts;
  readonly discResidualLimit: Pascals;
  readonly twin: number | undefined;
}

function circuitOf({ listed, inlet, outlets }: Inlet, circuits: readonly Circuit[], context: Context): { circuit?: Circuit | undefined; assumed?: string | undefined } {
  const only = circuits[0];
  if (circuits.length === 1) return { circuit: only };
  const byRow = circuits.find((circuit) => listed.at !== undefined && circuit.name === placeKey(listed.at)) ?? circuitHolding(listed.at === undefined ? [] : wheelsNamed(listed.at), circuits);
  if (byRow) return { circuit: byRow };
  const byPort = [inlet, ...outlets].map((port) => circuits.find((circuit) => circuit.name === port.circuit)).find(Boolean);
  if (byPort) return { circuit: byPort };
  const byServes = circuitHolding(outlets.flatMap((port) => (port.serves === "any" ? [] : wheelsServed(port.serves, ["LF", "RF", "LR", "RR"]))), circuits);
  if (byServes) return { circuit: byServes };
  if (context.twin !== undefined) return { circuit: circuits[context.twin], assumed: "being one of a pair" };
  return byDutyOf(listed.instance.component, inlet, circuits, context);
}

const wheelsNamed = (at: string): Wheel[] => (["LF", "RF", "LR", "RR"] as const).filter((wheel) => placeKey(at) === wheel.toLowerCase());

const circuitHolding = (wheels: readonly Wheel[], circuits: readonly Circuit[]): Circuit | undefined =>
  wheels.length === 0 ? undefined : circuits.find((circuit) => wheels.every((wheel) => circuit.wheels.includes(wheel)));

/** A part listed once for each circuit goes on each, in listed order. */
function twinOf(inlets: readonly Inlet[], position: number, circuits: readonly Circuit[]): number | undefined {
  const component = inlets[position]?.listed.instance.component;
  const same = inlets.filter(({ listed }) => listed.instance.component === component);
  if (same.length !== circuits.length) return undefined;
  return inlets.slice(0, position).filter(({ listed }) => listed.instance.component === component).length;
}

function byDutyOf(component: Component, inlet: Port, circuits: readonly Circuit[], context: Context): { circuit?: Circuit | undefined; assumed?: string | undefined } {
  const duties = dutiesFrom(component, inlet);
  const axle = axleByDuty(duties) ?? axleByResidual(duties, context);
  const circuit = circuits.find(({ name }) => name === axle);
  return circuit ? { circuit, assumed: "what it does" } : {};
}

export const dutiesFrom = (component: Component, inlet: Port): readonly Duty[] =>
  component.passages.filter((passage) => passage.from === inlet.name).flatMap((passage) => passage.duties ?? []);

function axleByDuty(duties: readonly Duty[]): "front" | "rear" | undefined {
  if (duties.some(({ does }) => PROPORTIONING_NAMES.has(does))) return "rear";
  return duties.some(({ does }) => does === "hold-off") ? "front" : undefined;
}

/** A residual goes where its pressure belongs, if only one axle has that kind of brake. */
function axleByResidual(duties: readonly Duty[], { parts, discResidualLimit }: Context): "front" | "rear" | undefined {
  const holds = duties.flatMap((duty) => (duty.does === "residual" && duty.holds !== undefined ? [duty.holds] : []))[0];
  if (holds === undefined) return undefined;
  const kind = inPsi(holds) > inPsi(discResidualLimit) ? "drum" : "disc";
  const axles = (["LF", "LR"] as const).filter((wheel) => !parts.brakes[wheel].unnamed && parts.brakes[wheel].component.kind === kind).map(axleOf);
  return axles.length === 1 ? axles[0] : undefined;
}

const askCircuit = (component: Component, circuits: readonly Circuit[]): Question => ({
  table: "Cars", column: "Valves", subject: component.name, blocks: true,
  ask: `Which line is ${component.name} in? Write ${circuits.map(({ name }) => `${component.name}@${name}`).join(" or ")}.`,
  why: "its ports and what it does belong to that circuit",
});
