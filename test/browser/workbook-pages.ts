/** The local page, sheet and panel together, worked by mouse and keyboard as a user works them. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { chromium, type Browser, type Locator, type Page } from "playwright-core";
import { browserArguments, findBrowser } from "../../scripts/browser";
import { typeText } from "../../scripts/typing";
import { servePage, type PageServer } from "../../scripts/page-server";
import { cellAddress, parseArea } from "../../src/workbook/address";
import { isCellError, type CellError, type CellValue, type DocumentSheet, type WorkbookDocument } from "../../src/workbook/document";
import { readXlsx } from "../../src/workbook/xlsx/read";

const built = resolve(__dirname, "../../dist/embedded");

/**
 * Starts one server and one browser for the tests of a file, and closes every page after each.
 * A complaint of the browser or the page, and a request to anywhere else, fails the test that caused it.
 */
export function workbookPages(): { readonly open: (today?: string) => Promise<Page> } {
  let server: PageServer;
  let browser: Browser;
  let complaints: string[] = [];
  beforeAll(async () => {
    server = await servePage(built, 0);
    browser = await chromium.launch({ executablePath: findBrowser(), args: [...browserArguments] });
  });
  afterEach(async () => {
    await Promise.all(browser.contexts().map((context) => context.close()));
    const heard = complaints;
    complaints = [];
    expect(heard).toEqual([]);
  });
  afterAll(async () => {
    await browser.close();
    await server.close();
  });
  return {
    open: async (today) => {
      const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, permissions: ["clipboard-read", "clipboard-write"] });
      const page = await context.newPage();
      page.on("pageerror", (error) => complaints.push(String(error)));
      page.on("console", (message) => { if (message.type() === "error") complaints.push(message.text()); });
      page.on("request", (request) => { if (!request.url().startsWith(server.address) && !/^(blob|data):/.test(request.url())) complaints.push(`asked for ${request.url()}`); });
      if (today !== undefined) await page.clock.setFixedTime(today);
      await page.goto(server.address);
      await isReady(page);
      return page;
    },
  };
}

const isReady = (page: Page) => page.waitForSelector('html[data-ready="true"]', { timeout: 30_000 });

/** The panel, whose views turnTo of panel-pages turns to. */
export const panelOf = (page: Page): Locator => page.locator("#panel");

/** Waits until the panel has taken up every edit. */
export const settled = (page: Page): Promise<void> => panelOf(page).getByText("Up to date.", { exact: false }).waitFor({ state: "attached" });

/** Selects a cell, or the cells of an area, of the sheet that is shown by the name box, and gives the sheet the keyboard. */
export async function goTo(page: Page, address: string): Promise<void> {
  await nameBox(page).fill(address);
  await nameBox(page).press("Enter");
  await page.waitForFunction(() => document.activeElement?.closest(".o-grid") !== null);
}

/** Waits until the name box shows the cell. */
export const isSelected = async (page: Page, address: string): Promise<void> => {
  await page.waitForFunction((cell) => document.querySelector<HTMLInputElement>("#sheet .o-topbar-toolbar input, #sheet .o-named-range-selector input")?.value === cell, address);
};

const nameBox = (page: Page): Locator => page.locator("#sheet .o-topbar-toolbar input").first();

/** Types cells from left to right, from the selected one on, and ends the last with Enter. */
export async function typeCells(page: Page, texts: readonly string[]): Promise<void> {
  for (const [index, text] of texts.entries()) {
    await typeText(page, text);
    await page.keyboard.press(index < texts.length - 1 ? "Tab" : "Enter");
  }
}

/** Pastes rows at the selected cell, as they come from another program by the clipboard. */
export async function paste(page: Page, rows: readonly (readonly CellValue[])[]): Promise<void> {
  await page.evaluate((text) => navigator.clipboard.writeText(text), rows.map((row) => row.join("\t")).join("\n"));
  await page.keyboard.press("Control+V");
}

/** Clicks the tab of a sheet. */
export const showSheet = (page: Page, name: string): Promise<void> => page.locator("#sheet .o-sheet").filter({ has: page.getByText(name, { exact: true }) }).click();

/** Saves as the user does. */
export async function save(page: Page): Promise<{ readonly path: string; readonly document: WorkbookDocument }> {
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save" }).click()]);
  const path = await download.path();
  return { path, document: readXlsx(readFileSync(path)) };
}

/** Opens a saved file in the page, in place of the workbook there. */
export async function openAgain(page: Page, path: string): Promise<void> {
  await page.locator("#file").setInputFiles({ name: "again.xlsx", mimeType: "", buffer: readFileSync(path) });
  await page.waitForFunction(() => document.querySelector("#file-name")?.textContent === "again.xlsx");
  await isReady(page);
  await settled(page);
}

/** A sheet of a saved workbook. Throws when there is none of the name. */
export function sheetNamed({ sheets }: WorkbookDocument, name: string): DocumentSheet {
  const sheet = sheets.find((one) => one.name === name);
  if (!sheet) throw new Error(`There is no sheet ${name} among ${sheets.map((one) => one.name).join(", ")}.`);
  return sheet;
}

/** The values of a sheet by row, with "" for a blank cell and an error as its text, as far down and right as it is filled. */
export function valuesOf({ cells }: DocumentSheet): readonly (readonly CellValue[])[] {
  const places = [...cells.keys()].flatMap((address) => parseArea(address) ?? []);
  const [rows, columns] = [Math.max(-1, ...places.map(({ firstRow }) => firstRow)) + 1, Math.max(-1, ...places.map(({ firstColumn }) => firstColumn)) + 1];
  return Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (_unused, column) => textOrValue(cells.get(cellAddress(row, column))?.value ?? "")));
}

const textOrValue = (value: CellValue | CellError): CellValue => (isCellError(value) ? value.error : value);
