/** One customer's car as its row describes it, and the platform it is built on. */
import { difference, lengthOf, type Vector } from "./bends/vector";
import type { Axle } from "./component";
import { metres, type Kilograms, type Metres, type Pascals } from "./quantity";
import type { Material } from "./tube";

export const SPLITS = ["front/rear", "diagonal"] as const;
export type Split = (typeof SPLITS)[number];
export const SCOPES = ["all", "front", "rear"] as const;
export type Scope = (typeof SCOPES)[number];
export const FLUIDS = ["DOT 3", "DOT 4", "DOT 5", "DOT 5.1"] as const;
export type Fluid = (typeof FLUIDS)[number];

/** A figure of a list that may be stated, stated as none, or not known. */
export type Stated<T> = { readonly known: true; readonly value: T } | { readonly known: false };
export const stated = <T>(value: T): Stated<T> => ({ known: true, value });
export const unknown: Stated<never> = { known: false };

/** A component as listed on a car: `RV-10`, or `RV-10@rear` where the row says which circuit, wheel or place it is on. */
export interface ListedPart {
  readonly component: string;
  readonly at?: string | undefined;
}

/** How an adjustable valve was found set: a split point, or wound out so far that it does nothing. */
export type ValveSetting = { readonly split: Pascals } | "no reduction";

export interface Car {
  readonly name: string;
  readonly customer: string;
  readonly platform?: string | undefined;
  readonly year?: number | undefined;
  readonly brakes: Readonly<Record<Axle, string | undefined>>;
  readonly master?: string | undefined;
  /** Name of the booster, or "none". */
  readonly booster: Stated<string>;
  readonly valves: Stated<readonly ListedPart[]>;
  readonly hoses: Stated<readonly ListedPart[]>;
  readonly material?: Material | undefined;
  /** Materials that the row names besides the first. */
  readonly otherMaterials: readonly Material[];
  readonly scope: Scope;
  readonly conversion?: boolean | undefined;
  readonly fluids: readonly Fluid[];
  readonly valveSetting?: ValveSetting | undefined;
  /** What the quote sells; undefined when the row does not limit it. The rest is on the car. */
  readonly supply?: readonly string[] | undefined;
  readonly accepted: ReadonlyMap<string, string>;
  readonly notes: string;
  /** Figures of the platform that this car's row states itself; here they win. */
  readonly platformFigures: Partial<PlatformFigures>;
}

export interface PlatformFigures {
  readonly split: Split;
  readonly wheelbase: Metres;
  readonly mass: Kilograms;
  readonly frontShare: number;
  readonly centreOfGravityHeight: Metres;
  readonly ladenMass: Kilograms;
  readonly ladenFrontShare: number;
  readonly ladenCentreOfGravityHeight: Metres;
  readonly tyreRadius: Metres;
  readonly reservoirAboveCalipers: Metres;
  readonly pedalRatio: number;
  readonly pedalTravel: Metres;
  readonly vacuum: Pascals;
  readonly driverSide: "left" | "right";
  readonly drivelineParkingBrake: boolean;
}

export interface Platform {
  readonly name: string;
  readonly firstYear?: number | undefined;
  readonly lastYear?: number | undefined;
  readonly frequency?: number | undefined;
  readonly figures: Partial<PlatformFigures>;
}

/** The length of line between two places of a platform, as measured. Holds both ways. */
export interface MeasuredLength {
  readonly platform: string;
  readonly from: string;
  readonly to: string;
  /** As measured along the line; where only points are stated, along the legs between them. */
  readonly length: Metres;
  readonly tube?: Metres | undefined;
  /** Where the legs of its centre line meet, ends included. */
  readonly points?: readonly Vector[] | undefined;
  /** Nobody has measured along the line. */
  readonly byPointsOnly?: boolean | undefined;
}

/** Length of the legs between points: more than the line has, by what its bends cut off. */
export const alongLegs = (points: readonly Vector[]): Metres => metres(points.slice(1).reduce((sum, point, index) => sum + lengthOf(difference(point, points[index] ?? point)), 0));

/** A joint as found on the car; it replaces what the assembly would infer. */
export interface FoundJoin {
  readonly car: string;
  readonly from: { readonly component: string; readonly port: string };
  readonly to?: { readonly component: string; readonly port: string } | undefined;
  readonly nutThread?: import("./thread").Thread | undefined;
  readonly flare?: string | undefined;
  readonly plugged: boolean;
}
