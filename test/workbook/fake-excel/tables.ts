import { FakeError, type Area, type Table } from "./book";
import { Loaded, namesIn, Presence, type FakeContext } from "./context";
import { FakeEvents } from "./events";
import { FakeRange } from "./range";
import { FakeSheet } from "./sheets";

export class FakeTables {
  readonly onAdded: FakeEvents;
  readonly onDeleted: FakeEvents;
  private readonly loaded: Loaded;
  private itemNames: readonly string[] = [];

  constructor(private readonly context: FakeContext, private readonly all: () => readonly Table[]) {
    this.onAdded = new FakeEvents(context, "tables.onAdded");
    this.onDeleted = new FakeEvents(context, "tables.onDeleted");
    this.loaded = new Loaded(context, () => all().map(({ id }) => {
      const table = new FakeTable(context, () => context.book.tables.find((each) => each.id === id));
      table.preload(this.itemNames);
      return table;
    }));
  }

  get items(): readonly FakeTable[] { return this.loaded.read("items"); }

  load(names: string): this {
    this.itemNames = namesIn(names).map((name) => name.replace(/^items\//, ""));
    this.loaded.load("items");
    return this;
  }

  getItem(name: string): FakeTable { return this.getItemOrNullObject(name); }

  getItemOrNullObject(key: string): FakeTable {
    return new FakeTable(this.context, () => this.all().find(({ id, name }) => id === key || name.toLowerCase() === key.toLowerCase()));
  }

  add(range: FakeRange, hasHeaders: boolean): FakeTable {
    let made: string | undefined;
    this.context.write(() => {
      const area: Area = range.must();
      if (!hasHeaders || this.all().some((table) => table.sheet === area.sheet)) throw new FakeError("InvalidArgument", "a table stands there");
      const table = this.context.book.addTable(area);
      made = table.id;
      this.context.book.fire("tables.onAdded", { tableId: table.id, worksheetId: table.sheet });
    });
    return new FakeTable(this.context, () => this.context.book.tables.find(({ id }) => id === made));
  }
}

export class FakeTable {
  private readonly loaded: Loaded;
  private readonly presence: Presence;

  constructor(private readonly context: FakeContext, private readonly find: () => Table | undefined) {
    this.loaded = new Loaded(context, (name) => {
      const table = find();
      const parts: Readonly<Record<string, unknown>> = { name: table?.name, id: table?.id, showHeaders: table?.showHeaders, "worksheet/id": table?.sheet };
      if (!(name in parts)) throw new FakeError("InvalidArgument", name);
      return parts[name];
    });
    this.presence = new Presence(context, () => find() !== undefined);
  }

  get isNullObject(): boolean { return this.presence.isNullObject; }
  get id(): string { return this.loaded.read("id"); }
  get showHeaders(): boolean { return this.loaded.read("showHeaders"); }

  get name(): string { return this.loaded.read("name"); }
  set name(name: string) {
    this.context.write(() => { this.context.book.renameTable(this.must(), name); });
  }

  get worksheet(): FakeSheet {
    const read = (): string => this.loaded.read("worksheet/id");
    const sheet = new FakeSheet(this.context, () => this.context.book.sheets.find(({ id }) => id === this.must().sheet));
    return Object.defineProperty(sheet, "id", { get: read });
  }

  preload(names: readonly string[]): void { this.loaded.preload(names); }

  load(names: string): this {
    this.loaded.load(names);
    return this;
  }

  getHeaderRowRange(): FakeRange {
    return new FakeRange(this.context, () => {
      const { sheet, row, column, columns, showHeaders } = this.must();
      if (!showHeaders) throw new FakeError("ItemNotFound", "the table shows no headings");
      return { sheet, row, column, rows: 1, columns };
    });
  }

  getDataBodyRange(): FakeRange {
    return new FakeRange(this.context, () => {
      const { sheet, row, column, rows, columns } = this.must();
      return { sheet, row: row + 1, column, rows, columns };
    });
  }

  /** Excel shifts down what stands under the table; nothing does in these tests. */
  get rows(): { add(): { getRange(): FakeRange } } {
    return {
      add: () => {
        this.context.write(() => { this.context.book.growTable(this.must()); });
        const last = new FakeRange(this.context, () => {
          const { sheet, row, column, rows, columns } = this.must();
          return { sheet, row: row + rows, column, rows: 1, columns };
        });
        return { getRange: () => last };
      },
    };
  }

  private must(): Table {
    const table = this.find();
    if (!table) throw new FakeError("ItemNotFound");
    return table;
  }
}
