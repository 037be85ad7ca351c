/** The worksheet function of the tube of all cars: apart from those of one car, as its cut plans are as large as the rest of it. */
import { answer } from "./answer";
import { catalogueFor, reportRows } from "./reports";
import { tubingTable } from "./tubing-table";

/**
 * Totals the tube of all the cars given: net, allowances, cut, mass and what to buy by material, size and wall; then nuts, adapters, tees, clips and armour by part.
 * @customfunction TUBING
 * @param headings Heading row of the cars, as Cars[#Headers].
 * @param rows Rows of cars, as Cars or Cars[@].
 * @param catalog Key from PLUMB.CATALOG.
 * @returns One row a material, size and wall, with cost, the least it could cost and the gap; then one row a part; a last row counts the runs that could not be totalled.
 */
export function tubing(headings: unknown[][], rows: unknown[][], catalog: unknown): unknown[][] {
  return answer(() => {
    const catalogue = catalogueFor(catalog);
    return tubingTable(catalogue, reportRows(catalogue, headings, rows).flatMap(({ report }) => report ?? []));
  });
}
