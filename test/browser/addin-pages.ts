/** The built add-in as its host would serve it, with a script of our choice in place of the platform's. */
import { existsSync, readFileSync } from "node:fs";
import { extname, resolve } from "node:path";
import type { Browser, Page, Route } from "playwright-core";

export const built = resolve(__dirname, "../../dist/addin");

/** The host that the folder was built for, as its manifest says. */
export const origin = new URL(/<SourceLocation DefaultValue="([^"]+)"/.exec(readFileSync(`${built}/manifest.xml`, "utf8"))?.[1] ?? "").origin;

export interface OpenedPage {
  readonly page: Page;
  /** Everything the browser or the page's script complained about. */
  readonly complaints: readonly string[];
}

export interface AddinOpening {
  readonly path: string;
  readonly width?: number;
  readonly dark?: boolean;
}

/** @param hostScript what comes when the page asks for office.js */
export async function openAddin(browser: Browser, hostScript: string, { path, width = 1280, dark = false }: AddinOpening): Promise<OpenedPage> {
  const page = await browser.newPage({ viewport: { width, height: 800 }, colorScheme: dark ? "dark" : "light" });
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  await page.route("**/*", (route) => answer(route, hostScript));
  await page.goto(`${origin}/${path}`, { waitUntil: "load" });
  return { page, complaints };
}

/** The headers of a static host that reads the built header file. */
export const headersFor = (path: string): Readonly<Record<string, string>> => {
  const blocks = readFileSync(`${built}/_headers`, "utf8").split("\n\n").map((block) => block.trimEnd().split("\n"));
  const wanted = blocks.filter(([of]) => of === "/*" || of === path).flatMap(([, ...lines]) => lines.map((line) => line.trim()));
  return Object.fromEntries(wanted.map((line) => [line.slice(0, line.indexOf(":")).toLowerCase(), line.slice(line.indexOf(":") + 1).trim()]));
};

async function answer(route: Route, hostScript: string): Promise<void> {
  const { pathname, origin: asked } = new URL(route.request().url());
  if (pathname.endsWith("/office.js")) return route.fulfill({ contentType: "text/javascript", body: hostScript });
  const file = `${built}${pathname}`;
  if (asked !== origin || !existsSync(file)) return route.fulfill({ status: 404, body: "" });
  return route.fulfill({ headers: { "content-type": contentTypes[extname(file)] ?? "text/plain", ...headersFor(pathname) }, body: readFileSync(file) });
}

const contentTypes: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".png": "image/png",
  ".json": "application/json",
};
