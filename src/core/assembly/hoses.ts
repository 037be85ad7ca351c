/** Where a car's hoses are: at which wheels, or between frame and rear axle. */
import type { Car, MeasuredLength } from "../car";
import { lookUp, type Catalogue } from "../catalogue";
import { AXLE_MATE, axleOf, WHEELS, type Axle, type Component, type Wheel } from "../component";
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
    // The same hose named for the other axle is no twin of this one.
    const same = (other: ListedInstance): boolean => other !== part && other.instance.component === component && axleNamed(other.at ?? "") === axleNamed(part.at ?? "");
    const where = positionOf(context, part, parts.some((other) => same(other) || (other !== part && standsAtAxle(other))));
    if (where === "rear axle") {
      toRearAxle ??= { label: component.name, component, place: "rear-hose", outletPlace: "axle-tee" };
      continue;
    }
    const free = where.filter((wheel) => !atWheel[wheel]);
    // Listed again further on, this one takes one wheel and leaves the other to its twin.
    const taken = part.at === undefined && parts.slice(index + 1).some(same) ? free.slice(0, 1) : free;
    for (const wheel of taken) atWheel[wheel] = hoseAt(component, wheel);
  }
  askAboutUnplaced(context, parts);
  return { atWheel: withMates(context.open, atWheel, parts), toRearAxle };
}

const hoseAt = (component: Component, wheel: Wheel): Instance => ({ label: `${component.name}@${wheel}`, component, place: wheel, wheel });

function positionOf({ lengths }: Context, { instance, at }: ListedInstance, besidesAnother: boolean): readonly Wheel[] | "rear axle" {
  const hose = instance.component;
  const place = placeKey(at ?? hose.place ?? "");
  const served = wheelsServedBy(hose);
  const stated = wheelNamed(place);
  // A part that serves an axle and is filed under one of its wheels is at both; where the row says the wheel, it is there.
  if (stated) return at === undefined && served.includes(stated) ? served : [stated];
  if (place === "rear-hose" || isBeyondRearHose(place)) return "rear axle";
  if (served.length === 1) return served;
  const axle = axleNamed(place) ?? axleOfAll(served);
  if (axle === "rear" && !besidesAnother && goesToAxle(hose, lengths)) return "rear axle";
  return axle ? WHEELS.filter((name) => axleOf(name) === axle) : WHEELS;
}

const wheelNamed = (place: string): Wheel | undefined => WHEELS.find((name) => name.toLowerCase() === place);

/** Nothing says where these are. One kind of hose then goes to every wheel without another; which of two goes where has to be asked. */
function askAboutUnplaced({ open, car }: Context, parts: readonly ListedInstance[]): void {
  const unplaced = parts.filter(({ instance, at }) => placeKey(at ?? instance.component.place ?? "") === "" && wheelsServedBy(instance.component).length !== 1 && axleOfAll(wheelsServedBy(instance.component)) === undefined);
  const names = [...new Set(unplaced.map(({ instance }) => instance.component.name))];
  for (const name of names) {
    open.assumptions.push(`hose ${name} is taken to be at every wheel without another`);
    if (names.length > 1) askCar(open, car, { column: "Hoses", ask: `Where is hose ${name}: front or rear? Write ${name}@front or ${name}@rear.`, why: "the line's last joint is at its inlet" });
  }
}

/** A hose listed once and filed under one wheel stands for the pair, unless the row says that wheel or lists another for its mate. */
function withMates(open: OpenPoints, atWheel: Readonly<Partial<Record<Wheel, Instance>>>, parts: readonly ListedInstance[]): Partial<Record<Wheel, Instance>> {
  const all: Partial<Record<Wheel, Instance>> = { ...atWheel };
  for (const { instance: { component }, at } of parts) {
    const wheel = at === undefined ? wheelNamed(placeKey(component.place ?? "")) : undefined;
    const mate = wheel && AXLE_MATE[wheel];
    const once = parts.filter((other) => other.instance.component === component).length === 1;
    if (!mate || !once || all[mate]) continue;
    all[mate] = hoseAt(component, mate);
    open.assumptions.push(`hose ${component.name}, listed for ${wheel} only, is taken to be at ${mate} too`);
  }
  return all;
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
