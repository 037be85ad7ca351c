/** A sheet of squared paper with two axes drawn by hand, and writing that keeps clear of what is drawn. Figures in, SVG out. */
import { drawing } from "../element";
import { decimalMark } from "../locale";
import { asTyped } from "../typed-number";
import { round, stroke } from "../drawing/pencil";
import { ASCENT, DESCENT, textWidth, type Lettering } from "../drawing/text-width";
import { clipped, type Spot, type Window } from "./clip";

export interface PaperPlan {
  readonly window: Window;
  /** Between two numbered lines of each axis. */
  readonly steps: readonly [x: number, y: number];
  readonly height: number;
  readonly titles: readonly [x: string, y: string];
}

export interface Paper {
  readonly plan: PaperPlan;
  /** A chain of straight lines, cut at the edges. */
  line(kind: string, points: readonly Spot[]): SVGPathElement;
  /** Short strokes to the left of the way along a chain: the side where one is not to be. */
  hatch(kind: string, points: readonly Spot[]): SVGPathElement;
  /** A mark of its own shape at a place, which writing that comes after it leaves free. */
  mark(kind: string, shape: Shape, at: Spot): SVGPathElement;
  /** Writing near one of some places, on the side where it hides least; among equals the first. */
  write(kind: string, text: string, near: readonly Spot[], sides: readonly Side[]): SVGTextElement;
  /** Lets writing keep clear of a chain. */
  keepClear(points: readonly Spot[]): void;
  readonly sheet: readonly SVGElement[];
}

export type Shape = "ring" | "cross" | "diamond" | "dot";
export type Side = "above" | "below" | "left" | "right" | "above left" | "above right" | "below left" | "below right";

/** Width of every plot, in units of the drawing: about the pixels of a narrow pane, so that letters keep their size there. */
export const PAPER_WIDTH = 300;
const MARGIN = { left: 28, right: 10, top: 32, bottom: 32 };
const LETTERS: Lettering = { size: 10.5 };

export function paperOf(plan: PaperPlan): Paper {
  const { x, y } = plan.window;
  const [width, height] = [PAPER_WIDTH - MARGIN.left - MARGIN.right, plan.height - MARGIN.top - MARGIN.bottom];
  const place = ([a, b]: Spot): Point => ({ x: MARGIN.left + ((a - x[0]) / (x[1] - x[0])) * width, y: MARGIN.top + height - ((b - y[0]) / (y[1] - y[0])) * height });
  const chains = (points: readonly Spot[]): Point[][] => clipped(points, plan.window).map((chain) => chain.map(place));
  const writing = writer({ left: MARGIN.left + 1, right: PAPER_WIDTH - 1, top: 14, bottom: MARGIN.top + height - 1 });
  return {
    plan,
    line: (kind, points) => drawing("path", { class: `plot__line plot__line--${kind}`, d: chains(points).map(pathOf).join("") }),
    hatch: (kind, points) => drawing("path", { class: `plot__hatch plot__hatch--${kind}`, d: chains(points).map(hatchPath).join("") }),
    mark: (kind, shape, at) => {
      writing.keepOff(place(at));
      return drawing("path", { class: `plot__mark plot__mark--${kind}`, d: shapePath(shape, place(at)) });
    },
    write: (kind, text, near, sides) => writing.write(kind, text, near.map(place), sides),
    keepClear: (points) => { for (const chain of chains(points)) writing.keepClear(chain); },
    sheet: sheetOf(plan, place),
  };
}

interface Point {
  readonly x: number;
  readonly y: number;
}

const at = ({ x, y }: Point): string => `${round(x)} ${round(y)}`;
const pathOf = (chain: readonly Point[]): string => `M${chain.map(at).join("L")}`;

/** Squares lightly, every second one numbered; the axes are strokes that overrun and bow a little. */
function sheetOf({ window: { x, y }, steps, titles }: PaperPlan, place: (spot: Spot) => Point): SVGElement[] {
  const [columns, rows] = [gridOf(x, steps[0] / 2), gridOf(y, steps[1] / 2)];
  const rule = [...columns.map((a) => [[a, y[0]], [a, y[1]]] as const), ...rows.map((b) => [[x[0], b], [x[1], b]] as const)].map(([from, to]) => pathOf([place(from), place(to)])).join("");
  const [corner, right, top] = [place([x[0], y[0]]), place([x[1], y[0]]), place([x[0], y[1]])];
  const axes = [
    [{ x: corner.x - 4, y: corner.y }, { x: right.x + 6, y: right.y }],
    [{ x: corner.x, y: corner.y + 4 }, { x: top.x, y: top.y - 6 }],
  ] as const;
  const number = (text: string, spot: Point, anchor: "middle" | "end"): SVGTextElement => drawing("text", { class: "plot__text plot__text--number", x: round(spot.x), y: round(spot.y), "text-anchor": anchor }, text);
  return [
    drawing("path", { class: "plot__rule", d: rule }),
    drawing("path", { class: "plot__axis", d: axes.map(([from, to]) => `M${at(from)}${stroke(from, to)}`).join("") }),
    ...gridOf(x, steps[0]).map((a) => { const spot = place([a, y[0]]); return number(sayTick(a), { x: spot.x, y: spot.y + 14 }, "middle"); }),
    ...gridOf(y, steps[1]).filter((b) => b > y[0]).map((b) => { const spot = place([x[0], b]); return number(sayTick(b), { x: spot.x - 6, y: spot.y + 3.5 }, "end"); }),
    drawing("text", { class: "plot__text plot__text--title", x: round(right.x + 6), y: round(right.y + 28), "text-anchor": "end" }, titles[0]),
    drawing("text", { class: "plot__text plot__text--title", x: 2, y: 10 }, titles[1]),
  ];
}

const sayTick = (value: number): string => asTyped(Number(value.toFixed(2)), decimalMark());
const gridOf = ([from, to]: readonly [number, number], step: number): number[] => Array.from({ length: Math.floor((to - from) / step + 1e-9) + 1 }, (_, i) => from + i * step);

const HATCH = { every: 9, long: 6 };

/** Strokes aslant, at even distances along the chain, on its left as seen from the paper. */
function hatchPath(chain: readonly Point[]): string {
  let path = "";
  let left = HATCH.every / 2;
  for (let i = 0; i + 1 < chain.length; i++) {
    const [from, to] = [chain[i] as Point, chain[i + 1] as Point];
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const [along, across] = [{ x: (to.x - from.x) / length, y: (to.y - from.y) / length }, { x: (to.y - from.y) / length, y: (from.x - to.x) / length }];
    for (; left < length; left += HATCH.every) {
      const foot = { x: from.x + along.x * left, y: from.y + along.y * left };
      path += `M${at(foot)}L${at({ x: foot.x + (across.x - along.x * 0.6) * HATCH.long, y: foot.y + (across.y - along.y * 0.6) * HATCH.long })}`;
    }
    left -= length;
  }
  return path;
}

function shapePath(shape: Shape, { x, y }: Point): string {
  switch (shape) {
    case "ring": return `M${round(x - 4.5)} ${round(y)}a4.5 4.5 0 1 0 9 0a4.5 4.5 0 1 0 -9 0z`;
    case "dot": return `M${round(x - 3)} ${round(y)}a3 3 0 1 0 6 0a3 3 0 1 0 -6 0z`;
    case "diamond": return `M${round(x)} ${round(y - 4)}l4 4l-4 4l-4 -4z`;
    case "cross": return `M${round(x - 3.6)} ${round(y - 3.6)}l7.2 7.2m0 -7.2l-7.2 7.2`;
    default: return shape satisfies never;
  }
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Up and down from its place, where that is taken. */
const SLIDES = [0, -12, 12, -24, 24, -36, 36, -48, 48];

/** Clear of a mark. */
const GAP = 7;

interface Writer {
  keepClear(chain: readonly Point[]): void;
  keepOff(mark: Point): void;
  write(kind: string, text: string, near: readonly Point[], sides: readonly Side[]): SVGTextElement;
}

function writer(edges: Box): Writer {
  const [boxes, spots]: [Box[], Point[]] = [[], []];
  const hides = (box: Box): number =>
    100 * boxes.filter((other) => box.left < other.right && other.left < box.right && box.top < other.bottom && other.top < box.bottom).length +
    100 * [box.left < edges.left, box.right > edges.right, box.top < edges.top, box.bottom > edges.bottom].filter(Boolean).length +
    spots.filter((spot) => spot.x > box.left && spot.x < box.right && spot.y > box.top && spot.y < box.bottom).length;
  return {
    keepClear: (chain) => { spots.push(...dense(chain)); },
    keepOff: ({ x, y }) => { boxes.push({ left: x - 4, right: x + 4, top: y - 4, bottom: y + 4 }); },
    write: (kind, text, near, sides) => {
      const tried = near.flatMap((spot) => sides.map((side) => boxAt(text, spot, side))).flatMap((box) => SLIDES.map((by) => ({ box: { ...box, top: box.top + by, bottom: box.bottom + by }, slid: by })))
        .map(({ box, slid }) => ({ box, cost: hides(box) + Math.abs(slid) / 4 }));
      const box = tried.reduce((best, one) => (one.cost < best.cost ? one : best)).box;
      boxes.push(box);
      return drawing("text", { class: `plot__text plot__text--${kind}`, x: round(box.left), y: round(box.top + LETTERS.size * ASCENT) }, text);
    },
  };
}

function boxAt(text: string, { x, y }: Point, side: Side): Box {
  const [width, height] = [textWidth(text, LETTERS), LETTERS.size * (ASCENT + DESCENT)];
  const straight = side === "above" || side === "below";
  const left = side.includes("left") ? x - width - (side === "left" ? GAP : 4) : side.includes("right") ? x + (side === "right" ? GAP : 4) : x - width / 2;
  const top = side.startsWith("above") ? y - height - (straight ? GAP : 3) : side.startsWith("below") ? y + (straight ? GAP : 3) : y - height / 2;
  return { left, right: left + width, top, bottom: top + height };
}

/** Spots on a chain near enough to one another that no writing slips between. */
function dense(chain: readonly Point[]): Point[] {
  return chain.slice(1).flatMap((to, i) => {
    const from = chain[i] as Point;
    const parts = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 4));
    return Array.from({ length: parts }, (_, part) => ({ x: from.x + ((to.x - from.x) * part) / parts, y: from.y + ((to.y - from.y) * part) / parts }));
  });
}
