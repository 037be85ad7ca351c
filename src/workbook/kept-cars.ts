/** Rows of cars and their reports, kept for as long as what they were made of stands, so that an edit of one row costs one row. */
import { carReader, carRows, type CarReader, type CarRow, type ReadCar } from "../catalogue/parse-cars";
import type { TableError } from "../catalogue/table-error";
import type { Catalogue } from "../core/catalogue";
import type { Finding } from "../core/finding";
import type { CarReport, Verdict } from "../core/report";
import type { CellValue, TableContent } from "./port";
import { findingsOfRow } from "./row-problems";

/** One row of a table of cars, with everything that is known about it. */
export interface CarLine {
  readonly table: string;
  /** 0 is the first row under the headings. */
  readonly row: number;
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
  /** @param index 0 is the first row under the headings */
  readonly read: (index: number) => void;
  /** After every row was read. */
  readonly rows: () => readonly CarRow[];
}

export function keptCarTables(): (table: TableContent) => CarTable {
  const kept = new Map<string, KeptRows>();
  return (table) => {
    const before = kept.get(table.name);
    const now = before && sameCells(before.headings, table.headings) ? before : { headings: table.headings, reader: carReader(table.headings), rows: [] };
    kept.set(table.name, now);
    now.rows.length = Math.min(now.rows.length, table.rows.length);
    return {
      table, headingErrors: now.reader.headingErrors,
      read: (index) => {
        const cells = table.rows[index] ?? [];
        if (!sameCells(now.rows[index]?.cells ?? [], cells)) now.rows[index] = { cells, read: now.reader.read(index + 1, cells) };
      },
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
  (catalogue: Catalogue, table: TableContent, row: CarRow): CarLine;
  /** Forgets what the last pass did not ask for. */
  dropUnused(): void;
}

type Outcome = Pick<CarLine, "report" | "failure">;

/** Keeps reports by what they were made of: the catalogue, the row and its faults. A row that is the same object has the same line. */
export function keptReports(report: (catalogue: Catalogue, row: CarRow) => CarReport | undefined): KeptReports {
  let kept: ReadonlyMap<string, Outcome> = new Map<string, Outcome>();
  let used = new Map<string, Outcome>();
  const lines = new WeakMap<CarRow, { readonly catalogue: Catalogue; readonly key: string; readonly made: Outcome; readonly line: CarLine }>();
  const lineOf = (catalogue: Catalogue, table: TableContent, row: CarRow): CarLine => {
    const known = lines.get(row);
    if (known?.catalogue === catalogue && known.line.table === table.name) {
      used.set(known.key, known.made);
      return known.line;
    }
    const key = JSON.stringify([catalogue.key, table.headings, table.rows[row.row - 1], row.errors]);
    const made = used.get(key) ?? kept.get(key) ?? attempt(() => report(catalogue, row));
    used.set(key, made);
    const line = { table: table.name, row: row.row - 1, name: row.name, customer: row.car?.customer ?? "", ...made, ...conclusionOf(made, row) };
    lines.set(row, { catalogue, key, made, line });
    return line;
  };
  return Object.assign(lineOf, { dropUnused: () => {
      kept = used;
      used = new Map<string, Outcome>();
    },
  });
}

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
