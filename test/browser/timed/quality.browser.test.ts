/** What the panel owes its user whatever is in it: quick to use, nothing jumps, a fault stays where it is, choices are kept. */
import { places } from "../../../src/taskpane/places";
import { looks, panelPages, putOn, turnTo, violations } from "../panel-pages";
import { slowness } from "./pace";

const { open, pardon } = panelPages();

describe("speed and rest", () => {
  test("the panel can be used within 500 ms of its opening", async () => {
    const times: number[] = [];
    // Each time by the pace of the machine when it was taken, which changes from one second to the next.
    for (let round = 0; round < 12 && Math.min(...times, Infinity) > 500; round++) {
      const page = await open({ waitFor: ".card" });
      const first = await page.evaluate(() => performance.getEntriesByName("first card")[0]?.startTime ?? Infinity);
      times.push(first / await slowness(page));
      await page.close();
    }
    console.log(`Opened and filled with the demo's cars after ${times.map((time) => time.toFixed(0)).join(", ")} ms at the usual pace`);
    expect(Math.min(...times)).toBeLessThanOrEqual(500);
  });

  test("nothing jumps, neither while it opens nor at an edit nor when views change", async () => {
    const page = await open();
    await page.evaluate(() => { window.workbook.edit("Cars", 12, "Valves", "CV-L; TEE-AX; SW-PD"); });
    await page.waitForTimeout(300);
    for (const { name } of places.flatMap(({ views }) => views)) {
      await turnTo(page, name);
      await page.waitForTimeout(150);
    }
    const shift = await page.evaluate(() => new Promise<number>((resolve) => {
      let sum = 0;
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries() as (PerformanceEntry & { readonly value: number; readonly hadRecentInput: boolean })[]) if (!entry.hadRecentInput) sum += entry.value;
      }).observe({ type: "layout-shift", buffered: true });
      setTimeout(() => { resolve(sum); }, 200);
    }));
    console.log(`Layout shift over opening, an edit and all views: ${shift.toFixed(4)}`);
    expect(shift).toBeLessThanOrEqual(0.05);
  });

  test("who wants less motion gets none", async () => {
    const page = await open();
    const moving = (): Promise<number> => page.locator("*").evaluateAll((all) => all.filter((one) => getComputedStyle(one).transitionDuration.split(", ").some((time) => time !== "0s") || getComputedStyle(one).animationName !== "none").length);
    expect(await moving()).toBeGreaterThan(0);
    await page.emulateMedia({ reducedMotion: "reduce" });
    expect(await moving()).toBe(0);
  });
});

describe("faults", () => {
  test("a view that throws says so, offers a way on and details, and the others go on", async () => {
    const page = await open();
    const break_ = (broken: boolean): Promise<void> => page.evaluate((on) => {
      const original = Document.prototype.createElementNS;
      if (on) document.createElementNS = () => { throw new Error("no pencil"); };
      else document.createElementNS = original;
    }, broken);
    await break_(true);
    await turnTo(page, "Drawing");
    const notice = page.locator("#view-drawing .failure");
    await notice.waitFor();
    expect(await notice.textContent()).toContain("The other views go on");
    expect(await notice.locator(".failure__details").textContent()).toContain("no pencil");
    await break_(false);
    expect(await violations(page)).toEqual([]);
    await turnTo(page, "Questions");
    expect(await page.locator("#view-questions .car-bar__car").isVisible()).toBe(true);
    await turnTo(page, "Drawing");
    await page.locator(".sketch").waitFor();
    expect(await notice.count()).toBe(0);
  });

  test("a fault in a click or in a promise is told in the view where it came up", async () => {
    const page = await open();
    pardon(/gone wrong/);
    await page.locator(".card").first().evaluate((card) => { card.addEventListener("click", () => { throw new Error("a click has gone wrong"); }); });
    await page.locator(".card").first().click();
    await page.locator("#view-flags .failure").getByText("Flags stopped on a fault of Plumbline").waitFor();
    await page.getByRole("button", { name: "Try again" }).click();
    await page.locator("#view-flags .failure").waitFor({ state: "detached" });
    await page.evaluate(() => { void Promise.reject(new Error("a promise has gone wrong")); });
    await page.locator("#view-flags .failure").getByText("a promise has gone wrong").waitFor({ state: "attached" });
  });
});

describe("the work on many cars", () => {
  test("can be stopped, says how far it got, and goes on", async () => {
    const page = await open({ book: "unlike 8000", waitFor: ".card" });
    await page.evaluate(async () => {
      window.workbook.edit("Components", 0, "Price", 999);
      const button = document.querySelector<HTMLElement>(".progress__button");
      while (!button?.checkVisibility()) await new Promise((resolve) => { setTimeout(resolve, 5); });
      button.click();
    });
    const line = page.locator(".progress");
    await line.getByText(/^Stopped at [\d,]+ of 8,000 cars\. What is shown is from before\.$/).waitFor();
    const stopped = await line.textContent();
    for (const look of looks) {
      await putOn(page, look);
      expect({ look, found: await violations(page) }).toEqual({ look, found: [] });
    }
    await page.waitForTimeout(300);
    expect(await line.textContent()).toBe(stopped);
    await page.getByRole("button", { name: "Go on" }).click();
    await line.waitFor({ state: "hidden" });
    await page.waitForFunction(() => document.querySelector("progress")?.hidden);
  });
});

describe("the sheet and the choice of a car", () => {
  test("the panel follows the user to a car's row", async () => {
    const page = await open();
    await turnTo(page, "Drawing");
    await page.evaluate(() => { window.workbook.select({ table: "Cars", row: 13, column: "Year" }); });
    await page.locator(".sketch__text--title", { hasText: "Car 14" }).waitFor();
    await page.evaluate(() => { window.workbook.select({ table: "Ports", row: 1, column: "Port" }); });
    expect(await page.locator(".sketch__text--title").textContent()).toBe("Car 14");
  });

  test("the sheet follows the panel while the user stands among the cars, and not from elsewhere", async () => {
    const page = await open();
    await turnTo(page, "Questions");
    const next = page.locator("#view-questions").getByRole("button", { name: "Next car" });
    await next.click();
    expect(await page.evaluate(() => window.workbook.selected)).toBeUndefined();
    await page.evaluate(() => { window.workbook.select({ table: "Cars", row: 13, column: "Year" }); });
    await next.click();
    const name = await page.locator("#view-questions .car-bar__car").textContent();
    await page.waitForFunction(async (shown) => (await window.workbook.readTable("Cars"))?.rows[window.workbook.selected?.row ?? -1]?.[0] === shown, name);
    expect(name).not.toBe("Car 14");
  });

  test("each workbook has choices of its own", async () => {
    const page = await open({ name: "Monday.xlsx", waitFor: ".car" });
    await page.getByRole("button", { name: "Drawing of Car 14" }).click();
    const other = page.url().replace("Monday", "Tuesday");
    await page.goto(other);
    await page.locator(".cars-view .car").first().waitFor();
    expect(await page.getByRole("tab", { name: "Cars", exact: true }).getAttribute("aria-selected")).toBe("true");
    await page.goBack();
    await page.locator(".sketch__text--title", { hasText: "Car 14" }).waitFor();
  });
});
