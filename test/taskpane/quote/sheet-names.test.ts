import { nextRevision, sheetName } from "../../../src/taskpane/quote/sheet-names";

test.each([
  [[], 1, "Quote Car 3"],
  [["Cars", "Quote Car 30"], 1, "Quote Car 3"],
  [["Quote Car 3"], 2, "Quote Car 3 rev 2"],
  [["QUOTE CAR 3", "Quote Car 3 rev 7"], 8, "Quote Car 3 rev 8"],
  [["Quote Car 3 rev 2"], 3, "Quote Car 3 rev 3"],
])("with the sheets %p the next revision is %p", (sheets, revision, name) => {
  expect([nextRevision("Quote", "Car 3", sheets), sheetName("Quote", "Car 3", revision)]).toEqual([revision, name]);
});

// Excel: at most 31 letters, none of [ ] : * ? / \
test("a long name with letters that no sheet may have is counted all the same", () => {
  const name = sheetName("Quote", "The red one: with a/very long name", 12);
  expect([name.length <= 31, /[[\]:*?/\\]/.test(name), nextRevision("Quote", "The red one: with a/very long name", [name])]).toEqual([true, false, 13]);
});
