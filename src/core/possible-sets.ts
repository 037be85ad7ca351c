/** Which pre-bent sets a car may take, by what is known of it; what is not known rules nothing out. */
import type { Car } from "./car";
import { lookUp, nameKey, type Catalogue, type LineSet } from "./catalogue";
import type { Axle } from "./component";

/** The things about a car that tell sets apart, in the order a person would ask for them. */
export const SET_TRAITS = ["Platform", "Year", "Front brake", "Rear brake", "Valves", "Material"] as const;
export type SetTrait = (typeof SET_TRAITS)[number];

export const possibleSets = (catalogue: Catalogue, car: Car): LineSet[] =>
  catalogue.lineSets.filter((set) => SET_TRAITS.every((trait) => allows(catalogue, car, set, trait)));

/** False when what the car's row says of a trait rules the set out. */
function allows(catalogue: Catalogue, car: Car, set: LineSet, trait: SetTrait): boolean {
  switch (trait) {
    case "Platform":
      return car.platform === undefined || nameKey(car.platform) === nameKey(set.platform);
    case "Year":
      return isOfYear(set, car.year);
    case "Front brake":
      return agrees(brakeKindOf(catalogue, car, "front"), set.front);
    case "Rear brake":
      return agrees(brakeKindOf(catalogue, car, "rear"), set.rear);
    case "Valves": {
      const valves = valvesOf(catalogue, car);
      return valves === undefined || set.valves === undefined || valvesKey(catalogue, set.valves) === valves;
    }
    case "Material":
      return agrees(car.material, set.material);
    default:
      return trait satisfies never;
  }
}

/** A year that is not known rules nothing out. */
export const isOfYear = (range: Pick<LineSet, "firstYear" | "lastYear">, year: number | undefined): boolean =>
  year === undefined || ((range.firstYear ?? -Infinity) <= year && year <= (range.lastYear ?? Infinity));

const agrees = <T>(known: T | undefined, wanted: T | undefined): boolean => known === undefined || wanted === undefined || known === wanted;

export function brakeKindOf(catalogue: Catalogue, car: Car, axle: Axle): "disc" | "drum" | undefined {
  const kind = lookUp(catalogue.components, car.brakes[axle])?.kind;
  return kind === "disc" || kind === "drum" ? kind : undefined;
}

const valvesOf = (catalogue: Catalogue, car: Car): string | undefined =>
  car.valves.known ? valvesKey(catalogue, car.valves.value.map(({ component }) => component)) : undefined;

/** Valves that shape the lines; tees, unions and switches come with any set. Order does not count. */
export function valvesKey(catalogue: Catalogue, valves: readonly string[]): string {
  const shaping = valves.filter((name) => !["tee", "union", "switch"].includes(lookUp(catalogue.components, name)?.kind ?? ""));
  return shaping.map(nameKey).sort().join("; ");
}
