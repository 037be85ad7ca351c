/** Chooses the pre-bent sets that cover a car at least cost, or says that its runs are made from straight tube. */
import type { Car } from "./car";
import { nameKey, type Catalogue, type LineSet, type SetRun } from "./catalogue";
import { sumPrices } from "./fittings";
import { adaptersBetween, placesOf, priceOfAdapters } from "./kit-cover";
import { kitPlans, type Cover, type KitPlan } from "./kit-search";
import { possibleSets, valvesKey } from "./possible-sets";
import type { Run } from "./runs";
import { allowanceOf } from "./allowance";

/** Bought sets with what their runs do. No set at all: every run is made from straight tube. */
export interface Kit {
  readonly sets: readonly LineSet[];
  readonly covered: readonly Cover[];
  readonly madeUp: readonly Run[];
  /** Runs of the sets that this car has no use for. */
  readonly unused: readonly SetRun[];
  /** Sets, adapters and made-up runs; undefined while one of them has no price. */
  readonly cost: number | undefined;
}

export interface KitChoice {
  readonly chosen: Kit | undefined;
  /** Every run made from straight tube. */
  readonly straight: Kit;
  /** The next best way that is not the chosen one with a set added; undefined when there is none. */
  readonly nextBest: Kit | undefined;
  /** Sets that fit what is known; more than one with something unknown is ambiguous. */
  readonly possible: readonly LineSet[];
}

/**
 * Compares, exactly, every way to cover the runs with the sets that fit what is known of the car, and straight tube. What is priced in full goes
 * before what is not, then the cheaper. With no runs there is no choice yet.
 */
export function chooseKit(catalogue: Catalogue, car: Car, runs: readonly Run[]): KitChoice {
  const possible = possibleSets(catalogue, car);
  const madeUp = runs.map((run) => priceOfMadeUp(catalogue, run));
  const kit = (plan: Pick<KitPlan, "sets" | "covers">): Kit => kitOf(runs, madeUp, plan);
  const straight = kit({ sets: [], covers: [] });
  if (runs.length === 0) return { chosen: undefined, straight, nextBest: undefined, possible };
  const places = runs.map(placesOf);
  const covers = possible.flatMap((set) => set.runs.flatMap((setRun) => places.flatMap((place): Cover[] => {
    const adapters = adaptersBetween(catalogue, setRun, place);
    return adapters ? [{ run: place.run, set, setRun, adapters, price: priceOfAdapters(adapters) }] : [];
  })));
  const [best, ...others] = kitPlans({ runs, sets: possible, covers, madeUp, goTogether: (a, b) => goTogether(catalogue, a, b) });
  const next = others.find(({ sets }) => !best || best.sets.length === 0 || !best.sets.every((set) => sets.includes(set)));
  return { chosen: best && kit(best), straight, nextBest: next && kit(next), possible };
}

/** The runs that the shop makes itself: all but those that a chosen set brings bent. */
export const madeUpRuns = ({ kit, runs }: { readonly kit: KitChoice; readonly runs: readonly Run[] }): readonly Run[] => (kit.chosen ? kit.chosen.madeUp : runs);

export const kitName = ({ sets }: Kit): string => sets.map(({ name }) => name).join("; ") || "straight tube";

/** Two sets are for one car when no trait of one rules out the other's. */
function goTogether(catalogue: Catalogue, a: LineSet, b: LineSet): boolean {
  const agree = <T>(one: T | undefined, other: T | undefined): boolean => one === undefined || other === undefined || one === other;
  const [valves, otherValves] = [a, b].map((set) => set.valves && valvesKey(catalogue, set.valves));
  const years = (a.firstYear ?? -Infinity) <= (b.lastYear ?? Infinity) && (b.firstYear ?? -Infinity) <= (a.lastYear ?? Infinity);
  return years && agree(nameKey(a.platform), nameKey(b.platform)) && agree(a.front, b.front) && agree(a.rear, b.rear) && agree(a.material, b.material) && agree(valves, otherValves);
}

function kitOf(runs: readonly Run[], madeUpPrices: readonly (number | undefined)[], { sets, covers }: Pick<KitPlan, "sets" | "covers">): Kit {
  const covered = [...covers].sort((a, b) => a.run.number - b.run.number);
  const isCovered = (run: Run): boolean => covered.some((one) => one.run === run);
  const prices = [...sets.map(({ price }) => price), ...covered.map(({ price }) => price), ...madeUpPrices.filter((_, index) => !isCovered(runs[index] as Run))];
  return {
    sets, covered, madeUp: runs.filter((run) => !isCovered(run)),
    unused: sets.flatMap((set) => set.runs.filter((setRun) => !covered.some((one) => one.setRun === setRun))),
    cost: runs.length === 0 ? undefined : sumPrices(prices),
  };
}

/** Nuts, adapters, tube with its allowances, and the making of it. */
function priceOfMadeUp(catalogue: Catalogue, run: Run): number | undefined {
  const { stock, length, a, b } = run;
  if (!stock || stock.price === undefined || stock.length === undefined || length === undefined || !a.fitting?.fits || !b.fitting?.fits) return undefined;
  const tube = ((length + allowanceOf(catalogue.settings)) / stock.length) * stock.price;
  return sumPrices([a.fitting.price, b.fitting.price, Number(tube.toFixed(2)), catalogue.settings.madeUpRunCost]);
}
