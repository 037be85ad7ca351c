/** Fits a tube to a port: a nut, or the cheapest chain of adapters and a nut, or the reason why neither. */
import Big from "big.js";
import type { Adapter, Nut } from "./catalogue";
import { faceKey, flareFor, mates, opposite, type Flare, type Gender, type JointFace, type Seat } from "./joint";
import type { Metres } from "./quantity";
import { sameTube } from "./tube";

/** The parts a search may use, and what one more joint is worth. */
export interface FittingStock {
  readonly nuts: readonly Nut[];
  readonly adapters: readonly Adapter[];
  readonly jointCost: number;
}

export interface Fitting {
  readonly fits: true;
  readonly nut: Nut;
  readonly flare: Flare;
  /** From the port outward to the nut. */
  readonly adapters: readonly AdapterStep[];
  /** Price of nut and adapters; undefined when one of them has no price. */
  readonly price: number | undefined;
}

/** An adapter as it stands in a chain: `joins` meets the side nearer the start, `offers` the next. */
export interface AdapterStep {
  readonly adapter: Adapter;
  readonly joins: JointFace;
  readonly offers: JointFace;
}

export interface NoFitting {
  readonly fits: false;
  readonly reason: NoFittingReason;
}

/** Why a tube cannot be joined to a port, nearest miss first. */
export type NoFittingReason = "seat" | "gender" | "tube" | "thread";

/**
 * Finds the nut, or adapters and nut, that join a tube to a port.
 * A nut alone always goes before adapters; among chains the cheapest wins, each adapter costing its price and one joint.
 * @param tube outside diameter [m]
 */
export function fitTube(stock: FittingStock, tube: Metres, port: JointFace): Fitting | NoFitting {
  const nuts = stock.nuts.filter((nut) => sameTube(nut.tube, tube));
  const direct = cheapestNut(nuts, port);
  if (direct) return fitting(direct, []);
  const chain = cheapestChain(stock, port, (face) => {
    const nut = cheapestNut(nuts, face);
    return nut && { end: nut, cost: cost(nut.price) };
  });
  return chain ? fitting(chain.end, chain.steps) : { fits: false, reason: reasonAgainst(stock.nuts, tube, port) };
}

/**
 * Finds the cheapest chain of adapters between two faces; an empty chain when they mate as they are.
 * @returns undefined when no chain joins them
 */
export function joinFaces(stock: FittingStock, from: JointFace, to: JointFace): readonly AdapterStep[] | undefined {
  if (mates(from, to)) return [];
  return cheapestChain(stock, from, (face) => (mates(face, to) ? { end: to, cost: Big(0) } : undefined))?.steps;
}

/** Sum of prices in exact decimals; undefined when one is not known. */
export function sumPrices(prices: readonly (number | undefined)[]): number | undefined {
  let sum = Big(0);
  for (const price of prices) {
    if (price === undefined) return undefined;
    sum = sum.plus(price);
  }
  return sum.toNumber();
}

const fitting = (nut: Nut, adapters: readonly AdapterStep[]): Fitting => ({
  fits: true,
  nut,
  flare: flareFor(nut.face.seat),
  adapters,
  price: sumPrices([nut.price, ...adapters.map(({ adapter }) => adapter.price)]),
});

/** An unpriced part is as dear as any: it is used only where nothing priced fits. */
const UNPRICED = Big(1e6);
const cost = (price: number | undefined): Big => (price === undefined ? UNPRICED : Big(price));

const cheapestNut = (nuts: readonly Nut[], face: JointFace): Nut | undefined =>
  nuts.filter((nut) => mates(nut.face, face)).sort((a, b) => cost(a.price).cmp(cost(b.price)) || (a.name < b.name ? -1 : 1))[0];

interface Reached {
  readonly face: JointFace;
  readonly cost: Big;
  readonly steps: readonly AdapterStep[];
}

/** Shortest path (Dijkstra) over faces; `finish` says whether a face ends the chain and what that costs. */
function cheapestChain<End>(stock: FittingStock, start: JointFace, finish: (face: JointFace) => { end: End; cost: Big } | undefined) {
  const open = new Map<string, Reached>([[faceKey(start), { face: start, cost: Big(0), steps: [] }]]);
  const done = new Set<string>();
  let best: { end: End; cost: Big; steps: readonly AdapterStep[] } | undefined;
  for (let next = nearest(open); next && !(best && best.cost.lte(next.cost)); next = nearest(open)) {
    open.delete(faceKey(next.face));
    done.add(faceKey(next.face));
    const ending = next.steps.length > 0 ? finish(next.face) : undefined;
    if (ending && (!best || next.cost.plus(ending.cost).lt(best.cost))) best = { end: ending.end, cost: next.cost.plus(ending.cost), steps: next.steps };
    for (const step of stepsFrom(stock.adapters, next.face)) relax(open, done, reach(next, step, stock.jointCost));
  }
  return best;
}

const nearest = (open: ReadonlyMap<string, Reached>): Reached | undefined =>
  [...open.values()].reduce<Reached | undefined>((least, one) => (!least || one.cost.lt(least.cost) ? one : least), undefined);

const stepsFrom = (adapters: readonly Adapter[], face: JointFace): AdapterStep[] =>
  adapters.flatMap((adapter) => [
    ...(mates(adapter.a, face) ? [{ adapter, joins: adapter.a, offers: adapter.b }] : []),
    ...(mates(adapter.b, face) ? [{ adapter, joins: adapter.b, offers: adapter.a }] : []),
  ]);

const reach = (from: Reached, step: AdapterStep, jointCost: number): Reached => ({
  face: step.offers,
  cost: from.cost.plus(cost(step.adapter.price)).plus(jointCost),
  steps: [...from.steps, step],
});

function relax(open: Map<string, Reached>, done: ReadonlySet<string>, reached: Reached): void {
  const key = faceKey(reached.face);
  const known = open.get(key);
  if (!done.has(key) && (!known || reached.cost.lt(known.cost))) open.set(key, reached);
}

/** The nearest miss among the nuts there are: right thread on another seat is the dangerous one, so it is named first. */
function reasonAgainst(nuts: readonly Nut[], tube: Metres, port: JointFace): NoFittingReason {
  const wanted: Gender = opposite(port.gender);
  const some = (test: (nut: Nut) => boolean): boolean => nuts.some(test);
  const threadOf = (nut: Nut): boolean => nut.face.thread.name === port.thread.name;
  const seatIs = (nut: Nut, seat: Seat): boolean => nut.face.seat === seat;
  if (some((nut) => sameTube(nut.tube, tube) && threadOf(nut) && nut.face.gender === wanted && !seatIs(nut, port.seat))) return "seat";
  if (some((nut) => sameTube(nut.tube, tube) && threadOf(nut) && seatIs(nut, port.seat))) return "gender";
  if (some((nut) => threadOf(nut) && seatIs(nut, port.seat) && nut.face.gender === wanted)) return "tube";
  return "thread";
}
