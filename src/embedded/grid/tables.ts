/** The names and places of tables inside the grid's data. */
import { type ReferenceTable } from "../../workbook/structured-references";
import { type GridLibrary } from "./library";
import { type Command, type Getters, type Position, TableTracker } from "./table-tracker";
import { registerUnresolved } from "./unresolved";

/** A table's name and place in the data a model starts from, beside the grid's own list of tables. */
export interface NamedTableData {
  readonly sheetId: string;
  readonly range: string;
  readonly name: string;
}

/** What this plugin adds to the grid's getters. */
export interface NamedTableGetters {
  getNamedTables(): readonly ReferenceTable[];
  /** After an undo or redo: which cells hold formulas must be looked up again. */
  forgetFormulaCells(): void;
}

/** How a table that a running command made gets its name, within that command's step. */
export interface NamedTableSetter {
  /** @param range begins with the table's first cell */
  nameTable(sheetId: string, range: string, name: string): void;
}

/**
 * Teaches the grid names of tables. A structured reference typed anywhere is entered as the range it means; when a table
 * grows, shrinks or moves, the formulas that named a part of it are entered anew within the same undo step.
 * The structured text is not stored: a formula's absolute ranges that are parts of a table are that text.
 */
export function registerNamedTables(library: GridLibrary): void {
  registerUnresolved(library);
  const registry = library.registries.corePluginRegistry;
  if (!registry.contains(pluginName)) registry.add(pluginName, namedTablesPlugin(library) as never);
}

const pluginName = "plumbline_named_tables";

function namedTablesPlugin(library: GridLibrary): unknown {
  const Base = library.CorePlugin as unknown as new (config: never) => {
    readonly getters: Getters;
    readonly history: { update(...path: unknown[]): void };
    dispatch(type: "UPDATE_CELL", payload: Position & { readonly content: string }): unknown;
  };
  return class NamedTables extends Base {
    static readonly getters = ["getNamedTables", "forgetFormulaCells", "nameTable"];
    /** The grid's history writes here, so that undo takes names back too. */
    readonly names: Record<string, string> = {};
    readonly tracker = new TableTracker({
      getters: this.getters,
      names: () => this.names,
      setName: (key, name) => { this.history.update("names", key, name); },
      enter: (position, content) => void this.dispatch("UPDATE_CELL", { ...position, content }),
    });

    import(data: { readonly namedTables?: readonly NamedTableData[] }): void {
      for (const table of data.namedTables ?? []) this.tracker.setName(table);
      this.tracker.nameNewTables();
    }

    beforeHandle(command: Command): void {
      this.tracker.before(command);
    }

    handle(command: Command): void {
      this.tracker.after(command);
    }

    nameTable(sheetId: string, range: string, name: string): void {
      this.tracker.setName({ sheetId, range, name });
    }

    forgetFormulaCells(): void {
      this.tracker.forgetFormulaCells();
    }

    getNamedTables(): readonly ReferenceTable[] {
      return this.tracker.tables();
    }
  };
}
