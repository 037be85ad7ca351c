/** Thousands of cars that are sound by construction must raise nothing, and each known fault exactly its code. */
import fc from "fast-check";
import { faults, type Fault } from "./sound/faults";
import { soundCars } from "./sound/model";
import { PLATFORMS, render, type Rendered } from "./sound/render";
import { property, seed } from "./seeded";
import { catalogueOf, catalogueOn, reportIn } from "./workshop";

const ground = catalogueOf({ platforms: PLATFORMS, workshopParts: ["SW"] });
const reportOn = ({ cells, shop }: Rendered) => reportIn(catalogueOn(ground, shop), cells);
const codesAboveNote = (car: Rendered): string[] => [...new Set(reportOn(car).findings.filter(({ severity }) => severity !== "note").map(({ code }) => code))];

property("a sound car raises nothing above a note, asks nothing, and every wheel has its path and every end its nut", 2000, soundCars, (model) => {
  const { findings, questions, paths, runs } = reportOn(render(model));
  expect(findings.filter(({ severity }) => severity !== "note").map(({ code, says }) => `${code}: ${says}`)).toEqual([]);
  expect(questions.map(({ ask }) => ask)).toEqual([]);
  expect(paths.map(({ wheel }) => wheel).sort()).toEqual(["LF", "LR", "RF", "RR"]);
  expect(runs.flatMap(({ a, b, problems }) => [a.fitting?.fits, b.fitting?.fits, problems.length === 0])).not.toContain(false);
});

const befallen = new Set<string>();
function raisesItsCode({ name, code, mayFollow = [] }: Fault, car: Rendered): void {
  befallen.add(name);
  const codes = codesAboveNote(car);
  expect({ name, codes: codes.filter((one) => !mayFollow.some((other) => other === one)) }).toEqual({ name, codes: [code] });
}

property("one known fault raises exactly its code, and at most what is listed to follow", 2000, fc.tuple(soundCars, fc.constantFrom(...faults)), ([model, fault]) => {
  const car = fault.befalls(model);
  fc.pre(car !== undefined);
  raisesItsCode(fault, car);
});

test("no fault of the list is left out: one that chance passed over is tried on the first car it can befall", () => {
  for (const fault of faults.filter(({ name }) => !befallen.has(name))) {
    const car = firstOf(fc.sample(soundCars, { numRuns: 2000, seed }), (model) => fault.befalls(model));
    if (!car) throw new Error(`${fault.name} befalls none of 2000 cars.`);
    raisesItsCode(fault, car);
  }
});

function firstOf<T, U>(all: readonly T[], find: (one: T) => U | undefined): U | undefined {
  for (const one of all) {
    const found = find(one);
    if (found !== undefined) return found;
  }
  return undefined;
}
