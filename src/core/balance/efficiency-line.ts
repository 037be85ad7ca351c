/** How far a car stands above the efficiency line of a rule. */
import { frontLoad, rearLoad } from "./axles";
import { firstLock, pointOn, type Braking } from "./braking";
import { rootsBetween } from "./quadratic";
import { leadOf } from "./rear-ahead";

export interface LineMargin {
  /** Deceleration above the efficiency line, negative below it. [g] */
  readonly margin: number;
  readonly z: number;
}

/**
 * Least distance above the efficiency line while the worse axle uses 0.2 to 0.8.
 * @param braking both axles [g, -]
 * @param coefficient of the line [-]
 * @returns margin and where [g]; undefined where 0.2 is never used
 * @source z = 0.1 + c (k - 0.2); between nodes the least lies where dz/dt = c dk/dt, solved in closed form
 */
export function lineMargin(braking: Braking, coefficient: number): LineMargin | undefined {
  const [start, end] = [firstLock(braking, 0.2), firstLock(braking, 0.8)];
  if (!start) return undefined;
  const most = end?.pressure ?? Infinity;
  let least: LineMargin | undefined;
  for (let i = 0; i < braking.z.length - 1; i++) {
    for (const t of stationary(braking, i, coefficient, [start.pressure, most])) {
      const { z, frontUses, rearUses } = pointOn(braking, i, t);
      const margin = z - 0.1 - coefficient * (Math.max(frontUses, rearUses) - 0.2);
      if (!least || margin < least.margin) least = { margin, z };
    }
  }
  return least;
}

/** Ends of the part of a piece that lies between two pressures, and in it the points where the margin stands still for one axle. */
function stationary(braking: Braking, i: number, coefficient: number, [from, to]: readonly [number, number]): number[] {
  const [p, p1, z, z1] = [braking.pressure[i] as number, braking.pressure[i + 1] as number, braking.z[i] as number, braking.z[i + 1] as number];
  const [a, b] = [Math.max(0, (from - p) / (p1 - p)), Math.min(1, (to - p) / (p1 - p))];
  if (a > b) return [];
  const { stance } = braking;
  const inner = [[braking.front, frontLoad], [braking.rear, rearLoad]] as const;
  const still = inner.flatMap(([force, load]) => {
    const [f, f1, n, n1] = [force[i] as number, force[i + 1] as number, load(stance, z), load(stance, z1)];
    // k = f/n on a straight piece: dk/dt = (f1 n - f n1) / n(t)^2.
    const square = (coefficient * (f1 * n - f * n1)) / (z1 - z);
    return square > 0 && n1 !== n ? [(Math.sqrt(square) - n) / (n1 - n)] : [];
  });
  return [a, ...rootsBetween(leadOf(braking, i)), ...still, b].filter((t) => t >= a && t <= b);
}
