/** A car's parts and passing lines in their rows: what the steps of the layout hand on to one another. */
import { EDGES, type Block, type Edge, type Slot } from "./block";
import type { Links } from "./links";
import type { Row } from "./rows";
import type { Sketch, SketchLine, SketchPart } from "./sketch";

/** A part, or a line that passes between the parts of its row. */
export type Item = { readonly part: SketchPart } | { readonly passing: SketchLine };

export interface PlacedItem {
  readonly item: Item;
  /** Undefined for a passing line. */
  readonly block: Block | undefined;
  /** Left end of the room it takes; the box itself begins after `block.before`. */
  readonly left: number;
  readonly width: number;
}

export interface Arrangement {
  readonly rows: readonly (readonly PlacedItem[])[];
  /** From the leftmost to the rightmost that anything in a row reaches. */
  readonly width: number;
}

export interface Scene {
  readonly sketch: Sketch;
  readonly rows: readonly Row[];
  readonly links: Links;
  /** How many faults are marked under a key. */
  readonly marked: ReadonlyMap<string, number>;
  /** Room across the rows that the writing at the wheels and between them needs. */
  readonly leastWidth: number;
}

/** Where a line leaves an edge, or passes. */
export function terminalOf(items: readonly PlacedItem[], line: SketchLine, part: SketchPart | undefined): number {
  const found = items.find(({ item }) => ("passing" in item ? part === undefined && item.passing === line : item.part === part));
  if (!found) return 0;
  if (!found.block) return found.left + found.width / 2;
  const slot = slotOf(found.block, line)?.slot;
  return found.left + found.block.before + (slot?.offset ?? 0);
}

/** The slot at which a line meets a part, and its edge. */
export function slotOf(block: Block, line: SketchLine): { readonly edge: Edge; readonly slot: Slot } | undefined {
  const [a, b] = line.ends;
  for (const edge of EDGES) {
    const slot = block.slots[edge].find(({ port: { key } }) => key === a.key || key === b.key);
    if (slot) return { edge, slot };
  }
  return undefined;
}
