/** Texts that are taken for something else elsewhere: in the panel they are text, in sheets and files they stay what was typed. */
import { unzipSync } from "fflate";
import { gridLibrary } from "../../scripts/grid-library";
import { gridPort } from "../../src/embedded/grid-port";
import { openGrid } from "../../src/embedded/grid/grid";
import { cellAddress } from "../../src/workbook/address";
import type { DocumentSheet, SheetCell, WorkbookDocument } from "../../src/workbook/document";
import { readXlsx } from "../../src/workbook/xlsx/read";
import { writeXlsx } from "../../src/workbook/xlsx/write";
import type { TableContent } from "../../src/workbook/port";
import { sampleFunctions } from "../embedded/sample";
import { naughtyTexts } from "./hostile-cells";
import { fewCars, isShown, openPanel, settled, textInSight, type PanelInPage } from "./panel-in-page";

/** What a spreadsheet takes for a formula, and a program that reads its files for a command. */
const STARTERS = ["=", "+", "-", "@", "\t", "\r", "'", "=1+1", "+1", "-1", "@SUM(1)", "\t=1", "\r=1", "=HYPERLINK(\"http://x\",\"y\")", "=cmd|' /C calc'!A0", "3/16", "007", "1E5", "TRUE", "#N/A", "_x0041_", "_xldudf_PLUMB_RUNS()", " leading", "trailing ", "a\nb", "a\r\nb"];
const texts = [...new Set([...naughtyTexts, ...STARTERS, ...["=", "+", "-", "@", "\t", "\r"].map((start) => `${start}${naughtyTexts[200] ?? ""}`)])].filter((text) => text !== "");

const cellsOf = (values: readonly string[]): Map<string, SheetCell> => new Map(values.map((value, row) => [cellAddress(row, 0), { value }]));
const sheetOf = (values: readonly string[]): DocumentSheet => ({ name: "Texts", tables: [], cells: cellsOf(values) });
const valuesIn = ({ sheets }: WorkbookDocument, name = "Texts"): unknown[] => texts.map((_, row) => {
  const cell = sheets.find((sheet) => sheet.name === name)?.cells.get(cellAddress(row, 0));
  return cell?.formula === undefined ? (cell?.value ?? "") : { formula: cell.formula };
});

test("every text comes back from a file as it was written, and stands there as text", () => {
  const bytes = writeXlsx({ sheets: [sheetOf(texts)] });
  expect(valuesIn(readXlsx(bytes))).toEqual(texts);
  const xml = new TextDecoder().decode(unzipSync(bytes)["xl/worksheets/sheet1.xml"]);
  expect(xml).not.toContain("<f");
  expect([...xml.matchAll(/<c [^>]*>/g)].filter(([cell]) => !cell.includes('t="s"'))).toEqual([]);
  // Format 49 is the spreadsheet's own "@", text: the cell stays text when somebody edits it.
  const styled = new Map([...xml.matchAll(/<c r="A(\d+)" s="(\d+)"/g)].map(([, row, style]) => [Number(row) - 1, style]));
  expect(texts.filter((text, row) => /^[=+\-@]/.test(text) && !styled.has(row))).toEqual([]);
});

test("every text goes through the grid and out to a file as it is, also when the panel writes it", async () => {
  // The grid takes the name of an error for that error, however it is written, as Excel does when it is typed.
  const kept = texts.map((text) => (text === "#N/A" ? { error: text } : text));
  const grid = openGrid(gridLibrary, { sheets: [sheetOf(texts)] }, sampleFunctions);
  expect(valuesIn(grid.document())).toEqual(kept);
  await gridPort(grid, "Book").writeSheet("Written", texts.map((text) => [text]));
  // A cell that is written is one that is typed, and its line ends are the grid's own.
  const written = kept.map((text) => (typeof text === "string" ? text.replaceAll(/\r\n?/g, "\n") : text));
  expect(valuesIn(grid.document(), "Written")).toEqual(written);
  expect(valuesIn(readXlsx(writeXlsx(grid.document())), "Written")).toEqual(written);
});

test("headings and names of tables and sheets come back from a file", () => {
  const headings = texts.filter((text) => text.trim() === text && !/[\r\n\t]/.test(text) && text.length < 250).slice(0, 300);
  const unlike = [...new Map(headings.map((heading) => [heading.toLowerCase(), heading])).values()];
  const sheet: DocumentSheet = { name: "'=1+1' & <b>", cells: new Map(unlike.map((value, column) => [cellAddress(0, column), { value }])), tables: [{ name: "Texts", firstRow: 0, firstColumn: 0, rows: 1, columns: unlike.length }] };
  const [back] = readXlsx(writeXlsx({ sheets: [sheet] })).sheets;
  expect(back?.name).toBe(sheet.name);
  expect(unlike.map((_, column) => back?.cells.get(cellAddress(0, column))?.value)).toEqual(unlike);
});

jest.setTimeout(60_000);

describe("in the panel", () => {
  let open: PanelInPage | undefined;
  afterEach(() => { open?.close(); });

  /** Elements and attributes that the panel never makes, and a text made into markup would. */
  const markup = (root: HTMLElement): string[] => [...root.querySelectorAll("*")].flatMap((one) => [
    ...(/^(script|img|iframe|object|embed|style|link|meta|base|form|video|audio|marquee|b|i|u|blink|input(?=.*javascript))$/i.test(one.tagName) ? [one.outerHTML.slice(0, 80)] : []),
    ...one.getAttributeNames().filter((name) => /^on|^srcdoc$|^formaction$|^style$/.test(name) || (/^(href|xlink:href|src)$/.test(name) && !/^#|^panel\.css$/.test(one.getAttribute(name) ?? ""))).map((name) => `${one.tagName} ${name}="${one.getAttribute(name) ?? ""}"`),
  ]);

  /** What can be read in the views of the first places, none of which holds markup. */
  async function everyView(panel: PanelInPage, places = Infinity): Promise<string> {
    let seen = "";
    const tabs = (): HTMLElement[] => [...panel.root.querySelectorAll<HTMLElement>('[role="tab"]')].filter(isShown);
    const strip = panel.root.querySelector('[role="tablist"]');
    for (const place of tabs().filter((tab) => strip?.contains(tab)).slice(0, places)) {
      place.click();
      await settled(panel);
      for (const view of [undefined, ...tabs().filter((tab) => !strip?.contains(tab))]) {
        view?.click();
        await settled(panel);
        expect(markup(panel.root)).toEqual([]);
        seen += textInSight(panel.root);
      }
    }
    return seen;
  }

  test.each([["the cars", ["Cars"]], ["parts", ["Components", "Ports", "Passages", "WheelBrakes", "Boosters", "Nuts", "Adapters"]], ["the other tables", ["Platforms", "Lengths", "Tube", "LineSets", "SetRuns", "Joins", "Settings", "Seen", "PriceBreaks", "Usage", "Pipeline"]]])("texts in every column of %s are shown as texts, or as what cannot be read", async (_, spoiled) => {
    const awkward = texts.filter((text) => /[<>&"'`]|script|^[=+\-@]/.test(text));
    let next = 0;
    const spoil = (table: TableContent): TableContent => (!spoiled.includes(table.name) ? table : { ...table, rows: [...table.rows, ...table.rows.slice(0, 8).map((row) => row.map(() => awkward[next++ % awkward.length] ?? ""))] });
    open = openPanel(fewCars().map(spoil));
    await settled(open);
    await everyView(open);
    expect(open.faults).toEqual([]);
  });

  const names = naughtyTexts.filter((text) => text.trim() !== "" && text.trim().length < 200);
  const NAMES_AT_ONCE = 60;
  test.each(Array.from({ length: Math.ceil(names.length / NAMES_AT_ONCE) }, (_, index) => [index * NAMES_AT_ONCE]))("a car by any name is shown under that name, from text %d on", async (from) => {
    const some = names.slice(from, from + NAMES_AT_ONCE);
    const [cars, ...rest] = fewCars();
    if (!cars) throw new Error("The demo has no cars.");
    open = openPanel([{ ...cars, rows: some.map((name) => [name, ...(cars.rows[0] ?? []).slice(1)]) }, ...rest]);
    while (!/Up to date/.test(open.root.textContent)) await settled(open);
    const seen = await everyView(open, 1);
    expect(some.filter((text) => !seen.includes(text.trim()))).toEqual([]);
  });
});
