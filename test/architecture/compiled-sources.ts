import { resolve } from "node:path";
import ts from "typescript";
import { compilerOptions, projectFolder } from "./source-files";

/** Files as the compiler knows them: it can say what every name in them means. */
export interface CompiledSources {
  readonly checker: ts.TypeChecker;
  readonly sources: ReadonlyMap<string, ts.SourceFile>;
}

/** @param texts files that are not there, for trying what a test finds */
export function compiledSources(files: readonly string[], texts: ReadonlyMap<string, string> = new Map()): CompiledSources {
  const options = compilerOptions("tsconfig.json");
  const program = ts.createProgram(files.map((file) => resolve(projectFolder, file)), options, hostWith(options, texts));
  const sources = files.flatMap((file) => {
    const source = program.getSourceFile(resolve(projectFolder, file));
    return source ? [[file, source] as const] : [];
  });
  return { checker: program.getTypeChecker(), sources: new Map(sources) };
}

function hostWith(options: ts.CompilerOptions, texts: ReadonlyMap<string, string>): ts.CompilerHost {
  const host = ts.createCompilerHost(options);
  const known = new Map([...texts].map(([file, text]) => [resolve(projectFolder, file), text]));
  const getSourceFile = host.getSourceFile.bind(host);
  host.getSourceFile = (name, version) => {
    const text = known.get(name);
    return text === undefined ? getSourceFile(name, version) : ts.createSourceFile(name, text, version, true);
  };
  return host;
}
