/** Across the car: which part or passing line stands where in its row. */
import type { Block } from "./block";
import { blockFor } from "./edges";
import { isLeft, type Links, type ToWheel } from "./links";
import { APART } from "./measures";
import { slotOf, terminalOf, type Arrangement, type Item, type PlacedItem, type Scene } from "./scene";
import type { Sketch, SketchPart } from "./sketch";
import { spread } from "./spread";

type Order = readonly (readonly Item[])[];

/** Tries the orders of each row in turn and keeps the one with the fewest crossings and the shortest ways across. */
export function arrange(scene: Scene): Arrangement {
  let order: Order = scene.rows.map(({ parts }, row) => [...parts.map((part) => ({ part })), ...passingIn(scene.links, row)]);
  let best = placed(scene, order);
  let cost = costOf(scene, best);
  for (let pass = 0; pass < PASSES; pass++) {
    for (const [row, items] of order.entries()) {
      for (const tried of ordersOf(items).slice(1)) {
        const candidate = order.map((other, index) => (index === row ? tried : other));
        const arrangement = placed(scene, candidate);
        const candidateCost = costOf(scene, arrangement);
        if (candidateCost < cost - 1e-6) [order, best, cost] = [candidate, arrangement, candidateCost];
      }
    }
  }
  return best;
}

const PASSES = 2;
/** A passing line keeps this much room. */
const PASSING_WIDTH = 12;
/** Rows with more than this many things keep their first order: nobody mounts so many at one place. */
const MOST_PERMUTED = 5;

const passingIn = ({ between }: Links, row: number): Item[] => between.filter(({ upper, lower }) => upper.row < row && row < lower.row).map(({ line }) => ({ passing: line }));

/** Every order of a row, the one it has first. */
function ordersOf(items: readonly Item[]): readonly (readonly Item[])[] {
  if (items.length > MOST_PERMUTED) return [items];
  return items.length < 2 ? [items] : items.flatMap((item, index) => ordersOf(items.filter((_, other) => other !== index)).map((rest) => [item, ...rest]));
}

/** Ports are ordered by where their lines go, which moves the parts, so it is done three times over. */
function placed(scene: Scene, order: Order): Arrangement {
  let arrangement: Arrangement = { rows: order.map((items) => items.map((item, index) => ({ item, block: undefined, left: (index + 1) / (items.length + 1), width: 0 }))), width: 1 };
  for (let round = 0; round < 3; round++) {
    const blocks = arrangement.rows.map((items, row) => items.map((one) => ("part" in one.item ? blockFor({ ...scene, arrangement }, one.item.part, row) : undefined)));
    arrangement = settle(scene, order, blocks);
  }
  return arrangement;
}

type Blocks = readonly (readonly (Block | undefined)[])[];

function settle(scene: Scene, order: Order, blocks: Blocks): Arrangement {
  const widthAt = (row: number, index: number): number => {
    const block = blocks[row]?.[index];
    return block ? block.before + block.width + block.after : PASSING_WIDTH;
  };
  const roomOf = (items: readonly Item[], row: number): number => items.reduce((sum, _, index) => sum + widthAt(row, index) + (index > 0 ? APART : 0), 0);
  const width = Math.max(scene.leastWidth, ...order.map(roomOf), ...blocks.flat().map((block) => (block ? roomToOneSide(scene.sketch, block) : 0)));
  let rows: readonly (readonly PlacedItem[])[] = order.map((items, row) => items.map((item, index) => ({ item, block: blocks[row]?.[index], width: widthAt(row, index), left: (width - widthAt(row, index)) / 2 })));
  for (const { down, only } of SWEEPS) {
    const indices = [...rows.keys()];
    for (const row of down ? indices : indices.reverse()) rows = rows.map((items, index) => (index === row ? spreadRow(scene, { rows, width }, { row, only }) : items));
  }
  return { rows, width };
}

/** So that the master, with the writing beside it, still stands on the driver's side of the middle. */
function roomToOneSide({ driverSide }: Sketch, { part, width, before, after }: Block): number {
  return part.instance.component.kind === "master" ? width + 2 * (driverSide === "right" ? after : before) + 8 : 0;
}

/** Looking to the last row that was set, then to both sides, then for the straightest way down, and last of all to what is screwed on below. */
type Neighbours = "above" | "below" | "both" | "straight" | "direct";
const SWEEPS: readonly { readonly down: boolean; readonly only: Neighbours }[] = [
  { down: true, only: "above" }, { down: false, only: "below" }, { down: true, only: "both" }, { down: false, only: "both" }, { down: true, only: "both" }, { down: false, only: "both" }, { down: true, only: "straight" }, { down: false, only: "direct" },
];

function spreadRow(scene: Scene, arrangement: Arrangement, { row, only }: { readonly row: number; readonly only: Neighbours }): readonly PlacedItem[] {
  const items = arrangement.rows[row] ?? [];
  const wishes = items.map((one) => ({ width: one.width, ...wishOf(scene, arrangement, { one, row, only }) }));
  const lefts = spread(wishes, arrangement.width, APART);
  return items.map((one, index) => ({ ...one, left: lefts[index] ?? 0 }));
}

/** The master stands on the driver's side; everything else wants its lines straight, or else the middle. */
function wishOf({ sketch, links }: Scene, { rows, width }: Arrangement, { one, row, only }: { readonly one: PlacedItem; readonly row: number; readonly only: Neighbours }) {
  if ("part" in one.item && one.item.part.instance.component.kind === "master") return { wants: sketch.driverSide === "right" ? width - one.width : 0, weight: 100 };
  if (only === "direct") return screwedOnBelow(links, rows, { one, row });
  const touching = links.between.filter(({ line, upper, lower }) => ("passing" in one.item ? line === one.item.passing : one.item.part === upper.part || one.item.part === lower.part));
  const wishes = touching.flatMap(({ line, upper, lower }) => {
    const [part] = "part" in one.item ? [one.item.part] : [];
    const offset = terminalOf([{ ...one, left: 0 }], line, part);
    const above = row > upper.row && only !== "below" ? [terminalOf(rows[row - 1] ?? [], line, row - 1 === upper.row ? upper.part : undefined) - offset] : [];
    const below = row < lower.row && (only === "below" || only === "both") ? [terminalOf(rows[row + 1] ?? [], line, row + 1 === lower.row ? lower.part : undefined) - offset] : [];
    return [...above, ...below];
  });
  if (only === "straight" && wishes.length > 0) return { wants: nearestToMean(wishes), weight: wishes.length };
  const middle = (width - (one.block?.width ?? 0)) / 2 - (one.block?.before ?? 0);
  const [sum, weight] = [wishes.reduce((total, wish) => total + wish, middle * MIDDLE_PULL), wishes.length + MIDDLE_PULL];
  return wishes.length > 0 && !("part" in one.item && feedsBothSides(links.toWheel, one.item.part)) ? { wants: wishes.reduce((total, wish) => total + wish, 0) / wishes.length, weight: wishes.length } : { wants: sum / weight, weight };
}

/** One part screwed into another stands straight over it; anything else stays where it is. */
function screwedOnBelow({ between }: Links, rows: Arrangement["rows"], { one, row }: { readonly one: PlacedItem; readonly row: number }) {
  const part = "part" in one.item ? one.item.part : undefined;
  const direct = between.find(({ line, upper, lower }) => line.joint.by === "direct" && upper.part === part && lower.row === row + 1);
  if (!direct || !part) return { wants: one.left, weight: 1 };
  return { wants: terminalOf(rows[row + 1] ?? [], direct.line, direct.lower.part) - terminalOf([{ ...one, left: 0 }], direct.line, part), weight: 20 };
}

/** One line straight is better than two that are both a little bent. */
function nearestToMean(wishes: readonly number[]): number {
  const mean = wishes.reduce((sum, wish) => sum + wish, 0) / wishes.length;
  return wishes.reduce((best, wish) => (Math.abs(wish - mean) < Math.abs(best - mean) - 1e-9 ? wish : best));
}

/** How much a part that feeds both sides is drawn to the middle of the car, against one line kept straight. */
const MIDDLE_PULL = 0.4;

function feedsBothSides(toWheel: readonly ToWheel[], part: SketchPart): boolean {
  const sides = new Set(toWheel.filter(({ from }) => from.part === part).map(({ to }) => isLeft(to.wheel)));
  return sides.size === 2;
}

/** A crossing is as bad as so many units of way across the car. */
const CROSSING = 90;
/** What the narrowest pane shows at full size between its wheel columns; wider rows make all writing smaller. */
const PANE = 220;
const WIDER = 3;
/** A line to a wheel that cannot leave sideways. */
const DETOUR = 60;

function costOf({ links }: Scene, { rows, width }: Arrangement): number {
  const ways = rows.slice(0, -1).map((_, row) => {
    const through = links.between.filter(({ upper, lower }) => upper.row <= row && row < lower.row);
    return through.map(({ line, upper, lower }) => ({
      above: terminalOf(rows[row] ?? [], line, row === upper.row ? upper.part : undefined),
      below: terminalOf(rows[row + 1] ?? [], line, row + 1 === lower.row ? lower.part : undefined),
    }));
  });
  const across = ways.flat().reduce((sum, { above, below }) => sum + Math.abs(above - below), 0);
  const crossings = ways.reduce((sum, way) => sum + way.filter((one, index) => way.slice(index + 1).some((other) => (one.above - other.above) * (one.below - other.below) < 0)).length, 0);
  const detours = links.toWheel.filter(({ line, from }) => {
    const block = rows[from.row]?.find(({ item }) => "part" in item && item.part === from.part)?.block;
    const edge = block && slotOf(block, line)?.edge;
    return edge === "top" || edge === "bottom";
  }).length;
  return across + crossings * CROSSING + detours * DETOUR + width + Math.max(0, width - PANE) * WIDER;
}
