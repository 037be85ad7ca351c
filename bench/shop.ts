/** A morning's work of a shop: quotes for five hundred cars, a forecast for each of five hundred items. */
import { parseCars } from "../src/catalogue/parse-cars";
import { quoteFor } from "../src/core/quote";
import { reportOn } from "../src/core/report";
import { forecast } from "../src/core/stock/forecast";
import { measured, row, timed, type BenchRow } from "./measure";
import { freshCatalogue, freshHeadings, randomFrom, shopCars } from "./workload";

const COUNT = 500;
const WEEKS = 104;
/** A panel should answer within a second. */
const SECOND = 1000;

export function shopRows(): BenchRow[] {
  const { headings, rows } = shopCars(COUNT);
  const quotes = measured(7, (run) => {
    const catalogue = freshCatalogue(run);
    return timed(() => { for (const { car } of parseCars(freshHeadings(headings, run), rows).cars) if (car) quoteFor(catalogue, reportOn(catalogue, car)); });
  });
  const histories = intermittent(COUNT);
  const forecasts = measured(7, () => timed(() => { for (const history of histories) forecast(history); }));
  return [
    row("Quotes", `${COUNT} cars read, judged and quoted, cold`, quotes, { most: SECOND }),
    row("Stock", `${COUNT} forecasts over ${WEEKS} weeks, method chosen and weights fitted`, forecasts, { most: SECOND * 5 }),
  ];
}

/** Demand in one week of four on average, one to six pieces. */
function intermittent(count: number): number[][] {
  const random = randomFrom(23);
  return Array.from({ length: count }, () => Array.from({ length: WEEKS }, () => (random() < 0.25 ? 1 + Math.floor(random() * 6) : 0)));
}
