/**
 * The worksheet functions about the catalogue and cars. Each reads its rows, calls the core once and lays out the answer; a fourth step belongs in src/core.
 * Plain function declarations only: the metadata generator silently drops arrow functions.
 */
import { parseCatalogue } from "../catalogue/parse-catalogue";
import { isPassedOver, sayTableError } from "../catalogue/table-error";
import { askColumns, askedOf, kitColumns, kitsOf } from "./advice-tables";
import { answer, badValue } from "./answer";
import { checkColumns, eachOf, partColumns, runColumns, runsOrProblem, verdictTable } from "./car-tables";
import { laidOut } from "./columns";
import { catalogueFor, rememberCatalogue, reportRows } from "./reports";

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
 * Lists the parts of each car, what its lines need (nuts, adapters, tees to add, tube, with prices) and what fits them (clips, armour, by Settings).
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
 * Sums each car up in one row: verdict, findings by severity, open questions, runs, tube, price of its lines, assumptions, kit.
 * @customfunction VERDICT
 * @param headings Heading row of the cars, as Cars[#Headers].
 * @param rows Rows of cars, as Cars or Cars[@].
 * @param catalog Key from PLUMB.CATALOG.
 * @returns One row a car.
 */
export function verdict(headings: unknown[][], rows: unknown[][], catalog: unknown): unknown[][] {
  return answer(() => verdictTable(catalogueFor(catalog), headings, rows));
}
