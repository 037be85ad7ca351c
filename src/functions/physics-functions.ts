/** The worksheet functions of the physics; like those of functions.ts each reads its rows, calls the core and lays out the answer. */
import { answer } from "./answer";
import { readNumber } from "./arguments";
import { balanceTable } from "./balance-tables";
import { curveTable } from "./curve-table";
import { pedalPressure, valveOutlet } from "./formula-answers";
import { catalogueFor } from "./reports";
import { travelTable } from "./travel-table";

/**
 * Balances each car from pedal to tyre: pressures, forces, order of locking, efficiency, failed circuits and stops.
 * @customfunction BALANCE
 * @param headings Heading row of the cars, as Cars[#Headers].
 * @param rows Rows of cars, as Cars or Cars[@].
 * @param catalog Key from PLUMB.CATALOG.
 * @returns One row a car and load; what is assumed and what is missing stand in columns of their own.
 */
export function balance(headings: unknown[][], rows: unknown[][], catalog: unknown): unknown[][] {
  return answer(() => balanceTable(catalogueFor(catalog), [headings, rows]));
}

/**
 * Budgets the fluid of each circuit against its stroke, and the pedal's travel with and without a failed circuit.
 * @customfunction TRAVEL
 * @param headings Heading row of the cars, as Cars[#Headers].
 * @param rows Rows of cars, as Cars or Cars[@].
 * @param catalog Key from PLUMB.CATALOG.
 * @returns One row a car and circuit.
 */
export function travel(headings: unknown[][], rows: unknown[][], catalog: unknown): unknown[][] {
  return answer(() => travelTable(catalogueFor(catalog), [headings, rows]));
}

/**
 * Gives points to plot of each car: axle forces with the ideal ones, adhesion used with the efficiency line.
 * @customfunction CURVE
 * @param headings Heading row of the cars, as Cars[#Headers].
 * @param row Row of one car, as Cars[@]; several cars follow one another.
 * @param catalog Key from PLUMB.CATALOG.
 * @param [points] Points for each load, 41 when left out; knees and locks come on top.
 * @returns One row a point, rising in deceleration, unladen before laden.
 */
export function curve(headings: unknown[][], row: unknown[][], catalog: unknown, points?: unknown): unknown[][] {
  return answer(() => curveTable(catalogueFor(catalog), [headings, row], readNumber("points", points)));
}

/**
 * Gives the outlet pressure of a hold-off, proportioning or limiting valve, for checking by hand.
 * @customfunction VALVEOUT
 * @param inlet Inlet pressure.
 * @param split Split point; blank for a valve that does not proportion.
 * @param slope Outlet for each unit of inlet above the split point, 0 to 1; 0 makes it a limiting valve.
 * @param [opens] Pressure at which a hold-off begins to open; nothing passes below it.
 * @param [full] Pressure from which it is fully open; left out, the same as opens.
 * @param [limit] Pressure above which a limiting valve passes no more.
 * @param [unit] Unit of all the pressures; the answer is in it too, whatever it is.
 * @returns Outlet pressure.
 */
export function valveout(inlet: unknown, split: unknown, slope: unknown, opens?: unknown, full?: unknown, limit?: unknown, unit?: unknown): number {
  return answer(() => valveOutlet({ inlet, split, slope, opens, full, limit, unit }));
}

/**
 * Gives the line pressure of a pedal force through lever, booster and master cylinder, for checking by hand.
 * @customfunction PEDAL
 * @param force Force on the pedal: lbf, or N with unit "mm".
 * @param ratio Pedal ratio.
 * @param bore Bore of the master cylinder: inches, or millimetres with unit "mm".
 * @param [gain] Gain of the booster; left out, there is none.
 * @param [jumpIn] Jump-in force at the push rod.
 * @param [cutIn] Cut-in force at the push rod.
 * @param [mostAssist] Most assist; left out, it never runs out.
 * @param [unit] "in" for psi (also when left out), "mm" for bar, "kPa" or "MPa".
 * @returns Line pressure.
 */
export function pedal(force: unknown, ratio: unknown, bore: unknown, gain?: unknown, jumpIn?: unknown, cutIn?: unknown, mostAssist?: unknown, unit?: unknown): number {
  return answer(() => pedalPressure({ force, ratio, bore, gain, jumpIn, cutIn, mostAssist, unit }));
}
