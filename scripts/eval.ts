import { readFileSync } from "node:fs";
import { type WorkbookDocument } from "../src/workbook/document";
import { readXlsx, WorkbookFileError } from "../src/workbook/xlsx/read";

const usage = `Usage: npm run --silent eval -- [--workbook FILE.xlsx] '=PLUMB.RUNS(Cars[#Headers], Cars, Catalog!B2)'
Prints the rows as JSON and ends with 0; a formula error prints {"error","message"} and ends with 1. Without a file: the demo workbook.
The formula stands in row 2 of a sheet of its own, so Cars[@] is the car in row 2.`;

/** A command that cannot be followed: a sentence and how to do it. */
class UsageError extends Error {}

async function run(words: readonly string[]): Promise<number> {
  const { file, formula } = readWords(words);
  const opened = file === undefined ? undefined : open(file);
  // Only now the grid, so that a wrong command is answered at once.
  const { evaluateFormula, demoDocument, productFunctions, gridLibrary } = await import("./eval-parts");
  const answer = evaluateFormula(gridLibrary, opened ?? demoDocument(), productFunctions, formula);
  const failed = "error" in answer;
  process.stdout.write(`${JSON.stringify(failed ? answer : answer.rows)}\n`);
  return failed ? 1 : 0;
}

function readWords(words: readonly string[]): { readonly file?: string; readonly formula: string } {
  const formulas: string[] = [];
  let file: string | undefined;
  for (let at = 0; at < words.length; at++) {
    const word = words[at] ?? "";
    if (word === "--workbook") {
      file = words[++at];
      if (file === undefined) throw new UsageError("--workbook needs a file.");
    } else if (word.startsWith("--workbook=")) file = word.slice("--workbook=".length);
    else if (word.startsWith("--")) throw new UsageError(`There is no option ${word}.`);
    else formulas.push(word);
  }
  const [formula] = formulas;
  if (formula === undefined || formula.trim() === "") throw new UsageError("There is no formula.");
  if (formulas.length > 1) throw new UsageError("There is more than one formula: put quotes round it.");
  return { formula: formula.trim(), ...(file === undefined ? {} : { file }) };
}

function open(file: string): WorkbookDocument {
  try {
    return readXlsx(readFileSync(file));
  } catch (problem) {
    if (problem instanceof WorkbookFileError) throw new UsageError(`${file}: ${problem.message}`);
    const { code } = problem as NodeJS.ErrnoException;
    if (code === "ENOENT") throw new UsageError(`There is no file ${file}.`);
    if (code === "EISDIR" || code === "EACCES") throw new UsageError(`${file} cannot be read.`);
    throw problem;
  }
}

try {
  process.exitCode = await run(process.argv.slice(2));
} catch (problem) {
  if (!(problem instanceof UsageError)) throw problem;
  process.stderr.write(`${problem.message}\n${usage}\n`);
  process.exitCode = 2;
}
