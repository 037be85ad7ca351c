/**
 * What cars have in common. A shop's cars are equipped in a few hundred ways, so everything that follows from the equipment is made once for it;
 * what is left to each car is its name, its customer, its notes and its year.
 */
import { assemble, wheelPaths } from "./assembly";
import { billOf, type BillLine } from "./bill";
import type { Car, Platform } from "./car";
import { nameKey, type Catalogue } from "./catalogue";
import { findingsOfParts, type CarFacts } from "./checks";
import type { Finding } from "./finding";
import { chooseKit, type KitChoice } from "./kits";
import { madeOnce, madeOnceByKey, madeOnceWeakly, once } from "./made-once";
import { runsOf, type RunsOfCar } from "./runs";

/** Stands for the name where a text of what cars share names the car. It is of Unicode's private use area, where no sheet has words. */
const ANY_NAME = "\uE000";

/** A text of what cars share, as it reads for one of them. */
export const inNameOf = ({ name }: Car, text: string): string => text.replaceAll(ANY_NAME, () => name);
export const namesCar = (text: string): boolean => text.includes(ANY_NAME);

/** A car's equipment without the figures that only the physics reads. */
interface Outfit extends CarFacts {
  /** Unlike that of any other outfit; stands for its long key. */
  readonly number: number;
  readonly runsOfCar: RunsOfCar;
  readonly kit: KitChoice;
  readonly bill: readonly BillLine[];
  readonly findings: readonly Finding[];
}

/** One way to be equipped, as rules, tables and physics read it. */
export interface Equipped extends CarFacts {
  /** The car without its name. */
  readonly car: Car;
  /** What does not hang on the figures of its platform that the row itself states; worked out where it is asked for. */
  readonly outfit: Outfit;
}

/** What is known of a car's equipment: the same object for every car equipped alike. A car that Joins speaks of keeps its name, because its joints are its own. */
export const equippedAs = (catalogue: Catalogue, car: Car): Equipped => kept(catalogue).cars(car);

/** The same, looked up by what the car has. */
function lookedUp(catalogue: Catalogue, car: Car): Equipped {
  const { name, customer: _customer, notes: _notes, year: _year, accepted, platformFigures, ...parts } = car;
  const { split, drivelineParkingBrake, ...figures } = platformFigures;
  const own = catalogue.joins.has(nameKey(name)) ? name : ANY_NAME;
  const key = JSON.stringify([own, stretchOf(catalogue, car), [...accepted], split, drivelineParkingBrake, parts]);
  const shared: Car = { ...car, name: own, customer: "", notes: "" };
  const { equipments, outfits } = kept(catalogue);
  const outfit = outfits(key, () => outfitOf(catalogue, shared));
  return equipments(`${outfit.number} ${JSON.stringify(figures)}`, () => withFigures(outfit, shared));
}

/** A way to be plumbed takes about 20 kB, the figures of one car on top of it about 2 kB: together at most about 160 MB. */
const MOST = { structures: 6000, equipments: 20_000 };

const kept = madeOnce((catalogue: Catalogue) => {
  const [equipments, outfits] = [madeOnceByKey<Equipped>(MOST.equipments), madeOnceByKey<Outfit>(MOST.structures)];
  // What hangs on a forgotten structure would keep it in memory.
  return { cars: madeOnceWeakly((car: Car) => lookedUp(catalogue, car)), equipments, outfits, structures: madeOnceByKey<Structure>(MOST.structures, () => { equipments.forget(); outfits.forget(); }) };
});

const withFigures = (outfit: Outfit, car: Car): Equipped => ({
  car, outfit, catalogue: outfit.catalogue, paths: outfit.paths, assembly: { ...outfit.assembly, car }, get runs() { return outfit.runs; },
});

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

let outfitsMade = 0;

/** The balance asks for none of what is worked out late here. */
function outfitOf(catalogue: Catalogue, car: Car): Outfit {
  const structure = structureOf(catalogue, car);
  const { paths } = structure;
  const assembly = { ...structure.assembly, car };
  const lines = once(() => runsOf(catalogue, assembly, paths));
  const kit = once(() => chooseKit(catalogue, car, lines().runs));
  const bill = once(() => billOf(assembly.instances, lines().runs, catalogue.settings));
  const findings = once(() => findingsOfParts({ catalogue, assembly, paths, runs: lines().runs }));
  return {
    catalogue, assembly, paths, number: outfitsMade++,
    get runsOfCar() { return lines(); }, get runs() { return lines().runs; }, get kit() { return kit(); }, get bill() { return bill(); }, get findings() { return findings(); },
  };
}

type Structure = Pick<CarFacts, "assembly" | "paths">;

/** The lines follow from the parts alone, whatever the car weighs and its tube is of. */
function structureOf(catalogue: Catalogue, car: Car): Structure {
  const { name, platform, brakes, master, valves, hoses, platformFigures } = car;
  return kept(catalogue).structures(JSON.stringify([name, platform, brakes, master, valves, hoses, platformFigures.split]), () => {
    const assembly = assemble(catalogue, car);
    return { assembly, paths: wheelPaths(assembly) };
  });
}
