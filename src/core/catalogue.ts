/** The shop's own parts and figures, parsed once and looked up by name. */
import type { Fluid, FoundJoin, MeasuredLength, Platform } from "./car";
import type { Component } from "./component";
import type { JointFace } from "./joint";
import type { CubicMetres, Metres } from "./quantity";
import type { Settings } from "./settings";
import type { Material, TubeStock } from "./tube";

/** Joins a tube of one outside diameter to ports of one thread and seat. The face is the nut's own. */
export interface Nut {
  readonly name: string;
  readonly tube: Metres;
  readonly face: JointFace;
  readonly price?: number | undefined;
  readonly source?: string | undefined;
}

export interface Adapter {
  readonly name: string;
  readonly a: JointFace;
  readonly b: JointFace;
  readonly price?: number | undefined;
}

export interface SetRun {
  readonly from: string;
  readonly to: string;
  readonly tube?: Metres | undefined;
  readonly length?: Metres | undefined;
  readonly a?: Omit<JointFace, "gender"> | undefined;
  readonly b?: Omit<JointFace, "gender"> | undefined;
}

export interface LineSet {
  readonly name: string;
  readonly platform: string;
  readonly firstYear?: number | undefined;
  readonly lastYear?: number | undefined;
  /** Undefined when the row does not say which valves the set was bent for. */
  readonly valves: readonly string[] | undefined;
  readonly front?: "disc" | "drum" | undefined;
  readonly rear?: "disc" | "drum" | undefined;
  readonly material?: Material | undefined;
  readonly price?: number | undefined;
  readonly onHand?: number | undefined;
  readonly frequency?: number | undefined;
  readonly runs: readonly SetRun[];
}

/** One component of a conversion or repair kit; a kit is the rows of one name. */
export interface KitContent {
  readonly kit: string;
  readonly component: string;
  readonly quantity: number;
  readonly price?: number | undefined;
}

/** The price of a piece of tube when at least so many are bought at once. */
export interface PriceBreak {
  readonly tube: string;
  readonly fromQuantity: number;
  readonly price: number;
}

export interface FluidBottle {
  readonly fluid: Fluid;
  readonly bottle: CubicMetres;
  readonly price?: number | undefined;
}

/** Work and how long it takes; what it applies to is in the shop's own words. */
export interface Operation {
  readonly name: string;
  readonly appliesTo?: string | undefined;
  readonly minutes: number;
}

export interface Catalogue {
  /** Names the content: two catalogues with the same key hold the same rows. */
  readonly key: string;
  readonly platforms: ReadonlyMap<string, Platform>;
  readonly lengths: ReadonlyMap<string, readonly MeasuredLength[]>;
  readonly components: ReadonlyMap<string, Component>;
  readonly nuts: readonly Nut[];
  readonly adapters: readonly Adapter[];
  readonly tube: readonly TubeStock[];
  readonly lineSets: readonly LineSet[];
  readonly joins: ReadonlyMap<string, readonly FoundJoin[]>;
  readonly kits: readonly KitContent[];
  readonly priceBreaks: readonly PriceBreak[];
  readonly fluids: readonly FluidBottle[];
  readonly operations: readonly Operation[];
  readonly settings: Settings;
}

/** Names are matched without regard to case or outer space. */
export const nameKey = (name: string): string => name.trim().toLowerCase();

export const lookUp = <T>(map: ReadonlyMap<string, T>, name: string | undefined): T | undefined => (name === undefined ? undefined : map.get(nameKey(name)));
