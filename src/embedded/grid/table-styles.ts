/** Keeps the look of a table's cells while its size, its style and its hidden rows stand. */
import { type GridLibrary } from "./library";

interface Table {
  readonly id: string;
  readonly isPivotTable?: boolean;
  readonly range: { readonly zone: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number } };
  readonly config: { readonly styleId: string };
}
interface Getters {
  getTableStyle(styleId: string): unknown;
  isRowHidden(sheetId: string, row: number): boolean;
  isColHidden(sheetId: string, column: number): boolean;
}
/** Works out the look of every cell of a table, when it is asked for. */
type StyleOfTable = (sheetId: string, table: Table) => () => unknown;

/**
 * Keeps the looks of tables: the library (19.3.7) works out those of all cells of a table again for the first drawing after every entry,
 * which takes as long as a formula over ten thousand rows. They follow from size, style and hidden rows alone.
 */
export function keepTableStyles(library: GridLibrary): void {
  const registry = library.registries.statefulUIPluginRegistry;
  const Original = registry.get(pluginName) as unknown as new (config: never) => { readonly getters: Getters; readonly computeTableStyle: StyleOfTable };
  if (keeping.has(Original)) return;
  class KeptTableStyles extends Original {
    readonly #kept = new Map<string, { readonly follows: string; readonly style: unknown }>();

    override readonly computeTableStyle: StyleOfTable = (sheetId, table) => {
      let style: unknown;
      return () => (style ??= this.#styleOf(sheetId, table));
    };

    #styleOf(sheetId: string, table: Table): unknown {
      const make = (): unknown => (Original.prototype as { computeTableStyle: StyleOfTable }).computeTableStyle.call(this, sheetId, table)();
      if (table.isPivotTable) return make();
      const [key, follows] = [`${sheetId}/${table.id}`, whatItFollows(this.getters, sheetId, table)];
      const known = this.#kept.get(key);
      if (known?.follows === follows) return known.style;
      const style = make();
      this.#kept.set(key, { follows, style });
      return style;
    }
  }
  keeping.add(KeptTableStyles);
  registry.replace(pluginName, KeptTableStyles as never);
}

const pluginName = "table_computed_style";
const keeping = new Set<unknown>();

function whatItFollows(getters: Getters, sheetId: string, { range: { zone }, config }: Table): string {
  const hidden: string[] = [];
  for (let row = zone.top; row <= zone.bottom; row++) if (getters.isRowHidden(sheetId, row)) hidden.push(`${row}`);
  for (let column = zone.left; column <= zone.right; column++) if (getters.isColHidden(sheetId, column)) hidden.push(`column ${column}`);
  return JSON.stringify([zone, config, getters.getTableStyle(config.styleId), hidden]);
}
