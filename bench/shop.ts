/** A morning's work of a shop: quotes for five hundred cars, orders and forecasts of five hundred tubes. */
import { parseCars } from "../src/catalogue/parse-cars";
import { quoteFor } from "../src/core/quote";
import { reportOn } from "../src/core/report";
import { measured, row, timed, type BenchRow } from "./measure";
import { stockTimings } from "./stock";
import { freshCatalogue, freshHeadings, shopCars } from "./workload";

const COUNT = 500;
/** A panel should answer within a second. */
const SECOND = 1000;

export function shopRows(): BenchRow[] {
  const { headings, rows } = shopCars(COUNT);
  const quotes = measured(7, (run) => {
    const catalogue = freshCatalogue(run);
    return timed(() => { for (const { car } of parseCars(freshHeadings(headings, run), rows).cars) if (car) quoteFor(catalogue, reportOn(catalogue, car)); });
  });
  return [
    row("Quotes", `${COUNT} cars read, judged and quoted, cold`, quotes, { most: SECOND }),
    ...stockTimings().map((one) => row("Stock", one.work, one)),
  ];
}
