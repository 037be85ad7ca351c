/** The car's listed parts as instances: which component, where, under which label. */
import type { Car } from "../car";
import type { Catalogue } from "../catalogue";
import type { Wheel } from "../component";
import type { Instance } from "./graph";
import { hosesOf, type Hoses } from "./hoses";
import { listedParts, type ListedInstance } from "./listed-parts";
import { askCar, findPart, nothingOpen, type OpenPoints } from "./open-points";
import { unstatedBrake, withInlet } from "./stand-in";

export interface Parts {
  readonly master: Instance | undefined;
  /** In flow order; tees are apart, because they go where outlets are short. */
  readonly valves: readonly ListedInstance[];
  readonly tees: readonly ListedInstance[];
  readonly switches: readonly Instance[];
  readonly brakes: Readonly<Record<Wheel, Instance>>;
  readonly hoses: Hoses;
  /** The list of valves is open, in whole or in part: every joint inferred from it would be a guess. */
  readonly valvesUnknown: boolean;
  readonly open: OpenPoints;
}

/** Reads the parts that a car's row lists; what it leaves out becomes a question, and a stand-in without a thread. */
export function partsOf(catalogue: Catalogue, car: Car): Parts {
  const open = nothingOpen();
  if (!car.valves.known) askCar(open, car, { column: "Valves", ask: "Which valves are on the car now, from the master on?", why: "every line and joint depends on them" });
  const listed = listedParts(open, catalogue, "Valves", car.valves.known ? car.valves.value : []);
  const ofKind = (kind: string): ListedInstance[] => listed.filter(({ instance }) => instance.component.kind === kind);
  return {
    master: masterOf(open, catalogue, car),
    valves: listed.filter(({ instance }) => instance.component.kind !== "tee" && instance.component.kind !== "switch"),
    tees: ofKind("tee"),
    switches: ofKind("switch").map(({ instance }) => instance),
    brakes: brakesOf(open, catalogue, car),
    hoses: hosesOf(open, catalogue, car),
    valvesUnknown: !car.valves.known || open.unknownParts.some(({ column }) => column === "Valves"),
    open,
  };
}

function masterOf(open: OpenPoints, catalogue: Catalogue, car: Car): Instance | undefined {
  if (car.master === undefined) {
    askCar(open, car, { column: "Master", ask: "Which master cylinder is on the car?", why: "every line starts at its outlets" });
    return undefined;
  }
  const component = findPart(open, catalogue, "Master", car.master);
  return component && { label: component.name, component, place: component.place ?? "master" };
}

function brakesOf(open: OpenPoints, catalogue: Catalogue, car: Car): Record<Wheel, Instance> {
  const find = (column: string, axle: "front" | "rear") => {
    const name = car.brakes[axle];
    if (name !== undefined) return findPart(open, catalogue, column, name);
    askCar(open, car, { column, ask: `Which brakes are at the ${axle}?`, why: "the line ends there" });
    return undefined;
  };
  const [front, rear] = [find("Front brake", "front"), find("Rear brake", "rear")];
  const at = (wheel: Wheel, component: typeof front): Instance =>
    component
      ? { label: `${component.name}@${wheel}`, component: withInlet(component), place: wheel, wheel }
      : { label: `brake@${wheel}`, component: unstatedBrake, place: wheel, wheel, unnamed: true };
  return { LF: at("LF", front), RF: at("RF", front), LR: at("LR", rear), RR: at("RR", rear) };
}
