/** Every worksheet function by the name a formula calls it, all loaded: for the local grid, eval and tests, whose cells cannot wait. The add-in uses parts.ts. */
import * as cars from "./functions";
import * as physics from "./physics-functions";
import * as quotes from "./quote-functions";
import * as stock from "./stock-functions";
import * as threads from "./thread-functions";
import * as tubing from "./tubing-functions";
import * as workshop from "./workshop-functions";

/** Ranges arrive row by row with blanks as 0; optionals left out arrive as null. */
export type WorksheetFunction = (...args: never[]) => unknown;

/** A function's name is its export's in capitals. */
export const worksheetFunctions: Readonly<Record<string, WorksheetFunction>> = Object.fromEntries(
  [cars, physics, quotes, stock, threads, tubing, workshop].flatMap((part) => Object.entries(part)).map(([name, run]) => [name.toUpperCase(), run]),
);
