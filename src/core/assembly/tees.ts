/** Branches an outlet that has more than one line to feed: with the car's own tees, then with a proposed one. */
import type { Catalogue } from "../catalogue";
import { lookUp } from "../catalogue";
import type { Car } from "../car";
import { axleOf, faceOf, type Component, type Port } from "../component";
import { mates } from "../joint";
import { madeOnce } from "../made-once";
import { linePorts } from "./circuits";
import { isBeyondRearHose, placeKey, type CircuitName, type Instance, type PortRef } from "./graph";
import type { ListedInstance } from "./listed-parts";
import type { Demand, Supply } from "./plumb";
import { distanceBetween, nearestPlace } from "./places";
import { unlistedPort, unlistedTee } from "./stand-in";

export interface Link {
  readonly from: PortRef;
  readonly to: PortRef;
}

/** The tees of one car, taken from the pool as they are used. */
export interface TeePool {
  readonly catalogue: Catalogue;
  readonly car: Car;
  /** One hose carries the rear line to the axle, so that a tee on the axle is behind it. */
  readonly hasRearHose: boolean;
  readonly listed: ListedInstance[];
  readonly proposed: Instance[];
  readonly assumptions: string[];
}

/** An outlet of one circuit and what it feeds. */
export type Branching = Pick<Supply, "outlet" | "feeds" | "beyondRearHose"> & { readonly circuit: CircuitName };

/** Joins every supply to what it feeds, adding tees where one outlet must feed several. Each listed tee goes where its lines are shortest. */
export function linksOf(pool: TeePool, supplies: readonly Branching[]): Link[] {
  const reserved = nearestTees(pool, supplies.filter(({ feeds }) => feeds.length > 1));
  return supplies.flatMap((supply) => branch(pool, supply, reserved.get(supply)));
}

function branch(pool: TeePool, branching: Branching, reserved?: Instance): Link[] {
  const { outlet, feeds } = branching;
  const [first] = feeds;
  if (!first) return [];
  if (feeds.length === 1) return [{ from: outlet, to: first.inlet }];
  const tee = reserved ?? unplacedTee(pool, branching) ?? proposedTee(pool, branching);
  const { inlet, outlets } = teePorts(tee.component);
  const ports = outlets.map((port) => ({ instance: tee, port }));
  const whole = feeds.length <= ports.length;
  const plain = whole ? feeds : feeds.slice(0, ports.length - 1);
  const links: Link[] = [{ from: outlet, to: { instance: tee, port: inlet } }];
  plain.forEach((demand, index) => {
    const from = ports[index];
    if (from) links.push({ from, to: demand.inlet });
  });
  const last = ports[ports.length - 1];
  return whole || !last ? links : [...links, ...branch(pool, { ...branching, outlet: last, feeds: feeds.slice(plain.length) })];
}

/** Takes from the pool, for each outlet, the listed tee nearest to what it joins; the shortest pair first, whatever the order of the list. */
function nearestTees(pool: TeePool, branchings: readonly Branching[]): ReadonlyMap<Branching, Instance> {
  const pairs = branchings.flatMap((branching) =>
    pool.listed.filter((tee) => fits(pool, tee, branching)).map((tee) => ({ branching, tee, length: linesThrough(pool, tee.instance.place, branching) })));
  const taken = new Map<Branching, ListedInstance>();
  for (const { branching, tee, length } of [...pairs].sort((a, b) => compareInTurn([a.length], [b.length]))) {
    if (length < Infinity && !taken.has(branching) && ![...taken.values()].includes(tee)) taken.set(branching, tee);
  }
  const used = [...pool.listed].filter((tee) => [...taken.values()].includes(tee));
  for (const tee of used) pool.listed.splice(pool.listed.indexOf(tee), 1);
  return inListedOrder(branchings, taken, used);
}

/** Tees that are alike go to the outlets in listed order. */
function inListedOrder(branchings: readonly Branching[], taken: ReadonlyMap<Branching, ListedInstance>, used: readonly ListedInstance[]): ReadonlyMap<Branching, Instance> {
  const waiting = [...used];
  return new Map(branchings.flatMap((branching): [Branching, Instance][] => {
    const like = taken.get(branching);
    const index = waiting.findIndex(({ instance, at }) => instance.component === like?.instance.component && instance.place === like.instance.place && at === like.at);
    return index < 0 ? [] : waiting.splice(index, 1).map(({ instance }) => [branching, instance]);
  }));
}

function fits({ hasRearHose }: TeePool, { instance, at }: ListedInstance, { circuit, feeds, beyondRearHose }: Branching): boolean {
  const named = [placeKey(at ?? ""), ...instance.component.ports.map((port) => port.circuit)].filter((name) => ["front", "rear", "1", "2"].includes(name));
  const onCircuit = circuit === "single" || named.every((name) => name === circuit);
  const onAxle = isBeyondRearHose(instance.place);
  const toRear = feeds.every(({ wheels }) => wheels.every((wheel) => axleOf(wheel) === "rear"));
  return onCircuit && (instance.place === undefined || onAxle === beyondRearHose || (!hasRearHose && onAxle && toRear));
}

/** Sum of the lines from a place to all that a branching joins; Infinity when one of them is not known. */
function linesThrough({ catalogue, car }: TeePool, place: string | undefined, branching: Branching): number {
  const lengths = lookUp(catalogue.lengths, car.platform) ?? [];
  const to = (end: string | undefined): number => {
    if (place === undefined || end === undefined) return Infinity;
    return placeKey(place) === placeKey(end) ? 0 : (distanceBetween(lengths, place, end)?.length ?? Infinity);
  };
  return endsJoined(branching).reduce((sum, end) => sum + to(end), 0);
}

const endsJoined = ({ outlet, feeds }: Branching): (string | undefined)[] => [outlet.instance.outletPlace ?? outlet.instance.place, ...feeds.map((demand: Demand) => demand.inlet.instance.place)];

/** A listed tee whose distances are not known; one without a place goes where its lines are shortest. */
function unplacedTee(pool: TeePool, branching: Branching): Instance | undefined {
  const index = pool.listed.findIndex((tee) => fits(pool, tee, branching));
  const instance = index < 0 ? undefined : pool.listed.splice(index, 1)[0]?.instance;
  if (!instance || instance.place !== undefined) return instance;
  const place = teePlace(pool, instance.component, branching);
  if (place !== undefined) pool.assumptions.push(`${instance.label} is taken to stand at ${place}, where its lines are shortest`);
  return { ...instance, place };
}

function proposedTee(pool: TeePool, branching: Branching): Instance {
  const rank = (tee: Component): readonly number[] => [screwsOn(tee, branching) ? 0 : 1, Math.abs(teePorts(tee).outlets.length - branching.feeds.length), seatsUnlike(tee, branching), tee.price ?? Infinity];
  const component = [...teesOf(pool.catalogue)].sort((a, b) => compareInTurn(rank(a), rank(b)) || (a.name < b.name ? -1 : 1))[0] ?? unlistedTee;
  const count = pool.proposed.length + 1;
  const tee: Instance = { label: `${component.name}@added-${count}`, component, place: teePlace(pool, component, branching), proposed: true };
  pool.proposed.push(tee);
  return tee;
}

/** A tee stands on a hose's end without a line between, so there it must have the end's own thread and seat. */
function screwsOn(tee: Component, { outlet }: Branching): boolean {
  const [end, inlet] = [faceOf(outlet.port), faceOf(teePorts(tee).inlet)];
  return outlet.instance.component.kind !== "hose" || end === undefined || (inlet !== undefined && mates(end, inlet));
}

/** Where the lines from the outlet through the tee to all it feeds are shortest; beyond the rear hose that is the axle tee. */
function teePlace(pool: TeePool, component: Component, branching: Branching): string | undefined {
  if (branching.beyondRearHose) return "axle-tee";
  const lengths = lookUp(pool.catalogue.lengths, pool.car.platform) ?? [];
  return nearestPlace(lengths, endsJoined(branching)) ?? component.place;
}

const teesOf = madeOnce(({ components }: Catalogue): readonly Component[] => [...components.values()].filter(isTee));

const isTee = (component: Component): boolean => component.kind === "tee" && teePorts(component).outlets.length >= 2;

/** How many of the ports it joins have another seat than the tee's own: a line between two kinds of flare is better avoided. */
function seatsUnlike(tee: Component, { outlet, feeds }: Branching): number {
  const { inlet, outlets } = teePorts(tee);
  const unlike = feeds.filter((demand: Demand, index) => demand.inlet.port.seat !== (outlets[index] ?? inlet).seat);
  return unlike.length + (outlet.port.seat === inlet.seat ? 0 : 1);
}

const compareInTurn = (a: readonly number[], b: readonly number[]): number => {
  const first = a.findIndex((value, index) => value !== b[index]);
  return first < 0 ? 0 : (a[first] ?? 0) < (b[first] ?? 0) ? -1 : 1;
};

function teePorts(tee: Component): { inlet: Port; outlets: Port[] } {
  const inlets = linePorts(tee, "in");
  const ports = [...inlets, ...linePorts(tee, "out")];
  const inlet = ports[0] ?? unlistedPort("in");
  return { inlet, outlets: ports.filter((port) => port !== inlet) };
}
