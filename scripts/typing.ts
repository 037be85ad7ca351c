/** Types into cells of the local page as a hand does. */
import type { Page } from "playwright-core";

/** Types into the selected cell, as fast as the keys go, and leaves it open; whoever ends it waits until all is shown. */
export async function typeText(page: Page, text: string): Promise<void> {
  if (text === "") return;
  await page.waitForFunction(() => document.activeElement?.closest(".o-grid") !== null);
  await page.keyboard.type(text);
  await page.waitForFunction((typed) => document.activeElement?.classList.contains("active") === true && document.activeElement.textContent === typed, text);
}
