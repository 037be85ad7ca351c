/** Lanes, and things put side by side; the expected values are worked by hand on paper. */
import { lanesOf, stackLanes, type Way } from "../../../src/taskpane/drawing/lanes";
import { spread } from "../../../src/taskpane/drawing/spread";

const way = (above: number, below: number): Way => ({ above, below });

test("ways apart share the first lane, ways over one another do not", () => {
  expect(lanesOf([way(0, 40), way(60, 100)])).toEqual([[{ lane: 0, to: 40 }], [{ lane: 0, to: 100 }]]);
  expect(lanesOf([way(0, 80), way(60, 100)])).toEqual([[{ lane: 0, to: 80 }], [{ lane: 1, to: 100 }]]);
});

test("a way that comes down where another goes on down lies above it", () => {
  // The second comes in at 50, where the first goes out: the other way round they would share the column of 50.
  expect(lanesOf([way(0, 50), way(50, 100)])).toEqual([[{ lane: 1, to: 50 }], [{ lane: 0, to: 100 }]]);
});

test("two ways that change places are parted by a step", () => {
  const steps = lanesOf([way(0, 100), way(100, 0)]);
  expect(steps.map((one) => one.length)).toEqual([2, 1]);
  const [first, second] = steps;
  const [down, on] = [first?.[0], first?.[1]];
  // Down to a column of its own above the other way, and on from there below it.
  expect((down?.lane ?? 9) < (second?.[0]?.lane ?? 0) && (second?.[0]?.lane ?? 9) < (on?.lane ?? 0)).toBe(true);
  expect([0, 100].every((column) => Math.abs(column - (down?.to ?? 0)) >= 8)).toBe(true);
  expect(on?.to).toBe(100);
});

test("stretches along the car take the first lane that is free", () => {
  expect(stackLanes([[0, 100], [150, 300], [90, 160], [400, 310]])).toEqual([0, 0, 1, 0]);
});

// Two boxes of 10 that both want to begin at 0, 2 apart: least squares puts them at -6 and 6, and the edge moves them to 0 and 12.
test.each([
  ["both want one place", [0, 0], 100, [0, 12]],
  ["apart they stand where they want", [5, 40], 100, [5, 40]],
  ["they meet half way", [20, 20], 100, [14, 26]],
  ["the far edge holds them", [95, 95], 100, [78, 90]],
])("%s", (_, wants, room, expected) => {
  expect(spread(wants.map((want) => ({ width: 10, wants: want, weight: 1 })), room, 2)).toEqual(expected);
});

test("weight decides who gives way", () => {
  // 3 × 20 + 1 × (20 - 12) over 4 is 17.
  expect(spread([{ width: 10, wants: 20, weight: 3 }, { width: 10, wants: 20, weight: 1 }], 100, 2)).toEqual([17, 29]);
});
