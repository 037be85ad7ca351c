// npm run nightly [-- ROWS]: the hard-use suite with a million rows, or as many as are asked for here or in HARD_USE_ROWS.
import { runNode } from "./run-command.mjs";

const rows = process.argv[2] ?? process.env.HARD_USE_ROWS ?? "1000000";
process.env.HARD_USE_ROWS = rows;
console.log(`Hard use with ${Number(rows).toLocaleString("en-US")} rows.`);
const start = performance.now();
try {
  await runNode("node_modules/jest/bin/jest.js", "test/hard-use", "--verbose");
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
console.log(`${((performance.now() - start) / 1000).toFixed(0)} s`);
