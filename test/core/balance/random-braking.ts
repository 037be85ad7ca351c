/** Cars at random for properties of the solver: any stance, any valves in series on either axle. */
import fc from "fast-check";
import { brakingOf, effectiveOf, type Braking } from "../../../src/core/balance/braking";
import type { Stance } from "../../../src/core/balance/axles";
import { chainOf, holdOff, proportioning, residual } from "../../../src/core/balance/passage";
import { inSeries, type PressureCurve } from "../../../src/core/balance/pressure-curve";
import { bar, pascals } from "../../../src/core/quantity";

/** A figure of four digits at most, as people type them: no tables hold a slope of 1e-300. */
export const figure = (least: number, most: number): fc.Arbitrary<number> => fc.integer({ min: 0, max: 1000 }).map((step) => least + ((most - least) * step) / 1000);

const pressure = (least: number, most: number) => figure(least, most).map(bar);
const proportion = fc.tuple(pressure(5, 60), figure(0, 1)).map(([split, slope]) => proportioning(split, slope));
const held = fc.tuple(pressure(3, 8), pressure(9, 40), pressure(0, 2)).map(([opens, full, rest]) => holdOff(opens, full, rest));
const kept = pressure(0.1, 1).map(residual);

/** Any number of valves in series. */
export const lines: fc.Arbitrary<PressureCurve> = fc.array(fc.oneof(proportion, held, kept), { maxLength: 4 }).map(chainOf);
export const stances: fc.Arbitrary<Stance> = fc.record({ front: figure(0.35, 0.7), height: figure(0.1, 0.35) });

export interface RandomCar {
  readonly stance: Stance;
  readonly front: PressureCurve;
  readonly rear: PressureCurve;
  readonly frontPerPascal: number;
  readonly rearPerPascal: number;
  readonly frontThreshold: number;
  readonly rearThreshold: number;
}

const strength = figure(2e-8, 2e-7);
const threshold = figure(1e4, 7e5);

export const randomCars: fc.Arbitrary<RandomCar> = fc.record({ stance: stances, front: lines, rear: lines, frontPerPascal: strength, rearPerPascal: strength, frontThreshold: threshold, rearThreshold: threshold });

const above = (line: PressureCurve, of: number): PressureCurve => inSeries(line, { inlet: [0, of], outlet: [0, 0], slope: 1 });

export const brakingOfCar = (car: RandomCar): Braking =>
  brakingOf(car.stance, effectiveOf(above(car.front, car.frontThreshold), above(car.rear, car.rearThreshold)), { front: { perPascal: car.frontPerPascal, working: 1 }, rear: { perPascal: car.rearPerPascal, working: 1 } });

/** The first argument in a range at which a test turns true, to the last digit; undefined when it never does on the grid. */
export function scanAndBisect(isThere: (at: number) => boolean, [from, to]: readonly [number, number], steps = 2000): number | undefined {
  if (isThere(from)) return from;
  for (let i = 1; i <= steps; i++) {
    const at = from + ((to - from) * i) / steps;
    if (!isThere(at)) continue;
    let [low, high] = [from + ((to - from) * (i - 1)) / steps, at];
    for (let halving = 0; halving < 80; halving++) {
      const middle = (low + high) / 2;
      if (isThere(middle)) high = middle;
      else low = middle;
    }
    return high;
  }
  return undefined;
}

export const end = ({ pressure: all }: Braking) => pascals(all.at(-1) as number);
