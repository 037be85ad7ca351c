/** Answers written from the phone script and taken back, and flags grouped by fault. */
import type { Page } from "playwright-core";
import { panelPages, turnTo, violations } from "./panel-pages";

const { open } = panelPages();

const cell = (page: Page, car: string, column: string): Promise<unknown> => page.evaluate(async ([name, heading]) => {
  const table = await window.workbook.readTable("Cars");
  return table?.rows.find(([first]) => first === name)?.[table.headings.indexOf(heading ?? "")];
}, [car, column]);

const chooseQuestions = async (page: Page, car: string): Promise<void> => {
  await turnTo(page, "Cars");
  await page.getByRole("button", { name: car, exact: true }).first().click();
  await turnTo(page, "Questions");
};

test("a click on an answer writes it into the car's row, the list follows, and the answer can be taken back", async () => {
  const page = await open();
  await chooseQuestions(page, "Car 25");
  const before = await page.locator(".question").count();
  const held = await cell(page, "Car 25", "Valves");
  await page.getByRole("button", { name: /^CV-L/ }).click();
  await page.waitForFunction((count) => document.querySelectorAll(".question").length !== count, before);
  expect(await cell(page, "Car 25", "Valves")).toBe("CV-L");
  expect(await page.locator(".undo-answer").textContent()).toContain("Valves of Car 25 is now CV-L.");
  expect(await violations(page)).toEqual([]);
  await page.getByRole("button", { name: "Take it back" }).click();
  await page.waitForFunction((count) => document.querySelectorAll(".question").length === count, before);
  expect(await cell(page, "Car 25", "Valves")).toBe(held);
  expect(await page.locator(".undo-answer").isHidden()).toBe(true);
});

test("an answer that only narrows a cell down is not offered as a click", async () => {
  const page = await open();
  await chooseQuestions(page, "Car 25");
  const years = page.locator(".answer").filter({ hasText: /\d{4}–\d{4}/ });
  expect(await years.count()).toBeGreaterThan(0);
  expect(await page.getByRole("button", { name: /\d{4}–\d{4}/ }).count()).toBe(0);
});

test("when the cell cannot be written the panel says so and stays as it was", async () => {
  const page = await open();
  await chooseQuestions(page, "Car 25");
  await page.evaluate(() => { window.workbook.writeTableCell = () => Promise.reject(new Error("The sheet is protected.")); });
  await page.getByRole("button", { name: /^CV-L/ }).click();
  await page.getByText("Valves was not written. The sheet is protected.").waitFor();
  expect(await page.locator(".undo-answer").isHidden()).toBe(true);
});

test.each(["light", "dark", "forced colours"] as const)("grouped by fault, each code is one card with its cars, and axe finds nothing in %s", async (theme) => {
  const page = await open({ theme });
  await page.getByText("By fault").click();
  expect(await page.locator(".card__head").allTextContents()).toEqual(expect.arrayContaining(["metering doubled", "seat mismatch", "data missing"]));
  expect(await violations(page)).toEqual([]);
});

test("a click on a flag selects the cell at fault, by car and by fault", async () => {
  const page = await open();
  const selection = (): Promise<unknown> => page.evaluate(() => window.workbook.selected);
  await page.locator(".flag[data-code=metering-doubled] .flag__says").first().click();
  await page.waitForFunction(() => window.workbook.selected !== undefined);
  expect(await selection()).toEqual({ table: "Cars", row: 11, column: "Valves" });
  await page.getByText("By fault").click();
  await page.locator(".card").filter({ hasText: "seat mismatch" }).getByRole("button").first().click();
  await page.waitForFunction(() => window.workbook.selected?.row === 16);
  expect(await selection()).toEqual({ table: "Cars", row: 16 });
});
