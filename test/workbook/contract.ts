/** What every workbook adapter does alike. Each adapter's test opens its own workbook and calls this once. */
import type { CellValue, TableContent, WorkbookPort } from "../../src/workbook/port";

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
  /** Takes back the last step, as the user would. */
  undo(): Promise<void> | void;
}

export const workbookContract = (name: string, open: (tables: readonly TableContent[]) => Promise<WorkbookUnderTest>): void => {
  describe(`${name} keeps the workbook contract`, () => {
    test("it names its tables and reads them whole, blanks and texts included", async () => {
      const { port } = await open([cars, parts]);
      expect([...(await port.tableNames())].sort()).toEqual(["Cars", "Parts"]);
      expect(await port.readTable("Cars")).toEqual(cars);
      expect(await port.readTable("Parts")).toEqual(parts);
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

const cars: TableContent = { name: "Cars", sheet: "Cars", headings: ["Car", "Valves", "Tube (in)"], rows: [["007", "BLOCK", 0.1875], ["Car two", "", "3/16"]] };
const parts: TableContent = { name: "Parts", sheet: "Parts", headings: ["Component", "Arrow"], rows: [["BLOCK", true], ["PV-1", false]] };

/** Everything a spreadsheet likes to turn into something else. */
const awkwardRows: readonly (readonly CellValue[])[] = [
  ["3/16", "007", "=1+1", 4.25],
  ["", "1E5", "'quoted", true],
  ["TRUE", "-12", "@name", 0],
  ["10:30", "+5", "l".repeat(300), "2"],
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
