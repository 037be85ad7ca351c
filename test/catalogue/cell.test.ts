import { isBlank, listOf, numberOf, sayCell, textOf, wordKey } from "../../src/catalogue/cell";

test.each([[0], [-0], [null], [undefined], [""], ["  "]])("%p is blank", (raw) => expect(isBlank(raw)).toBe(true));
test.each([["0"], [false], [1], ["x"], [NaN]])("%p is not blank", (raw) => expect(isBlank(raw)).toBe(false));

test.each([
  [7, "7"],
  [" LF ", "LF"],
  [true, "TRUE"],
  [0, undefined],
  ["0", "0"],
])("%p as text is %p", (raw, text) => expect(textOf(raw)).toBe(text));

test.each([
  [0.1875, 0.1875],
  ["0.1875", 0.1875],
  [" .25 ", 0.25],
  ["3/16", 0.1875],
  ["1 1/8", 1.125],
  ["1-1/8", 1.125],
  ["1,234.5", 1234.5],
  ["12,345,678", 12345678],
  ["-3.5", -3.5],
  ["2e3", 2000],
  ["0", 0],
])("%p is the number %p", (raw, number) => expect(numberOf(raw)).toBe(number));

test.each([["3/0"], ["1,5"], ["12,34"], ["3/16 in"], ["0x10"], ["Infinity"], [Infinity], [NaN], [true], ["five"], ["1/2/3"], [""]])("%p is no number", (raw) => {
  expect(numberOf(raw)).toBeUndefined();
});

test("a list is split on ; and trimmed, and its empty parts are dropped", () => expect(listOf(" HV-1 ;; PV-2@rear ; ")).toEqual(["HV-1", "PV-2@rear"]));

test("words are compared without case, hyphens, degree signs or repeated spaces", () => {
  for (const written of ["Inverted-Flare-45", "inverted  flare 45°", "INVERTED_FLARE_45", "inverted flare 45 deg"]) expect(wordKey(written)).toBe("inverted flare 45");
});

test("an error quotes what a cell says, and an error value as what it is", () => {
  expect([sayCell(" a "), sayCell(0), sayCell(1.5), sayCell(false), sayCell({ code: "#REF!" })]).toEqual(["a", "", "1.5", "FALSE", "an error value"]);
});
