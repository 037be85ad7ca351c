/** One part as a box with its ports on its edges, and the room that the writing around it needs. */
import { shortened } from "./text-width";
import { BADGE, BESIDE, MOST_LETTERS, NUT_ROOM, PORT_INSET, TAG, widthOf } from "./measures";
import type { SketchPart, SketchPort } from "./sketch";

export const EDGES = ["top", "bottom", "left", "right"] as const;
export type Edge = (typeof EDGES)[number];

/** What is written where a line meets a port. */
export interface PortWriting {
  readonly port: SketchPort;
  readonly nut: string;
  /** How many faults are marked at the port. */
  readonly badges: number;
  /** The run that is named here; each run is named at one of its ends. */
  readonly run: { readonly circuit: string; readonly size: string; readonly badges: number } | undefined;
}

export interface Slot extends PortWriting {
  /** Along the edge, from the left or the top of the box. */
  readonly offset: number;
}

export interface Block {
  readonly part: SketchPart;
  readonly slots: Readonly<Record<Edge, readonly Slot[]>>;
  readonly width: number;
  readonly height: number;
  /** Room for writing left and right of the box. */
  readonly before: number;
  readonly after: number;
  /** Writing at the upper and lower ports stands left of their lines instead of right. */
  readonly mirrored: boolean;
}

export interface BlockOptions {
  /** Faults marked on the part itself. */
  readonly badges: number;
  readonly mirrored: boolean;
}

export function blockOf(part: SketchPart, edges: Readonly<Record<Edge, readonly PortWriting[]>>, { badges, mirrored }: BlockOptions): Block {
  const [top, bottom] = [offsetsAlong(edges.top, mirrored), offsetsAlong(edges.bottom, mirrored)];
  const spans = [top, bottom].map((offsets) => (offsets.at(-1) ?? 0) + 2 * PORT_INSET);
  const names = [edges.top, edges.bottom].map((row) => halfName(row[0]) + halfName(row.at(-1)) - 2 * PORT_INSET + 6);
  const slender = isSlender(part, edges);
  const width = (slender ? HOSE : 0) + Math.max(middleWidth(part, edges, badges), ...spans, ...spans.map((span, index) => span + (names[index] ?? 0)));
  const centred = (row: readonly PortWriting[], offsets: readonly number[]): Slot[] => row.map((one, index) => ({ ...one, offset: slender ? HOSE / 2 : (width - (offsets.at(-1) ?? 0)) / 2 + (offsets[index] ?? 0) }));
  const middle = middleHeight(edges, badges);
  const below = sideNames(edges);
  const stacked = (row: readonly PortWriting[]): Slot[] => row.map((one, index) => ({
    ...one, offset: nameRoom(edges.top) + PAD + (below > 0 ? middle - below + NAME_LINE / 2 + index * SIDE_PITCH : middle / 2 + (index - (row.length - 1) / 2) * SIDE_PITCH),
  }));
  const slots = { top: centred(edges.top, top), bottom: centred(edges.bottom, bottom), left: stacked(edges.left), right: stacked(edges.right) };
  const overhang = [...slots.top, ...slots.bottom].map((slot) => (mirrored ? -slot.offset : slot.offset - width) + writingWidth(slot) + BESIDE);
  return {
    part, slots, width, mirrored,
    height: nameRoom(edges.top) + middle + nameRoom(edges.bottom) + 2 * PAD,
    before: Math.max(0, ...slots.left.map(sideRoom), ...(mirrored ? overhang : [])),
    after: Math.max(0, ...slots.right.map(sideRoom), ...(mirrored ? [] : overhang)),
  };
}

/** Room beside a line for what is written where it meets a port. */
export function writingWidth({ nut, badges, run }: PortWriting): number {
  const nutWidth = (nut === "" ? 0 : BESIDE + widthOf(shortened(nut, MOST_LETTERS.nut), "nut")) + badges * BADGE.width;
  return Math.max(nutWidth + (badges > 0 && nut === "" ? BESIDE : 0), run ? runWidth(run) : 0);
}

/** Ring with number and circuit over the size. */
export const runWidth = ({ circuit, size, badges }: NonNullable<PortWriting["run"]>): number =>
  BESIDE + Math.max(TAG + 4 + widthOf(circuit, "circuit") + badges * BADGE.width, widthOf(size, "run"));

/** Room below a lower edge, or above an upper one, for the writing at its ports. */
export const nutRoom = (slots: readonly PortWriting[]): number => (slots.some(({ nut, badges }) => nut !== "" || badges > 0) ? NUT_ROOM : 0);

/** Names that say no more than the arrows of the lines do are left to the list. */
export function portName({ name, named }: SketchPort): string {
  return named ? shortened(name, MOST_LETTERS.port) : "";
}

export const partName = ({ label }: SketchPart): string => shortened(label, MOST_LETTERS.part);

/** A hose with one line in and one out hangs beside its name. */
export const isSlender = ({ instance }: SketchPart, { top, bottom, left, right }: Readonly<Record<Edge, readonly unknown[]>>): boolean =>
  instance.component.kind === "hose" && top.length <= 1 && bottom.length <= 1 && left.length + right.length === 0;

/** Room that a hanging hose takes. */
export const HOSE = 18;

/** Between the edge of a box and what is written in it. */
export const PAD = 4;
export const NAME_LINE = 12;
/** Height of the name and kind of a part, and of the row of marks under them. */
const MIDDLE = 30;
export const BADGE_LINE = 16;
/** Two ports on one side, with a nut written over each line. */
const SIDE_PITCH = 26;
const TICKS = 16;

export const nameRoom = (row: readonly PortWriting[]): number => (row.some(({ port }) => portName(port) !== "") ? NAME_LINE : 0);

const sideRoom = (slot: PortWriting): number => Math.max(TICKS + 4, writingWidth(slot) + 6);

const halfName = (one: PortWriting | undefined): number => (one ? widthOf(portName(one.port), "port") / 2 : 0);

/** Ports stand as near as the writing beside and inside lets them. */
function offsetsAlong(row: readonly PortWriting[], mirrored: boolean): number[] {
  let at = 0;
  return row.map((one, index) => {
    const before = row[index - 1];
    if (before) at += Math.max(writingWidth(mirrored ? one : before) + 7, halfName(before) + halfName(one) + 7, 2 * PORT_INSET);
    return at;
  });
}

/** Names of ports at the sides stand under the name of the part: beside it they would make the whole car wider. */
export function sideNames({ left, right }: Readonly<Record<Edge, readonly Pick<PortWriting, "port">[]>>): number {
  const named = [...left, ...right].some(({ port }) => portName(port) !== "");
  return named ? NAME_LINE + 2 + (Math.max(left.length, right.length) - 1) * SIDE_PITCH : 0;
}

function middleHeight(edges: Readonly<Record<Edge, readonly PortWriting[]>>, badges: number): number {
  const own = MIDDLE + (badges > 0 ? BADGE_LINE : 0);
  const below = sideNames(edges);
  return below > 0 ? own + below : Math.max(own, SIDE_PITCH * Math.max(edges.left.length, edges.right.length));
}

function middleWidth(part: SketchPart, { left, right }: Readonly<Record<Edge, readonly PortWriting[]>>, badges: number): number {
  const name = Math.max(widthOf(partName(part), "part"), badges * BADGE.width);
  const sides = [left, right].map((row) => Math.max(0, ...row.map(({ port }) => widthOf(portName(port), "port") + 6)));
  return Math.max(Math.max(name, widthOf(part.kind, "kind")) + 2 * PAD + 4, (sides[0] ?? 0) + (sides[1] ?? 0) + 8);
}
