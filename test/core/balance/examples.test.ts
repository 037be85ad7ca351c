/** Every formula that names a source says its units and carries an example worked by hand; here the examples run. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { createContext, runInContext } from "node:vm";
import * as quantities from "../../../src/core/quantity";

const folder = join(__dirname, "../../../src/core/balance");
const files = readdirSync(folder).filter((name) => name.endsWith(".ts"));

interface Formula {
  readonly file: string;
  readonly name: string;
  readonly params: readonly string[];
  readonly returns: string | undefined;
  readonly example: string | undefined;
}

/** The comments with an @source, each with the name of what it stands on. */
function formulasIn(file: string): Formula[] {
  const text = readFileSync(join(folder, file), "utf8");
  return [...text.matchAll(/\/\*\*((?:(?!\*\/)[\s\S])*?)\*\/\s*export (?:const|function) (\w+)/g)].filter(([, comment]) => comment?.includes("@source")).map(([, comment = "", name = ""]) => {
    const tags = (tag: string): string[] => [...comment.matchAll(new RegExp(`@${tag} ([^\\n]*)`, "g"))].map((found) => found[1] ?? "");
    return { file, name, params: tags("param"), returns: tags("returns")[0], example: tags("example")[0] };
  });
}

const formulas = files.flatMap(formulasIn);

test("there are formulas, and each file that has some was found", () => expect(formulas.length).toBeGreaterThan(35));

test.each(formulas.map((one) => [one.name, one] as const))("%s says the unit of each argument and of its answer", (_, { params, returns }) => {
  expect(params.length).toBeGreaterThan(0);
  const says = /\[[^\]]+\]|^sense leading|^type kind of/;
  for (const text of [...params, returns ?? ""]) expect(text).toMatch(says);
});

const examples = formulas.filter(({ example }) => example !== undefined);

test.each(examples.map((one) => [one.example, one] as const))("%s", async (_, { example = "" }) => {
  const [expression = "", expected = ""] = example.split(" // => ");
  const modules = await Promise.all(files.map((name) => import(join(folder, name)) as Promise<Record<string, unknown>>));
  const scope = createContext(Object.assign({}, quantities, ...modules) as Record<string, unknown>);
  const run = (code: string): unknown => runInContext(code, scope) as unknown;
  const [got, want] = [[run(expression)].flat(), [run(expected)].flat()] as [number[], number[]];
  expect(got).toHaveLength(want.length);
  // As many digits as the example shows, and never fewer than three.
  for (const [index, value] of want.entries()) expect(Math.abs((got[index] ?? NaN) - value)).toBeLessThanOrEqual(Math.abs(value) * 6e-4);
});

test("every formula with a closed number has an example: only those that take a whole car have none", () => {
  expect(formulas.filter(({ example }) => example === undefined).map(({ name }) => name).sort()).toEqual(["chordSlope", "efficiencyOn", "largestRearScale", "largestSplit", "lineMargin", "travelOf"]);
});
