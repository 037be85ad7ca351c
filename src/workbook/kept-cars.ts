/** Rows of cars and their reports, kept for as long as what they were made of stands, so that an edit of one row costs one row. */
import { mistypedHeadings } from "../catalogue/headings";
import { carReader, carRows, type CarReader, type CarRow, type ReadCar } from "../catalogue/parse-cars";
import type { TableError } from "../catalogue/table-error";
import { carsTable } from "../catalogue/tables/cars";
import type { Catalogue } from "../core/catalogue";
import type { Finding } from "../core/finding";
import type { CarReport, Verdict } from "../core/report";
import { sheetRow, type CellValue, type TableContent } from "./port";
import { findingsOfRow } from "./row-problems";

/** One row of a table of cars, with everything that is known about it. */
export interface CarLine {
  readonly table: string;
  /** 0 is the first row under the headings. */
  readonly row: number;
  /** The sheet's own number of the row. */
  readonly sheetRow: number;
  readonly name: string;
  readonly customer: string;
  /** Undefined when the row names no car, or when the report failed. */
  readonly report: CarReport | undefined;
  /** Undefined when the report failed. */
  readonly verdict: Verdict | undefined;
  readonly findings: readonly Finding[];
  /** Why the report failed: a fault of ours, and this row's alone. */
  readonly failure?: unknown;
}

/** Reads one table of cars a row at a time; rows whose cells are as before are not read again. */
export interface CarTable {
  readonly table: TableContent;
  readonly headingErrors: readonly TableError[];
  /** A task for each row whose cells are not as before. */
  readonly unread: readonly (() => void)[];
  /** After those tasks. */
  readonly rows: () => readonly CarRow[];
}

export function keptCarTables(): (table: TableContent) => CarTable {
  const kept = new Map<string, KeptRows>();
  return (table) => {
    const before = kept.get(table.name);
    const now = before && sameCells(before.headings, table.headings) ? before : { headings: table.headings, reader: carReader(table.headings), rows: [] };
    kept.set(table.name, now);
    now.rows.length = Math.min(now.rows.length, table.rows.length);
    const unread = [...table.rows.entries()].filter(([index, cells]) => !sameCells(now.rows[index]?.cells ?? [], cells));
    return {
      table, headingErrors: [...now.reader.headingErrors, ...mistypedHeadings(carsTable, table.headings)],
      unread: unread.map(([index, cells]) => () => { now.rows[index] = { cells, read: now.reader.read(index + 1, cells) }; }),
      rows: () => carRows(now.rows.flatMap(({ read }) => read ?? [])),
    };
  };
}

interface KeptRows {
  readonly headings: readonly CellValue[];
  readonly reader: CarReader;
  readonly rows: { readonly cells: readonly CellValue[]; readonly read: ReadCar | undefined }[];
}

const sameCells = (a: readonly CellValue[], b: readonly CellValue[]): boolean => a === b || (a.length === b.length && a.every((cell, index) => cell === b[index]));

export interface KeptReports {
  /** The line of a row that is the same object as before, under the same catalogue. */
  known(catalogue: Catalogue, table: TableContent, row: CarRow): CarLine | undefined;
  make(catalogue: Catalogue, table: TableContent, row: CarRow): CarLine;
  /** Forgets all but these lines and, for a time, what was there before them. */
  keepOnly(lines: readonly CarLine[]): void;
}

type Outcome = Pick<CarLine, "report" | "failure">;

/** Keeps reports by what they were made of, the catalogue, the row and its faults, so that a row that moves keeps its report. */
export function keptReports(report: (catalogue: Catalogue, row: CarRow) => CarReport | undefined): KeptReports {
  let outcomes = new Map<string, Outcome>();
  const keys = new WeakMap<CarLine, string>();
  const lines = new WeakMap<CarRow, { readonly catalogue: Catalogue; readonly line: CarLine }>();
  return {
    known: (catalogue, table, row) => {
      const known = lines.get(row);
      return known?.catalogue === catalogue && known.line.table === table.name && known.line.sheetRow === sheetRow(table, row.row - 1) ? known.line : undefined;
    },
    make: (catalogue, table, row) => {
      const key = JSON.stringify([catalogue.key, table.headings, table.rows[row.row - 1], row.errors]);
      const made = outcomes.get(key) ?? attempt(() => report(catalogue, row));
      outcomes.set(key, made);
      const inSheet = sheetRow(table, row.row - 1);
      const line = { table: table.name, row: row.row - 1, sheetRow: inSheet, name: row.car ? row.name : `row ${inSheet}`, customer: row.car?.customer ?? "", ...made, ...conclusionOf(made, row) };
      lines.set(row, { catalogue, line });
      keys.set(line, key);
      return line;
    },
    keepOnly: (kept) => {
      if (outcomes.size <= 2 * kept.length + SPARE) return;
      const current = kept.map((line) => keys.get(line) ?? "");
      outcomes = new Map(current.flatMap((key): [string, Outcome][] => { const one = outcomes.get(key); return one ? [[key, one]] : []; }));
    },
  };
}

/** Reports of rows that were changed, kept beyond the present ones in case they are changed back. */
const SPARE = 500;

function attempt(work: () => CarReport | undefined): Outcome {
  try {
    return { report: work() };
  } catch (failure) {
    return { report: undefined, failure };
  }
}

function conclusionOf({ report, failure }: Outcome, row: CarRow): Pick<CarLine, "verdict" | "findings"> {
  if (report) return { verdict: report.verdict, findings: report.findings };
  return { verdict: failure === undefined ? "decide" : undefined, findings: findingsOfRow(row) };
}
