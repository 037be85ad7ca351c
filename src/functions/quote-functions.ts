/** The worksheet functions of the quote. */
import { answer } from "./answer";
import { laidOut } from "./columns";
import { fluidColumns, fluidRows, quoteColumns, quoteRows } from "./quote-tables";
import { catalogueFor, reportRows } from "./reports";

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
