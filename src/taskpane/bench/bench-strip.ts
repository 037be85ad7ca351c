/** One length of stock as it lies on the bench: pieces in sawing order, the cuts marked, what stays over hatched. The list under it says the same. */
import type { BenchCut, BenchStick } from "../../core/bench-plan";
import { sayOnTape } from "../../core/say-quantity";
import { drawing, element } from "../element";
import { count, type Units } from "../words";

/** Lengths of one stock that are cut alike. */
export type AlikeSticks = readonly [BenchStick, ...BenchStick[]];

export function benchStrip(alike: AlikeSticks, units: Units): HTMLElement {
  const [stick] = alike;
  const times = alike.length === 1 ? "" : `${alike.length} × `;
  const over = stick.left < LEAST_LEFT ? "nothing over" : `${sayOnTape({ units }, stick.left)} over${alike.length === 1 ? "" : " each"}`;
  return element("li", { class: "stick" },
    element("p", { class: "stick__head" }, element("span", { class: "stick__stock" }, `${times}${stick.stock.name}`), ` ${sayOnTape({ units }, stick.stock.length)}, ${over}`),
    stripDrawing(stick, units),
    element("ol", { class: "stick__cuts" }, ...stick.cuts.map((cut, index) => cutLine(cut, alike.map(({ cuts }) => cuts[index]), units))));
}

/** Thinner than a saw cut is nothing. */
const LEAST_LEFT = 0.0016;

/** Which runs a piece is for, when it is sawn from several lengths alike. */
const MOST_RUNS = 3;

function cutLine({ piece }: BenchCut, alike: readonly (BenchCut | undefined)[], units: Units): HTMLElement {
  const runs = alike.flatMap((cut) => (cut ? [`${cut.piece.car} run ${cut.piece.run.number}`] : []));
  const more = runs.length - MOST_RUNS;
  const estimated = alike.some((cut) => cut?.piece.run.basis === "estimated") ? ", estimated" : "";
  return element("li", {}, element("span", { class: "stick__length" }, sayOnTape({ units }, piece.length)), ` ${runs.slice(0, MOST_RUNS).join(", ")}${more > 0 ? ` and ${more} more` : ""}${estimated}`);
}

const WIDTH = 300;
const [TOP, BOTTOM, HEIGHT] = [10, 28, 34];
/** Room for three letters. */
const ROOM_FOR_NUMBER = 11;
/** Of one letter of a length. */
const LETTER = 5.4;

function stripDrawing({ stock, cuts, used, left }: BenchStick, units: Units): SVGSVGElement {
  const at = (length: number): number => Math.round((length / stock.length) * WIDTH * 10) / 10;
  const rest = at(used);
  return drawing("svg", { class: "stick__drawing", viewBox: `-1 0 ${WIDTH + 2} ${HEIGHT}`, "aria-hidden": true, focusable: "false" },
    left < LEAST_LEFT ? undefined : drawing("path", { class: "stick__over", d: hatch(rest, WIDTH) }),
    left < LEAST_LEFT ? undefined : drawing("path", { class: "stick__wall", d: `M${rest} ${TOP}H${WIDTH}V${BOTTOM}H${rest}` }),
    ...cuts.flatMap((cut, index) => pieceDrawing(cut, { number: index + 1, from: at(cut.from), to: at(cut.to), units })),
    ...cuts.filter(({ to }) => to < stock.length - LEAST_LEFT).map(({ to }) => sawMark(at(to))));
}

interface Drawn {
  readonly number: number;
  readonly from: number;
  readonly to: number;
  readonly units: Units;
}

/** Number and length inside while there is room; the number alone in a short piece; nothing in one shorter still. */
function pieceDrawing({ piece: { run, length } }: BenchCut, { number, from, to, units }: Drawn): (SVGElement | undefined)[] {
  const said = `${number}:  ${sayOnTape({ units }, length)}`;
  const text = to - from > said.length * LETTER + 4 ? said : to - from > ROOM_FOR_NUMBER ? String(number) : "";
  return [
    drawing("path", { class: `stick__wall stick__piece${run.basis === "estimated" ? " stick__wall--estimated" : ""}`, d: `M${from} ${TOP}H${to}V${BOTTOM}H${from}z` }),
    text === "" ? undefined : drawing("text", { class: "stick__text", x: (from + to) / 2, y: BOTTOM - 5.5, "text-anchor": "middle" }, text),
  ];
}

/** A saw's tooth over the tube and the line it cuts. */
const sawMark = (x: number): SVGElement => drawing("path", { class: "stick__saw", d: `M${x - 3.5} 1.5H${x + 3.5}L${x} ${TOP - 2}zM${x} ${TOP - 2}V${HEIGHT - 1}` });

function hatch(from: number, to: number): string {
  const lines: string[] = [];
  for (let x = from + 4; x < to + (BOTTOM - TOP); x += 7) {
    const [low, high] = [x - (BOTTOM - TOP), x];
    const [startX, startY] = low < from ? [from, TOP + (x - from)] : [low, BOTTOM];
    const [endX, endY] = high > to ? [to, TOP + (x - to)] : [high, TOP];
    if (startX < endX) lines.push(`M${startX.toFixed(1)} ${startY.toFixed(1)}L${endX.toFixed(1)} ${endY.toFixed(1)}`);
  }
  return lines.join("");
}

/** Sticks cut alike stand together, so that a long plan stays short. */
export function alikeSticks(sticks: readonly BenchStick[]): readonly AlikeSticks[] {
  const groups = new Map<string, [BenchStick, ...BenchStick[]]>();
  for (const stick of sticks) {
    const key = [stick.stock.name, ...stick.cuts.map(({ piece }) => piece.length.toFixed(5))].join("|");
    const group = groups.get(key);
    if (group) group.push(stick);
    else groups.set(key, [stick]);
  }
  return [...groups.values()];
}

export const saySticks = (sticks: readonly BenchStick[]): string => {
  const counts = new Map<string, number>();
  for (const { stock } of sticks) counts.set(stock.name, (counts.get(stock.name) ?? 0) + 1);
  return [...counts].map(([name, number]) => `${number} × ${name}`).join(", ") || count(0, "length");
};
