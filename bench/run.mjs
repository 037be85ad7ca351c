// npm run bench [-- --only cars,balance,cutplan,shop,page]: bundles the bench, since a loader that keeps names would be measured too, and runs it with a collector to call.
import { spawnSync } from "node:child_process";
import { rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const at = (name) => fileURLToPath(new URL(name, import.meta.url));
const outfile = at("../dist/bench.mjs");
// The bundle lies elsewhere than the files that ask where they are.
const define = { "import.meta.dirname": JSON.stringify(import.meta.dirname) };
try {
  await build({ entryPoints: [at("main.ts")], outfile, define, bundle: true, platform: "node", format: "esm", packages: "external", target: "node20", logLevel: "error" });
  const { status } = spawnSync(process.execPath, ["--expose-gc", "--max-old-space-size=4096", outfile, ...process.argv.slice(2)], { stdio: "inherit" });
  process.exitCode = status ?? 1;
} finally {
  rmSync(outfile, { force: true });
}
