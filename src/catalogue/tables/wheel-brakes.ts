/** WheelBrakes: the figures of components of kind disc or drum. */
import { BRAKE_TYPES, type WheelBrake } from "../../core/component";
import { degrees } from "../../core/quantity";
import { count, figure, name, NOT_NEGATIVE, quantity, yesNo, choice, type Range } from "../column";
import { table } from "../table-spec";
import { distance } from "../trade-columns";
import { angle, length, pistonCount, pressure } from "../unit";

/** Along the drum from the line of its centre and the shoe's pivot. */
const ANGLE: Range = { least: 0, most: degrees(180), says: "from 0 to 180 degrees" };

export interface WheelBrakeRow {
  readonly component: string;
  readonly wheelBrake: WheelBrake;
}

export const wheelBrakesTable = table({
  name: "WheelBrakes",
  holds: "the figures of one disc or drum brake",
  columns: {
    component: name("Component", "a component of kind disc or drum"),
    pistons: count("Pistons", { least: 1, most: 12, says: "from 1 to 12" }, { quantity: pistonCount }),
    piston: distance("Piston"),
    type: choice("Type", BRAKE_TYPES, { sliding: "floating", "two leading shoe": "two-leading" }),
    friction: figure("Friction", { least: 0.05, most: 1.5, says: "from 0.05 to 1.5" }),
    outerRadius: distance("Outer radius"),
    innerRadius: distance("Inner radius"),
    drumRadius: distance("Drum radius"),
    factorLow: figure("Factor low"),
    factor: figure("Factor"),
    factorHigh: figure("Factor high"),
    threshold: quantity("Threshold", pressure),
    clearance: quantity("Clearance", length, NOT_NEGATIVE),
    shoePivot: distance("Shoe pivot"),
    shoeArm: distance("Shoe arm"),
    liningFrom: quantity("Lining from", angle, ANGLE),
    liningTo: quantity("Lining to", angle, ANGLE),
    cupExpanders: yesNo("Cup expanders"),
    parkingBrake: yesNo("Parking brake"),
  },
  knownBy: [["component"], ["pistons", "piston", "type", "friction", "factor", "outerRadius", "drumRadius", "cupExpanders", "parkingBrake"]],
  toCore: ({ component, ...wheelBrake }, refuse): WheelBrakeRow => {
    if (isNotBelow(wheelBrake.innerRadius, wheelBrake.outerRadius)) refuse("innerRadius", "a radius below Outer radius");
    if (isNotBelow(wheelBrake.liningFrom, wheelBrake.liningTo)) refuse("liningFrom", "an angle below Lining to");
    if (isAbove(wheelBrake.factorLow, wheelBrake.factor)) refuse("factorLow", "a number not above Factor");
    if (isAbove(wheelBrake.factor, wheelBrake.factorHigh)) refuse("factorHigh", "a number not below Factor");
    return { component, wheelBrake };
  },
});

const isAbove = (a: number | undefined, b: number | undefined): boolean => a !== undefined && b !== undefined && a > b;
const isNotBelow = (a: number | undefined, b: number | undefined): boolean => a !== undefined && b !== undefined && a >= b;
