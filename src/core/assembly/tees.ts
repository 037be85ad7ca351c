/** Branches an outlet that has more than one line to feed: with the car's own tees, then with a proposed one. */
import type { Catalogue } from "../catalogue";
import { lookUp } from "../catalogue";
import type { Car } from "../car";
import type { Component, Port } from "../component";
import { linePorts } from "./circuits";
import { isBeyondRearHose, placeKey, type CircuitName, type Instance, type PortRef } from "./graph";
import type { ListedInstance } from "./listed-parts";
import type { Demand, Supply } from "./plumb";
import { nearestPlace } from "./places";
import { unlistedPort, unlistedTee } from "./stand-in";

export interface Link {
  readonly from: PortRef;
  readonly to: PortRef;
}

/** The tees of one car, taken from the pool as they are used. */
export interface TeePool {
  readonly catalogue: Catalogue;
  readonly car: Car;
  readonly listed: ListedInstance[];
  readonly proposed: Instance[];
}

/** Joins a supply to what it feeds, adding tees where one outlet must feed several. */
export function linksOf(pool: TeePool, circuit: CircuitName, supply: Supply): Link[] {
  return branch(pool, circuit, { outlet: supply.outlet, feeds: supply.feeds, beyondRearHose: supply.beyondRearHose });
}

type Branching = Pick<Supply, "outlet" | "feeds" | "beyondRearHose">;

function branch(pool: TeePool, circuit: CircuitName, { outlet, feeds, beyondRearHose }: Branching): Link[] {
  const [first] = feeds;
  if (!first) return [];
  if (feeds.length === 1) return [{ from: outlet, to: first.inlet }];
  const tee = listedTee(pool, circuit, beyondRearHose) ?? proposedTee(pool, { outlet, feeds, beyondRearHose });
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
  return whole || !last ? links : [...links, ...branch(pool, circuit, { outlet: last, feeds: feeds.slice(plain.length), beyondRearHose })];
}

function listedTee(pool: TeePool, circuit: CircuitName, beyondRearHose: boolean): Instance | undefined {
  const fits = ({ instance, at }: ListedInstance): boolean => {
    const named = [placeKey(at ?? ""), ...instance.component.ports.map((port) => port.circuit)].filter((name) => ["front", "rear", "1", "2"].includes(name));
    const onCircuit = circuit === "single" || named.every((name) => name === circuit);
    return onCircuit && (instance.place === undefined || isBeyondRearHose(instance.place) === beyondRearHose);
  };
  const placed = pool.listed.findIndex((tee) => fits(tee) && tee.instance.place !== undefined);
  const index = placed >= 0 ? placed : pool.listed.findIndex(fits);
  return index < 0 ? undefined : pool.listed.splice(index, 1)[0]?.instance;
}

function proposedTee(pool: TeePool, branching: Branching): Instance {
  const wanted = branching.feeds.length;
  const component = [...pool.catalogue.components.values()].filter(isTee).sort((a, b) => rankTee(a, wanted) - rankTee(b, wanted) || priceOf(a) - priceOf(b) || (a.name < b.name ? -1 : 1))[0] ?? unlistedTee;
  const count = pool.proposed.length + 1;
  const tee: Instance = { label: `${component.name}@added-${count}`, component, place: teePlace(pool, component, branching), proposed: true };
  pool.proposed.push(tee);
  return tee;
}

/** Where the lines from the outlet through the tee to all it feeds are shortest; beyond the rear hose that is the axle tee. */
function teePlace(pool: TeePool, component: Component, { outlet, feeds, beyondRearHose }: Branching): string | undefined {
  if (beyondRearHose) return "axle-tee";
  const ends = [outlet.instance.outletPlace ?? outlet.instance.place, ...feeds.map((demand: Demand) => demand.inlet.instance.place)];
  const lengths = lookUp(pool.catalogue.lengths, pool.car.platform) ?? [];
  return nearestPlace(lengths, ends) ?? component.place;
}

const isTee = (component: Component): boolean => component.kind === "tee" && teePorts(component).outlets.length >= 2;
const rankTee = (component: Component, wanted: number): number => Math.abs(teePorts(component).outlets.length - wanted);
const priceOf = (component: Component): number => component.price ?? Infinity;

function teePorts(tee: Component): { inlet: Port; outlets: Port[] } {
  const inlets = linePorts(tee, "in");
  const ports = [...inlets, ...linePorts(tee, "out")];
  const inlet = ports[0] ?? unlistedPort("in");
  return { inlet, outlets: ports.filter((port) => port !== inlet) };
}
