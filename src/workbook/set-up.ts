/** A workbook that is set up: named tables with every heading, lists to choose from, sample rows where they are wanted, and sheets with the answers. */
import { demoTables, type DemoTable } from "../catalogue/demo";
import { catalogueTables, tableSpecs, type HeadingSpec, type TableDescription } from "../catalogue/table-specs";
import { answerSheets, catalogSheet, cellOf, readingAlso } from "./answer-sheets";
import { catalogueKey, ourTables } from "./our-tables";
import type { CellValue, FormulaChange, NewTable, WorkbookPort } from "./port";
import { KEY_CELL, KEY_SHEET, missingAnswers, setUpGroups } from "./set-up-groups";
import { freeSheetName } from "./sheet-name";

export interface SetUpWish {
  /** Names of tables to make. */
  readonly tables: readonly string[];
  readonly units: "us" | "metric";
  /** One invented car with the parts it needs; its figures are in US units. */
  readonly samples: boolean;
}

export interface AnswersWish {
  /** Whether the sheets with answers that are not there yet are wanted too. */
  readonly answers: boolean;
  /** The spreadsheet's day number. */
  readonly today: number;
}

/**
 * Makes the tables wanted and the sheets that show the answers over them, as one undo step. A key of the catalogue that is
 * there already reads the new tables too.
 * @throws Error with a plain sentence when that cannot be; then nothing is written
 */
export async function setUpWorkbook(port: WorkbookPort, { answers, today, ...wish }: SetUpWish & AnswersWish): Promise<void> {
  const [there, sheets, key] = [await ourTables(port), await port.sheetNames(), await catalogueKey(port)];
  const tables = setUpTables(wish);
  const added = tables.map(({ name }) => name).filter(isOfCatalogue);
  const read = [...[...there].flatMap(([name, names]) => (isOfCatalogue(name) ? names : [])), ...added];
  const newKey = answers && !key && read.length > 0 ? [catalogSheet(read)] : [];
  const shown = answers && (key ?? newKey.length > 0) ? missingAnswers([...there.keys(), ...wish.tables], sheets) : [];
  const made = answerSheets({ sheets: shown, today, table: (name) => there.get(name)?.[0] ?? name, key: cellOf(key?.sheet ?? freeSheetName(KEY_SHEET, sheets), KEY_CELL) });
  const isFirst = ({ name }: NewTable): boolean => name === "Cars";
  await port.writeTables([...tables.filter(isFirst), ...made, ...newKey, ...tables.filter((table) => !isFirst(table))], key ? changeOf(key, added) : []);
}

const isOfCatalogue = (name: string): boolean => catalogueTables.some((spec) => spec.name === name);

function changeOf({ sheet, formula }: { readonly sheet: string; readonly formula: string }, added: readonly string[]): readonly FormulaChange[] {
  const to = readingAlso(formula, added);
  return to === undefined || to === formula ? [] : [{ sheet, address: KEY_CELL, from: formula, to }];
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
