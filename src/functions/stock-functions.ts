/** The worksheet functions of stock: what open quotes will need, what the past promises, what to buy. */
import { answer } from "./answer";
import { demandTable } from "./demand-table";
import { forecastTable } from "./forecast-table";
import { catalogueFor } from "./reports";
import { reorderTable } from "./reorder-table";

/**
 * Says how much tube the open quotes will need, by tube and week: mean and spread, or the chance of each length.
 * @customfunction DEMAND
 * @param pipelineHeadings Heading row of the open quotes, as Pipeline[#Headers].
 * @param pipelineRows Rows of open quotes, as Pipeline.
 * @param carHeadings Heading row of the cars, as Cars[#Headers].
 * @param carRows Rows of cars, as Cars.
 * @param catalog Key from PLUMB.CATALOG.
 * @param firstWeek First day of the first week, as TODAY(); dates before it count in that week.
 * @param [weeks] How many weeks, 13 when left out.
 * @param [step] Asks for the exact distribution instead, in steps of so many ft (m in a metric workbook).
 * @returns One row a tube and week: mean, deviation, quotes (with a step one row a length that can come about, with its chance); then one row for each quote that was not counted in full.
 */
export function demand(pipelineHeadings: unknown[][], pipelineRows: unknown[][], carHeadings: unknown[][], carRows: unknown[][], catalog: unknown, firstWeek: unknown, weeks?: unknown, step?: unknown): unknown[][] {
  return answer(() => demandTable(catalogueFor(catalog), { quotes: { headings: pipelineHeadings, rows: pipelineRows }, cars: { headings: carHeadings, rows: carRows }, firstWeek, weeks, step }));
}

/**
 * Forecasts demand from a history with weeks of none: rate, level, interval and error, by a method named or by the one that erred least.
 * @customfunction FORECAST
 * @param history Demand of each period in one row or column, oldest first; a blank is a period without demand.
 * @param [method] auto (also when left out), Croston, SBA, SBJ, TSB or SES.
 * @param [alpha] Weight of the newest size, above 0 to 1; left out, weights are fitted.
 * @param [beta] Weight of the newest interval or chance; left out, the same as alpha.
 * @returns One row: method and how it was chosen, rate for each further period, error, periods it rests on, class of demand.
 */
export function forecast(history: unknown[][], method?: unknown, alpha?: unknown, beta?: unknown): unknown[][] {
  return answer(() => forecastTable(history, { method, alpha, beta }));
}

/**
 * Says for each tube of the rack when to order and how much: reorder point, safety stock, lot, today's order, day of stock-out, cost of a year.
 * @customfunction REORDER
 * @param tubeHeadings Heading row of the rack, as Tube[#Headers].
 * @param tubeRows Rows of the rack, as Tube or Tube[@].
 * @param usageHeadings Heading row of past usage, as Usage[#Headers].
 * @param usageRows Rows of past usage, as Usage.
 * @param catalog Key from PLUMB.CATALOG, whose PriceBreaks and Settings are used.
 * @param today Day of the order, as TODAY().
 * @param [pipelineMean] Mean need of open quotes over lead time and review, on top of usage: one cell a tube, in ft (m in a metric workbook).
 * @param [variance] Variance of that need in the square of its unit; left out, the mean is certain.
 * @returns One row a tube; then one row for what of the usage was not counted.
 */
export function reorder(tubeHeadings: unknown[][], tubeRows: unknown[][], usageHeadings: unknown[][], usageRows: unknown[][], catalog: unknown, today: unknown, pipelineMean?: unknown, variance?: unknown): unknown[][] {
  return answer(() => reorderTable(catalogueFor(catalog), { tube: { headings: tubeHeadings, rows: tubeRows }, usage: { headings: usageHeadings, rows: usageRows }, today, pipelineMean, pipelineVariance: variance }));
}
