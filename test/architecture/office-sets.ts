import ts from "typescript";
import type { CompiledSources } from "./compiled-sources";

export interface OfficeMember {
  /** As "Range.values". */
  readonly member: string;
  /** As "ExcelApi 1.10". */
  readonly set: string;
}

/** The members of Office that files use, with the requirement set that the platform's types say each belongs to; those of the types' own objects where a member says none. */
export function officeMembersUsed({ checker, sources }: CompiledSources): readonly OfficeMember[] {
  const found = new Map<string, OfficeMember>();
  const visit = (node: ts.Node): void => {
    const symbol = ts.isIdentifier(node) ? meantBy(checker, node) : undefined;
    const declaration = symbol?.declarations?.find((each) => each.getSourceFile().fileName.includes("/@types/office-js/"));
    const set = declaration && setOf(declaration);
    if (symbol && set !== undefined) {
      const owner = declaration?.parent as { readonly name?: ts.Node } | undefined;
      const member = `${owner?.name?.getText() ?? ""}.${symbol.name}`;
      found.set(member, { member, set });
    }
    ts.forEachChild(node, visit);
  };
  for (const source of sources.values()) visit(source);
  return [...found.values()];
}

/** A name taken out of an object by its pattern is the object's member. */
function meantBy(checker: ts.TypeChecker, node: ts.Identifier): ts.Symbol | undefined {
  const { parent } = node;
  if (ts.isBindingElement(parent)) return checker.getTypeAtLocation(parent.parent).getProperty((parent.propertyName ?? parent.name).getText());
  return checker.getSymbolAtLocation(node);
}

function setOf(declaration: ts.Node): string | undefined {
  for (let node = declaration; !ts.isSourceFile(node); node = node.parent) {
    const above = node.getSourceFile().text.slice(node.getFullStart(), node.getStart());
    const said = [...above.matchAll(/\[Api set: (\w+ [\d.]+)/g)].at(-1)?.[1];
    if (said !== undefined) return said;
  }
  return undefined;
}
