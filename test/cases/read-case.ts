/** Reads a case: a folder of CSV files, each one table of a small workbook, and what it must say. */
import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import type { RawTable } from "../../src/catalogue/table-spec";

/** From, to, end A, end B, length with its basis. An end reads from the port outward: adapters, then the nut's thread and the flare. */
export type ExpectedRun = readonly [from: string, to: string, a: string, b: string, length: string];

export interface ExpectedCar {
  /** Severity and code of all above a note, each once. */
  readonly findings: readonly string[];
  /** Codes of notes that there must be; others may be there too. */
  readonly notes?: readonly string[];
  readonly runs: readonly ExpectedRun[];
}

export interface Expected {
  readonly cars: Readonly<Record<string, ExpectedCar>>;
  /** Other ways to list a car's valves; the answer must be the same. */
  readonly orders?: Readonly<Record<string, readonly string[]>>;
  /** Like `orders`, and also with Serves given otherwise or left out and genders left blank. */
  readonly vary?: Readonly<Record<string, readonly string[]>>;
  /** Parts that lines reach on the one car and on the other no longer. */
  readonly gone?: { readonly from: string; readonly to: string; readonly parts: readonly string[] };
}

export interface Case {
  readonly name: string;
  readonly cars: RawTable;
  readonly catalogue: readonly RawTable[];
  readonly expected: Expected;
  readonly readme: string;
}

/** Every case, by the name of its folder. */
export function readCases(folder: string): Case[] {
  const names = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory()).map(({ name }) => name);
  return names.sort().map((name) => readCase(join(folder, name)));
}

function readCase(folder: string): Case {
  const tables = readdirSync(folder).filter((file) => file.endsWith(".csv")).map((file) => readTable(join(folder, file)));
  const cars = tables.find(({ name }) => name === "cars");
  if (!cars) throw new Error(`${folder} has no cars.csv`);
  return {
    name: basename(folder),
    cars,
    catalogue: tables.filter((table) => table !== cars),
    expected: JSON.parse(readFileSync(join(folder, "expected.json"), "utf8")) as Expected,
    readme: readFileSync(join(folder, "README.md"), "utf8"),
  };
}

function readTable(file: string): RawTable {
  const lines = readFileSync(file, "utf8").split("\n").filter((line) => line !== "");
  const [headings = [], ...rows] = lines.map((line) => cellsOf(file, line));
  const ragged = rows.findIndex((row) => row.length !== headings.length);
  if (ragged >= 0) throw new Error(`${file} row ${ragged + 1} has ${rows[ragged]?.length} cells, its headings ${headings.length}`);
  return { name: basename(file, ".csv"), headings, rows };
}

/** Plain CSV: no cell of a case holds a comma, so a quote would be a mistake. */
function cellsOf(file: string, line: string): string[] {
  if (line.includes('"')) throw new Error(`${file}: quoted cells are not read: ${line}`);
  return line.split(",");
}

/** The same table with one column's cells replaced. */
export function withColumn(table: RawTable, heading: string, cell: (row: Readonly<Record<string, unknown>>) => unknown): RawTable {
  const index = table.headings.indexOf(heading);
  if (index < 0) throw new Error(`${table.name} has no column ${heading}`);
  const named = (row: readonly unknown[]) => Object.fromEntries(table.headings.map((name, at) => [String(name), row[at]]));
  return { ...table, rows: table.rows.map((row) => row.map((value, at) => (at === index ? cell(named(row)) : value))) };
}
