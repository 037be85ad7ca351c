// npm run supply: licences of everything in the lock file, known vulnerabilities, and dist/sbom.cdx.json, the bill of materials.
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { licenceExceptions, licenceProblems, lockedPackages } from "./licences";

const folder = fileURLToPath(new URL("..", import.meta.url));

/** Advisories that do not touch us, by package, each with why. */
const auditExceptions: Readonly<Record<string, string>> = {};

try {
  const problems = [...checkLicences(), ...checkAdvisories()];
  writeBill();
  for (const problem of problems) console.error(problem);
  if (problems.length > 0) process.exitCode = 1;
} catch (problem) {
  console.error(problem instanceof Error ? problem.message : problem);
  process.exitCode = 1;
}

function checkLicences(): readonly string[] {
  const packages = lockedPackages(`${folder}package-lock.json`);
  console.log(`Licences: ${packages.length} packages, ${Object.keys(licenceExceptions).length} exceptions.`);
  return licenceProblems(packages);
}

/** A registry may not answer about advisories; then that is said, and nothing is claimed. */
function checkAdvisories(): readonly string[] {
  const { vulnerabilities } = npm("audit", "--json") as { readonly vulnerabilities?: Readonly<Record<string, { readonly severity: string }>> };
  if (!vulnerabilities) {
    console.log("Advisories: NOT CHECKED, the registry in use does not answer about them. Run npm audit where it does.");
    return [];
  }
  const found = Object.entries(vulnerabilities);
  const open = found.filter(([name]) => !(name in auditExceptions));
  console.log(`Advisories: ${found.length} packages, ${found.length - open.length} explained.`);
  return open.map(([name, { severity }]) => `${name}: an advisory (${severity}) that is neither mended nor explained.`);
}

function writeBill(): void {
  const bill = npm("sbom", "--sbom-format=cyclonedx") as { readonly metadata: { readonly component: { name: string } }; readonly components: readonly unknown[] };
  // npm calls the project after its folder.
  bill.metadata.component.name = (JSON.parse(readFileSync(`${folder}package.json`, "utf8")) as { readonly name: string }).name;
  mkdirSync(`${folder}dist`, { recursive: true });
  writeFileSync(`${folder}dist/sbom.cdx.json`, `${JSON.stringify(bill, undefined, 1)}\n`);
  console.log(`Bill of materials: dist/sbom.cdx.json, ${bill.components.length} components.`);
}

/** What an npm command prints as JSON; it may end with an error and still tell why. */
function npm(...words: readonly string[]): unknown {
  const { stdout, stderr, error } = spawnSync("npm", words, { cwd: folder, encoding: "utf8", maxBuffer: 1e8, shell: process.platform === "win32" });
  if (error) throw error;
  try {
    return JSON.parse(stdout) as unknown;
  } catch {
    throw new Error(`npm ${words.join(" ")} gave no answer: ${stderr.trim()}`);
  }
}
