import { readFileSync } from "node:fs";

/** What the lock file says of one package. */
export interface LockedPackage {
  /** Folder, as "node_modules/zod". */
  readonly path: string;
  readonly name: string;
  readonly version: string;
  /** An SPDX expression; undefined when the package names none. */
  readonly licence: string | undefined;
  readonly integrity: string | undefined;
}

/** Licences that ask no more than to be named, and MPL, which asks for changes to its own files. */
const accepted = new Set(["MIT", "MIT-0", "MIT/X11", "ISC", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "0BSD", "BlueOak-1.0.0", "BSL-1.0", "Zlib", "Unlicense", "CC0-1.0", "MPL-2.0"]);

/** Packages under other licences, each with why it is here all the same. */
export const licenceExceptions: Readonly<Record<string, string>> = {
  "@odoo/o-spreadsheet": "LGPL-3.0-or-later: the grid of the local page, loaded as published by a script tag of its own and never bundled (THIRD-PARTY.md)",
  "@odoo/owl": "LGPL-3.0-only: the grid's view library, loaded in the same way",
  argparse: "Python-2.0: reads the command line of a test tool; reaches no user",
  buffers: "names no licence: deep under the library that reads .xlsx in a few tests; reaches no user",
  "caniuse-lite": "CC-BY-4.0: data of a build tool; reaches no user",
  "font-awesome": "OFL-1.1 for its font: a dependency of the grid, of which nothing is copied into the page",
};

/** Every package of a lock file, the project itself left out. */
export function lockedPackages(lockFile: string): readonly LockedPackage[] {
  const { packages } = JSON.parse(readFileSync(lockFile, "utf8")) as { readonly packages: Readonly<Record<string, { readonly version?: string; readonly license?: string; readonly integrity?: string }>> };
  return Object.entries(packages).filter(([path]) => path !== "").map(([path, { version = "", license, integrity }]) => ({ path, name: path.replace(/^.*node_modules\//, ""), version, licence: license, integrity }));
}

/** Whether an expression lets us use the package: of licences joined by OR one is enough, of those joined by AND all are needed. */
export function isAcceptedLicence(expression: string | undefined): boolean {
  if (expression === undefined) return false;
  const plain = expression.replaceAll(/[()]/g, "");
  return plain.split(" OR ").some((choice) => choice.split(" AND ").every((licence) => accepted.has(licence.trim())));
}

/** Sentences on packages whose licence is neither accepted nor an exception, and on exceptions that no package needs. */
export function licenceProblems(packages: readonly LockedPackage[]): readonly string[] {
  const others = packages.filter(({ licence }) => !isAcceptedLicence(licence));
  const unknown = others.filter(({ name }) => !(name in licenceExceptions)).map(({ name, version, licence }) => `${name} ${version} has the licence ${licence ?? "(none named)"}.`);
  const unused = Object.keys(licenceExceptions).filter((name) => !others.some((one) => one.name === name)).map((name) => `${name} needs no exception any more.`);
  return [...unknown, ...unused];
}
