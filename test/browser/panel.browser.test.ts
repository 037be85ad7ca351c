import type { Locator, Page } from "playwright-core";
import { demoTables } from "../../src/catalogue/demo";
import { places } from "../../src/taskpane/places";
import { panelPages, turnTo, violations } from "./panel-pages";

const { open } = panelPages();

test("flags come worst first, each with its place, sentence, cure and basis under its car", async () => {
  const page = await open();
  const severities = await page.locator(".card__severity").allTextContents();
  const ranks = severities.map((word) => ["Stop", "Decide", "Watch", "Note", "Settled"].indexOf(word));
  expect(ranks.length).toBeGreaterThan(8);
  expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  // Car 13 of the demo has a 10 psi residual valve, a drum residual, on a line to discs.
  const card = cardOf(page, "Car 13");
  expect(await card.locator(".flag__place").textContent()).toContain("RV-10");
  expect(await card.locator(".flag__says").textContent()).toContain("the pads drag");
  expect(await card.locator(".flag__cure").textContent()).toContain("Cure");
  expect(await card.locator(".flag__basis").textContent()).toContain("common practice");
});

test("a flag accepted for its car or switched off in Settings stands at the end with its reason, and counts no more", async () => {
  const page = await open();
  const settled = page.locator(".severity--settled");
  const stops = async (): Promise<number> => Number(await page.locator(".choice", { has: page.locator("input[value=stop]") }).locator(".choice__number").textContent());
  const before = await stops();
  await page.evaluate(() => {
    window.workbook.edit("Cars", 12, "Accepted", "residual-on-disc: race car");
    window.workbook.edit("Settings", 0, "Setting", "rule metering-on-rear");
    window.workbook.edit("Settings", 0, "Value", "off");
  });
  await settled.locator(".card", { hasText: "Car 13" }).waitFor();
  expect(await settled.locator(".card", { hasText: "Car 13" }).locator(".flag__because").textContent()).toBe("Stop, accepted for this car: race car.");
  expect(await settled.locator(".card", { hasText: "Car 18" }).locator(".flag__because").textContent()).toBe("Switched off in Settings; the rule says decide.");
  expect(await stops()).toBe(before - 1);
  expect(await cardOf(page, "Car 13").count()).toBe(0);
  expect(await violations(page)).toEqual([]);
});

test("a click or Enter selects the car's row in the sheet and marks the card", async () => {
  const page = await open();
  await cardOf(page, "Car 13").locator(".flag__says").click();
  await page.waitForFunction(() => window.workbook.selected?.row === 12);
  expect(await cardOf(page, "Car 13").getAttribute("aria-current")).toBe("true");
  await cardOf(page, "Car 14").getByRole("button").focus();
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => window.workbook.selected?.row === 13);
  expect(await focusedText(page)).toBe("Car 14");
  expect(await page.getByRole("status").textContent()).toBe("Row 15 of Cars is selected in the sheet.");
});

test("a row that is gone from the sheet is said in sight", async () => {
  const page = await open();
  await page.evaluate(() => { window.workbook.selectTableRow = () => Promise.reject(new Error("The table Cars has no row 13.")); });
  await cardOf(page, "Car 13").getByRole("button").click();
  await page.getByRole("alert").filter({ hasText: "The table Cars has no row 13." }).waitFor();
});

test("the choice of a severity and the search narrow the flags, and their counts follow", async () => {
  const page = await open();
  await page.getByText("Stop", { exact: true }).first().click();
  expect(new Set(await page.locator(".card__severity").allTextContents())).toEqual(new Set(["Stop"]));
  await page.getByRole("searchbox").fill("car 13 drag");
  expect(await page.locator(".card").count()).toBe(1);
  expect(await page.locator(".choice", { hasText: "Stop" }).textContent()).toBe("1Stop");
  await page.getByRole("searchbox").fill("no such word anywhere");
  expect(await page.locator("#view-flags .nothing").textContent()).toBe("No flag fits this choice.");
});

test("an edit in the sheet changes the flags at once, and keeps focus, scroll and choice", async () => {
  const page = await open();
  const onHold = async (): Promise<number> => Number(/(\d+) on hold/.exec((await page.locator("#view-flags .tally").textContent()) ?? "")?.[1]);
  const heldBefore = await onHold();
  await cardOf(page, "Car 16").getByRole("button").focus();
  expect(await page.evaluate(() => document.documentElement.scrollTop)).toBeGreaterThan(100);
  const before = await cardOf(page, "Car 16").boundingBox();
  await cardOf(page, "Car 16").evaluate((card) => { card.dataset["kept"] = "yes"; });
  // Without the residual valve nothing holds pressure on Car 13's discs any more.
  await page.evaluate(() => {
    window.workbook.edit("Cars", 12, "Valves", "CV-L; TEE-AX; SW-PD");
  });
  await cardOf(page, "Car 13").waitFor({ state: "detached" });
  expect(await focusedText(page)).toBe("Car 16");
  expect(Math.abs(((await cardOf(page, "Car 16").boundingBox())?.y ?? Infinity) - (before?.y ?? 0))).toBeLessThan(3);
  expect(await cardOf(page, "Car 16").getAttribute("data-kept")).toBe("yes");
  expect(await onHold()).toBe(heldBefore - 1);
});

test("a part that leaves the catalogue changes the flags of every car that has it", async () => {
  const page = await open();
  const unknown = page.locator(".flag[data-code='unknown-part']", { hasText: "BLK-E" });
  expect(await unknown.count()).toBe(0);
  await page.evaluate((row) => { window.workbook.edit("Components", row, "Component", "BLK-E is sold out"); }, demoColumn("Components", "Component").indexOf("BLK-E"));
  await unknown.first().waitFor();
  expect(await unknown.count()).toBe(demoColumn("Cars", "Valves").filter((valves) => /\bBLK-E\b(?!-)/.test(String(valves))).length);
});

test("a cell of the catalogue that cannot be used is said on top with table, row and column, and leads to its row", async () => {
  const page = await open();
  await page.evaluate(() => { window.workbook.edit("Ports", 2, "Thread", "9/16-19x"); });
  const notice = page.locator(".notice", { hasText: "Ports row 4, Thread: read \"9/16-19x\"" });
  await notice.getByRole("button", { name: "Show the row" }).first().click();
  expect(await page.evaluate(() => window.workbook.selected)).toEqual({ table: "Ports", row: 2 });
});

test("places and views are worked by the arrow keys, one stop of the Tab key each", async () => {
  const page = await open();
  await page.getByRole("tab", { name: "Flags" }).focus();
  await page.keyboard.press("ArrowRight");
  expect(await focusedText(page)).toBe("Cars");
  await page.keyboard.press("Shift+Tab");
  expect(await focusedText(page)).toBe("All cars");
  await page.keyboard.press("ArrowRight");
  expect(await focusedText(page)).toBe("This car");
  await page.keyboard.press("Tab");
  expect(await focusedText(page)).toBe("Questions");
  await page.keyboard.press("End");
  expect(await page.getByRole("tab", { name: places[1]?.views.at(-1)?.name ?? "" }).getAttribute("aria-selected")).toBe("true");
  expect(await page.locator("[role=tab][tabindex='0']:visible").count()).toBe(2);
});

test.each([320, 350])("in %d pixels every place and view is in sight, in one row each, clear of the corner that is the host's", async (width) => {
  const page = await open({ width });
  for (const { name, views } of places) {
    await page.getByRole("tab", { name, exact: true }).click();
    const boxes = await page.getByRole("tab").evaluateAll((tabs) => tabs.filter((tab) => tab.checkVisibility()).map((tab) => tab.getBoundingClientRect().toJSON() as DOMRect));
    expect(boxes.length).toBe(places.length + views.length);
    expect(new Set(boxes.map(({ top }) => top)).size).toBe(2);
    for (const { left, right, top, width: wide, height } of boxes) {
      expect(left).toBeGreaterThanOrEqual(0);
      expect(right).toBeLessThanOrEqual(top < 32 ? width - 34 : width);
      expect(Math.min(wide, height)).toBeGreaterThanOrEqual(24); // WCAG 2.2, success criterion 2.5.8
    }
  }
});

test("tube is totalled by material and size, estimated lengths told, runs without a length left out and named", async () => {
  const page = await open();
  await turnTo(page, "Tube");
  expect(await page.locator("caption").allTextContents()).toEqual(["Copper-nickel", "Mild steel", "Stainless", "Material not stated"]); // Car 26 has not chosen one
  expect(await page.locator(".tube__estimated").count()).toBeGreaterThan(0);
  // Car 23 of the demo names no platform, so none of its lines has a length.
  const notice = page.locator(".notice", { hasText: "not in these totals" });
  await notice.getByRole("button", { name: "Car 23" }).click();
  expect(await page.evaluate(() => window.workbook.selected)).toEqual({ table: "Cars", row: 22 });
});

test("an empty workbook offers to be set up and writes nothing before the click", async () => {
  const page = await open({ book: "nothing", waitFor: ".empty" });
  expect(await page.getByRole("tab").count()).toBe(0);
  await page.getByLabel("Stock and orders").uncheck();
  await page.getByText("mm, bar").click();
  expect(await page.evaluate(() => window.workbook.tableNames())).toEqual([]);
  await page.getByRole("button", { name: "Set up this workbook" }).click();
  await page.getByText("Cars has no rows yet").waitFor();
  const names = await page.evaluate(() => window.workbook.tableNames());
  expect(names).toEqual(expect.arrayContaining(["Cars", "Ports", "Kits", "Settings"]));
  expect(names).not.toContain("Usage");
  expect(await page.evaluate(async () => (await window.workbook.readTable("Lengths"))?.headings)).toEqual(["Platform", "From", "To", "Length (mm)", "Tube (mm)", "Bends (mm)"]);
  // What is left to make is offered, and nothing else.
  expect(await page.locator(".offer__tables:visible").allTextContents()).toEqual(["Pipeline, Usage", "Seen, Joins"]);
  await page.getByLabel("Stock and orders").check();
  expect(await page.locator(".offer__tables:visible").allTextContents()).toEqual(["Pipeline, Usage", "Seen, Joins", "Demand, Reorder"]);
  await page.getByRole("button", { name: "Add what is chosen" }).click();
  await page.waitForFunction(async () => (await window.workbook.tableNames()).includes("Usage"));
  expect(await page.evaluate(() => [...window.workbook.formulas.keys()].sort())).toEqual(["Catalog!B2", "Demand!A4", "Flags!A3", "Reorder!A4", "Runs!A3", "Tubing!A3", "Verdict!A3"]);
  expect(await page.evaluate(() => window.workbook.tableNames())).not.toContain("Seen");
});

test("a reader of a metric region is offered millimetres first, and nothing is written before the click", async () => {
  const offered = async (locale: string): Promise<unknown> => {
    const page = await open({ book: "nothing", locale, waitFor: ".empty" });
    const units = page.locator("input[name=set-up-units]");
    return [await units.evaluateAll((inputs) => inputs.map((input) => (input as HTMLInputElement).value)), await units.first().isChecked(), await page.evaluate(() => window.workbook.tableNames())];
  };
  expect(await offered("de-DE")).toEqual([["metric", "us"], true, []]);
  expect(await offered("en-US")).toEqual([["us", "metric"], true, []]);
});

test("an empty workbook set up with a sample shows the sample car at once", async () => {
  const page = await open({ book: "nothing", waitFor: ".empty" });
  await page.getByLabel("With one invented car").check();
  await page.getByRole("button", { name: "Set up this workbook" }).click();
  await page.locator(".tally", { hasText: "1 car" }).first().waitFor();
});

test("the demo comes into an empty workbook on a click", async () => {
  const page = await open({ book: "nothing", waitFor: ".empty" });
  await page.getByRole("button", { name: "Open the demo" }).click();
  await page.locator(".card").first().waitFor();
});

test("the caution stands at the foot of every view and of the empty panel", async () => {
  for (const [book, waitFor] of [["demo", ".card"], ["nothing", ".empty"]]) {
    const page = await open({ book, waitFor });
    expect(await page.getByRole("complementary", { name: "Caution" }).textContent()).toContain("Brakes can kill.");
  }
});

test("a failed reading says so plainly, shows its details, and a new try goes on", async () => {
  const page = await open({ failing: true, waitFor: ".failure" });
  expect(await page.locator(".failure").textContent()).toContain("the workbook is busy");
  expect(await violations(page)).toEqual([]);
  await page.evaluate(() => { window.failing = false; });
  await page.getByRole("button", { name: "Try again" }).click();
  await page.locator(".card").first().waitFor();
  expect(await page.locator(".failure").count()).toBe(0);
});

test("after a failed reading the next edit goes on by itself", async () => {
  const page = await open({ failing: true, waitFor: ".failure" });
  await page.evaluate(() => {
    window.failing = false;
    window.workbook.edit("Cars", 0, "Customer", "Newcomer");
  });
  await page.locator(".card").first().waitFor();
  expect(await page.locator(".failure").count()).toBe(0);
});

test("with many cars a hundred cards are drawn, more on request, and progress is told", async () => {
  const page = await open({ book: "600" });
  expect(await page.locator(".card").count()).toBe(100);
  await page.getByRole("button", { name: /^Show 100 more of/ }).click();
  expect(await page.locator(".card").count()).toBe(200);
  expect(await page.locator(".progress__text").isHidden()).toBe(true);
});

test("in a shadow root the panel looks and works the same, and unmounting leaves nothing", async () => {
  const page = await open({ shadow: true });
  expect(await page.locator(".plumbline").evaluate((node) => getComputedStyle(node).display)).toBe("flow-root");
  await cardOf(page, "Car 13").getByRole("button").click();
  expect(await focusedText(page)).toBe("Car 13");
  await page.evaluate(() => { window.panel.unmount(); });
  expect(await page.evaluate(() => document.getElementById("panel")?.shadowRoot?.childNodes.length)).toBe(0);
});

function demoColumn(name: string, heading: string): readonly unknown[] {
  const table = demoTables.find((each) => each.name === name);
  const column = table?.headings.indexOf(heading) ?? -1;
  return table?.rows.map((row) => row[column]) ?? [];
}

/** The card of a car among the stops. */
const cardOf = (page: Page, car: string): Locator => page.locator(".card--stop").filter({ has: page.getByRole("button", { name: car, exact: true }) });

const focusedText = (page: Page): Promise<string | null | undefined> =>
  page.evaluate(() => (document.activeElement?.shadowRoot ?? document).activeElement?.textContent);
