import ts from "typescript";
import { compiledSources } from "./architecture/compiled-sources";
import { globalNamesUsed } from "./architecture/global-names";
import { layerOf, layers, mayImport, globalsAllowedIn } from "./architecture/layers";
import { loadedAtOnce } from "./architecture/loaded-at-once";
import { officeMembersUsed } from "./architecture/office-sets";
import { compilerOptions, filesUnder, importsOf, projectFolder } from "./architecture/source-files";

jest.setTimeout(60_000); // the compiler reads the whole project, which takes seconds on a busy machine

const sources = filesUnder("src");
const scripts = filesUnder("scripts");

describe("imports", () => {
  test("every file of src stands in a layer", () => {
    expect(sources.filter((file) => !layers[layerOf(file) ?? ""])).toEqual([]);
  });

  test("a file of src imports only its own layer, those below it, and the packages of its layer", () => {
    const wrong = sources.flatMap((file) =>
      importsOf(file)
        .filter((each) => !mayImport(file, each))
        .map(({ specifier }) => `${file} imports ${specifier}`),
    );
    expect(wrong).toEqual([]);
  });

  test("nothing in src or scripts imports a test", () => {
    const wrong = [...sources, ...scripts].filter((file) => importsOf(file).some((each) => each.file?.startsWith("test/")));
    expect(wrong).toEqual([]);
  });

  test("no files import each other in a circle", () => {
    expect(circles([...sources, ...scripts])).toEqual([]);
  });

  test.each([
    ['import { a } from "../catalogue/a";', "src/catalogue/a"],
    ['import type { A } from "../catalogue/a";', "src/catalogue/a"],
    ['export * from "../catalogue/a";', "src/catalogue/a"],
    ['const a = await import("../catalogue/a");', "src/catalogue/a"],
    ['type A = import("../catalogue/a").A;', "src/catalogue/a"],
    ['const a = require("../catalogue/a");', "src/catalogue/a"],
    ['import a = require("../catalogue/a");', "src/catalogue/a"],
    ['import "../catalogue/a";', "src/catalogue/a"],
  ])("%s is seen, and refused in the core", (text, file) => {
    const [found] = importsOf("src/core/probe.ts", text);
    expect(found?.file).toBe(file);
    expect(found && mayImport("src/core/probe.ts", found)).toBe(false);
  });

  test.each(['import { readFileSync } from "node:fs";', 'import * as z from "zod";', "const a = await import(name);"])(
    "%s is refused in the core",
    (text) => {
      const [found] = importsOf("src/core/probe.ts", text);
      expect(found && mayImport("src/core/probe.ts", found)).toBe(false);
    },
  );

  test("a circle is seen", () => {
    const imports = new Map([["a", ["b"]], ["b", ["c"]], ["c", ["b"]]]);
    expect(circles(["a", "b", "c"], (file) => imports.get(file) ?? [])).toEqual(["b → c → b"]);
  });
});

describe("what the add-in loads before a cell asks for anything", () => {
  const atOnce = loadedAtOnce("src/taskpane/main.ts");

  test("registers the functions and holds nothing of the trade", () => {
    expect([...atOnce].sort()).toEqual(["src/functions/answer.ts", "src/functions/parts.ts", "src/taskpane/main.ts"]);
  });

  test("cars, fittings, quotes, physics and bench do without the distributions of the stock functions", () => {
    const parts = ["functions", "thread-functions", "tubing-functions", "quote-functions", "physics-functions", "workshop-functions"].map((name) => `src/functions/${name}.ts`);
    expect([...parts, "src/taskpane/excel-panel.ts"].filter((part) => loadedAtOnce(part).some((each) => each.startsWith("@stdlib/")))).toEqual([]);
    expect(loadedAtOnce("src/functions/stock-functions.ts").some((each) => each.startsWith("@stdlib/"))).toBe(true);
  });

  test("the reference of the functions brings none of the functions", () => {
    expect([...loadedAtOnce("src/functions/reference.ts")].sort()).toEqual(["examples.ts", "functions.json", "headings.json", "reference.ts"].map((name) => `src/functions/${name}`));
  });

  test("a verdict and the panel do not wait for the cut plan", () => {
    const planned = (entry: string): readonly string[] => loadedAtOnce(entry).filter((each) => each.startsWith("src/core/cutplan/"));
    expect(["src/functions/functions.ts", "src/taskpane/excel-panel.ts"].flatMap(planned)).toEqual([]);
    expect(planned("src/functions/tubing-functions.ts")).not.toEqual([]);
  });
});

test("every file of src opens with the sentence it exists for", () => {
  expect(sources.filter((file) => !/^\/\*\*[\s*]+[`A-Z]/.test(ts.sys.readFile(`${projectFolder}/${file}`) ?? ""))).toEqual([]);
});

describe("global names", () => {
  const probe = "src/catalogue/probe.ts";
  const probeText = `
    export const ours = (document: { title: string }): { Excel: string } => ({ Excel: document.title });
    export const theirs = { page: window, run: Excel.run, words: process.argv, error: CustomFunctions.Error };
    console.log(ours, theirs, setTimeout, performance.now());`;
  const compiled = compiledSources([...sources, probe], new Map([[probe, probeText]]));
  const uses = globalNamesUsed(compiled);

  test("a file of src uses only the global names that its place allows", () => {
    const wrong = sources.flatMap((file) =>
      (uses.get(file) ?? []).filter(({ of }) => !globalsAllowedIn(file).includes(of)).map(({ name, of }) => `${file} uses ${name} (${of})`),
    );
    expect(wrong).toEqual([]);
  });

  test("a global name is told from a variable, a parameter and a property of ours with the same name", () => {
    const names = (uses.get(probe) ?? []).map(({ name, of }) => `${name} (${of})`);
    expect(names.sort()).toEqual(["CustomFunctions (CustomFunctions)", "Excel (Office)", "process (Node)", "window (DOM)"]);
  });

  // Every Excel with the shared runtime that the manifest asks for has ExcelApi 1.10 (both tables of the platform's reference: Version 2002 against Version 1907).
  test("of Excel nothing newer is used than comes with what the manifest asks for, but what docs/excel.md names with what is missing without it", () => {
    const members = officeMembersUsed(compiled);
    expect(members.length).toBeGreaterThan(50);
    const newer = members.filter(({ set }) => Number(/^ExcelApi 1\.(\d+)$/.exec(set)?.[1] ?? 99) > 10);
    expect(newer.map(({ member, set }) => `${member} (${set})`).sort()).toEqual(["Range.getSpillParentOrNullObject (ExcelApi 1.12)", "WorksheetChangedEventArgs.triggerSource (ExcelApi 1.14)"]);
    for (const { set } of newer) expect(ts.sys.readFile(`${projectFolder}/docs/excel.md`)).toContain(set);
  });

  test("the core has no clock, no chance, and no language of the machine it runs on", () => {
    const forbidden = /\bDate\b|\bMath\.random\b|\bIntl\b|\.toLocale\w*\(|\.localeCompare\(/;
    const wrong = sources.filter((file) => layerOf(file) === "core" && forbidden.test(withoutComments(file)));
    expect(wrong).toEqual([]);
  });
});

describe("the compiler options of the core", () => {
  test("a plain text compiles", () => expect(compileInCore("export const area = (side: number): number => side ** 2;")).toEqual([]));

  test.each([
    ["document", "export const title = document.title;"],
    ["Excel", "export const run = Excel.run;"],
    ["CustomFunctions", "export const error = CustomFunctions.Error;"],
    ["node:fs", 'import { readFileSync } from "node:fs"; export const read = readFileSync;'],
    ["process", "export const words = process.argv;"],
    ["console", 'console.log("said");'],
    ["setTimeout", "setTimeout(() => undefined, 1);"],
  ])("%s does not", (name, text) => expect(compileInCore(text).join("\n")).toContain(`'${name}'`));
});

/** The first circle through each file that has one, as "a → b → a", told once whatever file it is met from. */
function circles(files: readonly string[], next = filesImportedBy): readonly string[] {
  const found = new Map<string, string>();
  const done = new Set<string>();
  const visit = (file: string, path: readonly string[]): void => {
    const start = path.indexOf(file);
    if (start >= 0) {
      const circle = path.slice(start);
      found.set([...circle].sort().join(), [...circle, file].join(" → "));
    } else if (!done.has(file)) {
      for (const each of next(file)) visit(each, [...path, file]);
      done.add(file);
    }
  };
  for (const file of files) visit(file, []);
  return [...found.values()];
}

function filesImportedBy(file: string): readonly string[] {
  return file.endsWith(".ts") ? importsOf(file).flatMap((each) => (each.file && each.file !== file ? [each.file] : [])) : [];
}

function withoutComments(file: string): string {
  const source = ts.createSourceFile(file, ts.sys.readFile(`${projectFolder}/${file}`) ?? "", ts.ScriptTarget.ES2022, true);
  return ts.createPrinter({ removeComments: true }).printFile(source);
}

/** The compiler's complaints about a text that stands in src/core, without writing it there. */
function compileInCore(text: string): readonly string[] {
  const options = compilerOptions("src/core/tsconfig.json");
  const probe = `${projectFolder}/src/core/probe.ts`;
  const host = ts.createCompilerHost(options);
  const getSourceFile = host.getSourceFile.bind(host);
  host.getSourceFile = (name, version) => (name === probe ? ts.createSourceFile(name, text, version) : getSourceFile(name, version));
  const program = ts.createProgram([probe], options, host);
  return ts.getPreEmitDiagnostics(program).map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, "\n"));
}
