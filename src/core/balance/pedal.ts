/** From the foot to the line pressure: lever, booster, master cylinder. Springs, seals and lever friction are left out unless named. */
import { newtons, pascals, squareMetres, type CubicMetres, type Metres, type Newtons, type Pascals, type SquareMetres } from "../quantity";

/** A vacuum booster. Forces at the push rod. */
export interface Assist {
  /** Input that opens its valve; below it nothing comes out. [N] */
  readonly cutIn: Newtons;
  /** Output that comes at once at cut-in. [N] */
  readonly jumpIn: Newtons;
  /** Output for each unit of input between cut-in and run-out. [-] */
  readonly gain: number;
  /** The most that vacuum and diaphragm add. [N] */
  readonly most: Newtons;
  /** Return spring, worked against when the booster has failed. [N] */
  readonly spring: Newtons;
}

/**
 * Area of a round bore.
 * @param bore diameter [m]
 * @returns area [m2]
 * @source area of a circle
 * @example boreArea(millimetres(25)) // => 4.909e-4
 */
export const boreArea = (bore: Metres): SquareMetres => squareMetres((Math.PI / 4) * bore * bore);

/**
 * Static pressure behind a master cylinder's piston. Return spring and seals are left out, so it reads high.
 * @param force at the push rod [N]
 * @param area of the bore [m2]
 * @returns gauge pressure [Pa]
 * @source p = F / A (OpenStax, College Physics, ch. 11.5; check values A01 to A03)
 * @example linePressure(newtons(2000), squareMetres(4e-4)) // => 5e6
 */
export const linePressure = (force: Newtons, area: SquareMetres): Pascals => pascals(force / area);

/**
 * Most assist of a vacuum booster.
 * @param area of all its diaphragms together [m2]
 * @param vacuum below the air's pressure [Pa]
 * @param spring return spring, worked against [N]
 * @returns force at the push rod [N]
 * @source booster notes, section 4 (check value A89: 0.0533 m2 and 68.3 kPa give 3640 N before the spring)
 * @example mostAssist(squareMetres(0.02), kilopascals(60), newtons(100)) // => 1100
 */
export const mostAssist = (area: SquareMetres, vacuum: Pascals, spring: Newtons): Newtons => newtons(Math.max(0, area * vacuum - spring));

/**
 * Push-rod force out of a booster: nothing below cut-in, then jump-in and gain, and past run-out the driver's own force on top of the most assist.
 * @param assist the booster [N, -]; undefined when there is none
 * @param input push-rod force into it [N]
 * @returns push-rod force into the master [N]
 * @source booster notes, section 2: F = jump-in + gain (F_in - cut-in); beyond run-out dF/dF_in = 1
 * @example boosted({ cutIn: newtons(50), jumpIn: newtons(150), gain: 4, most: newtons(2000), spring: newtons(100) }, newtons(300)) // => 1150
 */
export function boosted(assist: Assist | undefined, input: Newtons): Newtons {
  if (!assist) return input;
  if (input < assist.cutIn) return newtons(0);
  return newtons(Math.min(assist.jumpIn + assist.gain * (input - assist.cutIn), input + assist.most));
}

/**
 * The least push-rod force into a booster that gives an output.
 * @param assist the booster [N, -]; undefined when there is none
 * @param output push-rod force wanted at the master [N]
 * @returns push-rod force [N]
 * @source inverse of the function above
 * @example inputFor({ cutIn: newtons(50), jumpIn: newtons(150), gain: 4, most: newtons(2000), spring: newtons(100) }, newtons(1150)) // => 300
 */
export function inputFor(assist: Assist | undefined, output: Newtons): Newtons {
  if (!assist || output <= 0) return output;
  return newtons(Math.max(assist.cutIn, assist.cutIn + (output - assist.jumpIn) / assist.gain, output - assist.most));
}

/**
 * Input at which a booster runs out: the knee.
 * @param assist the booster; its gain above 1 [N, -]
 * @returns push-rod force into it [N]; Infinity at a gain of 1 or less
 * @source jump-in + gain (F - cut-in) = F + most assist, solved for F
 * @example runOut({ cutIn: newtons(50), jumpIn: newtons(150), gain: 4, most: newtons(2050), spring: newtons(100) }) // => 700
 */
export const runOut = ({ most, gain, cutIn, jumpIn }: Assist): Newtons => newtons(gain > 1 ? (most + gain * cutIn - jumpIn) / (gain - 1) : Infinity);

/**
 * A failed booster passes the driver's force less its return spring.
 * @param assist the booster [N]; undefined when there is none
 * @param input push-rod force into it [N]
 * @returns push-rod force into the master [N]
 * @source force balance of a pushed-through booster (from memory)
 * @example unboosted({ cutIn: newtons(50), jumpIn: newtons(150), gain: 4, most: newtons(2000), spring: newtons(100) }, newtons(300)) // => 200
 */
export const unboosted = (assist: Assist | undefined, input: Newtons): Newtons => newtons(Math.max(0, input - (assist?.spring ?? 0)));

/** A booster's chambers, for how many stops it holds once the engine is off. */
export interface Chambers {
  /** Vacuum side, at rest. [m3] */
  readonly vacuumSide: CubicMetres;
  /** Air side, at rest. [m3] */
  readonly airSide: CubicMetres;
  readonly area: SquareMetres;
  /** Diaphragm travel at each stop. [m] */
  readonly travel: Metres;
}

const ATMOSPHERE = 101_325; // Pa, standard (10th CGPM 1954)

/**
 * Vacuum that is left after a number of full stops with no source of it; the air let in at each stop spreads over both chambers.
 * @param chambers of the booster [m3, m2, m]
 * @param vacuum before the first stop [Pa]
 * @param stops how many [-]
 * @returns vacuum below the air's pressure [Pa]
 * @source booster notes, section 4: p' = (p (Vf - A x) + p_atm (Vr + A x)) / (Vf + Vr); isothermal (check values A91 to A94)
 * @example vacuumLeft({ vacuumSide: cubicMetres(3e-3), airSide: cubicMetres(1e-3), area: squareMetres(0.05), travel: metres(0.02) }, kilopascals(60), 2) // => 15e3
 */
export function vacuumLeft({ vacuumSide, airSide, area, travel }: Chambers, vacuum: Pascals, stops: number): Pascals {
  // Below the air's pressure both terms of the source shrink to one factor a stop.
  return pascals(Math.min(vacuum, ATMOSPHERE) * ((vacuumSide - area * travel) / (vacuumSide + airSide)) ** stops);
}
