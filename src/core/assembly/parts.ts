/** The car's listed parts as instances: which component, where, under which label. */
import type { Car, ListedPart } from "../car";
import { axleOf, WHEELS, type Axle, type Component, type ComponentKind, type Wheel } from "../component";
import { lookUp, type Catalogue } from "../catalogue";
import type { Question } from "../question";
import { isBeyondRearHose, placeKey, type Instance } from "./graph";

export interface Parts {
  readonly master: Instance | undefined;
  /** In flow order; tees are apart, because they go where outlets are short. */
  readonly valves: readonly ListedInstance[];
  readonly tees: readonly ListedInstance[];
  readonly switches: readonly Instance[];
  readonly brakes: Readonly<Record<Wheel, Instance>>;
  readonly hoses: Hoses;
  /** The row leaves the list of valves open, in whole or in part. */
  readonly valvesUnknown: boolean;
  readonly unknownParts: readonly UnknownPart[];
  readonly questions: readonly Question[];
  readonly assumptions: readonly string[];
}

export interface ListedInstance {
  readonly instance: Instance;
  /** As the row says it: a circuit, a wheel or a place. */
  readonly at: string | undefined;
}

export interface Hoses {
  readonly atWheel: Readonly<Partial<Record<Wheel, Instance>>>;
  /** The one hose between frame and axle, where there is one. */
  readonly toRearAxle: Instance | undefined;
}

export interface UnknownPart {
  readonly column: string;
  readonly name: string;
}

/** Reads the parts that a car's row lists; what it leaves out becomes a question, and a stand-in without a thread. */
export function partsOf(catalogue: Catalogue, car: Car): Parts {
  const reading = new PartsReading(catalogue, car);
  const valves = reading.listed("Valves", car.valves.known ? car.valves.value : []);
  const brakes = reading.brakes();
  return {
    master: reading.master(),
    valves: valves.filter(({ instance }) => instance.component.kind !== "tee" && instance.component.kind !== "switch"),
    tees: valves.filter(({ instance }) => instance.component.kind === "tee"),
    switches: valves.filter(({ instance }) => instance.component.kind === "switch").map(({ instance }) => instance),
    brakes,
    hoses: reading.hoses(),
    valvesUnknown: reading.valvesUnknown(),
    unknownParts: reading.unknownParts,
    questions: reading.questions,
    assumptions: reading.assumptions,
  };
}

/** Gathers, while one row is read, what it does not say. */
class PartsReading {
  readonly questions: Question[] = [];
  readonly assumptions: string[] = [];
  readonly unknownParts: UnknownPart[] = [];

  constructor(
    private readonly catalogue: Catalogue,
    private readonly car: Car,
  ) {}

  valvesUnknown(): boolean {
    if (!this.car.valves.known) this.ask("Valves", "Which valves are on the car now, from the master on?", "every line and joint depends on them");
    return !this.car.valves.known;
  }

  master(): Instance | undefined {
    const component = this.find("Master", this.car.master, "Which master cylinder is on the car?", "every line starts at its outlets");
    return component && { label: component.name, component, place: component.place ?? "master" };
  }

  brakes(): Record<Wheel, Instance> {
    const front = this.find("Front brake", this.car.brakes.front, "Which brakes are at the front?", "the line ends there");
    const rear = this.find("Rear brake", this.car.brakes.rear, "Which brakes are at the rear?", "the line ends there");
    const at = (wheel: Wheel): Instance => {
      const component = axleOf(wheel) === "front" ? front : rear;
      if (component) return { label: `${component.name}@${wheel}`, component: withInlet(component), place: wheel, wheel };
      return { label: `brake@${wheel}`, component: standIn("brake not stated", "disc", ["in"]), place: wheel, wheel, unnamed: true };
    };
    return { LF: at("LF"), RF: at("RF"), LR: at("LR"), RR: at("RR") };
  }

  listed(column: string, parts: readonly ListedPart[]): ListedInstance[] {
    const found = parts.flatMap((part) => {
      const component = this.find(column, part.component, "", "");
      return component ? [{ component, at: part.at }] : [];
    });
    const count = new Map<string, number>();
    for (const { component } of found) count.set(component.name, (count.get(component.name) ?? 0) + 1);
    const seen = new Map<string, number>();
    return found.map(({ component, at }) => {
      const nth = (seen.get(component.name) ?? 0) + 1;
      seen.set(component.name, nth);
      const repeated = (count.get(component.name) ?? 0) > 1;
      const label = repeated ? `${component.name}@${at ?? nth}` : component.name;
      return { instance: { label, component, place: placeGiven(at) ?? component.place }, at };
    });
  }

  hoses(): Hoses {
    if (!this.car.hoses.known) {
      this.ask("Hoses", "Which hoses are on the car (or none)?", "the line's last joint is at the hose");
      return this.unstatedHoses();
    }
    const atWheel: Partial<Record<Wheel, Instance>> = {};
    let toRearAxle: Instance | undefined;
    const parts = this.listed("Hoses", this.car.hoses.value);
    if (this.unknownParts.some(({ column }) => column === "Hoses")) return this.unstatedHoses();
    for (const [index, { instance, at }] of parts.entries()) {
      const where = this.hosePosition(instance.component, at, parts.filter((part, other) => other !== index && part.instance.component === instance.component).length > 0);
      if (where === "rear axle") {
        toRearAxle ??= { ...instance, label: instance.component.name, place: "rear-hose", outletPlace: "axle-tee" };
        continue;
      }
      const free = where.filter((wheel) => !atWheel[wheel]);
      const once = at === undefined && parts.some((part, other) => other > index && part.instance.component === instance.component);
      for (const wheel of once ? free.slice(0, 1) : free) atWheel[wheel] = { label: `${instance.component.name}@${wheel}`, component: instance.component, place: wheel, wheel };
    }
    return { atWheel, toRearAxle };
  }

  private hosePosition(hose: Component, at: string | undefined, listedTwice: boolean): readonly Wheel[] | "rear axle" {
    const place = placeKey(at ?? hose.place ?? "");
    const served = hose.ports.map((port) => port.serves).find((serves) => serves !== "any");
    const wheel = WHEELS.find((name) => name.toLowerCase() === place) ?? WHEELS.find((name) => name === served);
    if (wheel) return [wheel];
    if (place === "rear-hose" || isBeyondRearHose(place)) return "rear axle";
    const axle: Axle | undefined = place.startsWith("front") ? "front" : place.startsWith("rear") ? "rear" : served === "front" || served === "rear" ? served : undefined;
    if (axle === "rear" && !listedTwice && this.rearHoseIsSingle(hose)) return "rear axle";
    if (axle) return WHEELS.filter((name) => axleOf(name) === axle);
    this.ask("Hoses", `Where is hose ${hose.name}: front or rear?`, "the line's last joint is at its inlet");
    this.assumptions.push(`hose ${hose.name} is taken to be at any wheel without another`);
    return WHEELS;
  }

  /** One hose listed for the rear: the platform's places, or two outlets, tell whether it goes to the axle. */
  private rearHoseIsSingle(hose: Component): boolean {
    if (hose.ports.filter((port) => port.flow === "out").length > 1) return true;
    const lengths = lookUp(this.catalogue.lengths, this.car.platform) ?? [];
    return lengths.some(({ from, to }) => [from, to].some((place) => placeKey(place) === "rear-hose" || placeKey(place) === "axle-tee"));
  }

  private unstatedHoses(): Hoses {
    const hose = (wheel: Wheel): Instance => ({ label: `hose@${wheel}`, component: standIn("hose not stated", "hose", ["in", "out"]), place: wheel, wheel, unnamed: true });
    const lengths = lookUp(this.catalogue.lengths, this.car.platform) ?? [];
    const single = lengths.some(({ from, to }) => [from, to].some((place) => placeKey(place) === "rear-hose"));
    if (!single) return { atWheel: { LF: hose("LF"), RF: hose("RF"), LR: hose("LR"), RR: hose("RR") }, toRearAxle: undefined };
    const toRearAxle: Instance = { label: "hose@rear", component: standIn("hose not stated", "hose", ["in", "out"]), place: "rear-hose", outletPlace: "axle-tee", unnamed: true };
    return { atWheel: { LF: hose("LF"), RF: hose("RF") }, toRearAxle };
  }

  private find(column: string, name: string | undefined, ask: string, why: string): Component | undefined {
    if (name === undefined) {
      this.ask(column, ask, why);
      return undefined;
    }
    const component = lookUp(this.catalogue.components, name);
    if (!component) this.unknownParts.push({ column, name });
    return component;
  }

  private ask(column: string, ask: string, why: string): void {
    this.questions.push({ table: "Cars", column, subject: this.car.name, ask, why, blocks: true });
  }
}

const CIRCUIT_WORDS = new Set(["front", "rear", "1", "2"]);
const placeGiven = (at: string | undefined): string | undefined => (at === undefined || CIRCUIT_WORDS.has(placeKey(at)) ? undefined : at);

/** A brake whose ports nobody listed still takes a line: its inlet is there, its thread is not known. */
function withInlet(component: Component): Component {
  return component.ports.some((port) => port.flow === "in" && port.use === "line") ? component : { ...component, ports: [...component.ports, unknownPort("in")] };
}

const standIn = (description: string, kind: ComponentKind, flows: readonly ("in" | "out")[]): Component => ({
  name: description, kind, description, ports: flows.map(unknownPort), passages: [],
});

const unknownPort = (flow: "in" | "out") =>
  ({ name: flow, flow, circuit: "any", serves: "any", gender: "female", plugged: false, use: "line" }) as const;
