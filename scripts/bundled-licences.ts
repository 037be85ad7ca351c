import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import webpack from "webpack";

/**
 * Writes third-party-licences.txt beside a bundle: the licence and the notice of every package that went into it, since a
 * minified script keeps no notices. Packages with the same texts share them. A package without a licence text is an error of the build.
 */
export class BundledLicences {
  apply(compiler: webpack.Compiler): void {
    compiler.hooks.thisCompilation.tap("BundledLicences", (compilation) => {
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_REPORT;
      compilation.hooks.processAssets.tap({ name: "BundledLicences", stage }, () => {
        const text = licenceTexts(packageFolders(compilation).map(packageIn));
        compilation.emitAsset("third-party-licences.txt", new webpack.sources.RawSource(text));
      });
    });
  }
}

export interface LicensedPackage {
  /** Name, version and licence in one line. */
  readonly title: string;
  readonly licence: string;
  /** What the package's NOTICE asks to be passed on; "" without one. */
  readonly notice: string;
}

/** Each text once, under the names of the packages that it is of. */
export function licenceTexts(packages: readonly LicensedPackage[]): string {
  const byText = new Map<string, string[]>();
  for (const { title, licence, notice } of packages) {
    const text = [licence, ...(notice === "" ? [] : [`Notice:\n${notice}`])].join("\n\n");
    byText.set(text, [...(byText.get(text) ?? []), title]);
  }
  return [...byText].map(([text, titles]) => `${titles.join("\n")}\n\n${text}\n`).join(`\n${"-".repeat(80)}\n\n`);
}

function packageFolders(compilation: webpack.Compilation): readonly string[] {
  const folders = new Set<string>();
  const add = (module: webpack.Module): void => {
    const folder = /^.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+/.exec(module.nameForCondition() ?? "")?.[0];
    if (folder) folders.add(folder);
  };
  for (const module of compilation.modules) add(module);
  return [...folders].sort();
}

/** @throws Error when there is no licence text, in the package or among ours for packages that come without */
function packageIn(folder: string): LicensedPackage {
  const { name = "", version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) as Readonly<Record<string, string>>;
  const own = (pattern: RegExp): string | undefined => readdirSync(folder).find((each) => pattern.test(each));
  const [licence, notice, kept] = [own(/^licen[cs]e(\.|$)/i), own(/^notice(\.|$)/i), join(keptLicences, `${name}.txt`)];
  if (!licence && !existsSync(kept)) throw new Error(`${name} has no licence text to ship; put it in assets/licences.`);
  const read = (path: string): string => readFileSync(path, "utf8").trim();
  return { title: `${name} ${version} (${license})`, licence: read(licence ? join(folder, licence) : kept), notice: notice ? read(join(folder, notice)) : "" };
}

const keptLicences = fileURLToPath(new URL("../assets/licences", import.meta.url));
