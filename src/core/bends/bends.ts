/** A bent line: from the points of its centre line to straights, rotations and bends, and back. */
import { metres, type Metres } from "../quantity";
import { angleBetween, cross, difference, dot, lengthOf, scaled, sum, turned, unitVector, type Vector } from "./vector";

/** One bend as a bender works it: push the straight through, turn the tube, bend. */
export interface Bend {
  /** Tube between the bend before and this one. */
  readonly straight: Metres;
  /** Turn of the tube about the direction it is pushed in, against the plane of the bend before [rad], right-handed, -π to π; 0 for the first. */
  readonly rotation: number;
  /** Change of direction [rad], 0 to π. */
  readonly angle: number;
  /** Of the centre line. */
  readonly radius: Metres;
}

export interface BentLine {
  readonly bends: readonly Bend[];
  /** Tube after the last bend. */
  readonly lastStraight: Metres;
}

/**
 * Length of centre line in a bend, arc = θ R.
 * @param angle change of direction [rad]
 * @param radius of the centre line [m]
 * @returns [m]
 * @source geometry; the shop constant 0.01745 R Z of tube-bending notes is the same in degrees
 * @example arcOf(Math.PI / 2, inches(2)) // => 0.0797965, 3.14 in
 */
export const arcOf = (angle: number, radius: Metres): Metres => metres(angle * radius);

/**
 * From where the legs would meet to where the bend begins, R tan(θ/2).
 * @param angle change of direction [rad], below π
 * @param radius of the centre line [m]
 * @returns [m]
 * @source tube-bending notes: setback = radius × tan(half angle)
 * @example setBackOf(Math.PI / 2, millimetres(25)) // => 0.025
 */
export const setBackOf = (angle: number, radius: Metres): Metres => metres(radius * Math.tan(angle / 2));

/** Length of tube before bending [m]: straights and arcs. Stretch in the bend is not counted. */
export const developedLength = ({ bends, lastStraight }: BentLine): Metres =>
  metres(bends.reduce<number>((length, { straight, angle, radius }) => length + straight + arcOf(angle, radius), lastStraight));

/**
 * The bends of a line given by the points where its legs meet, ends included.
 * Legs must have length and must not go on straight or turn right back: `bendsThrough` in read-points.ts mends and names such points.
 * A straight comes out below 0 where two bends have no room beside one another.
 * @param points at least two [m]
 * @param radius of the centre line of every bend [m]
 */
export function bendsOf(points: readonly Vector[], radius: Metres): BentLine {
  const legs = points.slice(1).map((point, index) => difference(point, points[index] ?? point));
  const directions = legs.map(unitVector);
  const angles = directions.slice(1).map((direction, index) => angleBetween(directions[index] ?? direction, direction));
  const normals = directions.slice(1).map((direction, index) => cross(directions[index] ?? direction, direction));
  const setBacks = [0, ...angles.map((angle) => setBackOf(angle, radius)), 0];
  const straights = legs.map((leg, index) => metres(lengthOf(leg) - (setBacks[index] ?? 0) - (setBacks[index + 1] ?? 0)));
  const bends = angles.map((angle, index): Bend => {
    const before = normals[index - 1];
    const rotation = before ? turnAbout(directions[index] ?? before, before, normals[index] ?? before) : 0;
    return { straight: straights[index] ?? metres(0), rotation, angle, radius };
  });
  return { bends, lastStraight: straights.at(-1) ?? metres(0) };
}

/**
 * The points of a bent line that starts at the origin along x with its first bend toward y.
 * @returns ends and the points where the legs meet [m]
 */
export function pointsOf({ bends, lastStraight }: BentLine): Vector[] {
  let [direction, normal]: [Vector, Vector] = [[1, 0, 0], [0, 0, 1]];
  const points: Vector[] = [[0, 0, 0]];
  let before = 0;
  for (const { straight, rotation, angle, radius } of bends) {
    const setBack = setBackOf(angle, radius);
    points.push(sum(points.at(-1) ?? [0, 0, 0], scaled(direction, before + straight + setBack)));
    normal = turned(normal, direction, rotation);
    direction = turned(direction, normal, angle);
    before = setBack;
  }
  points.push(sum(points.at(-1) ?? [0, 0, 0], scaled(direction, before + lastStraight)));
  return points;
}

/** Right-handed angle from one normal to another about an axis that both stand on [rad]. */
const turnAbout = (axis: Vector, from: Vector, to: Vector): number => Math.atan2(dot(axis, cross(from, to)), dot(from, to));
