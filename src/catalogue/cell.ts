/** Raw cells as they arrive from a range: what is blank, what is text, what is a number. */

/** True for what a spreadsheet passes for an empty cell. Blanks in a range arrive as 0, so the number 0 reads as blank and a zero that is meant is the text "0". */
export const isBlank = (raw: unknown): boolean => raw === 0 || raw === null || raw === undefined || (typeof raw === "string" && raw.trim() === "");

/** The cell as text, outer spaces off; a number or a yes/no typed where text belongs is its text. Undefined when blank. */
export const textOf = (raw: unknown): string | undefined => (isBlank(raw) ? undefined : sayCell(raw));

/** The cell as an error quotes it; empty when blank. */
export function sayCell(raw: unknown): string {
  if (isBlank(raw)) return "";
  if (typeof raw === "string") return raw.trim();
  if (typeof raw === "boolean") return raw ? "TRUE" : "FALSE";
  return typeof raw === "number" ? String(raw) : "an error value";
}

/** True for a value a cell can hold: anything else is the error value of a formula. */
export const isCellValue = (raw: unknown): raw is string | number | boolean => ["string", "number", "boolean"].includes(typeof raw);

const DECIMAL = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;
const THOUSANDS = /^[+-]?\d{1,3}(?:,\d{3})+(?:\.\d+)?$/;
const FRACTION = /^(?:(\d+)[ -]+)?(\d+)\/(\d+)$/;

/**
 * The cell as a number: `0.1875`, "0.1875", "3/16", "1 1/8", "1,234.5".
 * @returns undefined when the cell holds no number (a decimal comma is refused: it cannot be told from a thousands comma)
 */
export function numberOf(raw: unknown): number | undefined {
  if (typeof raw === "number") return Number.isFinite(raw) ? raw : undefined;
  if (typeof raw !== "string") return undefined;
  const text = raw.trim().replace(/\s+/g, " ");
  if (DECIMAL.test(text)) return Number(text);
  if (THOUSANDS.test(text)) return Number(text.replaceAll(",", ""));
  return fractionOf(text);
}

function fractionOf(text: string): number | undefined {
  const found = FRACTION.exec(text);
  if (!found || Number(found[3]) === 0) return undefined;
  return Number(found[1] ?? 0) + Number(found[2]) / Number(found[3]);
}

/** The parts of a cell that holds a list: split on `;`, trimmed, empty ones dropped. */
export const listOf = (text: string): readonly string[] =>
  text
    .split(";")
    .map((part) => part.trim())
    .filter((part) => part !== "");

/** Words compared without regard to case, hyphens, underscores, degree signs or repeated spaces. */
export const wordKey = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[-_\u2010-\u2013\s]+/g, " ")
    .replace(/°| degrees?\b| deg\b/g, "")
    .trim();
