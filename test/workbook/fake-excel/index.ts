/**
 * As much of Excel's request context as the adapter uses, with its rules: a property is readable only after load and sync,
 * what is written takes effect at sync, a written text is read the way a person's typing is, own writes fire events,
 * requests and answers have a largest size, protected sheets refuse, and an undo takes back a sync or a run.
 */
import type { RunBatch } from "../../../src/workbook/excel";
import { FakeBook, FakeError } from "./book";
import { FakeContext, FakeHost, Loaded } from "./context";
import { FakeEvents } from "./events";
import { FakeRange } from "./range";
import { FakeSheets } from "./sheets";
import { FakeTables } from "./tables";

export class FakeExcel extends FakeBook {
  readonly host = new FakeHost();

  readonly run: RunBatch = (batch, { oneUndoStep = false, previous } = {}) =>
    batch(previous ?? (new FakeRequestContext(this, this.host, oneUndoStep) as unknown as Excel.RequestContext));
}

class FakeRequestContext extends FakeContext {
  readonly workbook = new FakeWorkbook(this);
}

class FakeWorkbook {
  readonly tables: FakeTables;
  readonly worksheets: FakeSheets;
  readonly onSelectionChanged: FakeEvents;
  readonly protection: { load(names: string): void; readonly protected: boolean };
  readonly names: { load(names: string): void; readonly items: readonly { readonly name: string }[] };
  private readonly loaded: Loaded;

  constructor(private readonly context: FakeContext) {
    const { book } = context;
    this.tables = new FakeTables(context, () => book.tables);
    this.worksheets = new FakeSheets(context);
    this.onSelectionChanged = new FakeEvents(context, "workbook.onSelectionChanged");
    const loaded = (this.loaded = new Loaded(context, (name) => ({ name: book.name, readOnly: book.isReadOnly, protected: book.isProtected, "items/name": book.definedNames.map((each) => ({ name: each })) })[name]));
    this.protection = { load: (names) => { loaded.load(names); }, get protected(): boolean { return loaded.read("protected"); } };
    this.names = { load: (names) => { loaded.load(names); }, get items(): readonly { readonly name: string }[] { return loaded.read("items/name"); } };
  }

  get name(): string { return this.loaded.read("name"); }
  get readOnly(): boolean { return this.loaded.read("readOnly"); }
  load(names: string): void { this.loaded.load(names); }

  getActiveCell(): FakeRange {
    return this.getSelectedRange().getCell(0, 0);
  }

  getSelectedRange(): FakeRange {
    return new FakeRange(this.context, () => {
      if (!this.context.book.selection) throw new FakeError("InvalidSelection");
      return this.context.book.selection;
    });
  }
}
