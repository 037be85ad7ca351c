// Plain Node with no dependency: it runs before anything is installed.
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { runCommand } from "./run-command.mjs";

export const projectFolder = fileURLToPath(new URL("..", import.meta.url));

/** Installs the packages of package-lock.json unless exactly those are there already. */
export async function ensureInstalled() {
  if (isInstalled()) return;
  console.log("Installing the packages of package-lock.json …");
  await runNpm(["ci", "--no-audit", "--no-fund", "--loglevel=error"]);
}

/** npm keeps its own list of what it installed; a package that is missing there, or has another version, is stale. */
function isInstalled() {
  const wanted = readPackages("package-lock.json");
  const present = readPackages("node_modules/.package-lock.json");
  if (!wanted || !present) return false;
  return Object.entries(wanted).every(([path, { version, optional }]) => {
    if (path === "") return true;
    const found = present[path];
    return found ? found.version === version && existsSync(`${projectFolder}/${path}`) : optional === true;
  });
}

function readPackages(file) {
  const path = `${projectFolder}/${file}`;
  if (!existsSync(path)) return undefined;
  try {
    return JSON.parse(readFileSync(path, "utf8")).packages;
  } catch {
    return undefined; // half written by an interrupted install
  }
}

/** npm tells its scripts where it is itself; on Windows the bare name is a batch file, which needs a shell. */
function runNpm(words) {
  const own = process.env.npm_execpath;
  if (own?.endsWith("npm-cli.js")) return runCommand(process.execPath, [own, ...words]);
  return runCommand("npm", words, { shell: process.platform === "win32" });
}
