import { inches, inInches, inMillimetres, metres, millimetres } from "../../src/core/quantity";
import { externalMajorWindow, internalMinorWindow, isNearMiss, threadNamed, type Thread } from "../../src/core/thread";

const named = (name: string): Thread => {
  const thread = threadNamed(name);
  if (!thread) throw new Error(`${name} is no thread`);
  return thread;
};

/**
 * Caliper windows of the project's own data set (../shared/data/thread-windows.json): name, least and most major diameter outside, least and
 * most minor diameter inside, pitch, all in mm. ASME B1.1 class 2A and 2B, ISO 965-1 6g and 6H.
 * The data set takes the diameter as the length of engagement of every inch thread; ASME B1.1 takes it for the coarse and fine series and
 * nine pitches for the others, which moves their outside window by up to 0.0012 mm. Hence a tolerance of 0.002 mm.
 */
const windows: readonly (readonly [string, number, number, number, number, number])[] = [
  ["5/16-28", 7.7457, 7.911, 6.9555, 7.1693, 0.9071],
  ["5/16-24", 7.7265, 7.9096, 6.7918, 7.0388, 1.0583],
  ["M8x1", 7.794, 7.974, 6.9175, 7.1535, 1.0],
  ["3/8-24", 9.3129, 9.496, 8.3793, 8.6263, 1.0583],
  ["3/8-20", 9.2874, 9.4942, 8.1502, 8.4423, 1.27],
  ["M10x1", 9.794, 9.974, 8.9175, 9.1535, 1.0],
  ["M10x1.25", 9.76, 9.972, 8.6468, 8.9118, 1.25],
  ["M11x1.5", 10.732, 10.968, 9.3762, 9.6762, 1.5],
  ["7/16-24", 10.8994, 11.0825, 9.9668, 10.2138, 1.0583],
  ["7/16-20", 10.8739, 11.0807, 9.7377, 10.0298, 1.27],
  ["M12x1", 11.794, 11.974, 10.9175, 11.1535, 1.0],
  ["M12x1.25", 11.76, 11.972, 10.6468, 10.9118, 1.25],
  ["M12x1.5", 11.732, 11.968, 10.3762, 10.6762, 1.5],
  ["1/2-20", 12.4605, 12.6673, 11.3252, 11.6173, 1.27],
  ["1/2-24", 12.4859, 12.6691, 11.5543, 11.8013, 1.0583],
  ["M13x1.5", 12.732, 12.968, 11.3762, 11.6762, 1.5],
  ["M14x1.5", 13.732, 13.968, 12.3762, 12.6762, 1.5],
  ["9/16-18", 14.031, 14.2529, 12.7599, 13.0813, 1.4111],
  ["9/16-20", 14.0471, 14.254, 12.9127, 13.2048, 1.27],
  ["5/8-18", 15.6177, 15.8395, 14.3474, 14.6688, 1.4111],
  ["M16x1.5", 15.732, 15.968, 14.3762, 14.6762, 1.5],
];

test.each(windows)("%s has the caliper windows of the data set", (name, leastMajor, mostMajor, leastMinor, mostMinor, pitch) => {
  const [outside, inside] = [externalMajorWindow(named(name)), internalMinorWindow(named(name))];
  const computed = [outside.least, outside.most, inside.least, inside.most].map(inMillimetres);
  [leastMajor, mostMajor, leastMinor, mostMinor].forEach((expected, index) => {
    expect(Math.abs((computed[index] ?? NaN) - expected)).toBeLessThan(0.002);
  });
  expect(inMillimetres(named(name).pitch)).toBeCloseTo(pitch, 4);
});

// Check values B23, B24, B27, B28: ASME B1.1-1989, 1/4-20 class 2, as asserted in a public script (read), to 0.0001 in.
test.each([
  ["B23 least major diameter outside", externalMajorWindow(named("1/4-20")).least, 0.2408],
  ["B24 most major diameter outside", externalMajorWindow(named("1/4-20")).most, 0.2489],
  ["B27 least minor diameter inside", internalMinorWindow(named("1/4-20")).least, 0.1959],
  ["B28 most minor diameter inside", internalMinorWindow(named("1/4-20")).most, 0.2074],
])("1/4-20: %s", (_, computed, published) => {
  expect(Math.abs(inInches(computed) - published)).toBeLessThan(0.0001);
});

// Check values B38 to B42: ASME B1.1 table values for 2A (from memory), to 0.00015 in.
test.each([
  ["B38", "3/8-24", 0.3667, 0.3739],
  ["B39", "1/2-20", 0.4906, 0.4987],
  ["B40", "7/16-20", 0.4281, 0.4362],
  ["B41", "9/16-18", 0.5524, 0.5611],
  ["B42", "5/8-18", 0.6149, 0.6236],
])("%s: %s measures %d to %d in outside", (_, name, least, most) => {
  const window = externalMajorWindow(named(name));
  expect(Math.abs(inInches(window.least) - least)).toBeLessThan(0.00015);
  expect(Math.abs(inInches(window.most) - most)).toBeLessThan(0.00015);
});

// Check value B46: 25.4 / 24.
test("24 threads to the inch is a pitch of 1.0583 mm", () => expect(inMillimetres(named("3/8-24").pitch)).toBeCloseTo(1.0583, 4));

test.each([
  ["3/8-24", "3/8-24"],
  [" 3/8 - 24 ", "3/8-24"],
  ["3/8x24", "3/8-24"],
  ["7/16-20 UNF", "7/16-20"],
  ["11/16-18", "11/16-18"],
  ["1 1/16-16", "1 1/16-16"],
  ["M10x1", "M10x1"],
  ["m10 × 1.0", "M10x1"],
  ["M12 x 1.50", "M12x1.5"],
  ["1/8-27 NPT", "1/8-27 NPT"],
  ["1/8-27npt", "1/8-27 NPT"],
])("%s is %s", (written, name) => expect(threadNamed(written)?.name).toBe(name));

test.each(["", "M10", "3/8", "9/16-19x", "3/0-24", "0/8-24", "3/8-0", "M10x9", "10x1", "5/8-27 NPT", "nut"])("%s names no thread", (written) => expect(threadNamed(written)).toBeUndefined());

// The pairs that are easily taken for one another: 3/8-24 in M10x1, 7/16-20 in 7/16-24, 1/2-20 beside M13x1.5; the limits are the shipped Settings.
test.each([
  ["3/8-24", "M10x1", true],
  ["7/16-20", "7/16-24", true],
  ["1/2-20", "M13x1.5", true],
  ["3/8-24", "3/8-24", false],
  ["3/8-24", "7/16-24", false],
  ["M10x1", "M12x1", false],
  ["M10x1", "M10x1.5", false],
])("%s and %s are a near miss: %s", (a, b, near) => {
  const limits = { diameter: millimetres(0.5), pitchShare: 0.25 };
  expect(isNearMiss(named(a), named(b), limits)).toBe(near);
  expect(isNearMiss(named(b), named(a), limits)).toBe(near);
});

test("every thread of the data set is itself under its own name and measures inside its window when new", () => {
  for (const [name] of windows) {
    const { least, most } = externalMajorWindow(named(name));
    expect(named(name).name).toBe(name);
    expect(least).toBeLessThan(most);
    expect(most).toBeLessThanOrEqual(named(name).majorDiameter);
    expect(named(name).majorDiameter - least).toBeLessThan(inches(0.011));
  }
});

/**
 * Pitches that the table of grades lacks come from the formulas behind it: M5x0.8 measures 4.826 to 4.976 mm outside (6g) and 4.134 to 4.334 inside (6H),
 * M24x3 23.577 to 23.952 and 20.752 to 21.252 (ISO 965-2, from memory). The standard rounds its formulas, by up to 0.015 mm here.
 */
test.each([
  ["M5x0.8", 4.826, 4.976, 4.134, 4.334],
  ["M24x3", 23.577, 23.952, 20.752, 21.252],
])("%s is within what the standard rounds", (name, leastMajor, mostMajor, leastMinor, mostMinor) => {
  const [outside, inside] = [externalMajorWindow(named(name)), internalMinorWindow(named(name))];
  [leastMajor, mostMajor, leastMinor, mostMinor].forEach((expected, index) => {
    expect(Math.abs(inMillimetres([outside.least, outside.most, inside.least, inside.most][index] ?? metres(NaN)) - expected)).toBeLessThan(0.016);
  });
});
