/** The heading row of every table-valued answer: names and order are frozen, columns are only appended. */
import { askColumns, kitColumns } from "./advice-tables";
import { balanceColumns } from "./balance-tables";
import { checkColumns, partColumns, runColumns, verdictColumns } from "./car-tables";
import { tubingColumns } from "./tubing-table";
import { bendColumns } from "./bends-tables";
import { burstColumns } from "./burst-tables";
import type { Column, Units } from "./columns";
import { curveColumns } from "./curve-table";
import { cutPlanColumns } from "./cutplan-tables";
import { identifyColumns } from "./identify-table";
import { demandColumns } from "./demand-table";
import { forecastColumns } from "./forecast-table";
import { reorderColumns } from "./reorder-table";
import { fluidColumns, quoteColumns } from "./quote-tables";
import { travelColumns } from "./travel-table";
import { adaptColumns, fittingColumns, threadColumns } from "./fitting-tables";

const headingsOf = <Row>(columns: readonly Column<Row>[], units: Units): string[] => columns.map(({ heading }) => heading(units));

/** By function, in the order of docs/functions.md. */
export const answerHeadings = (units: Units): Readonly<Record<string, readonly string[]>> => ({
  RUNS: headingsOf(runColumns, units),
  PARTS: headingsOf(partColumns, units),
  CHECK: headingsOf(checkColumns, units),
  ASK: headingsOf(askColumns, units),
  KIT: headingsOf(kitColumns, units),
  VERDICT: headingsOf(verdictColumns, units),
  BALANCE: headingsOf(balanceColumns, units),
  TRAVEL: headingsOf(travelColumns, units),
  CURVE: headingsOf(curveColumns, units),
  FLUID: headingsOf(fluidColumns, units),
  QUOTE: headingsOf(quoteColumns, units),
  DEMAND: headingsOf(demandColumns, units),
  FORECAST: headingsOf(forecastColumns, units),
  REORDER: headingsOf(reorderColumns, units),
  THREAD: headingsOf(threadColumns(units === "us"), units),
  FITTING: headingsOf(fittingColumns, units),
  ADAPT: headingsOf(adaptColumns, units),
  IDENTIFY: headingsOf(identifyColumns, units),
  TUBING: headingsOf(tubingColumns, units),
  CUTPLAN: headingsOf(cutPlanColumns, units),
  BENDS: headingsOf(bendColumns, units),
  BURST: headingsOf(burstColumns, units),
});
