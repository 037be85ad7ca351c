/** The buyer's day: what tube all cars take, how it is sawn, what to order, and the list to send, kept in a file that opens again. */
import type { Locator, Page } from "playwright-core";
import type { CellValue } from "../../src/workbook/document";
import { turnTo } from "./panel-pages";
import { openAgain, panelOf, save, sheetNamed, valuesOf, workbookPages } from "./workbook-pages";

jest.setTimeout(180_000);
const { open } = workbookPages();
/** The last day of the demo's history. */
const TODAY = "2026-11-20T12:00:00";

test("the totals are those of the sheet, every length that is sawn adds up, and the purchase list is written and is in the file that opens again", async () => {
  const page = await open(TODAY);
  const said = await tubeTotal(page);
  await checkStrips(panelOf(page).locator("#view-tube"));
  const stock = await writePurchaseList(page);

  const { path, document } = await save(page);
  const tubing = records(valuesOf(sheetNamed(document, "Tubing")), "Material").filter((row) => typeof row["Cut (in)"] === "number");
  const cut = tubing.reduce((sum, row) => sum + Number(row["Cut (in)"]), 0);
  expect(said).toContain(`${(cut / 12).toFixed(1)} ft of tube to cut`);

  const list = records(valuesOf(sheetNamed(document, "Purchase list")), "Tube");
  const orders = list.filter(({ Order }) => typeof Order === "number");
  const total = orders.reduce((sum, { Amount }) => sum + Number(Amount), 0);
  expect(orders.map(({ Amount }) => Amount)).toEqual(orders.map((row) => Number(row["Order"]) * Number(row["Each"]) + Number(row["Order cost"])));
  expect(list.find(({ Tube }) => Tube === "Total")?.["Amount"]).toBe(total);
  expect(stock).toContain(`order ${orders.length} tubes, ${total.toLocaleString("en-US", { minimumFractionDigits: 2 })} USD`);
  // Tube to order without the open quotes is to be ordered with them too.
  const alone = records(valuesOf(sheetNamed(document, "Reorder")), "Tube").filter((row) => Number(row["Order today"]) > 0).map(({ Tube }) => Tube);
  expect(alone.length).toBeGreaterThan(0);
  expect(orders.map(({ Tube }) => Tube)).toEqual(expect.arrayContaining(alone));

  await openAgain(page, path);
  expect((await save(page)).document).toEqual(document);
});

/** Turns to the totals and answers their first line, once all cuts are planned. */
async function tubeTotal(page: Page): Promise<string> {
  await turnTo(panelOf(page), "Tube");
  const tube = panelOf(page).locator("#view-tube");
  await tube.locator(".bench__take").first().waitFor();
  await page.waitForFunction(() => !document.querySelector("#panel")?.shadowRoot?.querySelector(".bench__waiting"));
  return tube.locator(".tally").filter({ hasText: "of tube to cut" }).innerText();
}

/** On each strip, the pieces, a saw cut of 1/16 in for each (Settings of the demo), and what is over make the length that is sawn. */
async function checkStrips(tube: Locator): Promise<void> {
  for (const folded of await tube.locator(".bench__rest summary").all()) await folded.click();
  const strips = await tube.locator(".sticks > li").allInnerTexts();
  expect(strips.length).toBeGreaterThan(20);
  for (const strip of strips) {
    const [, length = "", over] = /([\d /]+) in(?:, ([\d /]+) in over)?/.exec(strip) ?? [];
    const pieces = [...strip.matchAll(/^([\d /]+) in Car \d+ run \d+/gm)].map(([, text = ""]) => inches(text));
    const sum = pieces.reduce((total, one) => total + one + 1 / 16, 0) + (over === undefined ? 0 : inches(over));
    // With nothing over, the last piece needs no cut, or what is left is thinner than one.
    const beyond = sum - inches(length);
    expect({ strip, adds: over === undefined ? Math.abs(beyond) <= 1 / 16 : beyond === 0 }).toEqual({ strip, adds: true });
  }
}

/** "51 1/2" is 51.5. */
const inches = (text: string): number => text.trim().split(" ").map((part) => part.split("/").map(Number)).reduce((sum, [top = NaN, bottom = 1]) => sum + top / bottom, 0);

async function writePurchaseList(page: Page): Promise<string> {
  await turnTo(panelOf(page), "Stock");
  const stock = panelOf(page).locator("#view-stock");
  await stock.getByRole("button", { name: "Write the purchase list" }).click();
  await stock.getByText("Written to the new sheet Purchase list. One undo takes it back.").waitFor();
  return stock.locator(".tally").first().innerText();
}

/** The rows under the row of headings, which begins with the given one. */
function records(rows: readonly (readonly CellValue[])[], first: string): readonly Readonly<Record<string, CellValue>>[] {
  const start = rows.findIndex(([cell]) => cell === first);
  const headings = rows[start] ?? [];
  return rows.slice(start + 1).map((row) => Object.fromEntries(headings.map((heading, column) => [String(heading), row[column] ?? ""])));
}
