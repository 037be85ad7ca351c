// npm run build [-- --origin https://HOST] [--only addin|embedded] [--quiet]: writes dist/addin (for Excel) and dist/embedded (the local page).
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { gzipSync } from "node:zlib";
import webpack from "webpack";
import configure from "../webpack.config.js";
import { developmentOrigin } from "./function-metadata";

/**
 * Bytes after compression that a cell waits for. The aim is 60 kB; since every verdict needs the physics, the functions alone are past it,
 * so this holds what there is until they are split (docs/decisions/first-load.md).
 */
const firstLoadLimit = 110_000;

try {
  const { origin, only, quiet } = readArguments();
  const stats = await build(configure(only ? { origin, only } : { origin }));
  if (!quiet) console.log(stats.toString({ colors: process.stdout.isTTY, modules: false }));
  if (stats.hasErrors()) throw new Error(quiet ? stats.toString({ preset: "errors-only" }) : "The build has errors.");
  if (only !== "embedded") weighAddin(origin);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}

function readArguments(): { origin: string; only: string | undefined; quiet: boolean } {
  const { origin, only, quiet } = parseArgs({
    options: {
      origin: { type: "string", default: developmentOrigin },
      only: { type: "string" },
      quiet: { type: "boolean", default: false },
    },
  }).values;
  const url = URL.canParse(origin) ? new URL(origin) : undefined;
  if (url?.protocol !== "https:" || url.origin !== origin) {
    throw new Error(`--origin is https:// and a host, with nothing after it (read: ${origin}).`);
  }
  if (only !== undefined && only !== "addin" && only !== "embedded") {
    throw new Error(`--only is addin or embedded (read: ${only}).`);
  }
  return { origin, only, quiet };
}

function build(configurations: webpack.Configuration[]): Promise<webpack.MultiStats> {
  return new Promise((resolve, reject) => {
    const compiler = webpack(configurations);
    compiler.run((error, stats) => {
      compiler.close(() => {
        if (error || !stats) reject(error ?? new Error("webpack gave no result."));
        else resolve(stats);
      });
    });
  });
}

/** @throws Error when the page asks more of its host, before it can show anything, than the limit */
function weighAddin(origin: string): void {
  const folder = fileURLToPath(new URL("../dist/addin/", import.meta.url));
  const size = ["taskpane.html", "taskpane.js"].reduce((sum, name) => sum + gzipSync(readFileSync(folder + name)).length, 0);
  console.log(`Built for ${origin}. First load of the add-in: ${(size / 1000).toFixed(1)} kB compressed.`);
  if (size > firstLoadLimit) throw new Error(`The first load of the add-in may be ${firstLoadLimit / 1000} kB compressed.`);
}
