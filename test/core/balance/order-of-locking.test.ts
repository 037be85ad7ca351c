/** The adviser's split points and bores against halving the interval on the whole solver: exact, not near. */
import fc from "fast-check";
import { brakingOf, effectiveOf, type Braking } from "../../../src/core/balance/braking";
import { chordSlope, largestRearScale, largestSplit, linePressureAt, mostRearPressure, type Balanced } from "../../../src/core/balance/order-of-locking";
import { proportioning } from "../../../src/core/balance/passage";
import { inSeries, straight, type PressureCurve } from "../../../src/core/balance/pressure-curve";
import { rearAhead } from "../../../src/core/balance/rear-ahead";
import { inBar, pascals } from "../../../src/core/quantity";
import { property } from "../seeded";
import { figure, stances } from "./random-braking";

const RANGE = { from: 0.15, to: 0.8 };
const above = (line: PressureCurve, threshold: number): PressureCurve => inSeries(line, { inlet: [0, threshold], outlet: [0, 0], slope: 1 });

/** The car with a valve behind its rear line, and rear brakes of so many times their area. */
function braking(car: Balanced, valve: PressureCurve = straight, scale = 1): Braking {
  const effective = effectiveOf(car.frontEffective, above(inSeries(car.rearLine, valve), car.rearThreshold));
  return brakingOf(car.stance, effective, { front: { perPascal: car.frontPerPascal, working: 1 }, rear: { perPascal: car.rearPerPascal * scale, working: 1 } });
}

const isAhead = (one: Braking): boolean => rearAhead(one).some(({ from, to }) => Math.min(to, RANGE.to) - Math.max(from, RANGE.from) > 1e-12);

/** Largest of what passes, found by halving. */
function halved(passes: (value: number) => boolean, low: number, high: number): number {
  for (let i = 0; i < 100; i++) {
    const middle = (low + high) / 2;
    if (passes(middle)) low = middle;
    else high = middle;
  }
  return low;
}

const cars: fc.Arbitrary<Balanced> = fc.record({
  stance: stances, front: figure(4e-8, 1e-7), ratio: figure(0.3, 1.2), frontThreshold: figure(0, 2e5), rearThreshold: figure(0, 6e5),
  pre: fc.option(fc.tuple(figure(3e6, 7e6), figure(0.4, 0.9)), { nil: undefined }),
}).map(({ stance, front, ratio, frontThreshold, rearThreshold, pre }) => ({
  stance, frontPerPascal: front, rearPerPascal: front * ratio, frontEffective: above(straight, frontThreshold), rearThreshold: pascals(rearThreshold),
  rearLine: pre ? proportioning(pascals(pre[0]), pre[1]) : straight,
}));

property("the largest split is where halving ends", 200, fc.tuple(cars, figure(0.05, 0.9)), ([car, slope]) => {
  const closed = largestSplit(car, slope, RANGE);
  const passes = (split: number): boolean => !isAhead(braking(car, proportioning(pascals(split), slope)));
  if (closed === Infinity) expect(isAhead(braking(car))).toBe(false);
  else if (closed <= 0) expect(passes(1)).toBe(false);
  else expect(Math.abs(closed - halved(passes, 0, 5e7)) / 1e6).toBeLessThanOrEqual(1e-6);
});

property("the largest rear piston area is where halving ends", 200, cars, (car) => {
  const closed = largestRearScale(car, above(car.rearLine, car.rearThreshold), RANGE);
  const found = halved((scale) => !isAhead(braking(car, straight, scale)), 0, 50);
  if (closed < 50) expect(Math.abs(closed - found)).toBeLessThanOrEqual(1e-8 * Math.max(1, found));
});

property("the chord's slope passes with its largest split, and touches the ideal at the end of the range", 200, cars, (car) => {
  const slope = chordSlope(car, RANGE);
  if (slope === undefined) return;
  const split = largestSplit(car, slope, RANGE);
  if (split <= 0 || split === Infinity) return;
  expect(isAhead(braking(car, proportioning(pascals(split * (1 - 1e-9)), slope)))).toBe(false);
  expect(isAhead(braking(car, proportioning(pascals(split * 1.001), slope)))).toBe(true);
});

describe("a split worked by hand", () => {
  // Front share of the weight 0.55, h/L 0.2; both axles 1e-7 of the weight a pascal at the front, 0.6e-7 at the rear; no thresholds.
  const car: Balanced = { stance: { front: 0.55, height: 0.2 }, frontPerPascal: 1e-7, rearPerPascal: 0.6e-7, frontEffective: straight, rearLine: straight, rearThreshold: pascals(0) };
  // At 0.8 g the ideal front force is 0.8 x (0.55 + 0.16) = 0.568: 56.8 bar; the ideal rear force 0.8 x (0.45 - 0.16) = 0.232: 38.667 bar.
  test("pressures at 0.8 g", () => expect([inBar(linePressureAt(car, 0.8)).toFixed(3), inBar(mostRearPressure(car, 0.8)).toFixed(3)]).toEqual(["56.800", "38.667"]));
  // With a slope of 0.5 the split x fulfils x + 0.5 (56.8 - x) = 38.667 there: x = (38.667 - 28.4) / 0.5 = 20.533 bar.
  test("a steep valve is bound at the end of the range", () => expect(inBar(pascals(largestSplit(car, 0.5, RANGE))).toFixed(3)).toBe("20.533"));
  // With 0.4 it would be 26.578 bar, but from 23.4375 bar on (below) the rears are ahead of a valve that does not act yet.
  test("a flat one where the rears pass without it", () => expect(inBar(pascals(largestSplit(car, 0.4, RANGE))).toFixed(4)).toBe("23.4375"));
  // The rears pass where 1.0 z (0.45 - 0.2 z) / 0.6 = z (0.55 + 0.2 z): 0.45 - 0.2 z = 0.33 + 0.12 z, z = 0.375, at 0.375 x 0.625 = 0.234: 23.4375 bar.
  // The chord from there to (56.8, 38.667): slope 15.229 / 33.3625 = 0.45648.
  test("slope of the chord", () => expect(chordSlope(car, RANGE)?.toFixed(4)).toBe("0.4565"));
  test("and its split is where the rears pass", () => expect(inBar(pascals(largestSplit(car, chordSlope(car, RANGE) ?? NaN, RANGE))).toFixed(2)).toBe("23.44"));
  // Without a valve the rear area may be 38.667 / 56.8 = 0.68075 of what it is, for at 0.8 g the ratio is least.
  test("largest rear area", () => expect(largestRearScale(car, straight, RANGE).toFixed(5)).toBe("0.68075"));
});
