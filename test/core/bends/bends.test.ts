import fc from "fast-check";
import { arcOf, bendsOf, developedLength, pointsOf, setBackOf, type BentLine } from "../../../src/core/bends/bends";
import { bendsThrough, straightsOf, type BendLimits } from "../../../src/core/bends/read-points";
import type { Vector } from "../../../src/core/bends/vector";
import { inches, inInches, inMillimetres, metres, millimetres, type Metres } from "../../../src/core/quantity";
import { property } from "../seeded";

const mm = (...coordinates: [number, number, number]): Vector => [coordinates[0] / 1000, coordinates[1] / 1000, coordinates[2] / 1000];
const degrees = (radians: number): number => (radians * 180) / Math.PI;
const RIGHT = Math.PI / 2;

describe("arc and set-back", () => {
  // Check values B17 to B19: geometry, and tube-bending notes (L = R Z 0.01745; set-back = R tan of half the angle).
  test("B17: 90° at 100 mm is 157 mm", () => expect(Math.abs(inMillimetres(arcOf(RIGHT, millimetres(100))) - 157)).toBeLessThan(0.5));
  test("B18: 90° at 2 in is 3.14 in", () => expect(Math.abs(inInches(arcOf(RIGHT, inches(2))) - 3.14)).toBeLessThan(0.005));
  test("B19: 90° at 25 mm sets back 25 mm", () => expect(inMillimetres(setBackOf(RIGHT, millimetres(25)))).toBeCloseTo(25, 9));
});

describe("from points to bends", () => {
  test("legs of 100 along x, y, z at radius 20: straights 80, 60, 80, a quarter turn between, 220 + 20π in all", () => {
    // By hand: set-back 20 tan 45° = 20; 100 - 20, 100 - 40, 100 - 20; two arcs of 10π.
    const line = bendsOf([mm(0, 0, 0), mm(100, 0, 0), mm(100, 100, 0), mm(100, 100, 100)], millimetres(20));
    expect(straightsOf(line).map((straight) => inMillimetres(straight).toFixed(9))).toEqual(["80.000000000", "60.000000000", "80.000000000"]);
    expect(line.bends.map(({ rotation, angle }) => [degrees(rotation).toFixed(9), degrees(angle).toFixed(9)])).toEqual([["0.000000000", "90.000000000"], ["90.000000000", "90.000000000"]]);
    expect(inMillimetres(developedLength(line))).toBeCloseTo(220 + 20 * Math.PI, 9);
  });

  test("B20: legs 200, 150, 100 with two right angles at 20 mm", () => {
    // Constructed from the arc and set-back rules: straights 180, 110, 80, rotation 90°, developed 432.832 mm.
    const line = bendsOf([mm(0, 0, 0), mm(200, 0, 0), mm(200, 150, 0), mm(200, 150, 100)], millimetres(20));
    expect(straightsOf(line).map((straight) => Math.round(inMillimetres(straight) * 1e6) / 1e6)).toEqual([180, 110, 80]);
    expect(Math.abs(inMillimetres(developedLength(line)) - 432.832)).toBeLessThan(0.001);
  });

  test("B21: legs 100 and 100 with 45° at 30 mm", () => {
    // Constructed from the same rules: 198.7091 mm.
    const line = bendsOf([mm(0, 0, 0), mm(100, 0, 0), mm(100 + 100 * Math.SQRT1_2, 100 * Math.SQRT1_2, 0)], millimetres(30));
    expect(Math.abs(inMillimetres(developedLength(line)) - 198.7091)).toBeLessThan(0.001);
  });

  test("the tube turns right-handed about the way it is pushed", () => {
    // By hand: along x, to y, then up z turns from normal z to normal x about y: +90°; then down -z it is -90°.
    const turn = (z: number) => bendsOf([mm(0, 0, 0), mm(100, 0, 0), mm(100, 100, 0), mm(100, 100, z)], millimetres(10)).bends[1]?.rotation ?? NaN;
    expect([degrees(turn(100)), degrees(turn(-100))]).toEqual([90, -90]);
  });

  test("a second bend in the same plane turns by 0° the same way round and by 180° back", () => {
    const turn = (x: number) => Math.abs(degrees(bendsOf([mm(0, 0, 0), mm(100, 0, 0), mm(100, 100, 0), mm(x, 100, 0)], millimetres(10)).bends[1]?.rotation ?? NaN));
    expect([turn(0), turn(200)]).toEqual([0, 180]);
  });
});

const angle = fc.double({ min: 0.05, max: 2.9, noNaN: true });
const bend = fc.record({ straight: fc.double({ min: 0.005, max: 1, noNaN: true }), rotation: fc.double({ min: -3.1, max: 3.1, noNaN: true }), angle });
const bentLine = fc.record({ radius: fc.double({ min: 0.01, max: 0.1, noNaN: true }), bends: fc.array(bend, { minLength: 1, maxLength: 8 }), last: fc.double({ min: 0.005, max: 1, noNaN: true }) }).map(
  ({ radius, bends, last }): BentLine => ({ bends: bends.map((one, index) => ({ straight: metres(one.straight), rotation: index === 0 ? 0 : one.rotation, angle: one.angle, radius: metres(radius) })), lastStraight: metres(last) }),
);

describe("to points and back", () => {
  property("gives the same straights, rotations and angles", 300, bentLine, (line) => {
    const again = bendsOf(pointsOf(line), line.bends[0]?.radius ?? metres(0));
    straightsOf(again).forEach((straight, index) => expect(straight).toBeCloseTo(straightsOf(line)[index] ?? NaN, 9));
    again.bends.forEach(({ rotation, angle: turned }, index) => {
      expect(rotation).toBeCloseTo(line.bends[index]?.rotation ?? NaN, 7);
      expect(turned).toBeCloseTo(line.bends[index]?.angle ?? NaN, 9);
    });
    expect(developedLength(again)).toBeCloseTo(developedLength(line), 9);
  });

  property("the same line moved and turned in space bends the same", 100, fc.tuple(bentLine, angle), ([line, about]) => {
    const radius = line.bends[0]?.radius ?? metres(0);
    const moved = pointsOf(line).map(([x, y, z]): Vector => [x * Math.cos(about) - y * Math.sin(about) + 3, z - 2, -(x * Math.sin(about) + y * Math.cos(about)) + 1]);
    expect(bendsOf(moved, radius).bends.map(({ rotation }) => rotation.toFixed(6).replace("-0.000000", "0.000000"))).toEqual(bendsOf(pointsOf(line), radius).bends.map(({ rotation }) => rotation.toFixed(6).replace("-0.000000", "0.000000")));
  });
});

describe("what is wrong with points is named", () => {
  const codes = (points: readonly Vector[], radius: Metres = millimetres(20), limits: BendLimits = {}) => bendsThrough(points, radius, limits).findings.map(({ code, point }) => `${code} ${point}`);
  const corner = [mm(0, 0, 0), mm(100, 0, 0), mm(100, 100, 0)];

  test("nothing on a sound line", () => expect(codes(corner, millimetres(20), { grip: millimetres(80), leastRadius: millimetres(20) })).toEqual([]));
  test("bends that overlap", () => expect(codes([mm(0, 0, 0), mm(100, 0, 0), mm(100, 39, 0), mm(100, 39, 100)])).toEqual(["straight-negative 3"]));
  test("bends that just touch are sound", () => expect(codes([mm(0, 0, 0), mm(100, 0, 0), mm(100, 40, 0), mm(100, 40, 100)])).toEqual([]));
  test("straights below the grip", () => expect(codes(corner, millimetres(20), { grip: millimetres(80.1) })).toEqual(["straight-below-grip 2", "straight-below-grip 3"]));
  test("a radius below the least, at each bend", () => expect(codes(corner, millimetres(20), { leastRadius: millimetres(20.1) })).toEqual(["radius-below-least 2"]));
  test("legs in line are one leg", () => {
    const { line, findings } = bendsThrough([mm(0, 0, 0), mm(50, 0, 0), mm(100, 0, 0), mm(100, 100, 0)], millimetres(20));
    expect(findings.map(({ code, point }) => [code, point])).toEqual([["legs-in-line", 2]]);
    expect(line?.bends).toHaveLength(1);
    expect(inMillimetres(line?.bends[0]?.straight ?? metres(0))).toBeCloseTo(80, 9);
  });
  test("a point twice counts once", () => expect(codes([mm(0, 0, 0), mm(0, 0, 0), mm(100, 0, 0), mm(100, 100, 0)])).toEqual(["point-twice 2"]));
  test("a coordinate farther than any vehicle is long", () => expect(codes([mm(0, 0, 0), mm(50, 100_001, 0), mm(100, 0, 0), mm(100, 100, 0), mm(100, 100, 100_000)])).toEqual(["point-too-far 2"]));
  test("a coordinate that is none", () => expect(codes([mm(0, 0, 0), mm(50, NaN, 0), mm(100, 0, 0), mm(100, 100, 0)])).toEqual(["point-not-a-number 2"]));
  test("a leg that turns right back", () => {
    const { line, findings } = bendsThrough([mm(0, 0, 0), mm(100, 0, 0), mm(20, 0, 0)], millimetres(20));
    expect([line, findings.map(({ code }) => code)]).toEqual([undefined, ["leg-turns-back"]]);
  });
  test("one point is no line", () => expect(bendsThrough([mm(0, 0, 0)], millimetres(20)).findings.map(({ code }) => code)).toEqual(["points-too-few"]));
  test("two points are a straight tube", () => expect(inMillimetres(developedLength(bendsThrough([mm(0, 0, 0), mm(30, 40, 0)], millimetres(20)).line ?? { bends: [], lastStraight: metres(0) }))).toBeCloseTo(50, 9));
});
