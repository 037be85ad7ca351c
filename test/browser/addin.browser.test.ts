import { readdirSync, readFileSync } from "node:fs";
import { chromium, type Browser } from "playwright-core";
import { browserArguments, findBrowser } from "../../scripts/browser";
import { built, headersFor, openAddin, origin, type OpenedPage } from "./addin-pages";

const ids = (JSON.parse(readFileSync(`${built}/functions.json`, "utf8")) as { functions: { id: string }[] }).functions.map(({ id }) => id);

/** A host that knows how functions are registered and never calls back as ready, so that the bundle is seen on its own; whoever waits for it is refused. */
const standInHost = `
  window.associated = {};
  window.run = {};
  window.CustomFunctions = {
    associate: (id, run) => { window.associated[id] = typeof run; window.run[id] = run; },
    Error: class extends Error { constructor(code, message) { super(message); this.code = code; } },
    ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
  };
  window.Office = { onReady: (told) => (told ? new Promise(() => undefined) : Promise.reject(new Error("not ready"))), HostType: { Excel: "Excel" } };
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

test("every part of the program comes and answers, each when it is first asked for", async () => {
  const { page, complaints } = await open("taskpane.html");
  const answers = await page.evaluate(async () => {
    const { run } = window as unknown as { run: Record<string, (...args: unknown[]) => Promise<unknown>> };
    const first = async (id: string, ...args: unknown[]) => ((await run[id]?.(...args)) as unknown[][])[0]?.[0];
    return {
      CATALOG: typeof (await run["CATALOG"]?.([[["Nut"]]]).catch((error: unknown) => String(error))),
      THREAD: await first("THREAD", 0.3705, 24, "in", null),
      VALVEOUT: await run["VALVEOUT"]?.(800, 400, 0.5, null, null, null, null),
      BURST: await first("BURST", 0.1875, 0.028, 25000, 4, null),
      FORECAST: await first("FORECAST", [[0], [2], [0], [4]], null, null, null),
      QUOTE: await run["QUOTE"]?.([["Car"]], [["A"]], "no key").catch((error: unknown) => (error as { code: string }).code),
    };
  });
  expect(answers).toEqual({ CATALOG: "string", THREAD: "Thread", VALVEOUT: 600, BURST: "Formula", FORECAST: "Method", QUOTE: "#N/A" });
  expect(complaints).toEqual([]);
});

test("a part that cannot be reached answers #N/A and says what to do; the next calculation asks for it again", async () => {
  const { page } = await open("taskpane.html");
  const forecast = () => page.evaluate(async () => {
    const { run } = window as unknown as { run: Record<string, (...args: unknown[]) => Promise<unknown[][]>> };
    return run["FORECAST"]?.([[0], [2], [0], [4]], null, null, null).then((rows) => rows[0]?.[0], (error: unknown) => [(error as { code: string }).code, (error as Error).message]);
  });
  await page.route("**/stock.js", (route) => route.abort());
  expect(await forecast()).toEqual(["#N/A", expect.stringContaining("recalculate this cell") as string]);
  await page.unroute("**/stock.js");
  expect(await forecast()).toBe("Method");
});

test("the distributions come with stock only, and once", () => {
  const sources = (name: string): readonly string[] => (JSON.parse(readFileSync(`${built}/${name}.js.map`, "utf8")) as { sources: string[] }).sources;
  const bring = (name: string): boolean => sources(name).some((source) => source.includes("@stdlib"));
  const names = readdirSync(built).flatMap((file) => (file.endsWith(".js") ? [file.slice(0, -3)] : []));
  expect(names.filter(bring)).toHaveLength(1);
  expect(["taskpane", "trade", "cars", "threads", "quotes", "physics", "workshop", "panel"].filter(bring)).toEqual([]);
});

test.each(["functions.html", "support.html", "privacy.html"])("%s shows with its style sheet and without complaint", async (name) => {
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
  for (const file of readdirSync(built).filter((name) => name.endsWith(".js"))) {
    const script = readFileSync(`${built}/${file}`, "utf8");
    expect([file, script.match(/o_spreadsheet|o-spreadsheet|\beval\(/)?.[0]]).toEqual([file, undefined]);
  }
});

test("every address in the folder is of the one host, the platform's script apart", () => {
  const texts = readdirSync(built).filter((name) => /\.(html|css|json|xml|js)$/.test(name)).map((name) => [name, readFileSync(`${built}/${name}`, "utf8")] as const);
  const addresses = texts.flatMap(([name, text]) => [...text.matchAll(/https?:\/\/[\w.-]+(?::\d+)?/g)].map(([address]) => ({ name, address })));
  const others = addresses.filter(({ address }) => address !== origin && !isNamespace(address));
  // The one outside script, in the one page that needs it, named as a source and as an address.
  expect(others.map(({ name, address }) => [name, address])).toEqual(Array.from({ length: 2 }, () => ["taskpane.html", expect.stringMatching(/^https:\/\/appsforoffice\./) as string]));
  expect(addresses.filter(({ name, address }) => name === "manifest.xml" && address === origin).length).toBeGreaterThan(8);
});

/** Names of XML vocabularies look like addresses, and nothing is fetched from them. */
const isNamespace = (address: string): boolean => /^http:\/\/(schemas\.microsoft\.com|schemas\.openxmlformats\.org|www\.w3\.org)$/.test(address);

test("the header file gives each page its own policy, and lets Excel on the web read the list of functions", () => {
  for (const name of readdirSync(built).filter((each) => each.endsWith(".html"))) {
    const { "content-security-policy": policy = "" } = headersFor(`/${name}`);
    expect([name, readFileSync(`${built}/${name}`, "utf8").includes(`content="${policy}"`), policy]).toEqual([name, true, expect.stringMatching(/^default-src 'none'; (?!.*unsafe)/) as string]);
  }
  expect(headersFor("/functions.json")).toMatchObject({ "access-control-allow-origin": "*", "cache-control": "no-cache", "x-content-type-options": "nosniff" });
  expect(headersFor("/taskpane.js")).not.toHaveProperty("access-control-allow-origin");
});

test("icons of all five sizes are there", () => {
  const sizes = readdirSync(`${built}/assets`).map((name) => [name, readFileSync(`${built}/assets/${name}`).readUInt32BE(16)]);
  expect(Object.fromEntries(sizes)).toEqual({ "icon-16.png": 16, "icon-32.png": 32, "icon-64.png": 64, "icon-80.png": 80, "icon-128.png": 128 });
});

const open = (path: string): Promise<OpenedPage> => openAddin(browser, standInHost, { path });
