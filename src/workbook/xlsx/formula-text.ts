/** Formulas as a file stores them and as they are typed: our functions under the platform's prefix, newer functions under theirs. */
import { columnLetters, columnNumber } from "../address";
import { type FormulaToken, formulaTokens } from "../formula-tokens";
import { partFileText, partOf, partText } from "../table-part";

/**
 * A formula as a file holds it, without "=": our functions under the prefix Excel gives to functions of add-ins, newer
 * functions under theirs, Cars as Cars[], T[@A] as T[[#This Row],[A]], C1# as ANCHORARRAY(C1).
 */
export function fileFormula(formula: string, tableNames: readonly string[]): string {
  const names = new Set(tableNames.map((name) => name.toLowerCase()));
  const tokens = formulaTokens(formula.replace(/^=/, ""));
  return tokens.map((token, at) => fileToken(token, names, tokens[at + 1]?.text === "#" ? "#" : "")).join("").replaceAll(")\u0000#", ")");
}

/** The formula as it is typed, with "=". Takes files of Excel and files other programs wrote with plain names. */
export function typedFormula(text: string): string {
  const tokens = formulaTokens(text.replace(/^=/, ""));
  return `=${joinAnchors(tokens.map(typedToken))}`;
}

/** A shared formula holds its text once; this is the text for the cell so many rows and columns further on. */
export const shiftedFormula = (formula: string, rows: number, columns: number): string =>
  formulaTokens(formula)
    .map((token) => (token.kind === "reference" ? shiftedReference(token, rows, columns) : token.text))
    .join("");

const addInPrefix = "_xldudf_";
const namespace = "PLUMB";
const anchorArray = "_xlfn.ANCHORARRAY";

function fileToken(token: FormulaToken, tables: ReadonlySet<string>, next: string): string {
  switch (token.kind) {
    case "function":
      return fileFunction(token.text);
    case "name":
      return tables.has(token.text.toLowerCase()) ? `${token.text}[]` : token.text;
    case "structured": {
      const part = partOf(token.inside);
      return part ? partFileText(token.table, part) : token.text;
    }
    case "reference":
      // The mark is taken out with the "#" that follows it.
      return next === "#" ? `${anchorArray}(${token.text})\u0000` : token.text;
    case "text":
      return token.text;
  }
}

function fileFunction(name: string): string {
  const upper = name.toUpperCase();
  if (upper.startsWith(`${namespace}.`)) return addInPrefix + upper.replaceAll(".", "_");
  if (newerWorksheetFunctions.has(upper)) return `_xlfn._xlws.${upper}`;
  return newerFunctions.has(upper) ? `_xlfn.${upper}` : upper;
}

function typedToken(token: FormulaToken): string {
  if (token.kind === "function") return typedFunction(token.text);
  if (token.kind !== "structured") return token.text;
  const part = partOf(token.inside);
  return part && token.table !== "" ? partText(token.table, part) : token.text;
}

function typedFunction(name: string): string {
  const ours = new RegExp(`^(?:${addInPrefix})?${namespace}[_.](.+)$`, "i").exec(name);
  if (ours?.[1]) return `${namespace}.${ours[1].toUpperCase()}`;
  // The operator @ stands in files as SINGLE(x); the brackets alone keep its place.
  return name.toUpperCase() === "_XLFN.SINGLE" ? "" : name.replace(/^_xlfn\.(?:_xlws\.)?/i, (prefix) => (name.toUpperCase() === anchorArray.toUpperCase() ? prefix : ""));
}

/** ANCHORARRAY(C1) reads C1#. */
function joinAnchors(parts: readonly string[]): string {
  const text: string[] = [];
  for (let at = 0; at < parts.length; at++) {
    const isAnchor = parts[at]?.toUpperCase() === anchorArray.toUpperCase() && parts[at + 3] === ")";
    text.push(isAnchor ? `${parts[at + 2] ?? ""}#` : (parts[at] ?? ""));
    if (isAnchor) at += 3;
  }
  return text.join("");
}

function shiftedReference({ text, range }: { readonly text: string; readonly range: string }, rows: number, columns: number): string {
  const corners = range.split(":").map((corner) => shiftedCorner(corner, rows, columns));
  const prefix = text.slice(0, text.length - range.length);
  return corners.includes(undefined) ? "#REF!" : prefix + corners.join(":");
}

function shiftedCorner(corner: string, rows: number, columns: number): string | undefined {
  const [, columnFixed = "", letters = "", rowFixed = "", digits = ""] = /^(\$?)([A-Z]*)(\$?)(\d*)$/i.exec(corner) ?? [];
  // A whole row "$5" has its mark where a column's would be.
  const isRow = letters === "";
  const column = letters === "" ? 0 : columnNumber(letters) + (columnFixed ? 0 : columns);
  const row = digits === "" ? 1 : Number(digits) + (rowFixed || (isRow && columnFixed) ? 0 : rows);
  if (column < 0 || row < 1) return undefined;
  return columnFixed + (letters === "" ? "" : columnLetters(column)) + rowFixed + (digits === "" ? "" : String(row));
}

/** Functions added after the first .xlsx version; a file must mark them or Excel shows #NAME?. From Excel's own files. */
const newerFunctions = new Set(
  ("ANCHORARRAY ARRAYTOTEXT BYCOL BYROW CHOOSECOLS CHOOSEROWS CONCAT DROP EXPAND HSTACK IFNA IFS LAMBDA LET MAKEARRAY MAP MAXIFS MINIFS " +
    "NORM.DIST NORM.INV NORM.S.DIST NORM.S.INV PERCENTILE.EXC PERCENTILE.INC QUARTILE.EXC QUARTILE.INC RANDARRAY RANK.AVG RANK.EQ REDUCE SCAN " +
    "SEQUENCE SORTBY STDEV.P STDEV.S SWITCH TAKE TEXTAFTER TEXTBEFORE TEXTJOIN TEXTSPLIT TOCOL TOROW UNICHAR UNICODE UNIQUE VALUETOTEXT VAR.P " +
    "VAR.S VSTACK WRAPCOLS WRAPROWS XLOOKUP XMATCH XOR DAYS ISOWEEKNUM SHEET SHEETS FORMULATEXT NUMBERVALUE RRI PDURATION CEILING.MATH FLOOR.MATH " +
    "DECIMAL BASE ARABIC COMBINA MUNIT COVARIANCE.P COVARIANCE.S MODE.SNGL MODE.MULT CONFIDENCE.NORM GAMMA GAUSS PHI SKEW.P").split(" "),
);

const newerWorksheetFunctions = new Set(["FILTER", "SORT"]);
