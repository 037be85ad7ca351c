/** An example of a formula, made to fit the workbook it goes into. */
import { tableSpecs } from "../catalogue/table-specs";
import { cellOf } from "./answer-sheets";
import { catalogueKey, ourTables } from "./our-tables";
import type { WorkbookPort } from "./port";
import { KEY_CELL, KEY_SHEET } from "./set-up-groups";

/**
 * The example with this workbook's names of our tables and its cell of the catalogue's key.
 * @param example as in the reference, over the demo's names
 * @throws Error with a plain sentence when the workbook lacks what it needs
 */
export async function exampleHere(port: WorkbookPort, example: string): Promise<string> {
  const needed = tableSpecs.map(({ name }) => name).filter((name) => namesTable(name).test(example));
  const there = needed.length > 0 ? await ourTables(port) : new Map<string, readonly string[]>();
  const missing = needed.filter((name) => !there.has(name));
  if (missing.length > 0) throw new Error(`It reads the ${missing.length === 1 ? "table" : "tables"} ${missing.join(" and ")}, which this workbook has not. The Settings view makes ${missing.length === 1 ? "it" : "them"}.`);
  const named = needed.reduce((text, name) => text.replace(namesTable(name), there.get(name)?.[0] ?? name), example);
  if (!named.includes(KEY_OF_DEMO)) return named;
  const key = await catalogueKey(port);
  if (!key) throw new Error(`It needs the catalogue's key in ${KEY_OF_DEMO}, and this workbook has no such sheet. The Settings view makes it, with the sheets that show the answers.`);
  return named.replaceAll(KEY_OF_DEMO, cellOf(key.sheet, KEY_CELL));
}

const KEY_OF_DEMO = `${KEY_SHEET}!${KEY_CELL}`;

/** A table's name where a formula names a table, and not within a longer name or a text. */
const namesTable = (name: string): RegExp => new RegExp(`(?<![\\w."])${name}(?=[[,)])`, "g");
