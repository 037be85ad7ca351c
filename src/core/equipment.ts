/**
 * What cars have in common. A shop's cars are equipped in a few hundred ways, so everything that follows from the equipment is made once for it;
 * what is left to each car is its name, its customer, its notes and its year.
 */
import { assemble, wheelPaths, type Assembled, type WheelPath } from "./assembly";
import type { Car, Platform } from "./car";
import { nameKey, type Catalogue } from "./catalogue";
import { madeOnce, madeOnceByKey } from "./made-once";
import { runsOf, type RunsOfCar } from "./runs";

/** Stands for the name where a text of what cars share names the car. It is of Unicode's private use area, where no sheet has words. */
const ANY_NAME = "\uE000";

/** A text of what cars share, as it reads for one of them. */
export const inNameOf = ({ name }: Car, text: string): string => (text.includes(ANY_NAME) ? text.replaceAll(ANY_NAME, () => name) : text);

/** Equipments kept of one catalogue: about 100 MB. */
const KEPT = 4000;

/** One way to be equipped, as rules, tables and physics read it. */
export interface Equipped {
  readonly catalogue: Catalogue;
  /** The car without its name. */
  readonly car: Car;
  readonly assembly: Assembled;
  readonly paths: readonly WheelPath[];
  readonly runsOfCar: RunsOfCar;
  readonly runs: RunsOfCar["runs"];
}

/** What is known of a car's equipment: the same object for every car equipped alike. A car that Joins speaks of keeps its name, because its joints are its own. */
export function equippedAs(catalogue: Catalogue, car: Car): Equipped {
  const { name, customer: _customer, notes: _notes, year: _year, accepted, ...parts } = car;
  const own = catalogue.joins.has(nameKey(name)) ? name : ANY_NAME;
  const key = JSON.stringify([own, stretchOf(catalogue, car), [...accepted], parts]);
  return equipments(catalogue)(key, () => equippedAnew(catalogue, { ...car, name: own, customer: "", notes: "" }));
}

const equipments = madeOnce((_: Catalogue) => madeOnceByKey<Equipped>(KEPT));

/** Years that no set, no platform and no rule tells apart are alike: counted by the years of change up to them. */
function stretchOf(catalogue: Catalogue, { year, platform }: Car): number | undefined {
  return year === undefined ? undefined : yearsOfChange(catalogue)(platform === undefined ? "" : nameKey(platform), (key) => changesFor(catalogue, key)).filter((change) => change <= year).length;
}

const yearsOfChange = madeOnce((_: Catalogue) => madeOnceByKey<readonly number[]>());

/** With the platform not known, every platform's sets are possible. */
function changesFor({ lineSets, platforms, settings }: Catalogue, platform: string): readonly number[] {
  const sets = lineSets.filter((set) => platform === "" || nameKey(set.platform) === platform);
  const ranges = [...sets, ...(platform === "" ? platforms.values() : [platforms.get(platform) ?? {}])];
  const changes = ranges.flatMap(({ firstYear, lastYear }: YearRange) => [firstYear, lastYear === undefined ? undefined : lastYear + 1]);
  return [...new Set([...changes.filter((year) => year !== undefined), settings.dualCircuitRuleYear])];
}

type YearRange = Pick<Platform, "firstYear" | "lastYear">;

/** Runs are worked out only where they are asked for: the balance needs none. */
function equippedAnew(catalogue: Catalogue, car: Car): Equipped {
  const structure = structureOf(catalogue, car);
  let made: RunsOfCar | undefined;
  return {
    catalogue, car, paths: structure.paths, assembly: { ...structure.assembly, car },
    get runsOfCar() { return (made ??= structure.runsOf(car)); },
    get runs() { return this.runsOfCar.runs; },
  };
}

interface Structure {
  readonly assembly: Assembled;
  readonly paths: readonly WheelPath[];
  readonly runsOf: (car: Car) => RunsOfCar;
}

/** The lines follow from the parts alone, whatever the car weighs; its runs also from the tube it is to have. */
function structureOf(catalogue: Catalogue, car: Car): Structure {
  const { name, platform, brakes, master, valves, hoses, platformFigures } = car;
  return structures(catalogue)(JSON.stringify([name, platform, brakes, master, valves, hoses, platformFigures.split]), () => {
    const assembly = assemble(catalogue, car);
    const paths = wheelPaths(assembly);
    const kept = madeOnceByKey<RunsOfCar>(KEPT);
    return { assembly, paths, runsOf: ({ material, scope, ...rest }) => kept(`${material}|${scope}`, () => runsOf(catalogue, { ...assembly, car: { ...rest, material, scope } }, paths)) };
  });
}

const structures = madeOnce((_: Catalogue) => madeOnceByKey<Structure>(KEPT));
