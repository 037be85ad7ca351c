/** The panel alone in a browser, under a policy as strict as the add-in's own page. */
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { basename, join } from "node:path";
import axe from "axe-core";
import { build } from "esbuild";
import { chromium, type Browser, type Page } from "playwright-core";
import { browserArguments, findBrowser } from "../../scripts/browser";
import { readStyleSheet } from "../../scripts/style-sheet";

export { turnTo } from "../../scripts/panel-tabs";

export interface Opening {
  readonly theme?: "light" | "dark" | "forced colours";
  readonly width?: number;
  /** The language and country of the browser. */
  readonly locale?: string;
  readonly book?: string | undefined;
  /** Name of the workbook. */
  readonly name?: string;
  readonly failing?: boolean;
  readonly shadow?: boolean;
  /** Remembered from before, as by a panel that was open in this window; the flags are in sight unless it says otherwise. */
  readonly remembered?: Readonly<Record<string, string>>;
  readonly waitFor?: string | undefined;
}

const stylesheet = readStyleSheet(join(__dirname, "../../src/taskpane/panel.css")).text;
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src data:; connect-src 'self'; base-uri 'none'; form-action 'none'";
const markup = `<!doctype html><html lang="en" class="plumbline-page"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">
<title>Panel</title><link rel="icon" href="data:,"></head><body><main id="panel"></main><script type="module" src="panel-page.js"></script></body></html>`;

/**
 * Starts one browser for the tests of a file, and closes every page after each.
 * A complaint of the browser or the page, the policy's among them, fails the test that caused it, unless the test pardoned it.
 */
export function panelPages(): { readonly open: (opening?: Opening) => Promise<Page>; readonly pardon: (complaint: RegExp) => void } {
  let browser: Browser;
  let server: Server;
  let address: string;
  let complaints: string[] = [];
  let pardoned: RegExp[] = [];
  beforeAll(async () => {
    server = await serve();
    address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
    browser = await chromium.launch({ executablePath: findBrowser(), args: [...browserArguments] });
  });
  afterEach(async () => {
    await Promise.all(browser.contexts().map((context) => context.close()));
    const heard = complaints.filter((text) => !pardoned.some((one) => one.test(text)));
    [complaints, pardoned] = [[], []];
    expect(heard).toEqual([]);
  });
  afterAll(async () => {
    await browser.close();
    await new Promise((closed) => { server.close(closed); });
  });
  return {
    pardon: (complaint) => void pardoned.push(complaint),
    open: async ({ theme = "light", width = 350, locale = "en-US", book = "demo", name = "Workbook", failing = false, shadow = false, remembered, waitFor = ".card" } = {}) => {
      const context = await browser.newContext({ locale, viewport: { width, height: 800 }, colorScheme: theme === "dark" ? "dark" : "light", forcedColors: theme === "forced colours" ? "active" : "none" });
      const page = await context.newPage();
      page.on("pageerror", ({ message }) => complaints.push(message));
      page.on("console", (message) => { if (message.type() === "error") complaints.push(message.text()); });
      await page.addInitScript((kept) => { for (const [key, value] of Object.entries(kept)) if (localStorage.getItem(key) === null) localStorage.setItem(key, value); }, keysOf(remembered ?? { "plumbline view": "flags" }));
      await page.addInitScript(markFirstCard);
      const query = new URLSearchParams({ book, name, ...(failing && { failing: "" }), ...(shadow && { shadow: "" }) });
      await page.goto(`${address}?${query.toString()}`);
      await page.locator(waitFor).first().waitFor();
      return page;
    },
  };
}

/** Choices are kept under the name of the workbook; the one in memory is called Workbook. */
const keysOf = (remembered: Readonly<Record<string, string>>): Record<string, string> => Object.fromEntries(Object.entries(remembered).map(([key, value]) => [key.replace(/^plumbline /, "plumbline Workbook "), value]));

/** For the time from opening to a panel that is filled. */
function markFirstCard(): void {
  new MutationObserver((_, observer) => {
    if (!document.querySelector(".views:not([hidden]) :is(.card, .car)")) return;
    observer.disconnect();
    performance.mark("first card");
  }).observe(document, { childList: true, subtree: true, attributes: true });
}

/** One script: asking this server for the panel's parts one by one takes longer than reading what is not needed yet. */
async function serve(): Promise<Server> {
  const bundle = await build({ entryPoints: [join(__dirname, "panel-page.ts")], bundle: true, write: false, format: "esm", minify: true, outdir: "/", target: "es2022" });
  const scripts = bundle.outputFiles.map(({ path, text }): [string, [string, string]] => [`/${basename(path)}`, ["text/javascript", text]]);
  // The panel asks for its worker beside its own script, under the name of the source file; the build of the add-in renames both.
  const worker = await build({ entryPoints: [join(__dirname, "../../src/taskpane/bench/cut-plan-worker.ts")], bundle: true, write: false, format: "iife", target: "es2022" });
  const files = new Map<string, readonly [string, string]>([["/", ["text/html", markup]], ...scripts, ["/cut-plan-worker.ts", ["text/javascript", worker.outputFiles[0]?.text ?? ""]], ["/panel.css", ["text/css", stylesheet]]]);
  const server = createServer((request, response) => {
    const [type, text] = files.get(new URL(request.url ?? "/", "http://panel").pathname) ?? ["", ""];
    response.writeHead(type ? 200 : 404, { "content-type": `${type}; charset=utf-8`, "content-security-policy": policy }).end(text);
  });
  await new Promise<void>((listening) => { server.listen(0, "127.0.0.1", listening); });
  return server;
}

export const looks = ["light", "dark", "forced colours"] as const;

/** Gives a page another look without opening it again; what moves is at rest at once. */
export const putOn = (page: Page, look: (typeof looks)[number]): Promise<void> =>
  page.emulateMedia({ colorScheme: look === "dark" ? "dark" : "light", forcedColors: look === "forced colours" ? "active" : "none", reducedMotion: "reduce" });

/** Every rule of axe, its best practices included, as sentences that name the element. */
export async function violations(page: Page): Promise<readonly string[]> {
  if (!await page.evaluate(() => "axe" in window)) await page.evaluate(axe.source);
  const found = await page.evaluate<axe.AxeResults>(`axe.run(document, { resultTypes: ["violations"] })`);
  expect(found.passes.length).toBeGreaterThan(10);
  return found.violations.flatMap(({ id, nodes }) => nodes.map(({ html, failureSummary }) => `${id}: ${html} ${failureSummary ?? ""}`));
}
