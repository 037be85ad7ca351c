/** The plan is measured on every demo car, and on thousands of random ones, sound and faulty: nothing overlaps, nothing is left out. */
import fc from "fast-check";
import { layOut } from "../../../src/taskpane/drawing/layout";
import { sketchOf, type Sketch } from "../../../src/taskpane/drawing/sketch";
import { property } from "../../core/seeded";
import { faults } from "../../core/sound/faults";
import { soundCars } from "../../core/sound/model";
import { PLATFORMS, render, type Rendered } from "../../core/sound/render";
import { catalogueOf, catalogueOn, reportIn } from "../../core/workshop";
import { demoSketch, demoSketches } from "./demo-sketches";
import { linesMissing, linesOnOneAnother, linesThroughBoxes, linesThroughWriting, outsideOf, overlapsOn, writingAcrossBoxes } from "./faults-of-plan";

const faultsOfPlan = (sketch: Sketch): string[] => {
  const plan = layOut(sketch);
  return [
    ...overlapsOn(plan), ...outsideOf(plan), ...writingAcrossBoxes(plan), ...linesThroughWriting(plan), ...linesThroughBoxes(plan), ...linesOnOneAnother(plan), ...linesMissing(sketch, plan),
  ];
};

const sketches = demoSketches();

test("the demo has cars to draw", () => expect(sketches.length).toBeGreaterThan(20));

test.each(sketches.map((sketch) => [sketch.name, sketch] as const))("%s: no writing overlaps, no line lies on another or goes through a box", (_, sketch) => {
  expect(faultsOfPlan(sketch)).toEqual([]);
});

const ground = catalogueOf({ platforms: PLATFORMS, workshopParts: ["SW"] });
function sketchIn({ cells, shop }: Rendered): Sketch {
  const catalogue = catalogueOn(ground, shop);
  return sketchOf(reportIn(catalogue, cells), catalogue);
}

property("a sound car's plan is in order", 200, soundCars, (model) => expect(faultsOfPlan(sketchIn(render(model)))).toEqual([]));

property("a faulty car's plan is in order", 200, fc.tuple(soundCars, fc.constantFrom(...faults)), ([model, { befalls }]) => {
  const car = befalls(model);
  fc.pre(car !== undefined);
  expect(faultsOfPlan(sketchIn(car))).toEqual([]);
});

test("the nose is up, the wheels are at the corners, rows go from front to rear", () => {
  const plan = layOut(demoSketch("Car 2"));
  const tyre = Object.fromEntries(plan.wheels.map(({ wheel: { wheel }, tyre: box }) => [wheel, box]));
  expect(tyre["LF"]?.x).toBe(tyre["LR"]?.x);
  expect((tyre["LF"]?.x ?? 0) < (tyre["RF"]?.x ?? 0)).toBe(true);
  const heights = ["MC-1", "HV-1", "BLK-E", "PV-F", "HOSE-R", "TEE-AX"].map((label) => plan.parts.find(({ part }) => part.label === label)?.box.y ?? 0);
  expect([tyre["LF"]?.y ?? 0, ...heights, tyre["LR"]?.y ?? 0]).toEqual([tyre["LF"]?.y ?? 0, ...heights, tyre["LR"]?.y ?? 0].sort((a, b) => a - b));
});

// Car 2 is on a platform with the driver on the left, Car 6 on one with the driver on the right (src/catalogue/demo/platforms.ts).
test.each([["Car 2", "left"], ["Car 6", "right"]])("the master of %s is on the %s, where the driver sits", (name, side) => {
  const plan = layOut(demoSketch(name));
  const master = plan.parts.find(({ part }) => part.instance.component.kind === "master")?.box;
  expect((master?.x ?? 0) + (master?.width ?? 0) / 2 < plan.width / 2 ? "left" : "right").toBe(side);
});

test("a driver side that is not known is said", () => {
  const sketch = { ...demoSketch("Car 2"), driverSide: undefined };
  expect(layOut(sketch).labels.map(({ text }) => text)).toContain("nose up, driver side not known");
  expect(faultsOfPlan(sketch)).toEqual([]);
});

test("a place of the shop's own stands between what feeds its part and what its part feeds", () => {
  // The load-sensing valve of Car 11 stands at spring-hanger, between the master and the rear hose.
  const top = (label: string): number => layOut(demoSketch("Car 11")).parts.find(({ part }) => part.label === label)?.box.y ?? NaN;
  expect(top("MC-M2")).toBeLessThan(top("PV-ML"));
  expect(top("PV-ML")).toBeLessThan(top("HOSE-RMA"));
});

test("the same sketch gives the same plan", () => expect(layOut(demoSketch("Car 12"))).toEqual(layOut(demoSketch("Car 12"))));

test("in a pane of 350 pixels the smallest figure of every demo car is 7.9 pixels or more; zoom does the rest", () => {
  // A pane of 350 pixels leaves 326 for the drawing; the nut's writing is 9.5 units.
  for (const sketch of sketches) expect((326 / layOut(sketch).width) * 9.5).toBeGreaterThanOrEqual(7.9);
});
