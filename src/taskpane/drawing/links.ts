/** What each line goes between, once the rows of the parts are known. */
import type { Instance } from "../../core/assembly";
import type { Wheel } from "../../core/component";
import type { Row } from "./rows";
import type { Sketch, SketchEnd, SketchLine, SketchPart } from "./sketch";

export interface PartEnd {
  readonly part: SketchPart;
  readonly row: number;
  readonly end: SketchEnd;
}

export interface WheelEnd {
  readonly wheel: Wheel;
  readonly end: SketchEnd;
}

/** A line between two parts; the upper one is nearer the front of the car, whichever way the fluid goes. */
export interface Between {
  readonly line: SketchLine;
  readonly upper: PartEnd;
  readonly lower: PartEnd;
}

export interface ToWheel {
  readonly line: SketchLine;
  readonly from: PartEnd;
  readonly to: WheelEnd;
}

export interface WheelToWheel {
  readonly line: SketchLine;
  readonly ends: readonly [WheelEnd, WheelEnd];
}

export interface Links {
  readonly between: readonly Between[];
  readonly toWheel: readonly ToWheel[];
  readonly wheelToWheel: readonly WheelToWheel[];
}

export const isLeft = (wheel: Wheel): boolean => wheel.startsWith("L");
export const isFront = (wheel: Wheel): boolean => wheel.endsWith("F");

/** A joint inside one wheel's group, or from a part to itself, is no line of the drawing. */
export function linksOf({ lines }: Sketch, rows: readonly Row[]): Links {
  const partEnds = new Map<Instance, Omit<PartEnd, "end">>(rows.flatMap(({ parts }, row) => parts.map((part) => [part.instance, { part, row }] as const)));
  const between: Between[] = [];
  const toWheel: ToWheel[] = [];
  const wheelToWheel: WheelToWheel[] = [];
  for (const line of lines) {
    const [a, b] = line.ends.map((end) => endOf(partEnds, end));
    if (!a || !b) continue;
    if ("part" in a && "part" in b) {
      if (a.part !== b.part) between.push(a.row < b.row ? { line, upper: a, lower: b } : { line, upper: b, lower: a });
    } else if ("part" in a && "wheel" in b) toWheel.push({ line, from: a, to: b });
    else if ("wheel" in a && "part" in b) toWheel.push({ line, from: b, to: a });
    else if ("wheel" in a && "wheel" in b && a.wheel !== b.wheel) wheelToWheel.push({ line, ends: [a, b] });
  }
  return { between, toWheel, wheelToWheel };
}

function endOf(parts: ReadonlyMap<Instance, Omit<PartEnd, "end">>, end: SketchEnd): PartEnd | WheelEnd | undefined {
  const { wheel } = end.at.instance;
  if (wheel) return { wheel, end };
  const known = parts.get(end.at.instance);
  return known && { ...known, end };
}
