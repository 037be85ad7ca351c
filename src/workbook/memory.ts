/** A workbook in memory, for tests and for pages without a spreadsheet. */
import { gatherChanges } from "./change-gathering";
import { headingIndex, type CellValue, type TableContent, type WorkbookPort } from "./port";
import { freeSheetName } from "./sheet-name";
import { rectangular } from "./sheet-rows";

export interface MemoryWorkbook extends WorkbookPort {
  /** Edits one cell as the user would; row 0 is the first row under the headings. */
  edit(table: string, row: number, column: string, value: CellValue): void;
  /** Puts a table there, in place of the one with its name, as the user would. */
  replaceTable(table: TableContent): void;
  /** Takes a table away, as the user would. */
  deleteTable(name: string): void;
  /** Takes back what the port wrote last. */
  undo(): void;
  readonly sheets: ReadonlyMap<string, readonly (readonly CellValue[])[]>;
  readonly selection: { readonly table: string; readonly row: number; readonly column?: string } | undefined;
}

export function memoryWorkbook(initial: readonly TableContent[] = []): MemoryWorkbook {
  const tables = new Map(initial.map((table) => [table.name.toLowerCase(), table]));
  const sheets = new Map<string, readonly (readonly CellValue[])[]>();
  const changes = gatherChanges();
  const past: (() => void)[] = [];
  let selection: MemoryWorkbook["selection"];
  const sheetNames = (): string[] => [...[...tables.values()].map(({ sheet }) => sheet), ...sheets.keys()];
  const replaceTable = (table: TableContent): void => { tables.set(table.name.toLowerCase(), table); changes.note([table.name]); };
  return {
    sheets,
    get selection() {
      return selection;
    },
    tableNames: () => Promise.resolve([...tables.values()].map(({ name }) => name)),
    readTable: (name) => Promise.resolve(tables.get(name.toLowerCase())),
    selectTableRow: (name, row, column) => answer(() => { selection = selected(known(tables, name), row, column); }),
    writeTableCell: ({ table: name, row, column }, value) => answer(() => {
      const table = known(tables, name);
      replaceTable(withCell(table, row, column, value));
      past.push(() => { replaceTable(table); });
      return table.rows[row]?.[headingIndex(table.headings, column)] ?? "";
    }),
    writeSheet: (wanted, rows) => answer(() => {
      const name = freeSheetName(wanted, sheetNames());
      sheets.set(name, rectangular(rows));
      past.push(() => void sheets.delete(name));
      return name;
    }),
    onChange: (listener) => changes.listen(listener),
    edit: (name, row, column, value) => { replaceTable(withCell(known(tables, name), row, column, value)); },
    replaceTable,
    deleteTable: (name) => {
      tables.delete(name.toLowerCase());
      changes.note([name]);
    },
    undo: () => { past.pop()?.(); },
  };
}

function selected(table: TableContent, row: number, column: string | undefined): MemoryWorkbook["selection"] {
  if (!table.rows[row]) throw new Error(`The table ${table.name} has no row ${row + 1}.`);
  const heading = column === undefined ? undefined : table.headings[headingIndex(table.headings, column)];
  return { table: table.name, row, ...(heading === undefined ? {} : { column: String(heading) }) };
}

/** Turns a throw into a rejection, as a caller of the port expects. */
const answer = <T>(work: () => T): Promise<T> => new Promise((resolve) => { resolve(work()); });

function known(tables: ReadonlyMap<string, TableContent>, name: string): TableContent {
  const table = tables.get(name.toLowerCase());
  if (!table) throw new Error(`There is no table ${name}.`);
  return table;
}

function withCell(table: TableContent, row: number, column: string, value: CellValue): TableContent {
  const place = headingIndex(table.headings, column);
  if (place < 0 || !table.rows[row]) throw new Error(`${table.name} has no column ${column} or no row ${row + 1}.`);
  const rows = table.rows.map((cells, index) => (index === row ? cells.map((cell, at) => (at === place ? value : cell)) : cells));
  return { ...table, rows };
}
