import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";

/**
 * The browser for browser tests, screenshots and icons: PLUMBLINE_BROWSER when set, else Chromium, Chrome or Edge
 * from the search path or the places where their installers put them.
 * @returns the full path of the program, or undefined when there is none
 */
export function findBrowser(): string | undefined {
  const chosen = process.env["PLUMBLINE_BROWSER"];
  if (chosen) return chosen;
  return [...onSearchPath(), ...usualPlaces()].find(isProgram);
}

/** No sandbox inside a container that runs as root; the rest keeps the browser from calling home. */
export const browserArguments: readonly string[] = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

const programNames = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "microsoft-edge"];

function onSearchPath(): readonly string[] {
  if (process.platform === "win32") return [];
  const folders = (process.env["PATH"] ?? "").split(delimiter).filter(Boolean);
  return programNames.flatMap((name) => folders.map((folder) => join(folder, name)));
}

function usualPlaces(): readonly string[] {
  switch (process.platform) {
    case "win32":
      return windowsPlaces();
    case "darwin":
      return ["Google Chrome", "Chromium", "Microsoft Edge"].map((name) => `/Applications/${name}.app/Contents/MacOS/${name}`);
    default:
      return ["/usr/bin", "/usr/lib/chromium", "/opt/google/chrome", "/opt/microsoft/msedge"].flatMap((folder) =>
        ["chromium", "chrome", "msedge"].map((name) => join(folder, name)),
      );
  }
}

function windowsPlaces(): readonly string[] {
  const roots = ["ProgramFiles", "ProgramFiles(x86)", "LOCALAPPDATA"].map((name) => process.env[name]);
  const programs = ["Google\\Chrome\\Application\\chrome.exe", "Chromium\\Application\\chrome.exe", "Microsoft\\Edge\\Application\\msedge.exe"];
  return roots.flatMap((root) => (root ? programs.map((program) => join(root, program)) : []));
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
