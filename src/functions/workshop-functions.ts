/** The worksheet functions of the bench: cutting, bending, and what a tube's wall stands. */
import { answer } from "./answer";
import { bendsTable } from "./bends-tables";
import { burstTable } from "./burst-tables";
import { cutPlanTable } from "./cutplan-tables";

/** A cell waits no longer than this for a cut plan [ms]; the work allowed takes less than that on most machines. */
const LONGEST_WAIT = 900;

/**
 * Plans how to cut pieces from stock at least cost: patterns, how often each, cost, and a bound that no plan goes below.
 * @customfunction CUTPLAN
 * @param pieces Rows of length and count, with or without headings (Length, Count, Piece); without headings in this order.
 * @param stock Rows of length, price, count and name, with or without headings (Length, Price, Count, Stock). A blank count is any number; counted stock without a price is yours already and costs nothing.
 * @param [kerf] Width of the saw cut; left out, cuts take nothing.
 * @param [trim] Lost at the ends of each length of stock, both ends together; left out, nothing.
 * @param [unit] "in" (also when left out) or "mm", for lengths whose heading names none, kerf, trim and the answer.
 * @returns First the total with cost, lower bound and status (proved, or the gap in %), then one row a pattern, then what could not be planned and why.
 */
export function cutplan(pieces: unknown[][], stock: unknown[][], kerf?: unknown, trim?: unknown, unit?: unknown): unknown[][] {
  return answer(() => {
    const end = performance.now() + LONGEST_WAIT;
    return cutPlanTable({ pieces, stock, kerf, trim, unit }, { shouldStop: () => performance.now() > end });
  });
}

/**
 * Turns the points of a line into what a bender does: straight, rotation, bend, one row a bend, with the developed length.
 * @customfunction BENDS
 * @param points Columns x, y, z, one row a point, ends included; or text such as 0 0 0; 4 0 0; 4 3 0.
 * @param radius Radius of the bends, to the centre line.
 * @param [unit] "in" (also when left out) or "mm", for everything.
 * @param [grip] Shortest straight that the bender can hold.
 * @param [leastRadius] Least bend radius of the tube.
 * @returns One row a bend, then the straight after the last, then the total; what cannot be bent is named.
 */
export function bends(points: unknown[][], radius: unknown, unit?: unknown, grip?: unknown, leastRadius?: unknown): unknown[][] {
  return answer(() => bendsTable({ points, radius, unit, grip, leastRadius }));
}

/**
 * Gives the pressure at which a tube's wall begins to yield by Barlow, Lamé and von Mises, and the working limit.
 * @customfunction BURST
 * @param outsideDiameter Outside diameter: inches, or millimetres with unit "mm".
 * @param wall Thickness of the wall, in the same unit.
 * @param yieldStrength Yield strength: psi, or MPa with unit "mm".
 * @param [safetyFactor] The pressure at yield is divided by this; left out, that of Settings is taken with a catalog, and without one no working limit is given.
 * @param [unit] "in" for inches and psi (also when left out), "mm" for millimetres and MPa.
 * @param [catalog] Key from PLUMB.CATALOG, whose Settings give the safety factor where none is given.
 * @returns One row a formula.
 */
export function burst(outsideDiameter: unknown, wall: unknown, yieldStrength: unknown, safetyFactor?: unknown, unit?: unknown, catalog?: unknown): unknown[][] {
  return answer(() => burstTable({ outsideDiameter, wall, yieldStrength, safetyFactor, unit, catalog }));
}
