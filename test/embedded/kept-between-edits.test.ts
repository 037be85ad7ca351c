/** What the grid keeps between edits so that one row of thousands costs one row: it must never be seen. */
import { gridPort } from "../../src/embedded/grid-port";
import { openDocument, openSample, plainSheet, tableSheet } from "./sample";

/** What the cell of a table looks like through the style of its table; the getter is one of the library's own. */
function fillAt(grid: ReturnType<typeof openDocument>, row: number): unknown {
  const { getters } = grid.model;
  const [sheetId = ""] = getters.getSheetIds();
  const style = (getters as unknown as { getCellTableStyle(position: { sheetId: string; col: number; row: number }): { fillColor?: string } | undefined }).getCellTableStyle({ sheetId, col: 0, row });
  return style?.fillColor;
}

/** Bands that the user switched on: the tables have none by themselves. */
function banded() {
  const grid = openDocument({ sheets: [tableSheet({ name: "Long", rows: [["N"], [1], [2], [3], [4]] })] });
  const { getters } = grid.model;
  const [sheetId = ""] = getters.getSheetIds();
  for (const { range: { zone } } of getters.getTables(sheetId)) grid.model.dispatch("UPDATE_TABLE", { sheetId, zone, config: { bandedRows: true } });
  return grid;
}

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

describe("cells that a formula fills", () => {
  const spilled = () => {
    const grid = openSample({ A1: "=TEST.ECHO(Cars)" });
    const sheetId = grid.model.getters.getSheetIds()[1] ?? "";
    const cell = (col: number, row: number) => grid.model.getters.getEvaluatedCell({ sheetId, col, row });
    return { grid, sheetId, cell };
  };

  test("are the same cells while they hold the same, and new ones where they do not", () => {
    const { grid, cell } = spilled();
    const [same, changed] = [cell(0, 2), cell(1, 1)];
    grid.enter("Cars", "B3", "1912");
    expect(cell(0, 2)).toBe(same);
    expect([changed.value, cell(1, 1).value, cell(1, 1).formattedValue]).toEqual([12, 1912, "1912"]);
  });

  test("show the format that they are given, and after it is taken away, and the locale that is chosen", () => {
    const { grid, sheetId, cell } = spilled();
    const target = [{ left: 2, right: 2, top: 2, bottom: 2 }];
    grid.model.dispatch("SET_FORMATTING", { sheetId, target, format: "0.00" });
    grid.enter("Cars", "B3", "1");
    expect(cell(2, 2).formattedValue).toBe("5.50");
    grid.model.dispatch("CLEAR_FORMATTING", { sheetId, target });
    grid.enter("Cars", "B3", "2");
    expect(cell(2, 2).formattedValue).toBe("5.5");
    grid.model.dispatch("UPDATE_LOCALE", { locale: { ...grid.model.getters.getLocale(), decimalSeparator: ",", thousandsSeparator: ".", formulaArgSeparator: ";" } });
    grid.enter("Cars", "B3", "3");
    expect(cell(2, 2).formattedValue).toBe("5,5");
  });

  test("go from a number to a text that looks like it, and back after an error", () => {
    const { grid, cell } = spilled();
    grid.write("Cars", "B4", "13");
    expect(cell(1, 2)).toMatchObject({ value: "13", type: "text" });
    grid.enter("Cars", "B4", "=1/0");
    expect(cell(1, 2)).toMatchObject({ value: null }); // the whole answer is the error now
    grid.enter("Cars", "B4", "13");
    expect(cell(1, 2)).toMatchObject({ value: 13, type: "number" });
  });
});

test("a table is read as it stands, at once after an edit and later, and one that did not change is the object of before", async () => {
  const grid = openDocument({ sheets: [tableSheet({ name: "Long", rows: [["N"], [1], [2]] }), tableSheet({ name: "Other", rows: [["M"], [1]] })] });
  const port = gridPort(grid);
  const [before, other] = await Promise.all([port.readTable("Long"), port.readTable("Other")]);
  grid.enter("Long", "A3", "7");
  expect((await port.readTable("long"))?.rows).toEqual([[1], [7]]);
  await new Promise((resume) => { setTimeout(resume, 60); });
  const after = await port.readTable("Long");
  expect(after?.rows).toEqual([[1], [7]]);
  expect([after?.rows[0] === before?.rows[0], await port.readTable("Other") === other]).toEqual([true, true]);
  grid.enter("Long", "A4", "9");
  await new Promise((resume) => { setTimeout(resume, 60); });
  expect((await port.readTable("Long"))?.rows).toEqual([[1], [7], [9]]);
});
