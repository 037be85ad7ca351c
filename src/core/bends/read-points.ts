/** Reads the points of a line as somebody measured them: what cannot be bent as it stands is mended where that is harmless, and always named. */
import type { Metres } from "../quantity";
import { bendsOf, type BentLine } from "./bends";
import { angleBetween, difference, lengthOf, type Vector } from "./vector";

/** What the shop's bender and the tube ask for. */
export interface BendLimits {
  /** Least straight that the bender can hold; undefined when not known. */
  readonly grip?: Metres | undefined;
  /** Least radius of the tube; undefined when not known. */
  readonly leastRadius?: Metres | undefined;
}

export const bendFindings = {
  "points-too-few": "a line needs at least two points apart from one another",
  "point-not-a-number": "a coordinate is not a number: the point is left out",
  "point-too-far": "a coordinate is beyond 100 m: the point is left out",
  "point-twice": "the same point as the one before: left out",
  "legs-in-line": "the legs before and after are in line: no bend here",
  "leg-turns-back": "the leg turns right back on the one before: this cannot be bent",
  "straight-negative": "the bends at its ends overlap: the leg is shorter than their set-backs",
  "straight-below-grip": "the straight is shorter than the bender's grip",
  "radius-below-least": "the radius is below the least of the tube",
} as const;
export type BendCode = keyof typeof bendFindings;

export interface BendFinding {
  readonly code: BendCode;
  /** Of the point as given, from 1; of the leg for a straight, by the point it ends at. */
  readonly point: number;
  readonly says: string;
}

export interface ReadLine {
  /** Undefined when no line can be made of the points. */
  readonly line: BentLine | undefined;
  /** For each straight of the line, the number of the point its leg ends at. */
  readonly legEnds: readonly number[];
  readonly findings: readonly BendFinding[];
}

/** Points nearer than this are one [m]: a tenth of a millimetre is less than anyone measures. */
const SAME_POINT = 1e-4;
/** Farther than this is on no vehicle [m]; a unit or a decimal mark is wrong. */
const TOO_FAR = 100;
/** Legs within a tenth of a degree are in line. */
const IN_LINE = (0.1 * Math.PI) / 180;

/**
 * The bends through measured points, with everything that is wrong with them.
 * @param points [m]
 * @param radius of the centre line of every bend [m], above 0
 */
export function bendsThrough(points: readonly Vector[], radius: Metres, limits: BendLimits = {}): ReadLine {
  const findings: BendFinding[] = [];
  const note = (code: BendCode, point: number): void => void findings.push({ code, point, says: bendFindings[code] });
  const kept = withoutInLine(withoutRepeats(points.map((at, index) => ({ at, number: index + 1 })), note), note);
  const folded = kept.filter((_, index) => isReversal(kept, index));
  folded.forEach(({ number }) => note("leg-turns-back", number));
  if (kept.length < 2) note("points-too-few", 1);
  if (kept.length < 2 || folded.length > 0) return { line: undefined, legEnds: [], findings };
  const line = bendsOf(kept.map(({ at }) => at), radius);
  const legEnds = kept.slice(1).map(({ number }) => number);
  straightsOf(line).forEach((straight, leg) => {
    if (straight < -1e-9) note("straight-negative", legEnds[leg] ?? 0);
    else if (limits.grip !== undefined && straight < limits.grip - 1e-9) note("straight-below-grip", legEnds[leg] ?? 0);
  });
  if (limits.leastRadius !== undefined && radius < limits.leastRadius - 1e-9) line.bends.forEach((_, bend) => note("radius-below-least", legEnds[bend] ?? 0));
  return { line, legEnds, findings };
}

export const straightsOf = ({ bends, lastStraight }: BentLine): Metres[] => [...bends.map(({ straight }) => straight), lastStraight];

interface NumberedPoint {
  readonly at: Vector;
  readonly number: number;
}
type Note = (code: BendCode, point: number) => void;

function withoutRepeats(points: readonly NumberedPoint[], note: Note): NumberedPoint[] {
  const kept: NumberedPoint[] = [];
  for (const point of points) {
    const before = kept.at(-1);
    if (!point.at.every(Number.isFinite)) note("point-not-a-number", point.number);
    else if (point.at.some((one) => Math.abs(one) > TOO_FAR)) note("point-too-far", point.number);
    else if (before && lengthOf(difference(point.at, before.at)) < SAME_POINT) note("point-twice", point.number);
    else kept.push(point);
  }
  return kept;
}

function withoutInLine(points: readonly NumberedPoint[], note: Note): NumberedPoint[] {
  const kept: NumberedPoint[] = [];
  points.forEach((point, index) => {
    const [before, after] = [kept.at(-1), points[index + 1]];
    const inLine = before && after && angleBetween(difference(point.at, before.at), difference(after.at, point.at)) < IN_LINE;
    if (inLine) note("legs-in-line", point.number);
    else kept.push(point);
  });
  return kept;
}

function isReversal(points: readonly NumberedPoint[], index: number): boolean {
  const [before, point, after] = [points[index - 1], points[index], points[index + 1]];
  return before !== undefined && point !== undefined && after !== undefined && angleBetween(difference(point.at, before.at), difference(after.at, point.at)) > Math.PI - IN_LINE;
}
