/** Types into cells of the local page as a hand does. */
import type { Page } from "playwright-core";

/**
 * Types into the selected cell and leaves it open.
 * The first key opens the cell, and keys that come before it is open are lost: so the rest waits until it shows the first, and whoever ends it waits for the last.
 */
export async function typeText(page: Page, text: string): Promise<void> {
  if (text === "") return;
  await page.waitForFunction(() => document.activeElement?.closest(".o-grid") !== null);
  await page.keyboard.type(text.slice(0, 1));
  await isTyped(page, text.slice(0, 1));
  await page.keyboard.type(text.slice(1), { delay: 10 });
  await isTyped(page, text);
}

const isTyped = async (page: Page, text: string): Promise<void> => {
  await page.waitForFunction((typed) => document.activeElement?.classList.contains("o-composer") === true && document.activeElement.textContent.startsWith(typed), text);
};
