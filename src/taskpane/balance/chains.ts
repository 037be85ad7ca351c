/** The curves of a car as chains of points, through every node of the solver: nothing here is worked out anew. */
import { idealRear, type Stance } from "../../core/balance/axles";
import { pointAtDeceleration, pointOn, type Braking } from "../../core/balance/braking";
import type { Spot } from "./clip";

/** Points of a curve that is not straight between two nodes. */
const BETWEEN = 12;

/** Front and rear force over the weight from rest up to a deceleration: straight from node to node. */
export function installedLine(braking: Braking, upTo: number, from = 0): Spot[] {
  const nodes = braking.z.flatMap((z, i): Spot[] => (z > from && z < upTo ? [[braking.front[i] as number, braking.rear[i] as number]] : []));
  const ends = [from, Math.min(upTo, braking.z.at(-1) as number)].map((z) => pointAtDeceleration(braking, z)).map((point): Spot[] => (point ? [[point.front, point.rear]] : []));
  return [...(ends[0] ?? []), ...nodes, ...(ends[1] ?? [])];
}

/** Both axles use the same adhesion. */
export const idealCurve = (stance: Stance, upTo: number): Spot[] => Array.from({ length: 41 }, (_, i): Spot => {
  const z = (upTo * i) / 40;
  const rear = idealRear(stance, z);
  return [z - rear, rear];
});

/** Adhesion that an axle uses over the deceleration. */
export function usedBy(braking: Braking, axle: "front" | "rear", upTo: number): Spot[] {
  const points = braking.z.slice(1).flatMap((_, i) => Array.from({ length: BETWEEN }, (__, part) => pointOn(braking, i, part / BETWEEN)));
  const last = pointOn(braking, Math.max(0, braking.z.length - 2), 1);
  return [...points, last].filter(({ z }) => z <= upTo * 1.05).map((point): Spot => [point.z, axle === "front" ? point.frontUses : point.rearUses]);
}

/** The forces at which the fronts use all of an adhesion: F_f = mu (front + height (F_f + F_r)). */
export function frontLockLine({ front, height }: Stance, adhesion: number, rearUpTo: number): Spot[] {
  const at = (rear: number): Spot => [(adhesion * (front + height * rear)) / (1 - adhesion * height), rear];
  return adhesion * height < 1 ? [at(0), at(rearUpTo)] : [];
}

/** The forces at which the rears do: F_r = mu (1 - front - height (F_f + F_r)). */
export function rearLockLine({ front, height }: Stance, adhesion: number, frontUpTo: number): Spot[] {
  const at = (force: number): Spot => [force, (adhesion * (1 - front - height * force)) / (1 + adhesion * height)];
  return [at(0), at(frontUpTo)];
}

/** Decelerations alike: front and rear add up to it. */
export const sameDeceleration = (z: number): Spot[] => [[z, 0], [0, z]];
