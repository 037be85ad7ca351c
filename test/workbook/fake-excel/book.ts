/** What the stand-in for Excel holds, and what its user can do to it. */
import { cellAddress } from "../../../src/workbook/address";
import type { CellArea, CellStyle, CellValue, ChoiceList, PageSetup, SheetPicture } from "../../../src/workbook/document";
import type { TableContent } from "../../../src/workbook/port";

export interface Cell {
  readonly value: CellValue;
  readonly format: string;
  /** With "=". */
  readonly formula?: string;
  /** The cell whose formula fills this one; the cell itself where a formula fills several. */
  readonly filledBy?: { readonly row: number; readonly column: number };
}

export interface Sheet {
  readonly id: string;
  readonly name: string;
  /** By "row,column", from 0. */
  readonly cells: Map<string, Cell>;
  readonly looks: Map<string, CellStyle>;
  /** Points. */
  readonly widths: Map<number, number>;
  readonly heights: Map<number, number>;
  readonly merges: CellArea[];
  readonly pictures: (SheetPicture & { readonly left: number; readonly top: number })[];
  readonly lists: (ChoiceList & { readonly alert?: string })[];
  page: PageSetup | undefined;
  isProtected: boolean;
  /** Rows that stay in sight. */
  frozenRows: number;
}

export interface Table {
  readonly id: string;
  name: string;
  readonly sheet: string;
  /** Of the heading row. */
  readonly row: number;
  readonly column: number;
  /** Under the heading row. */
  rows: number;
  readonly columns: number;
  showHeaders: boolean;
}

export interface Area extends CellArea {
  readonly sheet: string;
}

/** What Excel rejects a sync with: a code that add-ins decide by, and a message that they do not. */
export class FakeError extends Error {
  constructor(readonly code: string, more = "") {
    super(`${code} ${more}`.trim());
  }
}

type Handler = (event: Readonly<Record<string, string>>) => unknown;
export type EventName = "worksheets.onChanged" | "worksheets.onCalculated" | "worksheets.onDeleted" | "tables.onAdded" | "tables.onDeleted" | "workbook.onSelectionChanged";

interface State {
  readonly sheets: Sheet[];
  readonly tables: Table[];
}

export class FakeBook {
  sheets: Sheet[] = [];
  tables: Table[] = [];
  definedNames: string[] = [];
  selection: Area | undefined;
  /** Id of the sheet in front. */
  active: string | undefined;
  name = "Shop.xlsx";
  isReadOnly = false;
  isProtected = false;
  readonly handlers = new Map<EventName, Set<Handler>>();
  private readonly past: State[] = [];
  private made = 0;

  constructor(contents: readonly TableContent[]) {
    for (const { name, sheet, headings, rows } of contents) {
      const added = this.addSheet(sheet);
      for (const [r, row] of [headings, ...rows].entries()) {
        for (const [c, value] of row.entries()) if (value !== "") added.cells.set(`${r},${c}`, { value, format: typeof value === "string" ? "@" : "General" });
      }
      this.addTable({ sheet: added.id, row: 0, column: 0, rows: rows.length + 1, columns: headings.length }, name);
    }
    if (this.sheets.length === 0) this.addSheet("Sheet1");
    this.active = this.sheets[0]?.id;
    this.selection = { sheet: this.active ?? "", row: 0, column: 0, rows: 1, columns: 1 };
  }

  /** @throws FakeError as Excel does for a name that is taken or not allowed */
  addSheet(name: string): Sheet {
    if (this.sheets.some((sheet) => sheet.name.toLowerCase() === name.toLowerCase())) throw new FakeError("ItemAlreadyExists", name);
    if (name === "" || name.length > 31 || /[[\]:*?/\\]|^'|'$/.test(name)) throw new FakeError("InvalidArgument", name);
    const sheet: Sheet = {
      id: `{sheet-${++this.made}}`, name, cells: new Map(), looks: new Map(), widths: new Map(), heights: new Map(),
      merges: [], pictures: [], lists: [], page: undefined, isProtected: false, frozenRows: 0,
    };
    this.sheets.push(sheet);
    return sheet;
  }

  /** @param area with the heading row */
  addTable(area: Area, name = `Table${++this.made}`): Table {
    const table: Table = { id: `{table-${++this.made}}`, name, sheet: area.sheet, row: area.row, column: area.column, rows: area.rows - 1, columns: area.columns, showHeaders: true };
    this.tables.push(table);
    return table;
  }

  growTable(table: Table): void { table.rows += 1; }

  renameTable(table: Table, name: string): void {
    if ([...this.tables.map((each) => each.name), ...this.definedNames].some((taken) => taken.toLowerCase() === name.toLowerCase())) throw new FakeError("InvalidArgument", name);
    table.name = name;
  }

  sheetNamed(name: string): Sheet {
    const sheet = this.sheets.find((each) => each.name === name);
    if (!sheet) throw new Error(`The test has no sheet ${name}.`);
    return sheet;
  }

  tableNamed(name: string): Table {
    const table = this.tables.find((each) => each.name === name);
    if (!table) throw new Error(`The test has no table ${name}.`);
    return table;
  }

  /** Keeps what is there, so that the user can come back to it. */
  beginStep(): void {
    this.past.push(structuredClone({ sheets: this.sheets, tables: this.tables }));
  }

  undo(): void {
    const before = this.past.pop();
    if (!before) return;
    this.sheets = before.sheets;
    this.tables = before.tables;
    for (const { id } of this.sheets) this.fire("worksheets.onChanged", { worksheetId: id });
  }

  fire(name: EventName, event: Readonly<Record<string, string>>): void {
    for (const handler of [...(this.handlers.get(name) ?? [])]) handler(event);
  }

  /** Types into a cell of a table, with all that Excel makes of typing. */
  edit(name: string, row: number, heading: string, value: CellValue): void {
    const table = this.tableNamed(name);
    const sheet = this.sheets.find(({ id }) => id === table.sheet);
    const column = [...Array(table.columns).keys()].find((c) => sheet?.cells.get(`${table.row},${table.column + c}`)?.value === heading);
    if (!sheet || column === undefined) throw new Error(`There is no column ${heading} in ${name}.`);
    this.type(sheet, { row: table.row + 1 + row, column: table.column + column }, value);
  }

  type(sheet: Sheet, { row, column }: { readonly row: number; readonly column: number }, value: CellValue): void {
    const key = `${row},${column}`;
    sheet.cells.set(key, entered(value, sheet.cells.get(key)?.format ?? "General"));
    this.fire("worksheets.onChanged", { worksheetId: sheet.id });
  }

  deleteTable(name: string): void {
    const gone = this.tableNamed(name);
    this.tables = this.tables.filter((table) => table !== gone);
    this.fire("tables.onDeleted", { tableId: gone.id, tableName: name, worksheetId: gone.sheet });
  }

  select(area: Area): void {
    this.active = area.sheet;
    this.selection = area;
    this.fire("workbook.onSelectionChanged", {});
  }

  /** What a formula shows, blanks as "". */
  shown(sheet: Sheet, { row, column, rows, columns }: CellArea): CellValue[][] {
    return Array.from({ length: rows }, (_, r) => Array.from({ length: columns }, (__, c) => sheet.cells.get(`${row + r},${column + c}`)?.value ?? ""));
  }

  looks(name: string): Readonly<Record<string, CellStyle>> {
    const looks = [...this.sheetNamed(name).looks].map(([key, look]) => {
      const [row = 0, column = 0] = key.split(",").map(Number);
      return [cellAddress(row, column), look] as const;
    });
    return Object.fromEntries(looks.filter(([, look]) => Object.keys(look).length > 0));
  }
}

const SOME_DATE = 46_098; // day number of some 16 March, which is what "3/16" becomes
const BROKEN_TEXT = "#".repeat(255); // what Excel shows of a long text in text format

/** Reads a written value as typing is read: an apostrophe in front is eaten, text format keeps text, all else is taken for a number, date or formula where it can be. */
export function entered(value: CellValue, format: string): Cell {
  if (typeof value !== "string") return { value, format };
  if (value.startsWith("'")) return { value: value.slice(1), format };
  if (format === "@") return { value: value.length > 255 ? BROKEN_TEXT : value, format };
  if (/^[=+@]/.test(value)) return { value: "#NAME?", format, formula: value };
  if (/^\d{1,2}[/:-]\d{1,2}([/:-]\d{1,4})?$/.test(value)) return { value: SOME_DATE, format: "m/d/yyyy" };
  if (/^(true|false)$/i.test(value)) return { value: value.toLowerCase() === "true", format };
  return { value: value !== "" && Number.isFinite(Number(value)) ? Number(value) : value, format };
}
