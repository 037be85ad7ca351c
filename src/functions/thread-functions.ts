/** The worksheet functions of threads, fittings and bodies found. */
import { answer } from "./answer";
import { adaptTable, fittingTable, threadTable } from "./fitting-tables";
import { identifyTable } from "./identify-table";
import { catalogueFor } from "./reports";

/**
 * Names the threads that a caliper and pitch reading may be, nearest first, with the ones they are mistaken for.
 * @customfunction THREAD
 * @param diameter Reading across the thread: outside of a male one, inside of a female one.
 * @param [pitch] Threads per inch with unit in, pitch in millimetres with unit mm.
 * @param [unit] "in" (also when left out) or "mm".
 * @param [gender] "male" (also when left out) or "female".
 * @returns Thread, series, limits, both distances, match, near misses, source, probability.
 */
export function thread(diameter: unknown, pitch?: unknown, unit?: unknown, gender?: unknown): unknown[][] {
  return answer(() => threadTable({ diameter, pitch, unit, gender }));
}

/**
 * Finds the nut, or adapters and nut, that join a tube to a port, or says why none does.
 * @customfunction FITTING
 * @param tube Outside diameter in inches (0.1875 or "3/16"), or with its unit ("4.75 mm").
 * @param thread Thread of the port, as 3/8-24 or M10x1.
 * @param seat Seat of the port, as inverted-flare-45 or bubble-iso.
 * @param [catalog] Key from PLUMB.CATALOG; left out, the standard nuts are used.
 * @param [gender] Gender of the port: "female" (also when left out) or "male".
 * @returns Nut, tube, thread, seat, flare, adapters, price, problem.
 */
export function fitting(tube: unknown, thread: unknown, seat: unknown, catalog?: unknown, gender?: unknown): unknown[][] {
  return answer(() => fittingTable({ tube, thread, seat, catalog, gender }));
}

/**
 * Finds the cheapest chain of adapters between two threads and seats, one row an adapter.
 * @customfunction ADAPT
 * @param fromThread Thread to start from, as 3/8-24.
 * @param fromSeat Seat to start from, as inverted-flare-45.
 * @param toThread Thread to end at, as M10x1.
 * @param toSeat Seat to end at, as bubble-iso.
 * @param [catalog] Key from PLUMB.CATALOG, whose Adapters are used.
 * @param [fromGender] "male" or "female"; left out, a nut going into a port is tried first.
 * @param [toGender] "male" or "female"; left out, a port is tried first.
 * @returns Step, adapter, the two ends of each, price, problem.
 */
export function adapt(fromThread: unknown, fromSeat: unknown, toThread: unknown, toSeat: unknown, catalog?: unknown, fromGender?: unknown, toGender?: unknown): unknown[][] {
  return answer(() => adaptTable({ from: { thread: fromThread, seat: fromSeat, gender: fromGender }, to: { thread: toThread, seat: toSeat, gender: toGender }, catalog }));
}

/**
 * Names the valve bodies and masters that match ports somebody saw and measured, most probable first, and the measurement that would decide.
 * @customfunction IDENTIFY
 * @param headings Heading row of what was seen, as Seen[#Headers].
 * @param rows Rows of ports seen, as Seen.
 * @param catalog Key from PLUMB.CATALOG.
 * @returns Up to five rows a body: component, ports matched, unexplained and not seen, what speaks against it, deciding port, probability.
 */
export function identify(headings: unknown[][], rows: unknown[][], catalog: unknown): unknown[][] {
  return answer(() => identifyTable(catalogueFor(catalog), headings, rows));
}
