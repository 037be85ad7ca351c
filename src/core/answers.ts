/** What may be answered to a question that no line set speaks of, and what each answer would decide. */
import { theCircuit } from "./assembly";
import { SPLITS, type Car } from "./car";
import { lookUp, nameKey, type Catalogue } from "./catalogue";
import { DUTIES, PORT_CIRCUITS, type Component, type ComponentKind, type Duty, type PortCircuit } from "./component";
import { flareFor, saySeat, SEATS } from "./joint";
import type { Question } from "./question";
import { MATERIALS, sayTube, tubeKey, type Material } from "./tube";

export interface PossibleAnswer {
  readonly answer: string;
  /** Line sets, and platforms without one, still possible after it. */
  readonly leaves: readonly string[];
  /** What it settles, in a few words. */
  readonly decides: string;
}

/** The answers that the shop's own tables, or the trade's own words, offer; none where anything may be answered, as a length. */
export function possibleAnswers(catalogue: Catalogue, car: Car, { table, column, subject }: Question): PossibleAnswer[] {
  const ways = WAYS[`${table}|${column}`];
  return (ways?.({ catalogue, car, subject }) ?? []).map(([answer, decides]) => ({ answer, leaves: [], decides }));
}

interface Asked {
  readonly catalogue: Catalogue;
  readonly car: Car;
  readonly subject: string;
}

type Answers = readonly (readonly [answer: string, decides: string])[];

const WAYS: Readonly<Partial<Record<string, (asked: Asked) => Answers>>> = {
  "Cars|Platform": ({ catalogue }) => [...catalogue.platforms.values()].map(({ name, figures }) => [name, figures.split ?? ""]),
  "Cars|Master": ({ catalogue }) => components(catalogue, "master").map((master) => [master.name, `starts from ${sayOutlets(master)}`]),
  "Cars|Front brake": ({ catalogue }) => components(catalogue, "disc", "drum").map((brake) => [brake.name, `${brake.kind}, and the nut at its end`]),
  "Cars|Rear brake": ({ catalogue }) => components(catalogue, "disc", "drum").map((brake) => [brake.name, `${brake.kind}, and the nut at its end`]),
  "Cars|Hoses": ({ catalogue }) => [...components(catalogue, "hose").map((hose): [string, string] => [hose.name, hose.place ?? ""]), ["none", "flag hose-missing"]],
  "Cars|Material": ({ catalogue }) => MATERIALS.map((material) => [material, sayMaterial(catalogue, material)]),
  "Components|Place": ({ catalogue, car }) => placesOf(catalogue, car).map((place) => [place, `its lines are measured from ${place}`]),
  "Lengths|Tube": ({ catalogue }) => [...new Map(catalogue.nuts.map(({ tube }) => [tubeKey(tube), sayTube(tube)])).values()].map((tube) => [tube, `nuts bored for ${tube}`]),
  "Passages|Does": ({ subject }) => DUTIES.map((does) => [does, contentsDecide(does, subject)]),
  "Platforms|Driveline parking brake": () => [["yes", "it holds the car"], ["no", "flag parking-brake-lost"]],
  "Platforms|Split": () => SPLITS.map((split) => [split, split === "diagonal" ? "LF with RR, RF with LR" : "the fronts together, the rears together"]),
  "Ports|Circuit": ({ catalogue, subject }) => circuitsOf(catalogue, subject).map((circuit) => [circuit, `its line feeds ${theCircuit(circuit)}`]),
  "Ports|Seat": () => SEATS.map((seat) => [seat, `${flareFor(seat)}: ${saySeat(seat)}`]),
  "Ports|Thread": ({ catalogue }) => [...new Set(catalogue.nuts.map(({ face }) => face.thread.name))].sort().map((thread) => [thread, `a nut of ${thread}`]),
  "WheelBrakes|Cup expanders": () => [["yes", "no residual valve is needed"], ["no", "flag residual-missing-drum"]],
  "WheelBrakes|Parking brake": ({ subject }) => [["yes", `${subject} holds the car`], ["no", "flag parking-brake-lost, unless another brake or the driveline has one"]],
};

const components = (catalogue: Catalogue, ...kinds: readonly ComponentKind[]): Component[] => [...catalogue.components.values()].filter(({ kind }) => kinds.includes(kind));

const sayOutlets = ({ ports }: Component): string =>
  ports.filter(({ flow, use }) => flow === "out" && use === "line").map(({ name, thread }) => `${name}${thread ? ` ${thread.name}` : ""}`).join(" and ");

function sayMaterial(catalogue: Catalogue, material: Material): string {
  if (material === "copper") return "flag material-copper";
  const stock = catalogue.tube.filter((one) => one.material === material).map(({ name }) => name);
  return stock.length === 0 ? "not on the rack" : `cut from ${stock.join(" or ")}`;
}

function placesOf(catalogue: Catalogue, car: Car): string[] {
  const measured = lookUp(catalogue.lengths, car.platform) ?? [];
  return [...new Set(measured.flatMap(({ from, to }) => [from, to]))].sort();
}

/** A car split diagonally has circuits 1 and 2, any other front and rear. */
function circuitsOf(catalogue: Catalogue, subject: string): PortCircuit[] {
  const named = [...catalogue.components.values()].filter(({ name }) => nameKey(subject).startsWith(nameKey(name))).flatMap(({ ports }) => ports.map(({ circuit }) => circuit));
  const circuits = PORT_CIRCUITS.filter((circuit) => circuit !== "any");
  return named.some((circuit) => circuit === "1" || circuit === "2") ? circuits.slice(2) : named.some((circuit) => circuit === "front" || circuit === "rear") ? circuits.slice(0, 2) : [...circuits];
}

function contentsDecide(does: Duty["does"], subject: string): string {
  switch (does) {
    case "through": return `${subject} changes no pressure`;
    case "hold-off": return `a second hold-off beside ${subject} is flagged metering-doubled, one on the rear metering-on-rear`;
    case "residual": return `what ${subject} holds must not reach a disc`;
    case "proportioning":
    case "adjustable-proportioning":
    case "load-sensing-proportioning":
    case "limiting": return `a second proportioning section beside ${subject} is flagged proportioning-doubled, one on the front proportioning-on-front`;
    default: return does satisfies never;
  }
}
