/** Loss functions: far tails against mpmath 1.3.0 at 30 digits (run for this test), and what holds for every distribution. */
import fc from "fast-check";
import { gammaLoss, normalLoss, poissonLoss, standardNormalLoss } from "../../../src/core/stock/loss";
import { property } from "../seeded";

const digits = (value: number, digitsKept: number): number => Number(value.toPrecision(digitsKept));

// mpmath: φ(z) − z Q(z) and ((z² + 1) Q(z) − z φ(z)) / 2 with Q(z) = erfc(z/√2)/2.
test.each([
  [4, 7.14525843240567e-6, 1.54510405174863e-6],
  [10, 7.47456025458933e-25, 7.26463847855990e-26],
  [-2.5, 2.50200413717913, 3.62440033881102],
])("standard normal loss at %d, first and second order, keeps eleven digits", (z, short, second) => {
  const loss = standardNormalLoss(z);
  expect([digits(loss.short, 11), digits(loss.second, 11)]).toEqual([digits(short, 11), digits(second, 11)]);
});

// E(X − 3)⁺ of a gamma of shape 2.5 and scale 2, by numerical integration (mpmath).
test("gamma loss", () => expect(gammaLoss(3, { shape: 2.5, scale: 2 }).short).toBeCloseTo(2.32505365057987, 12));

// Between whole levels a count's loss is a straight line: at 0.5 with mean 1, halfway between E X = 1 and E(X − 1)⁺ = e⁻¹.
test("Poisson loss between two counts", () => expect(poissonLoss(0.5, 1).short).toBeCloseTo((1 + Math.exp(-1)) / 2, 12));
// Left of 1 is one when none comes: P(0). Left of 2 is two when none and one when one comes: 2 P(0) + P(1) = (2 + 3) e⁻³.
test.each([[1, 2, Math.exp(-2)], [2, 3, 5 * Math.exp(-3)]])("Poisson loss: of %d below a mean of %d is left", (level, mean, left) => expect(poissonLoss(level, mean).left).toBeCloseTo(left, 14));
// At a whole mean m it is m P(X = m), by Stirling √(m / 2π) (1 − 1 / 12m) (from memory). A hundred standard deviations below the mean nothing is left, above it nothing short.
test("Poisson loss of ten thousand", () => {
  expect(poissonLoss(10_000, 10_000).short).toBeCloseTo(Math.sqrt(10_000 / (2 * Math.PI)) * (1 - 1 / 120_000), 6);
  expect(poissonLoss(100, 10_000)).toEqual({ short: 9900, left: 0 });
  expect(poissonLoss(20_000, 10_000)).toEqual({ short: 0, left: 10_000 });
});
test("Poisson loss of no demand", () => expect(poissonLoss(2, 0)).toEqual({ short: 0, left: 2 }));
test("a level below all demand is short by the whole difference", () => {
  expect(poissonLoss(-1, 3)).toEqual({ short: 4, left: 0 });
  expect(gammaLoss(-1, { shape: 3, scale: 1 })).toEqual({ short: 4, left: 0 });
});

const level = fc.double({ min: -20, max: 60, noNaN: true });
property("what is left less what is short is the level less the mean", 300, fc.tuple(level, fc.double({ min: 0.2, max: 30, noNaN: true })), ([x, mean]) => {
  const losses = [normalLoss(x, { mean, deviation: 4 }), poissonLoss(x, mean), gammaLoss(x, { shape: mean / 2, scale: 2 })];
  for (const { short, left } of losses) {
    expect(left - short).toBeCloseTo(x - mean, 8);
    expect(short).toBeGreaterThanOrEqual(-1e-12);
    expect(left).toBeGreaterThanOrEqual(-1e-9);
  }
});

property("the two ways to the normal tail meet at z = 3", 20, fc.double({ min: 1e-9, max: 1e-7, noNaN: true }), (gap) => {
  const [below, above] = [standardNormalLoss(3), standardNormalLoss(3 + gap)];
  // L′ = −Q(3) = −0.00135; second′ = −L.
  expect(above.short).toBeCloseTo(below.short - 0.0013498980316 * gap, 14);
  expect(above.second).toBeCloseTo(below.second - below.short * gap, 14);
});
