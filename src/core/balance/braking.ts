/**
 * The forces of both axles as the line pressure rises, and what follows from them: every curve is a chain of straight pieces, so locks and
 * crossings are solved on each piece in closed form and nothing is sampled. Left and right are taken together.
 */
import type { Pascals } from "../quantity";
import { frontLoad, rearLoad, type Stance } from "./axles";
import { kneesOf, outletAt, type PressureCurve } from "./pressure-curve";

/** What is left of the line pressure above each axle's threshold, mean of its two wheels, at every knee of either. */
export interface Effective {
  /** Line pressures, rising, the first 0. [Pa] */
  readonly pressure: readonly number[];
  readonly front: readonly number[];
  readonly rear: readonly number[];
  /** For each unit of line pressure beyond the last knee. */
  readonly frontSlope: number;
  readonly rearSlope: number;
}

/** Both axles' effective pressures over one list of knees. */
export function effectiveOf(front: PressureCurve, rear: PressureCurve): Effective {
  const pressure = kneesOf(front, rear);
  const of = (curve: PressureCurve): number[] => pressure.map((p) => outletAt(curve, p as Pascals));
  return { pressure, front: of(front), rear: of(rear), frontSlope: front.slope, rearSlope: rear.slope };
}

/** What an axle makes of its effective pressure. */
export interface AxleStrength {
  /** Force over the car's weight for each pascal. [1/Pa] */
  readonly perPascal: number;
  /** Share of its wheels that brake: 1, a half on a failed diagonal, 0. */
  readonly working: number;
}

/** Pieces between nodes: pressure, deceleration and both axles' forces run straight from one to the next. */
export interface Braking {
  readonly stance: Stance;
  readonly pressure: readonly number[];
  /** Deceleration at each node. [g] */
  readonly z: readonly number[];
  /** Force of the front axle over the weight as if all its wheels braked: over its load it is the adhesion used. [-] */
  readonly front: readonly number[];
  readonly rear: readonly number[];
}

/** No road gives more. [g] */
const MOST_DECELERATION = 3;
/** Where no more pressure brings more deceleration. [Pa] */
const ENOUGH = 1e8;

/**
 * Both axles from rest to the deceleration at which the rear wheels lift, or to 3 g.
 * @param stance how the car stands [-]
 * @param effective pressures of both axles [Pa]
 * @param strength of the front and of the rear axle [1/Pa, -]
 * @returns nodes [Pa, g, -]
 */
export function brakingOf(stance: Stance, effective: Effective, { front: f, rear: r }: { readonly front: AxleStrength; readonly rear: AxleStrength }): Braking {
  const [frontScale, rearScale] = [f.working === 0 ? 0 : f.perPascal, r.working === 0 ? 0 : r.perPascal];
  const [pressure, front, rear, z]: [number[], number[], number[], number[]] = [[], [], [], []];
  const add = (p: number, atFront: number, atRear: number): void => {
    pressure.push(p);
    front.push(frontScale * atFront);
    rear.push(rearScale * atRear);
    z.push(f.working * frontScale * atFront + r.working * rearScale * atRear);
  };
  const end = Math.min(MOST_DECELERATION, (0.999999 * (1 - stance.front)) / stance.height);
  for (let i = 0; i < effective.pressure.length; i++) {
    add(effective.pressure[i] as number, effective.front[i] as number, effective.rear[i] as number);
    if ((z[i] as number) > end) return cutAt(end, { stance, pressure, z, front, rear });
  }
  const last = effective.pressure.length - 1;
  const steep = f.working * frontScale * effective.frontSlope + r.working * rearScale * effective.rearSlope;
  const more = steep > 0 ? (end - (z[last] as number)) / steep : ENOUGH;
  add((effective.pressure[last] as number) + more, (effective.front[last] as number) + more * effective.frontSlope, (effective.rear[last] as number) + more * effective.rearSlope);
  return { stance, pressure, z, front, rear };
}

/** A knee beyond the end: the last piece stops short of it. */
function cutAt(end: number, { stance, ...values }: Braking): Braking {
  const last = values.z.length - 1;
  const [before, after] = [values.z[last - 1] as number, values.z[last] as number];
  const cut = (all: readonly number[]): number[] => [...all.slice(0, last), between(all, last - 1, (end - before) / (after - before))];
  return { stance, pressure: cut(values.pressure), z: cut(values.z), front: cut(values.front), rear: cut(values.rear) };
}

/** State between two nodes. */
export interface BrakingPoint {
  readonly pressure: Pascals;
  readonly z: number;
  readonly front: number;
  readonly rear: number;
  /** Adhesion used by each axle. [-] */
  readonly frontUses: number;
  readonly rearUses: number;
}

/** The point at a share of the way from one node to the next. */
export function pointOn(braking: Braking, i: number, share: number): BrakingPoint {
  const { stance } = braking;
  const [z, front, rear] = [between(braking.z, i, share), between(braking.front, i, share), between(braking.rear, i, share)];
  return { pressure: between(braking.pressure, i, share) as Pascals, z, front, rear, frontUses: front / frontLoad(stance, z), rearUses: rear / rearLoad(stance, z) };
}

function between(values: readonly number[], i: number, share: number): number {
  const at = values[i] as number;
  return share === 0 ? at : at + share * ((values[i + 1] as number) - at);
}

/** The first point at which a value that is straight on each piece reaches a level; undefined where it never does. */
function firstReach(braking: Braking, values: readonly number[], level: number): BrakingPoint | undefined {
  let before = (values[0] as number) - level;
  if (before >= 0) return pointOn(braking, 0, 0);
  for (let i = 1; i < values.length; i++) {
    const after = (values[i] as number) - level;
    if (after >= 0) return pointOn(braking, i - 1, before / (before - after));
    before = after;
  }
  return undefined;
}

/** The first point at a deceleration; undefined where the brakes never reach it. */
export const pointAtDeceleration = (braking: Braking, z: number): BrakingPoint | undefined => firstReach(braking, braking.z, z);
/** The point at a line pressure. */
export const pointAtPressure = (braking: Braking, pressure: Pascals): BrakingPoint | undefined => firstReach(braking, braking.pressure, pressure);

/** The first point at which an axle uses all of an adhesion; undefined where it never locks. F - mu N is straight on each piece. */
export function lockOf(braking: Braking, axle: "front" | "rear", adhesion: number): BrakingPoint | undefined {
  let before = excess(braking, axle, adhesion, 0);
  if (before >= 0) return pointOn(braking, 0, 0);
  for (let i = 1; i < braking.z.length; i++) {
    const after = excess(braking, axle, adhesion, i);
    if (after >= 0) return pointOn(braking, i - 1, before / (before - after));
    before = after;
  }
  return undefined;
}

/** Force of an axle over the weight beyond what an adhesion carries, at a node. */
export function excess({ stance, z, front, rear }: Braking, axle: "front" | "rear", adhesion: number, i: number): number {
  const at = z[i] as number;
  return axle === "front" ? (front[i] as number) - adhesion * frontLoad(stance, at) : (rear[i] as number) - adhesion * rearLoad(stance, at);
}

export interface FirstLock {
  readonly axle: "front" | "rear";
  readonly pressure: Pascals;
  readonly z: number;
}

/** Which axle locks first on an adhesion, and where; undefined where neither does. */
export function firstLock(braking: Braking, adhesion: number): FirstLock | undefined {
  const [front, rear] = [lockOf(braking, "front", adhesion), lockOf(braking, "rear", adhesion)];
  if (front && (!rear || front.pressure <= rear.pressure)) return { axle: "front", pressure: front.pressure, z: front.z };
  return rear && { axle: "rear", pressure: rear.pressure, z: rear.z };
}

/**
 * Braking efficiency on an adhesion: the deceleration at which the worse axle uses all of it, over the adhesion.
 * @param braking both axles [g, -]
 * @param adhesion tyre to road [-]
 * @returns share of the adhesion [-]; undefined where neither axle locks
 * @source handbook eq. 12.1.55; not z = mu put into the utilisation, a common error
 */
export const efficiencyOn = (braking: Braking, adhesion: number): number | undefined => {
  const lock = firstLock(braking, adhesion);
  return lock && lock.z / adhesion;
};
