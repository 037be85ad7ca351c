import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { generateCustomFunctionsMetadata } from "custom-functions-metadata";

export interface FunctionParameter {
  readonly name: string;
  readonly description?: string;
  readonly type?: string;
  readonly dimensionality?: "scalar" | "matrix";
  readonly optional?: boolean;
  readonly repeating?: boolean;
}

export interface FunctionDescription {
  readonly id: string;
  readonly name: string;
  readonly description?: string;
  readonly helpUrl?: string;
  readonly parameters: readonly FunctionParameter[];
  readonly result: { readonly type?: string; readonly dimensionality?: "scalar" | "matrix" };
}

export interface FunctionMetadata {
  /** Error cells reach our functions, so that one bad cell costs one row and not the whole answer. */
  readonly allowErrorForDataTypeAny: true;
  readonly functions: readonly FunctionDescription[];
}

/** Where the add-in is served while it is being developed; a build for another place replaces it everywhere. */
export const developmentOrigin = "https://localhost:3000";

/** The files of src/functions that declare worksheet functions, as full paths in the order of their names. */
export function functionFiles(folder = functionsFolder): readonly string[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith(".ts"))
    .sort()
    .map((name) => join(folder, name))
    .filter((path) => /^\s*\* @customfunction\b/m.test(readFileSync(path, "utf8")));
}

/**
 * The metadata by which a spreadsheet knows our functions, read from their declarations and comments.
 * @param files full paths of the declaring files
 * @param origin scheme and host of the help pages
 * @throws Error naming everything that is missing or malformed
 */
export async function readFunctionMetadata(files: readonly string[], origin = developmentOrigin): Promise<FunctionMetadata> {
  const { metadataJson, errors } = await generateCustomFunctionsMetadata([...files]);
  if (errors.length > 0) throw new Error(errors.join("\n"));
  const { functions } = JSON.parse(metadataJson || '{"functions":[]}') as { functions: FunctionDescription[] };
  const problems = [...functions.flatMap(problemsOf), ...doubledIds(functions)];
  if (problems.length > 0) throw new Error(`Function metadata:\n${problems.join("\n")}`);
  return {
    allowErrorForDataTypeAny: true,
    functions: functions.map((each) => ({ ...each, helpUrl: `${origin}/functions.html#${each.id}` })),
  };
}

/** The text of functions.json. */
export const metadataText = (metadata: FunctionMetadata): string => `${JSON.stringify(metadata, undefined, 2)}\n`;

const functionsFolder = fileURLToPath(new URL("../src/functions", import.meta.url));

function problemsOf({ id, name, description, parameters, result }: FunctionDescription): readonly string[] {
  const problems: string[] = [];
  if (!/^[A-Z][A-Z0-9]{2,}(\.[A-Z0-9]+)*$/.test(id)) problems.push(`${id}: an id is upper case, three characters or more.`);
  if (name !== id) problems.push(`${id}: its name is ${name}, and the two must be the same.`);
  if (!description) problems.push(`${id}: the function has no description.`);
  for (const parameter of parameters) {
    if (!parameter.description) problems.push(`${id}: argument ${parameter.name} has no description.`);
  }
  if (result.type === undefined && result.dimensionality === undefined) problems.push(`${id}: the result has no type.`);
  return problems;
}

function doubledIds(functions: readonly FunctionDescription[]): readonly string[] {
  const ids = functions.map(({ id }) => id);
  return ids.filter((id, place) => ids.indexOf(id) !== place).map((id) => `${id}: declared twice.`);
}
