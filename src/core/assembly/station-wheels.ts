/** Which wheels stand behind a listed valve: by its ports, by what the row says, by what it does and where it is listed. */
import { axleOf, PROPORTIONING_NAMES, type Axle, type Component, type Duty, type Port, type Wheel } from "../component";
import { inPsi, type Pascals } from "../quantity";
import { wheelsServed } from "./circuits";
import { placeKey, type Circuit, type CircuitName } from "./graph";
import type { ListedInstance } from "./listed-parts";
import type { Parts } from "./parts";

export interface Inlet {
  readonly listed: ListedInstance;
  readonly inlet: Port;
  readonly outlets: readonly Port[];
}

/** An inlet whose circuit is settled. */
export interface PlacedInlet extends Inlet {
  readonly circuit: Circuit;
}

export interface AxleContext {
  readonly parts: Parts;
  readonly discResidualLimit: Pascals;
  readonly circuitOfOutlet: ReadonlyMap<string, CircuitName>;
}

/**
 * The wheels behind one inlet. A valve whose ports name no axle goes to the axle that its duty belongs to, unless the list, which is in
 * flow order, has it before the part that parts the axles of its circuit: then it feeds both, as listed.
 */
export function wheelsBehind(placed: readonly PlacedInlet[], position: number, context: AxleContext): readonly Wheel[] {
  const one = placed[position];
  if (!one) return [];
  const wheels = wheelsByPorts(one);
  const axle = one.outlets.every(namesNoAxle) ? axleOnBoth(placed, position, context) : undefined;
  const narrowed = wheels.filter((wheel) => axleOf(wheel) === axle);
  return narrowed.length > 0 ? narrowed : wheels;
}

function axleOnBoth(placed: readonly PlacedInlet[], position: number, context: AxleContext): Axle | undefined {
  const one = placed[position] as PlacedInlet;
  const onCircuit = (other: PlacedInlet): boolean => other.circuit === one.circuit && other.listed.instance !== one.listed.instance;
  if (placed.slice(position + 1).filter(onCircuit).some(partsAxles)) return undefined;
  const duties = dutiesFrom(one.listed.instance.component, one.inlet);
  // A residual stands nearest the master: it is on one axle only where the axles have parted before it.
  const outletsOfMaster = [...context.circuitOfOutlet.values()].filter((name) => name === one.circuit.name).length;
  const parted = outletsOfMaster > 1 || placed.slice(0, position).filter(onCircuit).some(partsAxles);
  return axleByDuty(duties) ?? (parted ? axleByResidual(duties, context) : undefined);
}

/** One inlet with outlets of its own for both axles. */
const partsAxles = (one: PlacedInlet): boolean => one.outlets.length > 1 && new Set(wheelsByPorts(one).map(axleOf)).size > 1;

const namesNoAxle = ({ serves, circuit }: Port): boolean => serves === "any" && circuit !== "front" && circuit !== "rear";

function wheelsByPorts({ listed: { at }, outlets, circuit }: PlacedInlet): Wheel[] {
  const byPorts = circuit.wheels.filter((wheel) => outlets.some((port) => wheelsServed(port.serves, [wheel]).length > 0 && servesCircuit(port, wheel, circuit)));
  return byPorts.filter((wheel) => at === undefined || isWheelOrAxle(at, wheel) !== false);
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

export const dutiesFrom = (component: Component, inlet: Port): readonly Duty[] =>
  component.passages.filter((passage) => passage.from === inlet.name).flatMap((passage) => passage.duties ?? []);

/** Proportioning belongs to the rear wheels and hold-off to the front ones. */
export function axleByDuty(duties: readonly Duty[]): Axle | undefined {
  if (duties.some(({ does }) => PROPORTIONING_NAMES.has(does))) return "rear";
  return duties.some(({ does }) => does === "hold-off") ? "front" : undefined;
}

/** A residual goes where its pressure belongs, if only one axle has that kind of brake. */
export function axleByResidual(duties: readonly Duty[], { parts, discResidualLimit }: Pick<AxleContext, "parts" | "discResidualLimit">): Axle | undefined {
  const holds = duties.flatMap((duty) => (duty.does === "residual" && duty.holds !== undefined ? [duty.holds] : []))[0];
  if (holds === undefined) return undefined;
  const kind = inPsi(holds) > inPsi(discResidualLimit) ? "drum" : "disc";
  const axles = (["LF", "LR"] as const).filter((wheel) => !parts.brakes[wheel].unnamed && parts.brakes[wheel].component.kind === kind).map(axleOf);
  return axles.length === 1 ? axles[0] : undefined;
}
