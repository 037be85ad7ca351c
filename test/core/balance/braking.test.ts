/** The closed solver against scanning and bisecting, against the closed forms of a fixed share, and against what must be monotone. */
import fc from "fast-check";
import { criticalDeceleration, frontLoad, frontLockDeceleration, rearLoad, rearLockDeceleration } from "../../../src/core/balance/axles";
import { efficiencyOn, firstLock, lockOf, pointAtDeceleration, pointAtPressure, type Braking } from "../../../src/core/balance/braking";
import { lineMargin } from "../../../src/core/balance/efficiency-line";
import { holdOff, proportioning } from "../../../src/core/balance/passage";
import { straight } from "../../../src/core/balance/pressure-curve";
import { rearAhead, rearFirst } from "../../../src/core/balance/rear-ahead";
import { bar, pascals } from "../../../src/core/quantity";
import { property } from "../seeded";
import { brakingOfCar, end, figure, randomCars, scanAndBisect, stances, type RandomCar } from "./random-braking";

const CLOSE = 1e-9;
const at = (braking: Braking, pressure: number) => { const point = pointAtPressure(braking, pascals(Math.min(pressure, end(braking)))); if (!point) throw new Error("beyond the end"); return point; };
const adhesions = figure(0.1, 1.1);

describe("against scanning and bisecting", () => {
  property("each axle's lock", 200, fc.tuple(randomCars, adhesions, fc.constantFrom("front" as const, "rear" as const)), ([car, adhesion, axle]) => {
    const braking = brakingOfCar(car);
    const uses = (pressure: number): number => { const { frontUses, rearUses } = at(braking, pressure); return axle === "front" ? frontUses : rearUses; };
    const closed = lockOf(braking, axle, adhesion);
    const found = scanAndBisect((pressure) => uses(pressure) >= adhesion, [0, end(braking)]);
    // A hump narrower than the grid is seen by the closed form alone; there it must still be true.
    if (closed) expect(Math.abs(uses(closed.pressure) - adhesion)).toBeLessThanOrEqual(CLOSE);
    if (found !== undefined) expect(closed && closed.z).toBeLessThanOrEqual(at(braking, found).z + CLOSE);
    if (found !== undefined && closed && found - closed.pressure < end(braking) / 2000) expect(Math.abs(closed.z - at(braking, found).z)).toBeLessThanOrEqual(CLOSE);
  });

  property("the ends of the stretches where the rears are ahead", 200, randomCars, (car) => {
    const braking = brakingOfCar(car);
    const stretches = rearAhead(braking);
    const isAhead = (z: number): boolean => { const point = pointAtDeceleration(braking, z); return point !== undefined && point.rearUses > point.frontUses + 1e-10; };
    const [least, most] = [braking.z[0] as number, braking.z.at(-1) as number];
    // Between its ends a stretch is ahead, and outside all of them nothing is: a scan finds no other sign.
    for (let i = 1; i < 500; i++) {
      const z = least + ((most - least) * i) / 500;
      const within = stretches.some(({ from, to }) => z > from + CLOSE && z < to - CLOSE);
      const outside = stretches.every(({ from, to }) => z < from - CLOSE || z > to + CLOSE);
      if (within || outside) expect(isAhead(z)).toBe(within);
    }
    for (const { from, to } of stretches) {
      if (from > least + CLOSE) expectCrossing(braking, from);
      if (to < most - CLOSE) expectCrossing(braking, to);
    }
  });

  property("which axle locks first on an adhesion", 400, fc.tuple(randomCars, adhesions), ([car, adhesion]) => {
    const braking = brakingOfCar(car);
    const stretches = rearFirst(braking, 1.2);
    const near = stretches.some(({ from, to }) => Math.abs(from - adhesion) < 1e-7 || Math.abs(to - adhesion) < 1e-7);
    if (!near) expect(stretches.some(({ from, to }) => adhesion > from && adhesion < to)).toBe(firstLock(braking, adhesion)?.axle === "rear");
  });

  property("least margin to the efficiency line", 40, fc.tuple(randomCars, figure(0.5, 0.9)), ([car, coefficient]) => {
    const braking = brakingOfCar(car);
    const closed = lineMargin(braking, coefficient);
    const [from, to] = [firstLock(braking, 0.2), firstLock(braking, 0.8)];
    if (!from || !to) return;
    let least = Infinity;
    for (let i = 0; i <= 1000; i++) {
      const { z, frontUses, rearUses } = at(braking, from.pressure + ((to.pressure - from.pressure) * i) / 1000);
      least = Math.min(least, z - 0.1 - coefficient * (Math.max(frontUses, rearUses) - 0.2));
    }
    expect(closed?.margin).toBeLessThanOrEqual(least + CLOSE);
    expect(closed?.margin).toBeGreaterThan(least - 5e-3);
  });
});

function expectCrossing(braking: Braking, z: number): void {
  const point = pointAtDeceleration(braking, z);
  expect(Math.abs((point?.rearUses ?? NaN) - (point?.frontUses ?? NaN))).toBeLessThanOrEqual(CLOSE * 10);
}

describe("straight-through lines give the closed forms of a fixed share", () => {
  const fixed = fc.tuple(stances, figure(0.3, 0.9), adhesions);
  const carOf = (stance: RandomCar["stance"], share: number): RandomCar => ({ stance, front: straight, rear: straight, frontPerPascal: share * 1e-7, rearPerPascal: (1 - share) * 1e-7, frontThreshold: 0, rearThreshold: 0 });

  property("locks", 200, fixed, ([stance, share, adhesion]) => {
    const braking = brakingOfCar(carOf(stance, share));
    const [front, rear] = [frontLockDeceleration(stance, share, adhesion), rearLockDeceleration(stance, share, adhesion)];
    if (front < (braking.z.at(-1) as number)) expect(lockOf(braking, "front", adhesion)?.z).toBeCloseTo(front, 9);
    if (rear < (braking.z.at(-1) as number)) expect(lockOf(braking, "rear", adhesion)?.z).toBeCloseTo(rear, 9);
    if (Math.min(front, rear) < 1) expect(efficiencyOn(braking, adhesion)).toBeCloseTo(Math.min(front, rear) / adhesion, 9);
  });

  property("critical deceleration", 200, fixed, ([stance, share]) => {
    const critical = criticalDeceleration(stance, share);
    const braking = brakingOfCar(carOf(stance, share));
    const [first] = rearAhead(braking);
    if (critical > 1e-6 && critical < (braking.z.at(-1) as number) - 1e-6) expect(first?.from).toBeCloseTo(critical, 9);
    if (critical < -1e-6) expect(first?.from).toBe(0);
  });
});

describe("a knee can make two stretches", () => {
  // Static front share 0.5, h/L 0.2, a fixed front share of 0.58: critical (0.58 - 0.5) / 0.2 = 0.4 g without a valve.
  // The limiting valve acts at 0.5 g: rear force then stays at 0.42 x 0.5 = 0.21. The rears fall back where 0.21 = z (0.5 - 0.2 z): z = (0.5 - sqrt(0.25 - 0.168)) / 0.4.
  const braking = brakingOfCar({ stance: { front: 0.5, height: 0.2 }, front: straight, rear: proportioning(pascals(5e6), 0), frontPerPascal: 0.58e-7, rearPerPascal: 0.42e-7, frontThreshold: 0, rearThreshold: 0 });
  const falls = (0.5 - Math.sqrt(0.25 - 0.168)) / 0.4;
  // And ahead again once the rear load has fallen: the other root.
  const again = (0.5 + Math.sqrt(0.25 - 0.168)) / 0.4;
  test("by deceleration", () => {
    const stretches = rearAhead(braking);
    expect(stretches).toHaveLength(2);
    expect([stretches[0]?.from, stretches[0]?.to, stretches[1]?.from].map((z) => z?.toFixed(9))).toEqual([0.4, falls, again].map((z) => z.toFixed(9)));
  });
  test("by adhesion: at a crossing both axles use the deceleration itself", () => {
    const [first] = rearFirst(braking, 1.2);
    expect([first?.from, first?.to].map((adhesion) => adhesion?.toFixed(9))).toEqual([0.4, falls].map((adhesion) => adhesion.toFixed(9)));
  });
});

describe("a hold-off that lets the fronts fall back", () => {
  // The fronts stand at 2 bar from 2 to 10 bar and catch up at 11; both axles without threshold, 1e-7 and 0.3e-7 of the weight a pascal.
  const braking = brakingOfCar({ stance: { front: 0.5, height: 0.2 }, front: holdOff(bar(10), bar(11), bar(2)), rear: straight, frontPerPascal: 1e-7, rearPerPascal: 0.3e-7, frontThreshold: 0, rearThreshold: 0 });
  // At 2 bar: z = 0.02 + 0.006, the fronts use 0.02 / (0.5 + 0.2 x 0.026) = 0.0395883; then their load grows and they use less.
  const peak = 0.02 / 0.5052;
  const [only] = rearFirst(braking, 1.2);
  test("they have locked at their earlier peak", () => {
    expect(only?.from).toBeCloseTo(peak, 12);
    expect([0.99, 1.01].map((share) => firstLock(braking, peak * share)?.axle)).toEqual(["front", "rear"]);
  });
  // While they are shut and just after opening the rears lead; they meet where F_f N_r = F_r N_f on the blend: every adhesion there agrees with first locks.
  test("and catch up while they open", () => {
    const to = only?.to ?? NaN;
    expect(to).toBeGreaterThan(peak);
    expect([0.999, 1.001].map((share) => firstLock(braking, to * share)?.axle)).toEqual(["rear", "front"]);
  });
  property("on any adhesion the first lock agrees", 300, figure(0.005, 0.2), (adhesion) => {
    const inside = only !== undefined && adhesion > only.from && adhesion < only.to;
    expect(firstLock(braking, adhesion)?.axle).toBe(inside ? "rear" : "front");
  });
});

describe("what must be monotone", () => {
  const more = figure(1.01, 2);
  property("stronger rears take a larger share and lock no later", 150, fc.tuple(randomCars, more, adhesions), ([car, by, adhesion]) => {
    const [weak, strong] = [brakingOfCar(car), brakingOfCar({ ...car, rearPerPascal: car.rearPerPascal * by })];
    const [a, b] = [pointAtDeceleration(weak, 0.4), pointAtDeceleration(strong, 0.4)];
    if (a && b && a.z === b.z) expect(b.rear / b.z).toBeGreaterThanOrEqual(a.rear / a.z - CLOSE);
    const [late, early] = [lockOf(weak, "rear", adhesion), lockOf(strong, "rear", adhesion)];
    if (late) expect(early?.pressure).toBeLessThanOrEqual(late.pressure * (1 + CLOSE));
  });

  property("more slope behind the split point, more rear share", 150, fc.tuple(randomCars, figure(0, 0.9), figure(0, 0.1)), ([car, slope, extra]) => {
    const [less, further] = [slope, slope + extra].map((one) => brakingOfCar({ ...car, rear: proportioning(pascals(2e6), one) })) as [Braking, Braking];
    const [a, b] = [pointAtDeceleration(less, 0.6), pointAtDeceleration(further, 0.6)];
    if (a && b) expect(b.rear).toBeGreaterThanOrEqual(a.rear - CLOSE);
  });

  property("loads add up to the weight, and braking moves them forward", 150, fc.tuple(stances, figure(0, 1)), ([stance, z]) => {
    expect(frontLoad(stance, z) + rearLoad(stance, z)).toBeCloseTo(1, 12);
    expect(frontLoad(stance, z)).toBeGreaterThanOrEqual(frontLoad(stance, 0));
  });

  property("no efficiency above one", 150, fc.tuple(randomCars, adhesions), ([car, adhesion]) => expect(efficiencyOn(brakingOfCar(car), adhesion) ?? 0).toBeLessThanOrEqual(1 + CLOSE));
});

// By hand: past its last knee a car brakes harder in a straight line, so the last point is where the rear axle lifts off, (1 - front share) over
// h/L but for a millionth, or 3 g; where no line rises any more, what it has reached.
property("a stop is followed until the rear axle lifts off, or to 3 g, if the lines rise so far", 300, randomCars, (car) => {
  const { z, stance } = brakingOfCar(car);
  const most = Math.min(3, (0.999999 * (1 - stance.front)) / stance.height);
  const [before, last] = [z.at(-2) ?? 0, z.at(-1) ?? 0];
  expect(last).toBeLessThanOrEqual(most + 1e-9);
  if (last > before + 1e-9) expect(last).toBeCloseTo(most, 9);
});
