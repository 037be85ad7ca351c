import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { licenceTexts } from "../scripts/bundled-licences";
import { filesUnder, importsOf, projectFolder } from "./architecture/source-files";

const read = (path: string): string => readFileSync(resolve(projectFolder, path), "utf8");

const rows = [...read("THIRD-PARTY.md").matchAll(/^\| (\S+) \| (\S+) \|/gm)].map(([, name = "", licence = ""]) => ({ name, licence })).slice(2);

test("every package that src imports is listed", () => {
  const specifiers = filesUnder("src").flatMap((file) => importsOf(file).filter((each) => each.file === undefined).map((each) => each.specifier));
  const names = new Set(specifiers.map((specifier) => specifier.split("/").slice(0, specifier.startsWith("@") ? 2 : 1).join("/")));
  expect([...names].filter((name) => !rows.some((row) => row.name === name))).toEqual([]);
});

test.each(rows)("$name has the licence $licence, as listed", ({ name, licence }) => {
  expect(JSON.parse(read(`node_modules/${name}/package.json`))).toMatchObject({ license: licence });
});

test("every version in package.json is exact", () => {
  const { dependencies, devDependencies } = JSON.parse(read("package.json")) as Record<string, Record<string, string>>;
  const loose = Object.entries({ ...dependencies, ...devDependencies }).filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version));
  expect(loose).toEqual([]);
});

test("of packages with one licence text and one notice the text is written once, under all their names", () => {
  const shared = { licence: "Do what you like.", notice: "Copyright the Authors." };
  expect(licenceTexts([{ title: "a 1.0.0 (X)", ...shared }, { title: "b 2.0.0 (Y)", licence: "Ask first.", notice: "" }, { title: "c 3.0.0 (X)", ...shared }])).toBe(
    `a 1.0.0 (X)\nc 3.0.0 (X)\n\nDo what you like.\n\nNotice:\nCopyright the Authors.\n\n${"-".repeat(80)}\n\nb 2.0.0 (Y)\n\nAsk first.\n`,
  );
});
