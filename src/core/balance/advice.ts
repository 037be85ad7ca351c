/** For a car whose rears lock first: the valve, or the wheel-cylinder bore, that puts the order right under every load with the least loss of efficiency. */
import type { Catalogue } from "../catalogue";
import type { Component } from "../component";
import { madeOnce } from "../made-once";
import { metres, pascals, type Metres, type Pascals } from "../quantity";
import { efficiencyOn } from "./braking";
import { aboveThreshold, brakingUnder, rangeOf, type CarBraking, type View } from "./car-braking";
import { balancedUnder, largestSplitOf, type Judgement } from "./judgement";
import { chordSlope, largestRearScale } from "./order-of-locking";

export interface ValveAdvice {
  /** The valve on the car or in the shop that can be set so; undefined for a fixed valve of this split and slope. */
  readonly component: string | undefined;
  readonly isOnCar: boolean;
  readonly split: Pascals;
  readonly slope: number;
  /** Least over the loads, on the efficiency adhesion of Settings. [-] */
  readonly efficiency: number;
}

export interface BoreAdvice {
  readonly bore: Metres;
  readonly efficiency: number;
}

export interface Advice {
  /** Best first. */
  readonly valves: readonly ValveAdvice[];
  readonly bore: BoreAdvice | undefined;
}

/**
 * What would make the fronts lock first.
 * The rears' threshold is taken to stay as it is; brake factors are at their middle.
 * @param judged a car with its figures [SI]
 * @returns exact split points and bores: at them the rears just touch the fronts at one deceleration
 */
export function adviseOn(judged: Judgement): Advice {
  const { car } = judged;
  const own = car.adjustable ? [settingOf(judged, car.adjustable.name, car.adjustable.duty)] : [];
  const valves = [...own.filter((one) => one !== undefined).map((one) => ({ ...one, isOnCar: true })), ...(own.length > 0 ? [] : [...shopValves(judged), ...fixedValves(judged)])];
  return { valves: valves.sort((a, b) => Number(b.isOnCar) - Number(a.isOnCar) || b.efficiency - a.efficiency), bore: boreAdvice(judged) };
}

type Adjustable = NonNullable<CarBraking["adjustable"]>["duty"];

function settingOf({ car, under }: Judgement, component: string, duty: Adjustable): ValveAdvice | undefined {
  if (duty.slope === undefined || duty.slope >= 1) return undefined;
  const [least, most] = rangeOf(duty);
  const split = Math.min(most, largestSplitOf(car, under, duty.slope));
  return split >= least && split < Infinity ? withEfficiency({ car, under }, { component, isOnCar: false, split: pascals(split), slope: duty.slope }) : undefined;
}

function withEfficiency({ car, under }: Pick<Judgement, "car" | "under">, valve: Omit<ValveAdvice, "efficiency">): ValveAdvice {
  return { ...valve, efficiency: leastEfficiency({ car, under }, { valve }) };
}

function leastEfficiency({ car, under }: Pick<Judgement, "car" | "under">, view: View): number {
  const { efficiencyAdhesion } = car.facts.catalogue.settings;
  return Math.min(...under.map(({ load }) => { const braking = brakingUnder(car, load, view); return (braking && efficiencyOn(braking, efficiencyAdhesion)) ?? 1; }));
}

const shopValves = (judged: Judgement): ValveAdvice[] =>
  adjustableIn(judged.car.facts.catalogue).flatMap(({ component, duty }) => settingOf(judged, component.name, duty) ?? []).sort((a, b) => b.efficiency - a.efficiency).slice(0, 1);

interface AdjustableValve {
  readonly component: Component;
  readonly duty: Adjustable;
}

const adjustableIn: (catalogue: Catalogue) => readonly AdjustableValve[] = madeOnce(({ components }) => [...components.values()].flatMap((component) =>
  component.passages.flatMap(({ duties }) => (duties ?? []).flatMap((duty) => (duty.does === "adjustable-proportioning" ? [{ component, duty }] : [])))));

/** For each load the valve whose line is the chord of its ideal curve; the better one holds under all of them. */
function fixedValves(judged: Judgement): ValveAdvice[] {
  const { car, under } = judged;
  const slopes = under.flatMap(({ load, range }) => { const balanced = balancedUnder(car, load); return (balanced && chordSlope(balanced, range)) ?? []; });
  const valves = slopes.map((slope) => ({ component: undefined, isOnCar: false, split: pascals(largestSplitOf(car, under, slope)), slope })).filter(({ split }) => split > 0 && split < Infinity);
  return valves.map((valve) => withEfficiency(judged, valve)).sort((a, b) => b.efficiency - a.efficiency).slice(0, 1);
}

function boreAdvice({ car, under }: Judgement): BoreAdvice | undefined {
  const piston = car.axles?.ends.rear.component.wheelBrake?.piston;
  const scale = Math.min(...under.map(({ load, lines, range }) => {
    const balanced = balancedUnder(car, load);
    return balanced && car.axles ? largestRearScale(balanced, aboveThreshold(lines.rear, car.axles.ends.rear), range) : Infinity;
  }));
  if (piston === undefined || !(scale > 0 && scale < 1)) return undefined;
  return { bore: metres(piston * Math.sqrt(scale)), efficiency: leastEfficiency({ car, under }, { rearScale: scale }) };
}
