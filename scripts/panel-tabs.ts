import type { Page } from "playwright-core";
import { places } from "../src/taskpane/places";

/** Turns to a view by its tabs, as a user does: the place first, then the view. */
export async function turnTo(page: Pick<Page, "getByRole">, view: string): Promise<void> {
  const place = places.find(({ views }) => views.some(({ name }) => name === view));
  await page.getByRole("tab", { name: place?.name ?? view, exact: true }).click();
  await page.getByRole("tab", { name: view, exact: true }).click();
}
