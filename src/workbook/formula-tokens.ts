/**
 * A formula cut into pieces that together give its text back.
 * "text" is everything a reader of references need not touch: strings, numbers, operators, errors, functions.
 */
export type FormulaToken =
  | { readonly kind: "text" | "function"; readonly text: string }
  /** A word that is neither a function nor a cell: a table, a defined name, TRUE. */
  | { readonly kind: "name"; readonly text: string }
  /** Table[…]; the table is "" for [@Column] inside a table, and inside is what stands between the outer brackets. */
  | { readonly kind: "structured"; readonly text: string; readonly table: string; readonly inside: string }
  /** A cell or range; sheet is undefined when the formula's own sheet is meant. */
  | { readonly kind: "reference"; readonly text: string; readonly sheet: string | undefined; readonly range: string };

const quotedText = /"(?:[^"]|"")*"?/y;
const quotedSheet = /'(?:[^']|'')*'!/y;
const plainSheet = /[\p{L}_][\p{L}\p{N}_.]*!/uy;
const externalBook = /\[\d+\]/y;
const errorText = /#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|SPILL!|CALC!)/iy;
const cell = String.raw`\$?[A-Z]{1,3}\$?[1-9]\d{0,6}`;
const wholeColumns = String.raw`\$?[A-Z]{1,3}:\$?[A-Z]{1,3}`;
const wholeRows = String.raw`\$?[1-9]\d{0,6}:\$?[1-9]\d{0,6}`;
const reference = new RegExp(String.raw`(?:${cell}(?::${cell})?|${wholeColumns}|${wholeRows})(?![\p{L}\p{N}_.!(\[])`, "iuy");
const number = /\d+(?:\.\d*)?(?:[eE][+-]?\d+)?/y;
const word = /[\p{L}_\\][\p{L}\p{N}_.\\?]*/uy;

/** Cuts a formula, with or without "=", into pieces. Never fails: what it does not know is "text". */
export function formulaTokens(formula: string): readonly FormulaToken[] {
  const tokens: FormulaToken[] = [];
  let at = 0;
  while (at < formula.length) {
    const token = tokenAt(formula, at);
    tokens.push(token);
    at += token.text.length;
  }
  return tokens;
}

function tokenAt(formula: string, at: number): FormulaToken {
  const plain = match(quotedText, formula, at) ?? match(errorText, formula, at);
  if (plain !== undefined) return { kind: "text", text: plain };
  return sheetAt(formula, at) ?? bracketsAt(formula, at, "") ?? referenceAt(formula, at) ?? wordAt(formula, at);
}

/** A sheet's name with the cells after it; a name after it (a name that belongs to a sheet) stays text. */
function sheetAt(formula: string, at: number): FormulaToken | undefined {
  const book = match(externalBook, formula, at) ?? "";
  const prefix = match(quotedSheet, formula, at + book.length) ?? match(plainSheet, formula, at + book.length);
  if (prefix === undefined) return undefined;
  const start = at + book.length + prefix.length;
  const range = match(reference, formula, start);
  if (range === undefined || book !== "") {
    return { kind: "text", text: book + prefix + (range ?? match(word, formula, start) ?? "") };
  }
  const name = prefix.slice(0, -1);
  const sheet = name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name;
  return { kind: "reference", text: prefix + range, sheet, range };
}

function bracketsAt(formula: string, at: number, table: string): FormulaToken | undefined {
  const start = at + table.length;
  if (formula[start] !== "[") return undefined;
  const end = closingBracket(formula, start);
  if (end === undefined) return undefined;
  return { kind: "structured", text: formula.slice(at, end + 1), table, inside: formula.slice(start + 1, end) };
}

/** Position of the bracket that closes the one at start; an apostrophe makes the next character plain. */
function closingBracket(formula: string, start: number): number | undefined {
  let depth = 0;
  for (let at = start; at < formula.length; at++) {
    const character = formula[at];
    if (character === "'") at++;
    else if (character === "[") depth++;
    else if (character === "]" && --depth === 0) return at;
  }
  return undefined;
}

function referenceAt(formula: string, at: number): FormulaToken | undefined {
  const range = match(reference, formula, at);
  return range === undefined ? undefined : { kind: "reference", text: range, sheet: undefined, range };
}

function wordAt(formula: string, at: number): FormulaToken {
  const digits = match(number, formula, at);
  if (digits !== undefined) return { kind: "text", text: digits + (match(word, formula, at + digits.length) ?? "") };
  const text = match(word, formula, at);
  if (text === undefined) return { kind: "text", text: String.fromCodePoint(formula.codePointAt(at) ?? 32) };
  if (formula[at + text.length] === "(") return { kind: "function", text };
  return bracketsAt(formula, at, text) ?? { kind: "name", text };
}

function match(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0];
}
