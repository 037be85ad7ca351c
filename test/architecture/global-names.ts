import { resolve } from "node:path";
import ts from "typescript";
import type { GlobalsOf } from "./layers";
import { compilerOptions, projectFolder } from "./source-files";

export interface GlobalUse {
  readonly name: string;
  readonly of: GlobalsOf;
}

/**
 * The names of the page, of Office, of the custom functions runtime and of Node that files use without importing them,
 * found by where the compiler says each name is declared, so that a variable of ours called `document` is no offence.
 */
export function globalNamesUsed(files: readonly string[], texts: ReadonlyMap<string, string> = new Map()): ReadonlyMap<string, readonly GlobalUse[]> {
  const options = compilerOptions("tsconfig.json");
  const paths = files.map((file) => resolve(projectFolder, file));
  const program = ts.createProgram(paths, options, hostWith(options, texts));
  const checker = program.getTypeChecker();
  return new Map(files.map((file, place) => [file, usesIn(checker, program.getSourceFile(paths[place] ?? ""))]));
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

function usesIn(checker: ts.TypeChecker, source: ts.SourceFile | undefined): readonly GlobalUse[] {
  const uses = new Map<string, GlobalUse>();
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node) && !isMember(node)) {
      const of = declaredBy(checker.getSymbolAtLocation(node));
      if (of) uses.set(node.text, { name: node.text, of });
    }
    ts.forEachChild(node, visit);
  };
  if (source) visit(source);
  return [...uses.values()];
}

/** `performance.now` is no other offence than `performance`, which both page and Node have. */
const isMember = (node: ts.Identifier): boolean => ts.isPropertyAccessExpression(node.parent) && node.parent.name === node;

const owners: readonly (readonly [GlobalsOf, RegExp])[] = [
  ["DOM", /\/typescript\/lib\/lib\.dom[^/]*\.d\.ts$/],
  ["Office", /\/@types\/office-js\//],
  ["CustomFunctions", /\/@types\/custom-functions-runtime\//],
  ["Node", /\/@types\/node\//],
];

/** A name that both the page and Node have, as console and setTimeout, belongs to neither. */
function declaredBy(symbol: ts.Symbol | undefined): GlobalsOf | undefined {
  const files = (symbol?.declarations ?? []).map((each) => each.getSourceFile().fileName);
  const found = new Set(files.map((file) => owners.find(([, pattern]) => pattern.test(file))?.[0]));
  const [only] = found;
  return found.size === 1 ? only : undefined;
}
