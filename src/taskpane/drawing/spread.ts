/** Puts things in a given order on a line: as near as they can be to where each wants to be, without overlap. */

export interface Spread {
  /** Room it takes. */
  readonly width: number;
  /** Where its left end wants to be. */
  readonly wants: number;
  readonly weight: number;
}

/**
 * Least weighted squares of the distances from where each wants to be, kept apart and inside 0 to `room`.
 * @returns left ends, in the order given
 * @source isotonic regression by pooling adjacent violators; Barlow, Bartholomew, Bremner, Brunk, Statistical Inference under Order Restrictions, 1972
 */
export function spread(things: readonly Spread[], room: number, apart: number): number[] {
  const before = things.map((_, index) => things.slice(0, index).reduce((sum, { width }) => sum + width + apart, 0));
  const total = (before.at(-1) ?? 0) + (things.at(-1)?.width ?? 0);
  const pools: { sum: number; weight: number; count: number }[] = [];
  for (const [index, { wants, weight }] of things.entries()) {
    pools.push({ sum: (wants - (before[index] ?? 0)) * weight, weight, count: 1 });
    for (let last = pools.at(-1), next = pools.at(-2); last && next && next.sum / next.weight > last.sum / last.weight; last = pools.at(-1), next = pools.at(-2)) {
      pools.splice(-2, 2, { sum: last.sum + next.sum, weight: last.weight + next.weight, count: last.count + next.count });
    }
  }
  const free = Math.max(0, room - total);
  return pools.flatMap(({ sum, weight, count }) => Array.from({ length: count }, () => Math.min(Math.max(0, sum / weight), free))).map((left, index) => left + (before[index] ?? 0));
}
