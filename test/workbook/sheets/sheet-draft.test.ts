import { linesOf, sheetDraft } from "../../../src/workbook/sheets/sheet-draft";

// Counted by hand.
test.each([["one two three", 20, 1], ["one two three", 8, 2], ["one two three", 7, 2], ["one two three", 5, 3], ["abcdefghij", 4, 3], ["", 10, 1]])("%p in lines of %p letters takes %p", (text, room, lines) => expect(linesOf(text, room)).toBe(lines));

test("a row with text of several lines is as high as it needs, and all its cells begin at the top", () => {
  const draft = sheetDraft([10, 10]);
  draft.row(["word ".repeat(12).trim(), 5], [{ wrap: true }, { align: "right" }]);
  draft.row(["short", 5], [{ wrap: true }, { align: "right" }]);
  const { rowHeights = [], styles = [] } = draft.content({});
  expect((rowHeights[0] ?? 0) > 5 * (rowHeights[1] ?? 0) / 2).toBe(true);
  expect(styles.map(({ style: { wrap = false } }) => wrap)).toEqual([true, true, false, false]);
});

test("a cell without looks of its own begins at the top too, beside text of several lines", () => {
  const draft = sheetDraft([10, 10, 10]);
  draft.row(["word ".repeat(12).trim(), 5], [{ wrap: true }]);
  draft.row(["short", 5], [{ wrap: true }]);
  const { styles = [] } = draft.content({});
  expect(styles.map(({ row, column, style: { wrap = false } }) => [row, column, wrap])).toEqual([[0, 0, true], [0, 1, true], [1, 0, false]]);
});

test("merged cells have the room of all their columns", () => {
  const draft = sheetDraft([10, 30]);
  draft.row(["word ".repeat(8).trim()], [{ wrap: true }], [[0, 2]]);
  draft.row(["word ".repeat(8).trim()], [{ wrap: true }]);
  const { rowHeights: [joined = 0, single = 0] = [] } = draft.content({});
  expect(joined).toBeLessThan(single);
});
