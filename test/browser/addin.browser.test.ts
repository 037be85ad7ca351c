import { existsSync, readFileSync } from "node:fs";
import { extname, resolve } from "node:path";
import { chromium, type Browser, type Page, type Route } from "playwright-core";
import { browserArguments, findBrowser } from "../../scripts/browser";

const built = resolve(__dirname, "../../dist/addin");
const origin = "https://localhost:3000";
const ids = (JSON.parse(readFileSync(`${built}/functions.json`, "utf8")) as { functions: { id: string }[] }).functions.map(({ id }) => id);

/** A host that knows how functions are registered and never says that it is ready, so that the bundle is seen on its own. */
const standInHost = `
  window.associated = {};
  window.CustomFunctions = { associate: (id, run) => { window.associated[id] = typeof run; }, Error: class extends Error {}, ErrorCode: {} };
  window.Office = { onReady: () => new Promise(() => undefined), HostType: { Excel: "Excel" } };
`;

let browser: Browser;
beforeAll(async () => {
  browser = await chromium.launch({ executablePath: findBrowser(), args: [...browserArguments] });
});
afterAll(() => browser.close());

test("the built bundle registers every function of its functions.json, inside its content security policy", async () => {
  const { page, complaints } = await open("taskpane.html");
  const associated = await page.evaluate(() => (window as unknown as { associated: Record<string, string> }).associated);
  expect(associated).toEqual(Object.fromEntries(ids.map((id) => [id, "function"])));
  expect(complaints).toEqual([]);
});

test.each(["functions.html", "support.html"])("%s shows with its style sheet and without complaint", async (name) => {
  const { page, complaints } = await open(name);
  expect(await page.locator("main h1").count()).toBe(1);
  expect(await page.evaluate(() => getComputedStyle(document.body).margin)).toBe("0px");
  expect(complaints).toEqual([]);
});

test("a function's help address leads to its section", async () => {
  const { page } = await open(`functions.html#${ids[0]}`);
  expect(await page.locator("section:target h2").textContent()).toBe(ids[0]);
});

test("the grid library and evaluation of text are not in the bundle", () => {
  const script = readFileSync(`${built}/taskpane.js`, "utf8");
  expect(script).not.toMatch(/o_spreadsheet|o-spreadsheet/);
  expect(script).not.toMatch(/\beval\(/);
});

/** The page as its host would serve it, and everything the browser or its script complained about. */
async function open(path: string): Promise<{ readonly page: Page; readonly complaints: readonly string[] }> {
  const page = await browser.newPage();
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  await page.route("**/*", answer);
  await page.goto(`${origin}/${path}`, { waitUntil: "load" });
  return { page, complaints };
}

async function answer(route: Route): Promise<void> {
  const { pathname, origin: asked } = new URL(route.request().url());
  if (pathname.endsWith("/office.js")) return route.fulfill({ contentType: "text/javascript", body: standInHost });
  const file = `${built}${pathname}`;
  if (asked !== origin || !existsSync(file)) return route.fulfill({ status: 404, body: "" });
  return route.fulfill({ contentType: contentTypes[extname(file)] ?? "text/plain", body: readFileSync(file) });
}

const contentTypes: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".png": "image/png",
  ".json": "application/json",
};
