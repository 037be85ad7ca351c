/** How much pressure a tube's wall stands: three formulas, each by its name, because they differ by a sixth on brake tube. */
import { pascals, type Metres, type Pascals } from "./quantity";

export interface TubeWall {
  readonly outsideDiameter: Metres;
  readonly wall: Metres;
}

export const WALL_FORMULAS = ["Barlow", "Lamé", "von Mises"] as const;
export type WallFormula = (typeof WALL_FORMULAS)[number];

/**
 * Pressure at which the mean hoop stress of a thin wall reaches a strength, 2 S t / D.
 * With yield strength it is where yielding begins, with tensile strength an estimate of burst. Thin walls only: the source asks for
 * D / t of at least 20, and brake tube has about 6.7, so it is an estimate there.
 * @param strength yield or tensile [Pa]
 * @param tube outside diameter and wall [m]
 * @returns inside pressure over outside [Pa]
 * @source Barlow's formula with the outside diameter (encyclopedia article, read)
 * @example barlowPressure(psi(42000), { outsideDiameter: inches(0.1875), wall: inches(0.028) }) // => 8.6488e7, 12544 psi
 */
export const barlowPressure = (strength: Pascals, { outsideDiameter, wall }: TubeWall): Pascals => pascals((2 * strength * wall) / outsideDiameter);

/**
 * Pressure at which the hoop stress at the bore of a thick wall reaches a strength, S (ro² - ri²) / (ro² + ri²).
 * Hoop stress only; the push of the pressure along and through the wall is left out, so it reads high.
 * @param strength yield [Pa]
 * @param tube outside diameter and wall [m]
 * @returns inside pressure over outside [Pa]
 * @source Lamé's bore stress p (ro² + ri²) / (ro² - ri²) (engineering reference page, read)
 * @example lamePressure(psi(25000), { outsideDiameter: inches(0.1875), wall: inches(0.028) }) // => 5.8709e7, 8515 psi
 */
export function lamePressure(strength: Pascals, tube: TubeWall): Pascals {
  const share = boreShare(tube) ** 2;
  return pascals((strength * (1 - share)) / (1 + share));
}

/**
 * Pressure at which the bore of a closed tube begins to yield by the energy of distortion, S (1 - (ri/ro)²) / √3.
 * The lowest of the three on brake tube, and the one to work by.
 * @param strength yield [Pa]
 * @param tube outside diameter and wall [m]
 * @returns inside pressure over outside [Pa]
 * @source von Mises criterion on Lamé's stresses with closed ends (from memory)
 * @example vonMisesPressure(psi(25000), { outsideDiameter: inches(0.1875), wall: inches(0.028) }) // => 5.0568e7, 7334 psi
 */
export const vonMisesPressure = (strength: Pascals, tube: TubeWall): Pascals => pascals((strength * (1 - boreShare(tube) ** 2)) / Math.sqrt(3));

/** By its name. */
export const wallPressure: Readonly<Record<WallFormula, (strength: Pascals, tube: TubeWall) => Pascals>> = {
  Barlow: barlowPressure,
  "Lamé": lamePressure,
  "von Mises": vonMisesPressure,
};

/** Diameter over wall from which Barlow's formula is held to be good. */
export const THIN_WALL = 20;

/** Whether Barlow's formula may be taken at its word. */
export const isThinWalled = ({ outsideDiameter, wall }: TubeWall): boolean => outsideDiameter / wall >= THIN_WALL;

const boreShare = ({ outsideDiameter, wall }: TubeWall): number => (outsideDiameter - 2 * wall) / outsideDiameter;
