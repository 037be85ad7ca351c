/** The figures of the balance view as rows of words: the same that BALANCE, CURVE and TRAVEL answer, from the same functions of the core. */
import { atDeceleration, balanceOf, type CarBalance } from "../../core/balance/balance-of";
import { efficiencyOn, firstLock, lockOf } from "../../core/balance/braking";
import type { CarBraking } from "../../core/balance/car-braking";
import type { Judgement, UnderLoad } from "../../core/balance/judgement";
import { ruleFigures, type Stop } from "../../core/balance/rule-figures";
import type { CarTravel } from "../../core/balance/travel";
import type { CircuitName } from "../../core/assembly";
import { capital } from "../../core/finding";
import type { Metres } from "../../core/quantity";
import { sayDistance, sayFigure, sayForce, sayPressure, sayShare, sayVacuum } from "../../core/say-quantity";
import type { Settings } from "../../core/settings";
import { count } from "../words";
import type { Choice } from "./force-plot";

export interface FigureRow {
  readonly name: string;
  readonly cells: readonly string[];
  /** Beyond what a rule or the tyres allow. */
  readonly over?: boolean;
}

const NOT_KNOWN = "not known";
/** Figures under one another have the same places. */
const sayFixed = (value: number): string => value.toFixed(2);

/** At the chosen deceleration: front, rear, and what the foot does for it. */
export function rowsAt(car: CarBraking, under: UnderLoad, { z }: Choice): FigureRow[] | undefined {
  const at = atDeceleration(car, under, z);
  if (!at) return undefined;
  const { settings } = car.facts.catalogue;
  const [front, rear] = [1 - at.rearShare, at.rearShare];
  return [
    { name: "Line pressure", cells: [sayPressure(settings, at.frontLine), sayPressure(settings, at.rearLine)] },
    { name: "Axle force", cells: [sayForce(settings, at.frontForce), sayForce(settings, at.rearForce)] },
    { name: "Share of braking", cells: [sayShare(front), sayShare(rear)] },
    { name: "Grip used", cells: [sayFixed(at.frontUses), sayFixed(at.rearUses)], over: at.rearUses > at.frontUses },
  ];
}

/** What the foot does for the chosen deceleration. */
export function sayPedal(car: CarBraking, under: UnderLoad, { z }: Choice): string {
  const at = atDeceleration(car, under, z);
  if (!at) return `These brakes do not reach ${sayFigure(z)} g.`;
  const { settings } = car.facts.catalogue;
  if (at.pedal === undefined) return `${sayPressure(settings, at.pressure)} at the master. What the pedal takes for it is not known.`;
  const booster = car.pedal?.boosterUnknown ? ", the booster taken as none" : car.pedal?.assist ? ` with ${car.pedal.assist.component.name}` : " without a booster";
  return `${sayForce(settings, at.pedal)} on the pedal${booster}, ${sayPressure(settings, at.pressure)} at the master.`;
}

/** On the chosen adhesion: where each axle locks, and how much of the grip is used by then. */
export function sayLocks({ braking }: UnderLoad, { adhesion }: Choice): string {
  const first = firstLock(braking, adhesion);
  if (!first) return `On adhesion ${sayFigure(adhesion)} neither axle locks.`;
  const other = first.axle === "front" ? "rear" : "front";
  const second = lockOf(braking, other, adhesion);
  const efficiency = efficiencyOn(braking, adhesion);
  return `On adhesion ${sayFigure(adhesion)} the ${first.axle}s lock first, at ${sayFigure(first.z)} g${second ? `, the ${other}s would at ${sayFigure(second.z)} g` : ""}: efficiency ${efficiency === undefined ? NOT_KNOWN : sayShare(efficiency)}.`;
}

/** Grip that each axle uses, from 0.15 to 0.8 g, and the most that the efficiency line allows. */
export function rowsOfGrip({ uses }: CarBalance, { efficiencyLine }: Settings): FigureRow[] {
  return uses.map(({ z, point }) => {
    const allowed = 0.2 + (z - 0.1) / efficiencyLine;
    return {
      name: `${sayFixed(z)} g`,
      cells: point ? [sayFixed(point.frontUses), sayFixed(point.rearUses), allowed <= 0.8 ? sayFixed(allowed) : "–"] : ["not reached", "not reached", ""],
      over: point !== undefined && point.rearUses > point.frontUses,
    };
  });
}

export interface StopRow {
  readonly name: string;
  /** Undefined where the pedal is not known. */
  readonly stop: Stop | undefined;
  readonly z: number;
  readonly allowed: Metres;
}

/** Every stop that the picked rule asks for. */
export function stopsOf(car: CarBraking, { stop, failed, withoutAssist }: CarBalance): StopRow[] {
  const rule = ruleFigures(car.facts.catalogue.settings);
  return [
    { name: "All working", stop, z: stop?.z ?? 0, allowed: rule.stop },
    ...failed.map(({ circuit, stop: one, z }) => ({ name: failed.length === 1 ? "Its one circuit failed" : `${sayCircuit(circuit)} failed`, stop: one, z: one?.z ?? z, allowed: rule.failed })),
    ...(car.pedal?.assist ? [{ name: "Booster failed", stop: withoutAssist, z: withoutAssist?.z ?? 0, allowed: rule.unpowered }] : []),
  ];
}

const sayCircuit = (circuit: CircuitName): string => (circuit === "front" || circuit === "rear" ? `${capital(circuit)} circuit` : circuit === "single" ? "One circuit" : `Circuit ${circuit}`);

export const isOver = ({ stop, allowed }: StopRow): boolean => stop !== undefined && !(stop.distance <= allowed);

export function sayStop(settings: Settings, { stop, z, allowed }: StopRow): string {
  if (!stop) return z > 0 ? `${sayFigure(z)} g; the pedal is not known` : NOT_KNOWN;
  if (!Number.isFinite(stop.distance)) return `does not stop; ${sayDistance(settings, allowed)} allowed`;
  return `${sayDistance(settings, stop.distance)} of ${sayDistance(settings, allowed)}, ${sayFigure(stop.z)} g, held by ${stop.heldBy}`;
}

/** Pedal travel, whole and with each circuit failed, against the limit. */
export function rowsOfTravel(settings: Settings, { circuits, share, vacuumLeft }: CarTravel): FigureRow[] {
  const limit = `limit ${sayShare(settings.travelLimit)}`;
  return [
    { name: `Pedal travel at ${sayForce(settings, settings.travelForce)}`, cells: [share === undefined ? NOT_KNOWN : `${sayShare(share)} of what there is, ${limit}`], over: share !== undefined && share > settings.travelLimit },
    ...circuits.map(({ circuit, failedShare }) => ({ name: `With the ${sayCircuit(circuit).toLowerCase()} failed`, cells: [failedShare === undefined ? NOT_KNOWN : sayShare(failedShare)], over: failedShare !== undefined && failedShare > 1 })),
    ...circuits.map(({ circuit, needed, stroke }) => ({ name: `Stroke of the ${sayCircuit(circuit).toLowerCase()} at ${sayFigure(settings.highDeceleration)} g`, cells: [needed === undefined || stroke === undefined ? NOT_KNOWN : `${sayShare(needed / stroke)} used`], over: needed !== undefined && stroke !== undefined && needed > stroke })),
    ...(vacuumLeft === undefined ? [] : [{ name: `Vacuum after ${count(settings.stopsWithoutVacuum, "stop")} without a source`, cells: [sayVacuum(settings, vacuumLeft)] }]),
  ];
}

/** The balance under the load that is looked at. */
export const balanceUnder = (judged: Judgement, under: UnderLoad): CarBalance | undefined => balanceOf(judged).find((one) => one.under === under);
