// Makes sure that there is a browser for the tests: finds one, or installs Chromium where apt can.
import { spawnSync } from "node:child_process";
import { findBrowser } from "./browser";

/** Without a font a page has no text to look at, and a bare Debian has none. */
const packages = ["chromium", "fonts-dejavu-core"];

const found = findBrowser() ?? installChromium();
if (found) {
  console.log(`Browser: ${found}`);
} else {
  console.error(
    "No browser found. Install Chromium, Chrome or Edge (on Debian: apt-get install chromium), or set PLUMBLINE_BROWSER to the path of one.",
  );
  process.exitCode = 1;
}

function installChromium(): string | undefined {
  const administrator = becomeAdministrator();
  if (!administrator) return undefined;
  console.log("Installing Chromium with apt-get …");
  for (const words of [["update"], ["install", "--yes", "--no-install-recommends", ...packages]]) {
    const [program = "", ...rest] = [...administrator, "apt-get", ...words];
    const { status } = spawnSync(program, rest, { stdio: "inherit", env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } });
    if (status !== 0) return undefined;
  }
  return findBrowser();
}

/** The words to put before a command that needs root: none as root, sudo where it asks no password, undefined where neither works. */
function becomeAdministrator(): readonly string[] | undefined {
  if (spawnSync("apt-get", ["--version"]).status !== 0) return undefined;
  if (process.getuid?.() === 0) return [];
  return spawnSync("sudo", ["-n", "true"]).status === 0 ? ["sudo", "-n"] : undefined;
}
