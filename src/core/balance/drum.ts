/** Drum brakes: by brake factor, or from the shape of the shoes. */
import { newtonMetres, pascals, type Metres, type NewtonMetres, type Newtons, type Pascals, type Radians, type SquareMetres } from "../quantity";

/**
 * Torque of one drum brake.
 * @param pressure at the wheel cylinder above the threshold that brings the shoes on [Pa]
 * @param cylinderArea of ONE piston [m2]
 * @param factor brake factor: drag of both shoes over the force of one piston [-]
 * @param radius of the drum [m]
 * @returns torque of one wheel [N m]
 * @source T = C* p A r, brake-hydraulics research notes
 * @example drumTorque(megapascals(4), squareMetres(4e-4), 2, metres(0.125)) // => 400
 */
export const drumTorque = (pressure: Pascals, cylinderArea: SquareMetres, factor: number, radius: Metres): NewtonMetres =>
  newtonMetres(factor * Math.max(0, pressure) * cylinderArea * radius);

/** Arms about a shoe's pivot. */
export interface ShortShoe {
  /** Of the wheel cylinder's force. [m] */
  readonly force: Metres;
  /** Of the lining's normal force. [m] */
  readonly normal: Metres;
  /** Of its drag. [m] */
  readonly drag: Metres;
}

/**
 * Factor of one shoe with its lining at one point: drag over cylinder force.
 * @param shoe arms about the pivot [m]
 * @param friction of the lining [-]
 * @param sense leading: the drum's turning presses the shoe on; trailing: it lifts it off
 * @returns factor [-]; Infinity where a leading shoe locks itself (friction x drag arm not below the normal arm)
 * @source moments about the pivot: mu (h/b) / (1 -+ mu c/b) (from memory, after Limpert)
 * @example shortShoeFactor({ force: metres(0.2), normal: metres(0.1), drag: metres(0.1) }, 0.4, "leading") // => 1.3333
 */
export function shortShoeFactor({ force, normal, drag }: ShortShoe, friction: number, sense: "leading" | "trailing"): number {
  const rest = normal + (sense === "leading" ? -1 : 1) * friction * drag;
  return rest > 0 ? (friction * force) / rest : Infinity;
}

/** A shoe on a fixed pivot whose lining presses by the sine of the angle from the pivot. */
export interface LongShoe {
  readonly drumRadius: Metres;
  /** From the drum's centre. [m] */
  readonly pivot: Metres;
  /** Arm of the wheel cylinder's force about the pivot. [m] */
  readonly arm: Metres;
  /** Where the lining begins and ends, from the line of centre and pivot. [rad] */
  readonly from: Radians;
  readonly to: Radians;
}

/**
 * Factor of one long shoe: drag at the drum's radius over cylinder force.
 * @param shoe its shape [m, rad]
 * @param friction of the lining [-]
 * @param sense leading or trailing
 * @returns factor [-]; Infinity where a leading shoe locks itself
 * @source Shigley, Mechanical Engineering Design, ch. 16, eqs 16-2 to 16-6 (check values A100 to A102: problem 16-1, answers from memory)
 * @example longShoeFactor({ drumRadius: metres(0.15), pivot: metres(0.125), arm: metres(0.2165), from: degrees(0), to: degrees(120) }, 0.28, "leading") // => 0.8413
 */
export function longShoeFactor(shoe: LongShoe, friction: number, sense: "leading" | "trailing"): number {
  const { normal, drag } = shoeMoments(shoe);
  const rest = normal + (sense === "leading" ? -1 : 1) * friction * drag;
  return rest > 0 ? (friction * shoe.arm * (Math.cos(shoe.from) - Math.cos(shoe.to))) / rest : Infinity;
}

/**
 * Largest lining pressure of a long shoe.
 * @param shoe its shape [m, rad]
 * @param friction of the lining [-]
 * @param sense leading or trailing
 * @param load cylinder force and lining width [N, m]
 * @returns pressure where the sine is largest on the lining [Pa]; Infinity where the shoe locks itself
 * @source as above; problem 16-1 gives 734 kPa
 * @example longShoePressure({ drumRadius: metres(0.15), pivot: metres(0.125), arm: metres(0.2165), from: degrees(0), to: degrees(120) }, 0.28, "leading", { force: newtons(2200), width: metres(0.04) }) // => 734e3
 */
export function longShoePressure(shoe: LongShoe, friction: number, sense: "leading" | "trailing", load: { readonly force: Newtons; readonly width: Metres }): Pascals {
  const { normal, drag } = shoeMoments(shoe);
  const rest = normal + (sense === "leading" ? -1 : 1) * friction * drag;
  const largestSine = shoe.from <= Math.PI / 2 && shoe.to >= Math.PI / 2 ? 1 : Math.max(Math.sin(shoe.from), Math.sin(shoe.to));
  return pascals(rest > 0 ? (load.force * shoe.arm * largestSine) / (rest * load.width * shoe.drumRadius) : Infinity);
}

/** Moments about the pivot for a lining of unit width, radius and pressure per sine: of the normal force, and of the drag for unit friction. */
function shoeMoments({ drumRadius, pivot, from, to }: LongShoe): { readonly normal: number; readonly drag: number } {
  const sineSquared = (to - from) / 2 - (Math.sin(2 * to) - Math.sin(2 * from)) / 4;
  const sineCosine = (Math.sin(to) ** 2 - Math.sin(from) ** 2) / 2;
  return { normal: pivot * sineSquared, drag: drumRadius * (Math.cos(from) - Math.cos(to)) - pivot * sineCosine };
}

/**
 * Factor of a duo-servo brake: the primary shoe's reaction drives the secondary.
 * @param primary factor of the primary shoe alone [-]
 * @param secondary factor of the secondary shoe alone [-]
 * @param passedOn force on the secondary for each unit of cylinder force on the primary [-]
 * @returns factor [-]
 * @source C* = Cp + Cs (reaction) (from memory, after Limpert); the secondary also takes its own piston's force only while that is the larger
 * @example duoServoFactor(1, 1.5, 2) // => 4
 */
export const duoServoFactor = (primary: number, secondary: number, passedOn: number): number => primary + secondary * Math.max(1, passedOn);

/**
 * Force that the primary shoe of a duo-servo brake passes on to the secondary through the link between them.
 * @param shoe the primary, its pivot at the link [m, rad]
 * @param primary factor of the primary shoe alone [-]
 * @returns force on the secondary for each unit of cylinder force [-]
 * @source moments about the drum's centre, which normal forces pass through: force x (arm - pivot) + drag x radius = link x pivot (own working)
 * @example passedOn({ drumRadius: metres(0.15), pivot: metres(0.125), arm: metres(0.2165), from: degrees(0), to: degrees(120) }, 0.8413) // => 1.7416
 */
export const passedOn = ({ drumRadius, pivot, arm }: LongShoe, primary: number): number => (arm - pivot + primary * drumRadius) / pivot;

/** Brake factors for each unit of friction, least and most. */
export const FACTOR_PER_FRICTION = {
  "leading-trailing": [4, 5],
  "two-leading": [8, 10],
  "duo-servo": [11, 12.5],
} as const;

/**
 * Usual band of a drum's brake factor by its kind, where nobody has stated one.
 * @param type kind of drum brake
 * @param friction of the linings [-]
 * @returns least and most [-]
 * @source Breuer and Bill, Bremsenhandbuch, by way of an encyclopedia (check values A96 to A98)
 * @example usualFactors("two-leading", 0.4) // => [3.2, 4]
 */
export function usualFactors(type: keyof typeof FACTOR_PER_FRICTION, friction: number): readonly [least: number, most: number] {
  const [least, most] = FACTOR_PER_FRICTION[type];
  return [least * friction, most * friction];
}
