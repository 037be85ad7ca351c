/** The sketches of all demo cars. */
import { demoTables } from "../../../src/catalogue/demo";
import { parseCars } from "../../../src/catalogue/parse-cars";
import { parseCatalogue } from "../../../src/catalogue/parse-catalogue";
import { reportOn } from "../../../src/core/report";
import { sketchOf, type Sketch } from "../../../src/taskpane/drawing/sketch";

export function demoSketches(): readonly Sketch[] {
  const { catalogue } = parseCatalogue(demoTables.filter(({ name }) => name !== "Cars"));
  const cars = demoTables.find(({ name }) => name === "Cars");
  return parseCars(cars?.headings ?? [], cars?.rows ?? []).cars.flatMap(({ car }) => (car ? [sketchOf(reportOn(catalogue, car), catalogue)] : []));
}

/** @throws Error when the demo has no such car */
export function demoSketch(name: string): Sketch {
  const found = demoSketches().find((sketch) => sketch.name === name);
  if (!found) throw new Error(`The demo has no ${name}.`);
  return found;
}
