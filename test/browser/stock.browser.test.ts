/** The Stock view over the invented shop, on the last day of its history. */
import type { Page } from "playwright-core";
import { panelPages, turnTo, violations, type Opening } from "./panel-pages";

jest.setTimeout(60_000);
const { open } = panelPages();

/** The last day of the demo's history. */
const LAST_DAY = "2026-11-20T12:00:00";

async function openStock(opening: Opening = {}): Promise<Page> {
  const page = await open(opening);
  await page.clock.setFixedTime(LAST_DAY);
  await turnTo(page, "Stock");
  await page.locator(".stock-view .tally").filter({ hasText: /./ }).waitFor();
  return page;
}

const cardOf = (page: Page, name: string) => page.locator(".stock-card").filter({ has: page.getByRole("heading", { name: new RegExp(`^${name}`) }) });

test("says today, what to order and what it costs; what is to be ordered stands first", async () => {
  const page = await openStock();
  const summary = await page.locator(".stock-view .tally").textContent();
  expect(summary).toMatch(/^Today, .*20.*2026: order \d+ tubes, [\d.,]+ USD\.$/);
  const orders = await page.locator(".stock-card").evaluateAll((cards) => cards.map((card) => card.getAttribute("data-orders")));
  expect(orders.lastIndexOf("yes")).toBe(Number(/order (\d+)/.exec(summary ?? "")?.[1]) - 1);
  expect(orders.length).toBe(9);
});

test("a card holds stock, cover, the day it runs out, a chart and where its lengths would be cut from", async () => {
  const page = await openStock();
  const card = cardOf(page, "Mild steel 3/16 in");
  // 3 coils of 300 in and 30 sticks of 60 in: 225 ft; 5 coils to come: 125 ft.
  expect((await card.locator("dd").allTextContents()).slice(0, 2)).toEqual(["225.0 ft", "125.0 ft"]);
  expect(await card.locator(".stock-chart__used").count()).toBeGreaterThan(15);
  expect(await card.locator(".stock-chart__quotes").count()).toBeGreaterThan(1);
  expect(await card.textContent()).toContain("If every open quote came in: ");
  // A quote that names nobody's car is told of, and the others count.
  expect(await page.locator(".stock-view .notice").textContent()).toContain("Quote Q-107: no row of the cars is named Car 99");
});

test("an edit of the rack changes its card; what does not touch the rack leaves it alone", async () => {
  const page = await openStock();
  const card = cardOf(page, "Stainless 5/16 in");
  expect(await card.locator("dd").first().textContent()).toBe("24.0 ft");
  await page.evaluate(() => { window.workbook.edit("Tube", 7, "On hand", 8); });
  await card.getByText("48.0 ft").first().waitFor();
});

test("one click writes the purchase list and says where", async () => {
  const page = await openStock();
  await page.getByRole("button", { name: "Write the purchase list" }).click();
  await page.getByText("Written to the new sheet Purchase list. One undo takes it back.").waitFor();
});

test("without usage it says what is missing and orders nothing", async () => {
  const page = await openStock();
  await page.evaluate(() => { for (const name of ["Usage", "Pipeline"]) window.workbook.deleteTable(name); });
  await page.getByText("There is no usage yet").waitFor();
  expect(await page.getByRole("button", { name: "Write the purchase list" }).isDisabled()).toBe(true);
  expect(await page.locator(".stock-view .tally").textContent()).toMatch(/: no usage yet, so no order can be advised\.$/);
  expect((await cardOf(page, "Stainless 5/16 in").locator("dd").allTextContents()).slice(2)).toEqual(["not known", "not known"]);
});

test.each<Opening>([{ width: 320 }, { width: 1280 }])("axe finds nothing and nothing is cut off: %p", async (opening) => {
  const page = await openStock(opening);
  await page.locator(".stock-view summary").first().click();
  expect(await violations(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
});
