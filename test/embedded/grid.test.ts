import { type CellValue } from "../../src/workbook/document";
import { type Grid } from "../../src/embedded/grid/grid";
import { openDocument, openSample, plainSheet, sampleDocument, tableSheet } from "./sample";

/** As the grid's own button makes tables. */
const tableConfig = {
  hasFilters: false, totalRow: false, firstColumn: false, lastColumn: false, numberOfHeaders: 1, bandedRows: false, bandedColumns: false, styleId: "TableStyleLight1",
};

const at = (grid: Grid, address: string) => grid.value("Work", address);
const shows = (formula: string, more: Readonly<Record<string, CellValue>> = {}) => at(openSample({ ...more, H1: formula }), "H1");

describe("functions get what Excel would give them", () => {
  test("ranges come row by row, blanks as 0, texts as texts", () => {
    expect(shows("=TEST.MANY(Cars)")).toBe('[[["A",11,3.5,"3/16"],["B",12,0,"007"],["C",13,5.5,"=1+1"]],[]]');
  });

  test("omitted optionals are null, repeated ranges an array", () => {
    expect(shows('=TEST.SHOW("x")')).toBe('["x",null]');
    expect(shows("=TEST.MANY(Cars[#Headers],Cars[Year],7)")).toBe('[[["Car","Year","Length (in)","Tube"]],[[[11],[12],[13]],[[7]]]]');
  });

  test("single blanks and numbers are turned into the type that is asked for", () => {
    expect(shows("=TEST.SHOW(Z99,Z99)")).toBe('["",0]');
    expect(shows('=TEST.SHOW(5,"5")')).toBe('["5",5]');
    expect(shows('=TEST.SHOW("x","y")')).toEqual({ error: "#VALUE!", message: 'TEST.SHOW could not answer: number must be a number, not "y".' });
  });

  test("an error in an argument is the answer, with its own words", () => {
    expect(shows('=TEST.MANY(A1,Cars)', { A1: '=TEST.REFUSE("notAvailable")' })).toEqual({ error: "#N/A", message: "because we say so" });
    expect(shows("=TEST.MANY(A1:B2)", { A1: "=1/0" })).toMatchObject({ error: "#DIV/0!" });
  });
});

describe("answers", () => {
  test("a table spills, and a formula that takes it sees all of it", () => {
    const grid = openSample({ A1: "=TEST.ECHO(Cars)", H1: "=SUM(A1#)" });
    expect(grid.results("Work", "A1")).toEqual([["A", 11, 3.5, "3/16"], ["B", 12, 0, "007"], ["C", 13, 5.5, "=1+1"]]);
    expect(at(grid, "H1")).toBe(45); // 11 + 12 + 13 + 3.5 + 0 + 5.5
  });

  test("a formula on another sheet that takes a spill sees all of it, also when it changes", () => {
    const grid = openDocument({ sheets: [...sampleDocument({ A1: "=TEST.ECHO(Cars)" }).sheets, plainSheet("Sum", { A1: "=SUM(Work!A1#)", B1: "=ROWS(Work!A1#)" })] });
    expect([grid.value("Sum", "A1"), grid.value("Sum", "B1")]).toEqual([45, 3]); // 11 + 12 + 13 + 3.5 + 0 + 5.5
    grid.enter("Cars", "B2", "1");
    grid.enter("Cars", "B5", "10");
    expect([grid.value("Sum", "A1"), grid.value("Sum", "B1")]).toEqual([45, 4]); // 1 + 12 + 13 + 10 + 3.5 + 0 + 5.5 + 0
  });

  test("a cell in the way gives #SPILL!, and clearing it lets the table out", () => {
    const grid = openSample({ A1: "=TEST.ECHO(Cars)", B2: "in the way" });
    expect(at(grid, "A1")).toMatchObject({ error: "#SPILL!" });
    grid.enter("Work", "B2", "");
    expect(at(grid, "B2")).toBe(12);
  });

  test("our errors keep their kind and message; a fault of ours reads plainly", () => {
    expect(shows('=TEST.REFUSE("value")')).toEqual({ error: "#VALUE!", message: "because we say so" });
    expect(shows('=TEST.REFUSE("notAvailable")')).toEqual({ error: "#N/A", message: "because we say so" });
    expect(shows('=TEST.REFUSE("plain")')).toEqual({ error: "#VALUE!", message: "TEST.REFUSE could not answer: broken" });
  });

  test("null shows 0, no number is #NUM!, a short row ends in #N/A", () => {
    expect(openSample({ A1: "=TEST.ODD()" }).results("Work", "A1")).toEqual([[0, { error: "#NUM!" }, "3/16"], [true, { error: "#N/A" }, { error: "#N/A" }]]);
  });

  test("a result larger than the sheet gets the room it needs", () => {
    const long = { name: "Long", rows: [["N"], ...Array.from({ length: 1500 }, (_, row) => [row + 1])] };
    const grid = openDocument({ sheets: [tableSheet(long), plainSheet("Work", { A1: "=TEST.ECHO(Long)" })] });
    expect(grid.results("Work", "A1")).toHaveLength(1500);
  });

  test("rows pasted under a table get it too, and the sheet grows for what is spilled over them", () => {
    const long = { name: "Long", rows: [["N", "M"], ...Array.from({ length: 900 }, (_, row) => [row + 1, "x"])] };
    const grid = openDocument({ sheets: [tableSheet(long), plainSheet("Work", { A50: "=TEST.ECHO(Long)" })] });
    const target = [{ left: 0, right: 0, top: 901, bottom: 901 }];
    const text = Array.from({ length: 190 }, (_, row) => `${String(row)}\ty`).join("\n");
    grid.model.dispatch("PASTE_FROM_OS_CLIPBOARD", { target, clipboardContent: { text } });
    expect(grid.tables()[0]?.rows).toBe(1090);
    expect(grid.results("Work", "A50")).toHaveLength(1090);
    grid.model.dispatch("REQUEST_UNDO"); // the room
    grid.model.dispatch("REQUEST_UNDO"); // the paste
    expect(grid.results("Work", "A50")).toHaveLength(900);
  });

  test("an edit recalculates what depends on it", () => {
    const grid = openSample({ A1: "=TEST.ECHO(Cars)", H1: "=SUM(B1:B3)" });
    grid.enter("Cars", "B2", "111");
    expect(at(grid, "H1")).toBe(136); // 111 + 12 + 13
  });
});

describe("formulas follow their table", () => {
  const formulas = { H1: "=SUM(Cars[Year])", H2: "=ROWS(Cars[#All])", H3: "=Cars[@Year]" };
  const texts = (grid: Grid) => ["H1", "H2", "H3"].map((address) => grid.document().sheets[1]?.cells.get(address)?.formula);

  test("typing under a table extends it, as one step to undo", () => {
    const grid = openSample(formulas);
    grid.enter("Cars", "B5", "14");
    expect([at(grid, "H1"), at(grid, "H2")]).toEqual([50, 5]); // 11 + 12 + 13 + 14; headings and four rows
    grid.model.dispatch("REQUEST_UNDO");
    expect([at(grid, "H1"), at(grid, "H2")]).toEqual([36, 4]);
    grid.model.dispatch("REQUEST_REDO");
    expect([at(grid, "H1"), at(grid, "H2")]).toEqual([50, 5]);
    expect(texts(grid)).toEqual(["=SUM(Cars[Year])", "=ROWS(Cars[#All])", "=Cars[@Year]"]);
  });

  test("rows inserted above, inside and right under the headings", () => {
    const grid = openSample(formulas);
    const insert = (base: number) => {
      grid.model.dispatch("ADD_COLUMNS_ROWS", { sheetId: "sheet1", sheetName: "Cars", dimension: "ROW", base, quantity: 1, position: "before" });
    };
    insert(0);
    insert(3);
    insert(2); // the row under the headings, which is now row 3
    grid.enter("Cars", "B3", "100");
    expect([at(grid, "H1"), at(grid, "H2")]).toEqual([136, 6]); // 100 + 36; headings, three rows and two new ones
    expect(grid.tables()[0]).toMatchObject({ firstRow: 1, rows: 5 });
  });

  test("rows and columns taken out", () => {
    const grid = openSample(formulas);
    grid.model.dispatch("REMOVE_COLUMNS_ROWS", { sheetId: "sheet1", sheetName: "Cars", dimension: "ROW", elements: [1] });
    expect([at(grid, "H1"), at(grid, "H2")]).toEqual([25, 3]);
    grid.model.dispatch("REMOVE_COLUMNS_ROWS", { sheetId: "sheet1", sheetName: "Cars", dimension: "COL", elements: [1] });
    expect(at(grid, "H1")).toEqual({ error: "#REF!", message: "Table Cars has no column Year." });
    expect(texts(grid)[0]).toBe("=SUM(Cars[Year])");
  });

  test("a renamed heading renames the column in the formulas", () => {
    const grid = openSample(formulas);
    grid.enter("Cars", "B1", "Built");
    expect(texts(grid)[0]).toBe("=SUM(Cars[Built])");
    expect(at(grid, "H1")).toBe(36);
  });

  test("a heading typed later answers the formula that asked for it", () => {
    const grid = openSample({ H1: "=SUM(Cars[Doors])" });
    expect(at(grid, "H1")).toEqual({ error: "#REF!", message: "Table Cars has no column Doors." });
    grid.enter("Cars", "E1", "Doors");
    grid.enter("Cars", "E2", "4");
    expect(at(grid, "H1")).toBe(4);
  });

  test("a copied formula keeps its table, and T[@] takes the row it comes to", () => {
    const grid = openSample({ A2: "=SUM(Cars[Year])&Cars[@Car]" });
    const cell = (row: number) => [{ left: 0, right: 0, top: row, bottom: row }];
    grid.model.dispatch("ACTIVATE_SHEET", { sheetIdFrom: "sheet1", sheetIdTo: "sheet2" });
    grid.model.selection.selectCell(0, 1);
    grid.model.dispatch("COPY");
    grid.model.dispatch("PASTE", { target: cell(3) });
    expect([at(grid, "A2"), at(grid, "A4")]).toEqual(["36A", "36C"]);
  });

  test("all rows gone and new ones typed", () => {
    const grid = openSample(formulas);
    grid.model.dispatch("REMOVE_COLUMNS_ROWS", { sheetId: "sheet1", sheetName: "Cars", dimension: "ROW", elements: [1, 2, 3] });
    expect(at(grid, "H1")).toEqual({ error: "#REF!", message: "Table Cars has no rows." });
    grid.enter("Cars", "B2", "7");
    expect(at(grid, "H1")).toBe(7);
  });
});

test("what is opened is what is kept", () => {
  const document = sampleDocument({ A1: "007", A2: "3/16", A3: "TRUE", A4: "=1+1&Cars[@Car]", A5: true, A6: -0.5, A7: "'tis", A8: "1/2-20", A9: 1e-7, B2: "two\nlines" });
  const opened = openDocument(document).document();
  const values = (source: typeof document) => [...(source.sheets[1]?.cells ?? [])].filter(([, cell]) => cell.formula === undefined).map(([address, cell]) => [address, cell.value]);
  expect(new Map(values(opened) as [string, CellValue][])).toEqual(new Map(values(document) as [string, CellValue][]));
  expect(opened.sheets[0]).toEqual({ ...document.sheets[0], columnWidths: [] });
});

test("a name typed for an unknown table says so until the table is there", () => {
  const grid = openSample({});
  grid.enter("Work", "A1", "=SUM(Table1[Q])");
  expect(at(grid, "A1")).toEqual({ error: "#NAME?", message: "No table is named Table1." });
  grid.enter("Work", "C1", "Q");
  grid.enter("Work", "C2", "5");
  const zone = { left: 2, right: 2, top: 0, bottom: 1 };
  grid.model.dispatch("CREATE_TABLE", { sheetId: "sheet2", ranges: [grid.model.getters.getRangeDataFromZone("sheet2", zone)], tableType: "static", config: tableConfig });
  expect(at(grid, "A1")).toBe(5);
});
