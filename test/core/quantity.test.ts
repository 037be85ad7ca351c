import {
  bar, centimetres, cubicCentimetres, cubicCentimetresPerFoot, cubicCentimetresPerMetre, cubicInches, feet, inBar, inches, inchesOfMercury, inFeet, inInches,
  inMillimetres, inPsi, kilopascals, megapascals, millimetres, millimetresOfMercury, poundsForce, pounds, psi,
} from "../../src/core/quantity";

// NIST SP 811 appendix B.8 and B.9 (from memory), to the digits printed there.
test.each([
  ["inch in metres", inches(1), 2.54e-2],
  ["foot in metres", feet(1), 3.048e-1],
  ["millimetre in metres", millimetres(1), 1e-3],
  ["centimetre in metres", centimetres(1), 1e-2],
  ["psi in pascals", psi(1), 6.894757e3],
  ["bar in pascals", bar(1), 1e5],
  ["kPa in pascals", kilopascals(1), 1e3],
  ["MPa in pascals", megapascals(1), 1e6],
  ["inch of mercury, conventional, in pascals", inchesOfMercury(1), 3.386389e3],
  ["millimetre of mercury, conventional, in pascals", millimetresOfMercury(1), 1.333224e2],
  ["pound-force in newtons", poundsForce(1), 4.448222],
  ["pound in kilograms", pounds(1), 4.535924e-1],
  ["cubic inch in cubic metres", cubicInches(1), 1.638706e-5],
  ["cubic centimetre in cubic metres", cubicCentimetres(1), 1e-6],
  ["cubic centimetre a metre in square metres", cubicCentimetresPerMetre(1), 1e-6],
])("one %s", (_, computed, published) => {
  expect(Math.abs(computed / published - 1)).toBeLessThan(5e-7);
});

test("a cubic centimetre a foot is 1/30.48 cm² (a foot is 30.48 cm)", () => {
  expect(cubicCentimetresPerFoot(30.48)).toBeCloseTo(1e-4, 15);
});

// US Army TM 5-4210-230-14&P-1 (read): a residual valve of 41 to 124 kPa is printed as 6 to 18 psi.
test.each([[41, 6], [124, 18]])("%d kPa reads as %d psi", (metric, customary) => {
  expect(Math.abs(inPsi(kilopascals(metric)) - customary)).toBeLessThan(0.1);
});

test("every reading undoes its unit", () => {
  expect(inInches(inches(3.5))).toBeCloseTo(3.5, 12);
  expect(inFeet(feet(3.5))).toBeCloseTo(3.5, 12);
  expect(inMillimetres(millimetres(3.5))).toBeCloseTo(3.5, 12);
  expect(inPsi(psi(3.5))).toBeCloseTo(3.5, 12);
  expect(inBar(bar(3.5))).toBeCloseTo(3.5, 12);
});
