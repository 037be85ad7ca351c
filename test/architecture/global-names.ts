import ts from "typescript";
import type { GlobalsOf } from "./layers";
import type { CompiledSources } from "./compiled-sources";

export interface GlobalUse {
  readonly name: string;
  readonly of: GlobalsOf;
}

/**
 * The names of the page, of Office, of the custom functions runtime and of Node that files use without importing them,
 * found by where the compiler says each name is declared, so that a variable of ours called `document` is no offence.
 */
export const globalNamesUsed = ({ checker, sources }: CompiledSources): ReadonlyMap<string, readonly GlobalUse[]> => new Map([...sources].map(([file, source]) => [file, usesIn(checker, source)]));

function usesIn(checker: ts.TypeChecker, source: ts.SourceFile): readonly GlobalUse[] {
  const uses = new Map<string, GlobalUse>();
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node) && !isMember(node)) {
      const of = declaredBy(checker.getSymbolAtLocation(node));
      if (of) uses.set(node.text, { name: node.text, of });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
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
