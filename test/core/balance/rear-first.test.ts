/** Which axle locks first, against putting the pedal down in small steps. */
import fc from "fast-check";
import { pointOn, type Braking } from "../../../src/core/balance/braking";
import { rootsBetween } from "../../../src/core/balance/quadratic";
import { rearAhead, rearFirst, type Stretch } from "../../../src/core/balance/rear-ahead";
import { property } from "../seeded";
import { brakingOfCar, figure, randomCars } from "./random-braking";

const STEPS = 200;

/** Adhesion that each axle uses and the deceleration, step by step as the pedal goes down. */
const stepsOf = (braking: Braking) =>
  braking.z.slice(1).flatMap((_, piece) => Array.from({ length: STEPS }, (__, step) => pointOn(braking, piece, step / STEPS)));

const isIn = (stretches: readonly Stretch[], value: number): boolean => stretches.some(({ from, to }) => value > from && value < to);
/** No statement is made within a step of where a stretch ends. */
const isNearAnEnd = (stretches: readonly Stretch[], value: number): boolean => stretches.some(({ from, to }) => Math.min(Math.abs(from - value), Math.abs(to - value)) < 5e-3);

property("on an adhesion the rears lock first where, pedal going down, they are the first to use it up", 300, fc.tuple(randomCars, fc.array(figure(0.05, 1.2), { minLength: 5, maxLength: 5 })), ([car, adhesions]) => {
  const braking = brakingOfCar(car);
  const steps = stepsOf(braking);
  const stretches = rearFirst(braking, 1.3);
  for (const adhesion of adhesions) {
    const [front, rear] = [steps.findIndex(({ frontUses }) => frontUses > adhesion), steps.findIndex(({ rearUses }) => rearUses > adhesion)];
    if (isNearAnEnd(stretches, adhesion) || Math.abs(front - rear) < 2) continue;
    expect([adhesion, isIn(stretches, adhesion)]).toEqual([adhesion, rear >= 0 && (front < 0 || rear < front)]);
  }
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
