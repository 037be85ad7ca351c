/** Every documented function of src/core/stock: its parameters state a unit, and its example gives the value beside it. Only one file names the distributions' package. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import vm from "node:vm";
import ts from "typescript";
import { filesUnder, importsOf, projectFolder } from "../../architecture/source-files";

const files = filesUnder("src/core/stock");

interface Documented {
  readonly file: string;
  readonly name: string;
  /** Each with its name. */
  readonly parameters: readonly string[];
  readonly example: string | undefined;
}

const documented = files.flatMap((file): Documented[] => {
  const source = ts.createSourceFile(file, readFileSync(resolve(projectFolder, file), "utf8"), ts.ScriptTarget.ES2022, true);
  return source.statements.flatMap((statement) => {
    const tags = ts.getJSDocTags(statement);
    const said = (name: string): string[] => tags.filter(({ tagName }) => tagName.text === name).map(({ comment }) => ts.getTextOfJSDocComment(comment) ?? "");
    const name = nameOf(statement);
    return name !== undefined && said("source").length > 0 ? [{ file, name, parameters: tags.filter(ts.isJSDocParameterTag).map((tag) => `${tag.name.getText()}: ${ts.getTextOfJSDocComment(tag.comment) ?? ""}`), example: said("example")[0] }] : [];
  });
});

function nameOf(statement: ts.Statement): string | undefined {
  if (ts.isFunctionDeclaration(statement)) return statement.name?.text;
  return ts.isVariableStatement(statement) ? statement.declarationList.declarations[0]?.name.getText() : undefined;
}

/** @example f(1, 2) // => 3; an array-like answer is compared item by item, to 9 digits. */
async function runExample({ file, example = "" }: Documented): Promise<{ got: unknown; expected: unknown }> {
  const [call = "", expected = ""] = example.split("// =>");
  const exported = (await import(resolve(projectFolder, file))) as Record<string, unknown>;
  const run = (text: string): unknown => vm.runInNewContext(`(${text})`, { ...exported, Float64Array });
  return { got: rounded(run(call)), expected: rounded(run(expected)) };
}

const rounded = (value: unknown): unknown => {
  if (typeof value === "number") return Number(value.toPrecision(9));
  return typeof value === "object" && value !== null ? Array.from(value as ArrayLike<unknown>, rounded) : value;
};

test("there are documented functions", () => expect(documented.length).toBeGreaterThan(25));

test.each(documented.map((one) => [one.name, one] as const))("%s: every parameter states its unit, but for the choice of a method", (_name, { parameters }) => {
  expect(parameters.filter((text) => !/\[[^\]]+\]/.test(text) && !text.startsWith("method:"))).toEqual([]);
});

test.each(documented.filter(({ example }) => example !== undefined).map((one) => [one.name, one] as const))("%s: the example gives what it says", async (_name, one) => {
  const { got, expected } = await runExample(one);
  expect(got).toEqual(expected);
});

test("distributions.ts alone names the package of the distributions", () => {
  const naming = filesUnder("src").filter((file) => importsOf(file).some(({ specifier }) => specifier.startsWith("@stdlib/")));
  expect(naming).toEqual(["src/core/stock/distributions.ts"]);
});

test.each(["demand-class.ts", "forecast.ts", "smoothing.ts", "fitting-weights.ts", "pipeline.ts", "lattice.ts", "date-spread.ts", "usage-history.ts", "projection.ts"])(
  "%s does not need the distributions, so demand and forecast load without them",
  (file) => expect(reachedFrom(`src/core/stock/${file}`)).not.toContain("src/core/stock/distributions.ts"),
);

function reachedFrom(file: string, seen = new Set<string>()): readonly string[] {
  if (!seen.has(file)) {
    seen.add(file);
    for (const { file: next } of importsOf(file)) if (next?.startsWith("src/core/")) reachedFrom(next, seen);
  }
  return [...seen];
}
