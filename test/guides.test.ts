/** What the documentation names is there: files, links, commands, pictures; and its formulas answer what it says. */
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, normalize } from "node:path";
import { pictureFile, scenes } from "../scripts/pictures/scenes";
import { gridLibrary } from "../scripts/grid-library";
import { once } from "../src/core/made-once";
import { demoDocument } from "../src/embedded/demo-document";
import { formulaEvaluator } from "../src/embedded/eval-formula";
import { productFunctions } from "../src/embedded/product-functions";
import { places } from "../src/taskpane/places";

const root = readdirSync(".").filter((file) => file.endsWith(".md"));
const documents = [...root, ...readdirSync("docs", { recursive: true, encoding: "utf8" }).filter((file) => file.endsWith(".md")).map((file) => join("docs", file))];
const textOf = (path: string): string => readFileSync(path, "utf8");
const guides = documents.filter((path) => path.startsWith("docs/guide/"));

describe.each(documents)("%s", (path) => {
  test("names only files that are there", () => {
    const named = [...textOf(path).matchAll(/`((?:src|docs|test|scripts|bench|assets|types|\.ci|\.githooks|\.github)\/[^`\s*<>]*)`/g)].map(([, file = ""]) => file);
    expect(named.filter((file) => !existsSync(file))).toEqual([]);
  });

  test("links only to files that are there", () => {
    const links = [...textOf(path).matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/g)].map(([, link = ""]) => link).filter((link) => !/^[a-z]+:/.test(link));
    expect(links.filter((link) => !existsSync(normalize(join(dirname(path), link))))).toEqual([]);
  });

  test("names only commands that are there", () => {
    const { scripts } = JSON.parse(textOf("package.json")) as { scripts: Record<string, string> };
    const named = [...textOf(path).matchAll(/npm run (?:--silent )?([a-z][\w:-]*)/g)].map(([, script = ""]) => script);
    expect(named.filter((script) => !(script in scripts))).toEqual([]);
  });
});

test("every document under docs is reached from its index or from a page that is", () => {
  const reached = new Set<string>();
  const follow = (path: string): void => {
    if (reached.has(path) || !path.endsWith(".md")) return;
    reached.add(path);
    for (const [, link = ""] of textOf(path).matchAll(/\]\(([^)#\s]+\.md)/g)) follow(normalize(join(dirname(path), link)));
  };
  follow("docs/README.md");
  expect(documents.filter((path) => path.startsWith("docs/") && !path.startsWith("docs/decisions/") && !reached.has(path))).toEqual([]);
});

describe("pictures", () => {
  const files = readdirSync("docs/pictures").sort();

  test("those that are there are those that npm run pictures takes", () => {
    expect(files).toEqual(scenes.flatMap(({ name, widths }) => widths.map((width) => pictureFile(name, width))).sort());
  });

  test("each is in a guide, and every view is among them, narrow and wide", () => {
    const shown = new Set(guides.flatMap((path) => [...textOf(path).matchAll(/!\[[^\]]+\]\(\.\.\/pictures\/([^)]+)\)/g)].map(([, file = ""]) => file)));
    expect([...shown].sort()).toEqual(files);
    const views = places.flatMap((place) => place.views.map(({ id }) => id));
    expect(views.flatMap((id) => [350, 1280].map((width) => pictureFile(id, width))).filter((file) => !shown.has(file))).toEqual([]);
  });

  test("together they stay under 2 MB", () => {
    expect(files.reduce((sum, file) => sum + statSync(`docs/pictures/${file}`).size, 0)).toBeLessThan(2_000_000);
  });
});

interface Example {
  readonly path: string;
  readonly formula: string;
  /** What rows of the answer begin with, cells parted by bars. */
  readonly begins: readonly string[];
}

/** In a block marked as formula, a line that begins with = is a formula, and an arrow under it what a row of its answer begins with. */
const examples = documents.flatMap((path) => [...textOf(path).matchAll(/^```formula\n([\s\S]*?)^```$/gm)].flatMap(([, block = ""]) => examplesOf(path, block.trim().split("\n"))));

function examplesOf(path: string, lines: readonly string[]): readonly Example[] {
  const starts = lines.flatMap((line, index) => (line.startsWith("=") ? [index] : []));
  return starts.map((start, index) => ({ path, formula: lines[start] ?? "", begins: lines.slice(start + 1, starts[index + 1]).map((line) => line.replace(/^→ */, "")) }));
}

test("every guide has formulas, and a block of formulas holds nothing else", () => {
  expect(examples.length).toBeGreaterThan(12);
  const lines = documents.flatMap((path) => [...textOf(path).matchAll(/^```formula\n([\s\S]*?)^```$/gm)].flatMap(([, block = ""]) => block.trim().split("\n")));
  expect(lines.filter((line) => !/^(=|→ )/.test(line))).toEqual([]);
});

const answerOf = once(() => formulaEvaluator(gridLibrary, demoDocument(), productFunctions));

test.each(examples)("$path: $formula answers as it says", ({ formula, begins }) => {
  const answer = answerOf()(formula);
  if ("error" in answer) throw new Error(`${formula} answers ${answer.error}: ${answer.message}`);
  const rows = answer.rows.map((row) => row.map((cell) => String(cell).trim()));
  for (const says of begins) {
    const cells = says.split("|").map((cell) => cell.trim());
    expect(rows.map((row) => row.slice(0, cells.length))).toContainEqual(cells);
  }
});
