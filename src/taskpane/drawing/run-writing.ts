/** What names a run: its number in a ring, its circuit, and under them its size. */
import { runWidth } from "./block";
import { onLine, type Fault } from "./faults";
import { BADGE, MOST_LETTERS, TAG, widthOf } from "./measures";
import { badgesAt, label, tagAt, type Point, type Written } from "./placed";
import { sayCircuit, type Sketch, type SketchLine } from "./sketch";
import { shortened } from "./text-width";

export const faultsOn = ({ faults }: Sketch, key: string): readonly Fault[] => faults.filter(({ on }) => on.includes(key));

export const together = (written: readonly Written[]): Written => ({ labels: written.flatMap(({ labels }) => labels), tags: written.flatMap(({ tags }) => tags ?? []), badges: written.flatMap(({ badges }) => badges ?? []) });

/** From the left, or up to the right. */
export function runAt(sketch: Sketch, line: SketchLine, { x, y, anchor }: Point & { readonly anchor: "start" | "end" }): Written {
  if (!line.run) return { labels: [] };
  const owner = onLine(line.index);
  const faults = faultsOn(sketch, owner);
  const circuit = sayCircuit(line.circuit);
  const first = TAG + 4 + widthOf(circuit, "circuit") + faults.length * BADGE.width;
  const left = anchor === "start" ? x : x - first;
  return {
    labels: [label(circuit, "circuit", { x: left + TAG + 4, y: y + 11.2, owner }), label(line.size, "run", { x, y: y + 25, anchor, owner })],
    tags: [tagAt(line, line.run.number, { x: left, y: y + 8 })],
    badges: badgesAt(faults, { x: left + TAG + 4 + widthOf(circuit, "circuit"), y: y + 8 }),
  };
}

/** The widest of the nut and the two lines that name a run. */
export const lineWidth = (sketch: Sketch, line: SketchLine): number =>
  Math.max(...line.ends.map(({ nut }) => widthOf(shortened(nut, MOST_LETTERS.nut), "nut")), runWidth({ circuit: sayCircuit(line.circuit), size: line.size, badges: faultsOn(sketch, onLine(line.index)).length }));
