import { type FormulaPlace, type ReferenceTable, toRanges, toStructured } from "../../src/workbook/structured-references";

const cars: ReferenceTable = {
  name: "Cars", sheet: "Cars", firstRow: 0, firstColumn: 0, rows: 24, columns: 4, headings: ["Car", "Year", "Length (in)", "Wheel #[x]'s"],
};
const cutPlan: ReferenceTable = { name: "CutPlan", sheet: "Cut plan", firstRow: 4, firstColumn: 1, rows: 2, columns: 1, headings: ["Piece"] };
const empty: ReferenceTable = { name: "Empty", sheet: "Empty", firstRow: 0, firstColumn: 0, rows: 0, columns: 2, headings: ["A", "B"] };
/** A name that begins like a cell. */
const tab: ReferenceTable = { name: "Tab2x", sheet: "Tab", firstRow: 0, firstColumn: 0, rows: 1, columns: 1, headings: ["A"] };
const tables = [cars, cutPlan, empty, tab];
const elsewhere: FormulaPlace = { sheet: "Runs", row: 6, column: 1 };

const ranges = (formula: string, place = elsewhere): string => {
  const translated = toRanges(formula, tables, place);
  return translated.problem ? `${translated.problem.error} ${translated.problem.message}` : translated.formula;
};

describe("a structured reference becomes the range it means", () => {
  test.each([
    ["=Cars", "=Cars!$A$2:$D$25"],
    ["=Cars[]", "=Cars!$A$2:$D$25"],
    ["=Cars[#All]", "=Cars!$A$1:$D$25"],
    ["=Cars[#Headers]", "=Cars!$A$1:$D$1"],
    ["=Cars[#Data]", "=Cars!$A$2:$D$25"],
    ["=Cars[[#Data]]", "=Cars!$A$2:$D$25"],
    ["=Cars[[#Headers],[#Data]]", "=Cars!$A$1:$D$25"],
    ["=Cars[Year]", "=Cars!$B$2:$B$25"],
    ["=Cars[[Year]]", "=Cars!$B$2:$B$25"],
    ["=Cars[Length (in)]", "=Cars!$C$2:$C$25"],
    ["=Cars[[Car]:[Length (in)]]", "=Cars!$A$2:$C$25"],
    ["=Cars[[Length (in)]:[Car]]", "=Cars!$A$2:$C$25"],
    ["=Cars[[#Headers],[Car]:[Year]]", "=Cars!$A$1:$B$1"],
    ["=Cars[ [#All] , [Year] ]", "=Cars!$B$1:$B$25"],
    ["=Cars[Wheel '#'[x']''s]", "=Cars!$D$2:$D$25"],
    ["=Cars[@]", "=Cars!$A7:$D7"],
    ["=Cars[#This Row]", "=Cars!$A7:$D7"],
    ["=Cars[@Year]", "=Cars!$B7"],
    ["=Cars[@[Length (in)]]", "=Cars!$C7"],
    ["=Cars[@[Car]:[Year]]", "=Cars!$A7:$B7"],
    ["=Cars[[#This Row],[Year]]", "=Cars!$B7"],
    ["=cArS[#hEADERS]&CARS[yEAR]", "=Cars!$A$1:$D$1&Cars!$B$2:$B$25"],
    ["=CutPlan", "='Cut plan'!$B$6:$B$7"],
    ["=PLUMB.RUNS(Cars[#Headers], Cars, Catalog!B2)", "=PLUMB.RUNS(Cars!$A$1:$D$1, Cars!$A$2:$D$25, Catalog!B2)"],
    ["=Tab2x+AB12.C", "=Tab!$A$2+AB12.C"],
    ["=Empty[#Headers]", "=Empty!$A$1:$B$1"],
  ])("%s", (formula, expected) => {
    expect(ranges(formula)).toBe(expected);
  });
});

describe("what only looks like one stays as it is", () => {
  test.each([
    ['="Cars[Year]"&Car_s'],
    ['="He said ""Cars"""'],
    ["=Cars!A1+Cars!$B$2:$C$3"],
    ["='Cars'!A1+'Cut plan'!Cars"],
    ["=MyCars+Cars2+Cars.Old+_Cars"],
    ["=Cars(1)"],
    ["=CARS1"],
    ["=#REF!+1E5+A1#"],
    ["=[1]Cars!A1"],
    ["Cars[Year]"],
  ])("%s", (formula) => {
    expect(ranges(formula)).toBe(formula);
  });
});

test("on the table's own sheet the range needs no sheet", () => {
  expect(ranges("=SUM(Cars[Year])", { sheet: "cars", row: 40, column: 0 })).toBe("=SUM($B$2:$B$25)");
});

test("inside a table its name may be left out", () => {
  const inside: FormulaPlace = { sheet: "Cars", row: 3, column: 2 };
  expect(ranges("=[@Year]*2", inside)).toBe("=$B4*2");
  expect(ranges("=SUM([Year])", inside)).toBe("=SUM($B$2:$B$25)");
  expect(ranges("=[@Year]")).toBe("#NAME? A reference without a table's name works only inside a table.");
});

describe("a reference that means nothing names what is missing", () => {
  test.each([
    ["=SUM(Carz[Year])", "#NAME? No table is named Carz."],
    ["=Cars[Colour]", "#REF! Table Cars has no column Colour."],
    ["=Cars[[Car]:[Colour]]", "#REF! Table Cars has no column Colour."],
    ["=Cars[#Totals]", "#REF! Table Cars has no totals row."],
    ["=Empty", "#REF! Table Empty has no rows."],
    ["=Cars[#Header]", "#NAME? Cars[#Header] cannot be read as a part of table Cars."],
    ["=Cars[[Car],[Year]]", "#NAME? Cars[[Car],[Year]] cannot be read as a part of table Cars."],
  ])("%s", (formula, expected) => {
    expect(ranges(formula)).toBe(expected);
  });

  test("a row outside the table", () => {
    expect(ranges("=Cars[@]", { sheet: "Runs", row: 0, column: 0 })).toMatch(/^#VALUE! Row 1 is not a row of table Cars/);
    expect(ranges("=Cars[@]", { sheet: "Runs", row: 24, column: 0 })).toBe("=Cars!$A25:$D25");
    expect(ranges("=Cars[@]", { sheet: "Runs", row: 25, column: 0 })).toMatch(/^#VALUE! Row 26/);
  });
});

describe("a range that is exactly a part of a table reads as that part again", () => {
  test.each([
    ["=Cars!$A$2:$D$25", "=Cars"],
    ["=SUM('Cars'!$B$2:$B$25)", "=SUM(Cars[Year])"],
    ["=Cars!$A$1:$D$25", "=Cars[#All]"],
    ["=Cars!$A$1:$D$1", "=Cars[#Headers]"],
    ["=Cars!$A$1:$B$1", "=Cars[[#Headers],[Car]:[Year]]"],
    ["=Cars!$D$2:$D$25", "=Cars[Wheel '#'[x']''s]"],
    ["=Cars!$A7:$D7", "=Cars[@]"],
    ["=Cars!$B7", "=Cars[@Year]"],
    ["=Cars!$C7", "=Cars[@[Length (in)]]"],
    ["='Cut plan'!$B$6:$B$7", "=CutPlan"],
  ])("%s", (formula, expected) => {
    expect(toStructured(formula, tables, elsewhere)).toBe(expected);
  });

  test.each([["=Cars!A2:D25"], ["=Cars!$A$2:$D$24"], ["=Cars!$A$3:$D$25"], ["=Cars!$A$2:$E$25"], ["=Cars!$B8"], ["=$A$2:$D$25"], ['="Cars!$A$2:$D$25"']])(
    "%s stays",
    (formula) => {
      expect(toStructured(formula, tables, elsewhere)).toBe(formula);
    },
  );

  test("a blank or repeated heading names no column", () => {
    const odd: ReferenceTable = { ...cars, name: "Odd", sheet: "Odd", headings: ["A", "", "A", "B"] };
    expect(toStructured("=Odd!$A$2:$A$25+Odd!$B$2:$B$25+Odd!$D$2:$D$25", [odd], elsewhere)).toBe("=Odd!$A$2:$A$25+Odd!$B$2:$B$25+Odd[B]");
  });
});
