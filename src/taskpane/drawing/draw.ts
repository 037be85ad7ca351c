/** Draws a plan as SVG: single strokes of a pencil, a pair of ticks for each nut. Attributes and classes only, for a strict content security policy. */
import { drawing } from "../element";
import { severityPaths } from "../marks";
import { BADGE, NOSE, TYRE } from "./measures";
import type { Badge, Box, Label, PlacedLine, PlacedPart, PlacedWheel, Plan, Point, Tag } from "./placed";
import { isLeft } from "./links";
import { onLine, onPart, onWheel } from "./faults";
import { distance, round, say, stroke } from "./pencil";
import type { Sketch } from "./sketch";

export interface DrawnPlan {
  readonly content: SVGSVGElement;
  /** Moved and scaled by the view; upright in print. */
  readonly sheet: SVGGElement;
}

/** @param description the plan in words, for those who do not see it */
export function drawPlan(sketch: Sketch, plan: Plan, description: string): DrawnPlan {
  const sheet = drawing("g", { class: "sketch__sheet" },
    drawing("path", { class: "sketch__body", d: bodyPath(plan) }),
    ...plan.legend.map(({ circuit, from, to }) => drawing("path", { class: `sketch__line sketch__line--${circuit}`, d: `M${say(from)}L${say(to)}` })),
    ...plan.lines.map(drawLine),
    ...plan.wheels.map(drawWheel),
    ...plan.parts.map(drawPart),
    ...plan.tags.map(drawTag),
    ...plan.labels.map(drawLabel),
    ...plan.badges.map(drawBadge));
  const content = drawing("svg", { class: "sketch", viewBox: `0 0 ${round(plan.width)} ${round(plan.height)}`, role: "img", "aria-labelledby": "sketch-title sketch-description", focusable: "false" },
    drawing("title", { id: "sketch-title" }, `Brake lines of ${sketch.name}, seen from above`),
    drawing("desc", { id: "sketch-description" }, description),
    sheet);
  return { content, sheet };
}

/** The outline of the body, lightly, so that front and rear are told at a glance. */
function bodyPath({ width, height }: Plan): string {
  const [left, right, top, bottom] = [BODY, width - BODY, BODY + NOSE, height - BODY];
  return `M${left} ${top + ROUND}Q${left} ${top} ${left + ROUND} ${top - 1}C${round(width * 0.3)} ${top - NOSE} ${round(width * 0.7)} ${top - NOSE} ${right - ROUND} ${top - 1}Q${right} ${top} ${right} ${top + ROUND}V${bottom - ROUND}Q${right} ${bottom} ${right - ROUND} ${bottom}H${left + ROUND}Q${left} ${bottom} ${left} ${bottom - ROUND}Z`;
}
const BODY = 2;
const ROUND = 15;

function drawLine({ line, points }: PlacedLine): SVGGElement {
  const direct = line.joint.by === "direct";
  const kind = direct ? "sketch__line--direct" : line.run ? "" : "sketch__line--outside";
  const path = roundedPath(points);
  return drawing("g", { class: "sketch__run", "data-line": line.index, "data-key": onLine(line.index) },
    drawing("path", { class: "sketch__gap", d: path }),
    drawing("path", { class: "sketch__reach", d: path }),
    drawing("path", { class: `sketch__line sketch__line--${line.circuit} ${kind}`, d: path }),
    ...(direct || !line.run ? [] : [ticksAt(points, line.ends[0].fits), ticksAt([...points].reverse(), line.ends[1].fits)]),
    direct ? undefined : flowMark(points));
}

/** Bends of tube, not corners, and between them strokes that bow a little, as a hand draws them. */
function roundedPath(points: readonly Point[]): string {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return "";
  let at = first;
  const corners = points.slice(1, -1).map((point, index) => {
    const [before, after] = [points[index] ?? point, points[index + 2] ?? point];
    const radius = Math.min(BEND, distance(before, point) / 2, distance(point, after) / 2);
    const [from, to] = [toward(point, before, radius), toward(point, after, radius)];
    const path = `${stroke(at, from)}Q${say(point)} ${say(to)}`;
    at = to;
    return path;
  });
  return `M${say(first)}${corners.join("")}${stroke(at, last)}`;
}
const BEND = 9;

function toward(from: Point, to: Point, by: number): Point {
  const length = distance(from, to) || 1;
  return { x: from.x + ((to.x - from.x) * by) / length, y: from.y + ((to.y - from.y) * by) / length };
}

/** Two strokes across the line just outside the port, a little aslant as a hand makes them; crossed out where no nut fits. */
function ticksAt(points: readonly Point[], fits: boolean): SVGPathElement {
  const [at, next] = [points[0], points.find((point, index) => index > 0 && distance(point, points[0] ?? point) > 0.5)];
  if (!at || !next) return drawing("path", { d: "" });
  const upright = Math.abs(next.x - at.x) < Math.abs(next.y - at.y);
  const tick = (along: number): string => {
    const middle = toward(at, next, along);
    return upright ? `M${say({ x: middle.x - 4, y: middle.y + 0.8 })}L${say({ x: middle.x + 4, y: middle.y - 0.8 })}` : `M${say({ x: middle.x - 0.8, y: middle.y + 4 })}L${say({ x: middle.x + 0.8, y: middle.y - 4 })}`;
  };
  return drawing("path", { class: fits ? "sketch__nut" : "sketch__nut sketch__nut--none", d: fits ? `${tick(2.5)}${tick(5.5)}` : crossAt(toward(at, next, 4)) });
}

const crossAt = ({ x, y }: Point): string => `M${say({ x: x - 4, y: y - 4 })}L${say({ x: x + 4, y: y + 4 })}M${say({ x: x + 4, y: y - 4 })}L${say({ x: x - 4, y: y + 4 })}`;

/** An open arrowhead on the longest straight, the way the fluid is pressed. */
function flowMark(points: readonly Point[]): SVGPathElement | undefined {
  const straights = points.slice(1).map((to, index) => ({ from: points[index] ?? to, to }));
  const longest = straights.reduce<(typeof straights)[number] | undefined>((best, one) => (!best || distance(one.from, one.to) > distance(best.from, best.to) + 0.1 ? one : best), undefined);
  if (!longest || distance(longest.from, longest.to) < 24) return undefined;
  const tip = toward(longest.from, longest.to, distance(longest.from, longest.to) * 0.62);
  const back = toward(tip, longest.from, 5);
  const [across, along] = [{ x: tip.y - back.y, y: back.x - tip.x }, 0.62];
  return drawing("path", { class: "sketch__flow", d: `M${say({ x: back.x + across.x * along, y: back.y + across.y * along })}L${say(tip)}L${say({ x: back.x - across.x * along, y: back.y - across.y * along })}` });
}

function drawPart({ part, box, ports }: PlacedPart): SVGGElement {
  const { kind } = part.instance.component;
  return drawing("g", { class: `sketch__part sketch__part--${kind}${part.instance.proposed ? " sketch__part--proposed" : ""}${part.placed ? "" : " sketch__part--loose"}`, "data-key": onPart(part.label) },
    drawing("title", {}, `${part.label}: ${part.kind}${part.instance.place === undefined ? "" : ` at ${part.instance.place}`}`),
    ...(kind === "hose" ? hosesOf(box, ports) : outlinesOf(kind, box)),
    ...ports.map(({ port, at }) => drawing("circle", { class: `sketch__port sketch__port--${port.state}`, cx: round(at.x), cy: round(at.y), r: port.state === "joined" ? 2 : 3.2 })));
}

/** Each kind by its own hand: a master with its cup, a tee with round ends, the rest as boxes whose strokes overrun. */
function outlinesOf(kind: string, box: Box): SVGElement[] {
  const { x, y, width, height } = box;
  const [right, bottom] = [x + width, y + height];
  const sheet = drawing("rect", { class: "sketch__paper", x: round(x), y: round(y), width: round(width), height: round(height), rx: kind === "tee" || kind === "union" ? 12 : 2 });
  if (kind === "tee" || kind === "union") return [sheet, drawing("rect", { class: "sketch__outline", x: round(x), y: round(y), width: round(width), height: round(height), rx: 12 })];
  const corners: readonly (readonly [Point, Point])[] = [
    [{ x: x - OVERRUN, y }, { x: right + OVERRUN, y }], [{ x: right, y: y - OVERRUN }, { x: right, y: bottom + OVERRUN }],
    [{ x: right + OVERRUN, y: bottom }, { x: x - OVERRUN, y: bottom }], [{ x, y: bottom + OVERRUN }, { x, y: y - OVERRUN }],
  ];
  const strokes = corners.map(([from, to]) => `M${say(from)}${stroke(from, to)}`).join("");
  const cup = kind === "master" ? `M${say({ x: x + 4, y: y + 4 })}L${say({ x: right - 4, y: y + 4 })}L${say({ x: right - 4, y: y + 11 })}M${say({ x: x + 4, y: y + 4 })}L${say({ x: x + 4, y: y + 11 })}` : "";
  return [sheet, drawing("path", { class: "sketch__outline", d: strokes + cup })];
}
const OVERRUN = 2.5;

/** From where the line comes in to each end where it goes out. */
function hosesOf(box: Box, ports: PlacedPart["ports"]): SVGElement[] {
  const [start, ...ends] = ports.map(({ at }) => at);
  const sheet = drawing("rect", { class: "sketch__paper", x: round(box.x), y: round(box.y), width: round(box.width), height: round(box.height) });
  return [sheet, ...ends.map((end) => drawing("path", { class: "sketch__hose", d: start ? `M${say(start)}C${round(start.x + SAG)} ${round(start.y + (end.y - start.y) / 3)} ${round(end.x - SAG)} ${round(end.y - (end.y - start.y) / 3)} ${say(end)}` : "" }))];
}
const SAG = 12;

function drawWheel({ wheel: { wheel, hose, brake }, tyre, hose: way }: PlacedWheel): SVGGElement {
  const [start, , end] = way;
  const inner = isLeft(wheel) ? tyre.x + tyre.width : tyre.x;
  const out = isLeft(wheel) ? 1 : -1;
  const middle = tyre.y + tyre.height / 2;
  const disc = brake?.component.kind === "drum" ? `M${inner + out * 3} ${middle - 12}h${out * 5}v24h${out * -5}` : `M${inner + out * 4} ${middle - 15}v30M${inner + out * 2} ${middle - 6}h${out * 6}v12h${out * -6}`;
  return drawing("g", { class: "sketch__wheel", "data-key": onWheel(wheel) },
    drawing("rect", { class: "sketch__paper", x: round(tyre.x), y: round(tyre.y), width: TYRE.width, height: TYRE.height, rx: 6 }),
    drawing("rect", { class: "sketch__outline", x: round(tyre.x), y: round(tyre.y), width: TYRE.width, height: TYRE.height, rx: 6 }),
    drawing("path", { class: "sketch__outline", d: disc }),
    start && end ? drawing("path", { class: hose ? "sketch__hose" : "sketch__stub", d: hose ? hosePath(start, end) : `M${say(start)}H${round(end.x)}V${round(end.y)}` }) : undefined);
}

/** A hose hangs in a loop. */
const hosePath = (start: Point, end: Point): string => `M${say(start)}C${round(end.x + (end.x - start.x) * 0.1)} ${round(start.y - (end.y - start.y) * 0.5)} ${round(end.x + (end.x - start.x) * 0.35)} ${round(start.y + (end.y - start.y) * 0.3)} ${say(end)}`;

function drawTag({ number, line, box }: Tag): SVGGElement {
  return drawing("g", { class: "sketch__tag", "data-line": line.index, "data-key": onLine(line.index) },
    drawing("circle", { class: `sketch__ring sketch__ring--${line.circuit}`, cx: round(box.x + box.width / 2), cy: round(box.y + box.height / 2), r: box.width / 2 - 0.7 }),
    drawing("text", { class: "sketch__text sketch__text--tag", x: round(box.x + box.width / 2), y: round(box.y + box.height / 2 + 3.2), "text-anchor": "middle" }, String(number)));
}

const drawLabel = ({ text, writing, x, y, anchor, owner }: Label): SVGTextElement =>
  drawing("text", { class: `sketch__text sketch__text--${writing}`, x: round(x), y: round(y), "text-anchor": anchor === "start" ? undefined : anchor, "data-key": owner === "" ? undefined : owner }, text);

function drawBadge({ letter, severity, box }: Badge): SVGGElement {
  const middle = box.y + box.height / 2;
  return drawing("g", { class: `sketch__badge mark mark--${severity}`, "data-fault": letter },
    drawing("rect", { class: "sketch__reach", x: round(box.x), y: round(box.y), width: box.width, height: box.height }),
    drawing("g", { transform: `translate(${round(box.x + 1)} ${round(middle - BADGE.mark / 2)}) scale(${BADGE.mark / 20})` }, ...severityPaths[severity].map((d) => drawing("path", { d }))),
    drawing("text", { class: "sketch__text sketch__text--letter", x: round(box.x + BADGE.mark + 3), y: round(middle + 3.6) }, letter));
}
