/** The very bundle that ships, in a page of its own with a stand-in for Excel that keeps Excel's rules. */
import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { chromium, type Browser, type Page } from "playwright-core";
import { browserArguments, findBrowser } from "../../scripts/browser";
import { catalogueTables } from "../../src/catalogue/table-specs";
import { built, openAddin, type AddinOpening, type OpenedPage } from "./addin-pages";
import { turnTo, violations } from "./panel-pages";

const pictures = join(__dirname, "../../test-output");
let browser: Browser;
let hostScript: string;

beforeAll(async () => {
  const bundle = await build({ entryPoints: [join(__dirname, "excel-host.ts")], bundle: true, write: false, format: "iife", target: "es2022" });
  hostScript = bundle.outputFiles[0]?.text ?? "";
  browser = await chromium.launch({ executablePath: findBrowser(), args: [...browserArguments] });
  mkdirSync(pictures, { recursive: true });
});
afterAll(() => browser.close());

const open = (opening: Partial<AddinOpening> = {}): Promise<OpenedPage> => openAddin(browser, hostScript, { path: "taskpane.html", width: 350, ...opening });

test.each([[350, false], [350, true], [1280, false]] as const)("at %d pixels, dark %s, the panel opens over the workbook and axe finds nothing", async (width, dark) => {
  const { page, complaints } = await open({ width, dark });
  await turnTo(page, "Flags");
  await page.locator(".card").first().waitFor();
  await page.screenshot({ path: `${pictures}/addin-${width}${dark ? "-dark" : ""}.png` });
  expect(await violations(page)).toEqual([]);
  expect(complaints).toEqual([]);
});

test("the pane is as dark as Excel says, whatever the system is, and follows when it is come back to", async () => {
  const { page, complaints } = await open();
  const panel = page.locator(".plumbline");
  const ground = (): Promise<string> => panel.evaluate((node) => getComputedStyle(node).backgroundColor);
  const excelTurns = (color: string | undefined): Promise<void> => page.evaluate((now) => { window.officeGround = now; window.dispatchEvent(new Event("focus")); }, color);
  await panel.waitFor();
  const [light, dark] = ["rgb(236, 238, 233)", "rgb(26, 30, 32)"];
  expect(await ground()).toBe(light);
  await excelTurns("#262626");
  expect(await ground()).toBe(dark);
  await page.emulateMedia({ colorScheme: "dark" });
  await excelTurns("#E6E6E6");
  expect(await ground()).toBe(light);
  await excelTurns(undefined);
  expect(await ground()).toBe(dark);
  await excelTurns("#262626");
  await page.emulateMedia({ media: "print", colorScheme: "light" });
  expect(await panel.evaluate((node) => getComputedStyle(node).getPropertyValue("--ink"))).toBe("#000");
  expect(complaints).toEqual([]);
});

// Over the bundle that ships: a module that failed once is not asked for again by every browser, a part of the bundle is.
test("a view that cannot be fetched says so and comes with a new try", async () => {
  const { page } = await open();
  await page.locator(".car").first().waitFor();
  await page.route(/\/functions\.js$/, (route) => route.abort());
  await turnTo(page, "Functions");
  await page.locator("#view-functions .failure").getByText("Functions could not be opened").waitFor();
  expect(await violations(page)).toEqual([]);
  await page.unroute(/\/functions\.js$/);
  await page.getByRole("button", { name: "Try again" }).click();
  await page.locator(".function").first().waitFor();
  expect(await page.locator("#view-functions .failure").count()).toBe(0);
});

test("a flag leads to the cell at fault, and an edit is followed", async () => {
  const { page, complaints } = await open();
  await turnTo(page, "Flags");
  await page.locator(".card .link, .card button").first().click();
  await page.waitForFunction(() => (window.excel.selection?.row ?? 0) > 0);
  const before = await page.locator("#panel").innerText();
  await page.evaluate(() => { window.excel.edit("Cars", 0, "Material", "copper"); });
  await page.waitForFunction((text) => document.getElementById("panel")?.innerText !== text, before);
  expect(complaints).toEqual([]);
});

test("a quote is written as a sheet with its looks, and one undo takes it back", async () => {
  const { page, complaints } = await open();
  await openAgainAtQuote(page);
  await page.getByRole("button", { name: "Write the quote sheet" }).click();
  await page.locator(".quote-form__said").getByText("Written to the new sheet Quote Car 4.").waitFor();
  const written = await page.evaluate(() => {
    const sheet = window.excel.sheets.find(({ name }) => name === "Quote Car 4");
    return { cells: sheet?.cells.size ?? 0, looks: sheet?.looks.size ?? 0, page: sheet?.page, front: window.excel.active === sheet?.id };
  });
  expect(written).toMatchObject({ page: { fitWide: true }, front: true });
  expect([written.cells > 30, written.looks > 10]).toEqual([true, true]);
  // What privacy.html says that stays on the computer, and nothing else.
  await turnTo(page, "Flags");
  const kept = await page.evaluate(() => [...Object.keys(localStorage), ...Object.keys(sessionStorage), document.cookie].filter((key) => !/^plumbline Shop\.xlsx (view|car|quote cars)$/.test(key)));
  expect(kept).toEqual([""]);
  expect(await page.evaluate(() => { window.excel.undo(); return window.excel.sheets.map(({ name }) => name); })).not.toContain("Quote Car 4");
  expect(complaints).toEqual([]);
});

test("functions answer as Excel asks them: blanks as 0, optionals as null, one thing more at the end, the catalogue read first", async () => {
  const { page, complaints } = await open();
  const answers = await page.evaluate(async (catalogue) => {
    const { associated, excel } = window;
    /** A table as a worksheet function gets it. */
    const whole = (name: string): unknown[][] => {
      const table = excel.tableNamed(name);
      const sheet = excel.sheets.find(({ id }) => id === table.sheet);
      if (!sheet) throw new Error("There is no such sheet.");
      return excel.shown(sheet, { row: 0, column: 0, rows: table.rows + 1, columns: table.columns }).map((row) => row.map((value) => (value === "" ? 0 : value)));
    };
    const [headings = [], ...cars] = whole("Cars");
    const invocation = { functionName: "any", isInValuePreview: false };
    const key = await associated["CATALOG"]?.(excel.tables.map(({ name }) => name).filter((name) => catalogue.includes(name)).map(whole), invocation);
    const runs = (await associated["RUNS"]?.([headings], cars.slice(0, 2), key, invocation)) as unknown[][];
    const verdict = (await associated["VERDICT"]?.([headings], cars, key, invocation)) as unknown[][];
    return { key, headings, first: cars[0], runs: runs[0]?.slice(0, 3), names: [...new Set(runs.slice(1).map(([car]) => car))], cars: verdict.length - 1, given: cars.length };
  }, catalogueTables.map(({ name }) => name));
  expect(answers.runs).toEqual(["Car", "Run", "From"]);
  expect(answers.names).toHaveLength(2);
  expect(answers.cars).toBe(answers.given);
  expect(complaints).toEqual([]);
  // Opened again: the key stands in its cell, nothing was read, and nobody opens the panel.
  await page.route("**/taskpane.html", async (route) => {
    await route.fulfill({ contentType: "text/html", body: readFileSync(`${built}/taskpane.html`, "utf8").replace("<main id=panel></main>", "") });
  });
  await page.reload();
  const rows = await page.evaluate(({ headings, first, key }) => window.associated["VERDICT"]?.([headings], [first], key, {}), answers);
  expect([await page.locator("#panel").count(), (rows as unknown[][]).length]).toEqual([0, 2]);
});

test("a protected workbook is answered in the panel with a sentence, and nothing is written", async () => {
  const { page } = await open();
  await openAgainAtQuote(page);
  const button = page.getByRole("button", { name: "Write the quote sheet" });
  await button.waitFor();
  const before = await page.evaluate(() => { window.excel.isProtected = true; return window.excel.sheets.length; });
  await button.click();
  await page.getByText("The workbook is protected against new sheets").first().waitFor();
  expect(await page.evaluate(() => window.excel.sheets.length)).toBe(before);
});

test.each([[350, false], [350, true]] as const)("at %d pixels, dark %s, the settings repair stuck formulas and keep whether the workbook loads the add-in", async (width, dark) => {
  const { page, complaints } = await open({ width, dark });
  await page.evaluate(() => { window.excel.sheets[0]?.cells.set("60,0", { value: "#N/A", format: "General", formula: "=PLUMB.RUNS(Cars[#Headers],Cars,B2)" }); });
  await turnTo(page, "Settings");
  const care = page.locator(".excel-care");
  await care.scrollIntoViewIfNeeded();
  await page.getByRole("button", { name: "Repair formulas" }).click();
  await care.getByText("Entered again: Cars!A61.").waitFor();
  await page.getByLabel("Load Plumbline whenever this workbook is opened").check();
  await care.getByText("From the next opening on, when the workbook is saved").waitFor();
  expect(await page.evaluate(() => window.startupBehavior)).toBe("Load");
  await care.screenshot({ path: `${pictures}/excel-care${dark ? "-dark" : ""}.png` });
  expect(await violations(page)).toEqual([]);
  expect(complaints).toEqual([]);
});

/** As it was left in this workbook: the quote of Car 4 in sight. */
async function openAgainAtQuote(page: Page): Promise<void> {
  await page.evaluate((name) => {
    localStorage.setItem(`plumbline ${name} view`, "quote");
    localStorage.setItem(`plumbline ${name} car`, JSON.stringify({ table: "Cars", row: 3, name: "Car 4" }));
  }, "Shop.xlsx");
  await page.reload();
}
