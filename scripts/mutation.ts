// npm run mutation [-- AREA ...] [-- --lines-in N]: changes the core in thousands of small ways and counts what its tests notice.
// With --lines-in 5 only one line in five is changed, always the same ones: a fifth of the time, and close to the same score.
// What survived stands in test-output/mutation/AREA.survivors.txt.
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { filesByArea, testsOf } from "./mutation/areas";
import { countOf, countsTable, survivors, type Count, type MutationReport } from "./mutation/report";

const root = fileURLToPath(new URL("..", import.meta.url));
const reports = "test-output/mutation";

const { values, positionals } = parseArgs({ allowPositionals: true, options: { "lines-in": { type: "string", default: "1" }, concurrency: { type: "string", default: "2" } } });
const linesIn = Number(values["lines-in"]);
const filesOf = filesByArea(join(root, "src/core"));

try {
  mkdirSync(join(root, reports), { recursive: true });
  const counts = (positionals.length > 0 ? positionals : Object.keys(filesOf)).map(run);
  console.log(countsTable(counts));
} catch (problem) {
  console.error(problem instanceof Error ? problem.message : problem);
  process.exitCode = 1;
}

function run(area: string): Count {
  const settings = `${reports}/${area}.settings.json`;
  writeFileSync(join(root, settings), JSON.stringify(settingsOf(area), undefined, 1));
  // Random cases are the same in every run, and fewer: the tests run thousands of times.
  const env = { PROPERTY_SEED: "7", PROPERTY_SHARE: "0.1", ...process.env };
  const { status } = spawnSync(process.execPath, ["node_modules/@stryker-mutator/core/bin/stryker.js", "run", settings], { cwd: root, stdio: "inherit", env });
  if (status !== 0) throw new Error(`The part ${area} could not be tried.`);
  const report = JSON.parse(readFileSync(join(root, reports, `${area}.json`), "utf8")) as MutationReport;
  writeFileSync(join(root, reports, `${area}.survivors.txt`), `${survivors(report)}\n`);
  return countOf(area, report);
}

/** Texts are left alone: most of them are sentences, and codes are checked by the compiler. */
function settingsOf(area: string): object {
  const files = filesOf[area];
  if (!files) throw new Error(`There is no part ${area}; there are ${Object.keys(filesOf).join(", ")}.`);
  return {
    testRunner: "mocha",
    plugins: ["@stryker-mutator/mocha-runner"],
    mochaOptions: { require: ["tsx/cjs", "./test/mutation/jest-words.ts"], spec: testsOf(area, join(root, "test")).map((name) => `test/${name}.test.ts`) },
    coverageAnalysis: "perTest",
    ignoreStatic: true,
    mutate: files.flatMap((name) => linesOf(`src/core/${name}.ts`)),
    mutator: { excludedMutations: ["StringLiteral"] },
    ignorePatterns: ["dist", "test-output"],
    tempDirName: "test-output/mutants",
    cleanTempDir: "always",
    reporters: ["clear-text", "json", "html"],
    clearTextReporter: { logTests: false, reportTests: false, reportMutants: false, allowColor: false },
    jsonReporter: { fileName: `${reports}/${area}.json` },
    htmlReporter: { fileName: `${reports}/${area}.html` },
    timeoutMS: 5000,
    timeoutFactor: 2,
    concurrency: Number(values.concurrency),
  };
}

/** The whole file, or one line in so many of it. */
function linesOf(file: string): readonly string[] {
  if (linesIn === 1) return [file];
  const lines = readFileSync(join(root, file), "utf8").split("\n");
  return lines.map((_, index) => index + 1).filter((line) => (line + file.length) % linesIn === 0).map((line) => `${file}:${line}-${line}`);
}
