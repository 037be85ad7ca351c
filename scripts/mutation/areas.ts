/** Which tests answer for which part of the core: a change counts as noticed when one of them fails. */
import { readdirSync } from "node:fs";

/** Files and folders below src/core, and tests and folders of tests below test, all without endings. */
interface Area {
  readonly files: readonly string[];
  readonly tests: readonly string[];
}

export const areas: Readonly<Record<string, Area>> = {
  threads: {
    files: ["thread", "thread-reading", "pipe-thread", "identify", "port-matching", "seen-body", "reading-likelihood", "deciding-measurement"],
    tests: ["core/thread", "core/thread-reading", "core/pipe-thread", "core/identify", "functions/fitting-functions"],
  },
  fittings: {
    files: ["fittings", "fitter", "joint", "least-cost-assignment"],
    tests: ["core/fittings", "core/kits", "core/kit-search", "core/checks/joining", "functions/fitting-functions"],
  },
  assembly: { files: ["assembly", "component", "equipment", "car"], tests: ["core/assembly", "core/runs", "core/equipment", "core/checks/chain", "core/sound-assemblies", "cases"] },
  lines: {
    files: ["runs", "allowance", "fitting-out", "tube", "tube-mass", "tubing", "tube-stock", "burst", "quantity", "say-quantity", "bill", "bench-plan", "bends"],
    tests: ["core/runs", "core/tube", "core/tubing", "core/burst", "core/quantity", "core/say-on-tape", "core/bill", "core/bench-plan", "core/bends", "cases", "functions/bends", "functions/burst"],
  },
  checks: { files: ["checks", "finding", "standing", "answers", "report"], tests: ["core/checks", "core/standing", "core/assembly/open-questions", "core/bends/run-bends", "core/equipment", "core/sound-assemblies", "cases"] },
  balance: { files: ["balance"], tests: ["core/balance", "core/checks/physics", "functions/balance"] },
  kits: { files: ["ask", "kits", "kit-cover", "kit-search", "possible-sets", "question", "group-by"], tests: ["core/ask", "core/kits", "core/kit-search", "core/possible-sets", "functions/advice"] },
  quote: { files: ["quote", "quote-items", "quote-missing", "fluid", "money", "say-money"], tests: ["core/quote", "functions/quote"] },
  cutplan: { files: ["cutplan"], tests: ["core/cutplan", "core/bench-plan", "functions/cutplan"] },
  stock: { files: ["stock", "stock-history"], tests: ["core/stock", "functions/stock-tables"] },
};

/** What no area answers for, and why. */
export const leftOut: Readonly<Record<string, string>> = {
  "made-once": "what it keeps would carry answers from one change to the next, so a stand-in takes its place",
  caution: "one text",
  catalogue: "types",
  "setting-unit": "types",
  settings: "values with their sources, worked out as the module loads",
  "physics-settings": "values with their sources, worked out as the module loads",
  "stock-settings": "values with their sources, worked out as the module loads",
};

/** Tests that take seconds each, or read the source itself. */
const tooLong = ["core/balance/examples", "core/stock/documented"];

const below = (folder: string, ending: string): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: "utf8" }).map((name) => name.replaceAll("\\", "/")).filter((name) => name.endsWith(ending)).map((name) => name.slice(0, -ending.length)).sort();

const isIn = (names: readonly string[], name: string): boolean => names.some((one) => one === name || name.startsWith(`${one}/`));

/** Every file of the core that an area answers for, by area. Throws when one is in no area or in two. */
export function filesByArea(core: string): Readonly<Record<string, readonly string[]>> {
  const files = below(core, ".ts").filter((name) => !(name in leftOut));
  for (const file of files) {
    const within = Object.keys(areas).filter((area) => isIn(areas[area]?.files ?? [], file));
    if (within.length !== 1) throw new Error(`src/core/${file}.ts is in ${within.length === 0 ? "no area" : `the areas ${within.join(" and ")}`}: see scripts/mutation/areas.ts.`);
  }
  return Object.fromEntries(Object.entries(areas).map(([area, { files: names }]) => [area, files.filter((file) => isIn(names, file))]));
}

export const testsOf = (area: string, folder: string): readonly string[] =>
  below(folder, ".test.ts").filter((name) => isIn(areas[area]?.tests ?? [], name) && !tooLong.includes(name));
