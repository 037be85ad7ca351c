/** The tables of a workbook that is set up: named, with every heading, lists to choose from, and sample rows where they are wanted. */
import { demoTables, type DemoTable } from "../catalogue/demo";
import { tableSpecs, type HeadingSpec, type TableDescription } from "../catalogue/table-specs";
import type { CellValue, NewTable } from "./port";
import { setUpGroups } from "./set-up-groups";

export interface SetUpWish {
  /** Names of tables to make. */
  readonly tables: readonly string[];
  readonly units: "us" | "metric";
  /** One invented car with the parts it needs; its figures are in US units. */
  readonly samples: boolean;
}

/** The tables wanted, as the workbook port writes them, in the order of the groups. */
export function setUpTables({ tables, units, samples }: SetUpWish): readonly NewTable[] {
  const wanted = new Set(tables);
  const order = setUpGroups.flatMap((group) => group.tables).filter((name) => wanted.has(name));
  return order.flatMap((name) => {
    const spec = tableSpecs.find((one) => one.name === name);
    return spec ? [newTable(spec, units, samples ? sampleRows(name) : [])] : [];
  });
}

/** Sample rows by heading. */
type SampleRow = Readonly<Record<string, CellValue>>;

function newTable(spec: TableDescription, units: SetUpWish["units"], samples: readonly SampleRow[]): NewTable {
  const columns = columnsOf(spec).map((column) => ({ column, heading: withUnit(column, samples.length > 0 ? "us" : units) }));
  const headings = columns.map(({ heading }) => heading);
  const rows = spec.name === "Settings" ? [["units", samples.length > 0 ? "us" : units, "text", "choice of the shop"], ["currency", "USD", "text", "choice of the shop"]] : samples.map((row) => headings.map((heading) => row[heading] ?? ""));
  const lists = columns.filter(({ column }) => column.words.length > 0).map(({ column, heading }) => ({ column: heading, values: column.words }));
  return { name: spec.name, headings, rows, lists };
}

/** A heading of Platforms may also stand in Cars, to say it of one car; set up, it stands with the platforms alone. */
function columnsOf({ name, headings }: TableDescription): readonly HeadingSpec[] {
  const last = headings.findIndex(({ heading }) => heading === "Notes");
  return name === "Cars" ? headings.slice(0, last + 1) : headings;
}

/** The demo's unit in US figures, so that its rows fit; a metric one of the same quantity otherwise. */
function withUnit({ heading, units }: HeadingSpec, system: SetUpWish["units"]): string {
  const metric = units.find((unit) => METRIC.has(unit));
  const unit = system === "metric" && metric !== undefined ? metric : (units.find((one) => demoHeadings.has(`${heading} (${one})`)) ?? units[0] ?? "");
  return unit === "" ? heading : `${heading} (${unit})`;
}

/** Of each quantity the unit a metric shop writes. */
const METRIC: ReadonlySet<string> = new Set(["mm", "bar", "kg", "N", "kPa", "cm³", "cc/m", "km/h"]);

const demoHeadings: ReadonlySet<string> = new Set(demoTables.flatMap(({ headings }) => headings));

/** A sound car of the demo, invented like all of it. */
const SAMPLE_CAR = "Car 1";

function sampleRows(name: string): readonly SampleRow[] {
  const table = demoTables.find((one) => one.name === name);
  return table ? table.rows.filter((row) => belongs(table, row)).map((row) => Object.fromEntries(table.headings.map((heading, index) => [heading, row[index] ?? ""]))) : [];
}

/** Shop lists come whole; of cars and their parts only what the sample car names. */
function belongs({ name, headings }: DemoTable, row: DemoTable["rows"][number]): boolean {
  const cell = (heading: string): string => String(row[headings.indexOf(heading)] ?? "");
  if (name === "Cars") return cell("Car") === SAMPLE_CAR;
  if (name === "Platforms" || name === "Lengths") return sampleWords.has(cell("Platform"));
  if (["Components", "Ports", "Passages", "Boosters", "WheelBrakes"].includes(name)) return sampleWords.has(cell("Component"));
  return name === "Nuts" || name === "Adapters" || name === "Tube";
}

/** Every name that stands in the sample car's row; `ID@where` names ID. */
const sampleWords: ReadonlySet<string> = new Set(
  (demoTables.find(({ name }) => name === "Cars")?.rows.find(([car]) => car === SAMPLE_CAR) ?? []).flatMap((cell) => String(cell).split(";").map((part) => part.split("@")[0]?.trim() ?? "")).filter((word) => word !== ""),
);
