import { inches, metres } from "../../src/core/quantity";
import { tallyParts } from "../../src/taskpane/unparted";
import { count, sayLength, sayVerdicts, sayWall } from "../../src/taskpane/words";

test("verdicts are counted worst first, and those no car has are left out", () => {
  expect(sayVerdicts(["sound", "stop", "watch", "stop", "note"])).toBe("5 cars: 2 on hold, 1 to watch, 2 sound");
  expect(sayVerdicts(["decide"])).toBe("1 car: 1 to decide");
  expect(sayVerdicts([undefined, "sound"])).toBe("2 cars: 1 sound, 1 not worked out");
});

test("one is one, many are many", () => {
  expect([count(1, "run"), count(0, "run"), count(2, "fish", "fish")]).toEqual(["1 run", "0 runs", "2 fish"]);
});

// 30 ft are 360 in; 25.4 mm to the inch is exact
test.each([[inches(360), "us", "30.0 ft"], [metres(9.144), "metric", "9.14 m"]] as const)("a length of %d m in %s is %s", (length, units, said) => {
  expect(sayLength(length, units)).toBe(said);
});

test.each([[inches(0.028), "us", "0.028 in"], [inches(0.028), "metric", "0.71 mm"]] as const)("a wall of %d m in %s is %s", (wall, units, said) => {
  expect(sayWall(wall, units)).toBe(said);
});

test("a tally breaks between its parts alone, and a number of thousands is one part", () => {
  expect(tallyParts("1,024 cars: 7 on hold, 3 to decide, 1,014 sound.")).toEqual(["1,024 cars:", "7 on hold,", "3 to decide,", "1,014 sound."]);
  expect(tallyParts("No run has a length yet.")).toEqual(["No run has a length yet."]);
});
