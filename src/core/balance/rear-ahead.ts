/** Where the rear axle gets ahead of the front: by deceleration, and by adhesion. */
import { frontLoad, rearLoad } from "./axles";
import { excess, pointOn, type Braking } from "./braking";
import { quadraticAt, rootsBetween, type Quadratic } from "./quadratic";

/** A stretch from one value to another. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/**
 * The decelerations over which the rear axle uses more adhesion than the front: F_r N_f - F_f N_r is quadratic on each piece.
 * @param braking both axles [g, -]
 * @returns stretches of z, rising [g]; their ends above 0 are the critical decelerations
 */
export function rearAhead(braking: Braking): Stretch[] {
  const found: { from: number; to: number }[] = [];
  for (let i = 0; i < braking.z.length - 1; i++) {
    for (const [a, b] of pieces(rootsBetween(leadOf(braking, i)))) {
      if (quadraticAt(leadOf(braking, i), (a + b) / 2) > NOTHING) join(found, pointOn(braking, i, a).z, pointOn(braking, i, b).z);
    }
  }
  return found.filter(({ from, to }) => to > from);
}

/**
 * The adhesions on which the rear axle locks first as the pedal goes down. Where a valve lets the fronts fall back they lock at their earlier peak.
 * @param braking both axles [g, -]
 * @param most highest adhesion looked at [-]
 * @returns stretches of adhesion, rising [-]
 */
export function rearFirst(braking: Braking, most: number): Stretch[] {
  const found: { from: number; to: number }[] = [];
  let peak = 0;
  for (let i = 0; i < braking.z.length - 1; i++) {
    const passes = passing(excess(braking, "front", peak, i), excess(braking, "front", peak, i + 1));
    // Up to there the fronts lie under their peak, and only the rears can get on; from there on both do.
    for (const [a, b] of pieces(rearRise(braking, i, peak), 0, passes)) {
      const [middle, end] = [pointOn(braking, i, (a + b) / 2), pointOn(braking, i, b)];
      if (middle.rearUses - peak > NOTHING) join(found, peak, end.rearUses);
    }
    for (const [a, b] of pieces(rootsBetween(leadOf(braking, i)), passes, 1)) {
      if (quadraticAt(leadOf(braking, i), (a + b) / 2) > NOTHING) join(found, pointOn(braking, i, a).frontUses, pointOn(braking, i, b).rearUses);
    }
    if (passes < 1) peak = pointOn(braking, i, 1).frontUses;
  }
  return found.map(({ from, to }) => ({ from, to: Math.min(to, most) })).filter(({ from, to }) => to > from);
}

const NOTHING = 1e-12;

/** Lead of the rears on a piece: F_r N_f - F_f N_r, from 0 at its start to 1 at its end. */
export function leadOf({ stance, z, front, rear }: Braking, i: number): Quadratic {
  const [f, f1, r, r1, z0, z1] = [front[i] as number, front[i + 1] as number, rear[i] as number, rear[i + 1] as number, z[i] as number, z[i + 1] as number];
  const start = r * frontLoad(stance, z0) - f * rearLoad(stance, z0);
  const end = r1 * frontLoad(stance, z1) - f1 * rearLoad(stance, z1);
  const bend = stance.height * (z1 - z0) * (r1 - r + f1 - f);
  return [start, end - start - bend, bend];
}

/** The parts into which roots cut a stretch. */
function pieces(roots: readonly number[], from = 0, to = 1): (readonly [number, number])[] {
  if (roots.length === 0) return to > from ? [[from, to]] : [];
  const ends = [from, ...roots.filter((t) => t > from && t < to), to];
  return ends.slice(1).flatMap((end, i) => (end > (ends[i] as number) ? [[ends[i] as number, end] as const] : []));
}

/** Where a value that is straight on a piece rises through 0: 0 when it is there from the start, 1 when it never is. */
const passing = (start: number, end: number): number => (start >= -NOTHING && end > start ? 0 : end > NOTHING ? start / (start - end) : 1);

/** Where the rears pass the fronts' peak. */
function rearRise(braking: Braking, i: number, peak: number): number[] {
  const [start, end] = [excess(braking, "rear", peak, i), excess(braking, "rear", peak, i + 1)];
  return start === end ? [] : [start / (start - end)];
}

/** Adds a stretch, or lengthens the last one that it touches. */
function join(found: { from: number; to: number }[], from: number, to: number): void {
  const last = found.at(-1);
  if (last && from - last.to <= 1e-9) last.to = Math.max(last.to, to);
  else found.push({ from, to });
}
