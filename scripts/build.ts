// npm run build [-- --origin https://HOST] [--only addin|embedded] [--quiet]: writes dist/addin (for Excel) and dist/embedded (the local page).
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { gzipSync } from "node:zlib";
import webpack from "webpack";
import configure from "../webpack.config.js";
import { developmentOrigin } from "./function-metadata";

/** Bytes after compression, so that nothing grows unseen (docs/decisions/first-load.md). */
const limits = [
  { what: "First load of the add-in", files: ["taskpane.html", "taskpane.js"], most: 60_000 },
  { what: "All that a verdict waits for", files: ["taskpane.html", "taskpane.js", "trade.js", "cars.js"], most: 90_000 },
] as const;

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

/** @throws Error when the page asks more of its host than a limit allows, or fetches ahead what is not there */
function weighAddin(origin: string): void {
  const folder = fileURLToPath(new URL("../dist/addin/", import.meta.url));
  console.log(`Built for ${origin}.`);
  for (const { what, files, most } of limits) {
    const size = files.reduce((sum, name) => sum + gzipSync(readFileSync(folder + name)).length, 0);
    console.log(`${what}: ${(size / 1000).toFixed(1)} kB compressed.`);
    if (size > most) throw new Error(`${what} may be ${most / 1000} kB compressed.`);
  }
  const ahead = [...readFileSync(`${folder}taskpane.html`, "utf8").matchAll(/rel="?preload"? href="?([^"\s>]+)/g)].map(([, name = ""]) => name);
  const missing = ahead.filter((name) => !existsSync(folder + name));
  if (ahead.length === 0) throw new Error("taskpane.html fetches nothing ahead, so the first cell would wait longer.");
  if (missing.length > 0) throw new Error(`taskpane.html fetches ahead what was not built: ${missing.join(", ")}.`);
}
