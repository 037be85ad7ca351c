import { dirname, relative, resolve, sep } from "node:path";
import ts from "typescript";

export const projectFolder = resolve(__dirname, "../..");

export interface SourceImport {
  /** As written, "./thread" or "big.js". */
  readonly specifier: string;
  /** The project file it leads to, "src/core/thread.ts"; undefined for packages. */
  readonly file: string | undefined;
}

/** Every TypeScript file of a folder of the project, as "src/core/thread.ts", in the order of their names. */
export function filesUnder(folder: string): readonly string[] {
  return ts.sys
    .readDirectory(resolve(projectFolder, folder), [".ts", ".mts"])
    .map((path) => relative(projectFolder, path).split(sep).join("/"))
    .sort();
}

/** The compiler options of a tsconfig.json of the project. */
export function compilerOptions(tsconfig: string): ts.CompilerOptions {
  const path = resolve(projectFolder, tsconfig);
  const { config, error } = ts.readConfigFile(path, (file) => ts.sys.readFile(file)) as { config: unknown; error?: ts.Diagnostic };
  if (error) throw new Error(ts.flattenDiagnosticMessageText(error.messageText, "\n"));
  return ts.parseJsonConfigFileContent(config, ts.sys, dirname(path)).options;
}

/** What a text imports: import, import type, export from, import(), import("…").Type and require(). */
export function importsOf(file: string, text = ts.sys.readFile(resolve(projectFolder, file)) ?? ""): readonly SourceImport[] {
  const known = read.get(text)?.get(file);
  if (known) return known;
  const imports = readImports(file, text);
  read.set(text, (read.get(text) ?? new Map<string, readonly SourceImport[]>()).set(file, imports));
  return imports;
}

/** By text and file: several rules ask about the same files. */
const read = new Map<string, Map<string, readonly SourceImport[]>>();

function readImports(file: string, text: string): readonly SourceImport[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
  return specifiersIn(source).map((specifier) => ({ specifier, file: leadsTo(file, specifier) }));
}

function specifiersIn(node: ts.Node): readonly string[] {
  const own = specifierOf(node);
  const below = node.getChildren().flatMap(specifiersIn);
  return own === undefined ? below : [own, ...below];
}

function specifierOf(node: ts.Node): string | undefined {
  if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return textOf(node.moduleSpecifier);
  if (ts.isImportTypeNode(node)) return textOf(ts.isLiteralTypeNode(node.argument) ? node.argument.literal : node.argument);
  if (ts.isExternalModuleReference(node)) return textOf(node.expression);
  if (ts.isCallExpression(node) && isImportCall(node)) return textOf(node.arguments[0]);
  return undefined;
}

const isImportCall = ({ expression }: ts.CallExpression): boolean =>
  expression.kind === ts.SyntaxKind.ImportKeyword || (ts.isIdentifier(expression) && expression.text === "require");

/** A name that is computed cannot be checked, so it reads as itself and no rule allows it. */
function textOf(node: ts.Node | undefined): string | undefined {
  return node && (ts.isStringLiteralLike(node) ? node.text : node.getText());
}

function leadsTo(file: string, specifier: string): string | undefined {
  const from = resolve(projectFolder, file);
  const found = ts.resolveModuleName(specifier, from, resolution, ts.sys).resolvedModule?.resolvedFileName;
  if (!found || found.includes("/node_modules/")) return specifier.startsWith(".") ? besides(file, specifier) : undefined;
  return relative(projectFolder, found).split(sep).join("/");
}

/** Style sheets and pages are no modules to the compiler, but they have a place, and so a layer. */
const besides = (file: string, specifier: string): string =>
  relative(projectFolder, resolve(projectFolder, dirname(file), specifier)).split(sep).join("/");

const resolution: ts.CompilerOptions = { moduleResolution: ts.ModuleResolutionKind.Bundler, module: ts.ModuleKind.ESNext, resolveJsonModule: true };
