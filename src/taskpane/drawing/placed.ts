/** The finished plan: boxes, lines and writing with coordinates, nose of the car up. Units are those of measures.ts. */
import type { Severity } from "../../core/finding";
import { textWidth, ASCENT, DESCENT } from "./text-width";
import { BADGE, lettering, TAG, type Writing } from "./measures";
import type { SketchLine, SketchPart, SketchPort, SketchWheel } from "./sketch";

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Label {
  readonly text: string;
  readonly writing: Writing;
  readonly x: number;
  /** The baseline. */
  readonly y: number;
  readonly anchor: "start" | "middle" | "end";
  /** Room it takes at most. */
  readonly box: Box;
  readonly owner: string;
}

/** The number of a run in its ring. */
export interface Tag {
  readonly number: number;
  readonly line: SketchLine;
  readonly box: Box;
}

export interface Badge {
  readonly letter: string;
  readonly severity: Severity;
  readonly box: Box;
}

export interface PlacedPart {
  readonly part: SketchPart;
  readonly box: Box;
  readonly ports: readonly { readonly port: SketchPort; readonly at: Point; readonly edge: "top" | "bottom" | "left" | "right" }[];
}

export interface PlacedWheel {
  readonly wheel: SketchWheel;
  readonly tyre: Box;
  /** From the brake to where the line ends. */
  readonly hose: readonly Point[];
}

export interface PlacedLine {
  readonly line: SketchLine;
  /** In the order fluid meets them. */
  readonly points: readonly Point[];
}

export interface Legend {
  readonly circuit: SketchLine["circuit"];
  readonly from: Point;
  readonly to: Point;
}

export interface Plan {
  readonly width: number;
  readonly height: number;
  readonly parts: readonly PlacedPart[];
  readonly wheels: readonly PlacedWheel[];
  readonly lines: readonly PlacedLine[];
  readonly labels: readonly Label[];
  readonly tags: readonly Tag[];
  readonly badges: readonly Badge[];
  readonly legend: readonly Legend[];
}

export interface Written {
  readonly labels: readonly Label[];
  readonly tags?: readonly Tag[];
  readonly badges?: readonly Badge[];
}

/** @param owner key of what the writing belongs to */
export function label(text: string, writing: Writing, at: Point & { readonly anchor?: Label["anchor"]; readonly owner?: string }): Label {
  const { size } = lettering[writing];
  const width = textWidth(text, lettering[writing]);
  const anchor = at.anchor ?? "start";
  const x = anchor === "start" ? at.x : anchor === "end" ? at.x - width : at.x - width / 2;
  return { text, writing, x: at.x, y: at.y, anchor, owner: at.owner ?? "", box: { x, y: at.y - size * ASCENT, width, height: size * (ASCENT + DESCENT) } };
}

/** Marks side by side from a point on the left, their middle at its height. */
export const badgesAt = (faults: readonly { readonly letter: string; readonly finding: { readonly severity: Severity } }[], { x, y }: Point): Badge[] =>
  faults.map(({ letter, finding: { severity } }, index) => ({ letter, severity, box: { x: x + index * BADGE.width, y: y - BADGE.height / 2, width: BADGE.width - 2, height: BADGE.height } }));

export const tagAt = (line: SketchLine, number: number, { x, y }: Point): Tag => ({ line, number, box: { x, y: y - TAG / 2, width: TAG, height: TAG } });
