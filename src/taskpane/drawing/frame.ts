/** Where everything begins along and across the car, once rows and channels have their heights. */
import type { Wheel } from "../../core/component";
import { slotOf, type Arrangement, type PlacedItem, type Scene } from "./scene";
import { laneAt, type Channel } from "./channels";
import { stackLanes } from "./lanes";
import { isFront, isLeft, type ToWheel } from "./links";
import { APART, COLUMN, LANE, MARGIN, NUT_ROOM, RUN_ROOM, TYRE } from "./measures";
import type { Box, Point } from "./placed";
import type { SketchLine } from "./sketch";

/** Where everything begins, once rows and channels have their heights. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  /** Left end of what stands in the rows. */
  readonly left: number;
  readonly arrangement: Arrangement;
  readonly channels: readonly Channel[];
  /** Tops of the channels, one more than there are rows. */
  readonly channelTops: readonly number[];
  readonly rowTops: readonly number[];
  readonly rowHeights: readonly number[];
  /** Where the room for writing at the front wheels ends, and that at the rear wheels begins. */
  readonly frontEnd: number;
  readonly rearStart: number;
  readonly wheels: Readonly<Record<Wheel, WheelFrame>>;
  /** The lane that each line takes along its wheel column. */
  readonly lanes: ReadonlyMap<SketchLine, number>;
}

export interface WheelFrame {
  readonly tyre: Box;
  readonly hose: readonly Point[];
  /** Where the hard line ends. */
  readonly end: Point;
}

/** Heights of the writing before the front wheels, behind the rear ones, and of what stands between them. */
export interface WheelRooms {
  readonly front: number;
  readonly rear: number;
  readonly title: number;
  readonly loose: number;
}

/** Room for the writing where a line comes to a wheel. */
const STUB = NUT_ROOM + RUN_ROOM + 4;

export function frameOf(scene: Scene, arrangement: Arrangement, { channels, rooms }: { readonly channels: readonly Channel[]; readonly rooms: WheelRooms }): Frame {
  const frontEnd = MARGIN + Math.max(rooms.front + TYRE.height, rooms.title) + STUB;
  const rowHeights = arrangement.rows.map((items) => Math.max(0, ...items.map(({ block }) => block?.height ?? 0)));
  const channelTops = [frontEnd];
  const rowTops: number[] = [];
  for (const [row, height] of rowHeights.entries()) {
    rowTops.push((channelTops[row] ?? 0) + (channels[row]?.height ?? 0));
    channelTops.push((rowTops[row] ?? 0) + height);
  }
  const rearStart = (channelTops.at(-1) ?? 0) + (channels.at(-1)?.height ?? 0);
  const lanes = wheelLanes(scene, { arrangement, channels, channelTops, rowTops, rowHeights });
  const laneCount = (left: boolean): number => 1 + Math.max(0, ...[...lanes].filter(([line]) => isLeft(wheelOf(scene, line)) === left).map(([, lane]) => lane));
  const left = MARGIN + COLUMN + (laneCount(true) - 1) * LANE + APART;
  const width = left + arrangement.width + APART + (laneCount(false) - 1) * LANE + COLUMN + MARGIN;
  const height = rearStart + STUB + Math.max(TYRE.height + rooms.rear, rooms.loose) + MARGIN;
  const wheels = { LF: wheelFrame("LF"), RF: wheelFrame("RF"), LR: wheelFrame("LR"), RR: wheelFrame("RR") };
  return { width, height, left, arrangement, channels, channelTops, rowTops, rowHeights, frontEnd, rearStart, lanes, wheels };

  function wheelFrame(wheel: Wheel): WheelFrame {
    const mirrored = (x: number): number => (isLeft(wheel) ? x : width - x);
    const top = isFront(wheel) ? frontEnd - STUB - TYRE.height : rearStart + STUB;
    const end = { x: mirrored(MARGIN + COLUMN), y: isFront(wheel) ? top + TYRE.height : top };
    const brake = { x: mirrored(MARGIN + TYRE.width + 7), y: top + TYRE.height / 2 };
    return { tyre: { x: isLeft(wheel) ? MARGIN : width - MARGIN - TYRE.width, y: top, width: TYRE.width, height: TYRE.height }, hose: [brake, { x: end.x, y: brake.y }, end], end };
  }
}

const wheelOf = ({ links }: Scene, line: SketchLine): Wheel => links.toWheel.find((one) => one.line === line)?.to.wheel ?? links.wheelToWheel.find((one) => one.line === line)?.ends[0].wheel ?? "LF";

export type Heights = Pick<Frame, "arrangement" | "channels" | "channelTops" | "rowTops" | "rowHeights">;

function wheelLanes(scene: Scene, heights: Heights): ReadonlyMap<SketchLine, number> {
  const lanes = new Map<SketchLine, number>();
  for (const left of [true, false]) {
    const lines = scene.links.toWheel.filter(({ to }) => isLeft(to.wheel) === left);
    const along = lines.map(({ line, from, to }) => {
      const y = exitOf(heights, { line, from }).y;
      return [y, isFront(to.wheel) ? 0 : FAR_BACK] as const;
    });
    const sides = scene.links.wheelToWheel.filter(({ ends }) => ends.every(({ wheel }) => isLeft(wheel) === left));
    const taken = stackLanes([...along, ...sides.map(() => [0, FAR_BACK] as const)]);
    [...lines, ...sides].forEach(({ line }, index) => lanes.set(line, taken[index] ?? 0));
  }
  return lanes;
}

const FAR_BACK = 1e6;

/** Where a line to a wheel comes to the wheel's column: beside its port, or in the channel it has to take. */
export function exitOf(heights: Heights, { line, from }: Pick<ToWheel, "line" | "from">): { readonly y: number; readonly edge: "top" | "bottom" | "left" | "right" } {
  const one = heights.arrangement.rows[from.row]?.find(({ item }) => "part" in item && item.part === from.part);
  const found = one?.block && slotOf(one.block, line);
  if (!one?.block || !found) return { y: 0, edge: "bottom" };
  const { edge, slot } = found;
  if (edge === "left" || edge === "right") return { y: boxTop(heights, one, from.row) + slot.offset, edge };
  const index = edge === "bottom" ? from.row + 1 : from.row;
  return { y: stepsIn(heights, index, line)[0]?.y ?? 0, edge };
}

/** Where a line goes across, step by step. */
export function stepsIn({ channels, channelTops }: Heights, index: number, line: SketchLine): readonly { readonly y: number; readonly to: number }[] {
  const channel = channels[index];
  const steps = channel?.crossings.find((crossing) => crossing.line === line)?.steps ?? [];
  return channel ? steps.map(({ lane, to }) => ({ y: (channelTops[index] ?? 0) + laneAt(channel, lane), to })) : [];
}

export const boxTop = ({ rowTops, rowHeights }: Heights, { block }: PlacedItem, row: number): number => (rowTops[row] ?? 0) + ((rowHeights[row] ?? 0) - (block?.height ?? 0)) / 2;
