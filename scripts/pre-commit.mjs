// What a commit is checked for, in under ten seconds: lint of the staged files by the rules that need no types, and the type checks, remembered between runs.
import { execFileSync } from "node:child_process";
import { projectFolder } from "./installation.mjs";
import { runNode } from "./run-command.mjs";

const tsc = "node_modules/typescript/bin/tsc";
const remembered = (name) => ["--incremental", "--tsBuildInfoFile", `node_modules/.cache/plumbline/${name}.tsbuildinfo`];

process.env.LINT_WITHOUT_TYPES = "yes";

const staged = execFileSync("git", ["diff", "--cached", "--name-only", "--diff-filter=d", "-z"], { cwd: projectFolder, encoding: "utf8" }).split("\0");
const linted = staged.filter((file) => /\.(?:ts|mjs|js)$/.test(file));

try {
  await Promise.all([
    runNode(tsc, "-p", "tsconfig.json", ...remembered("all")),
    ...(staged.some((file) => file.startsWith("src/core/")) ? [runNode(tsc, "-p", "src/core/tsconfig.json", ...remembered("core"))] : []),
    ...(linted.length > 0 ? [runNode("node_modules/eslint/bin/eslint.js", "--max-warnings", "0", ...linted)] : []),
  ]);
} catch (error) {
  console.error(`Not committed: ${error instanceof Error ? error.message : error}`);
  process.exitCode = 1;
}
