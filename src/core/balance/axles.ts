/** Axle loads while braking, and the closed forms of a fixed share of braking. Decelerations z are in units of gravity. */

/** How a car stands: shares of its weight and the height of its centre of gravity over the wheelbase. */
export interface Stance {
  /** Share of the weight on the front axle at rest. [-] */
  readonly front: number;
  /** Height of the centre of gravity over the wheelbase. [-] */
  readonly height: number;
}

/**
 * Share of the weight on the front axle while braking. Suspension, slope and air are left out.
 * @param stance shares [-]
 * @param z deceleration [g]
 * @returns share [-]
 * @source statics: (b + z h) / L (UN R13 N1 = P1 + z h P / E; check values A39, A75 to A79, A88)
 * @example frontLoad({ front: 0.6, height: 0.2 }, 0.5) // => 0.7
 */
export const frontLoad = ({ front, height }: Stance, z: number): number => front + z * height;

/**
 * Share of the weight on the rear axle while braking.
 * @param stance shares [-]
 * @param z deceleration [g]
 * @returns share [-]; negative once the rear wheels lift
 * @source statics: (a - z h) / L, as above
 * @example rearLoad({ front: 0.6, height: 0.2 }, 0.5) // => 0.3
 */
export const rearLoad = ({ front, height }: Stance, z: number): number => 1 - front - z * height;

/**
 * Ideal rear axle force over the weight: both axles use the same adhesion.
 * @param stance shares [-]
 * @param z deceleration [g]
 * @returns force over weight [-]
 * @source z (a - z h) / L, statics
 * @example idealRear({ front: 0.6, height: 0.2 }, 0.5) // => 0.15
 */
export const idealRear = (stance: Stance, z: number): number => z * rearLoad(stance, z);

/**
 * Deceleration at which the fronts lock under a fixed front share of braking.
 * @param stance shares [-]
 * @param share front axle's share of the braking force [-]
 * @param adhesion tyre to road [-]
 * @returns deceleration [g]; Infinity where the fronts never lock
 * @source mu b / (L x - mu h), derived from F = mu N
 * @example frontLockDeceleration({ front: 0.5, height: 0.2 }, 0.7, 0.5) // => 0.4167
 */
export const frontLockDeceleration = ({ front, height }: Stance, share: number, adhesion: number): number => {
  const rest = share - adhesion * height;
  return rest > 0 ? (adhesion * front) / rest : Infinity;
};

/**
 * Deceleration at which the rears lock under a fixed front share of braking. With the fronts failed (share 0) it is all there is.
 * @param stance shares [-]
 * @param share front axle's share of the braking force [-]
 * @param adhesion tyre to road [-]
 * @returns deceleration [g]
 * @source mu a / (L x_r + mu h), derived from F = mu N (check values A67, A68, A73, A74)
 * @example rearLockDeceleration({ front: 0.5, height: 0.2 }, 0.7, 0.5) // => 0.625
 */
export const rearLockDeceleration = ({ front, height }: Stance, share: number, adhesion: number): number => (adhesion * (1 - front)) / (1 - share + adhesion * height);

/**
 * Deceleration at which both axles lock at once under a fixed front share of braking: below it the fronts lock first, above it the rears.
 * @param stance shares [-]
 * @param share front axle's share of the braking force [-]
 * @returns deceleration [g]; negative where the rears lock first always
 * @source (L x - b) / h (check value A48 of a handbook: 0.52 g)
 * @example criticalDeceleration({ front: 0.5, height: 0.2 }, 0.6) // => 0.5
 */
export const criticalDeceleration = ({ front, height }: Stance, share: number): number => (share - front) / height;
