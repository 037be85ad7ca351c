import { failure, tableFrom, type Cell } from "./sheet";

const record = (rows: Cell[][], index: number): Record<string, Cell | undefined> => Object.fromEntries((rows[0] ?? []).map((heading, position) => [String(heading), rows[index]?.[position]]));
const cutplan = (pieces: unknown, stock: unknown, ...more: unknown[]): Cell[][] => tableFrom("CUTPLAN", pieces, stock, ...[...more, null, null, null].slice(0, 3));

describe("CUTPLAN", () => {
  // Gilmore and Gomory 1961: least cost 170.
  const pieces = [[2, 20], [3, 10], [4, 20]];
  const stock = [[5, 6, 0, "five"], [6, 7, 0, "six"], [9, 10, 0, "nine"]];

  test("the first row is the total: cost, bound and proof", () => {
    expect(record(cutplan(pieces, stock), 1)).toMatchObject({ Pattern: "total", Cost: 170, "Lower bound": 170, Status: "proved", Problem: "" });
  });

  test("the patterns' costs, lengths and pieces add up to the total", () => {
    const table = cutplan(pieces, stock);
    const patterns = table.slice(2).map((_, index) => record(table, index + 2));
    const sum = (of: (row: Record<string, Cell | undefined>) => number) => patterns.reduce((total, row) => total + of(row), 0);
    expect(sum((row) => Number(row["Cost"]))).toBe(170);
    expect(sum((row) => Number(row["Times"]))).toBe(record(table, 1)["Times"]);
    expect(sum((row) => Number(row["Times"]) * (Number(row["Used (in)"]) + Number(row["Left over (in)"])))).toBe(sum((row) => Number(row["Times"]) * Number(row["Stock length (in)"])));
    // By hand: 20 × 2 + 10 × 3 + 20 × 4 = 150.
    expect(record(table, 1)["Used (in)"]).toBe(150);
  });

  test("headings may stand in any order, and a unit in one wins", () => {
    // By hand: 4 × 300 + 3 × 2 of kerf = 1206 mm.
    const table = cutplan([["Piece", "Count", "Length (mm)"], ["A", 4, 300]], [["Price", "Stock", "Length (mm)"], [9, "bar", 1206]], 2, null, "mm");
    expect(record(table, 1)).toMatchObject({ Cost: 9, Status: "proved", "Used (mm)": 1206, "Left over (mm)": 0 });
    expect(record(table, 2)).toMatchObject({ Stock: "bar", Times: 1, Cuts: "4 × 300", Pieces: "A" });
    expect(record(cutplan([["Length (mm)"], [254]], [["Length (in)", "Price"], [10, 1]]), 1)).toMatchObject({ Cost: 1, "Used (in)": 10 });
  });

  test("fractions of an inch may be written, and counts left out are one", () => {
    expect(record(cutplan([["12 1/2"], ["11 7/16"]], [[24, 5]], "1/16"), 1)).toMatchObject({ Cost: 5, "Used (in)": 24, Status: "proved" });
  });

  test.each([
    ["longer than any stock", [30, 1, "bad"], /longer than any stock/], ["zero", [0, 2, "bad"], /not above 0/], ["negative", [-3, 1, "bad"], /not above 0/],
    ["not a number", ["long", 1, "bad"], /length is not a number/], ["no count", [3, 0, "bad"], /count/], ["an error value", [{ code: "#N/A" }, 1, "bad"], /length is not a number/],
  ] as const)("a piece that is %s keeps a row that names it, and the rest is planned", (_, bad, says) => {
    const table = cutplan([[5, 2, "good"], bad], [[10, 4, 0, "stick"]]);
    expect(record(table, 1)).toMatchObject({ Cost: 4, Status: "proved", Problem: "1 not planned as asked, named below" });
    expect(record(table, 3)).toMatchObject({ Pattern: "not planned", Stock: "bad", Problem: expect.stringMatching(says) as string });
  });

  test("counted stock without a price is used first and costs nothing", () => {
    expect(record(cutplan([[5, 3]], [[5, 2, 0, "new"], [10, 0, 1, "offcut"]]), 1)).toMatchObject({ Cost: 2, Status: "proved" });
  });

  test("without prices the plan is by length, and says so", () => {
    expect(record(cutplan([[5, 2]], [[11, 0], [20, 0]]), 1)).toMatchObject({ Cost: "", "Lower bound": "", Status: "proved", Problem: "no stock has a price: the plan uses the least length of stock" });
  });

  test("blank rows of a range are passed over", () => expect(cutplan([[5, 2, 0], [0, 0, 0]], [[10, 4, 0], [0, 0, 0]])).toHaveLength(3));

  test.each([
    ["no pieces", [[[0, 0]], [[10, 4]], null, null, null], "pieces: no row holds a length."],
    ["no stock", [[[5, 1]], [[0]], null, null, null], "stock: no row holds a length."],
    ["headings without a length", [[["Piece", "Count"], ["A", 1]], [[10, 4]], null, null, null], "pieces: no column Length among Piece, Count."],
    ["a kerf that is none", [[[5, 1]], [[10, 4]], -1, null, null], 'kerf: read "-1"; accepted: a number above 0.'],
    ["a kerf that no saw has", [[[1]], [[10, 5]], 400, null, "in"], "kerf: read 400 in; accepted: up to 10 m."],
    ["a trim that no bench has", [[[1]], [[10, 5]], null, 10001, "mm"], "trim: read 10001 mm; accepted: up to 10 m."],
  ] as const)("%s answers #VALUE!", (_, args, message) => expect(failure("CUTPLAN", ...args)).toEqual({ kind: "value", message }));
});
