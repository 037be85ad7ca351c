/**
 * The worksheet functions. Each reads its rows, calls the core once and lays out the answer; a fourth step belongs in src/core.
 * Plain function declarations only: the metadata generator silently drops arrow functions.
 */
import { parseCatalogue } from "../catalogue/parse-catalogue";
import { isPassedOver, sayTableError } from "../catalogue/table-error";
import { tubingOf } from "../core/tubing";
import { askColumns, askedOf, identifyTable, kitColumns, kitsOf } from "./advice-tables";
import { answer, badValue } from "./answer";
import { checkColumns, eachOf, partColumns, runColumns, runsOrProblem, tubingColumns, verdictColumns } from "./car-tables";
import { laidOut } from "./columns";
import { adaptTable, fittingTable, threadTable } from "./fitting-tables";
import { fluidColumns, fluidRows, quoteColumns, quoteRows } from "./quote-tables";
import { catalogueFor, rememberCatalogue, reportRows } from "./reports";

export * from "./physics-functions";
export * from "./workshop-functions";

/**
 * Checks the shop's tables, keeps them for this session and returns the key that the other functions take.
 * @customfunction CATALOG
 * @param tables Each table with its heading row, as Platforms[#All]; recognised by its headings, in any order.
 * @returns The key; #VALUE! names every table, row and column that cannot be used.
 */
export function catalog(tables: unknown[][][]): string {
  return answer(() => {
    const { catalogue, errors } = parseCatalogue(tables.map((table) => ({ headings: table[0] ?? [], rows: table.slice(1) })));
    const faults = errors.filter((error) => !isPassedOver(error));
    if (faults.length > 0) throw badValue(faults.map(sayTableError).join(" "));
    rememberCatalogue(catalogue);
    return catalogue.key;
  });
}

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
 * Lists the hard-line runs of each car: ports, tube, length, nut, flare and adapters at each end.
 * @customfunction RUNS
 * @param headings Heading row of the cars, as Cars[#Headers].
 * @param rows Rows of cars, as Cars or Cars[@].
 * @param catalog Key from PLUMB.CATALOG.
 * @returns One row a run; a run that cannot be made says why.
 */
export function runs(headings: unknown[][], rows: unknown[][], catalog: unknown): unknown[][] {
  return answer(() => {
    const catalogue = catalogueFor(catalog);
    return laidOut(runColumns, reportRows(catalogue, headings, rows).flatMap(runsOrProblem), catalogue.settings.units);
  });
}

/**
 * Lists the parts of each car and what its lines need: nuts, adapters, tees to add and tube, with prices.
 * @customfunction PARTS
 * @param headings Heading row of the cars, as Cars[#Headers].
 * @param rows Rows of cars, as Cars or Cars[@].
 * @param catalog Key from PLUMB.CATALOG.
 * @returns One row a part, with quantity, unit, price and amount.
 */
export function parts(headings: unknown[][], rows: unknown[][], catalog: unknown): unknown[][] {
  return answer(() => {
    const catalogue = catalogueFor(catalog);
    return laidOut(partColumns, eachOf(reportRows(catalogue, headings, rows), ({ bill }) => bill), catalogue.settings.units);
  });
}

/**
 * Lists what is wrong or open on each car, worst first: code, severity, place, what happens, cure, basis.
 * @customfunction CHECK
 * @param headings Heading row of the cars, as Cars[#Headers].
 * @param rows Rows of cars, as Cars or Cars[@].
 * @param catalog Key from PLUMB.CATALOG.
 * @returns One row a finding; a car with nothing to say has none.
 */
export function check(headings: unknown[][], rows: unknown[][], catalog: unknown): unknown[][] {
  return answer(() => {
    const catalogue = catalogueFor(catalog);
    return laidOut(checkColumns, eachOf(reportRows(catalogue, headings, rows), ({ findings }) => findings), catalogue.settings.units);
  });
}

/**
 * Lists the open questions of each car, best first: what to ask, the answers possible and what each would decide.
 * @customfunction ASK
 * @param headings Heading row of the cars, as Cars[#Headers].
 * @param rows Rows of cars, as Cars or Cars[@].
 * @param catalog Key from PLUMB.CATALOG.
 * @returns One row a question; a car with nothing open has none.
 */
export function ask(headings: unknown[][], rows: unknown[][], catalog: unknown): unknown[][] {
  return answer(() => {
    const catalogue = catalogueFor(catalog);
    return laidOut(askColumns, eachOf(reportRows(catalogue, headings, rows), askedOf), catalogue.settings.units);
  });
}

/**
 * Chooses for each car the pre-bent sets that cover its runs at least cost, or straight tube, and says what is left to make up.
 * @customfunction KIT
 * @param headings Heading row of the cars, as Cars[#Headers].
 * @param rows Rows of cars, as Cars or Cars[@].
 * @param catalog Key from PLUMB.CATALOG.
 * @returns One row a car: sets, runs covered and made up, adapters, cost, cost from straight tube, sets possible, runs unused, why the next best lost.
 */
export function kit(headings: unknown[][], rows: unknown[][], catalog: unknown): unknown[][] {
  return answer(() => {
    const catalogue = catalogueFor(catalog);
    return laidOut(kitColumns, reportRows(catalogue, headings, rows).flatMap(kitsOf), catalogue.settings.units);
  });
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

/**
 * Sums each car up in one row: verdict, findings by severity, open questions, runs, tube, price of its lines, assumptions, kit.
 * @customfunction VERDICT
 * @param headings Heading row of the cars, as Cars[#Headers].
 * @param rows Rows of cars, as Cars or Cars[@].
 * @param catalog Key from PLUMB.CATALOG.
 * @returns One row a car.
 */
export function verdict(headings: unknown[][], rows: unknown[][], catalog: unknown): unknown[][] {
  return answer(() => {
    const catalogue = catalogueFor(catalog);
    return laidOut(verdictColumns, eachOf(reportRows(catalogue, headings, rows), (report) => [report]), catalogue.settings.units);
  });
}

/**
 * Reckons the brake fluid of each car: what lines and parts hold, with flushing, and the bottles to buy.
 * @customfunction FLUID
 * @param headings Heading row of the cars, as Cars[#Headers].
 * @param rows Rows of cars, as Cars or Cars[@].
 * @param catalog Key from PLUMB.CATALOG.
 * @returns One row a car; what is not known is left out and named.
 */
export function fluid(headings: unknown[][], rows: unknown[][], catalog: unknown): unknown[][] {
  return answer(() => {
    const catalogue = catalogueFor(catalog);
    return laidOut(fluidColumns, reportRows(catalogue, headings, rows).map((row) => fluidRows(catalogue, row)), catalogue.settings.units);
  });
}

/**
 * Quotes each car: set, made-up runs, parts, fluid and labour with prices, then the totals; a car with an open stop is on hold.
 * @customfunction QUOTE
 * @param headings Heading row of the cars, as Cars[#Headers].
 * @param rows Rows of cars, as Cars or Cars[@].
 * @param catalog Key from PLUMB.CATALOG.
 * @returns One row a line, sections in the order they print, totals last but for notes.
 */
export function quote(headings: unknown[][], rows: unknown[][], catalog: unknown): unknown[][] {
  return answer(() => {
    const catalogue = catalogueFor(catalog);
    return laidOut(quoteColumns, reportRows(catalogue, headings, rows).flatMap((row) => quoteRows(catalogue, row)), catalogue.settings.units);
  });
}

/**
 * Totals the tube of all the cars given: net, allowances, cut and bought length by material, size and wall.
 * @customfunction TUBING
 * @param headings Heading row of the cars, as Cars[#Headers].
 * @param rows Rows of cars, as Cars or Cars[@].
 * @param catalog Key from PLUMB.CATALOG.
 * @returns One row a material, size and wall; a last row counts the runs that could not be totalled.
 */
export function tubing(headings: unknown[][], rows: unknown[][], catalog: unknown): unknown[][] {
  return answer(() => {
    const { settings, tube, key } = catalogueFor(catalog);
    const all = reportRows(catalogueFor(key), headings, rows).flatMap(({ report }) => report?.runs ?? []);
    const { totals, leftOut } = tubingOf(all, settings, tube);
    const table = laidOut(tubingColumns, totals, settings.units);
    return leftOut.length === 0 ? table : [...table, ["not totalled", "", "", "", "", "", `${leftOut.length} ${leftOut.length === 1 ? "run" : "runs"} without tube size or length`, ""]];
  });
}
