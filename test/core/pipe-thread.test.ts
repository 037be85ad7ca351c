import { inInches } from "../../src/core/quantity";
import { externalMajorWindow, internalMinorWindow, threadNamed } from "../../src/core/thread";

/**
 * ASME B1.20.1 table 2, 1/8-27 NPT (from memory): pitch diameter 0.36351 in at the small end and 0.37360 in at hand-tight, thread height 0.02963 in,
 * outside diameter 0.405 in. So a caliper reads 0.36351 + 0.02963 = 0.39314 to 0.405 in outside, 0.33388 to 0.34397 in inside.
 */
test("a 1/8-27 pipe thread has the windows of its taper", () => {
  const pipe = threadNamed("1/8-27 NPT");
  if (!pipe) throw new Error("1/8-27 NPT is not read");
  const [outside, inside] = [externalMajorWindow(pipe), internalMinorWindow(pipe)];
  expect(inInches(outside.least)).toBeCloseTo(0.39314, 4);
  expect(inInches(outside.most)).toBeCloseTo(0.405, 6);
  expect(inInches(inside.least)).toBeCloseTo(0.33388, 4);
  expect(inInches(inside.most)).toBeCloseTo(0.34397, 4);
});

test("a size or pitch that is no taper pipe thread is not read", () => {
  expect([threadNamed("1/8-24 NPT"), threadNamed("5/8-18 NPT")]).toEqual([undefined, undefined]);
});
