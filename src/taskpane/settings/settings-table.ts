/** The Settings table of the workbook: what it has for each setting, and how a new value gets into it. */
import { numberOf } from "../../catalogue/cell";
import { readTable } from "../../catalogue/read-table";
import { settingsTable } from "../../catalogue/tables/settings";
import { nameKey } from "../../core/catalogue";
import { headingIndex, sheetRow, type CellValue, type TableContent, type WorkbookPort } from "../../workbook/port";

/** A row of the table, as typed. */
export interface StandingValue {
  readonly table: string;
  readonly row: number;
  readonly sheetRow: number;
  readonly value: string;
  readonly unit: string;
  readonly source: string;
}

export interface NewValue {
  readonly name: string;
  readonly typed: string;
  /** The unit of the setting's default, for a row that is not there yet. */
  readonly unit: string;
  /** Undefined when the table has no row for it. */
  readonly row: number | undefined;
  readonly source: string;
}

/** What the table has, by nameKey; of two rows for one setting the later stands. */
export function standingValues(table: TableContent | undefined): ReadonlyMap<string, StandingValue> {
  if (!table) return new Map();
  const [name, value, unit, source] = ["Setting", "Value", "Unit", "Source"].map((heading) => headingIndex(table.headings, heading));
  const cell = (row: readonly CellValue[], index: number | undefined): string => String(row[index ?? -1] ?? "").trim();
  return new Map(table.rows.map((row, index) => [nameKey(cell(row, name)), { table: table.name, row: index, sheetRow: sheetRow(table, index), value: cell(row, value), unit: cell(row, unit), source: cell(row, source) }]));
}

/**
 * Writes one setting: its cell where it has a row, a row where it has none, a table where there is none.
 * @throws Error with a sentence when the value would not be read; then nothing is written
 */
export async function writeSetting(port: WorkbookPort, table: TableContent | undefined, { name, typed, unit, row, source }: NewValue): Promise<void> {
  const value = cellOf(typed);
  const standingUnit = row === undefined ? unit : standingValues(table).get(nameKey(name))?.unit;
  refuseUnreadable(name, value, standingUnit || unit);
  const cells = { Setting: name, Value: value, Unit: unit, Source: source };
  if (!table) await port.writeTables([{ name: "Settings", headings: Object.keys(cells), rows: [Object.values(cells)] }]);
  else if (row !== undefined) await port.writeTableCell({ table: table.name, row, column: "Value" }, value);
  else await port.appendTableRow(table.name, Object.fromEntries(Object.entries(cells).filter(([heading]) => headingIndex(table.headings, heading) >= 0)));
}

/** A zero goes in as text, since a range cannot tell a typed 0 from a blank cell. */
function cellOf(typed: string): CellValue {
  const number = numberOf(typed);
  return number === undefined || number === 0 ? typed : number;
}

function refuseUnreadable(name: string, value: CellValue, unit: string): void {
  const { rows: [read] } = readTable(settingsTable, { headings: ["Setting", "Value", "Unit", "Source"], rows: [[name, value, unit, ""]] }, settingsTable.name);
  const error = read?.errors[0];
  if (error) throw new Error(`${name} takes ${error.accepted}.`);
}
