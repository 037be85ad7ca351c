/** Thousands of cars that are sound by construction must raise nothing, and each known fault exactly its code. */
import fc from "fast-check";
import { faults } from "./sound/faults";
import { soundCars } from "./sound/model";
import { PLATFORMS, render, type Rendered } from "./sound/render";
import { property } from "./seeded";
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

const befallen = new Map<string, number>();
property("one known fault raises exactly its code, and at most what is listed to follow", 2000, fc.tuple(soundCars, fc.constantFrom(...faults)), ([model, { name, code, mayFollow = [], befalls }]) => {
  const car = befalls(model);
  fc.pre(car !== undefined);
  befallen.set(name, (befallen.get(name) ?? 0) + 1);
  const codes = codesAboveNote(car);
  expect({ name, codes: codes.filter((one) => !mayFollow.some((other) => other === one)) }).toEqual({ name, codes: [code] });
});

test("every fault of the list befell a car", () => expect(faults.map(({ name }) => name).filter((name) => !befallen.has(name))).toEqual([]));
