/**
 * Lays out the plan of one car by rule: nose up, wheels at the corners, the master in front on the driver's side, parts in rows by
 * their place, lines across in channels between the rows and along the wheels in lanes. Pure: the same sketch gives the same plan.
 * Writing never overlaps, since each line of it has room of its own: beside its port, in its box, at its wheel, or in the title.
 */
import type { Wheel } from "../../core/component";
import { arrange } from "./arrange";
import { slotOf, type Arrangement, type PlacedItem, type Scene } from "./scene";
import { channelsOf } from "./channels";
import { boxTop, exitOf, frameOf, stepsIn, type Frame } from "./frame";
import { isFront, isLeft, linksOf, type ToWheel, type WheelToWheel } from "./links";
import { APART, COLUMN, LANE, MARGIN } from "./measures";
import { atPorts, inBox } from "./part-writing";
import type { PlacedLine, PlacedPart, Plan, Point, Written } from "./placed";
import { rowsOf } from "./rows";
import type { Sketch, SketchLine, SketchPart } from "./sketch";
import { titleBlock } from "./title";
import { atWheel, captions, leastWidth, looseParts, wheelRooms } from "./wheel-writing";

export function layOut(sketch: Sketch): Plan {
  const rows = rowsOf(sketch);
  const scene: Scene = { sketch, rows, links: linksOf(sketch, rows), marked: markedOn(sketch), leastWidth: leastWidth(sketch) - 2 * (MARGIN + COLUMN + APART) };
  const arrangement = arrange(scene);
  const channels = channelsOf(scene, arrangement);
  const frame = frameOf(scene, arrangement, { channels, rooms: wheelRooms(sketch) });
  const parts = arrangement.rows.flatMap((items, row) => items.flatMap((one) => placePart(frame, one, row)));
  const wheels = sketch.wheels.map((wheel) => frame.wheels[wheel.wheel]).map(({ tyre, hose }, index) => ({ wheel: sketch.wheels[index] as Sketch["wheels"][number], tyre, hose }));
  const lines = linesOf(scene, frame);
  const title = titleBlock(sketch, frame);
  const loose = looseParts(sketch, frame);
  const written: Written[] = [
    title.written, loose.written, captions(rows, frame), ...parts.map((part) => inBox(sketch, part)), ...parts.map((part) => atPorts(scene, part, blockOf(arrangement, part.part))),
    ...sketch.wheels.map((wheel) => atWheel(scene, wheel, frame)),
  ];
  return {
    width: frame.width, height: frame.height, parts: [...parts, ...loose.parts], wheels, lines, legend: title.legend,
    labels: written.flatMap(({ labels }) => labels), tags: written.flatMap(({ tags }) => tags ?? []), badges: written.flatMap(({ badges }) => badges ?? []),
  };
}

function markedOn({ faults }: Sketch): ReadonlyMap<string, number> {
  const marked = new Map<string, number>();
  for (const key of faults.flatMap(({ on }) => on)) marked.set(key, (marked.get(key) ?? 0) + 1);
  return marked;
}

const blockOf = ({ rows }: Arrangement, part: SketchPart) => rows.flat().find(({ item }) => "part" in item && item.part === part)?.block;

function placePart(frame: Frame, one: PlacedItem, row: number): PlacedPart[] {
  const { block, item } = one;
  if (!block || !("part" in item)) return [];
  const box = { x: frame.left + one.left + block.before, y: boxTop(frame, one, row), width: block.width, height: block.height };
  const points = {
    top: (offset: number): Point => ({ x: box.x + offset, y: box.y }),
    bottom: (offset: number): Point => ({ x: box.x + offset, y: box.y + box.height }),
    left: (offset: number): Point => ({ x: box.x, y: box.y + offset }),
    right: (offset: number): Point => ({ x: box.x + box.width, y: box.y + offset }),
  };
  const ports = (["top", "bottom", "left", "right"] as const).flatMap((edge) => block.slots[edge].map(({ port, offset }) => ({ port, edge, at: points[edge](offset) })));
  return [{ part: item.part, box, ports }];
}

function linesOf(scene: Scene, frame: Frame): PlacedLine[] {
  const { between, toWheel, wheelToWheel } = scene.links;
  return [
    ...between.map(({ line, upper }) => inFlow(line, betweenPoints(frame, line), line.ends[0].key === upper.end.key)),
    ...toWheel.map((one) => inFlow(one.line, toWheelPoints(frame, one), one.line.ends[0].key === one.from.end.key)),
    ...wheelToWheel.map((one) => inFlow(one.line, acrossPoints(frame, one), true)),
  ];
}

const inFlow = (line: SketchLine, points: readonly Point[], forward: boolean): PlacedLine => ({ line, points: forward ? points : [...points].reverse() });

function betweenPoints(frame: Frame, line: SketchLine): Point[] {
  const through = frame.channels.map((channel, index) => ({ index, crossing: channel.crossings.find((one) => one.line === line) })).filter(({ crossing }) => crossing !== undefined);
  const x = (value: number): number => frame.left + value;
  return through.flatMap(({ index, crossing }, step) => {
    if (!crossing) return [];
    const top = step === 0 ? edgeBeside(frame, index - 1, { line, bottom: true }) : (frame.channelTops[index] ?? 0);
    const bottom = step === through.length - 1 ? edgeBeside(frame, index, { line, bottom: false }) : (frame.rowTops[index] ?? 0);
    const across = stepsIn(frame, index, line).flatMap(({ y, to }, at, steps) => [{ x: x(steps[at - 1]?.to ?? crossing.above), y }, { x: x(to), y }]);
    return [{ x: x(crossing.above), y: top }, ...across, { x: x(crossing.below), y: bottom }];
  });
}

/** A box lower than its row ends before the row does. */
function edgeBeside(frame: Frame, row: number, { line, bottom }: { readonly line: SketchLine; readonly bottom: boolean }): number {
  const one = frame.arrangement.rows[row]?.find(({ block }) => block && slotOf(block, line));
  const top = one ? boxTop(frame, one, row) : (frame.rowTops[row] ?? 0);
  return bottom ? top + (one?.block?.height ?? 0) : top;
}

/** Where the lane along a wheel column is, and where it turns to the wheel. */
function column(frame: Frame, line: SketchLine, wheel: Wheel): { readonly x: number; readonly turn: readonly Point[] } {
  const { end } = frame.wheels[wheel];
  const lane = (frame.lanes.get(line) ?? 0) * LANE;
  const x = end.x + (isLeft(wheel) ? lane : -lane);
  const y = isFront(wheel) ? frame.frontEnd - 2 : frame.rearStart + 2;
  return { x, turn: lane === 0 ? [end] : [{ x, y }, { x: end.x, y }, end] };
}

function toWheelPoints(frame: Frame, { line, from, to }: ToWheel): Point[] {
  const { x, turn } = column(frame, line, to.wheel);
  const one = frame.arrangement.rows[from.row]?.find(({ item }) => "part" in item && item.part === from.part);
  const found = one?.block && slotOf(one.block, line);
  if (!one?.block || !found) return [];
  const left = frame.left + one.left + one.block.before;
  const { y, edge } = exitOf(frame, { line, from });
  if (edge === "left" || edge === "right") return [{ x: edge === "left" ? left : left + one.block.width, y }, { x, y }, ...turn];
  const start = { x: left + found.slot.offset, y: boxTop(frame, one, from.row) + (edge === "bottom" ? one.block.height : 0) };
  return [start, { x: start.x, y }, { x, y }, ...turn];
}

function acrossPoints(frame: Frame, { line, ends: [a, b] }: WheelToWheel): Point[] {
  const [from, to] = [column(frame, line, a.wheel), column(frame, line, b.wheel)];
  const index = isFront(a.wheel) && isFront(b.wheel) ? 0 : frame.channels.length - 1;
  const y = stepsIn(frame, index, line)[0]?.y;
  const across = y === undefined ? [] : [{ x: from.x, y }, { x: to.x, y }];
  return [...[...from.turn].reverse(), ...across, ...to.turn];
}
