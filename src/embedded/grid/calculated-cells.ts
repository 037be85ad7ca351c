/** Hooks into the grid's evaluator: what it calculated stays between edits, so that one row of ten thousand costs one row. */
import { type Columns, type Evaluator } from "./evaluator";
import { keepRanges, type RangeReader } from "./kept-ranges";
import { type GridLibrary } from "./library";
import { keepSpills } from "./spilled-cells";
import { type Zone } from "./sheet-parts";

/** What the getters gain. */
export interface KeptGetters {
  /** The cells of a zone, column by column: a column in which nothing was calculated anew is the array of before. */
  getKeptColumns(sheetId: string, zone: Zone): Columns;
}

/** Keeps the cells that formulas fill, and the ranges that they and the tables' readers read, from edit to edit. */
export function keepCalculatedCells(library: GridLibrary): void {
  const registry = library.registries.coreViewsPluginRegistry;
  const Original = registry.get(pluginName) as unknown as (new (config: never) => { readonly evaluator: Evaluator }) & { readonly getters: readonly string[] };
  if (keeping.has(Original)) return;
  class KeptCells extends Original {
    static override readonly getters = [...Original.getters, "getKeptColumns"];
    readonly #read: RangeReader;

    constructor(config: never) {
      super(config);
      this.#read = keepRanges(this.evaluator);
      keepSpills(this.evaluator);
    }

    getKeptColumns(sheetId: string, zone: Zone): Columns {
      return this.#read({ sheetId, zone });
    }
  }
  keeping.add(KeptCells);
  registry.replace(pluginName, KeptCells as never);
}

const pluginName = "evaluation";
const keeping = new Set<unknown>();
