/** Where along a stop the valves of a car begin or cease to act: the knees of its curves. */
import type { Pascals } from "../quantity";
import { pointAtPressure } from "./braking";
import { stateOf, type CarBraking } from "./car-braking";
import type { UnderLoad } from "./judgement";
import { actingSteps } from "./lines";

export interface ValvePoint {
  /** Deceleration at it. [g] */
  readonly z: number;
  /** Master pressure at it. [Pa] */
  readonly pressure: Pascals;
  readonly valve: string;
  readonly does: "acts" | "fully open";
}

/**
 * On the way to the left wheels, fronts before rears; a diagonal split has its like on the other side.
 * @param car as read [SI]
 * @param under one of its loads [SI]
 * @returns in flow order; a valve whose pressure is never reached has none
 */
export function valvePoints(car: CarBraking, { load, braking }: UnderLoad): ValvePoint[] {
  const state = stateOf(car, load.load);
  const steps = car.axles ? [...actingSteps(car.axles.paths.LF, state), ...actingSteps(car.axles.paths.LR, state)] : [];
  return steps.flatMap(({ step: { instance, duty }, acts }) => {
    const point = pointAtPressure(braking, acts);
    return point ? [{ z: point.z, pressure: acts, valve: instance.label, does: duty.does === "hold-off" ? "fully open" as const : "acts" as const }] : [];
  });
}
