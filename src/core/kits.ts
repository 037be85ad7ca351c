/** Chooses the pre-bent set that covers a car at least cost, or says that its runs are made from straight tube. */
import type { Run } from "./runs";
import { placeKey } from "./assembly";
import type { Catalogue, LineSet, SetRun } from "./catalogue";
import type { Car } from "./car";
import { faceOf, type Port } from "./component";
import { sumPrices, type AdapterStep } from "./fittings";
import { fitterFor } from "./fitter";
import { opposite, usualPortGender } from "./joint";
import { possibleSets } from "./possible-sets";
import { sameTube } from "./tube";
import { allowanceOf } from "./tubing";

/** A run of the car that a run of the set covers, with the adapters its two ends need. */
export interface CoveredRun {
  readonly run: Run;
  readonly setRun: SetRun;
  readonly adapters: readonly AdapterStep[];
}

export interface Kit {
  /** Undefined: every run is made from straight tube. */
  readonly set: LineSet | undefined;
  readonly covered: readonly CoveredRun[];
  readonly madeUp: readonly Run[];
  /** Set, adapters and made-up runs; undefined while one of them has no price. */
  readonly cost: number | undefined;
}

export interface KitChoice {
  readonly chosen: Kit | undefined;
  /** Every run made from straight tube. */
  readonly straight: Kit;
  /** Sets that fit what is known; more than one with something unknown is ambiguous. */
  readonly possible: readonly LineSet[];
}

/**
 * Compares every set that fits what is known of the car, and straight tube. A priced kit goes before an unpriced one, then the cheaper,
 * then the one that covers more runs. A set that covers nothing is no kit. With no runs there is no choice yet.
 */
export function chooseKit(catalogue: Catalogue, car: Car, runs: readonly Run[]): KitChoice {
  const possible = possibleSets(catalogue, car);
  const straight = kitOf(catalogue, undefined, runs);
  if (runs.length === 0) return { chosen: undefined, straight, possible };
  const kits = possible.map((set) => kitOf(catalogue, set, runs)).filter(({ covered }) => covered.length > 0);
  const [chosen] = [...kits, straight].sort(byCost);
  return { chosen, straight, possible };
}

const byCost = (a: Kit, b: Kit): number =>
  (a.cost ?? Infinity) - (b.cost ?? Infinity) || b.covered.length - a.covered.length || ((a.set?.name ?? "~") < (b.set?.name ?? "~") ? -1 : 1);

function kitOf(catalogue: Catalogue, set: LineSet | undefined, runs: readonly Run[]): Kit {
  const covered = set ? coverRuns(catalogue, set, runs) : [];
  const madeUp = runs.filter((run) => !covered.some((one) => one.run === run));
  const adapters = covered.flatMap((one) => one.adapters.map(({ adapter }) => adapter.price));
  const cost = runs.length === 0 ? undefined : sumPrices([...(set ? [set.price] : []), ...adapters, ...madeUp.map((run) => priceOfMadeUp(catalogue, run))]);
  return { set, covered, madeUp, cost };
}

/** Nuts, adapters, tube with its allowances, and the making of it. */
function priceOfMadeUp(catalogue: Catalogue, run: Run): number | undefined {
  const { stock, length, a, b } = run;
  if (!stock || stock.price === undefined || stock.length === undefined || length === undefined || !a.fitting?.fits || !b.fitting?.fits) return undefined;
  const tube = ((length + allowanceOf(catalogue.settings)) / stock.length) * stock.price;
  return sumPrices([a.fitting.price, b.fitting.price, Number(tube.toFixed(2)), catalogue.settings.madeUpRunCost]);
}

/** Gives each run of the set to at most one run of the car, runs that need fewer adapters first. */
function coverRuns(catalogue: Catalogue, set: LineSet, runs: readonly Run[]): CoveredRun[] {
  const pairs = runs.flatMap((run) => set.runs.flatMap((setRun) => {
    const adapters = adaptersBetween(catalogue, setRun, run);
    return adapters ? [{ run, setRun, adapters }] : [];
  }));
  const byAdapters = [...pairs].sort((a, b) => a.adapters.length - b.adapters.length || a.run.number - b.run.number);
  const covered: CoveredRun[] = [];
  for (const pair of byAdapters) if (!covered.some((one) => one.run === pair.run || one.setRun === pair.setRun)) covered.push(pair);
  return covered.sort((a, b) => a.run.number - b.run.number);
}

/** The adapters with which a run of the set does a run of the car; undefined when it does not. Either end may come first. */
function adaptersBetween(catalogue: Catalogue, setRun: SetRun, run: Run): readonly AdapterStep[] | undefined {
  if (run.tube !== undefined && setRun.tube !== undefined && !sameTube(run.tube, setRun.tube)) return undefined;
  const { from, to } = run.joint;
  const [here, there] = [placeKey(from.instance.outletPlace ?? from.instance.place ?? "?"), placeKey(to.instance.place ?? "?")];
  const [a, b] = [placeKey(setRun.from), placeKey(setRun.to)];
  const ways: AdapterStep[][] = [];
  if (here === a && there === b) ways.push(...bothEnds(endAdapters(catalogue, setRun.a, from.port), endAdapters(catalogue, setRun.b, to.port)));
  if (here === b && there === a) ways.push(...bothEnds(endAdapters(catalogue, setRun.b, from.port), endAdapters(catalogue, setRun.a, to.port)));
  return ways.sort((x, y) => x.length - y.length)[0];
}

const bothEnds = (a: readonly AdapterStep[] | undefined, b: readonly AdapterStep[] | undefined): AdapterStep[][] => (a && b ? [[...a, ...b]] : []);

/** A set's nut has the usual gender of its seat, and meets the port as it is or through adapters. An end that is not stated fits nothing for certain. */
function endAdapters(catalogue: Catalogue, end: SetRun["a"], port: Port): readonly AdapterStep[] | undefined {
  const face = faceOf(port);
  if (!end || !face) return undefined;
  return fitterFor(catalogue).chain(face, { ...end, gender: opposite(usualPortGender(end.seat)) });
}
