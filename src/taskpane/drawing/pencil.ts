/** How a hand draws a stroke, and how a place is written in a path. */
import type { Point } from "./placed";

export const round = (value: number): number => Math.round(value * 10) / 10;
export const say = ({ x, y }: Point): string => `${round(x)} ${round(y)}`;
export const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

/** From where the pen is to a point, bowed to one side or the other by where it lies. */
export function stroke(from: Point, to: Point): string {
  const length = distance(from, to);
  if (length < 1) return `L${say(to)}`;
  const bow = (Math.round(from.x + from.y + to.x) % 2 === 0 ? 1 : -1) * Math.min(1.1, length / 45);
  const middle = { x: (from.x + to.x) / 2 - ((to.y - from.y) / length) * bow, y: (from.y + to.y) / 2 + ((to.x - from.x) / length) * bow };
  return `Q${say(middle)} ${say(to)}`;
}
