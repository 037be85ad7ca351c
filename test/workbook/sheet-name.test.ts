import { freeSheetName } from "../../src/workbook/sheet-name";

const check = (wanted: string, taken: readonly string[], expected: string): void => {
  test(`"${wanted}" beside ${taken.join(", ") || "nothing"} becomes "${expected}"`, () => expect(freeSheetName(wanted, taken)).toBe(expected));
};

check("Quote", [], "Quote");
check("Quote", ["quote"], "Quote 2");
check("Quote", ["Quote", "QUOTE 2"], "Quote 3");
check("a/b\\c:d?e*f[g]", [], "a b c d e f g");
check("'quoted'", [], "quoted");
check("  ", [], "Sheet");
check("History", [], "History 2");
// 31 characters are Excel's limit
check("x".repeat(40), [], "x".repeat(31));
check("x".repeat(40), ["x".repeat(31)], `${"x".repeat(29)} 2`);
