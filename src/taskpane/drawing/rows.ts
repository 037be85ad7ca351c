/** Parts in rows from the front of the car to the rear, by the place each is mounted at. */
import { placeKey, type Instance } from "../../core/assembly";
import type { Wheel } from "../../core/component";
import type { Sketch, SketchPart } from "./sketch";

export interface Row {
  /** Of the parts in it; "" when they have none or the row only continues the one before. */
  readonly place: string;
  readonly parts: readonly SketchPart[];
}

/** How far back a place is, in tenths of the car's length. */
const STANDARD_PLACES: Readonly<Record<string, number>> = {
  master: 0, valve: 1, lf: 2, rf: 2, "frame-front": 2, "frame-mid": 5, "rear-hose": 7, "axle-tee": 8, "rear-axle": 8, axle: 8, lr: 8, rr: 8,
};

/**
 * One row a place, the master's first. Parts at one place that feed one another stand in rows of their own, one behind the other.
 * A place of the shop's own stands half way between what feeds its part and what its part feeds.
 */
export function rowsOf(sketch: Sketch): readonly Row[] {
  const placed = sketch.parts.filter((part) => part.placed);
  const ranks = ranksOf(sketch, placed);
  const order = [...new Set(ranks.values())].sort((a, b) => a - b);
  return order.flatMap((rank) => inTurn(sketch, placed.filter((part) => ranks.get(part) === rank)));
}

/** Each part with how far back it is. */
function ranksOf(sketch: Sketch, parts: readonly SketchPart[]): ReadonlyMap<SketchPart, number> {
  const known = new Map<SketchPart, number>();
  for (const part of parts) {
    const rank = standardRank(part.instance);
    if (rank !== undefined) known.set(part, rank);
  }
  const open = (): SketchPart[] => parts.filter((part) => !known.has(part));
  while (open().length > 0) {
    const told = open().map((part) => ({ part, rank: rankBetween(sketch, part, known) })).filter(({ rank }) => rank !== undefined);
    for (const { part, rank } of told.length > 0 ? told : open().map((part) => ({ part, rank: NOWHERE }))) known.set(part, rank ?? NOWHERE);
  }
  return known;
}

/** Nothing tells where it is: in the middle. */
const NOWHERE = 4;

function standardRank({ component, place }: Instance): number | undefined {
  if (component.kind === "master") return 0;
  if (place === undefined) return undefined;
  const key = placeKey(place);
  return STANDARD_PLACES[key] ?? (key.includes("front") ? 2 : key.includes("mid") ? 5 : undefined);
}

function rankBetween({ lines }: Sketch, part: SketchPart, known: ReadonlyMap<SketchPart, number>): number | undefined {
  const rankOf = (instance: Instance): number | undefined =>
    instance.wheel ? wheelRank(instance.wheel) : [...known].find(([other]) => other.instance === instance)?.[1];
  const before = lines.filter(({ joint }) => joint.to.instance === part.instance).map(({ joint }) => rankOf(joint.from.instance));
  const after = lines.filter(({ joint }) => joint.from.instance === part.instance).map(({ joint }) => rankOf(joint.to.instance));
  const [from, to] = [before, after].map((ranks) => ranks.filter((rank) => rank !== undefined)).map((ranks) => (ranks.length > 0 ? Math.max(...ranks) : undefined));
  if (from === undefined) return to === undefined ? undefined : to - 0.5;
  return to === undefined ? from + 0.5 : (from + to) / 2;
}

const wheelRank = (wheel: Wheel): number => (wheel.endsWith("F") ? 1.5 : 8.5);

/** Splits the parts of one place by how many of them the fluid has passed. */
function inTurn(sketch: Sketch, parts: readonly SketchPart[]): Row[] {
  const turns = new Map<SketchPart, number>();
  const turnOf = (part: SketchPart, behind: readonly SketchPart[]): number => {
    const kept = turns.get(part);
    if (kept !== undefined) return kept;
    const feeding = parts.filter((other) => other !== part && !behind.includes(other) && sketch.lines.some(({ joint }) => joint.from.instance === other.instance && joint.to.instance === part.instance));
    const turn = 1 + Math.max(-1, ...feeding.map((other) => turnOf(other, [...behind, part])));
    turns.set(part, turn);
    return turn;
  };
  for (const part of parts) turnOf(part, []);
  separate(sketch, turns);
  const last = Math.max(...turns.values());
  const rows = Array.from({ length: last + 1 }, (_, turn) => parts.filter((part) => turns.get(part) === turn)).filter((row) => row.length > 0);
  return rows.map((row, index) => ({ place: index === 0 ? placeOf(row) : "", parts: row }));
}

/** Two parts that feed one another in a ring would share a row, and the line between them would have no way. */
function separate({ lines }: Sketch, turns: Map<SketchPart, number>): void {
  const partOf = (instance: Instance): SketchPart | undefined => [...turns.keys()].find((part) => part.instance === instance);
  for (const { joint } of lines) {
    const [from, to] = [partOf(joint.from.instance), partOf(joint.to.instance)];
    if (from && to && from !== to && turns.get(from) === turns.get(to)) turns.set(to, Math.max(...turns.values()) + 1);
  }
}

/** The master's own row needs no caption. */
function placeOf(parts: readonly SketchPart[]): string {
  const places = new Set(parts.map(({ instance }) => (instance.component.kind === "master" ? "" : (instance.place ?? ""))));
  return places.size === 1 ? ([...places][0] ?? "") : "";
}
