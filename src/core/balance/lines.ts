/** The pressure at each wheel as the master's rises: the duties on the way, in flow order. */
import type { PathStep, WheelPath } from "../assembly";
import { PROPORTIONING_NAMES, WHEELS, type Axle, type Duty, type Wheel } from "../component";
import { pascals, type Pascals } from "../quantity";
import { lacks, type Reading } from "./figures";
import { chainOf, curveOf, proportioning, residual, type DutyState } from "./passage";
import { inletFor, inSeries, meanOf, straight, type PressureCurve } from "./pressure-curve";

export type WheelPaths = Readonly<Record<Wheel, WheelPath>>;

/** How the lines are looked at: as they are, with a circuit failed, or with another valve in place of the rear proportioning. */
export interface LineState extends DutyState {
  /** Valves that say so pass full pressure, as one circuit has failed. */
  readonly bypassing?: boolean;
  /** Stands in the rear lines instead of all the proportioning there. */
  readonly valve?: { readonly split: number; readonly slope: number } | "none" | undefined;
}

const WHEELS_OF = { front: ["LF", "RF"], rear: ["LR", "RR"] } as const;

/** From master to wheel pressure, mean of both wheels of an axle; undefined while a figure of a valve is not stated. */
export function lineTo(paths: WheelPaths, axle: Axle, state: LineState): PressureCurve | undefined {
  const [left, right] = WHEELS_OF[axle].map((wheel) => paths[wheel]) as [WheelPath, WheelPath];
  const a = pathCurve(left, state);
  const b = sameDuties(left, right) ? a : pathCurve(right, state);
  return a && b && meanOf(a, b);
}

const sameDuties = (a: WheelPath, b: WheelPath): boolean => a.steps.length === b.steps.length && a.steps.every(({ duty }, i) => duty === b.steps[i]?.duty) && a.outlet.port.builtInResidual === b.outlet.port.builtInResidual;

function pathCurve(path: WheelPath, state: LineState): PressureCurve | undefined {
  const valve = path.wheel === "LR" || path.wheel === "RR" ? state.valve : undefined;
  const steps = path.steps.filter((step) => !isProportioning(step) || (valve === undefined && !(state.bypassing && bypasses(step))));
  const curves = [builtIn(path), ...steps.map(({ duty }) => curveOf(duty, state))];
  if (valve && valve !== "none") curves.push(proportioning(pascals(valve.split), valve.slope));
  return curves.every((curve) => curve !== undefined) ? chainOf(curves) : undefined;
}

const isProportioning = ({ duty }: PathStep): boolean => PROPORTIONING_NAMES.has(duty.does);
const bypasses = ({ instance, duty }: PathStep): boolean => instance.component.passages.some(({ duties, bypassOnFailure }) => bypassOnFailure && duties?.includes(duty));

/** Whether a valve of the car passes full pressure once a circuit has failed. */
export const hasBypass = (paths: WheelPaths): boolean => WHEELS.some((wheel) => paths[wheel].steps.some((step) => isProportioning(step) && bypasses(step)));

export const sensesLoad = (paths: WheelPaths): boolean => WHEELS.some((wheel) => paths[wheel].steps.some(({ duty }) => duty.does === "load-sensing-proportioning"));

const builtIn = ({ outlet, brake }: WheelPath): PressureCurve => {
  const holds = outlet.port.builtInResidual ?? (brake.component.kind === "drum" ? outlet.instance.component.builtInResidual : undefined);
  return holds === undefined ? straight : residual(holds);
};

/** A duty on a path with the master pressure at which it begins to act and, for a hold-off, no longer does. */
export interface ActingStep {
  readonly step: PathStep;
  readonly acts: Pascals;
}

/** The master pressure at which each proportioning function of a path reaches its split point, and each hold-off is fully open. */
export function actingSteps(path: WheelPath, state: LineState): ActingStep[] {
  let before: PressureCurve = builtIn(path);
  return path.steps.flatMap((step) => {
    const at = kneeOf(step.duty, state);
    const acts = at === undefined ? undefined : inletFor(before, pascals(at));
    before = inSeries(before, curveOf(step.duty, state) ?? straight);
    return acts === undefined ? [] : [{ step, acts }];
  });
}

function kneeOf(duty: Duty, { laden, adjustedTo }: DutyState): number | undefined {
  switch (duty.does) {
    case "hold-off": return duty.full;
    case "proportioning":
    case "limiting": return duty.split;
    case "load-sensing-proportioning": return laden ? duty.ladenSplit : duty.split;
    case "adjustable-proportioning": return adjustedTo;
    default: return undefined;
  }
}

const COLUMNS_OF: { readonly [D in Duty as D["does"]]?: readonly (readonly [keyof D, string])[] } = {
  "hold-off": [["opens", "Opens"], ["full", "Full"]],
  proportioning: [["split", "Split"], ["slope", "Slope"]],
  "adjustable-proportioning": [["slope", "Slope"]],
  "load-sensing-proportioning": [["split", "Split"], ["ladenSplit", "Laden split"], ["slope", "Slope"]],
  limiting: [["split", "Split"]],
};

/** Names the figures that the duties of the paths leave out. */
export function readDuties(reading: Reading, paths: readonly WheelPath[]): void {
  for (const { duty, instance: { component } } of paths.flatMap(({ steps }) => steps)) {
    const columns = (COLUMNS_OF[duty.does] ?? []) as readonly (readonly [keyof Duty, string])[];
    for (const [key, column] of columns) if (duty[key] === undefined) lacks(reading, "Passages", column, component.name);
  }
}
