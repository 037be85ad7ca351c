/** The owner's day: 500 cars come as one paste, the ten worst are mended cell by cell, and the file that is kept says so. */
import type { Page } from "playwright-core";
import { columnLetters } from "../../src/workbook/address";
import { turnTo } from "./panel-pages";
import { carHeadings, lots, lotsLeavingOut, wrongCells } from "./rows-of-a-sale";
import { goTo, isSelected, openAgain, panelOf, paste, save, settled, sheetNamed, typeCells, valuesOf, workbookPages } from "./workbook-pages";

jest.setTimeout(180_000);
const { open } = workbookPages();
const TEN = wrongCells.length;

test("500 cars are pasted, the worst ten mended at the cell each flag leads to, and all ten come out sound, also when opened again", async () => {
  const page = await open();
  await goTo(page, "A2");
  await paste(page, lots);
  await tally(page, `${TEN} on hold, ${lotsLeavingOut} to decide`);

  const worst = (await namesIn(page)).slice(0, TEN);
  expect([...worst].sort()).toEqual(wrongCells.map(({ lot }) => lot));

  await turnTo(panelOf(page), "Flags");
  for (const lot of worst) await mend(page, lot);
  await turnTo(panelOf(page), "Cars");
  await tally(page, `${lotsLeavingOut} to decide`);
  for (const lot of worst) expect(await verdictOf(page, lot)).toBe("Sound");

  const { path, document } = await save(page);
  const cars = sheetNamed(document, "Cars");
  expect(cars.tables[0]).toMatchObject({ name: "Cars", rows: lots.length });
  const rights = new Map(wrongCells.map(({ lot, column, right }) => [`${lot} ${column}`, right]));
  expect(valuesOf(cars).slice(1).map((row) => row.slice(0, carHeadings.length).map(String)))
    .toEqual(lots.map((row) => row.map((value, column) => rights.get(`${String(row[0])} ${carHeadings[column] ?? ""}`) ?? String(value))));
  expect(valuesOf(sheetNamed(document, "Verdict")).filter(([lot]) => worst.includes(String(lot))).map(([, verdict]) => verdict)).toEqual(worst.map(() => "sound"));

  await openAgain(page, path);
  await turnTo(panelOf(page), "Cars");
  await tally(page, `${lotsLeavingOut} to decide`);
  expect((await save(page)).document).toEqual(document);
});

const tally = (page: Page, text: string): Promise<void> => panelOf(page).locator("#view-cars .tally").filter({ hasText: text }).waitFor();
const namesIn = (page: Page): Promise<string[]> => panelOf(page).locator("#view-cars .car__name button").allTextContents();

/** Follows the first flag of the car that leads to a cell, and types what belongs there. */
async function mend(page: Page, lot: string): Promise<void> {
  const flag = panelOf(page).locator(".card--stop").filter({ has: page.getByRole("button", { name: lot, exact: true }) }).locator(".flag[data-column]").first();
  await flag.click();
  const wrong = wrongCells.find((one) => one.lot === lot);
  const address = `${columnLetters(carHeadings.indexOf(wrong?.column ?? ""))}${lots.findIndex(([name]) => name === lot) + 2}`;
  await isSelected(page, address);
  await typeCells(page, [wrong?.right ?? ""]);
  await panelOf(page).locator(".card--stop").filter({ has: page.getByRole("button", { name: lot, exact: true }) }).waitFor({ state: "detached" });
  await settled(page);
}

async function verdictOf(page: Page, lot: string): Promise<string | null> {
  await panelOf(page).getByRole("searchbox").fill(lot);
  return panelOf(page).locator("#view-cars .car__group").first().textContent();
}
