/** Distances between the places of a platform: measured, or bridged over places between. */
import type { MeasuredLength } from "../car";
import { madeOnce, madeOnceByKey } from "../made-once";
import { metres, type Metres } from "../quantity";
import { tubeKey } from "../tube";
import { placeKey } from "./graph";

export interface PlaceDistance {
  readonly length: Metres;
  readonly basis: "measured" | "estimated";
  /** Undefined when no leg states a tube, or the legs of a bridged pair state different ones. */
  readonly tube: Metres | undefined;
  /** Places a bridged pair goes over. */
  readonly over: readonly string[];
  /** The row of a measured pair. */
  readonly pair?: MeasuredLength | undefined;
}

/**
 * Length of line between two places. A measured pair is taken as it is; another is bridged over the shortest chain of measured pairs.
 * Two lines of different tube may run between the same places; `takes` picks the one whose tube suits the ports.
 * @returns undefined when the places are not connected by measured pairs, or are the same place and that pair was not measured
 */
export function distanceBetween(lengths: readonly MeasuredLength[], from: string, to: string, takes: (tube: Metres) => boolean = () => true): PlaceDistance | undefined {
  const { measured, bridged } = distances(lengths)(`${placeKey(from)}|${placeKey(to)}`, () => distanceAnew(lengths, placeKey(from), placeKey(to)));
  const [chosen] = measured.length > 1 ? [...measured.filter(({ tube }) => tube !== undefined && takes(tube)), ...measured] : measured;
  return chosen ? { length: chosen.length, basis: "measured", tube: chosen.tube, over: [], pair: chosen } : bridged;
}

interface Distance {
  readonly measured: readonly MeasuredLength[];
  readonly bridged: PlaceDistance | undefined;
}

/** Every car of a platform asks for the same few pairs. */
const distances = madeOnce((_: readonly MeasuredLength[]) => madeOnceByKey<Distance>());

function distanceAnew(lengths: readonly MeasuredLength[], a: string, b: string): Distance {
  const measured = lengths.filter((pair) => joins(pair, a, b));
  const legs = measured.length > 0 || a === b ? undefined : shortestChain(lengths, a, b);
  const bridged = legs && { length: metres(legs.reduce((sum, leg) => sum + leg.length, 0)), basis: "estimated" as const, tube: commonTube(legs), over: placesBetween(legs, a) };
  return { measured, bridged };
}

/** The place from which the lines to all the given places are shortest in sum, not being one of them; undefined when a place is unknown or unconnected. */
export function nearestPlace(lengths: readonly MeasuredLength[], ends: readonly (string | undefined)[]): string | undefined {
  const known = ends.filter((end): end is string => end !== undefined);
  if (known.length < ends.length) return undefined;
  const taken = new Set(known.map(placeKey));
  const names = new Map(lengths.flatMap(({ from, to }) => [from, to]).map((place) => [placeKey(place), place]));
  let nearest: { place: string; total: number } | undefined;
  for (const [key, place] of names) {
    if (taken.has(key) || WHEEL_PLACES.has(key)) continue;
    const total = known.reduce((sum, end) => sum + (distanceBetween(lengths, place, end)?.length ?? Infinity), 0);
    if (Number.isFinite(total) && (!nearest || total < nearest.total - 1e-9)) nearest = { place, total };
  }
  return nearest?.place;
}

const WHEEL_PLACES = new Set(["lf", "rf", "lr", "rr", "master"]);

const joins = (pair: MeasuredLength, a: string, b: string): boolean =>
  (placeKey(pair.from) === a && placeKey(pair.to) === b) || (placeKey(pair.from) === b && placeKey(pair.to) === a);

/** Dijkstra over the measured pairs; a platform has a dozen places, so a plain scan is enough. */
function shortestChain(lengths: readonly MeasuredLength[], from: string, to: string): MeasuredLength[] | undefined {
  const reached = new Map<string, { total: number; legs: MeasuredLength[] }>([[from, { total: 0, legs: [] }]]);
  const done = new Set<string>();
  for (;;) {
    const next = [...reached].filter(([place]) => !done.has(place)).sort((a, b) => a[1].total - b[1].total)[0];
    if (!next) return undefined;
    const [place, { total, legs }] = next;
    if (place === to) return legs;
    done.add(place);
    for (const leg of lengths) {
      const other = otherEnd(leg, place);
      if (other === undefined || (reached.get(other)?.total ?? Infinity) <= total + leg.length) continue;
      reached.set(other, { total: total + leg.length, legs: [...legs, leg] });
    }
  }
}

function otherEnd(leg: MeasuredLength, place: string): string | undefined {
  if (placeKey(leg.from) === place) return placeKey(leg.to);
  return placeKey(leg.to) === place ? placeKey(leg.from) : undefined;
}

function commonTube(legs: readonly MeasuredLength[]): Metres | undefined {
  const sizes = new Set(legs.map(({ tube }) => (tube === undefined ? undefined : tubeKey(tube))));
  return sizes.size === 1 ? legs[0]?.tube : undefined;
}

function placesBetween(legs: readonly MeasuredLength[], from: string): string[] {
  let at = from;
  const visited = legs.map((leg) => (at = otherEnd(leg, at) ?? at));
  return visited.slice(0, -1);
}
