import { spawnSync } from "node:child_process";
import { resolve } from "node:path";

/** What the program of without-eval.ts says, with or without the leave to make code of text. */
function runWith(...options: readonly string[]): unknown {
  const { stdout, stderr, status } = spawnSync(process.execPath, [...options, "--import", "tsx", resolve(__dirname, "without-eval.ts")], { encoding: "utf8", cwd: resolve(__dirname, "../..") });
  if (status !== 0) throw new Error(stderr);
  return JSON.parse(stdout);
}

// docs/decisions/content-security.md rests on this. When the grid passes without, 'unsafe-eval' can go from scripts/page-server.ts.
test("our functions and files make no code of text; the grid does for each formula", () => {
  const without = runWith("--disallow-code-generation-from-strings") as { readonly cars: number };
  expect(without).toEqual({ verdicts: without.cars, cars: without.cars, sheets: true, onePlusOne: 0 });
  expect(runWith()).toMatchObject({ onePlusOne: 2 });
}, 60_000);
