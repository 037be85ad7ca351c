/** Where a car's hoses are: at which wheels, or between frame and rear axle. */
import type { Car, MeasuredLength } from "../car";
import { lookUp, type Catalogue } from "../catalogue";
import { axleOf, WHEELS, type Axle, type Component, type Wheel } from "../component";
import { isBeyondRearHose, placeKey, type Instance } from "./graph";
import { listedParts, type ListedInstance } from "./listed-parts";
import { askCar, type OpenPoints } from "./open-points";
import { unstatedHose } from "./stand-in";

export interface Hoses {
  readonly atWheel: Readonly<Partial<Record<Wheel, Instance>>>;
  /** The one hose between frame and axle, where there is one. */
  readonly toRearAxle: Instance | undefined;
}

/** Places the listed hoses; where the row does not say which there are, stand-ins end the lines and a question says so. */
export function hosesOf(open: OpenPoints, catalogue: Catalogue, car: Car): Hoses {
  const lengths = lookUp(catalogue.lengths, car.platform) ?? [];
  if (!car.hoses.known) {
    askCar(open, car, { column: "Hoses", ask: "Which hoses are on the car (or none)?", why: "the line's last joint is at the hose" });
    return unstatedHoses(lengths);
  }
  const parts = listedParts(open, catalogue, "Hoses", car.hoses.value);
  if (open.unknownParts.some(({ column }) => column === "Hoses")) return unstatedHoses(lengths);
  return placed({ open, car, lengths }, parts);
}

interface Context {
  readonly open: OpenPoints;
  readonly car: Car;
  readonly lengths: readonly MeasuredLength[];
}

function placed(context: Context, parts: readonly ListedInstance[]): Hoses {
  const atWheel: Partial<Record<Wheel, Instance>> = {};
  let toRearAxle: Instance | undefined;
  for (const [index, part] of parts.entries()) {
    const { component } = part.instance;
    const same = (other: ListedInstance): boolean => other !== part && other.instance.component === component;
    const where = positionOf(context, part, parts.some((other) => same(other) || (other !== part && standsAtAxle(other))));
    if (where === "rear axle") {
      toRearAxle ??= { label: component.name, component, place: "rear-hose", outletPlace: "axle-tee" };
      continue;
    }
    const free = where.filter((wheel) => !atWheel[wheel]);
    // Listed again further on, this one takes one wheel and leaves the other to its twin.
    const taken = part.at === undefined && parts.slice(index + 1).some(same) ? free.slice(0, 1) : free;
    for (const wheel of taken) atWheel[wheel] = { label: `${component.name}@${wheel}`, component, place: wheel, wheel };
  }
  return { atWheel, toRearAxle };
}

function positionOf(context: Context, { instance, at }: ListedInstance, besidesAnother: boolean): readonly Wheel[] | "rear axle" {
  const hose = instance.component;
  const place = placeKey(at ?? hose.place ?? "");
  const stated = WHEELS.find((name) => name.toLowerCase() === place);
  if (stated) return [stated];
  if (place === "rear-hose" || isBeyondRearHose(place)) return "rear axle";
  const served = wheelsServedBy(hose);
  if (served.length === 1) return served;
  const axle = axleNamed(place) ?? axleOfAll(served);
  if (axle === "rear" && !besidesAnother && goesToAxle(hose, context.lengths)) return "rear axle";
  if (axle) return WHEELS.filter((name) => axleOf(name) === axle);
  askCar(context.open, context.car, { column: "Hoses", ask: `Where is hose ${hose.name}: front or rear? Write ${hose.name}@front or ${hose.name}@rear.`, why: "the line's last joint is at its inlet" });
  context.open.assumptions.push(`hose ${hose.name} is taken to be at every wheel without another`);
  return WHEELS;
}

/** A hose that says itself that it goes to the axle; another one listed for the rear is then at the wheels. */
function standsAtAxle({ instance, at }: ListedInstance): boolean {
  const place = placeKey(at ?? instance.component.place ?? "");
  return place === "rear-hose" || place === "axle-tee" || place === "axle";
}

/** The wheels that a hose's ports name; none when they name none. */
function wheelsServedBy(hose: Component): readonly Wheel[] {
  const named = hose.ports.map(({ serves }) => serves).filter((serves) => serves !== "any");
  return WHEELS.filter((wheel) => named.some((serves) => serves === wheel || serves === axleOf(wheel)));
}

function axleOfAll(wheels: readonly Wheel[]): Axle | undefined {
  const axles = new Set(wheels.map(axleOf));
  return axles.size === 1 ? [...axles][0] : undefined;
}

const axleNamed = (place: string): Axle | undefined => (place.startsWith("front") ? "front" : place.startsWith("rear") ? "rear" : undefined);

/** One hose listed for the rear: two outlets, or the platform's own places, tell that it goes to the axle. */
const goesToAxle = (hose: Component, lengths: readonly MeasuredLength[]): boolean =>
  hose.ports.filter((port) => port.flow === "out").length > 1 || hasPlace(lengths, "rear-hose") || hasPlace(lengths, "axle-tee");

const hasPlace = (lengths: readonly MeasuredLength[], place: string): boolean => lengths.some(({ from, to }) => placeKey(from) === place || placeKey(to) === place);

function unstatedHoses(lengths: readonly MeasuredLength[]): Hoses {
  const at = (wheel: Wheel): Instance => ({ label: `hose@${wheel}`, component: unstatedHose, place: wheel, wheel, unnamed: true });
  const fronts = { LF: at("LF"), RF: at("RF") };
  if (!hasPlace(lengths, "rear-hose")) return { atWheel: { ...fronts, LR: at("LR"), RR: at("RR") }, toRearAxle: undefined };
  return { atWheel: fronts, toRearAxle: { label: "hose@rear", component: unstatedHose, place: "rear-hose", outletPlace: "axle-tee", unnamed: true } };
}
