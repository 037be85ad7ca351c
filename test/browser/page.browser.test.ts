import { mkdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";
import { browserArguments, findBrowser } from "../../scripts/browser";
import { type PageServer, servePage } from "../../scripts/page-server";
import { type WorkbookDocument } from "../../src/workbook/document";
import { readXlsx } from "../../src/workbook/xlsx/read";
import { goTo, openAgain, typeCells } from "./workbook-pages";

const pictures = fileURLToPath(new URL("../../test-output/", `file://${__filename}`));
const built = fileURLToPath(new URL("../../dist/embedded", `file://${__filename}`));

let server: PageServer;
let browser: Browser;

beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  const executablePath = findBrowser();
  if (executablePath === undefined) throw new Error("There is no browser to test with.");
  server = await servePage(built, 0);
  browser = await chromium.launch({ executablePath, args: [...browserArguments] });
});

afterAll(async () => {
  await browser.close();
  await server.close();
});

interface Look {
  readonly width: number;
  readonly colorScheme: "light" | "dark";
}

/** Opens the page and gathers what must not happen: errors, and requests to anywhere else. */
async function openPage({ width, colorScheme }: Look = { width: 1280, colorScheme: "light" }) {
  const context = await browser.newContext({ viewport: { width, height: 800 }, colorScheme });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on("pageerror", (error) => faults.push(String(error)));
  page.on("console", (message) => {
    if (message.type() === "error") faults.push(message.text());
  });
  page.on("request", (request) => {
    if (!request.url().startsWith(server.address) && !/^(blob|data):/.test(request.url())) faults.push(`asked for ${request.url()}`);
  });
  await page.goto(server.address);
  await isReady(page);
  return { page, faults, close: () => context.close() };
}

const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");

/** What axe-core finds in our own parts of the page; the grid is the library's, drawn on a canvas. */
async function accessibilityFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { axe: tool } = window as unknown as { axe: { run(context: unknown): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } };
    const { violations } = await tool.run({ exclude: ["#sheet"] });
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
  });
}

const isReady = (page: Page) => page.waitForSelector('html[data-ready="true"]', { timeout: 30_000 });

/** Saves as the user does and reads the file that arrives. */
async function saved(page: Page): Promise<{ readonly path: string; readonly document: WorkbookDocument }> {
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save" }).click()]);
  const path = await download.path();
  return { path, document: readXlsx(readFileSync(path)) };
}

const sheetOf = (document: WorkbookDocument, name: string) => document.sheets.find((sheet) => sheet.name === name);

/** Goes to a cell of the sheet that is shown, types, and presses Enter. */
async function type(page: Page, address: string, text: string): Promise<void> {
  await goTo(page, address);
  await typeCells(page, [text]);
}

/** What the panel says once it is done with all cars. */
async function panelText(page: Page): Promise<string> {
  await page.locator("#panel").getByText("Up to date.", { exact: false }).waitFor({ state: "attached" });
  return page.locator("#panel .views").innerText();
}

/** The text once it is another one. Throws when it is the same for ten seconds. */
async function changed(read: () => Promise<string>, before: string): Promise<string> {
  const end = performance.now() + 10_000;
  let text = before;
  while (text === before) {
    if (performance.now() > end) throw new Error("It is still the same after ten seconds.");
    text = await read();
  }
  return text;
}

test("the page opens on the demo workbook with every formula calculated", async () => {
  const { page, faults, close } = await openPage();
  const { document } = await saved(page);
  for (const name of ["Verdict", "Runs", "Flags", "Tubing"]) {
    const cell = sheetOf(document, name)?.cells.get("A3");
    expect(cell).toMatchObject({ value: name === "Tubing" ? "Material" : "Car" });
    expect(cell?.spill?.rows).toBeGreaterThan(3);
  }
  expect(sheetOf(document, "Catalog")?.cells.get("B2")?.value).toMatch(/\w/);
  await page.locator("#panel .plumbline").waitFor();
  expect(faults).toEqual([]);
  await close();
});

test("an edit of a car's valves changes the runs and the panel", async () => {
  const { page, faults, close } = await openPage();
  const before = (await saved(page)).document;
  const panelBefore = await panelText(page);
  const cars = sheetOf(before, "Cars");
  const column = [...(cars?.cells ?? [])].find(([address, { value }]) => /^[A-Z]+1$/.test(address) && value === "Valves")?.[0].slice(0, -1) ?? "";
  await type(page, `${column}2`, "?");
  const after = (await saved(page)).document;
  expect(sheetOf(after, "Cars")?.cells.get(`${column}2`)?.value).toBe("?");
  expect(sheetOf(after, "Runs")).not.toEqual(sheetOf(before, "Runs"));
  await expect(changed(() => panelText(page), panelBefore)).resolves.toMatch(/cars/);
  expect(faults).toEqual([]);
  await close();
});

test("keys that come faster than the page is drawn replace what the cell held, in their order", async () => {
  const { page, faults, close } = await openPage();
  await page.addInitScript(() => {
    const draw = requestAnimationFrame.bind(window);
    window.requestAnimationFrame = (work) => ("slow" in window ? window.setTimeout(() => draw(work), 500) : draw(work));
  });
  await page.reload();
  await isReady(page);
  const typeFast = async (): Promise<void> => {
    await goTo(page, "A40");
    await page.evaluate(() => { Object.assign(window, { slow: true }); });
    for (const text of ["Ada", "Bo"]) {
      await page.keyboard.type(text);
      await page.keyboard.press("Enter");
    }
    await page.evaluate(() => { delete (window as { slow?: boolean }).slow; });
  };
  const typed = ({ document }: { readonly document: WorkbookDocument }): unknown[] => ["A40", "A41"].map((address) => sheetOf(document, "Cars")?.cells.get(address)?.value);

  await typeFast();
  const blank = await saved(page);
  expect(typed(blank)).toEqual(["Ada", "Bo"]);
  await typeFast();
  expect(typed(await saved(page))).toEqual(["Ada", "Bo"]);

  await openAgain(page, blank.path);
  await typeFast();
  expect(typed(await saved(page))).toEqual(["Ada", "Bo"]);
  expect(faults).toEqual([]);
  await close();
});

test("a structured reference typed in the page is taken and kept", async () => {
  const { page, faults, close } = await openPage();
  await type(page, "A40", "=ROWS(cars[#All])+COUNTA(Cars[Car])");
  const { document } = await saved(page);
  const rows = sheetOf(document, "Cars")?.tables[0]?.rows ?? 0;
  expect(sheetOf(document, "Cars")?.cells.get("A40")).toMatchObject({ value: 2 * rows + 1, formula: "=ROWS(Cars[#All])+COUNTA(Cars[Car])" });
  expect(faults).toEqual([]);
  await close();
});

test("a saved workbook opens again with the same formulas and values, and a broken one changes nothing", async () => {
  const { page, faults, close } = await openPage();
  await type(page, "A40", "=SUM(Cars[Year])");
  const first = await saved(page);
  await openAgain(page, first.path);
  const second = await saved(page);
  expect(second.document).toEqual(first.document);

  await page.locator("#file").setInputFiles({ name: "broken.xlsx", mimeType: "", buffer: readFileSync(first.path).subarray(0, 4000) });
  await page.getByRole("dialog").getByText("broken.xlsx was not opened.", { exact: false }).waitFor();
  await page.getByRole("button", { name: "OK" }).click();
  expect(await page.locator("#file-name").innerText()).toBe("again.xlsx");
  expect((await saved(page)).document).toEqual(first.document);
  expect(faults).toEqual([]);
  await close();
});

test("what is being done is drawn before a workbook is opened or saved, and gone afterwards", async () => {
  const { page, faults, close } = await openPage();
  await page.evaluate(() => {
    const [note, name] = ["note", "file-name"].map((id) => document.getElementById(id)) as [HTMLElement, HTMLElement];
    const drawn: string[] = [];
    const look = (): void => { if (!note.hidden) drawn.push(`${String(note.textContent)} ${String(name.textContent)}`); };
    new MutationObserver(() => requestAnimationFrame(look)).observe(note, { attributes: true });
    Object.assign(window, { drawn });
  });
  const { path } = await saved(page);
  await page.locator("#file").setInputFiles({ name: "mine.xlsx", mimeType: "", buffer: readFileSync(path) });
  await page.waitForFunction(() => document.querySelector("#file-name")?.textContent === "mine.xlsx");
  await page.locator("#note").waitFor({ state: "hidden" });
  expect(await page.evaluate(() => [...new Set((window as unknown as { drawn: string[] }).drawn)])).toEqual(["Saving… Demo workbook", "Opening mine.xlsx… Demo workbook"]);
  expect(faults).toEqual([]);
  await close();
});

test("a click on a car in the panel shows and selects its row, also where the panel fills the screen", async () => {
  for (const width of [1280, 350]) {
    const { page, faults, close } = await openPage({ width, colorScheme: "light" });
    await panelText(page);
    if (width === 350) await page.locator("#show-panel").click();
    const car = page.locator("#panel").getByRole("button", { name: /^Car 17/ }).first();
    await car.click();
    await page.waitForFunction(() => document.querySelector<HTMLInputElement>("#sheet .o-topbar-toolbar input, #sheet .o-named-range-selector input")?.value.startsWith("A18"));
    expect(await page.locator("#sheet").isVisible()).toBe(true);
    expect(faults).toEqual([]);
    await close();
  }
});

test("changes that are not saved are not lost without a question", async () => {
  const { page, faults, close } = await openPage();
  const { path } = await saved(page);
  await type(page, "A40", "mine");
  const give = () => page.locator("#file").setInputFiles({ name: "other.xlsx", mimeType: "", buffer: readFileSync(path) });
  await give();
  await page.getByRole("dialog").getByText("Open other.xlsx and lose the changes that are not saved?").waitFor();
  await page.getByRole("button", { name: "Cancel" }).click();
  expect(await page.locator("#file-name").innerText()).toBe("Demo workbook");
  await give();
  await page.getByRole("button", { name: "OK" }).click();
  await page.waitForFunction(() => document.querySelector("#file-name")?.textContent === "other.xlsx");
  expect(sheetOf((await saved(page)).document, "Cars")?.cells.get("A40")).toBeUndefined();
  expect(faults).toEqual([]);
  await close();
});

test.each<Look>([
  { width: 1280, colorScheme: "light" }, { width: 1280, colorScheme: "dark" }, { width: 350, colorScheme: "light" }, { width: 350, colorScheme: "dark" },
])("nothing sticks out at $width px, $colorScheme", async ({ width, colorScheme }) => {
  const { page, faults, close } = await openPage({ width, colorScheme });
  for (const part of ["panel", "sheet"]) {
    const choice = page.locator(`#show-${part}`);
    if (await choice.isVisible()) await choice.click();
    await page.locator("#panel .plumbline, #sheet .o-spreadsheet").first().waitFor({ state: "attached" });
    await page.screenshot({ path: `${pictures}page-${String(width)}-${colorScheme}-${part}.png` });
    const size = await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.scrollHeight]);
    expect(size).toEqual([width, 800]);
    expect(faults).toEqual([]);
    expect(await accessibilityFaults(page)).toEqual([]);
    faults.length = 0; // axe tries to add a style sheet of its own, which the page's policy refuses
  }
  await close();
});
