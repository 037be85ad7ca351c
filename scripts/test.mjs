// npm test: everything that can be checked without an office program, on a fresh clone.
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { ensureInstalled, projectFolder } from "./installation.mjs";
import { runNode } from "./run-command.mjs";

const jest = "node_modules/jest/bin/jest.js";
const tsc = "node_modules/typescript/bin/tsc";
const resultFiles = ["unit", "browser", "timed"].map((kind) => `test-output/${kind}-results.json`);
const browserTests = ["--config", "jest.browser.config.js"];

const lint = () => runNode("node_modules/eslint/bin/eslint.js", ".", "--max-warnings", "0");
const types = () => runNode(tsc, "-p", "tsconfig.json");
const typesOfCore = () => runNode(tsc, "-p", "src/core/tsconfig.json");
const build = () => runNode("--import", "tsx", "scripts/build.ts", "--quiet");

const steps = [
  ["packages", ensureInstalled],
  ["lint, types and build", () => besideEachOther([lint], [types, typesOfCore, build])],
  ["unit and contract tests", () => runJest(resultFiles[0], [])],
  ["browser", () => runNode("--import", "tsx", "scripts/prepare-browser.ts")],
  ["browser tests", () => runJest(resultFiles[1], [...browserTests, "--maxWorkers", "2", "--testPathIgnorePatterns", "/node_modules/", "/test/browser/timed/"])],
  ["timed browser tests", () => runJest(resultFiles[2], [...browserTests, "--testPathPatterns", "/test/browser/timed/"])],
];

const failedStep = await runSteps();
const { passed, failed } = countTests();
// A step that is no test counts as one failure, so that the last line never reads as success.
console.log(`${passed} passed, ${failedStep && failed === 0 ? 1 : failed} failed`);
process.exitCode = failedStep ? 1 : 0;

/** Runs the steps until one fails; answers the name of that one. */
async function runSteps() {
  mkdirSync(`${projectFolder}/test-output`, { recursive: true });
  for (const file of resultFiles) rmSync(`${projectFolder}/${file}`, { force: true });
  for (const [name, run] of steps) {
    const start = performance.now();
    console.log(`\n— ${name}`);
    try {
      await run();
    } catch (error) {
      console.error(`\nFailed at: ${name} (${seconds(start)} s). ${error instanceof Error ? error.message : error}`);
      return name;
    }
    console.log(`  ${name}: ${seconds(start)} s`);
  }
  return undefined;
}

/** Each lane's programs one after another, the lanes beside each other: these use one processor each. */
async function besideEachOther(...lanes) {
  const ended = await Promise.allSettled(lanes.map(async (programs) => { for (const run of programs) await run(); }));
  const reasons = ended.flatMap(({ reason }) => (reason ? [reason instanceof Error ? reason.message : String(reason)] : []));
  if (reasons.length > 0) throw new Error(reasons.join("; "));
}

async function runJest(resultFile, words) {
  await runNode(jest, ...words, "--ci", "--json", `--outputFile=${resultFile}`);
  const { numPendingTests, numTodoTests } = readResults(resultFile);
  if (numPendingTests + numTodoTests > 0) throw new Error(`${numPendingTests + numTodoTests} tests were skipped; a test runs or goes.`);
}

function countTests() {
  let passed = 0;
  let failed = 0;
  for (const results of resultFiles.map(readResults)) {
    passed += results.numPassedTests;
    failed += results.numFailedTests + results.numRuntimeErrorTestSuites; // a file that did not load has no tests to count
  }
  return { passed, failed };
}

function readResults(file) {
  const path = `${projectFolder}/${file}`;
  if (existsSync(path)) return JSON.parse(readFileSync(path, "utf8"));
  return { numPassedTests: 0, numFailedTests: 0, numRuntimeErrorTestSuites: 0, numPendingTests: 0, numTodoTests: 0 };
}

function seconds(start) {
  return ((performance.now() - start) / 1000).toFixed(1);
}
