/** What holds for every view of the panel; a view that is added to the list is tested here without a word. */
import type { Page } from "playwright-core";
import { places } from "../../src/taskpane/places";
import { panelPages, turnTo, violations } from "./panel-pages";

const { open } = panelPages();
const views = places.flatMap((place) => place.views.map(({ id, name }) => ({ id, name })));

describe.each(["light", "dark", "forced colours"] as const)("in %s", (theme) => {
  test.each(views)("axe finds nothing on the view $name", async ({ id, name }) => {
    const page = await open({ theme });
    await turnToLoaded(page, id, name);
    expect(await violations(page)).toEqual([]);
  });
});

test.each([320, 350, 1280])("no view is wider than a page of %d pixels", async (width) => {
  const page = await open({ width });
  for (const { id, name } of views) {
    await turnToLoaded(page, id, name);
    expect({ name, width: await page.evaluate(() => document.documentElement.scrollWidth) }).toEqual({ name, width });
  }
});

/** Turns to a view and waits until it has come. */
async function turnToLoaded(page: Page, id: string, name: string): Promise<void> {
  await turnTo(page, name);
  await page.locator(`#view-${id} .slot:not(.slot--loading)`).waitFor();
  await page.locator(`#view-${id}`).getByText("Opening").waitFor({ state: "detached" });
}
