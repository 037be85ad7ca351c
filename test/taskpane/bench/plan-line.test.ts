import { sayPlans } from "../../../src/taskpane/bench/plan-line";

test.each([
  [{ wanted: 8, open: 5, stopped: 0 }, "Planning the cuts: 3 of 8 …"],
  [{ wanted: 1, open: 1, stopped: 0 }, "Planning the cuts: 0 of 1 …"],
  [{ wanted: 8, open: 0, stopped: 5 }, "Stopped: 5 of 8 plans were not made. The others stand."],
  [{ wanted: 8, open: 0, stopped: 1 }, "Stopped: 1 of 8 plans was not made. The others stand."],
  [{ wanted: 2, open: 0, stopped: 2 }, "Stopped: no plan was made."],
])("%j is said so", (counts, says) => expect(sayPlans(counts)).toBe(says));
