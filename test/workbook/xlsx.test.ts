import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { openDocument, plainSheet, sampleDocument, tableSheet } from "../embedded/sample";
import { type CellStyle, type DocumentSheet, type SheetCell, type WorkbookDocument } from "../../src/workbook/document";
import { readXlsx, WorkbookFileError } from "../../src/workbook/xlsx/read";
import { writeXlsx } from "../../src/workbook/xlsx/write";

const partsOf = (document: WorkbookDocument): Readonly<Record<string, string>> =>
  Object.fromEntries(Object.entries(unzipSync(writeXlsx(document))).map(([path, bytes]) => [path, strFromU8(bytes)]));

const oneSheet = (cells: Readonly<Record<string, SheetCell>>): WorkbookDocument => ({
  sheets: [tableSheet({ name: "Cars", rows: [["Car", "Year"], ["A", 11]] }), { name: "Work", tables: [], cells: new Map(Object.entries(cells)) }],
});

const heading: CellStyle = { bold: true, size: 16, fill: "#1f3b4d", colour: "#ffffff", align: "center" };

/** A sheet with everything that a sheet can have beside values. */
const dressedSheet: DocumentSheet = {
  name: "Quote & 'Co'",
  tables: [],
  cells: new Map<string, SheetCell>([
    // All cells of a merged area look alike: the grid makes them so.
    ["A1", { value: "Quote", ...heading }], ["B1", { value: "", ...heading }], ["C1", { value: "", ...heading }],
    ["A2", { value: "a long text", italic: true, wrap: true }],
    ["B2", { value: 12.5, format: "0.00", align: "right" }],
    ["A3", { value: "", top: true, bottom: true }],
  ]),
  merges: [{ row: 0, column: 0, rows: 1, columns: 3 }],
  pictures: [
    { png: "iVBORw0KGgo=", alt: 'A "drawing" & more', row: 4, column: 1, width: 320, height: 200 },
    { png: "iVBORw0KGgoA", alt: "", row: 9, column: 0, width: 10, height: 10 },
  ],
  page: { landscape: true, fitWide: true, titleRows: 2, footer: "Shop & Sons", breaks: [3, 12] },
  rowHeights: [24, undefined, 36, undefined, undefined, 18],
  lists: [{ area: { row: 9, column: 2, rows: 5, columns: 1 }, values: ["a", 'say "b"'] }],
};

const cellXml = (cell: SheetCell, address = "A3"): string =>
  /<c .*<\/c>|<c .*\/>/.exec(partsOf(oneSheet({ [address]: cell }))["xl/worksheets/sheet2.xml"] ?? "")?.[0] ?? "";

describe("a written file", () => {
  test("stores our formulas as those of an add-in, and tables as files name them", () => {
    const stored = (formula: string) => /<f[^>]*>(.*)<\/f>/.exec(cellXml({ value: 1, formula }))?.[1];
    expect(stored("=PLUMB.RUNS(Cars[#Headers],Cars,Catalog!B2)")).toBe("_xldudf_PLUMB_RUNS(Cars[#Headers],Cars[],Catalog!B2)");
    expect(stored("=plumb.thread(Cars[@Year])")).toBe("_xldudf_PLUMB_THREAD(Cars[[#This Row],[Year]])");
    expect(stored("=SUM(Cars[@])")).toBe("SUM(Cars[#This Row])");
    expect(stored("=ROWS(A1#)+XLOOKUP(1,A:A,B:B)")).toBe("ROWS(_xlfn.ANCHORARRAY(A1))+_xlfn.XLOOKUP(1,A:A,B:B)");
    expect(stored("=FILTER(Cars,Cars[Year]>1)")).toBe("_xlfn._xlws.FILTER(Cars[],Cars[Year]&gt;1)");
    expect(stored('="PLUMB.RUNS(Cars)"')).toBe("&quot;PLUMB.RUNS(Cars)&quot;");
  });

  test("marks a spill as a dynamic array, with the values of all its cells", () => {
    const sheet = partsOf(oneSheet({
      A3: { value: "Car", formula: "=PLUMB.RUNS(Cars[#Headers],Cars)", spill: { rows: 2, columns: 2 } },
      B3: { value: "Length (in)", spilled: true }, A4: { value: "007", spilled: true }, B4: { value: 12.5, spilled: true },
    }))["xl/worksheets/sheet2.xml"];
    expect(sheet).toContain('<c r="A3" cm="1" t="str"><f t="array" ref="A3:B4">_xldudf_PLUMB_RUNS(Cars[#Headers],Cars[])</f><v>Car</v></c>');
    expect(sheet).toContain('<c r="B3" t="str"><v>Length (in)</v></c>');
    expect(sheet).toContain('<c r="A4" t="str"><v>007</v></c><c r="B4"><v>12.5</v></c>');
  });

  test("leaves one-cell results plain, but not an error that may yet spill", () => {
    expect(cellXml({ value: "x", formula: "=PLUMB.FITTING(1)" })).toBe('<c r="A3" t="str"><f>_xldudf_PLUMB_FITTING(1)</f><v>x</v></c>');
    expect(cellXml({ value: true, formula: "=TRUE()" })).toBe('<c r="A3" t="b"><f>TRUE()</f><v>1</v></c>');
    expect(cellXml({ value: { error: "#DIV/0!" }, formula: "=1/0" })).toBe('<c r="A3" t="e"><f>1/0</f><v>#DIV/0!</v></c>');
    expect(cellXml({ value: { error: "#SPILL!" }, formula: "=Cars" })).toBe('<c r="A3" cm="1" t="e"><f t="array" ref="A3">Cars[]</f><v>#VALUE!</v></c>');
    expect(cellXml({ value: { error: "#N/A" }, formula: "=PLUMB.RUNS(1)" })).toContain('cm="1" t="e"><f t="array" ref="A3">');
  });

  test("wires the dynamic array mark and says it comes from Excel, as LibreOffice asks", () => {
    const parts = partsOf(oneSheet({}));
    expect(parts["[Content_Types].xml"]).toContain('<Override PartName="/xl/metadata.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml"/>');
    expect(parts["xl/_rels/workbook.xml.rels"]).toMatch(/relationships\/sheetMetadata" Target="metadata.xml"/);
    expect(parts["xl/metadata.xml"]).toContain('<xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/>');
    expect(parts["docProps/app.xml"]).toContain("<Application>Microsoft Excel</Application>");
  });

  test("has real tables, whose columns are named as their cells", () => {
    const parts = partsOf({ sheets: [tableSheet({ name: "Tube", rows: [["Wall <in>", 3, "", "wall <IN>"], [1, 2, 3, 4]] })] });
    expect(parts["xl/tables/table1.xml"]).toContain('name="Tube" displayName="Tube" ref="A1:D2"');
    expect(parts["xl/tables/table1.xml"]?.match(/<tableColumn [^>]*/g)).toEqual([
      '<tableColumn id="1" name="Wall &lt;in&gt;"/', '<tableColumn id="2" name="3"/', '<tableColumn id="3" name="Column3"/', '<tableColumn id="4" name="wall &lt;IN&gt;2"/',
    ]);
    expect(parts["xl/worksheets/sheet1.xml"]).toMatch(/<c r="A1" t="s"><v>0<\/v><\/c><c r="B1"[^>]* t="s"><v>1<\/v><\/c><c r="C1"[^>]* t="s"><v>3<\/v><\/c>/);
  });

  test("gives a table without rows the one blank row that a file must have", () => {
    expect(partsOf({ sheets: [tableSheet({ name: "Tube", rows: [["Wall", "Price"]] })] })["xl/tables/table1.xml"]).toContain('ref="A1:B2"');
  });

  test("is the same, byte for byte, for the same workbook", () => {
    expect(writeXlsx(oneSheet({ A1: { value: 1 } }))).toEqual(writeXlsx(oneSheet({ A1: { value: 1 } })));
  });
});

describe("what is written reads back", () => {
  test("values of every kind, and texts that look like something else", () => {
    const values = ["3/16", "007", "=1+1", " spaced ", "a\nb", "<&>\"'", "_x0041_", "\u0007bell", "½ in – Ø", 0.1, -1e-7, 0, true, false];
    const cells = Object.fromEntries(values.map((value, row) => [`A${String(row + 1)}`, { value }]));
    const back = readXlsx(writeXlsx(oneSheet(cells))).sheets[1]?.cells;
    expect(values.map((_, row) => back?.get(`A${String(row + 1)}`))).toEqual(values.map((value) => ({ value })));
  });

  test("formulas as typed, number formats, widths, names, hidden sheets and odd sheet names", () => {
    const document: WorkbookDocument = {
      names: [{ name: "Key", formula: "Work!$A$1" }],
      sheets: [
        tableSheet({ name: "Cars", rows: [["Car", "Wall '#' [in]"], ["A", 11]] }),
        {
          name: "Q & A's <1>", tables: [], hidden: true, columnWidths: [undefined, 20.5], frozen: { rows: 2, columns: 1 },
          cells: new Map<string, SheetCell>([
            ["A1", { value: 45000.5, format: "yyyy-mm-dd" }], ["A2", { value: 0.5, format: "0%" }],
            ["B1", { value: { error: "#N/A" }, formula: "=PLUMB.RUNS(Cars[#Headers],Cars,Cars[@[Wall '''#'' '[in']]])" }],
            ["B2", { value: 1, formula: "=SUM(Cars)+ROWS(A1#)+XLOOKUP(1,Cars[Car],Cars[Car])" }],
          ]),
        },
      ],
    };
    const back = readXlsx(writeXlsx(document));
    expect(back.names).toEqual(document.names);
    expect(back.sheets[1]).toEqual(document.sheets[1]);
    expect(back.sheets[0]?.tables).toEqual(document.sheets[0]?.tables);
  });

  test("looks, merged cells, pictures, page set-up and lists, also by way of the grid", () => {
    const document: WorkbookDocument = { sheets: [{ ...dressedSheet, columnWidths: [30] }, { name: "Bare", cells: new Map(), tables: [], columnWidths: [] }] };
    expect(readXlsx(writeXlsx(document)).sheets).toEqual(document.sheets);
    expect(openDocument(document).document().sheets).toEqual(document.sheets);
  });

  test("a calculated workbook opens again with the same formulas and values", () => {
    const entries = { A1: "=TEST.ECHO(Cars)", H1: "=SUM(Cars[Length (in)])", H2: "=A1#", H9: '=TEST.REFUSE("value")', H10: "=SUM(Nowhere[X])", A9: "3/16" };
    const saved = openDocument(sampleDocument(entries)).document();
    const opened = openDocument(readXlsx(writeXlsx(saved))).document();
    expect(opened).toEqual(saved);
    expect(saved.sheets[1]?.cells.get("A1")).toMatchObject({ value: "A", spill: { rows: 3, columns: 4 } });
    expect(saved.sheets[1]?.cells.get("H10")?.formula).toBe("=SUM(Nowhere[X])");
  });
});

describe("a file that is no workbook says so in a sentence", () => {
  const good = writeXlsx({ sheets: [plainSheet("A", { A1: 1 })] });
  const broken = (change: (parts: Record<string, Uint8Array>) => void) => {
    const parts = unzipSync(good);
    change(parts);
    return zipSync(parts);
  };
  test("a file that would fill the memory", () => {
    expect(() => readXlsx(good, 1000)).toThrow("The workbook is too large to open here.");
  });

  test.each<[string, Uint8Array, RegExp]>([
    ["a text", strToU8("Car,Year"), /not an .xlsx workbook/],
    ["nothing", new Uint8Array(), /not an .xlsx workbook/],
    ["an old or protected workbook", new Uint8Array([0xd0, 0xcf, 0x11, 0xe0]), /old .xls workbook or is protected/],
    ["half a file", good.slice(0, good.length / 2), /cannot be unpacked/],
    ["a zip of something else", zipSync({ "a.txt": strToU8("x") }), /holds no workbook/],
    ["XML cut off", broken((parts) => { parts["xl/worksheets/sheet1.xml"] = strToU8("<worksheet><sheetData>"); }), /sheet1.xml cannot be read/],
    ["a sheet missing", broken((parts) => { delete parts["xl/worksheets/sheet1.xml"]; }), /cells of sheet A are missing/],
  ])("%s", (_, bytes, message) => {
    expect(() => readXlsx(bytes)).toThrow(WorkbookFileError);
    expect(() => readXlsx(bytes)).toThrow(message);
  });
});
