/** The assembly of one car: the directed graph that every other answer is read off. */
import type { Car, FoundJoin } from "../car";
import type { Component, Port, PortCircuit, Wheel } from "../component";
import { madeOnceByKey } from "../made-once";
import type { Question } from "../question";

export type CircuitName = "front" | "rear" | "1" | "2" | "single";

/** One component in one place of the car. A part listed twice is two instances. */
export interface Instance {
  /** Unique on the car: the component's name, with `@place` where it is at a wheel or there are several. */
  readonly label: string;
  readonly component: Component;
  readonly place: string | undefined;
  /** Where its outlets are, when that is another place (a hose spans two). */
  readonly outletPlace?: string | undefined;
  readonly wheel?: Wheel | undefined;
  /** Not on the car's list: added here so that the assembly can go on. */
  readonly proposed?: boolean | undefined;
  /** Stands for a part that the row does not name. */
  readonly unnamed?: boolean | undefined;
}

export interface PortRef {
  readonly instance: Instance;
  readonly port: Port;
}

/** A connection between two ports; pressure comes from `from`. */
export interface Joint {
  readonly from: PortRef;
  readonly to: PortRef;
  /** A run of hard line, or one part screwed straight into the other. */
  readonly by: "line" | "direct";
  /** How it was found on the car, when the Joins table says. */
  readonly found?: FoundJoin | undefined;
}

export interface Circuit {
  readonly name: CircuitName;
  readonly wheels: readonly Wheel[];
}

export interface Assembly {
  readonly car: Car;
  readonly circuits: readonly Circuit[];
  readonly instances: readonly Instance[];
  readonly joints: readonly Joint[];
  /** Ports said to be plugged on this car beyond those plugged in the catalogue. */
  readonly plugged: ReadonlySet<string>;
  /** Listed parts that found no place in the assembly for want of an answer: their ports are not open, they are unknown. */
  readonly unplaced: readonly Instance[];
  readonly questions: readonly Question[];
  readonly assumptions: readonly string[];
}

export const portKey = (ref: PortRef): string => `${ref.instance.label}|${ref.port.name}`;
export const sayPort = (ref: PortRef): string => (ref.port.name ? `${ref.instance.label} ${ref.port.name}` : ref.instance.label);
export const sayJoint = (joint: Joint): string => `${sayPort(joint.from)} → ${sayPort(joint.to)}`;
/** `front circuit`, `circuit 1`, and where one feeds every wheel `one circuit`. */
export const sayCircuit = (name: CircuitName | PortCircuit): string => (name === "1" || name === "2" ? `circuit ${name}` : name === "single" ? "one circuit" : `${name} circuit`);
/** The same within a sentence. */
export const theCircuit = (name: CircuitName | PortCircuit): string => (name === "1" || name === "2" ? "" : "the ") + sayCircuit(name);

/** Places have aliases: a valve beside the master stands at `valve`, `wheel-LF` is `LF`. */
export const placeKey = (place: string): string => placeKeys(place, keyOfPlace);

/** A shop has a few dozen places, and each car asks for them some hundred times. */
const placeKeys = madeOnceByKey<string>(2000);

function keyOfPlace(place: string): string {
  const plain = place.trim().toLowerCase();
  return plain === "at-master" ? "valve" : plain.replace(/^wheel-/, "");
}

const BEYOND_THE_REAR_HOSE = new Set(["axle-tee", "rear-axle", "axle", "lr", "rr"]);
export const isBeyondRearHose = (place: string | undefined): boolean => place !== undefined && BEYOND_THE_REAR_HOSE.has(placeKey(place));
