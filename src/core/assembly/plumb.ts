/** Plumbs one circuit: from its master outlets, through its stations in order, to its wheels. */
import { AXLE_MATE, axleOf, type Wheel } from "../component";
import { wheelsServed, linePorts } from "./circuits";
import type { Instance, PortRef } from "./graph";
import type { Station } from "./stations";

/** An outlet under pressure, the wheels it still owes a line to, and what is joined to it. */
export interface Supply {
  readonly outlet: PortRef;
  readonly can: readonly Wheel[];
  readonly beyondRearHose: boolean;
  owes: readonly Wheel[];
  readonly feeds: Demand[];
}

export interface Demand {
  readonly inlet: PortRef;
  readonly wheels: readonly Wheel[];
}

export interface PlumbedCircuit {
  readonly supplies: readonly Supply[];
  readonly unfed: readonly Wheel[];
  /** Stations whose inlet no outlet of this circuit could feed. */
  readonly unreached: readonly Station[];
  readonly assumptions: readonly string[];
}

export interface CircuitToPlumb {
  readonly wheels: readonly Wheel[];
  readonly outlets: readonly PortRef[];
  readonly stations: readonly Station[];
  readonly rearHose: Instance | undefined;
  /** The part that ends the hard line at each wheel: a hose, or the brake itself. */
  readonly ends: Readonly<Record<Wheel, PortRef>>;
}

/**
 * Joins stations in listed order. Where that order would strand an outlet (a hold-off valve listed after the block that
 * parts the two fronts), the station is moved toward the master until every outlet behind it is used, and the answer says so.
 */
export function plumbCircuit(circuit: CircuitToPlumb): PlumbedCircuit {
  const before = circuit.stations.filter((station) => !station.beyondRearHose || !circuit.rearHose);
  const beyond = circuit.stations.filter((station) => station.beyondRearHose && circuit.rearHose);
  const ordered = settleOrder(circuit, before);
  const state = begin(circuit);
  const unreached = [...feedAll(state, ordered.stations, circuit.wheels)];
  if (circuit.rearHose) feedRearHose(state, circuit.rearHose);
  unreached.push(...feedAll(state, beyond, circuit.wheels));
  const unfed = circuit.wheels.filter((wheel) => !feedWheel(state, wheel, circuit.ends[wheel]));
  return { supplies: state.supplies, unfed, unreached, assumptions: ordered.assumptions };
}

interface State {
  readonly supplies: Supply[];
}

const begin = ({ outlets, wheels }: CircuitToPlumb): State => ({
  supplies: outlets.map((outlet) => supply(outlet, reachOf(outlet, wheels), false)),
});

/** A master outlet named after an axle, on a circuit that has wheels of both, was named for another split: it feeds the whole circuit. */
function reachOf({ port }: PortRef, wheels: readonly Wheel[]): readonly Wheel[] {
  const namedForOtherSplit = (port.circuit === "front" || port.circuit === "rear") && new Set(wheels.map(axleOf)).size > 1;
  return namedForOtherSplit ? wheels : wheelsServed(port.serves, wheels);
}

const supply = (outlet: PortRef, can: readonly Wheel[], beyondRearHose: boolean): Supply => ({ outlet, can, owes: can, feeds: [], beyondRearHose });

function settleOrder(circuit: CircuitToPlumb, listed: readonly Station[]): { stations: readonly Station[]; assumptions: readonly string[] } {
  const stations = [...listed];
  const moved = new Map<Station, Station>();
  const settled = new Set<Station>();
  for (let index = firstMisfit(circuit, stations, settled); index >= 0; index = firstMisfit(circuit, stations, settled)) {
    const [station, ahead] = [stations[index], stations[index - 1]];
    if (!station) break;
    if (!ahead || moved.get(ahead) === station) {
      settled.add(station);
      continue;
    }
    stations.splice(index - 1, 2, station, ahead);
    moved.set(station, ahead);
  }
  if ([...moved.keys()].some((station) => settled.has(station))) return { stations: listed, assumptions: [] };
  const say = ([station, ahead]: [Station, Station]) => `${station.instance.label} is taken as fed before ${ahead.instance.label}: after it, an outlet would be left open`;
  return { stations, assumptions: [...moved].map(say) };
}

/** Index of the first station that no one outlet can feed whole, or whose joining strands an outlet with wheels to serve; -1 if none. */
function firstMisfit(circuit: CircuitToPlumb, stations: readonly Station[], settled: ReadonlySet<Station>): number {
  const state = begin(circuit);
  return stations.findIndex((station) => {
    const waiting = state.supplies.filter((other) => other.owes.length > 0 && other.feeds.length === 0);
    const source = best(state.supplies, station.wheels);
    const whole = !source || station.wheels.every((wheel) => source.owes.includes(wheel));
    feedStation(state, station);
    return !settled.has(station) && (!whole || waiting.some((other) => other.owes.length === 0 && other.feeds.length === 0));
  });
}

const feedAll = (state: State, stations: readonly Station[], wheels: readonly Wheel[]): Station[] =>
  stations.filter((station) => station.wheels.some((wheel) => wheels.includes(wheel)) && !feedStation(state, station));

function feedStation(state: State, station: Station): boolean {
  const source = best(state.supplies, station.wheels);
  if (!source) return false;
  const { instance, inlet, outlets, beyondRearHose } = station;
  const wheels = station.wheels.filter((wheel) => source.owes.includes(wheel));
  take(state, source, { inlet: { instance, port: inlet }, wheels });
  for (const port of outlets) state.supplies.push(supply({ instance, port }, wheelsServed(port.serves, wheels), beyondRearHose || source.beyondRearHose));
  return true;
}

function feedRearHose(state: State, hose: Instance): void {
  const inlet = linePorts(hose.component, "in")[0];
  const outlets = linePorts(hose.component, "out");
  const rear = (["LR", "RR"] as const).filter((wheel) => state.supplies.some((one) => one.owes.includes(wheel)));
  const source = best(state.supplies, rear);
  if (!inlet || !source) return;
  take(state, source, { inlet: { instance: hose, port: inlet }, wheels: rear });
  for (const port of outlets) state.supplies.push(supply({ instance: hose, port }, wheelsServed(port.serves, rear), true));
}

/** Feeds a wheel from the outlet that owes it; where none does, from one of the same circuit that could be branched. */
function feedWheel(state: State, wheel: Wheel, end: PortRef): boolean {
  const source = best(state.supplies, [wheel]) ?? branchable(state.supplies, wheel);
  if (!source) return false;
  take(state, source, { inlet: end, wheels: [wheel] });
  return true;
}

/** The joined wheels are owed by this outlet no longer, nor by any other that reached them another way. */
function take(state: State, source: Supply, demand: Demand): void {
  source.feeds.push(demand);
  for (const other of state.supplies) other.owes = other.owes.filter((wheel) => !demand.wheels.includes(wheel));
}

function best(supplies: readonly Supply[], wheels: readonly Wheel[]): Supply | undefined {
  const rank = (one: Supply): readonly number[] => [
    wheels.filter((wheel) => !one.owes.includes(wheel)).length,
    one.feeds.length,
    one.owes.length,
  ];
  const candidates = supplies.filter((one) => wheels.some((wheel) => one.owes.includes(wheel)));
  return candidates.reduce<Supply | undefined>((chosen, one) => (!chosen || less(rank(one), rank(chosen)) ? one : chosen), undefined);
}

const less = (a: readonly number[], b: readonly number[]): boolean => {
  const first = a.findIndex((value, index) => value !== b[index]);
  return first >= 0 && (a[first] ?? 0) < (b[first] ?? 0);
};

/** An outlet that already feeds the other wheel of the axle directly can be branched for this one. */
const branchable = (supplies: readonly Supply[], wheel: Wheel): Supply | undefined =>
  [...supplies].reverse().find((one) => one.feeds.length > 0 && one.can.includes(AXLE_MATE[wheel]) && one.feeds.some(({ wheels }) => wheels.length === 1));
