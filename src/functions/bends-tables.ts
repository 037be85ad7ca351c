/** Bends: reads the points of a line, lays out what a bender does, one row a bend. */
import { isBlank, isCellValue, numberOf, sayCell } from "../catalogue/cell";
import { triplesOf } from "../catalogue/triples";
import { arcOf, developedLength, setBackOf, type BentLine } from "../core/bends/bends";
import { bendsThrough, straightsOf, type BendFinding } from "../core/bends/read-points";
import type { Vector } from "../core/bends/vector";
import { inInches, inMillimetres, metres, type Metres } from "../core/quantity";
import type { CellValue } from "../workbook/document";
import { badValue } from "./answer";
import { readNumber, readUnit } from "./arguments";
import { laidOut, rounded, text, type Column } from "./columns";
import { inUnit, type LengthUnitName, type Range } from "./range-rows";

export interface BendsArguments {
  readonly points: Range;
  readonly radius: unknown;
  readonly unit: unknown;
  readonly grip: unknown;
  readonly leastRadius: unknown;
}

/** One row a bend, then the straight after the last one, then the whole. */
export function bendsTable({ points, radius, unit, grip, leastRadius }: BendsArguments): CellValue[][] {
  const named = readUnit(unit);
  const read = (name: string, value: unknown): Metres | undefined => {
    const number = readNumber(name, value);
    const length = number === undefined ? undefined : inUnit(named)(number);
    if (length !== undefined && length > LARGEST) throw badValue(`${name}: read ${String(value)} ${named}; accepted: up to 100 m.`);
    return length;
  };
  const bendRadius = read("radius", radius);
  if (bendRadius === undefined) throw badValue(`radius: read nothing; accepted: the radius of the bends in ${named}.`);
  const { line, legEnds, findings } = bendsThrough(readPoints(points, named), bendRadius, { grip: read("grip", grip), leastRadius: read("least radius", leastRadius) });
  const rows: BendRow[] = line ? bendRows(line, legEnds, findings) : [{ bend: "total", problem: sayFindings(findings) }];
  return laidOut(bendColumns, rows, named === "in" ? "us" : "metric");
}

/** No bender and no tube has a larger radius or grip [m]. */
const LARGEST = 100;

export interface BendRow {
  readonly bend: number | "end" | "total";
  readonly straight?: Metres;
  readonly rotation?: number;
  readonly angle?: number;
  readonly radius?: Metres;
  readonly arc?: Metres;
  readonly setBack?: Metres;
  readonly starts?: Metres;
  readonly developed?: Metres;
  readonly problem: string;
}

/** Four digits, in millimetres too: bends add up. */
const fine = (heading: string, of: (row: BendRow) => Metres | undefined): Column<BendRow> => ({
  heading: (units) => `${heading} (${units === "us" ? "in" : "mm"})`,
  cell: (row, units) => {
    const value = of(row);
    return value === undefined ? "" : rounded((units === "us" ? inInches : inMillimetres)(value), 4);
  },
});

const degrees = (angle: number | undefined): number | undefined => (angle === undefined ? undefined : rounded((angle * 180) / Math.PI, 3));

export const bendColumns: readonly Column<BendRow>[] = [
  text("Bend", ({ bend }) => bend),
  fine("Straight", ({ straight }) => straight),
  text("Rotation (°)", ({ rotation }) => degrees(rotation)),
  text("Angle (°)", ({ angle }) => degrees(angle)),
  fine("Radius", ({ radius }) => radius),
  fine("Arc", ({ arc }) => arc),
  fine("Set-back", ({ setBack }) => setBack),
  fine("Starts at", ({ starts }) => starts),
  fine("Developed", ({ developed }) => developed),
  text("Problem", ({ problem }) => problem),
];

/** `Starts at` is where the bend begins and `Developed` where it ends, both along the straight tube from its first end. */
function bendRows(line: BentLine, legEnds: readonly number[], findings: readonly BendFinding[]): BendRow[] {
  const shown = new Set<BendFinding>();
  const problemsAt = (point: number | undefined): string => {
    const here = findings.filter((finding) => finding.point === point && legEnds.includes(finding.point));
    here.forEach((finding) => shown.add(finding));
    return sayFindings(here);
  };
  let along = 0;
  const bends = line.bends.map(({ straight, rotation, angle, radius }, index): BendRow => {
    const starts = metres(along + straight);
    const arc = arcOf(angle, radius);
    along = starts + arc;
    return { bend: index + 1, straight, rotation, angle, radius, arc, setBack: setBackOf(angle, radius), starts, developed: metres(along), problem: problemsAt(legEnds[index]) };
  });
  const developed = developedLength(line);
  const end: BendRow = { bend: "end", straight: line.lastStraight, developed, problem: problemsAt(legEnds.at(-1)) };
  const straight = metres(straightsOf(line).reduce((sum, one) => sum + one, 0));
  const arc = metres(line.bends.reduce((sum, bend) => sum + arcOf(bend.angle, bend.radius), 0));
  return [...bends, end, { bend: "total", straight, arc, developed, problem: sayFindings(findings.filter((finding) => !shown.has(finding))) }];
}

const sayFindings = (findings: readonly BendFinding[]): string => findings.map(({ code, point, says }) => (code === "points-too-few" ? says : `point ${point}: ${says}`)).join("; ");

/** Three columns of x, y, z, with or without headings, or cells that hold triples as text: `0 0 0; 4 0 0; 4 3 0`. */
function readPoints(range: Range, unit: LengthUnitName): Vector[] {
  const points = withoutBlankEnd(range.length > 0 && range.every((row) => row.length < 3) ? range.flat().flatMap(triplesIn) : range.filter((row, index) => index > 0 || !isHeading(row)).map((row) => row.slice(0, 3)));
  if (points.length === 0) throw badValue("points: read nothing; accepted: three columns x, y, z, or text such as 0 0 0; 4 0 0; 4 3 0.");
  const toMetres = inUnit(unit);
  return points.map((point): Vector => [toMetres(coordinate(point[0])), toMetres(coordinate(point[1])), toMetres(coordinate(point[2]))]);
}

const isHeading = (row: readonly unknown[]): boolean => row.some((cell) => typeof cell === "string" && cell.trim() !== "" && numberOf(cell) === undefined);

const triplesIn = (cell: unknown): readonly (readonly string[])[] => (isBlank(cell) ? [] : triplesOf(sayCell(cell)));

/** Blank rows arrive as zeros; a line that comes back to the origin does not exist, so at the end they are no points. */
function withoutBlankEnd(points: readonly (readonly unknown[])[]): readonly (readonly unknown[])[] {
  let end = points.length;
  while (end > 1 && points[end - 1]?.every((cell) => isBlank(cell) || numberOf(cell) === 0)) end -= 1;
  return points.slice(0, end);
}

const coordinate = (cell: unknown): number => (isBlank(cell) ? 0 : isCellValue(cell) ? (numberOf(cell) ?? NaN) : NaN);
