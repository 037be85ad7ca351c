/** Everything BALANCE says of one car under one load. */
import type { CircuitName } from "../assembly";
import { newtons, type Newtons, type Pascals } from "../quantity";
import { efficiencyOn, firstLock, pointAtDeceleration, type Braking, type BrakingPoint } from "./braking";
import { brakingUnder, brakingWith, type CarBraking } from "./car-braking";
import { lineMargin, type LineMargin } from "./efficiency-line";
import type { Judgement, UnderLoad } from "./judgement";
import { hasBypass } from "./lines";
import { pedalForPressure } from "./pedal-figures";
import { outletAt } from "./pressure-curve";
import { rearAhead, rearFirst, type Stretch } from "./rear-ahead";
import { stopOf, type Stop } from "./rule-figures";

export interface AtDeceleration extends BrakingPoint {
  readonly frontLine: Pascals;
  readonly rearLine: Pascals;
  readonly frontForce: Newtons;
  readonly rearForce: Newtons;
  readonly rearShare: number;
  readonly pedal: Newtons | undefined;
}

export interface FailedCircuit {
  readonly circuit: CircuitName;
  /** Most deceleration without a locked wheel on the road of Settings, whatever the pedal takes. [g] */
  readonly z: number;
  /** Under the rule's pedal force; undefined where the pedal is not known. */
  readonly stop: Stop | undefined;
}

export interface CarBalance {
  readonly under: UnderLoad;
  /** At the decelerations of Settings; one that is never reached is missing. */
  readonly at: readonly (AtDeceleration | undefined)[];
  /** Adhesion used by each axle. */
  readonly uses: readonly { readonly z: number; readonly point: BrakingPoint | undefined }[];
  /** Decelerations at which both axles lock at once. */
  readonly critical: readonly number[];
  /** Adhesions on which the rears lock first, up to the highest of Settings. */
  readonly rearFirst: readonly Stretch[];
  readonly efficiency: readonly { readonly adhesion: number; readonly value: number | undefined }[];
  readonly line: LineMargin | undefined;
  readonly failed: readonly FailedCircuit[];
  readonly stop: Stop | undefined;
  readonly withoutAssist: Stop | undefined;
}

export const USES_AT = [0.15, 0.3, 0.45, 0.6, 0.8] as const;
export const EFFICIENCY_ON = [0.2, 0.5, 0.8] as const;

/**
 * The balance of a car under each load whose figures are known.
 * @param judged the car as read [SI]
 * @returns one for each load; none while a figure of its axles is missing
 */
export const balanceOf = (judged: Judgement): CarBalance[] => judged.under.map((under) => balanceUnder(judged.car, under));

function balanceUnder(car: CarBraking, under: UnderLoad): CarBalance {
  const { braking } = under;
  const { settings } = car.facts.catalogue;
  const { lowDeceleration, middleDeceleration, highDeceleration, highestAdhesion, efficiencyLine } = settings;
  return {
    under,
    at: [lowDeceleration, middleDeceleration, highDeceleration].map((z) => atDeceleration(car, under, z)),
    uses: USES_AT.map((z) => ({ z, point: pointAtDeceleration(braking, z) })),
    critical: criticalOf(braking),
    rearFirst: rearFirst(braking, highestAdhesion),
    efficiency: EFFICIENCY_ON.map((adhesion) => ({ adhesion, value: efficiencyOn(braking, adhesion) })),
    line: lineMargin(braking, efficiencyLine),
    failed: car.facts.assembly.circuits.map(({ name }) => failedCircuit(car, under, name)),
    stop: stopOf(settings, braking, car.pedal),
    withoutAssist: stopOf(settings, braking, car.pedal, true),
  };
}

/** Decelerations above rest at which both axles use the same adhesion and one passes the other. */
export function criticalOf(braking: Braking): number[] {
  const end = braking.z.at(-1) as number;
  return rearAhead(braking).flatMap(({ from, to }) => [from, to]).filter((z) => z > 1e-9 && z < end * (1 - 1e-9));
}

export function atDeceleration(car: CarBraking, { load, braking, lines }: UnderLoad, z: number): AtDeceleration | undefined {
  const point = pointAtDeceleration(braking, z);
  if (!point) return undefined;
  const { pressure, front, rear, frontUses, rearUses } = point;
  return {
    pressure, z: point.z, front, rear, frontUses, rearUses, frontLine: outletAt(lines.front, point.pressure), rearLine: outletAt(lines.rear, point.pressure),
    frontForce: newtons(point.front * load.weight), rearForce: newtons(point.rear * load.weight), rearShare: point.z > 0 ? point.rear / point.z : 0,
    pedal: car.pedal && pedalForPressure(car.pedal, point.pressure),
  };
}

function failedCircuit(car: CarBraking, { load, lines }: UnderLoad, circuit: CircuitName): FailedCircuit {
  const { settings } = car.facts.catalogue;
  const view = { failed: circuit };
  const braking = car.axles && (hasBypass(car.axles.paths) ? brakingUnder(car, load, view) : brakingWith({ ...car, axles: car.axles }, load, lines, view));
  const most = braking && (firstLock(braking, settings.roadAdhesion)?.z ?? braking.z.at(-1));
  return { circuit, z: most ?? 0, stop: braking && stopOf(settings, braking, car.pedal) };
}
