/** What every workbook adapter does alike. Each adapter's test opens its own workbook and calls this once. */
import type { CellArea, CellStyle, CellValue, NewSheet, NewTable, PageSetup, SheetContent, SheetPicture, TableContent, WorkbookPort } from "../../src/workbook/port";

export interface WorkbookUnderTest {
  readonly port: WorkbookPort;
  /** Types into one cell of a table, as the user would; row 0 is the first row under the headings. */
  edit(table: string, row: number, column: string, value: CellValue): Promise<void> | void;
  /** Takes a table away, as the user would. */
  deleteTable(table: string): Promise<void> | void;
  /** The table row that is selected and in sight. */
  selection(): { readonly table: string; readonly row: number; readonly column?: string } | undefined;
  sheetNames(): readonly string[];
  /** What a sheet shows from A1 on, blanks as "". */
  sheet(name: string): readonly (readonly CellValue[])[];
  /** How a written sheet looks and prints. */
  shownLooks(name: string): WrittenLooks;
  /** The values of the list that a cell of a table offers, as the user opens it; row 0 is the first row under the headings. */
  choices(table: string, row: number, column: string): readonly string[] | undefined;
  /** Puts the user into a cell of a table, or into a cell of a sheet by its address. */
  stand(place: { readonly table: string; readonly row: number; readonly column: string } | { readonly sheet: string; readonly address: string }): Promise<void> | void;
  /** The formula that was entered into a cell. */
  formula(sheet: string, address: string): string | undefined;
  /** The sheet that is in front. */
  front(): string | undefined;
  /** Takes back the last step, as the user would. */
  undo(): Promise<void> | void;
}

export interface WrittenLooks {
  /** By address; cells that look as in a new sheet are left out, and so is text format. */
  readonly styles: Readonly<Record<string, CellStyle>>;
  readonly columnWidths: readonly (number | undefined)[];
  /** In points. */
  readonly rowHeights: readonly (number | undefined)[];
  readonly merges: readonly CellArea[];
  readonly pictures: readonly SheetPicture[];
  readonly page: PageSetup | undefined;
  /** Rows from the top that stay in sight. */
  readonly frozenRows: number;
}

export const workbookContract = (name: string, open: (tables: readonly TableContent[]) => Promise<WorkbookUnderTest>): void => {
  describe(`${name} keeps the workbook contract`, () => {
    test("it names its tables and reads them whole, blanks and texts included", async () => {
      const { port } = await open([cars, parts]);
      expect([...(await port.tableNames())].sort()).toEqual(["Cars", "Parts"]);
      expect(await port.readTable("Cars")).toEqual(cars);
      expect(await port.readTable("Parts")).toEqual(parts);
    });

    test("it names its sheets, and one that was written too", async () => {
      const { port } = await open([cars, parts]);
      await port.writeSheet("Quote", [["Price"]]);
      expect([...(await port.sheetNames())].sort()).toEqual(["Cars", "Parts", "Quote"]);
    });

    test("a table is found whatever the case of its name, and an unknown one reads as undefined", async () => {
      const { port } = await open([cars]);
      expect((await port.readTable("cARS"))?.name).toBe("Cars");
      expect(await port.readTable("Nowhere")).toBeUndefined();
    });

    test("a workbook without tables names none", async () => {
      expect(await (await open([])).port.tableNames()).toEqual([]);
    });

    test("it selects the row it is asked for", async () => {
      const book = await open([cars, parts]);
      await book.port.selectTableRow("Cars", 1);
      expect(book.selection()).toEqual({ table: "Cars", row: 1 });
      await book.port.selectTableRow("Parts", 0);
      expect(book.selection()).toEqual({ table: "Parts", row: 0 });
    });

    test.each([["Nowhere", 0], ["Cars", 2], ["Cars", -1]])("selecting %s row %d fails and says what is missing", async (table, row) => {
      const { port } = await open([cars]);
      await expect(port.selectTableRow(table, row)).rejects.toThrow(table);
    });

    test("it selects the one cell under a heading, and the row where there is no such heading", async () => {
      const book = await open([cars]);
      await book.port.selectTableRow("Cars", 1, "valves");
      expect(book.selection()).toEqual({ table: "Cars", row: 1, column: "Valves" });
      await book.port.selectTableRow("Cars", 0, "Roof");
      expect(book.selection()).toEqual({ table: "Cars", row: 0 });
    });

    test("a cell is written as it is, what it held is answered, and the edit is told", async () => {
      const book = await open([cars, parts]);
      const told = await listen(book);
      expect(await book.port.writeTableCell({ table: "cars", row: 0, column: "VALVES" }, "3/16")).toBe("BLOCK");
      await quiet();
      expect(told).toEqual([["Cars"]]);
      expect((await book.port.readTable("Cars"))?.rows[0]).toEqual(["007", "3/16", 0.1875]);
      expect(await book.port.writeTableCell({ table: "Cars", row: 1, column: "Valves" }, "=1+1")).toBe("");
      expect((await book.port.readTable("Cars"))?.rows[1]).toEqual(["Car two", "=1+1", "3/16"]);
    });

    test("a written cell is taken back in one step", async () => {
      const book = await open([cars]);
      await book.port.writeTableCell({ table: "Cars", row: 0, column: "Valves" }, "none");
      await book.undo();
      expect(await book.port.readTable("Cars")).toEqual(cars);
    });

    test.each([["Nowhere", 0, "Valves"], ["Cars", 2, "Valves"], ["Cars", 0, "Roof"]])("writing to %s row %d, %s fails, says what is missing and changes nothing", async (table, row, column) => {
      const { port } = await open([cars]);
      await expect(port.writeTableCell({ table, row, column }, "x")).rejects.toThrow(column === "Roof" ? column : table);
      expect(await port.readTable("Cars")).toEqual(cars);
    });

    test("what is written reads back, text as text and numbers as numbers", async () => {
      const book = await open([cars]);
      const name = await book.port.writeSheet("Quote", awkwardRows);
      expect(name).toBe("Quote");
      expect(book.sheet("Quote")).toEqual(awkwardRows);
    });

    test("short rows are filled up with blanks", async () => {
      const book = await open([cars]);
      await book.port.writeSheet("Quote", [["Line", "Price"], ["Total"]]);
      expect(book.sheet("Quote")).toEqual([["Line", "Price"], ["Total", ""]]);
    });

    test("a sheet that is there is never written over", async () => {
      const book = await open([cars]);
      await book.port.writeSheet("Quote", [["first"]]);
      expect(await book.port.writeSheet("quote", [["second"]])).toBe("quote 2");
      expect(await book.port.writeSheet("Cars", [["third"]])).toBe("Cars 2");
      expect(book.sheet("Quote")).toEqual([["first"]]);
      expect(await book.port.readTable("Cars")).toEqual(cars);
    });

    test("a name that no sheet may have becomes one that it may", async () => {
      const book = await open([cars]);
      const name = await book.port.writeSheet("Quote 7/12: front [rear] of a car with a long name", [["x"]]);
      expect(name).toBe("Quote 7 12 front rear of a car");
      expect(book.sheetNames()).toContain(name);
    });

    test("an apostrophe in a name does no harm", async () => {
      const book = await open([cars]);
      expect(await book.port.writeSheet("'Quote O'Dell'", [["x"]])).toBe("Quote O’Dell");
      expect(book.sheet("Quote O’Dell")).toEqual([["x"]]);
    });

    test("a number that is not finite is refused and nothing is written", async () => {
      const book = await open([cars]);
      const before = book.sheetNames();
      await expect(book.port.writeSheet("Quote", [["Price"], [Number.NaN]])).rejects.toThrow(RangeError);
      expect(book.sheetNames()).toEqual(before);
    });

    test("a written sheet is taken back in one step", async () => {
      const book = await open([cars]);
      const before = book.sheetNames();
      await book.port.writeSheet("Quote", [["Line", 1], ["3/16", 2]]);
      await book.undo();
      expect(book.sheetNames()).toEqual(before);
    });

    test("a sheet is written with its looks, widths, merged cells, pictures and page set-up, and taken back in one step", async () => {
      const book = await open([cars]);
      const before = book.sheetNames();
      await book.port.writeSheet("Quote", dressed);
      expect(book.sheet("Quote")).toEqual([["Quote", "", ""], ["3/16 tube", 12.5, "ft"], ["Total", 2.25, ""]]);
      const { styles, columnWidths, rowHeights, merges, pictures, page, frozenRows } = book.shownLooks("Quote");
      expect(frozenRows).toBe(1);
      expect(styles).toEqual({
        A1: { bold: true, size: 16, fill: "#1f3b4d", colour: "#ffffff", align: "center" }, B1: { bold: true, size: 16, fill: "#1f3b4d", colour: "#ffffff", align: "center" },
        C1: { bold: true, size: 16, fill: "#1f3b4d", colour: "#ffffff", align: "center" },
        A2: { wrap: true }, B2: { format: "0.00" }, A3: { bold: true, top: true, bottom: true }, B3: { italic: true, top: true, bottom: true, format: "0.0" }, C3: { bold: true, top: true, bottom: true },
      });
      expect(columnWidths.map((width) => width === undefined ? undefined : Math.round(width))).toEqual([30, undefined, 8]);
      expect(rowHeights).toEqual(dressed.rowHeights);
      expect({ merges, pictures, page }).toEqual({ merges: dressed.merges, pictures: dressed.pictures, page: dressed.page });
      await book.undo();
      expect(book.sheetNames()).toEqual(before);
    });

    test("tables are made on sheets of their own, told, and taken back in one step", async () => {
      const book = await open([cars]);
      const told = await listen(book);
      const before = book.sheetNames();
      await book.port.writeTables(newTables);
      await quiet();
      expect(told.map((tables) => [...tables].sort())).toEqual([["Nuts", "Tube"]]);
      expect(await book.port.readTable("Tube")).toEqual({ name: "Tube", sheet: "Tube", headings: ["Tube", "Material", "Price"], rows: [["3/16", "mild steel", 1.5], ["007", "", ""]], firstRow: 2 });
      expect(await book.port.readTable("Nuts")).toEqual({ name: "Nuts", sheet: "Nuts", headings: ["Nut", "Thread"], rows: [["", ""]], firstRow: 2 });
      await book.undo();
      expect(book.sheetNames()).toEqual(before);
      expect(await book.port.tableNames()).toEqual(["Cars"]);
    });

    test("a row is added at the end of a table, told, and taken back in one step", async () => {
      const book = await open([cars, parts]);
      const told = await listen(book);
      const before = await book.port.readTable("Cars");
      const [heading = "", other = ""] = (before?.headings ?? []).map(String);
      expect(await book.port.appendTableRow("cars", { [other.toUpperCase()]: "007", [heading]: "=1+1" })).toBe(before?.rows.length);
      await quiet();
      expect(told).toEqual([["Cars"]]);
      const after = await book.port.readTable("Cars");
      expect(after?.rows.slice(0, -1)).toEqual(before?.rows);
      expect(after?.rows.at(-1)).toEqual(["=1+1", "007", ...(before?.headings ?? []).slice(2).map(() => "")]);
      await book.undo();
      expect(await book.port.readTable("Cars")).toEqual(before);
    });

    test("no row is added to a table that is not there, or under a heading that is not", async () => {
      const book = await open([cars]);
      const before = await book.port.readTable("Cars");
      await expect(book.port.appendTableRow("Boats", {})).rejects.toThrow("There is no table Boats.");
      await expect(book.port.appendTableRow("Cars", { Roof: "red" })).rejects.toThrow("The table Cars has no column Roof.");
      expect(await book.port.readTable("Cars")).toEqual(before);
    });

    test("a column offers its list, under the last row too, and a chosen word stays what it is", async () => {
      const book = await open([cars]);
      await book.port.writeTables(newTables);
      expect(book.choices("Tube", 0, "Material")).toEqual(["mild steel", "stainless"]);
      expect(book.choices("Tube", 20, "Material")).toEqual(["mild steel", "stainless"]);
      expect(book.choices("Tube", 0, "Price")).toBeUndefined();
      await book.edit("Nuts", 0, "Thread", "3/8-24");
      expect((await book.port.readTable("Nuts"))?.rows).toEqual([["", "3/8-24"]]);
    });

    test.each([
      ["a table that is there", [{ name: "Nuts", headings: ["Nut"], rows: [] }, { name: "cars", headings: ["Car"], rows: [] }], "There is a table cars already"],
      ["the same name twice", [{ name: "Nuts", headings: ["Nut"], rows: [] }, { name: "NUTS", headings: ["Nut"], rows: [] }], "There is a table NUTS already"],
      ["a name like a cell's", [{ name: "AB1", headings: ["Nut"], rows: [] }], "No table can be named"],
      ["a heading twice", [{ name: "Nuts", headings: ["Nut", "nut"], rows: [] }], "headings"],
      ["a list for no column", [{ name: "Nuts", headings: ["Nut"], rows: [], lists: [{ column: "Roof", values: ["a"] }] }], "Roof"],
      ["a list that cannot be", [{ name: "Nuts", headings: ["Nut"], rows: [], lists: [{ column: "Nut", values: ["a,b"] }] }], "commas"],
      ["no number", [{ name: "Nuts", headings: ["Nut"], rows: [[Number.NaN]] }], "NaN"],
    ])("with %s nothing is written, and a sentence says why", async (_, tables, why) => {
      const book = await open([cars]);
      const before = book.sheetNames();
      await expect(book.port.writeTables(tables)).rejects.toThrow(why);
      expect(book.sheetNames()).toEqual(before);
    });

    test("a sheet that has the name of a new table stays as it is", async () => {
      const book = await open([cars]);
      await book.port.writeSheet("Tube", [["notes"]]);
      await book.port.writeTables(newTables);
      expect((await book.port.readTable("Tube"))?.sheet).toBe("Tube 2");
      expect(book.sheet("Tube")).toEqual([["notes"]]);
    });

    test("only a cell marked as a formula is one, beside text that looks like one, and it is taken back with its sheet", async () => {
      const book = await open([cars]);
      const before = book.sheetNames();
      await book.port.writeSheet("Sum", { rows: [["=1+1", ""], ["@SUM(1)"]], formulas: [{ row: 0, column: 1, formula: "=SUM(Cars[Tube (in)])" }] });
      expect([book.formula("Sum", "A1"), book.formula("Sum", "B1"), book.formula("Sum", "A2")]).toEqual([undefined, "=SUM(Cars[Tube (in)])", undefined]);
      expect(book.sheet("Sum").map(([text]) => text)).toEqual(["=1+1", "@SUM(1)"]);
      expect([await book.port.formulaAt("sum", "B1"), await book.port.formulaAt("Sum", "A1"), await book.port.formulaAt("Nowhere", "B1")]).toEqual(["=SUM(Cars[Tube (in)])", undefined, undefined]);
      await book.undo();
      expect(book.sheetNames()).toEqual(before);
    });

    test("sheets come beside the tables that their formulas name, in their order, the first in front, and all are one step", async () => {
      const book = await open([cars]);
      const before = book.sheetNames();
      await book.port.writeTables(newParts);
      expect(book.sheetNames()).toEqual([...before, "Answers", "Tube", "Nuts"]);
      expect([book.front(), book.formula("Answers", "A3")]).toEqual(["Answers", "=SUM(Tube[Price],Cars[Tube (in)])"]);
      expect([book.shownLooks("Answers").frozenRows, book.shownLooks("Tube").frozenRows]).toEqual([2, 1]);
      await book.undo();
      expect(book.sheetNames()).toEqual(before);
      expect(await book.port.tableNames()).toEqual(["Cars"]);
    });

    test("a formula that is there is changed with the tables it is to name, and is left alone when it is no longer what it was", async () => {
      const book = await open([cars]);
      await book.port.writeSheet("Key", { rows: [], formulas: [{ row: 1, column: 1, formula: "=COUNTA(Cars[#All])" }] });
      await book.port.writeTables(newTables.slice(0, 1), [{ sheet: "Key", address: "B2", from: "=COUNTA(Cars[#All])", to: "=COUNTA(Cars[#All],Tube[#All])" }]);
      expect(book.formula("Key", "B2")).toBe("=COUNTA(Cars[#All],Tube[#All])");
      await book.port.writeTables(newTables.slice(1), [{ sheet: "Key", address: "B2", from: "=COUNTA(Cars[#All])", to: "=1" }, { sheet: "Gone", address: "B2", from: "=1", to: "=2" }]);
      expect(book.formula("Key", "B2")).toBe("=COUNTA(Cars[#All],Tube[#All])");
      await book.undo();
      await book.undo();
      expect([book.formula("Key", "B2"), await book.port.tableNames()]).toEqual(["=COUNTA(Cars[#All])", ["Cars"]]);
    });

    test("a column of days shows days, and the rest of the table as it is", async () => {
      const book = await open([cars]);
      await book.port.writeTables([{ name: "Usage", headings: ["Tube", "Date"], rows: [["3/16", 46_346]], days: ["Date"] }]);
      expect(book.shownLooks("Usage").styles["B2"]).toEqual({ format: "yyyy-mm-dd" });
      expect(book.shownLooks("Usage").styles["A2"]).toBeUndefined();
    });

    test("it says where the user stands, and when that changes", async () => {
      const book = await open([cars, parts]);
      const told: unknown[] = [];
      const stop = book.port.onSelect((place) => told.push(place));
      await listen(book);
      await book.stand({ table: "Cars", row: 1, column: "Valves" });
      await quiet();
      expect(await book.port.selection()).toEqual({ table: "Cars", row: 1, column: "Valves" });
      await book.stand({ sheet: "Cars", address: "H20" });
      await quiet();
      expect(await book.port.selection()).toBeUndefined();
      expect(told).toEqual([{ table: "Cars", row: 1, column: "Valves" }, undefined]);
      stop();
      await book.stand({ table: "Parts", row: 0, column: "Arrow" });
      await quiet();
      expect(told).toHaveLength(2);
    });

    test("a formula goes into the blank cell that is selected, and is taken back in one step", async () => {
      const book = await open([cars]);
      await book.stand({ sheet: "Cars", address: "H20" });
      expect(await book.port.insertFormula("=SUM(1,2)")).toBe("Cars!H20");
      expect(book.formula("Cars", "H20")).toBe("=SUM(1,2)");
      await expect(book.port.insertFormula("=SUM(3)")).rejects.toThrow("The selected cell H20 is not blank");
      await book.undo();
      expect(book.formula("Cars", "H20")).toBeUndefined();
    });

    test("a formula does not go over a value or into a table", async () => {
      const book = await open([cars]);
      await book.port.writeSheet("Quote", [["Line"]]);
      await book.stand({ sheet: "Quote", address: "A1" });
      await expect(book.port.insertFormula("=SUM(1)")).rejects.toThrow("The selected cell A1 is not blank");
      await book.stand({ table: "Cars", row: 1, column: "Valves" }); // which is blank
      await expect(book.port.insertFormula("=SUM(1)")).rejects.toThrow("is in a table");
      expect(await book.port.readTable("Cars")).toEqual(cars);
      expect(book.sheet("Quote")).toEqual([["Line"]]);
    });

    test("it tells the name of the workbook", async () => {
      expect(await (await open([cars])).port.workbookName()).toBe("Shop.xlsx");
    });

    test("an edit by the user is told with its table and read at once; quick edits arrive as one", async () => {
      const book = await open([cars, parts]);
      const told = await listen(book);
      await book.edit("Cars", 1, "Valves", "BLOCK; PV-1");
      await book.edit("Cars", 0, "Valves", "none");
      await quiet();
      expect(told).toEqual([["Cars"]]);
      expect((await book.port.readTable("Cars"))?.rows.map((row) => row[1])).toEqual(["none", "BLOCK; PV-1"]);
    });

    test("a table that is taken away is told and read as undefined", async () => {
      const book = await open([cars, parts]);
      const told = await listen(book);
      await book.deleteTable("Parts");
      await quiet();
      expect(told).toEqual([["Parts"]]);
      expect(await book.port.readTable("Parts")).toBeUndefined();
    });

    test("a sheet that the port writes is not told", async () => {
      const book = await open([cars]);
      const told = await listen(book);
      await book.port.writeSheet("Quote", [["Line"]]);
      await book.port.selectTableRow("Cars", 0);
      await quiet();
      expect(told).toEqual([]);
    });

    test("who has stopped listening hears nothing, the others do", async () => {
      const book = await open([cars]);
      const heard: string[] = [];
      const stop = book.port.onChange(() => heard.push("stopped"));
      const told = await listen(book);
      stop();
      await book.edit("Cars", 0, "Valves", "none");
      await quiet();
      expect([heard, told]).toEqual([[], [["Cars"]]]);
    });
  });
};

const cars: TableContent = { name: "Cars", sheet: "Cars", headings: ["Car", "Valves", "Tube (in)"], rows: [["007", "BLOCK", 0.1875], ["Car two", "", "3/16"]], firstRow: 2 };
const parts: TableContent = { name: "Parts", sheet: "Parts", headings: ["Component", "Arrow"], rows: [["BLOCK", true], ["PV-1", false]], firstRow: 2 };

/** Everything a spreadsheet likes to turn into something else. */
const awkwardRows: readonly (readonly CellValue[])[] = [
  ["3/16", "007", "=1+1", 4.25],
  ["", "1E5", "'quoted", true],
  ["TRUE", "-12", "@name", 0],
  ["10:30", "+5", "l".repeat(300), "2"],
];

/** One pixel, transparent; made with Python's zlib after the PNG specification. */
const DOT = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNgYGBgAAAABQABXvMqOgAAAABJRU5ErkJggg==";

const dressed: SheetContent = {
  rows: [["Quote"], ["3/16 tube", 12.5, "ft"], ["Total", 2.25]],
  columnWidths: [30, undefined, 8],
  rowHeights: [24, undefined, 36],
  frozenRows: 1,
  styles: [
    { row: 0, column: 0, rows: 1, columns: 3, style: { bold: true, size: 16, fill: "#1f3b4d", colour: "#ffffff", align: "center" } },
    { row: 1, column: 0, rows: 1, columns: 1, style: { wrap: true } },
    { row: 1, column: 1, rows: 2, columns: 1, style: { format: "0.00" } },
    { row: 2, column: 0, rows: 1, columns: 3, style: { bold: true, top: true, bottom: true } },
    { row: 2, column: 1, rows: 1, columns: 1, style: { bold: false, italic: true, format: "0.0" } },
  ],
  merges: [{ row: 0, column: 0, rows: 1, columns: 3 }],
  pictures: [{ png: DOT, alt: "The lines of the car & its \"valve\"", row: 5, column: 1, width: 320, height: 200 }],
  page: { landscape: true, fitWide: true, titleRows: 1, footer: "Shop & Sons", breaks: [1, 4] },
};

const newTables = [
  { name: "Tube", headings: ["Tube", "Material", "Price"], rows: [["3/16", "mild steel", 1.5], ["007"]], lists: [{ column: "material", values: ["mild steel", "stainless"] }] },
  { name: "Nuts", headings: ["Nut", "Thread"], rows: [], lists: [{ column: "Thread", values: ["3/8-24", "1/2-20"] }] },
];

const newParts: readonly (NewTable | NewSheet)[] = [
  { name: "Answers", content: { rows: [["=a title"]], frozenRows: 2, formulas: [{ row: 2, column: 0, formula: "=SUM(Tube[Price],Cars[Tube (in)])" }] } },
  ...newTables,
];

/** The tables of each change that is told. Reads once, since a port may begin to listen with its first reading. */
async function listen({ port }: WorkbookUnderTest): Promise<string[][]> {
  const told: string[][] = [];
  port.onChange(({ tables }) => told.push([...tables]));
  await port.tableNames();
  return told;
}

/** Longer than an adapter gathers changes. */
const quiet = (): Promise<void> => new Promise((resolve) => { setTimeout(resolve, 120); });

/** What is left of looks when "not bold" and text format are taken as the plain look. */
export function plainly(looks: Iterable<readonly [string, CellStyle]>): Readonly<Record<string, CellStyle>> {
  const entries = [...looks].map(([address, look]) => [address, Object.fromEntries(Object.entries(look).filter(([name, value]) => value !== false && !(name === "format" && (value === "@" || value === "General"))))] as const);
  return Object.fromEntries(entries.filter(([, look]) => Object.keys(look).length > 0));
}
