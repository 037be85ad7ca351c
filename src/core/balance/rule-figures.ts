/** What the stopping rule chosen in Settings asks for, and what a car does against it. */
import { madeOnce } from "../made-once";
import type { StoppingRule } from "../physics-settings";
import { pascals, type Metres, type MetresPerSecond, type Newtons, type Pascals } from "../quantity";
import type { Settings } from "../settings";
import { firstLock, pointAtPressure, type Braking } from "./braking";
import { pressureOfPedal, type Pedal } from "./pedal-figures";
import { decelerationFor, stoppingDistance, type Delay } from "./stopping";

export interface RuleFigures {
  readonly name: StoppingRule;
  readonly speed: MetresPerSecond;
  readonly stop: Metres;
  readonly failed: Metres;
  readonly unpowered: Metres;
  readonly pedal: Newtons;
}

const PREFIXES = { "49 CFR 571.105": "fmvss105", "49 CFR 571.135": "fmvss135", "UN R13-H": "r13h" } as const satisfies Record<StoppingRule, string>;

export const ruleFigures = madeOnce((settings: Settings): RuleFigures => {
  const name = settings.stoppingRule;
  const prefix = PREFIXES[name];
  return {
    name, speed: settings[`${prefix}Speed`], stop: settings[`${prefix}Stop`], failed: settings[`${prefix}Failed`], unpowered: settings[`${prefix}Unpowered`], pedal: settings[`${prefix}Pedal`],
  };
});

export const delayOf = ({ response, buildUp }: Settings): Delay => ({ response, buildUp });

/** Deceleration that the rule's stop asks for. [g] */
export const ruleDeceleration = (settings: Settings): number => {
  const { speed, stop } = ruleFigures(settings);
  return decelerationFor(speed, stop, delayOf(settings));
};

export interface Stop {
  /** With no wheel locked, on the road adhesion of Settings and with no more than the rule's pedal force. [g] */
  readonly z: number;
  readonly distance: Metres;
  /** What keeps it from being shorter. */
  readonly heldBy: "adhesion" | "pedal force";
}

/** The shortest stop of a braking under the rule; undefined where the pedal is not known. */
export function stopOf(settings: Settings, braking: Braking, pedal: Pedal | undefined, assistFailed = false): Stop | undefined {
  if (!pedal) return undefined;
  const pressure: Pascals = pressureOfPedal(pedal, ruleFigures(settings).pedal, assistFailed);
  const pressed = pointAtPressure(braking, pascals(Math.min(pressure, braking.pressure.at(-1) as number)));
  const lock = firstLock(braking, settings.roadAdhesion);
  const z = Math.min(pressed?.z ?? 0, lock?.z ?? Infinity);
  return { z, distance: stoppingDistance(ruleFigures(settings).speed, z, delayOf(settings)), heldBy: lock && lock.z <= (pressed?.z ?? 0) ? "adhesion" : "pedal force" };
}
