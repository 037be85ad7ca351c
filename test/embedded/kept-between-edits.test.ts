/** What the grid keeps between edits so that one row of thousands costs one row: it must never be seen. */
import { openDocument, openSample, plainSheet, tableSheet } from "./sample";

/** What the cell of a table looks like through the style of its table; the getter is one of the library's own. */
function fillAt(grid: ReturnType<typeof openDocument>, row: number): unknown {
  const { getters } = grid.model;
  const [sheetId = ""] = getters.getSheetIds();
  const style = (getters as unknown as { getCellTableStyle(position: { sheetId: string; col: number; row: number }): { fillColor?: string } | undefined }).getCellTableStyle({ sheetId, col: 0, row });
  return style?.fillColor;
}

const banded = () => openDocument({ sheets: [tableSheet({ name: "Long", rows: [["N"], [1], [2], [3], [4]] })] });

test("an entry leaves the bands of a table where they were", () => {
  const grid = banded();
  const before = [0, 1, 2, 3, 4].map((row) => fillAt(grid, row));
  expect(new Set(before).size).toBeGreaterThan(1);
  grid.enter("Long", "A3", "7");
  expect([0, 1, 2, 3, 4].map((row) => fillAt(grid, row))).toEqual(before);
});

test("a table that grows, and one with a row hidden, is banded anew", () => {
  const grid = banded();
  const [, odd, even] = [0, 1, 2].map((row) => fillAt(grid, row));
  expect(fillAt(grid, 5)).toBeUndefined();
  grid.enter("Long", "A6", "5");
  expect([5, 4].map((row) => fillAt(grid, row))).toEqual([odd, even]);
  const [sheetId = ""] = grid.model.getters.getSheetIds();
  grid.model.dispatch("HIDE_COLUMNS_ROWS", { sheetId, dimension: "ROW", elements: [1] });
  expect([2, 3].map((row) => fillAt(grid, row))).toEqual([odd, even]);
});

test("functions are given the rows as they stand after every edit, undo and sort", () => {
  const grid = openSample({ A1: "=TEST.ECHO(Cars)", A9: "=TEST.MANY(Cars)" });
  const seen = (): unknown[] => [grid.results("Work", "A1").map(([car, year]) => [car, year]), grid.value("Work", "A9")];
  const before = seen();
  grid.enter("Cars", "B3", "1912");
  expect(seen()).toEqual([[["A", 11], ["B", 1912], ["C", 13]], '[[["A",11,3.5,"3/16"],["B",1912,0,"007"],["C",13,5.5,"=1+1"]],[]]']);
  grid.model.dispatch("REQUEST_UNDO");
  expect(seen()).toEqual(before);
  grid.enter("Cars", "A2", "=1/0");
  expect(grid.results("Work", "A1")[0]?.[0]).toMatchObject({ error: "#DIV/0!" });
});

test("of two workbooks alike in shape each gives its own rows", () => {
  const [one, other] = [1, 2].map((first) => openDocument({ sheets: [tableSheet({ name: "Long", rows: [["N"], [first], [3]] }), plainSheet("Work", { A1: "=TEST.MANY(Long)" })] }));
  expect([one?.value("Work", "A1"), other?.value("Work", "A1")]).toEqual(["[[[1],[3]],[]]", "[[[2],[3]],[]]"]);
});
