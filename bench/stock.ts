/** How long stock takes: 500 tubes with 260 weeks of lumpy usage each, through the worksheet functions as a sheet calls them. Invented; the same on every run. */
import { worksheetFunctions } from "../src/functions/registry";
import { measured, timed, type Measured } from "./measure";

const [TUBES, WEEKS] = [500, 260];
const TODAY = 46_346;
const RUNS = 5;

export interface StockTiming extends Measured {
  readonly work: string;
}

const call = (name: string, ...args: readonly unknown[]): unknown[][] => (worksheetFunctions[name] as (...args: readonly unknown[]) => unknown[][])(...args);

/** @returns one REORDER over all tubes, and one FORECAST for each of them */
export function stockTimings(): StockTiming[] {
  const key = call("CATALOG", [[["Nut", "Tube (in)", "Thread", "Seat", "Gender", "Price"], ["N-1", 0.1875, "3/8-24", "inverted-flare-45", "male", 1]]]);
  const history = histories();
  const usage = history.flatMap((weeks, tube) => weeks.flatMap((length, week) => (length > 0 ? [[TODAY - 7 * (WEEKS - 1 - week), `T-${tube}`, length]] : [])));
  const rack = history.map((_, tube) => [`T-${tube}`, "mild steel", 0.1875, 0.028, "coil", 300, 21, 3, 2, 5, 5, 18]);
  const rackHeadings = [["Tube", "Material", "Outside diameter (in)", "Wall (in)", "Form", "Length (in)", "Price", "On hand", "Lead time (weeks)", "Least order", "Multiple", "Order cost"]];
  return [
    timing(`REORDER of ${TUBES} tubes with ${WEEKS} weeks, ${usage.length} rows of usage`, () => call("REORDER", rackHeadings, rack, [["Date", "Tube", "Length (in)"]], usage, key, TODAY, null, null).length - 1),
    timing(`FORECAST of ${TUBES} histories of ${WEEKS} weeks`, () => history.reduce((sum, weeks) => sum + call("FORECAST", [weeks], null, null, null).length - 1, 0)),
  ];
}

/** A job in one week of five, of 20 to 300 in: Park and Miller's generator (Communications of the ACM 31(10), 1988, from memory). */
function histories(): number[][] {
  let state = 260;
  const draw = (): number => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
  return Array.from({ length: TUBES }, () => Array.from({ length: WEEKS }, () => (draw() < 0.2 ? 20 + Math.floor(draw() * 281) : 0)));
}

function timing(work: string, run: () => number): StockTiming {
  const times = measured(RUNS, () => timed(run));
  return { work, ...times };
}
