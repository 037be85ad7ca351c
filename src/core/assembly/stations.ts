/** Stations: each inlet of a listed valve, with the circuit it is on and the wheels behind it. */
import type { Component, Port, Wheel } from "../component";
import type { Pascals } from "../quantity";
import type { Question } from "../question";
import { linePorts, outletsFedBy, wheelsServed, type MasterCircuits } from "./circuits";
import { isBeyondRearHose, placeKey, type Circuit, type CircuitName, type Instance } from "./graph";
import type { ListedInstance } from "./listed-parts";
import type { Parts } from "./parts";
import { axleByDuty, axleByResidual, dutiesFrom, wheelsBehind, type Inlet, type PlacedInlet } from "./station-wheels";

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

/**
 * Places every listed valve on its circuit: by what the row says (`RV-2@rear`), by its ports, by what it does, in that order.
 * A valve that could be on either is a question, never a guess.
 */
export function stationsOf(parts: Parts, { circuits, circuitOfOutlet }: Pick<MasterCircuits, "circuits" | "circuitOfOutlet">, discResidualLimit: Pascals): Stations {
  const placed: PlacedInlet[] = [];
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
    placed.push({ ...inlet, circuit });
  }
  const stations = placed.map((one, position) => stationOn(one, wheelsBehind(placed, position, { parts, discResidualLimit, circuitOfOutlet })));
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

const stationOn = ({ listed: { instance }, inlet, outlets, circuit }: PlacedInlet, wheels: readonly Wheel[]): Station => ({
  instance, inlet, outlets, circuit: circuit.name, wheels, beyondRearHose: isBeyondRearHose(instance.place),
});

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
  const byDuty = circuits.find(({ name }) => name === axleByDuty(dutiesFrom(listed.instance.component, inlet)));
  if (byDuty) return { circuit: byDuty, assumed: "what it does" };
  if (context.twin !== undefined) return { circuit: circuits[context.twin], assumed: "being one of a pair" };
  const byResidual = circuits.find(({ name }) => name === axleByResidual(dutiesFrom(listed.instance.component, inlet), context));
  return byResidual ? { circuit: byResidual, assumed: "what it does" } : {};
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

const askCircuit = (component: Component, circuits: readonly Circuit[]): Question => ({
  table: "Cars", column: "Valves", subject: component.name, blocks: true,
  ask: `Which line is ${component.name} in? Write ${circuits.map(({ name }) => `${component.name}@${name}`).join(" or ")}.`,
  why: "its ports and what it does belong to that circuit",
});
