import ExcelJS from "exceljs";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { openDocument } from "../embedded/sample";
import { readXlsx } from "../../src/workbook/xlsx/read";
import { writeXlsx } from "../../src/workbook/xlsx/write";

/** One pixel, as in the contract of the workbook adapters. */
const DOT = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNgYGBgAAAABQABXvMqOgAAAABJRU5ErkJggg==";

/** A workbook written by another library. */
async function foreign(fill: (book: ExcelJS.Workbook) => void) {
  const book = new ExcelJS.Workbook();
  fill(book);
  return readXlsx(new Uint8Array(await book.xlsx.writeBuffer()));
}

/** A package from bare parts, in the ways other programs write them. */
const handMade = (sheet: string, parts: Readonly<Record<string, string>> = {}) => {
  const main = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"';
  const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  const all = {
    "_rels/.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="a" Type="${office}/officeDocument" Target="/xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `<workbook ${main}><workbookPr date1904="1"/><sheets><sheet name="S" sheetId="9" r:id="z"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="z" Type="${office}/worksheet" Target="/xl/worksheets/first.xml"/></Relationships>`,
    "xl/worksheets/first.xml": `<worksheet ${main}><sheetData>${sheet}</sheetData></worksheet>`,
    ...parts,
  };
  return readXlsx(zipSync(Object.fromEntries(Object.entries(all).map(([path, text]) => [path, strToU8(text)]))));
};

const cellsOf = (document: ReturnType<typeof readXlsx>, sheet = 0) => Object.fromEntries(document.sheets[sheet]?.cells ?? []);

test("values of every kind as another library writes them", async () => {
  const document = await foreign((book) => {
    const sheet = book.addWorksheet("Data");
    sheet.addRow(["text", 1.5, true, new Date(Date.UTC(2001, 1, 3)), { error: "#N/A" }, { richText: [{ text: "3/" }, { font: { bold: true }, text: "16" }] }]);
    sheet.addRow([{ text: "a link", hyperlink: "#Data!A1" }, null, "007"]);
    sheet.getColumn(1).width = 30;
    book.addWorksheet("Hidden", { state: "hidden" }).getCell("B2").value = "x";
    book.definedNames.add("Data!$A$1", "Start");
  });
  // 3 February 2001 is day 36925: 36892 is 1 January 2001, and 33 days follow.
  expect(cellsOf(document)).toMatchObject({
    A1: { value: "text" }, B1: { value: 1.5 }, C1: { value: true }, D1: { value: 36925 }, E1: { value: { error: "#N/A" } }, F1: { value: "3/16" },
    A2: { value: "a link" }, C2: { value: "007" },
  });
  expect(document.sheets[0]?.columnWidths?.[0]).toBe(30);
  expect(document.sheets[1]).toMatchObject({ name: "Hidden", hidden: true });
  expect(document.names).toEqual([{ name: "Start", formula: "Data!$A$1" }]);
});

test("tables and formulas without cached values are calculated here", async () => {
  const document = await foreign((book) => {
    const sheet = book.addWorksheet("My cars");
    sheet.addTable({ name: "Cars", ref: "B3", headerRow: true, columns: [{ name: "Car" }, { name: "Year" }], rows: [["A", 11], ["B", 12]] });
    sheet.addTable({ name: "Sums", ref: "F3", headerRow: true, totalsRow: true, columns: [{ name: "N", totalsRowFunction: "sum" }], rows: [[1], [2]] });
    sheet.getCell("A10").value = { formula: "SUM(Cars[Year])" };
    sheet.getCell("A11").value = { formula: "PLUMB.RUNS(Cars[#Headers],Cars)" };
    sheet.getCell("A12").value = { formula: "_xldudf_PLUMB_RUNS(Cars[[#This Row],[Year]],_xlfn.ANCHORARRAY(A1),_xlfn.SINGLE(B1))" };
    sheet.getCell("A13").value = { formula: "SUM(Sums)" };
  });
  expect(document.sheets[0]?.tables).toEqual([
    { name: "Cars", firstRow: 2, firstColumn: 1, rows: 2, columns: 2 },
    { name: "Sums", firstRow: 2, firstColumn: 5, rows: 2, columns: 1 },
  ]);
  expect(cellsOf(document)).toMatchObject({ A11: { formula: "=PLUMB.RUNS(Cars[#Headers],Cars)" }, A12: { formula: "=PLUMB.RUNS(Cars[@Year],A1#,(B1))" } });
  const grid = openDocument(document);
  expect([grid.value("My cars", "A10"), grid.value("My cars", "A13")]).toEqual([23, 3]);
});

test("cells a spill fills are no constants, whoever wrote them", () => {
  const document = handMade(
    '<row r="1"><c r="A1" t="str" cm="1"><f t="array" ref="A1:B2">TEST.ECHO(D1:E2)</f><v>old</v></c><c r="B1"><v>5</v></c><c r="D1"><v>1</v></c><c r="E1"><v>2</v></c></row>' +
      '<row r="2"><c r="A2" t="s"><v>0</v></c><c r="B2" t="inlineStr"><is><t>old</t></is></c><c r="D2"><v>3</v></c><c r="E2"><v>4</v></c></row>',
  );
  expect(openDocument(document).results("S", "A1")).toEqual([[1, 2], [3, 4]]);
});

test("shared formulas, cells without addresses, dates from 1904, ISO dates, prefixed names", () => {
  const document = handMade(
    '<row><c t="inlineStr"><is><r><t>a</t></r><rPh><t>no</t></rPh><r><t xml:space="preserve"> b</t></r></is></c><c><v>2</v></c></row>' +
      '<row r="3"><c r="A3"><f t="shared" ref="A3:A5" si="0">B3*$B$1+SUM(B$3:B3)+C:C</f><v>1</v></c></row>' +
      '<row r="4"><c r="A4"><f t="shared" si="0"/><v>1</v></c></row><row r="5"><c t="d"><v>2001-02-03T12:00:00</v></c><c r="B5"><f t="shared" si="0"/></c></row>',
  );
  expect(cellsOf(document)).toEqual({
    A1: { value: "a b" }, B1: { value: 2 },
    A3: { value: 1, formula: "=B3*$B$1+SUM(B$3:B3)+C:C" }, A4: { value: 1, formula: "=B4*$B$1+SUM(B$3:B4)+C:C" },
    A5: { value: 36925.5 }, B5: { value: "", formula: "=C5*$B$1+SUM(C$3:C5)+D:D" },
  });
  const prefixed = handMade("", {
    "xl/worksheets/first.xml": '<x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><x:sheetData><x:row r="1"><x:c r="A1" s="1"><x:v>1</x:v></x:c></x:row></x:sheetData></x:worksheet>',
    "xl/styles.xml": '<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><cellXfs><xf/><xf numFmtId="14"/></cellXfs></styleSheet>',
  });
  // Day 1 of 1904 counting is 2 January 1904, day 1463 of the usual one.
  expect(cellsOf(prefixed)).toEqual({ A1: { value: 1463, format: "m/d/yyyy" } });
});

test("what has no place here is named, and nothing is when all is kept", async () => {
  const document = await foreign((book) => {
    const sheet = book.addWorksheet("S");
    sheet.mergeCells("A1:B1");
    sheet.getCell("A3").note = "a comment";
    // A list that lets nothing else pass is more than ours, which warn.
    sheet.getCell("A4").dataValidation = { type: "list", allowBlank: true, formulae: ['"a,b"'] };
  });
  expect(document.sheets[0]?.merges).toEqual([{ row: 0, column: 0, rows: 1, columns: 2 }]);
  expect(document.leftOut).toEqual(["comments", "limits on what may be typed"]);
  expect(handMade("").leftOut).toBeUndefined();
});

test("looks, page set-up, warning lists and pictures as another library writes them", async () => {
  const document = await foreign((book) => {
    const sheet = book.addWorksheet("S", { pageSetup: { orientation: "landscape", fitToPage: true, fitToHeight: 0, printTitlesRow: "1:2" }, headerFooter: { oddFooter: "&LShop && Sons&RPage &P" } });
    const cell = sheet.getCell("A1");
    cell.value = 0.5;
    cell.numFmt = "0%";
    cell.font = { bold: true, italic: true, size: 14, color: { argb: "FF0A0B0C" } };
    cell.fill = { type: "pattern", pattern: "solid", fgColor: { argb: "FFEEDDCC" } };
    cell.border = { top: { style: "double" }, left: { style: "thin" } };
    cell.alignment = { horizontal: "right", wrapText: true };
    sheet.getRow(2).height = 30;
    sheet.getRow(3).addPageBreak();
    sheet.getCell("A4").dataValidation = { type: "list", errorStyle: "warning", formulae: ['"a,b c"'] };
    sheet.addImage(book.addImage({ base64: DOT, extension: "png" }), { tl: { col: 1, row: 2 }, ext: { width: 30, height: 20 } });
  });
  const [sheet] = document.sheets;
  expect(sheet?.cells.get("A1")).toEqual({ value: 0.5, format: "0%", bold: true, italic: true, size: 14, colour: "#0a0b0c", fill: "#eeddcc", top: true, align: "right", wrap: true });
  expect(sheet?.page).toEqual({ landscape: true, fitWide: true, titleRows: 2, footer: "Shop & Sons", breaks: [3] });
  expect(sheet?.rowHeights).toEqual([undefined, 30]);
  expect(sheet?.lists).toEqual([{ area: { row: 3, column: 0, rows: 1, columns: 1 }, values: ["a", "b c"] }]);
  expect(sheet?.pictures).toEqual([{ png: DOT, alt: "", row: 2, column: 1, width: 30, height: 20 }]);
  expect(document.leftOut).toBeUndefined();
});

test("a table without headings, with a wild width, with a chart sheet beside it", async () => {
  const document = await foreign((book) => {
    const sheet = book.addWorksheet("S");
    sheet.addTable({ name: "Bare", ref: "A1", headerRow: false, columns: [{ name: "a" }], rows: [["x"]] });
  });
  expect(document.sheets[0]?.tables).toEqual([]);
  expect(cellsOf(document)).toMatchObject({ A1: { value: "x" } });
});

test("a table whose heading count another writer lost is known by the headings it shows", async () => {
  const written = writeXlsx({ sheets: [{ name: "S", tables: [{ name: "Cars", firstRow: 0, firstColumn: 0, rows: 1, columns: 1 }], cells: new Map([["A1", { value: "Car" }], ["A2", { value: "Car 1" }]]) }] });
  const parts = unzipSync(written);
  const [path = ""] = Object.keys(parts).filter((name) => name.includes("/tables/"));
  const table = strFromU8(parts[path] ?? new Uint8Array());
  expect(table).toContain('headerRowCount="1"');
  const mangled = zipSync({ ...parts, [path]: strToU8(table.replace('headerRowCount="1"', 'headerRowCount="0"')) });
  expect(readXlsx(mangled).sheets[0]?.tables).toHaveLength(1);
});
