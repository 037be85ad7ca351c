import { inches, inMillimetres, millimetres } from "../../src/core/quantity";
import { nominalTube, sameTube, sayTube } from "../../src/core/tube";

// Metric tube that stands for an inch size (common practice, no source): 4.75 mm is 3/16 in, 8 mm is 5/16 in; 6 mm is not 1/4 in, 10 mm is not 3/8 in.
test.each([
  [4.75, 3 / 16, true],
  [8, 5 / 16, true],
  [6, 1 / 4, false],
  [10, 3 / 8, false],
  [4.7625, 3 / 16, true],
  [4.75, 1 / 4, false],
])("%d mm and %d in are one tube: %s", (metric, inch, same) => {
  expect(sameTube(millimetres(metric), inches(inch))).toBe(same);
  expect(sameTube(inches(inch), millimetres(metric))).toBe(same);
});

test.each([
  [inches(3 / 16), "3/16 in"],
  [millimetres(4.75), "3/16 in"],
  [inches(1 / 4), "1/4 in"],
  [inches(1), "1 in"],
  [millimetres(6), "6 mm"],
  [millimetres(10), "10 mm"],
])("%d m is said as %s", (size, says) => {
  expect(sayTube(size)).toBe(says);
});

test("the nominal size of 4.75 mm is 3/16 in, which is 4.7625 mm; 6 mm stays itself", () => {
  expect(inMillimetres(nominalTube(millimetres(4.75)))).toBeCloseTo(4.7625, 9);
  expect(inMillimetres(nominalTube(millimetres(6)))).toBe(6);
});
