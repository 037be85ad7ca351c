import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { isAcceptedLicence, licenceProblems, lockedPackages } from "../scripts/licences";
import { projectFolder } from "./architecture/source-files";

const packages = lockedPackages(resolve(projectFolder, "package-lock.json"));

test("every package of the lock file has a licence that is accepted, or is an exception with its reason", () => {
  expect(packages.length).toBeGreaterThan(100);
  expect(licenceProblems(packages)).toEqual([]);
});

test("a licence that is not on the list, none at all, and an exception without need are told", () => {
  const one = { path: "node_modules/x", name: "x", version: "1.0.0", integrity: "" };
  const needed = packages.filter(({ licence }) => !isAcceptedLicence(licence));
  expect(licenceProblems([...needed, { ...one, licence: "GPL-3.0-only" }])).toEqual(["x 1.0.0 has the licence GPL-3.0-only."]);
  expect(licenceProblems([...needed, { ...one, licence: undefined }])).toEqual(["x 1.0.0 has the licence (none named)."]);
  expect(licenceProblems(needed.filter(({ name }) => name !== "argparse"))).toEqual(["argparse needs no exception any more."]);
});

test.each<[string, boolean]>([["MIT", true], ["(MIT OR GPL-3.0-or-later)", true], ["(MIT AND Zlib)", true], ["Apache-2.0 AND GPL-2.0", false], ["GPL-2.0", false], ["", false]])("%s: %p", (expression, isAccepted) => {
  expect(isAcceptedLicence(expression)).toBe(isAccepted);
});

test("the lock file fixes what package.json asks for, and every package by the hash of its content", () => {
  const lock = JSON.parse(readFileSync(resolve(projectFolder, "package-lock.json"), "utf8")) as { readonly packages: Readonly<Record<string, unknown>> };
  const { dependencies, devDependencies } = JSON.parse(readFileSync(resolve(projectFolder, "package.json"), "utf8")) as Record<string, unknown>;
  expect(lock.packages[""]).toMatchObject({ dependencies, devDependencies });
  expect(packages.filter(({ integrity }) => !integrity?.startsWith("sha512-")).map(({ path }) => path)).toEqual([]);
});
