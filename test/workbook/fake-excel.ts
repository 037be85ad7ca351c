/**
 * As much of Excel's request context as the adapter uses, with its rules: a property is readable only after load and sync,
 * what is written takes effect at sync, and a written text is read the way a person's typing is.
 */
import type { RunBatch } from "../../src/workbook/excel";
import type { CellValue, TableContent } from "../../src/workbook/port";

interface Cell {
  readonly value: CellValue;
  readonly format: string;
}

interface Sheet {
  readonly id: string;
  readonly name: string;
  readonly cells: Map<string, Cell>;
}

/** Stands at A1 of its sheet. */
interface Table {
  readonly id: string;
  readonly name: string;
  readonly sheet: string;
  readonly rows: number;
  readonly columns: number;
}

interface Area {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

type Handler = (event: Readonly<Record<string, string>>) => unknown;
type EventName = "worksheets.onChanged" | "worksheets.onCalculated" | "tables.onAdded" | "tables.onDeleted";

export class FakeExcel {
  sheets: Sheet[] = [];
  tables: Table[] = [];
  selection: Area | undefined;
  active: string | undefined;
  readonly handlers = new Map<EventName, Handler[]>();
  private readonly past: (readonly Sheet[])[] = [];

  constructor(contents: readonly TableContent[]) {
    for (const [index, { name, sheet, headings, rows }] of contents.entries()) {
      const added = this.addSheet(sheet);
      for (const [r, row] of [headings, ...rows].entries()) for (const [c, value] of row.entries()) added.cells.set(`${r},${c}`, { value, format: typeof value === "string" ? "@" : "General" });
      this.tables.push({ id: `{table-${index}}`, name, sheet: added.id, rows: rows.length, columns: headings.length });
    }
  }

  readonly run: RunBatch = async (batch) => batch(new FakeContext(this) as unknown as Excel.RequestContext);

  /** @throws Error as Excel does for a name that is taken or not allowed */
  addSheet(name: string): Sheet {
    if (this.sheets.some((sheet) => sheet.name.toLowerCase() === name.toLowerCase())) throw new Error("ItemAlreadyExists");
    if (name === "" || name.length > 31 || /[[\]:*?/\\]|^'|'$/.test(name)) throw new Error(`InvalidArgument: ${name}`);
    const sheet = { id: `{sheet-${this.sheets.length}}`, name, cells: new Map<string, Cell>() };
    this.sheets.push(sheet);
    return sheet;
  }

  /** Writes of one sync are one step that the user can take back. */
  beginStep(): void {
    this.past.push(this.sheets.map((sheet) => ({ ...sheet, cells: new Map(sheet.cells) })));
  }

  undo(): void {
    this.sheets = [...(this.past.pop() ?? this.sheets)];
  }

  fire(name: EventName, event: Readonly<Record<string, string>>): void {
    for (const handler of this.handlers.get(name) ?? []) handler(event);
  }

  edit(name: string, row: number, column: string, value: CellValue): void {
    const table = this.tables.find((each) => each.name === name);
    const sheet = this.sheets.find(({ id }) => id === table?.sheet);
    const place = [...Array(table?.columns ?? 0).keys()].find((c) => sheet?.cells.get(`0,${c}`)?.value === column);
    if (!sheet || place === undefined) throw new Error(`There is no column ${column} in ${name}.`);
    sheet.cells.set(`${row + 1},${place}`, { value, format: "General" });
    this.fire("worksheets.onChanged", { worksheetId: sheet.id });
  }

  deleteTable(name: string): void {
    const gone = this.tables.find((table) => table.name === name);
    this.tables = this.tables.filter((table) => table !== gone);
    this.fire("tables.onDeleted", { tableId: gone?.id ?? "", tableName: name, worksheetId: gone?.sheet ?? "" });
  }
}

/** One batch: what is asked for waits in a queue until sync. */
class FakeContext {
  readonly workbook: object;
  private queue: { readonly writes: boolean; readonly work: () => void }[] = [];

  constructor(readonly excel: FakeExcel) {
    this.workbook = { tables: new FakeTables(this, () => excel.tables), worksheets: new FakeSheets(this) };
  }

  ask(work: () => void, writes = false): void {
    this.queue.push({ writes, work });
  }

  async sync(): Promise<void> {
    await Promise.resolve();
    const asked = this.queue;
    this.queue = [];
    if (asked.some(({ writes }) => writes)) this.excel.beginStep();
    for (const { work } of asked) work();
  }
}

/** What is loaded becomes readable at the next sync, and stays as it was then. */
class Loaded {
  private readonly values = new Map<string, unknown>();

  constructor(readonly context: FakeContext, private readonly fetch: (name: string) => unknown) {}

  load(names: string): void {
    this.context.ask(() => {
      for (const name of names.split(",").map((each) => each.trim())) this.values.set(name, this.fetch(name));
    });
  }

  read<T>(name: string): T {
    if (!this.values.has(name)) throw new Error(`PropertyNotLoaded: ${name}. Call load and sync before reading it.`);
    return this.values.get(name) as T;
  }
}

class FakeEvents {
  constructor(private readonly context: FakeContext, private readonly name: EventName) {}

  add(handler: Handler): void {
    this.context.ask(() => {
      const { handlers } = this.context.excel;
      handlers.set(this.name, [...(handlers.get(this.name) ?? []), handler]);
    });
  }
}

class FakeTables {
  readonly onAdded: FakeEvents;
  readonly onDeleted: FakeEvents;
  private readonly loaded: Loaded;

  constructor(private readonly context: FakeContext, private readonly all: () => readonly Table[]) {
    this.onAdded = new FakeEvents(context, "tables.onAdded");
    this.onDeleted = new FakeEvents(context, "tables.onDeleted");
    this.loaded = new Loaded(context, () => all().map(({ name }) => ({ name })));
  }

  get items(): readonly { readonly name: string }[] {
    return this.loaded.read("items/name");
  }

  load(names: string): this {
    this.loaded.load(names);
    return this;
  }

  getItemOrNullObject(key: string): FakeTable {
    return new FakeTable(this.context, () => this.all().find(({ id, name }) => id === key || name.toLowerCase() === key.toLowerCase()));
  }
}

class FakeTable {
  private readonly loaded: Loaded;

  constructor(private readonly context: FakeContext, private readonly find: () => Table | undefined) {
    this.loaded = new Loaded(context, (name) => {
      const table = find();
      return { name: table?.name, showHeaders: true }[name];
    });
    context.ask(() => { this.found = find() !== undefined; });
  }

  private found: boolean | undefined;

  get isNullObject(): boolean {
    if (this.found === undefined) throw new Error("PropertyNotLoaded: isNullObject");
    return !this.found;
  }

  get name(): string {
    return this.loaded.read("name");
  }

  get showHeaders(): boolean {
    return this.loaded.read("showHeaders");
  }

  get worksheet(): FakeSheet {
    return new FakeSheet(this.context, () => this.context.excel.sheets.find(({ id }) => id === this.must().sheet));
  }

  load(names: string): this {
    this.loaded.load(names);
    return this;
  }

  getHeaderRowRange(): FakeRange {
    return new FakeRange(this.context, () => ({ sheet: this.must().sheet, row: 0, column: 0, rows: 1, columns: this.must().columns }));
  }

  getDataBodyRange(): FakeRange {
    return new FakeRange(this.context, () => ({ sheet: this.must().sheet, row: 1, column: 0, rows: this.must().rows, columns: this.must().columns }));
  }

  private must(): Table {
    const table = this.find();
    if (!table) throw new Error("ItemNotFound");
    return table;
  }
}

class FakeSheets {
  readonly onChanged: FakeEvents;
  readonly onCalculated: FakeEvents;
  private readonly loaded: Loaded;

  constructor(private readonly context: FakeContext) {
    this.onChanged = new FakeEvents(context, "worksheets.onChanged");
    this.onCalculated = new FakeEvents(context, "worksheets.onCalculated");
    this.loaded = new Loaded(context, () => context.excel.sheets.map(({ name }) => ({ name })));
  }

  get items(): readonly { readonly name: string }[] {
    return this.loaded.read("items/name");
  }

  load(names: string): this {
    this.loaded.load(names);
    return this;
  }

  add(name: string): FakeSheet {
    this.context.ask(() => this.context.excel.addSheet(name), true);
    return new FakeSheet(this.context, () => this.context.excel.sheets.find((sheet) => sheet.name === name));
  }

  getItemOrNullObject(key: string): FakeSheet {
    return new FakeSheet(this.context, () => this.context.excel.sheets.find(({ id, name }) => id === key || name === key));
  }
}

class FakeSheet {
  readonly tables: FakeTables;
  private readonly loaded: Loaded;
  private found: boolean | undefined;

  constructor(private readonly context: FakeContext, private readonly find: () => Sheet | undefined) {
    this.tables = new FakeTables(context, () => context.excel.tables.filter(({ sheet }) => sheet === find()?.id));
    this.loaded = new Loaded(context, () => find()?.name);
    context.ask(() => { this.found = find() !== undefined; });
  }

  get isNullObject(): boolean {
    if (this.found === undefined) throw new Error("PropertyNotLoaded: isNullObject");
    return !this.found;
  }

  get name(): string {
    return this.loaded.read("name");
  }

  load(names: string): this {
    this.loaded.load(names);
    return this;
  }

  activate(): void {
    this.context.ask(() => { this.context.excel.active = this.find()?.id; });
  }

  getRangeByIndexes(row: number, column: number, rows: number, columns: number): FakeRange {
    return new FakeRange(this.context, () => ({ sheet: this.find()?.id ?? "", row, column, rows, columns }));
  }
}

class FakeRange {
  private readonly loaded: Loaded;

  constructor(private readonly context: FakeContext, private readonly area: () => Area) {
    this.loaded = new Loaded(context, (name) => ({ values: this.shown(), rowCount: area().rows })[name]);
  }

  get values(): CellValue[][] {
    return this.loaded.read("values");
  }

  set values(values: readonly (readonly CellValue[])[]) {
    this.put(values, (old, value) => entered(value, old.format));
  }

  set numberFormat(formats: readonly (readonly string[])[]) {
    this.put(formats, (old, format) => ({ ...old, format }));
  }

  get rowCount(): number {
    return this.loaded.read("rowCount");
  }

  load(names: string): this {
    this.loaded.load(names);
    return this;
  }

  getRow(row: number): FakeRange {
    return new FakeRange(this.context, () => ({ ...this.area(), row: this.area().row + row, rows: 1 }));
  }

  getCell(row: number, column: number): FakeRange {
    return new FakeRange(this.context, () => ({ ...this.area(), row: this.area().row + row, column: this.area().column + column, rows: 1, columns: 1 }));
  }

  select(): void {
    this.context.ask(() => {
      if (this.context.excel.active !== this.area().sheet) throw new Error("InvalidOperation: the sheet of the selection is not in front.");
      this.context.excel.selection = this.area();
    });
  }

  private put<T>(values: readonly (readonly T[])[], change: (old: Cell, value: T) => Cell): void {
    this.context.ask(() => {
      const { sheet: id, row, column, rows, columns } = this.area();
      const sheet = this.context.excel.sheets.find((each) => each.id === id);
      if (!sheet || values.length !== rows || values.some((each) => each.length !== columns)) throw new Error("InvalidArgument: the values do not fit the range.");
      for (const [r, cells] of values.entries()) {
        for (const [c, value] of cells.entries()) {
          const key = `${row + r},${column + c}`;
          sheet.cells.set(key, change(sheet.cells.get(key) ?? { value: "", format: "General" }, value));
        }
      }
      this.context.excel.fire("worksheets.onChanged", { worksheetId: id, triggerSource: "ThisLocalAddin" });
    }, true);
  }

  private shown(): CellValue[][] {
    const { sheet: id, row, column, rows, columns } = this.area();
    const sheet = this.context.excel.sheets.find((each) => each.id === id);
    return Array.from({ length: rows }, (_, r) => Array.from({ length: columns }, (__, c) => sheet?.cells.get(`${row + r},${column + c}`)?.value ?? ""));
  }
}

const SOME_DATE = 46_098; // day number of some 16 March, which is what "3/16" becomes
const BROKEN_TEXT = "#".repeat(255); // what Excel shows of a long text in text format

/** Reads a written value as typing is read: an apostrophe in front is eaten, text format keeps text, all else is taken for a number, date or formula where it can be. */
function entered(value: CellValue, format: string): Cell {
  if (typeof value !== "string") return { value, format };
  if (value.startsWith("'")) return { value: value.slice(1), format };
  if (format === "@") return { value: value.length > 255 ? BROKEN_TEXT : value, format };
  if (value.startsWith("=") || value.startsWith("+") || value.startsWith("@")) return { value: "#NAME?", format };
  if (/^\d{1,2}[/:]\d{1,2}$/.test(value)) return { value: SOME_DATE, format };
  if (/^(true|false)$/i.test(value)) return { value: value.toLowerCase() === "true", format };
  return { value: value !== "" && Number.isFinite(Number(value)) ? Number(value) : value, format };
}
