/** The glossary is true of the code: its names are there, and the names it rules out are not. */
import { readFileSync, readdirSync } from "node:fs";

const glossary = readFileSync("docs/glossary.md", "utf8");
const rows = glossary.split("\n").filter((line) => line.startsWith("| ") && !/^\| (word|---)/.test(line)).map((line) => line.split("|").map((cell) => cell.trim()).slice(1, -1));
const codeIn = (cell = ""): string[] => [...cell.matchAll(/`([^`]+)`/g)].map(([, name = ""]) => name);

/** Identifiers of all sources, comments and texts left out: what the code calls things, not what it says. */
const identifiers = new Set(readdirSync("src", { recursive: true, encoding: "utf8" }).filter((file) => file.endsWith(".ts"))
  .flatMap((file) => readFileSync(`src/${file}`, "utf8").replace(/\/\*[\s\S]*?\*\/|\/\/[^\n]*|"(?:[^"\\\n]|\\.)*"/g, " ").match(/[A-Za-z_$][\w$]*/g) ?? []));
const wordsOf = (identifier: string): string => identifier.replace(/([a-z\d])([A-Z])/g, "$1 $2").toLowerCase();
const usedWords = new Set([...identifiers].flatMap((identifier) => [identifier.toLowerCase(), ...wordsOf(identifier).split(/[ _$]+/)]));

test("the glossary has a line for each thing, and no word twice", () => {
  const words = rows.map(([word = ""]) => word);
  expect(words.length).toBeGreaterThan(40);
  expect(words).toEqual([...new Set(words)]);
});

test.each(rows.map(([word = "", code = ""]) => [word, code]))("%s is what the code calls it", (_, code) => {
  expect(codeIn(code).filter((name) => !identifiers.has(name))).toEqual([]);
});

test.each(rows.map(([word = "", , , never = ""]) => [word, never]))("%s has no second name in the code", (_, never) => {
  expect(codeIn(never).filter((name) => usedWords.has(name.toLowerCase()))).toEqual([]);
});
