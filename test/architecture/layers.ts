import type { SourceImport } from "./source-files";

interface Layer {
  /** The layers it may import, besides itself. */
  readonly layers: readonly string[];
  /** The packages it may import. */
  readonly packages: readonly string[];
  /** Whose global names it may use in any of its files. */
  readonly globals: readonly GlobalsOf[];
}

export type GlobalsOf = "DOM" | "Office" | "CustomFunctions" | "Node";

/** Quantiles and cumulative shares; test/core/stock/documented.test.ts holds them to one file, so that they stay a chunk of their own. */
const distributions = [
  "@stdlib/stats-base-dists-gamma-cdf",
  "@stdlib/stats-base-dists-gamma-quantile",
  "@stdlib/stats-base-dists-negative-binomial-cdf",
  "@stdlib/stats-base-dists-negative-binomial-quantile",
  "@stdlib/stats-base-dists-normal-cdf",
  "@stdlib/stats-base-dists-normal-quantile",
  "@stdlib/stats-base-dists-poisson-cdf",
  "@stdlib/stats-base-dists-poisson-quantile",
];

/** Who may import whom; type-only and dynamic imports count too. */
export const layers: Readonly<Record<string, Layer>> = {
  core: { layers: [], packages: ["big.js", ...distributions], globals: [] },
  catalogue: { layers: ["core"], packages: ["big.js", "zod/mini"], globals: [] },
  workbook: { layers: ["core", "catalogue"], packages: ["fflate", "saxes", "zod/mini"], globals: [] },
  functions: { layers: ["core", "catalogue", "workbook"], packages: [], globals: [] },
  taskpane: { layers: ["core", "catalogue", "workbook"], packages: [], globals: ["DOM"] },
  embedded: {
    layers: ["core", "catalogue", "workbook", "functions", "taskpane"],
    packages: ["@odoo/o-spreadsheet", "@odoo/owl", "fflate", "idb-keyval"],
    globals: ["DOM"],
  },
};

/** The few files that may do more than their layer, each with the reason. */
export const exceptions: readonly {
  readonly files: RegExp;
  readonly imports?: RegExp;
  readonly globals?: readonly GlobalsOf[];
  readonly because: string;
}[] = [
  { files: /^src\/taskpane\//, imports: /^src\/functions\/reports\.ts$/, because: "panel and functions share one cache of reports" },
  { files: /^src\/taskpane\/functions\//, imports: /^src\/functions\/reference\.ts$/, because: "the panel shows the reference of the functions" },
  { files: /^src\/taskpane\/main\.ts$/, imports: /^src\/functions\//, globals: ["Office", "CustomFunctions"], because: "the one entry of the add-in, which registers the functions and waits for the host" },
  { files: /^src\/workbook\/excel[^/]*\.ts$|^src\/workbook\/excel\//, globals: ["Office"], because: "the adapter to Excel" },
  { files: /^src\/functions\/answer\.ts$/, globals: ["CustomFunctions"], because: "the one conversion of errors" },
];

/** The layer of a project file, "core" for src/core/thread.ts; undefined outside src. */
export const layerOf = (file: string): string | undefined => /^src\/([^/]+)/.exec(file)?.[1];

/** Whether a file of src may have an import. */
export function mayImport(file: string, { specifier, file: target }: SourceImport): boolean {
  const own = layerOf(file) ?? "";
  const layer = layers[own];
  if (target === undefined) return layer?.packages.includes(specifier) ?? false;
  const reached = layerOf(target) ?? "outside src";
  if (reached === own || layer?.layers.includes(reached)) return true;
  return exceptions.some(({ files, imports }) => files.test(file) && imports?.test(target));
}

/** Whose global names a file of src may use. */
export function globalsAllowedIn(file: string): readonly GlobalsOf[] {
  const granted = exceptions.filter(({ files }) => files.test(file)).flatMap(({ globals }) => globals ?? []);
  return [...(layers[layerOf(file) ?? ""]?.globals ?? []), ...granted];
}
