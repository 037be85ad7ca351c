/** The settings in the panel: every one is there, and a change reaches the sheet on a click only. */
import type { Locator, Page } from "playwright-core";
import { demoTables } from "../../src/catalogue/demo";
import { findingCodes, findingEntries } from "../../src/core/finding";
import { settingEntries } from "../../src/core/settings";
import { panelPages, turnTo, violations } from "./panel-pages";

const { open } = panelPages();

test("every setting and every rule that is no stop has its control, with default and source", async () => {
  const page = await openSettings();
  const rules = findingCodes.filter((code) => findingEntries[code].severity !== "stop");
  expect(await page.locator(".setting").count()).toBe(settingEntries.length + rules.length);
  const kerf = setting(page, "saw kerf");
  expect(await kerf.textContent()).toContain("Default: 0.0625 in. Source: common practice, no source.");
  for (const details of await page.locator(".settings__group").all()) await details.evaluate((group) => { (group as HTMLDetailsElement).open = true; });
  expect(await violations(page)).toEqual([]);
});

test("a change stands in the panel until the click, and then in the cell of its row", async () => {
  const page = await openSettings("saw kerf");
  const kerf = setting(page, "saw kerf");
  await kerf.getByRole("textbox").fill("0.125");
  expect(await valueOf(page, "saw kerf")).toBe(0.0625);
  // An edit of the sheet in between leaves what is typed here alone.
  await page.evaluate(() => { window.workbook.edit("Cars", 0, "Customer", "Newcomer"); });
  await page.waitForTimeout(200);
  expect(await kerf.getByRole("textbox").inputValue()).toBe("0.125");
  await kerf.getByRole("button", { name: "Write into the sheet" }).click();
  await kerf.getByText("Written: 0.125 in.").waitFor();
  expect(await valueOf(page, "saw kerf")).toBe(0.125);
});

test("where the decimal mark is a comma, a figure is shown and typed with it, and what can be read in two ways is asked about", async () => {
  const page = await openSettings("saw kerf", "de-DE");
  const kerf = setting(page, "saw kerf");
  expect(await kerf.getByRole("textbox").inputValue()).toBe("0,0625");
  await kerf.getByRole("textbox").fill("1,125");
  await kerf.getByText("1,125 can be 1125 or 1,1250. Type it one of these ways.").waitFor();
  expect(await kerf.getByRole("button", { name: "Write into the sheet" }).count()).toBe(0);
  await kerf.getByRole("textbox").fill("0,125");
  await kerf.getByRole("button", { name: "Write into the sheet" }).click();
  await kerf.getByText("Written: 0,125 in.").waitFor();
  expect(await valueOf(page, "saw kerf")).toBe(0.125);
});

test("a change in the sheet is in the panel", async () => {
  const page = await openSettings("saw kerf");
  await page.evaluate((row) => { window.workbook.edit("Settings", row, "Value", 0.1); }, rowOf("saw kerf"));
  await page.waitForFunction(() => document.querySelector<HTMLInputElement>("#setting-saw-kerf")?.value === "0.1");
});

test("a rule that is switched off gets a row of its own, and its flags are settled", async () => {
  const page = await openSettings("metering on rear");
  const rule = setting(page, "metering on rear");
  await rule.getByRole("combobox").selectOption("off");
  await rule.getByRole("button", { name: "Write into the sheet" }).click();
  await rule.getByText("Written: off.").waitFor();
  const table = await page.evaluate(async () => (await window.workbook.readTable("Settings"))?.rows.at(-1));
  expect(table?.slice(0, 2)).toEqual(["rule metering-on-rear", "off"]);
  await turnTo(page, "Flags");
  await page.locator(".severity--settled .card").first().waitFor();
});

test("what the table would refuse is refused with a sentence, and nothing is written", async () => {
  const page = await openSettings("saw kerf");
  const kerf = setting(page, "saw kerf");
  await kerf.getByRole("textbox").fill("a hair");
  await kerf.getByRole("button", { name: "Write into the sheet" }).click();
  await page.getByRole("alert").filter({ hasText: "saw kerf was not written. saw kerf takes a number of 0 or more." }).waitFor();
  expect(await valueOf(page, "saw kerf")).toBe(0.0625);
});

test("a workbook without a Settings table gets one with the first setting that is written", async () => {
  const page = await open();
  await page.evaluate(() => { window.workbook.deleteTable("Settings"); });
  await turnTo(page, "Settings");
  await page.getByRole("searchbox", { name: "Search the settings" }).fill("currency");
  const currency = setting(page, "currency");
  await currency.getByText("not written in the sheet").waitFor();
  await currency.getByRole("textbox").fill("CAD");
  await currency.getByRole("button", { name: "Write into the sheet" }).click();
  await currency.getByText("Written: CAD.").waitFor();
  expect(await page.evaluate(async () => (await window.workbook.readTable("Settings"))?.rows)).toEqual([["currency", "CAD", "text", "choice of the shop"]]);
});

async function openSettings(search?: string, locale = "en-US"): Promise<Page> {
  const page = await open({ locale });
  await turnTo(page, "Settings");
  if (search !== undefined) await page.getByRole("searchbox", { name: "Search the settings" }).fill(search);
  else await page.locator(".setting").first().waitFor();
  return page;
}

const setting = (page: Page, title: string): Locator => page.locator(".setting", { has: page.locator("label", { hasText: new RegExp(`^${title}$`) }) });

const settingsTable = demoTables.find(({ name }) => name === "Settings");
const rowOf = (name: string): number => settingsTable?.rows.findIndex(([first]) => first === name) ?? -1;

const valueOf = (page: Page, name: string): Promise<unknown> => page.evaluate(async (row) => (await window.workbook.readTable("Settings"))?.rows[row]?.[1], rowOf(name));
