/** A plugin of the grid that gives tables names and follows them as rows and columns come and go. */
import { parseArea } from "../../workbook/address";
import { namesTables, toStructured, translateReferences, type FormulaPlace, type ReferenceTable } from "../../workbook/structured-references";
import { restoreUnresolved, unresolved } from "./unresolved";

interface Zone {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
interface GridTable {
  readonly id: string;
  readonly type: string;
  readonly range: { readonly zone: Zone };
  readonly config: { readonly numberOfHeaders: number };
}
interface GridCell {
  readonly id: number;
  readonly isFormula: boolean;
  readonly content?: string;
  readonly compiledFormula?: { toFormulaString(getters: unknown): string };
}
export interface Position {
  readonly sheetId: string;
  readonly col: number;
  readonly row: number;
}
export interface Getters {
  getSheetIds(): readonly string[];
  getSheetName(sheetId: string): string;
  getCoreTables(sheetId: string): readonly GridTable[];
  getCell(position: Position): GridCell | undefined;
  getCells(sheetId: string): readonly GridCell[] | Readonly<Record<string, GridCell>>;
  getCellPosition(id: number): Position;
  getCellById(id: number): GridCell | undefined;
}
export interface Command {
  readonly type: string;
  readonly sheetId?: string;
  readonly col?: number;
  readonly row?: number;
  content?: string;
}
/** A formula that names tables, as text that stays true when they change. */
type FormulaTexts = ReadonlyMap<number, string>;

/** Commands after which a table may stand elsewhere, be larger, smaller, new or gone. */
const changesTables = new Set([
  "CREATE_TABLE", "UPDATE_TABLE", "REMOVE_TABLE", "ADD_COLUMNS_ROWS", "REMOVE_COLUMNS_ROWS", "MOVE_RANGES", "MOVE_COLUMNS_ROWS",
  "DUPLICATE_SHEET", "DELETE_SHEET", "CREATE_SHEET", "RENAME_SHEET", "DELETE_CONTENT",
]);

/** The grid as the tracker needs it: what it may ask, the names it keeps, and how to enter a formula within the running step. */
export interface TrackedBook {
  readonly getters: Getters;
  names(): Readonly<Record<string, string>>;
  setName(key: string, name: string): void;
  enter(position: Position, content: string): void;
}

/** Knows the tables by name and keeps the formulas that name them true, from before each command to after it. */
export class TableTracker {
  readonly #book: TrackedBook;
  readonly #before = new Map<Command, FormulaTexts>();
  #formulaCells: Set<number> | undefined;
  #isEntering = false;

  constructor(book: TrackedBook) {
    this.#book = book;
  }

  /** Gives a name to the table whose first cell is the first of the range. */
  setName({ sheetId, range, name }: { readonly sheetId: string; readonly range: string; readonly name: string }): void {
    const area = parseArea(range);
    const table = this.#book.getters.getCoreTables(sheetId).find(({ range: { zone } }) => zone.top === area?.firstRow && zone.left === area.firstColumn);
    if (table) this.#book.setName(key(sheetId, table), name);
  }

  before(command: Command): void {
    if (changesTables.has(command.type) || this.#isAtTable(command)) this.#before.set(command, this.#formulaTexts());
    if (isEntry(command)) this.#enterRanges(command);
  }

  after(command: Command): void {
    const texts = this.#before.get(command);
    if (texts) {
      this.#before.delete(command);
      // A typed cell can only extend a table, so that pasting thousands of rows does not look through the workbook each time.
      if (!isEntry(command)) this.#formulaCells = undefined;
      this.nameNewTables();
      this.#enterAgain(this.#isHeading(command) ? this.#formulaTexts() : texts);
    }
    if (isEntry(command) && !this.#isEntering && command.content?.startsWith("=")) this.#formulaCells = undefined;
  }

  forgetFormulaCells(): void {
    this.#formulaCells = undefined;
  }

  tables(): readonly ReferenceTable[] {
    return this.#book.getters.getSheetIds().flatMap((sheetId) => {
      const sheet = this.#book.getters.getSheetName(sheetId);
      return this.#namedTablesOf(sheetId).map(({ table, name }) => this.#referenceTable({ sheetId, sheet, table, name }));
    });
  }

  #namedTablesOf(sheetId: string): readonly { readonly table: GridTable; readonly name: string }[] {
    return this.#book.getters
      .getCoreTables(sheetId)
      .filter((table) => table.type !== "dynamic" && table.config.numberOfHeaders === 1)
      .map((table) => ({ table, name: this.#book.names()[key(sheetId, table)] ?? "" }));
  }

  #referenceTable(found: { sheetId: string; sheet: string; table: GridTable; name: string }): ReferenceTable {
    const { left, top, right, bottom } = found.table.range.zone;
    const headings = Array.from({ length: right - left + 1 }, (_, index) =>
      headingText(this.#book.getters.getCell({ sheetId: found.sheetId, col: left + index, row: top })),
    );
    return { name: found.name, sheet: found.sheet, firstRow: top, firstColumn: left, rows: bottom - top, columns: right - left + 1, headings };
  }

  nameNewTables(): void {
    const used = new Set(Object.values(this.#book.names()).map((name) => name.toLowerCase()));
    for (const sheetId of this.#book.getters.getSheetIds()) {
      for (const { table, name } of this.#namedTablesOf(sheetId)) {
        if (name !== "") continue;
        let number = 1;
        while (used.has(`table${String(number)}`)) number++;
        used.add(`table${String(number)}`);
        this.#book.setName(key(sheetId, table), `Table${String(number)}`);
      }
    }
  }

  #enterRanges(command: Command): void {
    if (!command.content?.startsWith("=")) return;
    const tables = this.tables();
    if (namesTables(command.content, tables)) command.content = translateReferences(command.content, tables, this.#placeOf(command as Position), unresolved);
  }

  /** Typing into a heading, right under a table or beside it can rename or extend the table. */
  #isAtTable(command: Command): boolean {
    if (!isEntry(command) || command.content === "") return false;
    const { sheetId, col, row } = command as Position;
    return this.#book.getters.getCoreTables(sheetId).some(({ range: { zone } }) => {
      const under = row === zone.bottom + 1 && col >= zone.left && col <= zone.right;
      const beside = col === zone.right + 1 && row >= zone.top && row <= zone.bottom;
      return under || beside || (row === zone.top && col >= zone.left && col <= zone.right);
    });
  }

  #isHeading(command: Command): boolean {
    if (!isEntry(command)) return false;
    const { sheetId, col, row } = command as Position;
    return this.#book.getters.getCoreTables(sheetId).some(({ range: { zone } }) => row === zone.top && col >= zone.left && col <= zone.right);
  }

  #placeOf({ sheetId, col, row }: Position): FormulaPlace {
    return { sheet: this.#book.getters.getSheetName(sheetId), row, column: col };
  }

  #formulaTexts(): FormulaTexts {
    const tables = this.tables();
    const texts = new Map<number, string>();
    this.#formulaCells ??= this.#findFormulaCells();
    for (const id of this.#formulaCells) {
      const formula = this.#formulaOf(id);
      if (formula === undefined) continue;
      const text = restoreUnresolved(toStructured(formula, tables, this.#placeOf(this.#book.getters.getCellPosition(id))));
      if (text !== formula) texts.set(id, text);
    }
    return texts;
  }

  #findFormulaCells(): Set<number> {
    const cells = this.#book.getters.getSheetIds().flatMap((sheetId) => Object.values(this.#book.getters.getCells(sheetId)));
    return new Set(cells.filter((cell) => cell.isFormula).map((cell) => cell.id));
  }

  #formulaOf(id: number): string | undefined {
    // A cell that went with its row has no position any more, and the grid throws for it.
    try {
      return this.#book.getters.getCellById(id)?.compiledFormula?.toFormulaString(this.#book.getters);
    } catch {
      return undefined;
    }
  }

  #enterAgain(texts: FormulaTexts): void {
    const tables = this.tables();
    const names = new Set(tables.map(({ name }) => name.toLowerCase()));
    for (const [id, text] of texts) {
      const now = this.#formulaOf(id);
      if (now === undefined) continue;
      const position = this.#book.getters.getCellPosition(id);
      let isGone = false;
      const content = translateReferences(text, tables, this.#placeOf(position), (problem, reference) => {
        isGone ||= !names.has((reference.split("[")[0] ?? "").toLowerCase());
        return unresolved(problem, reference);
      });
      // A table that was turned into plain cells leaves its ranges behind.
      if (content !== now && (!isGone || now.includes("UNRESOLVED"))) this.#enter(position, content);
    }
  }

  /** The cell holds a formula before and after, so the list of formula cells stays true. */
  #enter(position: Position, content: string): void {
    this.#isEntering = true;
    this.#book.enter(position, content);
    this.#isEntering = false;
  }
}

const key = (sheetId: string, { id }: { readonly id: string }): string => `${sheetId}/${id}`;

const isEntry = (command: Command): boolean => command.type === "UPDATE_CELL" && command.content !== undefined;

const headingText = (cell: GridCell | undefined): string => (cell?.content ?? "").replace(/^'/, "");
