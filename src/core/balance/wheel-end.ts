/** What a wheel brake makes of pressure, from its row of WheelBrakes. */
import type { Component, WheelBrake } from "../component";
import { metres, pascals, radians, type Metres, type Pascals } from "../quantity";
import { discTorque, uniformPressureRadius, uniformWearRadius } from "./disc";
import { drumTorque, duoServoFactor, FACTOR_PER_FRICTION, longShoeFactor, passedOn, usualFactors } from "./drum";
import { assume, partFigure, type Reading } from "./figures";
import { boreArea } from "./pedal";

export interface WheelEnd {
  readonly component: Component;
  /** Torque of one wheel for each pascal above the threshold. [N m/Pa] */
  readonly torque: number;
  readonly threshold: Pascals;
  /** Least and most of the brake factor over its middle; undefined where there is no band. */
  readonly band: { readonly low: number; readonly high: number; readonly says: string } | undefined;
}

const ONE = pascals(1);

/** Undefined while a figure is missing; each is then named. */
export function wheelEndOf(reading: Reading, component: Component): WheelEnd | undefined {
  const brake = component.wheelBrake ?? {};
  return component.kind === "disc" ? discEnd(reading, component, brake) : drumEnd(reading, component, brake);
}

function discEnd(reading: Reading, component: Component, brake: WheelBrake): WheelEnd | undefined {
  const need = <T>(value: T | undefined, column: string): T | undefined => partFigure(reading, "WheelBrakes", [value, column, component]);
  const [pistons, piston, friction, radius] = [need(brake.pistons, "Pistons"), need(brake.piston, "Piston"), need(brake.friction, "Friction"), discRadius(reading, component, brake)];
  if (pistons === undefined || piston === undefined || friction === undefined || radius === undefined) return undefined;
  return { component, torque: pistons * discTorque(ONE, boreArea(piston), friction, radius), threshold: thresholdOf(reading, component, brake), band: undefined };
}

/** On the radius that Settings choose; which one is said. */
function discRadius(reading: Reading, component: Component, { outerRadius, innerRadius }: WheelBrake): Metres | undefined {
  const outer = partFigure(reading, "WheelBrakes", [outerRadius, "Outer radius", component]);
  const inner = partFigure(reading, "WheelBrakes", [innerRadius, "Inner radius", component]);
  if (outer === undefined || inner === undefined) return undefined;
  const { discRadius: by } = reading.catalogue.settings;
  assume(reading, `discs on the ${by} radius`);
  return metres((by === "uniform wear" ? uniformWearRadius : uniformPressureRadius)(outer, inner));
}

function drumEnd(reading: Reading, component: Component, brake: WheelBrake): WheelEnd | undefined {
  const need = <T>(value: T | undefined, column: string): T | undefined => partFigure(reading, "WheelBrakes", [value, column, component]);
  const [piston, radius, factors] = [need(brake.piston, "Piston"), need(brake.drumRadius, "Drum radius"), factorsOf(reading, component, brake)];
  if (piston === undefined || radius === undefined || !factors) return undefined;
  const [low, factor, high] = factors;
  const says = `${component.name}: ${[low, factor, high].map((one) => Number(one.toFixed(2))).join(", ")}`;
  const band = low < factor || high > factor ? { low: low / factor, high: high / factor, says } : undefined;
  return { component, torque: drumTorque(ONE, boreArea(piston), factor, radius), threshold: thresholdOf(reading, component, brake), band };
}

/** The stated factor with its band; without one that of the shoes' shape, or the usual band of the kind, but no usual band for a duo-servo brake, whose factor differs too much. */
function factorsOf(reading: Reading, component: Component, brake: WheelBrake): readonly [number, number, number] | undefined {
  const { factorLow, factorHigh, type, friction } = brake;
  const factor = brake.factor ?? factorOfShoes(reading, component, brake);
  if (factor !== undefined) {
    if (brake.factor !== undefined && factorLow === undefined && factorHigh === undefined) assume(reading, `${component.name}: brake factor ${factor} without a band`);
    return [factorLow ?? factor, factor, factorHigh ?? factor];
  }
  if (type === undefined || !(type in FACTOR_PER_FRICTION) || type === "duo-servo" || friction === undefined) return partFigure(reading, "WheelBrakes", [undefined, "Factor", component]);
  const [least, most] = usualFactors(type as keyof typeof FACTOR_PER_FRICTION, friction);
  const middle = (least + most) / 2;
  assume(reading, `${component.name}: brake factor ${Number(middle.toFixed(2))}, usual for ${type} at friction ${friction}`);
  return [Math.min(factorLow ?? least, middle), middle, Math.max(factorHigh ?? most, middle)];
}

/** Both shoes alike: each pressed by one piston, or in a duo-servo brake the primary by it and the secondary, pivoted on the anchor, by the link. */
function factorOfShoes(reading: Reading, component: Component, { type, friction, drumRadius, shoePivot, shoeArm, liningFrom, liningTo }: WheelBrake): number | undefined {
  if (friction === undefined || drumRadius === undefined || shoePivot === undefined || shoeArm === undefined || liningTo === undefined) return undefined;
  if (type !== "leading-trailing" && type !== "two-leading" && type !== "duo-servo") return undefined;
  const shoe = { drumRadius, pivot: shoePivot, arm: shoeArm, from: liningFrom ?? radians(0), to: liningTo };
  const leading = longShoeFactor(shoe, friction, "leading");
  const factor = leading === Infinity ? Infinity : type === "duo-servo" ? duoServoFactor(leading, leading, passedOn(shoe, leading)) : leading + (type === "two-leading" ? leading : longShoeFactor(shoe, friction, "trailing"));
  assume(reading, factor === Infinity ? `${component.name} locks itself by the shape of its shoes` : `${component.name}: brake factor ${Number(factor.toFixed(3))} by the shape of its shoes`);
  return factor === Infinity ? undefined : factor;
}

function thresholdOf(reading: Reading, component: Component, { threshold }: WheelBrake): Pascals {
  if (threshold !== undefined) return threshold;
  assume(reading, `${component.name}: threshold from Settings`);
  const { discThreshold, drumThreshold } = reading.catalogue.settings;
  return component.kind === "disc" ? discThreshold : drumThreshold;
}
