import ts from "typescript";
import { importsOf, projectFolder, type SourceImport } from "./source-files";

/** The files and packages that an entry loads before anything else runs: its imports and theirs, without import() and without types. */
export function loadedAtOnce(entry: string): readonly string[] {
  const found = new Set<string>([entry]);
  for (const file of found) {
    if (!file.endsWith(".ts")) continue;
    for (const { specifier, file: target } of plainImportsOf(file)) found.add(target ?? specifier);
  }
  return [...found];
}

/** Compiled, an import of types only is gone; an import() stays and is told by its place. */
function plainImportsOf(file: string): readonly SourceImport[] {
  const compiled = ts.transpile(ts.sys.readFile(`${projectFolder}/${file}`) ?? "", { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext }).replaceAll(/\bimport\s*\(/g, "later(");
  return importsOf(file, compiled);
}
