import { areaAddress, sheetPrefix } from "../../../src/workbook/address";
import type { CellArea, CellStyle, CellValue } from "../../../src/workbook/document";
import { entered, FakeError, type Area, type Cell, type Sheet, type Table } from "./book";
import { Loaded, Presence, type FakeContext } from "./context";
import { FakeTables } from "./tables";

const WIDTH = 48; // points of a column and height of a row that nobody has touched
const HEIGHT = 15;
const COLUMNS = 16_384;

export class FakeRange {
  readonly format: FakeFormat;
  private readonly loaded: Loaded;
  private readonly presence: Presence;

  /** @param area undefined when there is no such range */
  constructor(private readonly context: FakeContext, private readonly area: () => Area | undefined) {
    this.loaded = new Loaded(context, (name) => this.fetch(name));
    this.presence = new Presence(context, () => area() !== undefined);
    this.format = new FakeFormat(this);
  }

  get isNullObject(): boolean { return this.presence.isNullObject; }
  get rowCount(): number { return this.loaded.read("rowCount"); }
  get cellCount(): number { return this.loaded.read("cellCount"); }
  get rowIndex(): number { return this.loaded.read("rowIndex"); }
  get columnIndex(): number { return this.loaded.read("columnIndex"); }
  get address(): string { return this.loaded.read("address"); }
  get left(): number { return this.loaded.read("left"); }
  get top(): number { return this.loaded.read("top"); }
  get values(): CellValue[][] { return this.loaded.read("values"); }
  set values(values: readonly (readonly CellValue[])[]) {
    this.put(values, (old, value) => entered(value, old.format));
  }

  get formulas(): CellValue[][] { return this.loaded.read("formulas"); }
  set formulas(formulas: readonly (readonly CellValue[])[]) {
    this.put(formulas, (old, text) => (String(text).startsWith("=") && old.format !== "@" ? { value: 0, format: old.format, formula: this.known(String(text)) } : entered(text, old.format)));
  }

  /** Excel refuses a formula that names a table it has not. */
  private known(formula: string): string {
    const tables = [...formula.matchAll(/(?<![\p{L}\p{N}_.])([\p{L}_][\p{L}\p{N}_.]*)\[/gu)].map(([, name = ""]) => name.toLowerCase());
    if (tables.some((name) => !this.context.book.tables.some((table) => table.name.toLowerCase() === name))) throw new FakeError("InvalidArgument", formula);
    return formula;
  }


  set numberFormat(formats: string | readonly (readonly string[])[]) {
    this.put(formats, (old, format) => ({ ...old, format }));
  }

  get dataValidation(): FakeValidation { return new FakeValidation(this); }

  load(names: string): this {
    this.loaded.load(names);
    return this;
  }

  preload(names: readonly string[]): void { this.loaded.preload(names); }

  /** Characters of the cells that were loaded last with this range as one of several. */
  get weight(): number { return this.loaded.weight; }

  getRow(row: number): FakeRange { return this.part((area) => ({ ...area, row: area.row + row, rows: 1 })); }
  getCell(row: number, column: number): FakeRange { return this.part((area) => ({ ...area, row: area.row + row, column: area.column + column, rows: 1, columns: 1 })); }
  getResizedRange(rows: number, columns: number): FakeRange { return this.part((area) => ({ ...area, rows: area.rows + rows, columns: area.columns + columns })); }
  getEntireRow(): FakeRange { return this.part((area) => ({ ...area, column: 0, columns: COLUMNS })); }
  getIntersectionOrNullObject(other: FakeRange): FakeRange { return new FakeRange(this.context, () => crossing(this.must(), other.must())); }
  getTables(): FakeTables { return new FakeTables(this.context, () => this.context.book.tables.filter((table) => crossing(wholeOf(table), this.must()))); }

  getSpillParentOrNullObject(): FakeRange {
    return this.part((area) => {
      const parent = this.context.book.sheets.find(({ id }) => id === area.sheet)?.cells.get(`${area.row},${area.column}`)?.filledBy;
      return parent && { ...area, ...parent };
    });
  }

  getSpecialCellsOrNullObject(kind: string): FakeAreas {
    if (kind !== "Formulas") throw new FakeError("InvalidArgument", kind);
    return new FakeAreas(this.context, () => formulaCells(this.context, this.must()));
  }

  select(): void {
    this.context.ask(() => {
      if (this.context.book.active !== this.must().sheet) throw new FakeError("InvalidOperation", "the sheet of the selection is not in front");
      this.context.book.select(this.must());
    });
  }

  merge(): void {
    this.write((sheet, { sheet: _, ...area }) => {
      sheet.merges.push(area);
      for (const key of keysOf(area).slice(1)) sheet.cells.delete(key);
    });
  }

  must(): Area {
    const area = this.area();
    if (!area) throw new FakeError("ItemNotFound");
    return area;
  }

  /** @throws FakeError at sync as Excel does for a sheet that is protected */
  write(work: (sheet: Sheet, area: Area) => void, payload: unknown = ""): void {
    this.context.write(() => {
      const area = this.must();
      const sheet = this.context.book.sheets.find(({ id }) => id === area.sheet);
      if (!sheet) throw new FakeError("ItemNotFound");
      if (sheet.isProtected) throw new FakeError("AccessDenied");
      work(sheet, area);
    }, payload);
  }

  private part(of: (area: Area) => Area | undefined): FakeRange {
    return new FakeRange(this.context, () => {
      const area = this.area();
      return area && of(area);
    });
  }

  /** One value goes into every cell. */
  private put<T extends CellValue>(values: T | readonly (readonly T[])[], change: (old: Cell, value: T) => Cell): void {
    this.write((sheet, { row, column, rows, columns }) => {
      const grid = Array.isArray(values) ? (values as readonly (readonly T[])[]) : Array.from({ length: rows }, () => Array.from({ length: columns }, () => values as T));
      if (grid.length !== rows || grid.some((each) => each.length !== columns)) throw new FakeError("InvalidArgument", "the values do not fit the range");
      for (const [r, cells] of grid.entries()) {
        for (const [c, value] of cells.entries()) {
          const key = `${row + r},${column + c}`;
          sheet.cells.set(key, change(sheet.cells.get(key) ?? { value: "", format: "General" }, value));
        }
      }
      this.context.book.fire("worksheets.onChanged", { worksheetId: sheet.id, triggerSource: "ThisLocalAddin" });
    }, values);
  }

  private fetch(name: string): unknown {
    const area = this.area();
    const sheet = this.context.book.sheets.find(({ id }) => id === area?.sheet);
    if (!area || !sheet) return undefined;
    const { row, column, rows, columns } = area;
    const simple: Readonly<Record<string, unknown>> = { rowCount: rows, cellCount: rows * columns, rowIndex: row, columnIndex: column, top: Array.from({ length: row }, (_, r) => sheet.heights.get(r) ?? HEIGHT).reduce((sum, height) => sum + height, 0) };
    if (name in simple) return simple[name];
    if (name === "left") return Array.from({ length: column }, (_, c) => sheet.widths.get(c) ?? WIDTH).reduce((sum, width) => sum + width, 0);
    if (name === "address") return sheetPrefix(sheet.name) + areaAddress({ firstRow: row, firstColumn: column, rows, columns });
    if (name === "values") return this.context.book.shown(sheet, area);
    if (name === "formulas") return this.context.book.shown(sheet, area).map((line, r) => line.map((value, c) => sheet.cells.get(`${row + r},${column + c}`)?.formula ?? value));
    throw new FakeError("InvalidArgument", name);
  }
}

/** Cells that lie apart, each an area of its own. */
class FakeAreas {
  readonly areas: { readonly items: readonly FakeRange[] };
  private readonly loaded: Loaded;
  private readonly presence: Presence;

  constructor(context: FakeContext, find: () => readonly Area[]) {
    let names: readonly string[] = [];
    this.presence = new Presence(context, () => find().length > 0);
    const loaded = (this.loaded = new Loaded(context, (name) => {
      names = [...names, name.replace("areas/items/", "")];
      return find().map((area) => {
        const range = new FakeRange(context, () => area);
        range.preload(names);
        return range;
      });
    }));
    this.areas = {
      get items(): readonly FakeRange[] {
        const last = names[names.length - 1] ?? "";
        return loaded.read(`areas/items/${last}`);
      },
    };
  }

  get isNullObject(): boolean { return this.presence.isNullObject; }

  load(names: string): this {
    this.loaded.load(names);
    return this;
  }
}

/** As Excel's own "Go to special" finds them: cells under one another are one area, in no other order than the cells were made. */
function formulaCells({ book }: FakeContext, { sheet: id }: Area): readonly Area[] {
  const areas: Area[] = [];
  for (const [key, { formula }] of book.sheets.find((sheet) => sheet.id === id)?.cells ?? []) {
    if (formula === undefined) continue;
    const [row = 0, column = 0] = key.split(",").map(Number);
    const above = areas.findIndex((area) => area.column === column && area.row + area.rows === row);
    if (above < 0) areas.push({ sheet: id, row, column, rows: 1, columns: 1 });
    else areas[above] = { sheet: id, row: areas[above]?.row ?? row, column, rows: (areas[above]?.rows ?? 0) + 1, columns: 1 };
  }
  return areas;
}

class FakeFormat {
  constructor(private readonly range: FakeRange) {}

  readonly font = { set: ({ color, ...font }: CellStyle & { readonly color?: string }) => { this.look({ ...font, ...(color === undefined ? {} : { colour: color }) }); } };

  get fill(): object {
    const look = (style: CellStyle): void => { this.look(style); };
    return { set color(fill: string) { look({ fill }); } };
  }

  get borders(): object {
    const rule = (edge: string, style: string): void => {
      if (style !== "Continuous" || (edge !== "EdgeTop" && edge !== "EdgeBottom")) throw new FakeError("InvalidArgument", edge);
      this.range.write((sheet, area) => {
        const keys = keysOf(edge === "EdgeTop" ? { ...area, rows: 1 } : { ...area, row: area.row + area.rows - 1, rows: 1 });
        for (const key of keys) sheet.looks.set(key, { ...sheet.looks.get(key), ...(edge === "EdgeTop" ? { top: true } : { bottom: true }) });
      });
    };
    return { getItem: (edge: string) => ({ set style(style: string) { rule(edge, style); } }) };
  }

  set horizontalAlignment(align: string) { this.look({ align: align.toLowerCase() as "left" }); }
  set wrapText(wrap: boolean) { this.look({ wrap }); }
  set verticalAlignment(align: string) { if (align !== "Top") throw new FakeError("InvalidArgument", align); }
  set columnWidth(points: number) { this.range.write((sheet, { column }) => void sheet.widths.set(column, points)); }

  set rowHeight(points: number) { this.range.write((sheet, { row }) => void sheet.heights.set(row, points)); }

  private look(style: CellStyle): void {
    this.range.write((sheet, area) => {
      for (const key of keysOf(area)) sheet.looks.set(key, { ...sheet.looks.get(key), ...style });
    }, style);
  }
}

class FakeValidation {
  constructor(private readonly range: FakeRange) {}

  set rule({ list: { source } }: { readonly list: { readonly source: string } }) {
    if (source.length > 255) throw new FakeError("InvalidArgument", "the list is too long");
    this.range.write((sheet, { sheet: _, ...area }) => void sheet.lists.push({ area, values: source.split(",") }));
  }

  set errorAlert({ style, message, title }: { readonly style: string; readonly message: string; readonly title: string }) {
    if (title.length > 32 || message.length > 255) throw new FakeError("InvalidArgument", "the alert is too long");
    this.range.write((sheet) => {
      const last = sheet.lists.pop();
      if (last) sheet.lists.push({ ...last, alert: style });
    });
  }
}

const keysOf = ({ row, column, rows, columns }: CellArea): string[] =>
  Array.from({ length: rows * columns }, (_, index) => `${row + Math.floor(index / columns)},${column + (index % columns)}`);

const wholeOf = ({ sheet, row, column, rows, columns }: Table): Area => ({ sheet, row, column, rows: rows + 1, columns });

function crossing(a: Area, b: Area): Area | undefined {
  const [row, column] = [Math.max(a.row, b.row), Math.max(a.column, b.column)];
  const rows = Math.min(a.row + a.rows, b.row + b.rows) - row;
  const columns = Math.min(a.column + a.columns, b.column + b.columns) - column;
  return a.sheet === b.sheet && rows > 0 && columns > 0 ? { sheet: a.sheet, row, column, rows, columns } : undefined;
}
