/** Quadratics over a piece: their parameter runs from 0 to 1. */

/** a + b t + c t². */
export type Quadratic = readonly [number, number, number];

export const quadraticAt = ([a, b, c]: Quadratic, t: number): number => a + t * (b + t * c);

/** Roots between 0 and 1, rising. */
export function rootsBetween([a, b, c]: Quadratic): number[] {
  const inside = (roots: readonly number[]): number[] => roots.filter((t) => t > 0 && t < 1).sort((x, y) => x - y);
  if (c === 0) return b === 0 ? [] : inside([-a / b]);
  const under = b * b - 4 * a * c;
  if (under <= 0) return [];
  // The larger root by the sum of like signs, the other by their product: no digits are lost.
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(under)) / 2;
  return inside(q === 0 ? [0] : [q / c, a / q]);
}

/** The quadratic through a value at both ends and in the middle of a stretch: three points fix it. */
export function quadraticThrough(value: (at: number) => number, from: number, to: number): Quadratic {
  const [a, middle, b] = [value(from), value((from + to) / 2), value(to)];
  const bend = 2 * (a + b - 2 * middle);
  return [a, b - a - bend, bend];
}
