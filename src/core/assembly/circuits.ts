/** Which circuits a car has, which master outlets feed them, and which wheels each must reach. */
import type { Split } from "../car";
import { axleOf, isPlain, portNamed, WHEELS, type Axle, type Component, type Port, type Serves, type Wheel } from "../component";
import type { Question } from "../question";
import { theCircuit, type Circuit, type CircuitName } from "./graph";

export interface MasterCircuits {
  readonly circuits: readonly Circuit[];
  /** The circuit of each master outlet, by port name. */
  readonly circuitOfOutlet: ReadonlyMap<string, CircuitName>;
  readonly questions: readonly Question[];
  readonly assumptions: readonly string[];
}

export const wheelsServed = (serves: Serves, among: readonly Wheel[]): Wheel[] =>
  among.filter((wheel) => serves === "any" || serves === wheel || serves === axleOf(wheel));

export const linePorts = (component: Component, flow: Port["flow"]): Port[] =>
  component.ports.filter((port) => port.flow === flow && port.use === "line" && !port.plugged);

/**
 * Reads the circuits off the master's outlets. One outlet is one circuit for all wheels.
 * @param split of the platform, or undefined when unknown: then the outlets' own circuit names tell
 */
export function masterCircuits(master: Component, split: Split | undefined): MasterCircuits {
  const outlets = linePorts(master, "out");
  if (outlets.length === 1) return single(outlets);
  const kind = split ?? splitToldBy(outlets);
  if (!kind) return { circuits: [], circuitOfOutlet: new Map(), questions: [askSplit(master)], assumptions: [] };
  const names: readonly CircuitName[] = kind === "diagonal" ? ["1", "2"] : ["front", "rear"];
  const { circuitOfOutlet, questions, assumptions } = nameOutlets(master, outlets, names);
  const circuits = names.map((name) => ({ name, wheels: wheelsOf(name, outlets, circuitOfOutlet) }));
  return { circuits, circuitOfOutlet, questions, assumptions };
}

function single(outlets: readonly Port[]): MasterCircuits {
  const circuitOfOutlet = new Map(outlets.map((port): [string, CircuitName] => [port.name, "single"]));
  return { circuits: [{ name: "single", wheels: WHEELS }], circuitOfOutlet, questions: [], assumptions: [] };
}

function splitToldBy(outlets: readonly Port[]): Split | undefined {
  const named = new Set(outlets.map((port) => port.circuit));
  if (named.has("front") && named.has("rear")) return "front/rear";
  return named.has("1") && named.has("2") ? "diagonal" : undefined;
}

function nameOutlets(master: Component, outlets: readonly Port[], names: readonly CircuitName[]) {
  const questions: Question[] = [];
  const assumptions: string[] = [];
  const circuitOfOutlet = new Map<string, CircuitName>();
  const other = names[0] === "1" ? ["front", "rear"] : ["1", "2"];
  for (const [position, port] of outlets.entries()) {
    const own = names.find((name) => name === port.circuit) ?? circuitByServes(port, names);
    const renamed = names[other.indexOf(port.circuit)];
    const name = own ?? renamed ?? names[Math.min(position, 1)];
    if (name === undefined) continue;
    circuitOfOutlet.set(port.name, name);
    if (own) continue;
    assumptions.push(`outlet ${port.name} of ${master.name} is taken as ${theCircuit(name)}`);
    if (!renamed) questions.push(askOutletCircuit(master, port, names));
  }
  return { circuitOfOutlet, questions, assumptions };
}

function circuitByServes(port: Port, names: readonly CircuitName[]): CircuitName | undefined {
  if (names[0] === "front") {
    const axles = new Set(wheelsServed(port.serves, WHEELS).map(axleOf));
    return axles.size === 1 ? [...axles][0] : undefined;
  }
  return undefined;
}

/** On a diagonal split circuit 1 is LF and RR, unless an outlet of it says it serves another wheel. */
function wheelsOf(name: CircuitName, outlets: readonly Port[], circuitOfOutlet: ReadonlyMap<string, CircuitName>): readonly Wheel[] {
  if (name === "front" || name === "rear") return WHEELS.filter((wheel) => axleOf(wheel) === name);
  const first: readonly Wheel[] = ["LF", "RR"];
  const second: readonly Wheel[] = ["RF", "LR"];
  const served = outlets.filter((port) => circuitOfOutlet.get(port.name) === "1").map((port) => port.serves);
  const swapped = served.some((serves) => serves === "RF" || serves === "LR");
  return (name === "1") !== swapped ? first : second;
}

const askSplit = (master: Component): Question => ({
  table: "Platforms", column: "Split", subject: master.name, blocks: true,
  ask: "Is the brake system split front/rear or diagonal?", why: "every line from the master depends on it",
});

const askOutletCircuit = (master: Component, port: Port, names: readonly CircuitName[]): Question => ({
  table: "Ports", column: "Circuit", subject: `${master.name} ${port.name}`, blocks: true,
  ask: `Which circuit does outlet ${port.name} of ${master.name} feed: ${names.join(" or ")}?`, why: "the valves of one axle would land on the other",
});

/** Outlets that a given inlet feeds, by the listed passages; a plain part feeds every outlet of its circuit. */
export function outletsFedBy(component: Component, inlet: Port): Port[] {
  const outlets = linePorts(component, "out");
  const listed = component.passages.filter((passage) => passage.from === inlet.name).map((passage) => portNamed(component, passage.to));
  if (listed.length > 0) return outlets.filter((port) => listed.includes(port));
  const unclaimed = outlets.filter((port) => !component.passages.some((passage) => passage.to === port.name));
  if (component.passages.length > 0 && !isPlain(component)) return [];
  return unclaimed.filter((port) => inOneCircuit(inlet, port));
}

/** Where a port leaves its circuit out, the axle it serves tells front from rear. */
function inOneCircuit(inlet: Port, outlet: Port): boolean {
  if (inlet.circuit !== "any" && outlet.circuit !== "any") return inlet.circuit === outlet.circuit;
  const [a, b] = [axleTold(inlet), axleTold(outlet)];
  return a === undefined || b === undefined || a === b;
}

function axleTold({ circuit, serves }: Port): Axle | undefined {
  if (circuit !== "any") return circuit === "front" || circuit === "rear" ? circuit : undefined;
  const axles = new Set(wheelsServed(serves, WHEELS).map(axleOf));
  return axles.size === 1 ? [...axles][0] : undefined;
}
