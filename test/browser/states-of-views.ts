/** What each view may look like: the states that every test of its looks goes through, one after the other on one page. */
import type { Page } from "playwright-core";

export interface ViewState {
  readonly name: string;
  readonly reach: (page: Page) => Promise<unknown>;
}

const state = (name: string, reach: ViewState["reach"]): ViewState => ({ name, reach });
const plain = (name: string): ViewState => state(name, () => Promise.resolve());

/** By the id of the view, over the demo with Car 12 chosen. */
export const statesOfViews: Readonly<Record<string, readonly ViewState[]>> = {
  cars: [plain("all cars, one chosen"), state("no car fits", (page) => search(page, "no such car"))],
  flags: [
    state("a table that cannot be used on top", async (page) => { await edit(page, ["Ports", 2, "Thread", "9/16-19x"]); await page.locator(".notice").waitFor(); }),
    state("by fault", (page) => page.getByText("By fault").click()),
  ],
  questions: [
    plain("nothing open"),
    state("open questions", (page) => goTo(page, 25, ".question")),
    state("of all cars", (page) => page.locator(".questions-view").getByText("All cars").click()),
  ],
  drawing: [
    state("picked and zoomed", async (page) => { await page.getByRole("button", { name: "Larger" }).click(); await page.locator(".sketch__tag").first().click(); }),
    state("lines that cannot be drawn", (page) => goTo(page, 22, ".drawing__note:not(:empty)")),
  ],
  balance: [
    state("rears that lock first", (page) => goTo(page, 27, ".balance__order")),
    state("figures that are missing", (page) => goTo(page, 23, ".gaps")),
    state("no lines", (page) => goTo(page, 15, ".balance__note:not(:empty)")),
  ],
  quote: [
    plain("one car"),
    state("on hold", (page) => goTo(page, 13, ".hold")),
    state("ticked cars of two customers", async (page) => {
      await page.getByText("Ticked cars").click();
      for (const index of [1, 2]) await page.locator(".ticks__box").nth(index).check();
      await page.locator(".quote-form__refused:not(:empty)").waitFor();
    }),
  ],
  tube: [state("all cars, cuts planned", (page) => page.locator(".stick").first().waitFor()), state("one car", (page) => page.locator(".tube-view").getByText("One car").click())],
  stock: [
    state("tubes to order, one open", (page) => page.locator(".stock-view summary").first().click()),
    state("no usage", async (page) => {
      await page.evaluate(() => { for (const name of ["Usage", "Pipeline"]) window.workbook.deleteTable(name); });
      await page.getByText("There is no usage yet").waitFor();
    }),
  ],
  settings: [
    state("a value refused", async (page) => {
      await search(page, "saw kerf");
      await page.locator("#setting-saw-kerf").fill("-1");
      await page.locator(".setting", { has: page.locator("#setting-saw-kerf") }).getByRole("button", { name: "Write into the sheet" }).click();
      await page.getByRole("alert").filter({ hasText: "was not written" }).waitFor();
      await search(page, "");
    }),
  ],
  functions: [state("an example refused", async (page) => {
    await page.evaluate(() => { window.workbook.select({ table: "Cars", row: 0, column: "Car" }); });
    await page.locator(".function summary").first().click();
    await page.locator(".function").first().getByRole("button").first().click();
    await page.getByRole("alert").filter({ hasText: "in a table" }).waitFor();
  })],
};

/** The last state of every view: a fault in it, and everything open that opens, as all groups of settings. */
export const faulted = state("a fault, and all that opens open", async (page) => {
  await page.evaluate(() => { window.dispatchEvent(new ErrorEvent("error", { error: new Error("made for a test") })); });
  await page.locator(".failure:visible").waitFor();
  await page.evaluate(() => { for (const details of document.querySelectorAll("details")) details.open = true; });
});

const search = (page: Page, words: string): Promise<void> => page.locator("[type=search]:visible").fill(words);
const edit = (page: Page, cell: readonly [string, number, string, string]): Promise<void> => page.evaluate(([table, row, column, value]) => { window.workbook.edit(table, row, column, value); }, cell);

/** The panel follows the user to a car's row. */
async function goTo(page: Page, car: number, until: string): Promise<void> {
  await page.evaluate((row) => { window.workbook.select({ table: "Cars", row, column: "Car" }); }, car - 1);
  await page.locator(".car-bar__car:visible", { hasText: new RegExp(`^Car ${String(car)}$`) }).waitFor();
  await page.locator(until).first().waitFor();
}
