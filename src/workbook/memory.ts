/** A workbook in memory, for tests and for pages without a spreadsheet. */
import { cellAddress, parseCellAddress, sheetPrefix } from "./address";
import { gatherChanges } from "./change-gathering";
import { type ReadySheet, readySheet } from "./sheet-content";
import { freeSheetName } from "./sheet-name";
import { headingIndex, newRowCells, sayFormulaRefused, sayRowGone, type CellValue, type FormulaChange, type TableContent, type TablePlace, type WorkbookPort } from "./port";
import { readyParts, type ReadyTable } from "./new-table";
import { telling } from "./telling";

export interface MemoryWorkbook extends WorkbookPort {
  /** Edits one cell as the user would; row 0 is the first row under the headings. */
  edit(table: string, row: number, column: string, value: CellValue): void;
  /** Puts a table there, in place of the one with its name, as the user would. */
  replaceTable(table: TableContent): void;
  /** Takes a table away, as the user would. */
  deleteTable(name: string): void;
  /** Takes back what the port wrote last. */
  undo(): void;
  /** Selects a cell of a table, or a cell of a sheet by its address, as the user would. */
  select(place: TablePlace | SheetPlace | undefined): void;
  /** What was written into new sheets, by sheet. */
  readonly sheets: ReadonlyMap<string, ReadySheet["rows"]>;
  readonly contents: ReadonlyMap<string, ReadySheet>;
  /** What writeTables made, with its lists. */
  readonly made: ReadonlyMap<string, ReadyTable>;
  /** By address with sheet: "Sheet1!B2". */
  readonly formulas: ReadonlyMap<string, string>;
  readonly selected: SelectedRow | undefined;
  /** Names of all sheets, as they stand. */
  sheetList(): readonly string[];
  /** The sheet that was shown last. */
  readonly front: string | undefined;
}

interface SheetPlace {
  readonly sheet: string;
  readonly address: string;
}

interface SelectedRow {
  readonly table: string;
  readonly row: number;
  readonly column?: string;
}

/** @param name of the workbook */
export function memoryWorkbook(initial: readonly TableContent[] = [], name = "Workbook"): MemoryWorkbook {
  const book = new Book(initial);
  return {
    ...readingPart(book),
    ...writingPart(book),
    ...userPart(book),
    contents: book.contents,
    made: book.made,
    formulas: book.formulas,
    sheetList: () => book.sheetNames(),
    get sheets() {
      return new Map([...book.contents].map(([sheet, { rows }]) => [sheet, rows]));
    },
    get selected() {
      return book.selection && "table" in book.selection ? book.selection : undefined;
    },
    get front() {
      return book.front;
    },
    workbookName: () => Promise.resolve(name),
  };
}

/** What the workbook holds, and who is told of it. */
class Book {
  readonly contents = new Map<string, ReadySheet>();
  readonly made = new Map<string, ReadyTable>();
  readonly formulas = new Map<string, string>();
  readonly changes = gatherChanges();
  readonly selections = telling<TablePlace | undefined>();
  readonly past: (() => void)[] = [];
  readonly tables: Map<string, TableContent>;
  /** Sheets as they stand behind each other. */
  readonly order: string[];
  selection: SelectedRow | SheetPlace | undefined;
  front: string | undefined;

  constructor(initial: readonly TableContent[]) {
    this.tables = new Map(initial.map((table) => [table.name.toLowerCase(), table]));
    this.order = initial.map(({ sheet }) => sheet);
  }

  sheetNames(): string[] {
    const there = new Set([...[...this.tables.values()].map(({ sheet }) => sheet), ...this.contents.keys()]);
    return [...there].sort((a, b) => this.order.indexOf(a) - this.order.indexOf(b));
  }

  known(name: string): TableContent {
    const table = this.tables.get(name.toLowerCase());
    if (!table) throw new Error(`There is no table ${name}.`);
    return table;
  }

  select(place: SelectedRow | SheetPlace | undefined): void {
    this.selection = place;
    this.front = place && ("table" in place ? this.known(place.table).sheet : place.sheet);
    this.selections.tell(placeOf(this));
  }

  replaceTable(table: TableContent): void {
    this.tables.set(table.name.toLowerCase(), table);
    this.changes.note([table.name]);
  }

  deleteTable(name: string): void {
    this.tables.delete(name.toLowerCase());
    this.changes.note([name]);
  }

  /** @returns takes the sheet away again */
  putSheet(sheet: string, content: ReadySheet): () => void {
    const formulas = (content.formulas ?? []).map(({ row, column, formula }) => [sheetPrefix(sheet) + cellAddress(row, column), formula] as const);
    this.contents.set(sheet, content);
    if (!this.order.includes(sheet)) this.order.push(sheet);
    for (const [address, formula] of formulas) this.formulas.set(address, formula);
    return () => {
      this.contents.delete(sheet);
      for (const [address] of formulas) this.formulas.delete(address);
    };
  }
}

type ReadingPart = Pick<WorkbookPort, "formulaAt" | "sheetNames" | "tableNames" | "readTable" | "selectTableRow" | "selection" | "onSelect" | "onChange">;

const readingPart = (book: Book): ReadingPart => ({
  sheetNames: () => Promise.resolve(book.sheetNames()),
  tableNames: () => Promise.resolve([...book.tables.values()].map((table) => table.name)),
  readTable: (wanted) => Promise.resolve(book.tables.get(wanted.toLowerCase())),
  selectTableRow: (wanted, row, column) => answer(() => { book.select(selectedRow(book.known(wanted), row, column)); }),
  selection: () => answer(() => placeOf(book)),
  formulaAt: (sheet, address) => answer(() => book.formulas.get(sheetPrefix(book.sheetNames().find((name) => name.toLowerCase() === sheet.toLowerCase()) ?? sheet) + address)),
  onSelect: (listener) => book.selections.listen(listener),
  onChange: (listener) => book.changes.listen(listener),
});

type WritingPart = Pick<WorkbookPort, "writeTableCell" | "appendTableRow" | "writeSheet" | "writeTables" | "insertFormula">;

const writingPart = (book: Book): WritingPart => ({
  writeTableCell: ({ table: wanted, row, column }, value) => answer(() => {
    const table = book.known(wanted);
    book.replaceTable(withCell(table, row, column, value));
    book.past.push(() => { book.replaceTable(table); });
    return table.rows[row]?.[headingIndex(table.headings, column)] ?? "";
  }),
  appendTableRow: (wanted, cells) => answer(() => {
    const table = book.known(wanted);
    book.replaceTable({ ...table, rows: [...table.rows, newRowCells(table.name, table.headings, cells)] });
    book.past.push(() => { book.replaceTable(table); });
    return table.rows.length;
  }),
  writeSheet: (wanted, content) => answer(() => {
    const ready = readySheet(content);
    const sheet = freeSheetName(wanted, book.sheetNames());
    book.past.push(book.putSheet(sheet, ready));
    book.front = sheet;
    return sheet;
  }),
  writeTables: (parts, changes = []) => answer(() => { writeParts(book, parts, changes); }),
  insertFormula: (formula) => answer(() => {
    const address = blankCell(book);
    book.formulas.set(address, formula);
    book.past.push(() => void book.formulas.delete(address));
    return address;
  }),
});

function writeParts(book: Book, parts: Parameters<WorkbookPort["writeTables"]>[0], changes: readonly FormulaChange[]): void {
  const ready = readyParts(parts, { tables: [...book.tables.keys()], sheets: book.sheetNames() });
  const undone = ready.map(({ name: sheet, content, table }) => {
    const takeSheet = book.putSheet(sheet, content);
    if (!table) return takeSheet;
    const { name, headings, rows } = table;
    book.replaceTable({ name, sheet, headings, rows, firstRow: 2 });
    book.made.set(name, table);
    return () => {
      book.deleteTable(name);
      takeSheet();
    };
  });
  book.front = ready[0]?.name;
  const changed = changes.filter(({ sheet, address, from }) => book.formulas.get(sheetPrefix(sheet) + address) === from);
  for (const { sheet, address, to } of changed) book.formulas.set(sheetPrefix(sheet) + address, to);
  book.past.push(() => {
    for (const { sheet, address, from } of changed) book.formulas.set(sheetPrefix(sheet) + address, from);
    for (const undo of undone) undo();
  });
}

const userPart = (book: Book): Pick<MemoryWorkbook, "edit" | "select" | "replaceTable" | "deleteTable" | "undo"> => ({
  edit: (wanted, row, column, value) => { book.replaceTable(withCell(book.known(wanted), row, column, value)); },
  select: (place) => { book.select(place); },
  replaceTable: (table) => { book.replaceTable(table); },
  deleteTable: (name) => { book.deleteTable(name); },
  undo: () => { book.past.pop()?.(); },
});

function selectedRow(table: TableContent, row: number, column: string | undefined): SelectedRow {
  if (!table.rows[row]) throw new Error(sayRowGone(table.name));
  const heading = column === undefined ? undefined : table.headings[headingIndex(table.headings, column)];
  return { table: table.name, row, ...(heading === undefined ? {} : { column: String(heading) }) };
}

/** A selected row stands for its first cell, the active one. */
function placeOf({ tables, selection }: Book): TablePlace | undefined {
  const table = selection && "table" in selection ? tables.get(selection.table.toLowerCase()) : undefined;
  if (!table || !selection || !("table" in selection)) return undefined;
  return { table: table.name, row: selection.row, column: String(table.headings[headingIndex(table.headings, selection.column ?? "")] ?? table.headings[0] ?? "") };
}

function blankCell({ contents, formulas, selection }: Book): string {
  if (!selection) throw new Error(sayFormulaRefused.several);
  if ("table" in selection) throw new Error(sayFormulaRefused.table);
  const place = parseCellAddress(selection.address);
  if (!place) throw new Error(sayFormulaRefused.several);
  const own = cellAddress(place.row, place.column);
  const address = sheetPrefix(selection.sheet) + own;
  if (formulas.has(address) || (contents.get(selection.sheet)?.rows[place.row]?.[place.column] ?? "") !== "") throw new Error(sayFormulaRefused.filled(own));
  return address;
}

/** Turns a throw into a rejection, as a caller of the port expects. */
const answer = <T>(work: () => T): Promise<T> => new Promise((resolve) => { resolve(work()); });

function withCell(table: TableContent, row: number, column: string, value: CellValue): TableContent {
  const place = headingIndex(table.headings, column);
  if (!table.rows[row]) throw new Error(sayRowGone(table.name));
  if (place < 0) throw new Error(`The table ${table.name} has no column ${column}.`);
  const rows = table.rows.map((cells, index) => (index === row ? cells.map((cell, at) => (at === place ? value : cell)) : cells));
  return { ...table, rows };
}
