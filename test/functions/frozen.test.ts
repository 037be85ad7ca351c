import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import described from "../../src/functions/functions.json";
import { answerHeadings } from "../../src/functions/answer-headings";
import { frozen } from "./frozen";

const page = readFileSync(resolve(__dirname, "../../docs/functions.md"), "utf8");

/** The part of docs/functions.md about a function. */
const sectionOf = (id: string): string => new RegExp(`^## ${id}\\n(.*?)(?=^## |(?![^]))`, "ms").exec(page)?.[1] ?? "";

test.each(Object.entries(frozen))("%s takes and answers what it always did, and says so in docs/functions.md; more comes at the end only", (id, [takes, answers]) => {
  const now = described.functions.find((each) => each.id === id)?.parameters ?? [];
  const said = now.map((each) => ("repeating" in each ? `${each.name}, …` : "optional" in each ? `[${each.name}]` : each.name));
  const before = takes.replace(", …", "…").split(", ").map((each) => each.replace("…", ", …"));
  expect(said.slice(0, before.length)).toEqual(before);
  expect(said.slice(before.length).every((each) => each.startsWith("["))).toBe(true);
  expect(sectionOf(id)).toContain(`\`=PLUMB.${id}(${said.join(", ")})\``);
  const columns = answerHeadings("us")[id] ?? [];
  const old = answers === "" ? [] : answers.split(" · ");
  expect(columns.slice(0, old.length)).toEqual(old);
  expect(sectionOf(id)).toContain(columns.length === 0 ? "Answers with one cell." : `in this order: ${columns.join(" · ")}.`);
});

test("every function is frozen from the day it is there", () => expect(Object.keys(frozen).sort()).toEqual(described.functions.map(({ id }) => id).sort()));
