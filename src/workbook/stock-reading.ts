/** The stores as a workbook tells of them: the rack, what was used, what the open quotes need of it. */
import { readTable } from "../catalogue/read-table";
import { recognise } from "../catalogue/recognise";
import { tableErrorSayer, type SayRow } from "../catalogue/table-error";
import type { Columns, TableSpec } from "../catalogue/table-spec";
import { pipelineTable, usageTable } from "../catalogue/tables/stock-history";
import { nameKey } from "../core/catalogue";
import { rackGroups, type RackGroup } from "../core/stock/rack";
import { tubeNeeds } from "../core/stock/tube-needs";
import type { TableContent } from "./port";
import type { WorkbookReading } from "./workbook-reports";

export interface StockReading {
  readonly groups: readonly RackGroup[];
  /** Rows of usage that count. */
  readonly used: number;
  /** Open quotes read. */
  readonly quotes: number;
  /** What was left out, or taken for something, in sentences. */
  readonly remarks: readonly string[];
}

/** @param today the spreadsheet's day number, the last day that counts as past */
export function readStock({ catalogue, cars, history, sayRow }: WorkbookReading, today: number): StockReading {
  const [usage, pipeline] = [rowsOf(usageTable, history, sayRow), rowsOf(pipelineTable, history, sayRow)];
  const reports = new Map(cars.flatMap(({ name, report }) => (report ? [[nameKey(name), report] as const] : [])));
  const { needs, problems, assumed } = tubeNeeds(pipeline.values, reports, catalogue.settings);
  const known = new Set(catalogue.tube.map(({ name }) => nameKey(name)));
  const strange = [...new Set(usage.values.flatMap(({ tube }) => (known.has(nameKey(tube)) ? [] : [tube])))];
  const counted = usage.values.filter(({ date }) => date <= today);
  const after = usage.values.length - counted.length;
  return {
    groups: rackGroups({ rack: catalogue.tube, used: counted, needs, priceBreaks: catalogue.priceBreaks, settings: catalogue.settings, today }),
    used: counted.length, quotes: pipeline.values.length,
    remarks: [
      ...usage.faults, ...pipeline.faults, ...[...problems, ...assumed].map(({ quote, says }) => `Quote ${quote}: ${says}.`),
      ...(after > 0 ? [`${after} ${after === 1 ? "row" : "rows"} of Usage after today ${after === 1 ? "is" : "are"} left out.`] : []),
      ...(strange.length > 0 ? [`Usage of tube that is not in Tube is left out: ${strange.join(", ")}.`] : []),
    ],
  };
}

/** A row with a fault is named and left out; the others stand. */
function rowsOf<C extends Columns, R>(spec: TableSpec<C, R>, tables: readonly TableContent[], sayRow: SayRow): { values: R[]; faults: string[] } {
  const read = tables.filter(({ headings, name }) => recognise(headings, name).spec?.name === spec.name).map((table) => readTable(spec, table, table.name));
  const rows = read.flatMap((table) => table.rows);
  return {
    values: rows.flatMap(({ value }) => (value === undefined ? [] : [value])),
    faults: [...read.flatMap(({ headingErrors }) => headingErrors), ...rows.flatMap(({ errors }) => errors)].map(tableErrorSayer(sayRow)),
  };
}
