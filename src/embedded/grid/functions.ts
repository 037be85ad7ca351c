/** Gives our worksheet functions to the grid, with the descriptions of functions.json, and keeps their errors in the cell. */
import { type GridLibrary } from "./library";
import { rowKeeper, type GridCell } from "./range-rows";

/** What functions.json says of one function; the shape Excel defines. */
export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly parameters: readonly ParameterMetadata[];
}

export interface ParameterMetadata {
  readonly name: string;
  readonly description: string;
  readonly type?: string;
  readonly dimensionality?: string;
  readonly optional?: boolean;
  readonly repeating?: boolean;
}

/** The functions a grid offers beside its own, under a namespace: "PLUMB" makes RUNS answer to PLUMB.RUNS. */
export interface FunctionSet {
  readonly namespace: string;
  /** Error cells of a range of any type reach the function, as allowErrorForDataTypeAny in functions.json says. */
  readonly allowErrorForDataTypeAny?: boolean;
  readonly metadata: readonly FunctionMetadata[];
  readonly functions: Readonly<Record<string, (...values: never[]) => unknown>>;
}

type GridArgument = GridCell | readonly (readonly GridCell[])[] | undefined;

/**
 * Offers the functions to the grid with the manners of Excel: blanks arrive as 0 in a range, omitted optionals as null,
 * rows come first, an error in a cell is the answer, and only #VALUE! and #N/A carry the function's own words.
 */
export function registerFunctions(library: GridLibrary, { namespace, metadata, functions, allowErrorForDataTypeAny = false }: FunctionSet): void {
  library.registries.errorTypes.add(valueError);
  for (const described of metadata) {
    const compute = functions[described.id];
    if (!compute) throw new Error(`functions.json describes ${described.id}, but there is no such function.`);
    const name = `${namespace}.${described.name}`;
    library.registries.functionRegistry.replace(name, {
      description: described.description,
      category: namespace,
      args: described.parameters.map((parameter) => library.helpers.arg(gridType(parameter), parameter.description)),
      compute: (...values: unknown[]) =>
        answerOf(library, name, () => compute(...(argumentsOf(described, values as readonly GridArgument[], allowErrorForDataTypeAny) as never[]))) as never,
      isExported: true,
    });
  }
}

const valueError = "#VALUE!";

function gridType({ name, dimensionality, optional, repeating }: ParameterMetadata): string {
  const types = dimensionality === "matrix" ? ["any", "range<any>"] : ["any"];
  return `${name} (${[...types, ...(optional ? ["optional"] : []), ...(repeating ? ["repeating"] : [])].join(", ")})`;
}

/** An error that stands in an argument, as the grid holds it. */
class ArgumentError extends Error {
  constructor(readonly cell: GridCell) {
    super(cell.message ?? "");
  }
}

function argumentsOf({ parameters }: FunctionMetadata, values: readonly GridArgument[], errorsPass: boolean): readonly unknown[] {
  const last = parameters[parameters.length - 1];
  const fixed = last?.repeating ? parameters.slice(0, -1) : parameters;
  const converted = fixed.map((parameter, index) => argumentValue(parameter, values[index], errorsPass));
  if (!last?.repeating) return converted;
  const repeated = values.slice(fixed.length).filter((value) => value !== undefined);
  return [...converted, repeated.map((value) => argumentValue(last, value, errorsPass))];
}

function argumentValue(parameter: ParameterMetadata, value: GridArgument, errorsPass: boolean): unknown {
  if (value === undefined) return null;
  if (parameter.dimensionality === "matrix") {
    // An argument that is itself an error says best what is wrong: "No table is named Carz."
    const passes = errorsPass && parameter.type === "any" && isRange(value);
    return rowsOf(value, passes);
  }
  const cell = isRange(value) ? (value[0]?.[0] ?? blank) : value;
  const isBlank = cell.value === null || cell.value === undefined;
  return scalar(parameter, isBlank && parameter.type === "string" ? "" : cellValue(cell, false));
}

const blank: GridCell = { value: null };

const isRange = (value: GridArgument): value is readonly (readonly GridCell[])[] => Array.isArray(value);

function rowsOf(value: NonNullable<GridArgument>, errorsPass: boolean): unknown[][] {
  if (isRange(value)) return errorsPass ? rowsOrErrors(value) : rowsOnly(value);
  return [[cellValue(value, errorsPass)]];
}

/** The library knows functions by name, whatever the workbook; so do these. */
const RANGES_KEPT = 16;
const rowsOrErrors = rowKeeper((cell: GridCell): unknown => cellValue(cell, true), RANGES_KEPT);
const rowsOnly = rowKeeper((cell: GridCell): unknown => cellValue(cell, false), RANGES_KEPT);

/** Excel hands over 0 for a blank cell. */
function cellValue(cell: GridCell, errorsPass: boolean): unknown {
  const { value } = cell;
  if (value === null || value === undefined) return 0;
  if (typeof value === "string" && value.startsWith("#") && excelError(value) !== undefined) {
    if (!errorsPass) throw new ArgumentError(cell);
    return { code: excelError(value), message: cell.message ?? "" };
  }
  return value;
}

function scalar({ name, type }: ParameterMetadata, value: unknown): unknown {
  if (type === "string") return typeof value === "boolean" ? String(value).toUpperCase() : String(value);
  if (type === "boolean") return typeof value === "string" ? value.toUpperCase() === "TRUE" : Boolean(value);
  if (type !== "number" || typeof value === "number") return value;
  const number = typeof value === "string" && value.trim() === "" ? NaN : Number(value);
  if (Number.isNaN(number)) throw new Error(`${name} must be a number, not "${String(value)}".`);
  return number;
}

/** Excel's name of an error of the grid; undefined for any other text. */
export const excelError = (text: string): string | undefined => excelErrors[text];

const excelErrors: Readonly<Record<string, string>> = {
  "#N/A": "#N/A", "#VALUE!": "#VALUE!", "#REF": "#REF!", "#BAD_EXPR": "#NAME?", "#CYCLE": "#REF!", "#NAME?": "#NAME?",
  "#DIV/0!": "#DIV/0!", "#NUM!": "#NUM!", "#SPILL!": "#SPILL!", "#ERROR": "#VALUE!", "#NULL!": "#NULL!",
};

function answerOf(library: GridLibrary, name: string, run: () => unknown): unknown {
  try {
    return gridAnswer(library, run());
  } catch (problem) {
    if (problem instanceof ArgumentError) return { value: problem.cell.value, message: problem.cell.message };
    const { message, kind } = problem as { readonly message?: string; readonly kind?: string };
    if (kind === "notAvailable") return new library.EvaluationError(message, "#N/A");
    return new library.EvaluationError(kind === "value" ? message : `${name} could not answer: ${message ?? String(problem)}`, valueError);
  }
}

function gridAnswer(library: GridLibrary, answer: unknown): unknown {
  if (!Array.isArray(answer)) return { value: gridValue(answer) };
  const rows = (answer as readonly unknown[]).map((row) => (Array.isArray(row) ? (row as readonly unknown[]) : [row]));
  const columns = Math.max(0, ...rows.map((row) => row.length));
  if (columns === 0) return new library.EvaluationError("The function gave an empty table.", valueError);
  // A short row is filled up with #N/A, as Excel does.
  return Array.from({ length: columns }, (_, column) =>
    rows.map((row) => ({ value: column < row.length ? gridValue(row[column]) : "#N/A" })),
  );
}

/** A returned null shows 0 in Excel, and a number that is none is #NUM!. */
function gridValue(value: unknown): unknown {
  if (value === null || value === undefined) return 0;
  return typeof value === "number" && !Number.isFinite(value) ? "#NUM!" : value;
}
