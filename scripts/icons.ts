// npm run icons: draws assets/icon.svg as the PNG files that the manifest names.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { chromium, type Browser } from "playwright-core";
import { browserArguments, findBrowser } from "./browser";

const assets = fileURLToPath(new URL("../assets/", import.meta.url));
const sizes = [16, 32, 64, 80, 128];

const executablePath = findBrowser();
if (executablePath) {
  const browser = await chromium.launch({ executablePath, args: [...browserArguments] });
  for (const size of sizes) await draw(browser, size);
  await browser.close();
} else {
  console.error("Drawing the icons needs Chromium, Chrome or Edge.");
  process.exitCode = 1;
}

async function draw(browser: Browser, size: number): Promise<void> {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  // Below 32 pixels the thin lines of the full drawing run together, so the small one has a drawing of its own.
  const drawing = readFileSync(`${assets}${size < 32 ? "icon-small.svg" : "icon.svg"}`, "utf8");
  await page.setContent(`<style>body{margin:0}svg{display:block;width:${size}px;height:${size}px}</style>${drawing}`);
  await page.screenshot({ path: `${assets}icon-${size}.png`, omitBackground: true });
  await page.close();
}
