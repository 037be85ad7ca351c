import { mkdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import axe from "axe-core";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { browserArguments, findBrowser } from "../../scripts/browser";
import { type PageServer, servePage } from "../../scripts/page-server";
import { readXlsx } from "../../src/workbook/xlsx/read";
import { goTo, typeCells } from "./workbook-pages";

const pictures = resolve(__dirname, "../../test-output");
let server: PageServer;
let browser: Browser;
beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  server = await servePage(resolve(__dirname, "../../dist/embedded"), 0);
  browser = await chromium.launch({ executablePath: findBrowser(), args: [...browserArguments] });
});
afterEach(() => Promise.all(browser.contexts().map((context) => context.close())));
afterAll(async () => {
  await browser.close();
  await server.close();
});

const faults: string[] = [];
afterEach(() => { expect(faults.splice(0)).toEqual([]); });

async function openIn(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  page.on("pageerror", (error) => faults.push(String(error)));
  page.on("console", (message) => { if (message.type() === "error") faults.push(message.text()); });
  page.on("dialog", (dialog) => void dialog.accept());
  await page.goto(server.address);
  await isReady(page);
  return page;
}

const newContext = (look: { readonly width?: number; readonly dark?: boolean } = {}): Promise<BrowserContext> => browser.newContext({ viewport: { width: look.width ?? 1280, height: 800 }, colorScheme: look.dark ? "dark" : "light" });
const isReady = (page: Page) => page.waitForSelector('html[data-ready="true"]', { timeout: 30_000 });

async function type(page: Page, address: string, text: string): Promise<void> {
  await goTo(page, address);
  await typeCells(page, [text]);
}

/** How many workbooks the browser keeps for the page. */
const kept = (page: Page): Promise<number> => page.evaluate(() => new Promise<number>((done, failed) => {
  const opening = indexedDB.open("plumbline");
  opening.onerror = () => { failed(new Error("The database did not open.")); };
  opening.onsuccess = () => {
    const database = opening.result;
    if (!database.objectStoreNames.contains("sessions-1")) { done(0); return; }
    const counting = database.transaction("sessions-1").objectStore("sessions-1").count();
    counting.onsuccess = () => { database.close(); done(counting.result); };
  };
}));
const becomes = (page: Page, count: number): Promise<void> => until(async () => (await kept(page)) === count);

/** Throws when it does not come true in ten seconds. */
async function until(isTrue: () => Promise<boolean> | boolean): Promise<void> {
  const end = performance.now() + 10_000;
  while (!(await isTrue())) {
    if (performance.now() > end) throw new Error("It did not come about in ten seconds.");
    await new Promise((resume) => { setTimeout(resume, 50); });
  }
}

async function savedCell(page: Page, sheet: string, address: string): Promise<unknown> {
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save" }).click()]);
  return readXlsx(readFileSync(await download.path())).sheets.find(({ name }) => name === sheet)?.cells.get(address)?.value;
}

test("a change that was not saved is offered after a reload, opened on a click only, and forgotten once saved", async () => {
  const page = await openIn(await newContext());
  await type(page, "A40", "=1+1&\"mine\"");
  await becomes(page, 1);
  await page.reload();
  await isReady(page);
  const offer = page.getByRole("region", { name: "Kept from before" });
  await offer.getByText("Demo workbook had changes that were not saved").waitFor();
  expect(await page.locator("#file-name").innerText()).toBe("Demo workbook");
  await offer.getByRole("button", { name: "Open it" }).click();
  await offer.waitFor({ state: "hidden" });
  expect(await kept(page)).toBe(1);
  expect(await savedCell(page, "Cars", "A40")).toBe("2mine");
  await becomes(page, 0);
});

test("what is thrown away is gone, and the page that was opened is as it was", async () => {
  const page = await openIn(await newContext());
  await type(page, "A40", "mine");
  await becomes(page, 1);
  await page.reload();
  await isReady(page);
  await page.getByRole("button", { name: "Throw it away" }).click();
  await becomes(page, 0);
  expect(await savedCell(page, "Cars", "A40")).toBeUndefined();
});

test("a page that is still open is not offered to another, and one that closed in the middle of an edit is", async () => {
  const context = await newContext();
  const first = await openIn(context);
  await type(first, "A40", "of the first");
  await becomes(first, 1);
  const second = await openIn(context);
  expect(await second.locator("#kept").isVisible()).toBe(false);
  await type(first, "A41", "just before it closed");
  await first.close({ runBeforeUnload: true });
  await until(() => context.pages().length === 1);
  await second.reload();
  await isReady(second);
  await second.getByRole("button", { name: "Open it" }).click();
  await second.locator("#kept").waitFor({ state: "hidden" });
  expect(await savedCell(second, "Cars", "A41")).toBe("just before it closed");
});

test("a browser that keeps nothing says so once, and the page goes on", async () => {
  const context = await newContext();
  await context.addInitScript(() => {
    IDBObjectStore.prototype.put = () => { throw new DOMException("full", "QuotaExceededError"); };
  });
  const page = await openIn(context);
  await type(page, "A40", "mine");
  await page.getByRole("dialog").getByText("The browser has no room left for this page").waitFor();
  await page.getByRole("button", { name: "OK" }).click();
  await type(page, "A41", "more");
  await page.waitForTimeout(2500);
  expect(await page.getByRole("dialog").isVisible()).toBe(false);
  expect(await savedCell(page, "Cars", "A41")).toBe("more");
});

test.each([[1280, false], [1280, true], [350, false], [350, true]])("the offer fits a page of %d pixels, dark: %p", async (width, dark) => {
  const page = await openIn(await newContext({ width, dark }));
  await type(page, "A40", "mine");
  await becomes(page, 1);
  await page.reload();
  await isReady(page);
  await page.locator("#kept").waitFor();
  await page.screenshot({ path: `${pictures}/kept-${String(width)}-${dark ? "dark" : "light"}.png` });
  expect(await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.scrollHeight])).toEqual([width, 800]);
  expect(faults).toEqual([]);
  const { violations } = await page.evaluate<axe.AxeResults>(`${axe.source}; axe.run({ exclude: ["#sheet"] })`);
  expect(violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`))).toEqual([]);
  faults.length = 0; // axe tries to add a style sheet of its own, which the page's policy refuses
});
