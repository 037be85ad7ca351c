/** What of ours stands in a workbook, and under which names. */
import { recognise } from "../catalogue/recognise";
import type { WorkbookPort } from "./port";
import { KEY_CELL, KEY_SHEET } from "./set-up-groups";

/** Names in this workbook of our tables, by the names that we give them. */
export async function ourTables(port: WorkbookPort): Promise<ReadonlyMap<string, readonly string[]>> {
  const names = [...(await port.tableNames())].sort();
  const tables = await Promise.all(names.map((name) => port.readTable(name)));
  const found = new Map<string, string[]>();
  for (const table of tables) {
    const { spec } = table ? recognise(table.headings, table.name) : {};
    if (table && spec) found.set(spec.name, [...(found.get(spec.name) ?? []), table.name]);
  }
  return found;
}

export interface CatalogueKey {
  readonly sheet: string;
  readonly formula: string;
}

/** The key of the catalogue, where set-up puts it: in B2 of a sheet Catalog, or Catalog 2 where that name was taken. */
export async function catalogueKey(port: WorkbookPort): Promise<CatalogueKey | undefined> {
  const sheets = (await port.sheetNames()).filter((name) => new RegExp(`^${KEY_SHEET}( \\d+)?$`, "i").test(name));
  const formulas = await Promise.all(sheets.map((sheet) => port.formulaAt(sheet, KEY_CELL)));
  const keys = sheets.map((sheet, index) => ({ sheet, formula: formulas[index] ?? "" }));
  return keys.find(({ formula }) => /^=PLUMB\.CATALOG\(/i.test(formula));
}
