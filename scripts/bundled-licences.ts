import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import webpack from "webpack";

/**
 * Writes third-party-licences.txt beside a bundle: the licence text of every package that went into it, since a
 * minified script keeps no notices. A package without a licence text is an error of the build.
 */
export class BundledLicences {
  apply(compiler: webpack.Compiler): void {
    compiler.hooks.thisCompilation.tap("BundledLicences", (compilation) => {
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_REPORT;
      compilation.hooks.processAssets.tap({ name: "BundledLicences", stage }, () => {
        const text = packageFolders(compilation).map(licenceOf).join("\n\n");
        compilation.emitAsset("third-party-licences.txt", new webpack.sources.RawSource(text));
      });
    });
  }
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
function licenceOf(folder: string): string {
  const { name = "", version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) as Readonly<Record<string, string>>;
  const own = readdirSync(folder).find((each) => /^licen[cs]e(\.|$)/i.test(each));
  const kept = join(keptLicences, `${name}.txt`);
  if (!own && !existsSync(kept)) throw new Error(`${name} has no licence text to ship; put it in assets/licences.`);
  return `${name} ${version} (${license})\n\n${readFileSync(own ? join(folder, own) : kept, "utf8").trim()}\n`;
}

const keptLicences = fileURLToPath(new URL("../assets/licences", import.meta.url));
