/** The sketches of all demo cars. */
import { demoTables } from "../../../src/catalogue/demo";
import { parseCars } from "../../../src/catalogue/parse-cars";
import { parseCatalogue } from "../../../src/catalogue/parse-catalogue";
import type { Car } from "../../../src/core/car";
import { reportOn } from "../../../src/core/report";
import { sketchOf, type Sketch } from "../../../src/taskpane/drawing/sketch";

export interface DemoDrawing {
  readonly sketch: Sketch;
  readonly car: Car;
}

const { catalogue } = parseCatalogue(demoTables.filter(({ name }) => name !== "Cars"));

function demoDrawings(wanted: (name: string) => boolean = () => true): readonly DemoDrawing[] {
  const cars = demoTables.find(({ name }) => name === "Cars");
  return parseCars(cars?.headings ?? [], cars?.rows ?? []).cars.flatMap(({ car }) => (car && wanted(car.name) ? [{ sketch: sketchOf(reportOn(catalogue, car), catalogue), car }] : []));
}

export const demoSketches = (): readonly Sketch[] => demoDrawings().map(({ sketch }) => sketch);

export const demoSketch = (name: string): Sketch => demoDrawing(name).sketch;

/** @throws Error when the demo has no such car */
export function demoDrawing(name: string): DemoDrawing {
  const [found] = demoDrawings((one) => one === name);
  if (!found) throw new Error(`The demo has no ${name}.`);
  return found;
}
