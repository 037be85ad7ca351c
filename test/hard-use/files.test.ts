/** Files nobody would send on purpose, and some that somebody would. */
import fc from "fast-check";
import { deflateSync, strToU8, unzipSync, zipSync, type Zippable } from "fflate";
import { gridLibrary } from "../../scripts/grid-library";
import { openGrid } from "../../src/embedded/grid/grid";
import { readXlsx, WorkbookFileError } from "../../src/workbook/xlsx/read";
import { unzip } from "../../src/workbook/xlsx/unzip";
import { writeXlsx } from "../../src/workbook/xlsx/write";
import { parseXml, TooManyElements } from "../../src/workbook/xlsx/xml-tree";
import type { WorkbookDocument } from "../../src/workbook/document";
import { cars, plainSheet, sampleFunctions, tableSheet } from "../embedded/sample";
import { timed } from "./answers";
import { naughtyTexts } from "./hostile-cells";
import { hardUse } from "./rows";

const workbook: WorkbookDocument = { sheets: [tableSheet(cars), plainSheet("Work", { A1: "=TEST.ECHO(Cars)", B1: "text", C9: 4.5, D9: true })], names: [{ name: "Start", formula: "Work!$B$1" }] };
const sound = writeXlsx(workbook);
const parts = unzipSync(sound);
const withParts = (changes: Readonly<Record<string, string | Uint8Array>>): Uint8Array =>
  zipSync({ ...parts, ...Object.fromEntries(Object.entries(changes).map(([path, content]) => [path, typeof content === "string" ? strToU8(content) : content])) } satisfies Zippable);
const textOf = (path: string): string => new TextDecoder().decode(parts[path]);

/** What opening the file comes to: a document, or the sentence that says why not. Anything else is thrown. */
function opened(bytes: Uint8Array): WorkbookDocument | string {
  const { value, milliseconds } = timed(() => {
    try {
      return readXlsx(bytes);
    } catch (problem) {
      if (problem instanceof WorkbookFileError) return problem.message;
      throw problem;
    }
  });
  expect(milliseconds).toBeLessThan(1000);
  if (typeof value === "string") expect(value).toMatch(/^[A-Z].*\.$/s);
  return value;
}

const bytesChanged = fc.array(fc.tuple(fc.nat(sound.length - 1), fc.nat(255)), { minLength: 1, maxLength: 8 }).map((changes) => {
  const bytes = sound.slice();
  for (const [at, byte] of changes) bytes[at] = byte;
  return bytes;
});
const cutShort = fc.nat(sound.length - 1).map((length) => sound.slice(0, length));

const NUMBERS = ["", "0", "-1", "1e9", "-1e12", "99999999999999999999", "NaN", "x", "A1", "XFD1048576", "ZZZ9999999", "A0", "A1:XFD1048576", "B2:A1", "#REF!", ...naughtyTexts.slice(0, 40)];
const PIECES = ["<c/>", "<row/>", '<row r="0"/>', "<v>", "</row>", "<f>", '<f t="shared" si="9"/>', '<f t="array" ref="A1:XFD1048576">1</f>', "<f>((((</f>", "&bogus;", "<!-- -->", "<![CDATA[x]]>", "<t>x</t>", "\u0000", "<".repeat(50), `<a>`.repeat(500)];

/** A part with a number, an address or a name replaced, or with a piece put where none belongs. */
const xmlChanged = fc.tuple(fc.constantFrom(...Object.keys(parts)), fc.array(fc.tuple(fc.nat(), fc.boolean(), fc.constantFrom(...NUMBERS), fc.constantFrom(...PIECES)), { minLength: 1, maxLength: 4 })).map(([path, changes]) => {
  let text = textOf(path);
  for (const [at, isValue, value, piece] of changes) {
    const places = [...text.matchAll(isValue ? /(?<=")[^"<>]*(?=")|(?<=>)[^<>]+(?=<)/g : />(?=<)/g)];
    const place = places[at % Math.max(1, places.length)];
    if (!place) continue;
    const from = isValue ? place.index : place.index + 1;
    text = text.slice(0, from) + (isValue ? value.replace(/[<>&"]/g, "") : piece) + text.slice(isValue ? from + place[0].length : from);
  }
  return withParts({ [path]: text });
});
const partsMissing = fc.subarray(Object.keys(parts), { minLength: 1 }).map((gone) => zipSync(Object.fromEntries(Object.entries(parts).filter(([path]) => !gone.includes(path)))));

hardUse("a file that is cut short, damaged, or written by a madman opens or is refused with a sentence; what opens can be shown and saved", 0.05, fc.array(fc.oneof(cutShort, bytesChanged, { arbitrary: xmlChanged, weight: 4 }, partsMissing), { minLength: 1, maxLength: 10, size: "max" }), (files, counter) => {
  for (const file of files) {
    const document = opened(file);
    if (typeof document === "string") continue;
    const grid = openGrid(gridLibrary, document, sampleFunctions);
    expect(typeof opened(writeXlsx(grid.document()))).not.toBe("string");
  }
  counter.rows += files.length;
});

const mainNamespace = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const sheetOf = (rows: string): string => `<worksheet ${mainNamespace}><sheetData>${rows}</sheetData></worksheet>`;
const SHEET = "xl/worksheets/sheet2.xml";

describe("a bomb is refused before it goes off", () => {
  const zeros = new Uint8Array(60_000_000).fill(0x20);

  test("by its ratio, and by what it comes to", () => {
    expect(opened(withParts({ [SHEET]: zeros }))).toBe("The workbook is too large to open here.");
    expect(() => readXlsx(withParts({ [SHEET]: sheetOf(`<row><c t="str"><v>${"abc".repeat(9000)}</v></c></row>`) }), 20_000)).toThrow("The workbook is too large to open here.");
  });

  test("and one that lies about its size is caught when it passes it", () => {
    const lying = withClaims(zipSync({ ...parts, [SHEET]: zeros }), SHEET, 100);
    expect(opened(lying)).toMatch(/damaged/);
    expect(opened(withClaims(sound.slice(), SHEET, 100_000))).toMatch(/damaged: it cannot be unpacked/);
  });

  test("a sheet of honest size and ratio is unpacked whole", () => {
    const [rows] = [Array.from({ length: 20_000 }, (_, index) => `<row><c><v>${String(index)}</v></c></row>`).join("")];
    const document = opened(withParts({ [SHEET]: sheetOf(rows) }));
    expect(typeof document === "string" ? document : document.sheets[1]?.cells.get("A20000")?.value).toBe(19_999);
  });

  test("entities and document types of the file's own are refused, and nothing outside is read", () => {
    const laughs = `<!DOCTYPE w [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;">]>`;
    const outside = `<!DOCTYPE w [<!ENTITY x SYSTEM "file:///etc/passwd">]>`;
    for (const type of [laughs, outside, "<!DOCTYPE w>"]) {
      expect(opened(withParts({ [SHEET]: type + sheetOf('<row><c t="str"><v>&c;&x;</v></c></row>') }))).toMatch(/damaged: its part xl\/worksheets\/sheet2.xml .* document type/);
    }
    expect(opened(withParts({ [SHEET]: sheetOf('<row><c t="str"><v>&c;</v></c></row>') }))).toMatch(/damaged/);
  });
});

/** The size after unpacking that the zip's directory and the file's own head claim, changed. */
function withClaims(zip: Uint8Array, path: string, claim: number): Uint8Array {
  const view = new DataView(zip.buffer, zip.byteOffset);
  for (let at = 0; at < zip.length - 46; at++) {
    const signature = view.getUint32(at, true);
    const [size, name] = signature === 0x02014b50 ? [at + 24, at + 46] : signature === 0x04034b50 ? [at + 22, at + 30] : [0, 0];
    if (size > 0 && new TextDecoder().decode(zip.subarray(name, name + path.length)) === path) view.setUint32(size, claim, true);
  }
  return zip;
}

describe("sheets too large to show", () => {
  test("a million rows are refused at once", () => {
    const rows = '<row><c><v>1</v></c><c><v>2</v></c><c><v>3</v></c></row>'.repeat(1_000_000);
    expect(opened(zipSync({ ...parts, [SHEET]: [strToU8(sheetOf(rows)), { level: 0 }] }))).toBe("The workbook is too large to open here.");
  });

  test("and so is a part whose marks do not tell", () => {
    expect(() => parseXml("<a><b/><b/></a>", 2)).toThrow(TooManyElements);
    expect(parseXml("<a><b/><b/></a>", 3).children).toHaveLength(2);
  });

  test("a stray cell in the far corner, with what to do about it", () => {
    expect(opened(withParts({ [SHEET]: sheetOf('<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>') })))
      .toBe("The sheet Work reaches down to row 1,048,576 and across 16,384 columns, more than this page can show. Delete the rows and columns beyond your data, save, and open it again.");
  });

  test("a stray cell far down alone is no reason", () => {
    expect(typeof opened(withParts({ [SHEET]: sheetOf('<row r="1048576"><c r="B1048576"><v>1</v></c></row>') }))).not.toBe("string");
  });

  test("a table drawn over a whole sheet", () => {
    expect(opened(withParts({ "xl/tables/table1.xml": textOf("xl/tables/table1.xml").replaceAll(/ref="[^"]*"/g, 'ref="A1:CC1048576"') }))).toMatch(/^The table Cars has 1,048,575 rows and 81 columns/);
    expect(opened(withParts({ "xl/tables/table1.xml": textOf("xl/tables/table1.xml").replaceAll(/ref="[^"]*"/g, 'ref="A1:D1048576"') }))).toMatch(/^The table Cars has 1,048,575 rows and 4 columns/);
  });
});

test("columns that begin before the first, and rows and tables of no size, hold nothing up", () => {
  const columns = '<cols><col min="-1000000000000" max="3" width="9" customWidth="1"/></cols>';
  const document = opened(withParts({ [SHEET]: sheetOf('<row r="x"><c r="A1"><v>1</v></c></row>').replace("<sheetData>", `${columns}<sheetData>`), "xl/tables/table1.xml": textOf("xl/tables/table1.xml").replace("<table ", '<table totalsRowCount="many" ') }));
  if (typeof document === "string") throw new Error(document);
  expect([document.sheets[1]?.columnWidths, document.sheets[0]?.tables]).toEqual([[9, 9, 9], []]);
});

describe("other things than a workbook", () => {
  const zipOf = (files: Readonly<Record<string, string>>): Uint8Array => zipSync(Object.fromEntries(Object.entries(files).map(([path, text]) => [path, strToU8(text)])));
  test.each<[string, Uint8Array, RegExp]>([
    ["nothing", new Uint8Array(0), /not an \.xlsx workbook/],
    ["two bytes", strToU8("PK"), /damaged/],
    ["a picture", Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a), /not an \.xlsx workbook/],
    ["a text", strToU8("Car,Year\nA,1971\n"), /not an \.xlsx workbook/],
    ["a page", strToU8("<html><table><tr><td>1"), /not an \.xlsx workbook/],
    ["an old or locked workbook", Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1), /old \.xls workbook or is protected/],
    ["a zip of something else", zipOf({ "readme.txt": "hello" }), /holds no workbook/],
    ["a text document", zipOf({ "_rels/.rels": '<Relationships xmlns="x"><Relationship Id="a" Type="x/officeDocument" Target="word/document.xml"/></Relationships>', "word/document.xml": "<document/>" }), /holds no workbook/],
    ["another program's spreadsheet", zipOf({ mimetype: "application/vnd.oasis.opendocument.spreadsheet", "content.xml": "<x/>" }), /holds no workbook/],
    ["a binary workbook", zipSync({ "_rels/.rels": strToU8('<Relationships xmlns="x"><Relationship Id="a" Type="x/officeDocument" Target="xl/workbook.bin"/></Relationships>'), "xl/workbook.bin": Uint8Array.of(1, 2) }), /holds no workbook/],
    ["a workbook without sheets", withParts({ "xl/workbook.xml": `<workbook ${mainNamespace}><sheets/></workbook>` }), /no sheets with cells/],
  ])("%s is said to be that", (_, bytes, sentence) => {
    expect(opened(bytes)).toMatch(sentence);
  });

  test("a zip whose files are locked", () => {
    const zip = sound.slice();
    const view = new DataView(zip.buffer);
    for (let at = 0; at < zip.length - 46; at++) if (view.getUint32(at, true) === 0x02014b50) view.setUint16(at + 8, view.getUint16(at + 8, true) | 1, true);
    expect(opened(zip)).toMatch(/protected with a password/);
  });
});

test("macros and values of other workbooks are left out and named", () => {
  const links = textOf("xl/_rels/workbook.xml.rels");
  const macros = '<Relationship Id="rId99" Type="http://schemas.microsoft.com/office/2006/relationships/vbaProject" Target="vbaProject.bin"/></Relationships>';
  const document = opened(withParts({
    "xl/_rels/workbook.xml.rels": links.replace("</Relationships>", macros), "xl/vbaProject.bin": Uint8Array.of(1, 2, 3),
    "xl/workbook.xml": textOf("xl/workbook.xml").replace("<calcPr", "<externalReferences/><calcPr"),
    [SHEET]: sheetOf('<row r="1"><c r="A1"><f>[1]Prices!A1+1</f><v>7</v></c></row>'),
  }));
  if (typeof document === "string") throw new Error(document);
  expect(document.leftOut).toEqual(["values from other workbooks", "macros"]);
  expect(Object.keys(unzipSync(writeXlsx(openGrid(gridLibrary, document, sampleFunctions).document()))).filter((path) => /vba|external/i.test(path))).toEqual([]);
});

test("zips with the wide sizes of zip64 are read, as some programs always write them", () => {
  const text = strToU8("<a/>");
  const bytes = zip64("a.xml", deflateSync(text), text.length);
  expect([...unzip(bytes, () => true, { total: 1000, ratio: 10, ratioFrom: 1000 })].map(([path, content]) => [path, new TextDecoder().decode(content)])).toEqual([["a.xml", "<a/>"]]);
});

/** One file as in APPNOTE 6.3 sections 4.3.7, 4.3.12, 4.3.14 to 4.3.16 and 4.5.3: every 32-bit size and place all ones, the true ones in the wide fields. */
function zip64(path: string, packed: Uint8Array, unpacked: number): Uint8Array {
  const name = strToU8(path);
  const pieces: number[] = [];
  const add = (size: 2 | 4 | 8, ...values: number[]): void => { for (const value of values) for (let byte = 0; byte < size; byte++) pieces.push(Math.floor(value / 2 ** (8 * byte)) % 256); };
  add(4, 0x04034b50); add(2, 45, 0, 8, 0, 0); add(4, 0, 0xffff_ffff, 0xffff_ffff); add(2, name.length, 20); pieces.push(...name);
  add(2, 1, 16); add(8, unpacked, packed.length); pieces.push(...packed);
  const directory = pieces.length;
  add(4, 0x02014b50); add(2, 45, 45, 0, 8, 0, 0); add(4, 0, 0xffff_ffff, 0xffff_ffff); add(2, name.length, 28, 0, 0, 0); add(4, 0, 0xffff_ffff); pieces.push(...name);
  add(2, 1, 24); add(8, unpacked, packed.length, 0);
  const end = pieces.length;
  add(4, 0x06064b50); add(8, 44); add(2, 45, 45); add(4, 0, 0); add(8, 1, 1, end - directory, directory);
  add(4, 0x07064b50, 0); add(8, end); add(4, 1);
  add(4, 0x06054b50); add(2, 0, 0, 0xffff, 0xffff); add(4, 0xffff_ffff, 0xffff_ffff); add(2, 0);
  return Uint8Array.from(pieces);
}
