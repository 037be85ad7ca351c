import { decimalMark, localeHere } from "../../src/taskpane/locale";
import { asTyped, figuresHere, readTyped, sayTyped } from "../../src/taskpane/typed-number";

// How numbers are written in German, French and Swiss use: common practice, as in Unicode's CLDR number symbols (from memory).
test.each([["en-US", "."], ["de-DE", ","], ["fr-FR", ","], ["de-CH", "."], ["en-GB", "."]] as const)("the decimal mark of %s is %s", (locale, mark) => expect(decimalMark(locale)).toBe(mark));

test.each([
  ["0.85", 0.85], ["0,85", 0.85], [",5", 0.5], ["12,5", 12.5], ["-3,25", -3.25], ["1,0000", 1], ["0,850", 0.85], ["1.234,5", 1234.5], ["1,234.5", 1234.5],
  ["1,234,567", 1_234_567], ["1 234,5", 1234.5], ["1'234.5", 1234.5], ["1000", 1000], ["3/16", 0.1875], ["1 1/8", 1.125], ["0", 0],
])("%s is %d in every country", (typed, value) => expect([readTyped(typed, "."), readTyped(typed, ",")]).toEqual([{ value }, { value }]));

test("three digits behind one mark are what a country with a point takes them for, and are asked about where the mark is a comma", () => {
  expect([readTyped("1,000", "."), readTyped("1.000", ".")]).toEqual([{ value: 1000 }, { value: 1 }]);
  expect([readTyped("1,000", ","), readTyped("1.000", ",")]).toEqual([{ ways: [1000, 1] }, { ways: [1000, 1] }]);
  expect(sayTyped("12,345", ",")).toEqual({ says: "12,345 can be 12345 or 12,3450. Type it one of these ways.", isDoubtful: true });
  expect([readTyped("12345", ","), readTyped("12,3450", ",")]).toEqual([{ value: 12_345 }, { value: 12.345 }]); // both ways out are read as they are meant
});

test.each(["a hair", "1,2,3", "1.2.3", "1,23,456.7", "12,34.5,6", "", "1,,5", "."])("%p is no number", (typed) => expect([readTyped(typed, "."), readTyped(typed, ",")]).toEqual([undefined, undefined]));

test("what is read otherwise than it is typed is said before it is written, and what is plain is not", () => {
  expect(sayTyped("1,000", ".")).toEqual({ says: "Read as 1000.", isDoubtful: false });
  expect(sayTyped("0,85", ".").says).toBe("Read as 0.85.");
  expect(sayTyped("0.85", ",").says).toBe("Read as 0,85.");
  expect(["0.85", "1000", "3/16", "a hair"].map((typed) => sayTyped(typed, ".").says)).toEqual(["", "", "", ""]);
  expect(sayTyped("0,85", ",").says).toBe("");
  expect([asTyped(0.85, ","), figuresHere("0.85 g, 12 psi", ",")]).toEqual(["0,85", "0,85 g, 12 psi"]);
});

test("Office's language of the cells goes before that of its menus, and a tag that is none is passed over", () => {
  expect(localeHere({ Office: { context: { contentLanguage: "de-DE", displayLanguage: "en-US" } } })).toBe("de-DE");
  expect(localeHere({ Office: { context: { contentLanguage: "not a tag", displayLanguage: "fr-FR" } } })).toBe("fr-FR");
  expect([localeHere({ navigator: { language: "fr-CA" } }), localeHere({})]).toEqual(["fr-CA", undefined]);
});
