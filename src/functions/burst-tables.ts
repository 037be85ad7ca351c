/** Pressure limits of a tube's wall: one row a formula. */
import { isThinWalled, THIN_WALL, wallPressure, WALL_FORMULAS, type TubeWall, type WallFormula } from "../core/burst";
import { inPsi, megapascals, psi, type Pascals } from "../core/quantity";
import type { CellValue } from "../workbook/document";
import { badValue } from "./answer";
import { readLength, readNumber, readUnit } from "./arguments";
import { catalogueFor } from "./reports";
import { laidOut, rounded, text, type Column } from "./columns";

export interface BurstArguments {
  readonly outsideDiameter: unknown;
  readonly wall: unknown;
  readonly yieldStrength: unknown;
  readonly safetyFactor: unknown;
  readonly unit: unknown;
  readonly catalog: unknown;
}

export interface BurstRow {
  readonly formula: WallFormula;
  readonly pressure: Pascals;
  readonly safetyFactor: number | undefined;
  readonly tube: TubeWall;
}

/** Pressure at first yield by each formula, and that over the safety factor: the one given, else the shop's. */
export function burstTable({ outsideDiameter, wall, yieldStrength, safetyFactor, unit, catalog }: BurstArguments): CellValue[][] {
  const named = readUnit(unit);
  const tube = { outsideDiameter: readLength("outside diameter", outsideDiameter, named), wall: readLength("wall", wall, named) };
  if (2 * tube.wall >= tube.outsideDiameter) throw badValue("wall: accepted: less than half of the outside diameter.");
  const strength = readNumber("yield", yieldStrength);
  if (strength === undefined) throw badValue(`yield: read nothing; accepted: the yield strength in ${named === "in" ? "psi" : "MPa"}.`);
  const factor = readNumber("safety factor", safetyFactor) ?? (isLeftOut(catalog) ? undefined : catalogueFor(catalog).settings.burstSafetyFactor);
  const rows = WALL_FORMULAS.map((formula): BurstRow => ({ formula, tube, safetyFactor: factor, pressure: wallPressure[formula](named === "in" ? psi(strength) : megapascals(strength), tube) }));
  return laidOut(burstColumns, rows, named === "in" ? "us" : "metric");
}

const isLeftOut = (catalog: unknown): boolean => catalog === undefined || catalog === null || catalog === "" || catalog === 0;

const pressure = (heading: string, of: (row: BurstRow) => number | undefined): Column<BurstRow> => ({
  heading: (units) => `${heading} (${units === "us" ? "psi" : "MPa"})`,
  cell: (row, units) => {
    const value = of(row);
    return value === undefined ? "" : units === "us" ? rounded(inPsi(value as Pascals), 1) : rounded(value / 1e6, 3);
  },
});

export const burstColumns: readonly Column<BurstRow>[] = [
  text("Formula", ({ formula }) => formula),
  pressure("Yields at", (row) => row.pressure),
  text("Safety factor", ({ safetyFactor }) => safetyFactor),
  pressure("Working limit", ({ pressure: limit, safetyFactor }) => (safetyFactor === undefined ? undefined : limit / safetyFactor)),
  text("Diameter over wall", ({ tube }) => rounded(tube.outsideDiameter / tube.wall, 2)),
  text("Rests on", ({ formula, tube }) => restsOn[formula](tube)),
];

const restsOn: Readonly<Record<WallFormula, (tube: TubeWall) => string>> = {
  Barlow: (tube) => `mean hoop stress of a thin wall${isThinWalled(tube) ? "" : `; below a diameter over wall of ${THIN_WALL} an estimate`}`,
  "Lamé": () => "hoop stress at the bore only",
  "von Mises": () => "all stresses at the bore, closed ends (from memory)",
};
