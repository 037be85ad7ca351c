/** Listens to Excel as long as anyone listens here, and finds out which tables an event is about. */
import type { ChangeGathering } from "../change-gathering";
import type { PatientRuns, RunBatch } from "./run";

export interface Watching {
  /** Says whether Excel is to be listened to. */
  want(isWanted: boolean): void;
  /** Done when Excel is listened to, if that is wanted. Rejects when it cannot be. */
  ready(): Promise<void>;
}

export interface WatchedNews {
  readonly changes: ChangeGathering;
  readonly selected: () => void;
}

export function watchWorkbook(run: RunBatch, runs: PatientRuns, news: WatchedNews): Watching {
  const tables = knownTables(runs, news.changes);
  let isWanted = false;
  let handlers: Handlers | undefined;
  let work = Promise.resolve();
  const settle = async (): Promise<void> => {
    if (isWanted && !handlers) handlers = await runs.reading((context) => addHandlers(context, tables, news.selected));
    if (!isWanted && handlers) {
      const old = handlers;
      handlers = undefined;
      await run((context) => removeHandlers(context, old), { previous: old.context });
    }
  };
  const ready = (): Promise<void> => (work = work.catch(() => undefined).then(settle));
  return {
    want: (wanted) => {
      isWanted = wanted;
      ready().catch(() => undefined); // the next reading tries again, and tells
    },
    ready,
  };
}

interface Handlers {
  readonly context: Excel.RequestContext;
  readonly results: readonly { remove(): void }[];
}

/**
 * Edits, sheets and tables that come and go, sheets that were recalculated, for a cell of a table may hold a formula.
 * Excel has no event for a table that gets another name, so names are looked at whenever the selection moves.
 */
async function addHandlers(context: Excel.RequestContext, tables: KnownTables, selected: () => void): Promise<Handlers> {
  const { tables: all, worksheets, onSelectionChanged } = context.workbook;
  const look = (worksheetId?: string): Promise<void> => Promise.resolve(tables.look(worksheetId));
  const results = [
    // Of what this add-in itself writes, the port tells what is to be told.
    worksheets.onChanged.add(({ worksheetId, triggerSource }) => (triggerSource === "ThisLocalAddin" ? Promise.resolve() : look(worksheetId))),
    worksheets.onCalculated.add(({ worksheetId }) => look(worksheetId)),
    worksheets.onDeleted.add(() => look()),
    all.onAdded.add(() => look()),
    all.onDeleted.add(() => look()),
    onSelectionChanged.add(() => {
      selected();
      return look();
    }),
  ];
  tables.start(await readTables(context));
  return { context, results };
}

async function removeHandlers(context: Excel.RequestContext, { results }: Handlers): Promise<void> {
  for (const result of results) result.remove();
  await context.sync();
}

interface KnownTable {
  readonly id: string;
  readonly name: string;
  readonly sheetId: string;
}

/** One sync, which also sends what was queued before. */
async function readTables(context: Excel.RequestContext): Promise<readonly KnownTable[]> {
  const { tables } = context.workbook;
  tables.load("items/id, items/name, items/worksheet/id");
  await context.sync();
  return tables.items.map(({ id, name, worksheet }) => ({ id, name, sheetId: worksheet.id }));
}

interface KnownTables {
  start(tables: readonly KnownTable[]): void;
  /** Looks, a moment later and once for several events, which tables came, went or have another name; notes them, and those of the sheet. */
  look(worksheetId?: string): void;
}

/** Long enough for the events of one paste or one recalculation. */
const QUIET_MILLISECONDS = 20;

function knownTables(runs: PatientRuns, changes: ChangeGathering): KnownTables {
  let known: readonly KnownTable[] = [];
  const sheets = new Set<string>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const find = async (): Promise<void> => {
    const touched = new Set(sheets);
    sheets.clear();
    const before = known;
    try {
      known = await runs.reading(readTables);
      changes.note(changed(before, known, touched));
    } catch {
      changes.note(before.map(({ name }) => name)); // rather too many than one too few
    }
  };
  return {
    start: (tables) => { known = tables; },
    look: (worksheetId) => {
      if (worksheetId !== undefined) sheets.add(worksheetId);
      clearTimeout(timer);
      timer = setTimeout(() => void find(), QUIET_MILLISECONDS);
    },
  };
}

/** Names, old and new, of tables that came, went or were renamed, and of those on the sheets. */
function changed(before: readonly KnownTable[], now: readonly KnownTable[], sheets: ReadonlySet<string>): readonly string[] {
  const key = ({ id, name }: KnownTable): string => `${id}/${name}`;
  const [old, young] = [new Set(before.map(key)), new Set(now.map(key))];
  const touched = now.filter((table) => sheets.has(table.sheetId) || !old.has(key(table)));
  return [...new Set([...before.filter((table) => !young.has(key(table))), ...touched].map(({ name }) => name))];
}
