/** Stations: each inlet of a listed valve, with the circuit it is on and the wheels behind it. */
import type { Port, Wheel } from "../component";
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
  const inlets = parts.valves.flatMap((valve) => inletsOf(valve, circuits));
  for (const [position, inlet] of inlets.entries()) {
    const { circuit, assumed } = circuitOf(inlet, circuits, { parts, discResidualLimit, twin: twinOf(inlets, position, circuits) });
    if (!circuit) {
      unplaced.push(inlet.listed.instance);
      // With no circuit known, the question is what splits them, and it is asked of the master.
      if (circuits.length > 0) questions.push(askCircuit(inlet, circuits));
      continue;
    }
    if (assumed) assumptions.push(`${inlet.listed.instance.label} is taken to be in ${sayCircuit(circuit.name)}, by ${assumed}`);
    placed.push({ ...inlet, circuit });
  }
  const stations = placed.map((one, position) => stationOn(one, wheelsBehind(placed, position, { parts, discResidualLimit, circuitOfOutlet })));
  return { stations, unplaced, questions, assumptions };
}

/** Inlets of one part, each with the outlets behind it. Where several could claim an outlet, one that serves no wheel of an inlet's circuit is not its own. */
function inletsOf(listed: ListedInstance, circuits: readonly Circuit[]): Inlet[] {
  const { component } = listed.instance;
  const claimed = new Set<string>();
  return linePorts(component, "in").flatMap((inlet) => {
    const circuit = circuits.find(({ name }) => name === inlet.circuit);
    const serves = (port: Port): boolean => !circuit || wheelsServed(port.serves, circuit.wheels).length > 0;
    const outlets = outletsFedBy(component, inlet).filter((port) => !claimed.has(port.name) && serves(port));
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

/** A part with one inlet is in one line, and the car's row says which; one with several is in both, and its ports say which is which. */
function askCircuit({ listed, inlet }: Inlet, circuits: readonly Circuit[]): Question {
  const { component } = listed.instance;
  const names = circuits.map(({ name }) => name);
  const why = "its ports and what it does belong to that circuit";
  if (linePorts(component, "in").length > 1) {
    return { table: "Ports", column: "Circuit", subject: component.name, blocks: true, ask: `Which circuit is inlet ${inlet.name} of ${component.name} on: ${names.join(" or ")}?`, why };
  }
  return { table: "Cars", column: "Valves", subject: component.name, blocks: true, ask: `Which line is ${component.name} in? Write ${names.map((name) => `${component.name}@${name}`).join(" or ")}.`, why };
}
