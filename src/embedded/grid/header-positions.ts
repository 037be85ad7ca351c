/** Keeps where rows and columns begin while an entry leaves their sizes as they were. */
import { type GridLibrary } from "./library";

interface Command {
  readonly type: string;
  readonly sheetId: string;
  readonly row: number;
}
interface Positions {
  readonly ROW: Readonly<Record<number, number>>;
}
/** Of the library's plugin (19.3.7), what is used here. */
interface HeaderPositions {
  readonly getters: { getHeaderSize(sheetId: string, dimension: "ROW", index: number): number };
  readonly headerPositions: Readonly<Record<string, Positions>>;
  handle(command: Command): void;
  finalize(): void;
}

/**
 * Keeps the places of rows and columns: the library works out those of all rows of all sheets again at every entry.
 * An entry can make its own row higher, and rows go where a filter hides them; with a filter set it is left to the library.
 */
export function keepHeaderPositions(library: GridLibrary): void {
  const registry = library.registries.statefulUIPluginRegistry;
  const Original = registry.get(pluginName) as unknown as new (config: never) => HeaderPositions;
  if (keeping.has(Original)) return;
  class KeptPositions extends Original {
    #isFiltered = false;
    #entries: Command[] = [];

    override handle(command: Command): void {
      if (command.type === "UPDATE_FILTER") this.#isFiltered = true;
      if (command.type === "UPDATE_CELL" && !this.#isFiltered) this.#entries.push(command);
      else super.handle(command);
    }

    override finalize(): void {
      const resized = this.#entries.find(({ sheetId, row }) => this.#isResized(sheetId, row));
      this.#entries = [];
      if (resized) super.handle(resized);
      super.finalize();
    }

    #isResized(sheetId: string, row: number): boolean {
      const rows = this.headerPositions[sheetId]?.ROW;
      return rows !== undefined && (rows[row + 1] ?? NaN) - (rows[row] ?? NaN) !== this.getters.getHeaderSize(sheetId, "ROW", row);
    }
  }
  keeping.add(KeptPositions);
  registry.replace(pluginName, KeptPositions as never);
}

const pluginName = "header_positions";
const keeping = new Set<unknown>();
