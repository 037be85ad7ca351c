import fc from "fast-check";
import { compoundPoisson, convolve, cumulated, momentsOf, onSteps } from "../../../src/core/stock/lattice";
import { property } from "../seeded";

// Jobs of 1 or 2, one a week on average: P(2) = e⁻¹ (½ + ½ · ¼), one job of 2 or two of 1.
test("compound Poisson by hand", () => {
  const total = compoundPoisson(1, Float64Array.of(0, 0.5, 0.5), 3);
  [1, 0.5, 0.625].forEach((share, steps) => expect(total[steps]).toBeCloseTo(share * Math.exp(-1), 14));
});

// A size of 0 is a job that takes nothing: two events of which half are such are one event.
test("sizes of nothing thin the events out", () => {
  const thinned = compoundPoisson(2, Float64Array.of(0.5, 0.25, 0.25), 12);
  compoundPoisson(1, Float64Array.of(0, 0.5, 0.5), 12).forEach((chance, steps) => expect(thinned[steps]).toBeCloseTo(chance, 14));
});

// 800 events are past the point where e⁻ᵐᵉᵃⁿ is 0 in a double; P(k + 1) / P(k) = 800 / (k + 1).
test("many events do not underflow", () => {
  const total = compoundPoisson(800, Float64Array.of(0, 1), 1100);
  expect((total[801] as number) / (total[800] as number)).toBeCloseTo(800 / 801, 10);
  expect(momentsOf({ step: 1, chances: total })).toMatchObject({ mean: expect.closeTo(800, 6) as number, variance: expect.closeTo(800, 4) as number });
});

test("cut off, the cells kept are right and the rest is missing", () => {
  expect([...convolve(Float64Array.of(0.5, 0, 0.5), Float64Array.of(0.5, 0, 0.5), 4)]).toEqual([0.25, 0, 0.5, 0]);
  expect([...cumulated(Float64Array.of(0.25, 0.5, 0.25))]).toEqual([0.25, 0.75, 1]);
});

test("a size between two steps is shared so that its mean is kept", () => expect([...onSteps([{ size: 2.25, chance: 1 }], 0.5)]).toEqual([0, 0, 0, 0, 0.5, 0.5]));
test("a whole number of steps stays whole in spite of rounding", () => expect([...onSteps([{ size: 0.3, chance: 1 }], 0.1)]).toEqual([0, 0, 0, 1]));

const sizes = fc.array(fc.record({ size: fc.double({ min: 0.1, max: 20, noNaN: true }), weight: fc.double({ min: 0.1, max: 1, noNaN: true }) }), { minLength: 1, maxLength: 6 });
property("compound Poisson has mean λ E S and variance λ E S²", 100, fc.tuple(sizes, fc.double({ min: 0.1, max: 5, noNaN: true })), ([list, events]) => {
  const whole = list.reduce((sum, { weight }) => sum + weight, 0);
  const onGrid = onSteps(list.map(({ size, weight }) => ({ size, chance: weight / whole })), 0.5);
  const { mean, variance } = momentsOf({ step: 0.5, chances: compoundPoisson(events, onGrid, 2000) });
  const moment = (power: number): number => onGrid.reduce((sum, chance, k) => sum + chance * (k * 0.5) ** power, 0);
  expect(mean).toBeCloseTo((events * list.reduce((sum, { size, weight }) => sum + size * weight, 0)) / whole, 6);
  expect(variance).toBeCloseTo(events * moment(2), 5);
});
