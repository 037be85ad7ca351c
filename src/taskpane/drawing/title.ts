/** The title between the front wheels: name of the car, what it is, which end is which, and the pattern of each circuit. */
import { onCar, onCircuit, type Fault } from "./faults";
import type { Frame } from "./frame";
import { BADGE, BESIDE, MARGIN, MOST_LETTERS, NOSE, widthOf } from "./measures";
import { badgesAt, label, type Legend, type Written } from "./placed";
import { faultsOn } from "./run-writing";
import { sayCircuit, type Sketch } from "./sketch";
import { shortened } from "./text-width";

export const titleHeight = (sketch: Sketch): number => NOSE + TITLE_TOP + (3 + sketch.circuits.length + notesOf(sketch).length) * TITLE_LINE + rowsOfBadges(faultsOn(sketch, onCar)).length * (BADGE.height + 3);

export function titleWidth(sketch: Sketch): number {
  const circuits = sketch.circuits.map((circuit) => SAMPLE + BESIDE + widthOf(sayCircuit(circuit), "legend") + faultsOn(sketch, onCircuit(circuit)).length * BADGE.width);
  const own = Math.min(faultsOn(sketch, onCar).length, MOST_BADGES) * BADGE.width;
  return Math.max(own, ...circuits, ...notesOf(sketch).map((text) => widthOf(text, "legend")), ...titleLines(sketch).map(({ text, writing }) => widthOf(text, writing)));
}

function titleLines(sketch: Sketch): readonly { readonly text: string; readonly writing: "title" | "model" | "legend" }[] {
  const side = sketch.driverSide === undefined ? "driver side not known" : `driver ${sketch.driverSide}`;
  return [
    { text: shortened(sketch.name, MOST_LETTERS.title), writing: "title" },
    { text: shortened(sketch.model, MOST_LETTERS.model), writing: "model" },
    { text: `nose up, ${side}`, writing: "legend" },
  ];
}

const TITLE_TOP = 12;
const TITLE_LINE = 17;
const SAMPLE = 26;
const MOST_BADGES = 5;

/** What a sign on this drawing means. */
function notesOf({ lines }: Sketch): readonly string[] {
  const isEstimated = lines.some(({ run }) => run?.basis === "estimated");
  const isPart = lines.some(({ joint, run }) => joint.by === "line" && !run);
  return [...(isEstimated ? ["≈ estimated length"] : []), ...(isPart ? ["thin: not in this quote"] : [])];
}

const rowsOfBadges = (faults: readonly Fault[]): (readonly Fault[])[] => Array.from({ length: Math.ceil(faults.length / MOST_BADGES) }, (_, row) => faults.slice(row * MOST_BADGES, (row + 1) * MOST_BADGES));

export function titleBlock(sketch: Sketch, { width }: Frame): { readonly written: Written; readonly legend: readonly Legend[] } {
  const middle = width / 2;
  const line = (index: number): number => MARGIN + NOSE + TITLE_TOP + index * TITLE_LINE;
  const legend = sketch.circuits.map((circuit, index) => {
    const text = sayCircuit(circuit);
    const faults = faultsOn(sketch, onCircuit(circuit));
    const whole = SAMPLE + BESIDE + widthOf(text, "legend") + faults.length * BADGE.width;
    const [x, y] = [middle - whole / 2, line(3 + index)];
    return { circuit, from: { x, y: y - 4 }, to: { x: x + SAMPLE, y: y - 4 }, label: label(text, "legend", { x: x + SAMPLE + BESIDE, y }), badges: badgesAt(faults, { x: x + SAMPLE + BESIDE + widthOf(text, "legend"), y: y - 4 }) };
  });
  const ownRows = rowsOfBadges(faultsOn(sketch, onCar));
  const own = ownRows.flatMap((row, index) => badgesAt(row, { x: middle - (row.length * BADGE.width) / 2, y: line(3 + sketch.circuits.length + notesOf(sketch).length) - 4 + index * (BADGE.height + 3) }));
  const labels = [
    ...titleLines(sketch).map(({ text, writing }, index) => label(text, writing, { x: middle, y: line(index), anchor: "middle" })),
    ...legend.map((one) => one.label),
    ...notesOf(sketch).map((text, index) => label(text, "legend", { x: middle, y: line(3 + sketch.circuits.length + index), anchor: "middle" })),
  ].filter(({ text }) => text !== "");
  return { written: { labels, badges: [...own, ...legend.flatMap(({ badges }) => badges)] }, legend };
}
