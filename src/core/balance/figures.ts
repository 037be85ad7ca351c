/** Reads the figures that the physics needs off a car and the shop's tables: what is missing is named by table and column, what is assumed is said. */
import type { Car, Platform, PlatformFigures } from "../car";
import { lookUp, type Catalogue } from "../catalogue";
import type { Component } from "../component";

/** A figure that nobody has stated. */
export interface Gap {
  readonly table: string;
  readonly column: string;
  /** Of which platform, component or car. */
  readonly subject: string;
}

export interface Reading {
  readonly catalogue: Catalogue;
  readonly car: Car;
  readonly platform: Platform | undefined;
  readonly missing: Gap[];
  readonly assumed: string[];
}

export const readingOf = (catalogue: Catalogue, car: Car): Reading => ({ catalogue, car, platform: lookUp(catalogue.platforms, car.platform), missing: [], assumed: [] });

/** Names a gap, once. */
export function lacks(reading: Reading, table: string, column: string, subject: string): undefined {
  if (!reading.missing.some((gap) => gap.table === table && gap.column === column && gap.subject === subject)) reading.missing.push({ table, column, subject });
  return undefined;
}

export function assume(reading: Reading, text: string): void {
  if (!reading.assumed.includes(text)) reading.assumed.push(text);
}

const FIGURE_COLUMNS = {
  wheelbase: "Wheelbase", mass: "Weight", frontShare: "Front share", centreOfGravityHeight: "CG height", ladenMass: "Laden weight", ladenFrontShare: "Laden front share",
  ladenCentreOfGravityHeight: "Laden CG height", tyreRadius: "Tyre radius", pedalRatio: "Pedal ratio", pedalTravel: "Pedal travel", vacuum: "Vacuum", reservoirAboveCalipers: "Reservoir above calipers",
} as const satisfies Partial<Record<keyof PlatformFigures, string>>;

/** A figure of the car's own row, else of its platform. */
export function platformFigure<K extends keyof typeof FIGURE_COLUMNS>(reading: Reading, key: K): PlatformFigures[K] | undefined {
  const { car, platform } = reading;
  const value = car.platformFigures[key] ?? platform?.figures[key];
  if (value !== undefined) return value;
  return platform ? lacks(reading, "Platforms", FIGURE_COLUMNS[key], platform.name) : lacks(reading, "Cars", car.platform === undefined ? "Platform" : FIGURE_COLUMNS[key], car.name);
}

/** All of several figures, or nothing with each that is missing named. */
export function platformFigures<K extends keyof typeof FIGURE_COLUMNS>(reading: Reading, keys: readonly K[]): Pick<PlatformFigures, K> | undefined {
  const found = keys.map((key) => [key, platformFigure(reading, key)] as const);
  return found.every(([, value]) => value !== undefined) ? (Object.fromEntries(found) as Pick<PlatformFigures, K>) : undefined;
}

/** A figure of a component's row of a table; a blank one is a gap there. */
export const partFigure = <T>(reading: Reading, table: string, [value, column, part]: readonly [T | undefined, string, Component]): T | undefined => value ?? lacks(reading, table, column, part.name);
