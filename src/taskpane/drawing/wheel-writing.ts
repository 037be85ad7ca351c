/** The writing at the wheels and between them, and the room that it all needs. */
import type { Scene } from "./scene";
import { BADGE_LINE, partName } from "./block";
import { onPart, onWheel } from "./faults";
import type { Frame, WheelRooms } from "./frame";
import { isFront, isLeft } from "./links";
import { BADGE, BESIDE, COLUMN, MARGIN, MOST_LETTERS, NOSE, NUT_ROOM, RUN_ROOM, widthOf } from "./measures";
import { inBox } from "./part-writing";
import { badgesAt, label, type PlacedPart, type Point, type Written } from "./placed";
import type { Row } from "./rows";
import { faultsOn, lineWidth, runAt, together } from "./run-writing";
import type { Sketch, SketchPart, SketchWheel } from "./sketch";
import { shortened } from "./text-width";
import { titleHeight, titleWidth } from "./title";

/** Between the wheels stand the title, and parts without a place. */
export function wheelRooms(sketch: Sketch): WheelRooms {
  const linesAt = (front: boolean): number => Math.max(...sketch.wheels.filter(({ wheel }) => isFront(wheel) === front).map((one) => wheelLines(one).length + (faultsOn(sketch, onWheel(one.wheel)).length > 0 ? 1 : 0)));
  return { front: NOSE + linesAt(true) * LINE + 4, rear: linesAt(false) * LINE + 4, title: titleHeight(sketch), loose: LOOSE_TOP + sketch.parts.filter(({ placed }) => !placed).length * LOOSE_PITCH };
}

/** Of the whole drawing, so that the writing at the wheels on the left, on the right and between them has room side by side. */
export function leastWidth(sketch: Sketch): number {
  const at = (front: boolean) => sketch.wheels.filter(({ wheel }) => isFront(wheel) === front);
  const names = (front: boolean): number => Math.max(...at(front).map((one) => Math.max(faultsOn(sketch, onWheel(one.wheel)).length * BADGE.width, ...wheelLines(one).map((text) => widthOf(text, "part")))));
  const lines = sketch.lines.filter(({ ends }) => ends.some(({ at: { instance } }) => instance.wheel !== undefined));
  const writing = Math.max(0, ...lines.map((line) => lineWidth(sketch, line)));
  const loose = sketch.parts.filter(({ placed }) => !placed).map((part) => looseWidth(sketch, part));
  const between = (least: number, side: number): number => least + 2 * (MARGIN + side + GAP);
  return Math.max(
    between(titleWidth(sketch), Math.max(names(true), COLUMN)), between(0, names(false)), between(GAP, COLUMN + BESIDE + writing),
    ...(loose.length > 0 ? [between(Math.max(...loose, widthOf(LOOSE_CAPTION, "place")), COLUMN)] : []));
}

const GAP = 8;
const LINE = 14;
const CAPTION_LINE = 12.5;

/** Names of the places, in the left wheel column beside their rows. */
export function captions(rows: readonly Row[], { rowTops, rowHeights }: Frame): Written {
  const labels = rows.flatMap(({ place }, row) => {
    const words = linesOf(place);
    const middle = (rowTops[row] ?? 0) + (rowHeights[row] ?? 0) / 2;
    return words.map((word, index) => label(word, "place", { x: MARGIN, y: middle + 3 + (index - (words.length - 1) / 2) * CAPTION_LINE }));
  });
  return { labels };
}

/** Two lines at most, cut to the column. */
function linesOf(place: string): string[] {
  const words = place.split(/(?<=-)|\s+/).filter((word) => word !== "");
  const lines = words.length > 2 ? [words[0] ?? "", words.slice(1).join(" ")] : words;
  return lines.map((word) => (Array.from({ length: word.length }, (_, cut) => shortened(word, word.length - cut)).find((text) => widthOf(text, "place") <= COLUMN - 6) ?? ""));
}

const wheelLines = ({ wheel, brake, hose }: SketchWheel): string[] =>
  [brake, hose].flatMap((instance) => (!instance ? [] : [instance.unnamed ? (instance.component.kind === "hose" ? "hose ?" : "brake ?") : shortened(instance.label.replace(new RegExp(`@${wheel}$`), ""), MOST_LETTERS.wheel)]));

/** What stands at a wheel, and the nut and the run where the line comes to it. */
export function atWheel(scene: Scene, one: SketchWheel, frame: Frame): Written {
  const { wheel } = one;
  const { tyre, end } = frame.wheels[wheel];
  const [left, front] = [isLeft(wheel), isFront(wheel)];
  const outer = left ? tyre.x : tyre.x + tyre.width;
  const anchor = left ? "start" : "end";
  const names = wheelLines(one);
  const faults = faultsOn(scene.sketch, onWheel(wheel));
  const nameY = (index: number): number => (front ? tyre.y - 6 - (names.length - 1 - index) * LINE : tyre.y + tyre.height + LINE + index * LINE);
  const badgeY = front ? nameY(0) - LINE - 4 : nameY(names.length) - 4;
  const labels = [
    label(wheel, "wheel", { x: tyre.x + tyre.width / 2, y: tyre.y + tyre.height / 2 + 4, anchor: "middle", owner: onWheel(wheel) }),
    ...names.map((name, index) => label(name, "part", { x: outer, y: nameY(index), anchor, owner: onWheel(wheel) })),
  ];
  const badges = badgesAt(faults, { x: left ? outer : outer - faults.length * BADGE.width, y: badgeY });
  return together([{ labels, badges }, lineAtWheel(scene, one, { end, left, front })]);
}

function lineAtWheel({ sketch, links }: Scene, { wheel }: SketchWheel, { end, left, front }: { readonly end: Point; readonly left: boolean; readonly front: boolean }): Written {
  const toWheel = links.toWheel.find(({ to }) => to.wheel === wheel);
  const across = links.wheelToWheel.find(({ ends }) => ends.some((one) => one.wheel === wheel));
  const line = toWheel?.line ?? across?.line;
  const nut = toWheel?.to.end.nut ?? across?.ends.find((one) => one.wheel === wheel)?.end.nut ?? "";
  if (!line) return { labels: [] };
  const anchor = left ? "start" : "end";
  const x = end.x + (left ? BESIDE : -BESIDE);
  const named = toWheel !== undefined || across?.ends[0].wheel === wheel;
  const run = named ? runAt(sketch, line, { x, y: front ? end.y + NUT_ROOM : end.y - NUT_ROOM - RUN_ROOM, anchor }) : { labels: [] };
  const nutLabel = nut === "" ? [] : [label(shortened(nut, MOST_LETTERS.nut), "nut", { x, y: front ? end.y + NUT_ROOM - 2 : end.y - 5, anchor, owner: onWheel(wheel) })];
  return together([{ labels: nutLabel }, run]);
}

/** Listed parts that have no place in the lines yet, between the rear wheels. */
export function looseParts(sketch: Sketch, frame: Frame): { readonly parts: readonly PlacedPart[]; readonly written: Written } {
  const loose = sketch.parts.filter(({ placed }) => !placed);
  if (loose.length === 0) return { parts: [], written: { labels: [] } };
  const top = frame.wheels.LR.tyre.y + LOOSE_TOP;
  const parts = loose.map((part, index): PlacedPart => {
    const faults = faultsOn(sketch, onPart(part.label)).length;
    const width = looseWidth(sketch, part);
    return { part, box: { x: (frame.width - width) / 2, y: top + index * LOOSE_PITCH, width, height: 39 + (faults > 0 ? BADGE_LINE : 0) }, ports: [] };
  });
  const caption = label(LOOSE_CAPTION, "place", { x: frame.width / 2, y: top - 6, anchor: "middle" });
  return { parts, written: together([{ labels: [caption] }, ...parts.map((part) => inBox(sketch, part))]) };
}

const looseWidth = (sketch: Sketch, part: SketchPart): number => Math.max(widthOf(partName(part), "part"), faultsOn(sketch, onPart(part.label)).length * BADGE.width, widthOf(part.kind, "kind")) + 12;

const LOOSE_CAPTION = "no place in the lines yet";
const LOOSE_TOP = 18;
const LOOSE_PITCH = 62;
