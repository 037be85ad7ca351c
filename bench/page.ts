/** The local page in a browser: how much it loads, when it answers, and what an edit of a large workbook costs. The build must be there. */
import { existsSync, readFileSync, statSync, writeFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { gzipSync } from "node:zlib";
import { chromium, type Browser, type Download, type Page } from "playwright-core";
import { browserArguments, findBrowser } from "../scripts/browser";
import { servePage } from "../scripts/page-server";
import { typeText } from "../scripts/typing";
import { cellAddress } from "../src/workbook/address";
import type { DocumentSheet, SheetCell, WorkbookDocument } from "../src/workbook/document";
import { readXlsx } from "../src/workbook/xlsx/read";
import { writeXlsx } from "../src/workbook/xlsx/write";
import { row, summary, type BenchRow } from "./measure";
import { freshTables, shopCars, shopTables, type Cell } from "./workload";

const ROOT = resolve(import.meta.dirname, "..");
const BUILT = join(ROOT, "dist/embedded");

export async function pageRows(): Promise<BenchRow[]> {
  if (!existsSync(BUILT)) throw new Error("There is no dist/embedded: run npm run build first.");
  const server = await servePage(BUILT, 0);
  const browser = await chromium.launch({ executablePath: findBrowser() ?? "chromium", args: [...browserArguments] });
  const folder = mkdtempSync(join(tmpdir(), "plumbline-bench-"));
  try {
    return [...sizes(), ...(await loading(browser, server.address)), ...(await large(browser, server.address, folder, 5000)), ...(await large(browser, server.address, folder, 10_000))];
  } finally {
    await browser.close();
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

function sizes(): BenchRow[] {
  const size = (what: string, files: readonly string[]): BenchRow[] => {
    const there = files.map((name) => join(ROOT, "dist", name)).filter((file) => existsSync(file) && statSync(file).isFile());
    return there.length === 0 ? [] : [{ area: "Page", what, figure: there.reduce((sum, file) => sum + gzipSync(readFileSync(file)).length, 0) / 1000, unit: "kB compressed", against: "scripts/build.ts holds the add-in's limits" }];
  };
  return [...size("first load of the Excel bundle", ["addin/taskpane.html", "addin/taskpane.js"]), ...size("all that a verdict waits for in Excel", ["addin/taskpane.js", "addin/trade.js", "addin/cars.js"]), ...size("script of the local page", ["embedded/page.js"])];
}

async function loading(browser: Browser, address: string): Promise<BenchRow[]> {
  const times: number[] = [];
  for (let run = 0; run < 5; run++) {
    const page = await (await browser.newContext()).newPage();
    const start = performance.now();
    await page.goto(address);
    await ready(page);
    times.push(performance.now() - start);
    await page.context().close();
  }
  return [row("Page", "from nothing to the demo calculated and drawn", summary(times))];
}

const ready = (page: Page): Promise<unknown> => page.waitForSelector('html[data-ready="true"]', { timeout: 120_000 });

/** A workbook of so many cars with one VERDICT over all of them: opened, edited in a row and in the catalogue, saved. */
async function large(browser: Browser, address: string, folder: string, count: number): Promise<BenchRow[]> {
  const file = join(folder, `${count}.xlsx`);
  writeFileSync(file, workbook(count));
  const page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
  await page.goto(address);
  await ready(page);
  const opening = await time(async () => { await page.setInputFiles("#file", file); await page.getByText(`${count}.xlsx`).waitFor({ timeout: 120_000 }); await ready(page); });
  await settled(page);
  const rowEdits: number[] = [];
  for (let edit = 0; edit < 15; edit++) rowEdits.push(await enter(page, `Q${20 + edit}`, `rings again on day ${edit}`));
  const panelEdits: number[] = [];
  for (let edit = 0; edit < PANEL_EDITS; edit++) panelEdits.push(await untilPanel(page, edit));
  await page.locator("#sheet .o-sheet", { hasText: "Adapters" }).first().click();
  const catalogueEdits: number[] = [];
  for (let edit = 0; edit < 3; edit++) catalogueEdits.push(await enter(page, "H2", String(10 + edit)));
  let saved: Download | undefined;
  const saving = await time(async () => { [saved] = await Promise.all([page.waitForEvent("download", { timeout: 120_000 }), page.getByRole("button", { name: "Save" }).click()]); });
  checkEdits(readXlsx(readFileSync((await saved?.path()) ?? "")), count);
  await page.context().close();
  return [
    row("Page", `${count} cars and a VERDICT over all: opening the .xlsx`, summary([opening])),
    row("Page", `${count} cars: edit of one row, until drawn again`, summary(rowEdits), count === 10_000 ? { most: 100 } : {}),
    panelRow(count, panelEdits),
    row("Page", `${count} cars: edit of the catalogue, until drawn again`, summary(catalogueEdits), count === 10_000 ? { most: 2000 } : {}),
    row("Page", `${count} cars: saving the .xlsx`, summary([saving])),
  ];
}

const PANEL_EDITS = 20;

/** Nineteen edits of twenty. */
function panelRow(count: number, times: readonly number[]): BenchRow {
  const sorted = [...times].sort((a, b) => a - b);
  const figure = sorted[Math.ceil(0.95 * sorted.length) - 1] ?? NaN;
  return {
    area: "Page", what: `${count} cars: from an edit of one row in the sheet to the panel, 95 % of edits`, figure, unit: "ms", spread: [sorted[0] ?? NaN, sorted.at(-1) ?? NaN],
    ...(count === 5000 ? { against: "at most 50 ms", met: figure <= 50 } : { against: "" }),
  };
}

/** Gives the first car of the panel's list another customer. @returns time from when the sheet has taken the edit to when the panel shows it [ms] */
async function untilPanel(page: Page, edit: number): Promise<number> {
  const customer = `Newcomer ${edit}`;
  const first = /Job (\d+)/.exec(await page.locator("#panel").getByText(/Job \d+/).first().innerText())?.[1];
  if (first === undefined) throw new Error("The panel lists no car.");
  await page.evaluate((wanted) => {
    const root = document.getElementById("panel")?.shadowRoot;
    (window as unknown as { shown?: Promise<number> }).shown = new Promise((done) => {
      let start = Infinity;
      addEventListener("keydown", ({ key }) => { if (key === "Enter") setTimeout(() => { start = performance.now(); }); }, { capture: true });
      const look = (): void => { if (start < Infinity && root?.textContent?.includes(wanted)) done(performance.now() - start); };
      if (root) new MutationObserver(look).observe(root, { childList: true, subtree: true, characterData: true });
    });
  }, customer);
  await enter(page, `B${Number(first) + 2}`, customer);
  return page.evaluate(() => (window as unknown as { shown: Promise<number> }).shown);
}

/** @throws Error where what was timed was not what was meant */
function checkEdits({ sheets }: WorkbookDocument, count: number): void {
  const value = (sheet: string, address: string): unknown => sheets.find(({ name }) => name === sheet)?.cells.get(address)?.value;
  const found = [value("Cars", "Q34"), value("Adapters", "H2"), value("Verdict", `A${count + 3}`)];
  const meant = ["rings again on day 14", 12, `Job ${count - 1}`];
  if (JSON.stringify(found) !== JSON.stringify(meant)) throw new Error(`The page holds ${JSON.stringify(found)} instead of ${JSON.stringify(meant)}.`);
}

async function time(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

/** The panel works in slices after the sheet is there; what is measured next must not wait for it. */
const settled = (page: Page): Promise<unknown> => page.locator("#panel").getByText("Up to date.", { exact: false }).waitFor({ state: "attached", timeout: 240_000 });

/** Types into a cell and takes the time from the Enter key to the next frame but one, as a hand and an eye would. */
async function enter(page: Page, address: string, text: string): Promise<number> {
  const nameBox = page.locator("#sheet .o-topbar-toolbar input").first();
  await nameBox.fill(address);
  await nameBox.press("Enter");
  await typeText(page, text);
  await page.evaluate(() => {
    const taken = window as unknown as { taken?: Promise<number> };
    taken.taken = new Promise((done) => {
      addEventListener("keydown", () => {
        const start = performance.now();
        requestAnimationFrame(() => requestAnimationFrame(() => { done(performance.now() - start); }));
      }, { once: true, capture: true });
    });
  });
  await page.keyboard.press("Enter");
  const took = await page.evaluate(() => (window as unknown as { taken: Promise<number> }).taken);
  await page.waitForTimeout(300);
  return took;
}

function workbook(count: number): Uint8Array {
  const { headings, rows } = shopCars(count);
  const tables = freshTables(0).map((table, index) => tableSheet(shopTables[index]?.name ?? "", [table.headings, ...table.rows]));
  const key: SheetCell = { value: "", formula: `=PLUMB.CATALOG(${shopTables.map(({ name }) => `${name}[#All]`).join(",")})` };
  const answers: DocumentSheet = { name: "Verdict", tables: [], cells: new Map([["A1", key], ["A3", { value: "", formula: "=PLUMB.VERDICT(Cars[#Headers],Cars,A1)" }]]) };
  return writeXlsx({ sheets: [tableSheet("Cars", [headings, ...rows]), answers, ...tables] });
}

const tableSheet = (name: string, rows: readonly (readonly Cell[])[]): DocumentSheet => ({
  name, tables: [{ name, firstRow: 0, firstColumn: 0, rows: rows.length - 1, columns: rows[0]?.length ?? 0 }],
  cells: new Map(rows.flatMap((cells, rowIndex) => cells.map((value, column): [string, SheetCell] => [cellAddress(rowIndex, column), { value }]))),
});
