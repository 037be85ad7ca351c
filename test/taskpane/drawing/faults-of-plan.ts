/** What would be wrong with a plan, measured on its coordinates: each answers sentences, none when all is well. */
import { onPart } from "../../../src/taskpane/drawing/faults";
import type { Box, Plan, PlacedLine, Point } from "../../../src/taskpane/drawing/placed";
import type { Sketch } from "../../../src/taskpane/drawing/sketch";

interface Written {
  readonly name: string;
  readonly box: Box;
}

export const writtenOn = ({ labels, tags, badges }: Plan): Written[] => [
  ...labels.map(({ text, writing, box }) => ({ name: `${writing} "${text}"`, box })),
  ...tags.map(({ number, box }) => ({ name: `ring ${number}`, box })),
  ...badges.map(({ letter, box }) => ({ name: `mark ${letter}`, box })),
];

export function overlapsOn(plan: Plan): string[] {
  const written = writtenOn(plan);
  return written.flatMap((one, index) => written.slice(index + 1).filter((other) => overlap(one.box, other.box)).map((other) => `${one.name} on ${other.name}`));
}

export const outsideOf = (plan: Plan): string[] => writtenOn(plan).filter(({ box }) => box.x < 0 || box.y < 0 || box.x + box.width > plan.width || box.y + box.height > plan.height).map(({ name }) => `${name} is outside`);

/** Names stand in their own box; everything else stands clear of every box. */
export function writingAcrossBoxes(plan: Plan): string[] {
  return plan.parts.flatMap(({ part, box, ports }) => {
    const own = new Set([onPart(part.label), ...ports.map(({ port }) => `port|${port.key}`)]);
    const strange = plan.labels.filter(({ owner, writing }) => !own.has(owner) || writing === "nut");
    return [...strange.map(({ text, box: room }) => ({ name: text, box: room })), ...plan.tags.map(({ number, box: room }) => ({ name: `ring ${number}`, box: room }))]
      .filter((one) => overlap(one.box, box)).map(({ name }) => `"${name}" on the box of ${part.label}`);
  });
}

export function linesThroughWriting(plan: Plan): string[] {
  return plan.lines.flatMap((line) => segmentsOf(line).flatMap((segment) => writtenOn(plan).filter(({ box }) => meets(segment, box)).map(({ name }) => `line ${line.line.index} through ${name}`)));
}

export function linesThroughBoxes(plan: Plan): string[] {
  return plan.lines.flatMap((line) => segmentsOf(line).flatMap((segment) => plan.parts.filter(({ box }) => meets(segment, shrunk(box, 1))).map(({ part }) => `line ${line.line.index} through ${part.label}`)));
}

/** Lines may cross; they never lie on one another. */
export function linesOnOneAnother(plan: Plan): string[] {
  const segments = plan.lines.flatMap((line) => segmentsOf(line).map((segment) => ({ line, segment })));
  return segments.flatMap((one, index) => segments.slice(index + 1)
    .filter((other) => other.line !== one.line && together(one.segment, other.segment))
    .map((other) => `lines ${one.line.line.index} and ${other.line.line.index} lie on one another`));
}

/** Every joint that is not within one wheel's group runs from its port to its port. */
export function linesMissing({ lines, parts: listed }: Sketch, plan: Plan): string[] {
  const loose = new Set(listed.filter(({ placed }) => !placed).map(({ instance }) => instance));
  const expected = lines.filter(({ joint: { from, to } }) => from.instance !== to.instance && (from.instance.wheel === undefined || from.instance.wheel !== to.instance.wheel) && !loose.has(from.instance) && !loose.has(to.instance));
  return expected.flatMap((line) => {
    const drawn = plan.lines.find((one) => one.line === line);
    if (!drawn || drawn.points.length < 2) return [`line ${line.index} is not drawn`];
    return [drawn.points[0], drawn.points.at(-1)].flatMap((point, index) => {
      const end = line.ends[index as 0 | 1];
      const at = endOf(plan, end);
      return point && at && Math.hypot(point.x - at.x, point.y - at.y) < 0.1 ? [] : [`line ${line.index} does not end at ${end.key}`];
    });
  });
}

function endOf(plan: Plan, { key, at: { instance } }: Sketch["lines"][number]["ends"][number]): Point | undefined {
  if (instance.wheel) return plan.wheels.find(({ wheel }) => wheel.wheel === instance.wheel)?.hose.at(-1);
  return plan.parts.flatMap(({ ports }) => ports).find(({ port }) => port.key === key)?.at;
}

type Segment = readonly [Point, Point];

const segmentsOf = ({ points }: PlacedLine): Segment[] => points.slice(1).flatMap((to, index) => {
  const from = points[index];
  return from && Math.hypot(to.x - from.x, to.y - from.y) > 0.01 ? [[from, to] as const] : [];
});

const EDGE = 0.01;
const overlap = (a: Box, b: Box): boolean => a.x < b.x + b.width - EDGE && b.x < a.x + a.width - EDGE && a.y < b.y + b.height - EDGE && b.y < a.y + a.height - EDGE;

const boxOf = ([a, b]: Segment): Box => ({ x: Math.min(a.x, b.x), y: Math.min(a.y, b.y), width: Math.abs(a.x - b.x) + 2 * EDGE, height: Math.abs(a.y - b.y) + 2 * EDGE });
/** Segments run along or across, or a hair aslant, so their boxes are themselves. */
const meets = (segment: Segment, box: Box): boolean => overlap(boxOf(segment), box);
const shrunk = ({ x, y, width, height }: Box, by: number): Box => ({ x: x + by, y: y + by, width: width - 2 * by, height: height - 2 * by });

const NEAR = 4;
function together(a: Segment, b: Segment): boolean {
  const upright = (segment: Segment): boolean => Math.abs(segment[0].x - segment[1].x) < 2;
  if (upright(a) !== upright(b)) return false;
  const [across, along] = upright(a) ? (["x", "y"] as const) : (["y", "x"] as const);
  const span = (segment: Segment): readonly [number, number] => [Math.min(segment[0][along], segment[1][along]), Math.max(segment[0][along], segment[1][along])];
  const [[from, to], [start, end]] = [span(a), span(b)];
  return Math.abs(a[0][across] - b[0][across]) < NEAR && Math.min(to, end) - Math.max(from, start) > 1;
}
