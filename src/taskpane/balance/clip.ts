/** Lines cut at the edges of a plot. */

export type Spot = readonly [x: number, y: number];

export interface Window {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

/** The parts of a chain of straight lines that lie in a window, each a chain of its own. */
export function clipped(points: readonly Spot[], window: Window): Spot[][] {
  const chains: Spot[][] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const part = segmentIn(points[i] as Spot, points[i + 1] as Spot, window);
    if (!part) continue;
    const [from, to] = part;
    const last = chains.at(-1);
    const end = last?.at(-1);
    if (last && end && end[0] === from[0] && end[1] === from[1]) last.push(to);
    else chains.push([from, to]);
  }
  return chains;
}

/**
 * The part of one line in a window.
 * @source Liang and Barsky, clipping by parameters, 1984
 */
function segmentIn([ax, ay]: Spot, [bx, by]: Spot, { x, y }: Window): readonly [Spot, Spot] | undefined {
  const [dx, dy] = [bx - ax, by - ay];
  let [from, to] = [0, 1];
  for (const [along, room] of [[-dx, ax - x[0]], [dx, x[1] - ax], [-dy, ay - y[0]], [dy, y[1] - ay]] as const) {
    if (along === 0 && room < 0) return undefined;
    if (along < 0) from = Math.max(from, room / along);
    if (along > 0) to = Math.min(to, room / along);
  }
  if (from > to) return undefined;
  const at = (t: number): Spot => (t === 0 ? [ax, ay] : t === 1 ? [bx, by] : [ax + t * dx, ay + t * dy]);
  return [at(from), at(to)];
}
