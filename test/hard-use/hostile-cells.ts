/** Cells as a hard day brings them: texts where numbers belong, errors of formulas, ids of other tables, and what only a program would type. */
import fc from "fast-check";
import naughty from "big-list-of-naughty-strings";
import { demoTables } from "../../src/catalogue/demo";

/** As a range holds it: an error arrives as an object, a blank as 0. */
export type HostileCell = string | number | boolean | null | { readonly code: string; readonly message: string };

export const naughtyTexts: readonly string[] = naughty;

/** Characters that markup, formulas, lists of this product, and text in other directions are made of. */
const AWKWARD = "<>&\"'`=+-@;:,|/\\#%°½×\t\r\n\0\u00a0\u200b\u202e\ufeff\u{1f527}é字ة0123456789abcXYZ ";

const NUMBERS = [1e308, -1e308, Number.MAX_SAFE_INTEGER, 2 ** 53, 5e-324, 1e-300, -1, -0.1875, 0.1 + 0.2, 45_000, 2_958_465, 1_900, 2_101, 3, 1e6, 1e15, 0.5, 1];
const TEXTS = [
  "0", "-0", "00", "1e308", "1e309", "-1e309", "1e-400", "Infinity", "NaN", "3/16", "3/0", "0/0", "1 1/8", "1/8/9", "9/16-18", "M10x1", "M10x0", "M0x1", "3/8-0", "999/1-999", "1,234.5", "1.234,5",
  "10 psi", "4.75 mm", "TRUE", "none", "?", "yes", "unknown", "2024-02-30", "#N/A", "#REF!", "=1+1", "__proto__", "constructor", "toString", ";", ";;;", "@", "@front", "BLK-E@", "BLK-E@nowhere", "a: b: c",
];
const ERRORS = ["#N/A", "#VALUE!", "#REF!", "#NAME?", "#DIV/0!", "#NUM!", "#SPILL!"].map((code) => ({ code, message: "a formula of the user's own" }));

const demoCells: readonly HostileCell[] = [...new Set(demoTables.flatMap(({ rows }) => rows.flat()))];
const partNames = demoTables.flatMap(({ name, headings, rows }) => (name === "Components" ? rows.map((row) => String(row[headings.indexOf("Component")])) : []));

/** A list as Valves and Hoses hold it, of parts that are there, that are not, again and again. */
const partList = fc.array(fc.tuple(fc.constantFrom(...partNames, "NOT-THERE", "?", "", "none"), fc.constantFrom("", "", "", "@front", "@rear", "@1", "@2", "@", "@master")), { maxLength: 9 }).map((parts) => parts.map((part) => part.join("")).join("; "));

/** Characters that a cell of a spreadsheet can hold. */
const LONGEST_CELL = 32_767;
const longTexts = fc.tuple(fc.constantFrom("x", "BLK-E; ", "=", "(", "1", "\u{1f527}", "é"), fc.integer({ min: 500, max: 9_000 })).map(([piece, times]) => piece.repeat(times).slice(0, LONGEST_CELL));

/** Any cell; what the demo holds anywhere comes often, since it goes deepest. */
export const hostileCell: fc.Arbitrary<HostileCell> = fc.oneof(
  { weight: 8, arbitrary: fc.constantFrom(...demoCells) },
  { weight: 4, arbitrary: fc.constantFrom(...TEXTS) },
  { weight: 3, arbitrary: fc.constantFrom(...NUMBERS) },
  { weight: 3, arbitrary: fc.constantFrom(...naughtyTexts) },
  { weight: 2, arbitrary: fc.constantFrom<HostileCell>(0, "", null, true, false) },
  { weight: 2, arbitrary: fc.constantFrom(...ERRORS) },
  { weight: 2, arbitrary: partList },
  { weight: 1, arbitrary: fc.string({ unit: fc.constantFrom(...AWKWARD), maxLength: 20 }) },
  { weight: 1, arbitrary: fc.double({ noNaN: true, noDefaultInfinity: true }) },
  { weight: 1, arbitrary: fc.integer({ min: 1, max: 9 }).map((number) => ` ${String(number)} `) },
);

/** The same, and texts of thousands of characters once in a while. */
export const hostileOrLongCell: fc.Arbitrary<HostileCell> = fc.oneof({ weight: 60, arbitrary: hostileCell }, { weight: 1, arbitrary: longTexts });
