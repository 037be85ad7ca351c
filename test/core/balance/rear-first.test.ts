/** Which axle locks first, against putting the pedal down in small steps. */
import fc from "fast-check";
import { pointOn, type Braking } from "../../../src/core/balance/braking";
import type { PressureCurve } from "../../../src/core/balance/pressure-curve";
import { rootsBetween } from "../../../src/core/balance/quadratic";
import { rearAhead, rearFirst, type Stretch } from "../../../src/core/balance/rear-ahead";
import { bar } from "../../../src/core/quantity";
import { property } from "../seeded";
import { brakingOfCar, figure, randomCars, type RandomCar } from "./random-braking";

const STEPS = 200;

/** Adhesion that each axle uses and the deceleration, step by step as the pedal goes down. */
const stepsOf = (braking: Braking) =>
  braking.z.slice(1).flatMap((_, piece) => Array.from({ length: STEPS }, (__, step) => pointOn(braking, piece, step / STEPS)));

const isIn = (stretches: readonly Stretch[], value: number): boolean => stretches.some(({ from, to }) => value > from && value < to);
/** No statement is made within a step of where a stretch ends. */
const isNearAnEnd = (stretches: readonly Stretch[], value: number): boolean => stretches.some(({ from, to }) => Math.min(Math.abs(from - value), Math.abs(to - value)) < 5e-3);

const adhesionsOf = fc.array(figure(0.05, 1.2), { minLength: 25, maxLength: 25 });

function expectFirstToLock(car: RandomCar, adhesions: readonly number[]): void {
  const braking = brakingOfCar(car);
  const steps = stepsOf(braking);
  const stretches = rearFirst(braking, 1.3);
  const decided = adhesions.flatMap((adhesion) => {
    const [front, rear] = [steps.findIndex(({ frontUses }) => frontUses > adhesion), steps.findIndex(({ rearUses }) => rearUses > adhesion)];
    return isNearAnEnd(stretches, adhesion) || Math.abs(front - rear) < 2 ? [] : [{ adhesion, rears: rear >= 0 && (front < 0 || rear < front) }];
  });
  expect(decided.filter(({ adhesion, rears }) => isIn(stretches, adhesion) !== rears)).toEqual([]);
}

property("on an adhesion the rears lock first where, pedal going down, they are the first to use it up", 300, fc.tuple(randomCars, adhesionsOf), ([car, adhesions]) => {
  expectFirstToLock(car, adhesions);
});

// A valve that holds the fronts while the rears go on, for good or up to a higher pressure: the load goes forward, the fronts use less than they did.
const held = fc.tuple(figure(5, 30), figure(5, 40), fc.constantFrom(0, 0.5, 1, 3)).map(([from, more, slope]): PressureCurve => ({ inlet: [0, bar(from), bar(from + more)], outlet: [0, bar(from), bar(from)], slope }));
property("also where the fronts fall back on the way", 1200, fc.tuple(randomCars, held, adhesionsOf), ([car, front, adhesions]) => {
  expectFirstToLock({ ...car, front }, adhesions);
});

property("at a deceleration the rears are ahead where they use more", 300, randomCars, (car) => {
  const braking = brakingOfCar(car);
  const stretches = rearAhead(braking);
  const decided = stepsOf(braking).filter(({ z, frontUses, rearUses }) => !isNearAnEnd(stretches, z) && Math.abs(rearUses - frontUses) > 1e-9);
  expect(decided.filter(({ z, frontUses, rearUses }) => isIn(stretches, z) !== rearUses > frontUses)).toEqual([]);
});

// By hand: 2t - 1; 9t² - 9t + 2 = (3t - 1)(3t - 2); 4t² - 5t + 1 = (4t - 1)(t - 1), whose 1 is an end and no root between; t² + 1 has none.
test.each([
  ["straight", [-1, 2, 0], [0.5]], ["straight and beyond", [-3, 2, 0], []], ["level", [1, 0, 0], []],
  ["two", [2, -9, 9], [1 / 3, 2 / 3]], ["one of two", [1, -5, 4], [0.25]], ["none", [1, 0, 1], []], ["touching", [0.25, -1, 1], []],
] as const)("roots between 0 and 1: %s", (_, quadratic, roots) => {
  const found = rootsBetween(quadratic);
  expect(found).toHaveLength(roots.length);
  found.forEach((root, index) => { expect(root).toBeCloseTo(roots[index] ?? NaN, 12); });
});
