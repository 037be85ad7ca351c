/** Turns structured references of a formula into ranges: `Cars[Year]`, `Cars[@Year]`, `Cars[#Headers]`. */
import { columnLetters, parseArea, sheetPrefix, type Area } from "./address";
import { type FormulaToken, formulaTokens } from "./formula-tokens";
import { namedPart, partOf, partText, type TablePart } from "./table-part";

/** A table as formulas see it. Rows and columns count from 0; firstRow is the row of the headings. */
export interface ReferenceTable extends Area {
  readonly name: string;
  readonly sheet: string;
  /** Rows under the headings. */
  readonly rows: number;
  readonly headings: readonly string[];
}

/** Where a formula stands; T[@] means the row of that place. */
export interface FormulaPlace {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** Why a reference means nothing here, as Excel would name the error. */
export interface ReferenceProblem {
  readonly error: "#NAME?" | "#REF!" | "#VALUE!";
  readonly message: string;
}

export type Translated =
  | { readonly formula: string; readonly problem?: undefined }
  | { readonly problem: ReferenceProblem; readonly reference: string };

/**
 * Replaces structured references by cell ranges: "=SUM(Cars[Year])" becomes "=SUM(Cars!$D$2:$D$25)".
 * Ranges are absolute, so that a copied formula keeps its table, but T[@] keeps its row relative.
 * A reference that cannot be read gives the problem of the first such one.
 */
export function toRanges(formula: string, tables: readonly ReferenceTable[], place: FormulaPlace): Translated {
  const problems: { problem: ReferenceProblem; reference: string }[] = [];
  const text = translateReferences(formula, tables, place, (problem, reference) => {
    problems.push({ problem, reference });
    return reference;
  });
  return problems[0] ?? { formula: text };
}

/** As toRanges, and what cannot be read is replaced by the answer of onProblem. */
export function translateReferences(
  formula: string,
  tables: readonly ReferenceTable[],
  place: FormulaPlace,
  onProblem: (problem: ReferenceProblem, reference: string) => string,
): string {
  if (!formula.startsWith("=")) return formula;
  const translate = (token: FormulaToken): string => {
    const found = areaOfToken(token, tables, place);
    if (found === undefined) return token.text;
    return "error" in found ? onProblem(found, token.text) : areaText(found, place);
  };
  return formulaTokens(formula).map(translate).join("");
}

/** The other way: every absolute range that is exactly a part of a table reads as that part again. */
export function toStructured(formula: string, tables: readonly ReferenceTable[], place: FormulaPlace): string {
  if (!formula.startsWith("=")) return formula;
  return formulaTokens(formula)
    .map((token) => (token.kind === "reference" ? partOfRange(token, tables, place) : undefined) ?? token.text)
    .join("");
}

/** Does the formula hold anything that toRanges would change, now or once a table of that name exists? */
export const namesTables = (formula: string, tables: readonly ReferenceTable[]): boolean =>
  formula.startsWith("=") &&
  formulaTokens(formula).some(
    (token) => token.kind === "structured" || (token.kind === "name" && tableNamed(tables, token.text) !== undefined),
  );

/** A table part's cells; relativeRow marks T[@]. */
interface PartArea extends Area {
  readonly sheet: string;
  readonly relativeRow: boolean;
}

function areaOfToken(
  token: FormulaToken,
  tables: readonly ReferenceTable[],
  place: FormulaPlace,
): PartArea | ReferenceProblem | undefined {
  if (token.kind === "name") {
    const table = tableNamed(tables, token.text);
    return table && areaOfPart(table, { rows: "data" }, place);
  }
  if (token.kind !== "structured") return undefined;
  const table = token.table === "" ? tableAround(tables, place) : tableNamed(tables, token.table);
  if (!table) return unknownTable(token.table);
  const part = partOf(token.inside);
  return part ? areaOfPart(table, part, place) : { error: "#NAME?", message: `${token.text} cannot be read as a part of table ${table.name}.` };
}

const unknownTable = (name: string): ReferenceProblem =>
  name === ""
    ? { error: "#NAME?", message: "A reference without a table's name works only inside a table." }
    : { error: "#NAME?", message: `No table is named ${name}.` };

const tableNamed = (tables: readonly ReferenceTable[], name: string): ReferenceTable | undefined =>
  tables.find((table) => table.name.toLowerCase() === name.toLowerCase());

const tableAround = (tables: readonly ReferenceTable[], { sheet, row, column }: FormulaPlace): ReferenceTable | undefined =>
  tables.find(
    (table) =>
      sameName(table.sheet, sheet) &&
      row >= table.firstRow && row <= table.firstRow + table.rows &&
      column >= table.firstColumn && column < table.firstColumn + table.columns,
  );

const sameName = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

function areaOfPart(table: ReferenceTable, part: TablePart, place: FormulaPlace): PartArea | ReferenceProblem {
  const columns = columnsOfPart(table, part);
  if ("error" in columns) return columns;
  const rows = rowsOfPart(table, part, place);
  if ("error" in rows) return rows;
  return { sheet: table.sheet, ...columns, ...rows, relativeRow: part.rows === "this row" };
}

function columnsOfPart(table: ReferenceTable, { columns }: TablePart): Pick<Area, "firstColumn" | "columns"> | ReferenceProblem {
  if (!columns) return { firstColumn: table.firstColumn, columns: table.columns };
  const places = columns.map((name) => table.headings.findIndex((heading) => sameName(heading.trim(), name.trim())));
  const missing = columns.find((_, index) => places[index] === -1);
  if (missing !== undefined) return { error: "#REF!", message: `Table ${table.name} has no column ${missing}.` };
  const first = Math.min(...places);
  return { firstColumn: table.firstColumn + first, columns: Math.max(...places) - first + 1 };
}

function rowsOfPart(table: ReferenceTable, { rows }: TablePart, place: FormulaPlace): Pick<Area, "firstRow" | "rows"> | ReferenceProblem {
  switch (rows) {
    case "headers":
      return { firstRow: table.firstRow, rows: 1 };
    case "all":
      return { firstRow: table.firstRow, rows: table.rows + 1 };
    case "data":
      if (table.rows === 0) return { error: "#REF!", message: `Table ${table.name} has no rows.` };
      return { firstRow: table.firstRow + 1, rows: table.rows };
    case "totals":
      return { error: "#REF!", message: `Table ${table.name} has no totals row.` };
    case "this row":
      if (place.row <= table.firstRow || place.row > table.firstRow + table.rows) {
        return { error: "#VALUE!", message: `Row ${String(place.row + 1)} is not a row of table ${table.name}, so ${table.name}[@] means nothing there.` };
      }
      return { firstRow: place.row, rows: 1 };
  }
}

function areaText(area: PartArea, place: FormulaPlace): string {
  const row = area.relativeRow ? "" : "$";
  const corner = (down: number, right: number): string =>
    `$${columnLetters(area.firstColumn + right)}${row}${String(area.firstRow + down + 1)}`;
  const first = corner(0, 0);
  const last = corner(area.rows - 1, area.columns - 1);
  const range = first === last ? first : `${first}:${last}`;
  return sameName(area.sheet, place.sheet) ? range : sheetPrefix(area.sheet) + range;
}

function partOfRange(
  { sheet = undefined, range }: { readonly sheet?: string | undefined; readonly range: string },
  tables: readonly ReferenceTable[],
  place: FormulaPlace,
): string | undefined {
  const corners = range.split(":");
  const absolute = corners.every((corner) => /^\$[A-Z]+\$\d+$/i.test(corner));
  const rowRelative = corners.every((corner) => /^\$[A-Z]+\d+$/i.test(corner));
  const area = parseArea(range);
  if (!area || !(absolute || rowRelative)) return undefined;
  for (const table of tables) {
    if (!sameName(table.sheet, sheet ?? place.sheet)) continue;
    const part = partWithArea(table, area, rowRelative ? place : undefined);
    if (part) return partText(table.name, part);
  }
  return undefined;
}

function partWithArea(table: ReferenceTable, area: Area, thisRow: FormulaPlace | undefined): TablePart | undefined {
  const left = area.firstColumn - table.firstColumn;
  const right = left + area.columns - 1;
  if (left < 0 || right >= table.columns) return undefined;
  const rows = rowsWithArea(table, area, thisRow);
  if (!rows) return undefined;
  if (left === 0 && right === table.columns - 1) return { rows };
  const columns = left === right ? [table.headings[left] ?? ""] : [table.headings[left] ?? "", table.headings[right] ?? ""];
  const found = columns.map((name) => namedPart(table.headings, name));
  // A blank or repeated heading cannot name its column, so the range stays a range.
  return found[0] === left && found[found.length - 1] === right ? { rows, columns } : undefined;
}

function rowsWithArea(table: ReferenceTable, area: Area, thisRow: FormulaPlace | undefined): TablePart["rows"] | undefined {
  const top = area.firstRow - table.firstRow;
  if (thisRow) return area.rows === 1 && area.firstRow === thisRow.row && top >= 1 && top <= table.rows ? "this row" : undefined;
  if (top === 0 && area.rows === 1) return "headers";
  if (top === 0 && area.rows === table.rows + 1) return "all";
  return top === 1 && area.rows === table.rows ? "data" : undefined;
}
