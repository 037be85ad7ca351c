/** Along the car: how high each row is, and the channel before it in which lines go across. */
import { slotOf, terminalOf, type Arrangement, type PlacedItem, type Scene } from "./scene";
import { nutRoom, type Block } from "./block";
import { lanesOf, type Step, type Way } from "./lanes";
import { isFront, isLeft } from "./links";
import { LANE, RUN_ROOM } from "./measures";
import type { SketchLine } from "./sketch";

/** A line going through a channel; without steps where it goes straight on. */
export interface Crossing extends Way {
  readonly line: SketchLine;
  readonly steps: readonly Step[];
}

/** The room between two rows; the first is before the first row, the last behind the last. */
export interface Channel {
  readonly crossings: readonly Crossing[];
  readonly upperRoom: number;
  readonly lowerRoom: number;
  readonly height: number;
}

/** Beyond everything that stands in a row: where the lines along the wheels run. */
export const FAR = 1e5;

export function channelsOf(scene: Scene, arrangement: Arrangement): readonly Channel[] {
  return Array.from({ length: arrangement.rows.length + 1 }, (_, index) => channelAt(scene, arrangement, index));
}

export const laneAt = ({ upperRoom }: Channel, lane: number): number => upperRoom + FIRST_LANE + lane * LANE;

const FIRST_LANE = 6;
const LAST_LANE = 6;
/** Where nothing is written and nothing goes across. */
const LEAST = 14;

function channelAt(scene: Scene, arrangement: Arrangement, index: number): Channel {
  const [above, below] = [arrangement.rows[index - 1] ?? [], arrangement.rows[index] ?? []];
  const ways = waysIn(scene, { above, below, index, last: arrangement.rows.length });
  const turning = ways.filter((way) => Math.abs(way.above - way.below) > STRAIGHT);
  const lanes = lanesOf(turning);
  const crossings = ways.map((way) => ({ ...way, steps: turning.includes(way) ? (lanes[turning.indexOf(way)] ?? []) : [] }));
  const upperRoom = Math.max(0, ...blocksIn(above).map(({ slots: { bottom } }) => nutRoom(bottom) + (bottom.some(({ run }) => run) ? RUN_ROOM : 0)));
  const lowerRoom = Math.max(0, ...blocksIn(below).map(({ slots: { top } }) => nutRoom(top)));
  const across = turning.length > 0 ? FIRST_LANE + Math.max(...lanes.flat().map(({ lane }) => lane)) * LANE + LAST_LANE : 4;
  return { crossings, upperRoom, lowerRoom, height: Math.max(LEAST, upperRoom + across + lowerRoom) };
}

/** Less than this is drawn a little aslant instead of with two bends. */
const STRAIGHT = 1.5;

const blocksIn = (items: readonly PlacedItem[]): Block[] => items.map(({ block }) => block).filter((block) => block !== undefined);

interface Beside {
  readonly above: readonly PlacedItem[];
  readonly below: readonly PlacedItem[];
  readonly index: number;
  readonly last: number;
}

function waysIn({ links }: Scene, { above, below, index, last }: Beside): (Way & { readonly line: SketchLine })[] {
  const through = links.between.filter(({ upper, lower }) => upper.row < index && index <= lower.row).map(({ line, upper, lower }) => ({
    line,
    above: terminalOf(above, line, upper.row === index - 1 ? upper.part : undefined),
    below: terminalOf(below, line, lower.row === index ? lower.part : undefined),
  }));
  const toWheels = links.toWheel.flatMap(({ line, from, to }) => {
    const [items, edge] = from.row === index - 1 ? ([above, "bottom"] as const) : ([below, "top"] as const);
    const block = items.find(({ item }) => "part" in item && item.part === from.part)?.block;
    if (!block || slotOf(block, line)?.edge !== edge) return [];
    const [port, side] = [terminalOf(items, line, from.part), isLeft(to.wheel) ? -FAR : FAR];
    return [edge === "bottom" ? { line, above: port, below: side } : { line, above: side, below: port }];
  });
  const acrossCar = links.wheelToWheel.filter(({ ends: [a, b] }) => isLeft(a.wheel) !== isLeft(b.wheel) && index === (isFront(a.wheel) && isFront(b.wheel) ? 0 : last)).map(({ line }) => ({ line, above: -FAR, below: FAR }));
  return [...through, ...toWheels, ...acrossCar];
}
