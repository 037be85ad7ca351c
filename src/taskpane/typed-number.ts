/** A number as somebody types it, with the decimal mark of the reader's country, and never misread in silence. */
import { numberOf } from "../catalogue/cell";
import { decimalMark, type DecimalMark } from "./locale";

/** What was typed: one number, or the two that it could be, or none. */
export type TypedNumber = { readonly value: number; readonly ways?: undefined } | { readonly value?: undefined; readonly ways: readonly [thousands: number, decimal: number] } | undefined;

/**
 * `0.85` and `0,85` are one number everywhere, since neither can be thousands. A mark before just three digits is what the
 * reader's country takes it for where that is a point; where it is a comma, sheets with a point are about too, and `1,000` and `1.000` are asked about.
 */
export function readTyped(typed: string, mark: DecimalMark): TypedNumber {
  const text = typed.trim().replace(/(?<=\d)[\s\u00a0\u202f'’](?=\d{3}(\D|$))/g, "");
  const marks = text.replace(/[^.,]/g, "");
  if (!/^[+-]?[\d.,]+$/.test(text) || marks === "") return one(numberOf(text));
  const last = marks.at(-1) ?? "";
  if (marks.length === 1) return readOneMark(text, last, mark);
  const isMixed = marks.slice(0, -1).split("").every((each) => each !== last);
  const [whole = "", rest = ""] = isMixed ? [text.slice(0, text.lastIndexOf(last)), text.slice(text.lastIndexOf(last) + 1)] : [text];
  return /^[+-]?\d{1,3}([.,])\d{3}(\1\d{3})*$/.test(whole) ? one(Number(`${whole.replace(/[.,]/g, "")}.${rest || "0"}`)) : undefined;
}

function readOneMark(text: string, last: string, mark: DecimalMark): TypedNumber {
  const decimal = numberOf(text.replace(last, "."));
  if (decimal === undefined || !/^[+-]?[1-9]\d{0,2}[.,]\d{3}$/.test(text)) return one(decimal);
  const thousands = Number(text.replace(last, ""));
  return mark === "," ? { ways: [thousands, decimal] } : one(last === "." ? decimal : thousands);
}

const one = (value: number | undefined): TypedNumber => (value === undefined ? undefined : { value });

/** A number as the reader types it: the whole of it, without marks between thousands. */
export const asTyped = (value: number, mark: DecimalMark): string => String(value).replace(".", mark);

/**
 * What is to be said beside the field; "" when nothing is.
 * @param isDoubtful true when it must not be written as it stands
 */
export function sayTyped(typed: string, mark: DecimalMark): { readonly says: string; readonly isDoubtful: boolean } {
  const read = readTyped(typed, mark);
  if (read?.ways) {
    const [thousands, decimal] = read.ways;
    return { says: `${typed.trim()} can be ${asTyped(thousands, mark)} or ${withFourPlaces(decimal, mark)}. Type it one of these ways.`, isDoubtful: true };
  }
  const isPlain = read === undefined || asTyped(read.value, mark) === typed.trim() || !/[.,\s'’]/.test(typed.trim().replace(mark, ""));
  return { says: isPlain ? "" : `Read as ${asTyped(read.value, mark)}.`, isDoubtful: false };
}

/** Four places are no thousands, so this way cannot be misread. */
const withFourPlaces = (value: number, mark: DecimalMark): string => value.toFixed(4).replace(".", mark);

/** A text of figures and units alone, with the reader's decimal mark; no text with names of parts, which may have points of their own. */
export const figuresHere = (text: string, mark: DecimalMark = decimalMark()): string => text.replace(/(?<=\d)\.(?=\d)/g, mark);
