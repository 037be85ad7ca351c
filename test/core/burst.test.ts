import { barlowPressure, isThinWalled, lamePressure, vonMisesPressure } from "../../src/core/burst";
import { inches, inPsi, metres, millimetres, psi } from "../../src/core/quantity";
import { DENSITIES, tubeMass } from "../../src/core/tube-mass";
import { MATERIALS, type Material } from "../../src/core/tube";

const tube = (outside: number, wall = 0.028) => ({ outsideDiameter: inches(outside), wall: inches(wall) });

describe("Barlow", () => {
  // Check values B10 to B13: formula read in an encyclopedia article; 42 ksi and 0.028 in from memory of SAE J526.
  test.each([["B10", 0.1875, 12544], ["B11", 0.25, 9408], ["B12", 0.3125, 7526], ["B13", 0.375, 6272]])("%s: %f in × 0.028 in at 42 ksi bursts at about %i psi", (_, outside, expected) => {
    expect(Math.abs(inPsi(barlowPressure(psi(42_000), tube(outside))) - expected)).toBeLessThan(1);
  });
  // Equations file 7.2 sets beside Lamé's value: 7 467 psi at 25 ksi.
  test("first yield of 3/16 in × 0.028 in at 25 ksi", () => expect(Math.abs(inPsi(barlowPressure(psi(25_000), tube(0.1875))) - 7467)).toBeLessThan(1));
  // By hand: 0.1875 / 0.028 = 6.7; 1 / 0.04 = 25.
  test("brake tube is not thin-walled", () => expect([isThinWalled(tube(0.1875)), isThinWalled(tube(1, 0.04))]).toEqual([false, true]));
});

// Check value B14: Lamé's bore stress, read on an engineering reference page; 25 ksi from memory.
test("Lamé, B14: 3/16 in × 0.028 in at 25 ksi yields at the bore at 8515 psi", () => expect(Math.abs(inPsi(lamePressure(psi(25_000), tube(0.1875))) - 8515)).toBeLessThan(1));

// By hand: (25 000 / √3)(1 - (0.1315 / 0.1875)²) = 14 433.76 × 0.508131 = 7 334 (formula from memory).
test("von Mises: 3/16 in × 0.028 in at 25 ksi yields at 7334 psi", () => expect(Math.abs(inPsi(vonMisesPressure(psi(25_000), tube(0.1875))) - 7334)).toBeLessThan(1));

test("a thin wall makes Lamé and Barlow agree, and von Mises is 2/√3 of them", () => {
  const thin = tube(1, 0.0005);
  expect(lamePressure(psi(1000), thin) / barlowPressure(psi(1000), thin)).toBeCloseTo(1, 2);
  expect(vonMisesPressure(psi(1000), thin) / barlowPressure(psi(1000), thin)).toBeCloseTo(2 / Math.sqrt(3), 2);
});

describe("mass", () => {
  // Check values B47 to B49: π (D - t) t ρ, densities from memory.
  test.each([["B47", "mild steel", 70.74], ["B48", "copper-nickel", 80.56], ["B49", "stainless", 72.09]] as const)("%s: a metre of 4.75 mm × 0.71 mm %s is %f g", (_, material: Material, grams) => {
    const mass = tubeMass(material, { outsideDiameter: millimetres(4.75), wall: millimetres(0.71), length: metres(1) });
    expect(Math.abs(mass * 1000 - grams)).toBeLessThan(0.02);
  });
  test("every material has a density", () => expect(Object.keys(DENSITIES).sort()).toEqual([...MATERIALS].sort()));
});
