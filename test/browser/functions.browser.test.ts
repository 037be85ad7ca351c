/** The reference of the worksheet functions in the panel. */
import described from "../../src/functions/functions.json";
import { panelPages, turnTo, violations } from "./panel-pages";

const { open } = panelPages();

test("every worksheet function stands in one family, with its arguments and an example", async () => {
  const page = await open();
  await turnTo(page, "Functions");
  await page.locator(".function").first().waitFor();
  const ids = await page.locator(".function").evaluateAll((cards) => cards.map((card) => (card as HTMLElement).dataset["function"] ?? ""));
  expect([...ids].sort()).toEqual(described.functions.map(({ id }) => id).sort());
  const thread = page.locator(".function[data-function=THREAD]");
  await thread.locator("summary").click();
  expect(await thread.locator(".function__formula").allTextContents()).toEqual(["=PLUMB.THREAD(diameter, [pitch], [unit], [gender])", '=PLUMB.THREAD(0.3705, 24, "in")']);
  expect(await thread.locator("dt").allTextContents()).toEqual(["diameter", "pitch", "unit", "gender"]);
  expect(await violations(page)).toEqual([]);
});

test("the search finds a function by what it does", async () => {
  const page = await open();
  await turnTo(page, "Functions");
  await page.getByRole("searchbox", { name: "Search the functions" }).fill("caliper");
  expect(await page.locator(".function:visible").evaluateAll((cards) => cards.map((card) => (card as HTMLElement).dataset["function"]))).toEqual(["THREAD"]);
  await page.getByRole("searchbox", { name: "Search the functions" }).fill("no such thing");
  expect(await page.locator(".functions-view .nothing").textContent()).toBe("No function fits these words.");
});

test("an example goes into the selected blank cell, and a cell that is taken is left alone", async () => {
  const page = await open();
  await turnTo(page, "Functions");
  const pedal = page.locator(".function[data-function=PEDAL]");
  await pedal.locator("summary").click();
  await page.evaluate(() => { window.workbook.select({ sheet: "Sheet9", address: "B2" }); });
  await pedal.getByRole("button").click();
  await pedal.getByText("It stands in Sheet9!B2.").waitFor();
  expect(await page.evaluate(() => [...window.workbook.formulas])).toEqual([["Sheet9!B2", "=PLUMB.PEDAL(100, 6, 1)"]]);
  await page.evaluate(() => { window.workbook.select({ table: "Cars", row: 0, column: "Car" }); });
  await pedal.getByRole("button").click();
  await page.getByRole("alert").filter({ hasText: "The selected cell is in a table" }).waitFor();
});
