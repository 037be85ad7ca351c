/** What a brake system is made of: components, their ports, and what each passage does to the pressure. */
import type { Gender, JointFace, Seat } from "./joint";
import type { CubicMetres, Metres, Newtons, Pascals, Radians, SquareMetres } from "./quantity";
import type { Thread } from "./thread";

export const COMPONENT_KINDS = [
  "master", "booster", "distribution-block", "hold-off-valve", "proportioning-valve", "adjustable-proportioning-valve", "combination-valve",
  "residual-valve", "anti-lock-unit", "tee", "union", "switch", "hose", "disc", "drum",
] as const;
export type ComponentKind = (typeof COMPONENT_KINDS)[number];

export const WHEELS = ["LF", "RF", "LR", "RR"] as const;
export type Wheel = (typeof WHEELS)[number];
export type Axle = "front" | "rear";
/** The other wheel of the axle. */
export const AXLE_MATE: Readonly<Record<Wheel, Wheel>> = { LF: "RF", RF: "LF", LR: "RR", RR: "LR" };
export const axleOf = (wheel: Wheel): Axle => (wheel === "LF" || wheel === "RF" ? "front" : "rear");

export const PORT_CIRCUITS = ["front", "rear", "1", "2", "any"] as const;
export type PortCircuit = (typeof PORT_CIRCUITS)[number];
export const SERVES = ["LF", "RF", "LR", "RR", "front", "rear", "any"] as const;
export type Serves = (typeof SERVES)[number];

export interface Port {
  readonly name: string;
  readonly flow: "in" | "out";
  readonly circuit: PortCircuit;
  readonly serves: Serves;
  readonly thread?: Thread | undefined;
  readonly seat?: Seat | undefined;
  readonly gender: Gender;
  readonly plugged: boolean;
  readonly use: "line" | "switch" | "bleed";
  readonly side?: string | undefined;
  /** Pressure that a check valve inside this master outlet holds after release. */
  readonly builtInResidual?: Pascals | undefined;
  /** Fluid in the chamber of the reservoir behind this master outlet. */
  readonly reservoir?: CubicMetres | undefined;
  /** Piston travel that feeds this master outlet. */
  readonly stroke?: Metres | undefined;
}

/** A port's face, when thread and seat are both known. */
export const faceOf = (port: Port): JointFace | undefined =>
  port.thread && port.seat ? { thread: port.thread, seat: port.seat, gender: port.gender } : undefined;

/** What one passage does on the way from inlet to outlet. Pressures are gauge. */
export type Duty =
  | { readonly does: "through" }
  | { readonly does: "hold-off"; readonly opens?: Pascals | undefined; readonly full?: Pascals | undefined }
  | { readonly does: "proportioning"; readonly split?: Pascals | undefined; readonly slope?: number | undefined }
  | {
      readonly does: "adjustable-proportioning";
      readonly leastSplit?: Pascals | undefined;
      readonly mostSplit?: Pascals | undefined;
      readonly slope?: number | undefined;
    }
  | {
      readonly does: "load-sensing-proportioning";
      readonly split?: Pascals | undefined;
      readonly ladenSplit?: Pascals | undefined;
      readonly slope?: number | undefined;
    }
  | { readonly does: "limiting"; readonly split?: Pascals | undefined }
  | { readonly does: "residual"; readonly holds?: Pascals | undefined };

export const DUTIES = [
  "through", "hold-off", "proportioning", "adjustable-proportioning", "load-sensing-proportioning", "limiting", "residual",
] as const satisfies readonly Duty["does"][];

/** Duties that cut the pressure behind a split point. */
export const PROPORTIONING_NAMES: ReadonlySet<Duty["does"]> = new Set(["proportioning", "adjustable-proportioning", "load-sensing-proportioning", "limiting"]);

export interface Passage {
  readonly from: string;
  readonly to: string;
  /** In flow order; undefined when nobody has said what the passage does. */
  readonly duties: readonly Duty[] | undefined;
  readonly bypassOnFailure: boolean;
}

export const BRAKE_TYPES = ["fixed", "floating", "leading-trailing", "two-leading", "duo-servo"] as const;
export type BrakeType = (typeof BRAKE_TYPES)[number];

export interface WheelBrake {
  readonly pistons?: number | undefined;
  readonly piston?: Metres | undefined;
  readonly type?: BrakeType | undefined;
  readonly friction?: number | undefined;
  readonly outerRadius?: Metres | undefined;
  readonly innerRadius?: Metres | undefined;
  readonly drumRadius?: Metres | undefined;
  readonly factorLow?: number | undefined;
  readonly factor?: number | undefined;
  readonly factorHigh?: number | undefined;
  readonly threshold?: Pascals | undefined;
  readonly clearance?: Metres | undefined;
  /** Shape of a drum's shoes, where the brake factor is to be worked out from it. */
  readonly shoePivot?: Metres | undefined;
  readonly shoeArm?: Metres | undefined;
  readonly liningFrom?: Radians | undefined;
  readonly liningTo?: Radians | undefined;
  readonly cupExpanders?: boolean | undefined;
  readonly parkingBrake?: boolean | undefined;
}

export interface Booster {
  readonly diaphragm?: Metres | undefined;
  readonly diaphragms?: number | undefined;
  readonly gain?: number | undefined;
  readonly jumpIn?: Newtons | undefined;
  readonly cutIn?: Newtons | undefined;
  readonly spring?: Newtons | undefined;
  /** Volume of its chambers at rest, for how long its vacuum lasts. */
  readonly vacuumSide?: CubicMetres | undefined;
  readonly airSide?: CubicMetres | undefined;
}

export const SWITCH_SENSES = ["differential-pressure", "level", "stop-lamp"] as const;
export type SwitchSense = (typeof SWITCH_SENSES)[number];

export interface Component {
  readonly name: string;
  readonly kind: ComponentKind;
  readonly description: string;
  readonly place?: string | undefined;
  readonly price?: number | undefined;
  readonly onHand?: number | undefined;
  readonly bore?: Metres | undefined;
  readonly stroke?: Metres | undefined;
  /** Of a master whose ports do not say: the check valve of the outlet that feeds drums. */
  readonly builtInResidual?: Pascals | undefined;
  readonly fluidHeld?: CubicMetres | undefined;
  /** Extra fluid taken up at 1000 psi. */
  readonly volumeAt1000Psi?: CubicMetres | undefined;
  readonly length?: Metres | undefined;
  /** Volume growth of a hose for each unit of its length, at the pressure its maker states. */
  readonly expansion?: SquareMetres | undefined;
  /** Has an electrical connection. */
  readonly wire?: boolean | undefined;
  /** What a switch tells the driver of. */
  readonly senses?: SwitchSense | undefined;
  /** Has an arrow: works in one direction only. */
  readonly directional?: boolean | undefined;
  readonly ports: readonly Port[];
  /** A row of its ports had an error and was left out, so that it has more ports than these. */
  readonly portsUnread?: boolean | undefined;
  readonly passages: readonly Passage[];
  readonly wheelBrake?: WheelBrake | undefined;
  readonly booster?: Booster | undefined;
}

const PLAIN_KINDS: ReadonlySet<ComponentKind> = new Set(["distribution-block", "tee", "union", "hose"]);

/** True for parts that have no valve inside by what they are: an unlisted passage of theirs is a plain hole. Valves are known by contents only. */
export const isPlain = (component: Component): boolean => PLAIN_KINDS.has(component.kind);

export const portNamed = (component: Component, name: string): Port | undefined => component.ports.find((port) => port.name === name);
