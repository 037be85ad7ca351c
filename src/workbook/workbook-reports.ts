/** Follows a workbook: reads its tables, reports on every car, and does it again for what changed. */
import { parseCars, type CarRow } from "../catalogue/parse-cars";
import { parseCatalogue } from "../catalogue/parse-catalogue";
import { recognise } from "../catalogue/recognise";
import type { TableError } from "../catalogue/table-error";
import type { AnyTableSpec } from "../catalogue/table-spec";
import { catalogueTables, tableSpecs } from "../catalogue/table-specs";
import { carsTable } from "../catalogue/tables/cars";
import { pipelineTable, usageTable } from "../catalogue/tables/stock-history";
import type { Catalogue } from "../core/catalogue";
import type { Finding } from "../core/finding";
import { reportOn, type CarReport, type Verdict } from "../core/report";
import type { TableContent, WorkbookPort } from "./port";
import { findingsOfRow, problemsOfRow } from "./row-problems";

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

export interface WorkbookReading {
  readonly catalogue: Catalogue;
  /** What is wrong with the tables themselves, headings of the cars included; cells of cars are findings of their car. */
  readonly tableErrors: readonly TableError[];
  /** Names of the tables of cars; none when there is no such table. */
  readonly carTables: readonly string[];
  readonly cars: readonly CarLine[];
  /** Tables of past usage and of open quotes as they stand; the Stock view alone reads their rows. */
  readonly history: readonly TableContent[];
}

export interface WorkbookListener {
  readonly reading: (reading: WorkbookReading) => void;
  /** Told between slices of long work only. */
  readonly progress: (done: number, total: number) => void;
  readonly failed: (error: unknown) => void;
}

export interface FollowOptions {
  /** Reports on one row, undefined when it names no car; the panel passes the one that shares its results with the worksheet functions. */
  readonly report?: (catalogue: Catalogue, row: CarRow) => CarReport | undefined;
  /** Told of every catalogue that was read, so that a cache can keep it; answers the one to use. */
  readonly catalogueRead?: (catalogue: Catalogue) => Catalogue;
}

export interface Following {
  /** Reads everything again. */
  again(): void;
  stop(): void;
}

/**
 * Reads the workbook now and after each edit. Edits that come while it works are taken up at the next pause;
 * reports that are still true are kept, so that an edit of one row costs one report.
 */
export function followWorkbook(port: WorkbookPort, listener: WorkbookListener, options: FollowOptions = {}): Following {
  const reader = readerOf(port, options);
  const state = { running: false, stopped: false };
  const run = async (): Promise<void> => {
    if (state.running || state.stopped) return;
    state.running = true;
    try {
      while (reader.isStale() && !state.stopped) {
        const reading = await reader.read(listener.progress, () => state.stopped);
        if (reading && !state.stopped) listener.reading(reading);
      }
    } catch (error) {
      reader.forget();
      if (!state.stopped) listener.failed(error);
    } finally {
      state.running = false;
    }
  };
  const again = (): void => {
    reader.forget();
    void run();
  };
  const stopListening = port.onChange(({ tables }) => {
    reader.markStale(tables);
    void run();
  });
  void run();
  return { again, stop: () => { state.stopped = true; stopListening(); } };
}

interface Reader {
  isStale(): boolean;
  markStale(tables: readonly string[]): void;
  /** Everything is to be read again. */
  forget(): void;
  /** @returns undefined when an edit or a stop came in between */
  read(progress: WorkbookListener["progress"], stopped: () => boolean): Promise<WorkbookReading | undefined>;
}

function readerOf(port: WorkbookPort, options: FollowOptions): Reader {
  const stale = { all: true, tables: new Set<string>() };
  const contents = new Map<string, TableContent>();
  const catalogueOf = keptCatalogue(options);
  const reportOf = keptReports(options.report ?? reportOnRow);
  return {
    isStale: () => stale.all || stale.tables.size > 0,
    markStale: (tables) => { for (const name of tables) stale.tables.add(name.toLowerCase()); },
    forget: () => { stale.all = true; },
    read: async (progress, stopped) => {
      const { all, tables } = { all: stale.all, tables: new Set(stale.tables) };
      stale.all = false;
      stale.tables.clear();
      await refresh(port, contents, all ? undefined : tables);
      const sorted = sortTables([...contents.values()]);
      const { catalogue, errors } = catalogueOf(sorted.catalogue);
      const parsed = sorted.cars.map((table) => ({ table, ...parseCars(table.headings, table.rows) }));
      const rows = parsed.flatMap(({ table, cars }) => cars.map((row) => ({ table, row })));
      const cars = await inSlices(rows, ({ table, row }) => reportOf(catalogue, table, row), { progress, interrupted: () => stopped() || stale.all || stale.tables.size > 0 });
      if (!cars) return undefined;
      reportOf.dropUnused();
      const tableErrors = [...sorted.errors, ...errors, ...parsed.flatMap(({ headingErrors }) => headingErrors)];
      return { catalogue, tableErrors, carTables: sorted.cars.map(({ name }) => name), cars, history: sorted.history };
    },
  };
}

/** Reads the tables that are stale into `contents`, and drops those that are gone. */
async function refresh(port: WorkbookPort, contents: Map<string, TableContent>, stale: ReadonlySet<string> | undefined): Promise<void> {
  const names = await port.tableNames();
  const keys = new Set(names.map((name) => name.toLowerCase()));
  for (const key of [...contents.keys()]) if (!keys.has(key)) contents.delete(key);
  const wanted = names.filter((name) => !stale || stale.has(name.toLowerCase()) || !contents.has(name.toLowerCase()));
  const tables = await Promise.all(wanted.map((name) => port.readTable(name)));
  for (const [index, table] of tables.entries()) {
    const key = wanted[index]?.toLowerCase() ?? "";
    if (table) contents.set(key, table);
    else contents.delete(key);
  }
}

interface SortedTables {
  readonly catalogue: readonly TableContent[];
  readonly cars: readonly TableContent[];
  readonly history: readonly TableContent[];
  readonly errors: readonly TableError[];
}

/** Tables that are none of ours are the user's own business, unless they bear the name of one of ours. */
function sortTables(tables: readonly TableContent[]): SortedTables {
  const inOrder = [...tables].sort((a, b) => (a.name < b.name ? -1 : 1));
  const known = inOrder.map((table) => ({ table, recognised: recognise(table.headings, table.name) }));
  const are = (specs: readonly AnyTableSpec[]): TableContent[] => known.filter(({ recognised: { spec } }) => spec && specs.includes(spec)).map(({ table }) => table);
  const errors = known.flatMap(({ table, recognised: { error } }) => (error && isOurName(table.name) ? [error] : []));
  return { catalogue: are(catalogueTables), cars: are([carsTable]), history: are([usageTable, pipelineTable]), errors };
}

const isOurName = (name: string): boolean => tableSpecs.some((spec) => spec.name.toLowerCase() === name.toLowerCase());

/** Parses the catalogue again only when one of its tables was read again. */
function keptCatalogue({ catalogueRead }: FollowOptions): (tables: readonly TableContent[]) => ReturnType<typeof parseCatalogue> {
  let last: { readonly tables: readonly TableContent[]; readonly parsed: ReturnType<typeof parseCatalogue> } | undefined;
  return (tables) => {
    if (last?.tables.length === tables.length && tables.every((table, index) => table === last?.tables[index])) return last.parsed;
    const parsed = parseCatalogue(tables);
    last = { tables, parsed: { ...parsed, catalogue: catalogueRead?.(parsed.catalogue) ?? parsed.catalogue } };
    return last.parsed;
  };
}

interface KeptReports {
  (catalogue: Catalogue, table: TableContent, row: CarRow): CarLine;
  /** Forgets what the last pass did not ask for. */
  dropUnused(): void;
}

type Outcome = Pick<CarLine, "report" | "failure">;

/** Keeps reports by what they were made of: the catalogue, the row and its faults. */
function keptReports(report: NonNullable<FollowOptions["report"]>): KeptReports {
  let kept: ReadonlyMap<string, Outcome> = new Map<string, Outcome>();
  let used = new Map<string, Outcome>();
  const lineOf = (catalogue: Catalogue, table: TableContent, row: CarRow): CarLine => {
    const key = JSON.stringify([catalogue.key, table.headings, table.rows[row.row - 1], row.errors]);
    const made = used.get(key) ?? kept.get(key) ?? attempt(() => report(catalogue, row));
    used.set(key, made);
    return { table: table.name, row: row.row - 1, name: row.name, customer: row.car?.customer ?? "", ...made, ...conclusionOf(made, row) };
  };
  return Object.assign(lineOf, { dropUnused: () => {
      kept = used;
      used = new Map<string, Outcome>();
    },
  });
}

const reportOnRow = (catalogue: Catalogue, row: CarRow): CarReport | undefined => row.car && reportOn(catalogue, row.car, problemsOfRow(row));

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

interface SliceOptions {
  readonly progress: WorkbookListener["progress"];
  readonly interrupted: () => boolean;
}

/** Frames last 16 ms; a slice leaves the page time to draw. */
const SLICE_MILLISECONDS = 12;

/** Does the work in slices between which the page can draw. @returns undefined when it was interrupted */
async function inSlices<T, R>(items: readonly T[], work: (item: T) => R, { progress, interrupted }: SliceOptions): Promise<R[] | undefined> {
  const done: R[] = [];
  let start = performance.now();
  for (const item of items) {
    done.push(work(item));
    if (performance.now() - start < SLICE_MILLISECONDS) continue;
    progress(done.length, items.length);
    await pause();
    if (interrupted()) return undefined;
    start = performance.now();
  }
  return done;
}

const pause = (): Promise<void> => new Promise((resolve) => { setTimeout(resolve, 0); });
