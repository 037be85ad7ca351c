/** The demo as parts of a workbook: the tables of the invented shop, and sheets with our formulas over them. */
import { DEMO_DATES, DEMO_TODAY, demoTables, type DemoTable } from "../catalogue/demo";
import { catalogueTables } from "../catalogue/table-specs";
import { answerSheets, catalogSheet, cellOf } from "./answer-sheets";
import type { NewSheet, NewTable } from "./port";
import { KEY_CELL, missingAnswers } from "./set-up-groups";
import { freeSheetName } from "./sheet-name";

const DAYS_PER_WEEK = 7;

/**
 * @param today the spreadsheet's day number; history and quotes move to it by whole weeks. Left out, they stay where they were written
 * @param taken names of the sheets that are there
 */
export function demoParts(today = DEMO_TODAY, taken: readonly string[] = []): readonly (NewTable | NewSheet)[] {
  const later = Math.floor((today - DEMO_TODAY) / DAYS_PER_WEEK) * DAYS_PER_WEEK;
  const tables = demoTables.map((table): NewTable => ({ ...movedOn(table, later), days: table.headings.filter(isDate) }));
  const key = catalogSheet(demoTables.map(({ name }) => name).filter(isOfCatalogue));
  const answers = answerSheets({ sheets: missingAnswers(demoTables.map(({ name }) => name), []), table: (name) => name, key: cellOf(freeSheetName(key.name, taken), KEY_CELL), today: DEMO_TODAY + later });
  return [...tables.filter(({ name }) => name === "Cars"), ...answers, key, ...tables.filter(({ name }) => name !== "Cars")];
}

/** A table with its days so many days later. */
function movedOn({ name, headings, rows }: DemoTable, days: number): DemoTable {
  return { name, headings, rows: rows.map((row) => row.map((cell, column) => (isDate(headings[column] ?? "") && typeof cell === "number" ? cell + days : cell))) };
}

const isDate = (heading: string): boolean => DEMO_DATES.includes(heading);

/** Tables that are answered about, like Seen, are no part of the catalogue. */
const isOfCatalogue = (name: string): boolean => catalogueTables.some((spec) => spec.name === name);
