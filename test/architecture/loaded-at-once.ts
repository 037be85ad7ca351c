import ts from "typescript";
import { importsOf, projectFolder, type SourceImport } from "./source-files";

/** The files and packages that an entry loads before anything else runs: its imports and theirs, without import() and without types. */
export function loadedAtOnce(entry: string): readonly string[] {
  const found = new Set<string>([entry]);
  for (const file of found) {
    if (!file.endsWith(".ts")) continue;
    const imports = read.get(file) ?? plainImportsOf(file);
    read.set(file, imports);
    for (const { specifier, file: target } of imports) found.add(target ?? specifier);
  }
  return [...found];
}

/** Entries share most of what they load. */
const read = new Map<string, readonly SourceImport[]>();

/** Compiled, an import of types only is gone; an import() stays and is told by its place. */
function plainImportsOf(file: string): readonly SourceImport[] {
  const compiled = ts.transpile(ts.sys.readFile(`${projectFolder}/${file}`) ?? "", { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext }).replaceAll(/\bimport\s*\(/g, "later(");
  return importsOf(file, compiled);
}
