import { failure, tableFrom, type Cell } from "./sheet";

const bends = (...args: unknown[]): Cell[][] => tableFrom("BENDS", ...[...args, null, null, null].slice(0, 5));

describe("BENDS", () => {
  // By hand: set-back 20 tan 45° = 20; straights 80, 60, 80; arcs 10π = 31.4159; 220 + 20π = 282.8319.
  const expected = [
    ["Bend", "Straight (mm)", "Rotation (°)", "Angle (°)", "Radius (mm)", "Arc (mm)", "Set-back (mm)", "Starts at (mm)", "Developed (mm)", "Problem"],
    [1, 80, 0, 90, 20, 31.4159, 20, 80, 111.4159, ""],
    [2, 60, 90, 90, 20, 31.4159, 20, 171.4159, 202.8319, ""],
    ["end", 80, "", "", "", "", "", "", 282.8319, ""],
    ["total", 220, "", "", "", 62.8319, "", "", 282.8319, ""],
  ];

  test.each([
    ["three columns", [[0, 0, 0], [100, 0, 0], [100, 100, 0], [100, 100, 100]]],
    ["headings, and blank rows at the end", [["X", "Y", "Z"], [0, 0, 0], [100, 0, 0], [100, 100, 0], [100, 100, 100], [0, 0, 0]]],
    ["text in one cell", [["0 0 0; 100 0 0; 100, 100, 0; 100 100 100"]]],
    ["text, a cell a point", [["0 0 0"], ["100 0 0"], ["100 100 0"], ["100 100 100"]]],
  ])("points as %s", (_, points) => expect(bends(points, 20, "mm")).toEqual(expected));

  test("inches are the unit when none is said", () => {
    // By hand: legs 4 and 3 at radius 1: 3 + 2 + π/2.
    expect(bends([[0, 0, 0], [4, 0, 0], [4, 3, 0]], 1).at(-1)).toEqual(["total", 5, "", "", "", 1.5708, "", "", 6.5708, ""]);
  });

  test("what is wrong stands in the row of the leg before it, or in the total", () => {
    const table = bends([[0, 0, 0], [50, 0, 0], [100, 0, 0], [100, 30, 0], [100, 30, 100]], 20, "mm", 90, 25);
    expect(table.map((row) => row.at(-1))).toEqual([
      "Problem",
      "point 3: the straight is shorter than the bender's grip; point 3: the radius is below the least of the tube",
      "point 4: the bends at its ends overlap: the leg is shorter than their set-backs; point 4: the radius is below the least of the tube",
      "point 5: the straight is shorter than the bender's grip",
      "point 2: the legs before and after are in line: no bend here",
    ]);
  });

  test("a line that cannot be bent answers with its reason", () => expect(bends([[0, 0, 0], [100, 0, 0], [20, 0, 0]], 20, "mm").at(-1)?.at(-1)).toMatch(/point 2: the leg turns right back/));

  test.each([
    ["no radius", [[[0, 0, 0], [1, 0, 0]], 0, null, null, null], /^radius: read nothing/],
    ["a radius below 0", [[[0, 0, 0], [1, 0, 0]], -1, null, null, null], /^radius: read "-1"/],
    ["a radius that no bender has", [[[0, 0, 0], [1, 0, 0]], 4000, null, null, null], /^radius: read 4000 in; accepted: up to 100 m/],
    ["a grip that no bender has", [[[0, 0, 0], [1, 0, 0]], 1, "mm", 100001, null], /^grip: read 100001 mm/],
    ["no points", [[[0]], 1, null, null, null], /^points: read nothing/],
  ] as const)("%s answers #VALUE!", (_, args, message) => expect(failure("BENDS", ...args)).toEqual({ kind: "value", message: expect.stringMatching(message) as string }));
});
