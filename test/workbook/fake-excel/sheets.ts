import { parseCellAddress } from "../../../src/workbook/address";
import type { PageSetup } from "../../../src/workbook/document";
import { FakeError, type Sheet } from "./book";
import { Loaded, namesIn, Presence, type FakeContext } from "./context";
import { FakeEvents } from "./events";
import { FakeRange } from "./range";
import { FakeTables } from "./tables";

export class FakeSheets {
  readonly onChanged: FakeEvents;
  readonly onCalculated: FakeEvents;
  readonly onDeleted: FakeEvents;
  private readonly loaded: Loaded;
  private itemNames: readonly string[] = [];

  constructor(private readonly context: FakeContext) {
    this.onChanged = new FakeEvents(context, "worksheets.onChanged");
    this.onCalculated = new FakeEvents(context, "worksheets.onCalculated");
    this.onDeleted = new FakeEvents(context, "worksheets.onDeleted");
    this.loaded = new Loaded(context, () => context.book.sheets.map(({ id }) => {
      const sheet = new FakeSheet(context, () => context.book.sheets.find((each) => each.id === id));
      sheet.preload(this.itemNames);
      return sheet;
    }));
  }

  get items(): readonly FakeSheet[] { return this.loaded.read("items"); }

  load(names: string): this {
    this.itemNames = namesIn(names).map((name) => name.replace(/^items\//, "").replace("protection/", ""));
    this.loaded.load("items");
    return this;
  }

  add(name: string): FakeSheet {
    let made: string | undefined;
    this.context.write(() => {
      if (this.context.book.isProtected) throw new FakeError("AccessDenied");
      made = this.context.book.addSheet(name).id;
    });
    return new FakeSheet(this.context, () => this.context.book.sheets.find(({ id }) => id === made));
  }

  getActiveWorksheet(): FakeSheet {
    return new FakeSheet(this.context, () => this.context.book.sheets.find(({ id }) => id === this.context.book.active));
  }
}

export class FakeSheet {
  readonly tables: FakeTables;
  readonly pageLayout: FakeLayout;
  readonly protection: { load(names: string): void; readonly protected: boolean };
  readonly shapes: { addImage(png: string): FakeShape };
  readonly horizontalPageBreaks: { add(cell: string): void };
  private readonly loaded: Loaded;
  private readonly presence: Presence;

  constructor(private readonly context: FakeContext, private readonly find: () => Sheet | undefined) {
    this.tables = new FakeTables(context, () => context.book.tables.filter(({ sheet }) => sheet === find()?.id));
    this.loaded = new Loaded(context, (name) => ({ name: find()?.name, protected: find()?.isProtected })[name]);
    this.presence = new Presence(context, () => find() !== undefined);
    this.pageLayout = new FakeLayout((change) => { context.write(() => { this.must().page = { ...this.must().page, ...change }; }); });
    const { loaded } = this;
    this.protection = { load: (names) => { loaded.load(names); }, get protected(): boolean { return loaded.read("protected"); } };
    this.horizontalPageBreaks = { add: (cell) => { context.write(() => { this.must().page = { ...this.must().page, breaks: [...(this.must().page?.breaks ?? []), (parseCellAddress(cell) ?? { row: NaN }).row] }; }); } };
    this.shapes = { addImage: (png) => new FakeShape(context, () => this.must(), png) };
  }

  get isNullObject(): boolean { return this.presence.isNullObject; }
  get name(): string { return this.loaded.read("name"); }

  load(names: string): this {
    this.loaded.load(names);
    return this;
  }

  preload(names: readonly string[]): void { this.loaded.preload(names); }

  /** From the first cell to the last that holds anything; a blank sheet gives its first cell. */
  getUsedRange(): FakeRange {
    return new FakeRange(this.context, () => {
      const places = [...this.must().cells.keys()].map((key) => key.split(",").map(Number) as [number, number]);
      return { sheet: this.must().id, row: 0, column: 0, rows: Math.max(0, ...places.map(([row]) => row)) + 1, columns: Math.max(0, ...places.map(([, column]) => column)) + 1 };
    });
  }

  get freezePanes(): { freezeRows(rows: number): void } {
    return { freezeRows: (rows) => { this.context.write(() => { this.must().frozenRows = rows; }); } };
  }

  activate(): void { this.context.ask(() => { this.context.book.active = this.must().id; }); }
  getCell(row: number, column: number): FakeRange { return this.getRangeByIndexes(row, column, 1, 1); }

  getRangeByIndexes(row: number, column: number, rows: number, columns: number): FakeRange {
    return new FakeRange(this.context, () => ({ sheet: this.must().id, row, column, rows, columns }));
  }

  private must(): Sheet {
    const sheet = this.find();
    if (!sheet) throw new FakeError("ItemNotFound");
    return sheet;
  }
}

class FakeLayout {
  constructor(private readonly change: (change: PageSetup) => void) {}

  readonly headersFooters = {
    defaultForAllPages: {
      set: ({ leftFooter, rightFooter }: { readonly leftFooter: string; readonly rightFooter: string }): void => {
        if (rightFooter !== "Page &P of &N") throw new FakeError("InvalidArgument", rightFooter);
        this.change({ footer: leftFooter.replaceAll("&&", "&") });
      },
    },
  };

  set orientation(orientation: string) { this.change(orientation === "Landscape" ? { landscape: true } : {}); }
  set zoom(zoom: { readonly horizontalFitToPages?: number }) { this.change(zoom.horizontalFitToPages === 1 ? { fitWide: true } : {}); }
  setPrintMargins(unit: string): void { if (unit !== "Inches") throw new FakeError("InvalidArgument", unit); }
  setPrintTitleRows(rows: string): void { this.change({ titleRows: Number(/^\$1:\$(\d+)$/.exec(rows)?.[1]) }); }
}

/** Points from the corner of the sheet, and how large. */
interface Place {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly altTextDescription: string;
}

/** The row whose top lies so many points below that of the sheet. */
function rowAt({ heights }: Sheet, top: number): number {
  let [row, edge] = [0, 0];
  for (; edge < top - 0.01; row += 1) edge += heights.get(row) ?? 15;
  return row;
}

class FakeShape {
  private keepsAspect = true;

  constructor(private readonly context: FakeContext, private readonly sheet: () => Sheet, private readonly png: string) {
    context.write(() => undefined, png);
  }

  /** While the aspect is locked, a width of its own would change the height too. */
  set lockAspectRatio(isLocked: boolean) { this.keepsAspect = isLocked; }

  set({ left, top, width, height, altTextDescription }: Place): void {
    if (this.keepsAspect) throw new FakeError("InvalidArgument", "the aspect is locked");
    this.context.write(() => {
      const sheet = this.sheet();
      const pixels = (points: number): number => points / 0.75;
      let [column, edge] = [0, 0];
      for (; edge < left; column += 1) edge += sheet.widths.get(column) ?? 48;
      sheet.pictures.push({ png: this.png, alt: altTextDescription, row: rowAt(sheet, top), column, width: pixels(width), height: pixels(height), left, top });
    });
  }
}
