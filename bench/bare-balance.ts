/** The balance of many cars as one loop over typed arrays: no parts, no units, no words, nothing missing. What the physics itself costs. */
import { ADHESIONS, DECELERATIONS, USES, type Brakes } from "./balance-cars";

/** Columns of the answer: for each deceleration seven figures, for each use two, for each adhesion one. */
export const BARE_COLUMNS = 7 * 3 + 2 * USES.length + ADHESIONS.length;

const POUND = 0.45359237 * 9.80665;
const [Z, MU] = [Object.values(DECELERATIONS), ADHESIONS];

/** @param figures four a car: weight [lb], front share [%], height of the centre of gravity [in], tyre radius [in] */
export function bareBalance({ torque, threshold, split, slope, wheelbase, pedal }: Brakes, figures: Float64Array, answers: Float64Array): void {
  const [tf, tr] = [threshold.front, threshold.rear];
  for (let car = 0, at = 0; car * 4 < figures.length; car++) {
    const weight = (figures[car * 4] as number) * POUND;
    const front = (figures[car * 4 + 1] as number) / 100;
    const height = ((figures[car * 4 + 2] as number) * 0.0254) / wheelbase;
    const tyre = (figures[car * 4 + 3] as number) * 0.0254;
    const [cf, cr] = [(2 * torque.front) / (tyre * weight), (2 * torque.rear) / (tyre * weight)];
    const zt = cf * (tr - tf);
    const zs = cf * (split - tf) + cr * (split - tr);
    const behind = cf + slope * cr;
    const pressureAt = (z: number): number => (z <= zt ? tf + z / cf : z <= zs ? (z + cf * tf + cr * tr) / (cf + cr) : split + (z - zs) / behind);
    const rearAt = (p: number): number => Math.min(p, split + slope * (p - split));
    for (const z of Z) {
      const p = pressureAt(z);
      const rear = rearAt(p);
      const [ff, fr] = [cf * (p - tf) * weight, cr * Math.max(0, rear - tr) * weight];
      const output = p * pedal.area;
      answers[at++] = p;
      answers[at++] = p;
      answers[at++] = rear;
      answers[at++] = ff;
      answers[at++] = fr;
      answers[at++] = fr / (ff + fr);
      answers[at++] = Math.max(pedal.cutIn, pedal.cutIn + (output - pedal.jumpIn) / pedal.gain, output - pedal.most) / pedal.ratio;
    }
    for (const z of USES) {
      const p = pressureAt(z);
      answers[at++] = (cf * (p - tf)) / (front + z * height);
      answers[at++] = (cr * Math.max(0, rearAt(p) - tr)) / (1 - front - z * height);
    }
    for (const mu of MU) {
      const m = mu * height;
      const early = tf + (mu * front) / (cf * (1 - m));
      const even = (mu * front + cf * tf - m * (cf * tf + cr * tr)) / (cf - m * (cf + cr));
      const fronts = early <= tr ? early : even <= split ? even : split + (mu * front + m * zs - cf * (split - tf)) / (cf - m * behind);
      const evenRear = (mu * (1 - front) + cr * tr + m * (cf * tf + cr * tr)) / (cr + m * (cf + cr));
      const rears = evenRear <= split ? evenRear : split + (mu * (1 - front) - m * zs - cr * (split - tr)) / (cr * slope + m * behind);
      const p = Math.min(fronts, rears);
      answers[at++] = (p <= tr ? cf * (p - tf) : p <= split ? cf * (p - tf) + cr * (p - tr) : zs + behind * (p - split)) / mu;
    }
  }
}
