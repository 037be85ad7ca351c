/** npm run pictures: takes the pictures of the documentation from the built page (npm run build) over the demo, on the last day of its history. */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { chromium, type Browser, type Page } from "playwright-core";
import { writeXlsx } from "../src/workbook/xlsx/write";
import { browserArguments, findBrowser } from "./browser";
import { servePage } from "./page-server";
import { withPalette } from "./pictures/palette";
import { pictureFile, scenes, type Scene } from "./pictures/scenes";

const folder = fileURLToPath(new URL("../docs/pictures/", import.meta.url));
const TODAY = "2026-11-20T12:00:00";
const HEIGHT = 820;

const executablePath = findBrowser();
if (executablePath === undefined) {
  console.error("Taking the pictures needs Chromium, Chrome or Edge.");
  process.exitCode = 1;
} else {
  mkdirSync(folder, { recursive: true });
  const server = await servePage(fileURLToPath(new URL("../dist/embedded", import.meta.url)), 0);
  const browser = await chromium.launch({ executablePath, args: [...browserArguments, "--disable-lcd-text"] });
  const wanted = process.argv.slice(2);
  const chosen = scenes.filter(({ name }) => wanted.length === 0 || wanted.includes(name));
  for (const scene of chosen) for (const width of scene.widths) await take(browser, server.address, { scene, width });
  if (wanted.length === 0) removeOld();
  await browser.close();
  await server.close();
}

interface Picture {
  readonly scene: Scene;
  readonly width: number;
}

async function take(browser: Browser, address: string, { scene, width }: Picture): Promise<void> {
  const context = await browser.newContext({ viewport: { width, height: width < 600 ? (scene.height ?? HEIGHT) : HEIGHT }, colorScheme: scene.dark ? "dark" : "light", reducedMotion: "reduce", locale: "en-US", timezoneId: "UTC" });
  const page = await context.newPage();
  await page.clock.setFixedTime(TODAY);
  await page.goto(address);
  await isReady(page);
  if (scene.empty) await openEmpty(page);
  if (width < 600) await page.locator("#show-panel").click();
  if (!scene.empty) await page.locator("#panel").getByText("Up to date.", { exact: false }).waitFor({ state: "attached" });
  await scene.show(page);
  // Parts that come by themselves, and the pointer, must not be in the picture half way.
  await page.mouse.move(0, 0);
  await page.waitForLoadState("networkidle");
  await page.waitForTimeout(600);
  const file = pictureFile(scene.name, width);
  await (width < 600 ? page.locator("#panel") : page).screenshot({ animations: "disabled", caret: "hide" }).then((png) => { writeFileSync(`${folder}${file}`, withPalette(png)); });
  await context.close();
  console.log(`docs/pictures/${file}`);
}

async function isReady(page: Page): Promise<void> {
  await page.waitForSelector('html[data-ready="true"]', { timeout: 30_000 });
}

/** A new workbook with one blank sheet. */
async function openEmpty(page: Page): Promise<void> {
  const buffer = Buffer.from(writeXlsx({ sheets: [{ name: "Sheet1", cells: new Map(), tables: [] }] }));
  await page.locator("#file").setInputFiles({ name: "New workbook.xlsx", mimeType: "", buffer });
  await page.waitForFunction(() => document.querySelector("#file-name")?.textContent === "New workbook.xlsx");
  await isReady(page);
}

/** A picture that no scene makes any more. */
function removeOld(): void {
  const made = new Set(scenes.flatMap(({ name, widths }) => widths.map((width) => pictureFile(name, width))));
  for (const file of readdirSync(folder).filter((name) => name.endsWith(".png") && !made.has(name))) rmSync(`${folder}${file}`);
}
