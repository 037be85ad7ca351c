/** A car's braking under each load, as the rules, the tables and the panel read it; made once for each assembly. */
import type { Assembled } from "../assembly";
import { madeLately } from "../made-once";
import { pascals } from "../quantity";
import { pointAtPressure, type Braking } from "./braking";
import {
  aboveThreshold, brakingWith, carBraking, forcePerPascal, linesOf, rangeOf, stateOf, type AxleLines, type Axles, type BrakingFacts, type CarBraking, type Factor, type LoadCase,
} from "./car-braking";
import { actingSteps } from "./lines";
import { largestSplit, type Balanced } from "./order-of-locking";
import { rearAhead, type Stretch } from "./rear-ahead";

export interface UnderLoad {
  readonly load: LoadCase;
  readonly lines: AxleLines;
  readonly braking: Braking;
  /** Where the order of locking is judged: from 0.15 g, or from where the hold-off is fully open. [g] */
  readonly range: Stretch;
}

/** An adjustable valve that the row does not say the setting of. */
export interface OpenSetting {
  readonly name: string;
  /** Settings with which the fronts lock first, within the valve's range; undefined when there is none. [Pa] */
  readonly passes: Stretch | undefined;
}

export interface Judgement {
  readonly car: CarBraking;
  readonly under: readonly UnderLoad[];
  readonly setting: OpenSetting | undefined;
}

const judgements = madeLately<Assembled, Judgement>();

/** Reads a car and judges its braking; for all the rules that ask one after the other it is read once. */
export const judge = (facts: BrakingFacts): Judgement => judgements(facts.assembly, () => judgedAnew(facts));

function judgedAnew(facts: BrakingFacts): Judgement {
  const read = carBraking(facts);
  const setting = openSetting(read);
  const car = setting ? settled(read, setting) : read;
  return { car, setting, under: underLoads(car) };
}

function underLoads(car: CarBraking): UnderLoad[] {
  const { axles } = car;
  if (!axles) return [];
  return car.loads.flatMap((load) => {
    const lines = linesOf(car, load.load);
    if (!lines) return [];
    const braking = brakingWith({ ...car, axles }, load, lines);
    return [{ load, lines, braking, range: rangeFor(car, axles, load, braking) }];
  });
}

function rangeFor(car: CarBraking, { paths }: Axles, { load }: LoadCase, braking: Braking): Stretch {
  const { balanceFrom, balanceTo } = car.facts.catalogue.settings;
  const open = actingSteps(paths.LF, stateOf(car, load)).filter(({ step }) => step.duty.does === "hold-off").map(({ acts }) => pointAtPressure(braking, acts)?.z ?? Infinity);
  return { from: Math.min(balanceTo, Math.max(balanceFrom, ...open)), to: balanceTo };
}

/** Stretches of a range in which the rears use more adhesion than the fronts; a touch is none. */
export function rearAheadWithin({ braking, range }: Pick<UnderLoad, "braking" | "range">): Stretch[] {
  return rearAhead(braking)
    .map(({ from, to }) => ({ from: Math.max(from, range.from), to: Math.min(to, range.to) }))
    .filter(({ from, to }) => to - from > TOUCH);
}

const TOUCH = 1e-6;

/** The same with the drums' factor at another place of its band. */
export const withFactor = (car: CarBraking, { load, lines, range }: UnderLoad, factor: Factor): Pick<UnderLoad, "braking" | "range"> | undefined =>
  car.axles && { range, braking: brakingWith({ ...car, axles: car.axles }, load, lines, { factor }) };

/** One load as the search for a rear valve sees it. */
export function balancedUnder(car: CarBraking, load: LoadCase): Balanced | undefined {
  const lines = linesOf(car, load.load, { valve: "none" });
  if (!lines || !car.axles) return undefined;
  const { ends } = car.axles;
  return {
    stance: load.stance, frontPerPascal: forcePerPascal(car.axles, "front", load.weight), rearPerPascal: forcePerPascal(car.axles, "rear", load.weight),
    frontEffective: aboveThreshold(lines.front, ends.front), rearLine: lines.rear, rearThreshold: ends.rear.threshold,
  };
}

/** Largest split of a slope with which the fronts lock first under every load that is known. */
export const largestSplitOf = (car: CarBraking, under: readonly UnderLoad[], slope: number): number =>
  Math.min(...under.map(({ load, range }) => { const balanced = balancedUnder(car, load); return balanced ? largestSplit(balanced, slope, range) : Infinity; }));

function openSetting(car: CarBraking): OpenSetting | undefined {
  if (!car.adjustable || car.adjustedTo !== undefined || car.adjustable.duty.slope === undefined) return undefined;
  const [least, most] = rangeOf(car.adjustable.duty);
  const largest = Math.min(most, largestSplitOf(car, underLoads({ ...car, adjustedTo: least }), car.adjustable.duty.slope));
  return { name: car.adjustable.name, passes: largest >= least ? { from: least, to: largest } : undefined };
}

/** Figures need one setting: the highest that passes, or the lowest there is. */
function settled(car: CarBraking, { passes, name }: OpenSetting): CarBraking {
  const adjustedTo = passes?.to ?? rangeOf((car.adjustable as NonNullable<CarBraking["adjustable"]>).duty)[0];
  return { ...car, adjustedTo: pascals(adjustedTo), assumed: [...car.assumed, `${name} not set: ${passes ? "the highest setting that keeps the fronts first" : "its lowest setting"}`] };
}
