/** Our files, held to the standard's rules and read by another library. */
import ExcelJS from "exceljs";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { gridLibrary } from "../../scripts/grid-library";
import { demoDocument } from "../../src/embedded/demo-document";
import { openGrid } from "../../src/embedded/grid/grid";
import { productFunctions } from "../../src/embedded/product-functions";
import { type CellStyle, type DocumentSheet, type SheetCell, type WorkbookDocument } from "../../src/workbook/document";
import { writeXlsx } from "../../src/workbook/xlsx/write";
import { tableSheet } from "../embedded/sample";
import { Package } from "./package-rules/package";
import { packageProblems } from "./package-rules/rules";

/** One pixel, as in the contract of the workbook adapters. */
const DOT = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNgYGBgAAAABQABXvMqOgAAAABJRU5ErkJggg==";

const heading: CellStyle = { bold: true, size: 16, fill: "#1f3b4d", colour: "#ffffff", align: "center" };

const dressed: DocumentSheet = {
  name: "Quote & Co", tables: [], columnWidths: [30, undefined, 8],
  cells: new Map<string, SheetCell>([
    ["A1", { value: "Quote", ...heading }], ["B1", { value: "", ...heading }], ["C1", { value: "", ...heading }],
    ["A2", { value: "3/16 & <more>" }], ["B2", { value: 12.5 }], ["A3", { value: "Total", top: true }], ["B3", { value: 12.5, top: true, format: "0.000" }],
  ]),
  merges: [{ row: 0, column: 0, rows: 1, columns: 3 }],
  pictures: [{ png: DOT, alt: 'A "drawing"', row: 4, column: 0, width: 320, height: 200 }, { png: DOT, alt: "", row: 9, column: 0, width: 10, height: 10 }],
  page: { landscape: true, fitWide: true, titleRows: 1, footer: "Shop & Sons" },
};

/** A bit of everything, so that each rule has something to look at. */
const small: WorkbookDocument = {
  names: [{ name: "Key", formula: "Cars!$A$1" }],
  sheets: [
    tableSheet({ name: "Cars", rows: [["Car", "Customer"], ["A", "x"], ["B", 2]] }),
    {
      name: "Verdict", tables: [],
      cells: new Map<string, SheetCell>([
        ["A1", { value: "x", bold: true }], ["B1", { value: "text", formula: '=T("text")' }],
        ["A3", { value: "Car", formula: "=PLUMB.VERDICT(Cars[#Headers],Cars,A1)", spill: { rows: 2, columns: 2 } }],
        ["B3", { value: "Verdict", spilled: true }], ["A4", { value: "A", spilled: true }], ["B4", { value: 1, spilled: true }],
        ["D3", { value: 1, formula: "=ROWS(A3#)+XLOOKUP(1,D9:D10,D9:D10)" }], ["D4", { value: { error: "#SPILL!" }, formula: "=PLUMB.RUNS(Cars[@Car])" }],
      ]),
    },
    dressed,
    { ...tableSheet({ name: "Spares", rows: [["Spare", "Thread"], ["x", "3/8-24"]] }), lists: [{ area: { row: 1, column: 1, rows: 9, columns: 1 }, values: ["3/8-24", 'a "b"'] }] },
  ],
};
const file = writeXlsx(small);

test("a workbook with a bit of everything breaks none of the standard's rules", () => {
  expect(packageProblems(new Package(file))).toEqual([]);
});

test("nor does the calculated demo, with sheets and tables that were written into it", () => {
  const grid = openGrid(gridLibrary, demoDocument(45_000), productFunctions);
  grid.writeSheet("Quote", { rows: [["Quote", ""], ["3/16", 1]], merges: dressed.merges ?? [], pictures: dressed.pictures ?? [], page: dressed.page ?? {} });
  grid.writeTables([{ name: "Spares", headings: ["Spare", "Thread"], rows: [], lists: [{ column: "Thread", values: ["3/8-24"] }] }]);
  const book = new Package(writeXlsx(grid.document()));
  expect(packageProblems(book)).toEqual([]);
  // That there was something to look at.
  expect([book.parts("xl/tables/").length > 15, book.parts("xl/drawings/").length]).toEqual([true, 1]);
});

describe("each rule can tell", () => {
  test.each<[string, string, RegExp | string, string, string]>([
    ["no content type", "[Content_Types].xml", /<Default Extension="png"[^>]*>/, "", "image1.png has no content type"],
    ["a content type for nothing", "[Content_Types].xml", "sheet1.xml", "sheet99.xml", "/xl/worksheets/sheet99.xml is for no part"],
    ["a wrong content type", "[Content_Types].xml", "spreadsheetml.styles", "spreadsheetml.table", "xl/styles.xml has the content type"],
    ["a link to nothing", "xl/_rels/workbook.xml.rels", "worksheets/sheet1.xml", "worksheets/sheet99.xml", "which is not there"],
    ["a part that nothing leads to", "xl/_rels/workbook.xml.rels", /<Relationship Id="rId1"[^>]*>/, "", "No link leads to xl/worksheets/sheet1.xml"],
    ["a link used that is not there", "xl/workbook.xml", 'r:id="rId2"', 'r:id="rId999"', "uses link rId999"],
    ["two links alike", "xl/_rels/workbook.xml.rels", 'Id="rId2"', 'Id="rId1"', "Link rId1 of xl/_rels/workbook.xml.rels is there twice"],
    ["a sheet name that may not be", "xl/workbook.xml", 'sheet name="Verdict"', 'sheet name="Ver/dict"', 'No sheet may be named "Ver/dict"'],
    ["a sheet name twice", "xl/workbook.xml", 'sheet name="Verdict"', 'sheet name="CARS"', "Two sheets are named cars"],
    ["the workbook out of order", "xl/workbook.xml", /(<bookViews>.*<\/bookViews>)(<sheets>.*<\/sheets>)/, "$2$1", "bookViews comes too late"],
    ["a title row of no sheet", "xl/workbook.xml", /localSheetId="\d+"/, 'localSheetId="99"', "_xlnm.Print_Titles is of a sheet that is not there"],
    ["a hidden sheet in front", "xl/workbook.xml", 'name="Cars" sheetId="1"', 'name="Cars" sheetId="1" state="hidden"', "The sheet in front is hidden"],
    ["a look out of range", "xl/worksheets/sheet2.xml", / s="\d+"/, ' s="999"', "refers to a look that is not there"],
    ["a text out of range", "xl/worksheets/sheet1.xml", /t="s"><v>\d+/, 't="s"><v>99999', "refers to text 99999"],
    ["an error no file holds", "xl/worksheets/sheet2.xml", /t="str"><v>[^<]*/, 't="e"><v>#SPILL!', "holds an error that files do not"],
    ["cells out of order", "xl/worksheets/sheet1.xml", /<c r="B1"/, '<c r="A1"', "cell A1 is not where it should be"],
    ["rows out of order", "xl/worksheets/sheet1.xml", '<row r="2">', '<row r="1">', "row 1 comes too late"],
    ["an array elsewhere", "xl/worksheets/sheet2.xml", 'ref="A3:', 'ref="A4:', "the array of A3 does not start there"],
    ["metadata that is not there", "xl/worksheets/sheet2.xml", 'cm="1"', 'cm="2"', "has metadata 2 of 1"],
    ["a mark without an array", "xl/worksheets/sheet2.xml", 't="array" ', "", "is marked as an array and is none"],
    ["a function of ours as typed", "xl/worksheets/sheet2.xml", "_xldudf_PLUMB_", "PLUMB.", "calls a function of ours by the name people type"],
    ["a formula with its sign", "xl/worksheets/sheet2.xml", ">_xldudf", ">=_xldudf", 'has a formula with "="'],
    ["a table column that the cell does not show", "xl/tables/table1.xml", 'name="Customer"', 'name="Custom"', 'heading cell of "Custom" in table Cars'],
    ["a table of too few columns", "xl/tables/table1.xml", /<tableColumn id="2"[^>]*>/, "", "Table Cars has"],
    ["a table name that may not be", "xl/tables/table1.xml", /name="Cars" displayName="Cars"/, 'name="AB12" displayName="AB12"', 'No table may be named "AB12"'],
    ["two tables with one id", "xl/tables/table2.xml", /id="2" name/, 'id="1" name', "Two tables have the id 1"],
    ["a filter elsewhere", "xl/tables/table1.xml", /<autoFilter ref="[^"]*"/, '<autoFilter ref="A1:A2"', "The filter of table Cars"],
    ["styles miscounted", "xl/styles.xml", /<fonts count="\d+"/, '<fonts count="1"', "fonts of the styles are miscounted"],
    ["a fill that is not there", "xl/styles.xml", /fillId="2"/, 'fillId="9"', "has no such fillId"],
    ["a reserved fill", "xl/styles.xml", "gray125", "solid", "The first two fills"],
    ["a number format that is not there", "xl/styles.xml", /<numFmt numFmtId="164"/, '<numFmt numFmtId="150"', "Number format"],
    ["a colour that is none", "xl/styles.xml", 'rgb="FFFFFFFF"', 'rgb="white"', "white is no colour"],
    ["a worksheet out of order", "DRESSED", /(<mergeCells.*<\/mergeCells>)(.*)(<\/worksheet>)/s, "$2$1$3", "mergeCells comes too late"],
    ["merged cells that hide", "DRESSED", /<c r="B1"([^>]*)\/>/, '<c r="B1"$1><v>1</v></c>', "B1 is hidden in the merged A1:C1"],
    ["merged cells that overlap", "DRESSED", '<mergeCells count="1">', '<mergeCells count="2"><mergeCell ref="B1:B2"/>', "the merged B1:B2 and A1:C1 overlap"],
    ["a page that does not say that it fits", "DRESSED", /<sheetPr>.*?<\/sheetPr>/, "", "the page does not say that it fits"],
    ["a margin left out", "DRESSED", ' header="0.3"', "", "there is no margin header"],
    ["a foot with a code that is none", "DRESSED", "Shop &amp;&amp; Sons", "Shop &amp;zSons", "a code that is none"],
    ["a picture without words", "xl/drawings/drawing1.xml", / descr="[^"]*"/, "", "no words for who does not see it"],
    ["two pictures with one id", "xl/drawings/drawing1.xml", 'cNvPr id="2"', 'cNvPr id="1"', "two pictures with the id 1"],
    ["a picture that is no PNG", "xl/media/image1.png", "PNG", "GIF", "image1.png is no PNG"],
    ["a list for no cells", "SPARES", / sqref="[^"]*"/, ' sqref="B"', 'a list is for "B"'],
    ["a list that is too long", "SPARES", "<formula1>&quot;", `<formula1>&quot;${"x".repeat(255)}`, "a list is no list"],
  ])("%s", (_, part, from, to, problem) => {
    const path = part === "DRESSED" ? sheetPath("Quote") : part === "SPARES" ? sheetPath("Spares") : part;
    expect(packageProblems(new Package(changed(path, from, to))).join("\n")).toContain(problem);
  });

  function changed(path: string, from: RegExp | string, to: string): Uint8Array {
    const files = unzipSync(file);
    const isBinary = path.endsWith(".png");
    const text = isBinary ? Buffer.from(files[path] ?? []).toString("latin1") : strFromU8(files[path] ?? new Uint8Array());
    const broken = text.replace(from, to);
    if (broken === text) throw new Error(`${path} has nothing of ${String(from)}.`);
    return zipSync({ ...files, [path]: isBinary ? Buffer.from(broken, "latin1") : strToU8(broken) });
  }

  /** The part of the sheet whose name begins so. */
  function sheetPath(name: string): string {
    const names = [...new Package(file).xml("xl/workbook.xml").getElementsByTagName("sheet")].map((sheet) => sheet.getAttribute("name") ?? "");
    return `xl/worksheets/sheet${names.findIndex((each) => each.startsWith(name)) + 1}.xml`;
  }
});

test("another library reads the same, and writes it again so that we read the same", async () => {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(file.buffer as ArrayBuffer);
  const quote = book.getWorksheet("Quote & Co");
  expect([quote?.getCell("A2").value, quote?.getCell("B2").value, quote?.getCell("B3").numFmt, quote?.getCell("A1").font.bold, quote?.getCell("A1").font.size]).toEqual(["3/16 & <more>", 12.5, "0.000", true, 16]);
  expect([quote?.getCell("C1").isMerged, quote?.pageSetup.orientation, quote?.pageSetup.fitToPage, quote?.pageSetup.printTitlesRow, quote?.headerFooter.oddFooter]).toEqual([true, "landscape", true, "1:1", "&LShop && Sons&RPage &P of &N"]);
  expect(quote?.getImages().map(({ range }) => [range.tl.nativeRow, range.tl.nativeCol])).toEqual([[4, 0], [9, 0]]);
  expect(book.getWorksheet("Spares")?.getCell("B2").dataValidation).toMatchObject({ type: "list", errorStyle: "warning", formulae: ['"3/8-24,a ""b"""'] });
  const verdict = book.getWorksheet("Verdict")?.getCell("A3").value as { readonly formula: string; readonly result: unknown };
  expect(verdict).toMatchObject({ formula: "_xldudf_PLUMB_VERDICT(Cars[#Headers],Cars[],A1)", result: "Car" });
  const back = new ExcelJS.Workbook();
  await back.xlsx.load(await book.xlsx.writeBuffer());
  expect(back.worksheets.map(({ name }) => name)).toEqual(book.worksheets.map(({ name }) => name));
  expect(back.getWorksheet("Cars")?.getTable("Cars").name).toBe("Cars");
  expect(back.getWorksheet("Cars")?.getSheetValues()).toEqual(book.getWorksheet("Cars")?.getSheetValues());
});
