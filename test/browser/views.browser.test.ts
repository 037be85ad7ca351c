/** What holds for every view of the panel in every state; a view that is added to the list is tested here once its states are named. */
import type { Page } from "playwright-core";
import { places } from "../../src/taskpane/places";
import { unseenFocus } from "./focus-marks";
import { looks, panelPages, putOn, turnTo, violations } from "./panel-pages";
import { faulted, statesOfViews } from "./states-of-views";

const { open, pardon } = panelPages();
const views = places.flatMap((place) => place.views.map(({ id, name }) => ({ id, name })));
const ofCar12 = { "plumbline view": "cars", "plumbline car": JSON.stringify({ table: "Cars", row: 11, name: "Car 12" }) };

test("every view has its states", () => expect(Object.keys(statesOfViews)).toEqual(views.map(({ id }) => id)));

test.each(views)("axe finds nothing on the view $name, and every focus is seen, in any state, light, dark and in forced colours", async ({ id, name }) => {
  const page = await open({ remembered: ofCar12, waitFor: ".car" });
  pardon(/made for a test/);
  await turnToLoaded(page, id, name);
  for (const state of [...(statesOfViews[id] ?? []), faulted]) {
    await state.reach(page);
    for (const look of looks) {
      await putOn(page, look);
      // The mark is one rule for all: what takes the focus in each state is tried in one look, and what takes it at last in all.
      const unseen = look === "light" || state === faulted ? await unseenFocus(page) : [];
      expect({ state: state.name, look, found: [...await violations(page), ...unseen] }).toEqual({ state: state.name, look, found: [] });
    }
  }
}, 120_000);

test.each([["nothing", ".empty"], ["no cars", ".empty"]])("axe finds nothing, and every focus is seen, where the workbook holds %s, in every look", async (book, waitFor) => {
  const page = await open({ book, waitFor });
  for (const look of looks) {
    await putOn(page, look);
    expect({ look, found: [...await violations(page), ...await unseenFocus(page)] }).toEqual({ look, found: [] });
  }
});

test("every view is reached and read by the keyboard alone", async () => {
  const page = await open({ remembered: ofCar12, waitFor: ".car" });
  const reached: string[] = [];
  await page.keyboard.press("Tab");
  for (const place of places) {
    await page.keyboard.press("Tab");
    for (const view of place.views) {
      reached.push((await page.locator("[role=tabpanel]:visible [role=tab][aria-selected=true]").textContent()) ?? "");
      await page.locator(`#view-${view.id} .slot:not(.slot--loading)`).waitFor();
      if (view !== place.views.at(-1)) await page.keyboard.press("ArrowRight");
    }
    await page.keyboard.press("Shift+Tab");
    await page.keyboard.press("ArrowRight");
  }
  expect(reached).toEqual(views.map(({ name }) => name));
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
