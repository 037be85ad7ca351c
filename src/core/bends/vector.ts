/** Vectors in space. */
export type Vector = readonly [number, number, number];

export const sum = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const difference = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scaled = (a: Vector, by: number): Vector => [a[0] * by, a[1] * by, a[2] * by];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const lengthOf = (a: Vector): number => Math.hypot(...a);
/** Of a vector that has length. */
export const unitVector = (a: Vector): Vector => scaled(a, 1 / lengthOf(a));
/** 0 to π; by the tangent, because the arc cosine loses small angles. */
export const angleBetween = (a: Vector, b: Vector): number => Math.atan2(lengthOf(cross(a, b)), dot(a, b));
/** A vector turned right-handed about a unit axis (formula of Rodrigues). */
export const turned = (a: Vector, axis: Vector, angle: number): Vector => {
  const along = dot(axis, a) * (1 - Math.cos(angle));
  return sum(sum(scaled(a, Math.cos(angle)), scaled(cross(axis, a), Math.sin(angle))), scaled(axis, along));
};
