/** Follows a workbook: reads its tables, reports on every car, and does it again for what changed. */
import type { CarRow } from "../catalogue/parse-cars";
import { parseCatalogue } from "../catalogue/parse-catalogue";
import { recognise } from "../catalogue/recognise";
import type { SayRow, TableError } from "../catalogue/table-error";
import type { AnyTableSpec } from "../catalogue/table-spec";
import { catalogueTables, tableSpecs } from "../catalogue/table-specs";
import { carsTable } from "../catalogue/tables/cars";
import { settingsTable } from "../catalogue/tables/settings";
import { pipelineTable, usageTable } from "../catalogue/tables/stock-history";
import type { Catalogue } from "../core/catalogue";
import { reportOn, type CarReport } from "../core/report";
import { keptCarTables, keptReports, type CarLine } from "./kept-cars";
import { sheetRow, type TableContent, type WorkbookPort } from "./port";
import { problemsOfRow } from "./row-problems";
import { slices } from "./slices";

export type { CarLine };

export interface WorkbookReading {
  readonly catalogue: Catalogue;
  /** What is wrong with the tables themselves, headings of the cars included; cells of cars are findings of their car. */
  readonly tableErrors: readonly TableError[];
  /** Names of the tables of cars; none when there is no such table. */
  readonly carTables: readonly string[];
  /** Which of our tables are there, by the names of their specs. */
  readonly tables: readonly string[];
  readonly cars: readonly CarLine[];
  /** The tables that the catalogue was read from, as they stand. */
  readonly catalogueTables: readonly TableContent[];
  /** Tables of past usage and of open quotes as they stand; the Stock view alone reads their rows. */
  readonly history: readonly TableContent[];
  /** The table of settings as it stands; the last of several, whose rows win. */
  readonly settingsTable: TableContent | undefined;
  /** Names a row of a table by the sheet's own number: `row 18`. */
  readonly sayRow: SayRow;
}

export interface WorkbookListener {
  readonly reading: (reading: WorkbookReading) => void;
  /** Told between slices of long work only. */
  readonly progress: (done: number, total: number) => void;
  readonly failed: (error: unknown) => void;
  /** Told once the work stands still after `hold`. */
  readonly held: () => void;
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
  /** Lets long work stand still at the next pause; what is done is kept, and edits wait too. */
  hold(): void;
  goOn(): void;
  stop(): void;
}

/**
 * Reads the workbook now and after each edit. Edits that come while it works are taken up at the next pause;
 * reports that are still true are kept, so that an edit of one row costs one report.
 */
export function followWorkbook(port: WorkbookPort, listener: WorkbookListener, options: FollowOptions = {}): Following {
  const reader = readerOf(port, options);
  const state = { running: false, stopped: false, held: false };
  const resting = (): boolean => state.stopped || state.held;
  const run = async (): Promise<void> => {
    if (state.running || resting()) return;
    state.running = true;
    try {
      while (reader.isStale() && !resting()) {
        const reading = await reader.read(listener.progress, resting);
        if (reading && !state.stopped) listener.reading(reading);
      }
    } catch (error) {
      reader.forget();
      if (!state.stopped) listener.failed(error);
    } finally {
      state.running = false;
    }
    state.held &&= reader.isStale();
    if (state.held && !state.stopped) listener.held();
  };
  const goOn = (): void => {
    state.held = false;
    void run();
  };
  const stopListening = port.onChange(({ tables }) => {
    reader.markStale(tables);
    void run();
  });
  void run();
  return {
    goOn,
    again: () => {
      reader.forget();
      goOn();
    },
    hold: () => { state.held = state.running; },
    stop: () => { state.stopped = true; stopListening(); },
  };
}

interface Reader {
  isStale(): boolean;
  markStale(tables: readonly string[]): void;
  /** Everything is to be read again. */
  forget(): void;
  /** @returns undefined when an edit or a rest came in between; then it is still stale */
  read(progress: WorkbookListener["progress"], resting: () => boolean): Promise<WorkbookReading | undefined>;
}

function readerOf(port: WorkbookPort, options: FollowOptions): Reader {
  const stale = { all: true, unfinished: false, tables: new Set<string>() };
  const contents = new Map<string, TableContent>();
  const catalogueOf = keptCatalogue(options);
  const carTableOf = keptCarTables();
  const reports = keptReports(options.report ?? reportOnRow);
  return {
    isStale: () => stale.all || stale.unfinished || stale.tables.size > 0,
    markStale: (tables) => { for (const name of tables) stale.tables.add(name.toLowerCase()); },
    forget: () => { stale.all = true; },
    read: async (progress, resting) => {
      const { all, tables } = { all: stale.all, tables: new Set(stale.tables) };
      Object.assign(stale, { all: false, unfinished: true });
      stale.tables.clear();
      await refresh(port, contents, all ? undefined : tables);
      const { rest, each } = slices();
      const sorted = sortTables([...contents.values()]);
      const { catalogue, errors } = catalogueOf(sorted.catalogue);
      await rest();
      const interrupted = (): boolean => resting() || stale.all || stale.tables.size > 0;
      const parsed = sorted.cars.map(carTableOf);
      if (!await each(parsed.flatMap(({ unread }) => unread), (read) => { read(); }, { progress: () => undefined, interrupted })) return undefined;
      const rows = parsed.flatMap((one) => one.rows().map((row) => ({ table: one.table, row })));
      await rest();
      const open = rows.filter(({ table, row }) => !reports.known(catalogue, table, row));
      if (!await each(open, ({ table, row }) => { reports.make(catalogue, table, row); }, { progress, interrupted })) return undefined;
      const cars = rows.flatMap(({ table, row }) => reports.known(catalogue, table, row) ?? []);
      await rest();
      stale.unfinished = false;
      reports.keepOnly(cars);
      const tableErrors = [...sorted.errors, ...errors, ...parsed.flatMap(({ headingErrors }) => headingErrors)];
      return { catalogue, tableErrors, carTables: sorted.cars.map(({ name }) => name), tables: sorted.ours, cars, catalogueTables: sorted.catalogue, history: sorted.history, settingsTable: sorted.settings, sayRow: rowNames(contents) };
    },
  };
}

/** The catalogue of the workbook as it stands, for who does not follow it. Faults in its tables are left to who does. */
export async function readCatalogue(port: WorkbookPort): Promise<Catalogue> {
  const contents = new Map<string, TableContent>();
  await refresh(port, contents, undefined);
  return parseCatalogue(sortTables([...contents.values()]).catalogue).catalogue;
}

/** By the names of the tables, without regard to case. */
function rowNames(contents: ReadonlyMap<string, TableContent>): SayRow {
  const first = new Map([...contents].map(([key, { firstRow }]) => [key, firstRow]));
  return (table, row) => {
    const firstRow = first.get(table.toLowerCase());
    return `row ${sheetRow(firstRow === undefined ? {} : { firstRow }, row - 1)}`;
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
  readonly ours: readonly string[];
  readonly settings: TableContent | undefined;
}

/** Tables that are none of ours are the user's own business, unless they bear the name of one of ours. */
function sortTables(tables: readonly TableContent[]): SortedTables {
  const inOrder = [...tables].sort((a, b) => (a.name < b.name ? -1 : 1));
  const known = inOrder.map((table) => ({ table, recognised: recognisedOnce(table) }));
  const are = (specs: readonly AnyTableSpec[]): TableContent[] => known.filter(({ recognised: { spec } }) => spec && specs.includes(spec)).map(({ table }) => table);
  const errors = known.flatMap(({ table, recognised: { error } }) => (error && isOurName(table.name) ? [error] : []));
  return { catalogue: are(catalogueTables), cars: are([carsTable]), history: are([usageTable, pipelineTable]), settings: are([settingsTable]).at(-1), errors, ours: [...new Set(known.flatMap(({ recognised: { spec } }) => spec?.name ?? []))] };
}

const recognised = new WeakMap<TableContent, ReturnType<typeof recognise>>();

function recognisedOnce(table: TableContent): ReturnType<typeof recognise> {
  const known = recognised.get(table) ?? recognise(table.headings, table.name);
  recognised.set(table, known);
  return known;
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

const reportOnRow = (catalogue: Catalogue, row: CarRow): CarReport | undefined => row.car && reportOn(catalogue, row.car, problemsOfRow(row));

