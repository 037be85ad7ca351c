/** The Balance view in a browser: its plots measured with their real letters, its controls by keyboard, the way to a missing figure. */
import type { Page } from "playwright-core";
import { demoTables } from "../../src/catalogue/demo";
import { panelPages } from "./panel-pages";

const { open } = panelPages();
const demoCars = demoTables.find(({ name }) => name === "Cars")?.rows.length ?? 0;

test.each([320, 1280])("no writing of a plot overlaps or leaves its sheet on any demo car at %d pixels, unladen and laden", async (width) => {
  const page = await openBalance({ width });
  let plots = 0;
  for (let car = 0; car < demoCars; car++) {
    for (const load of ["Laden", "Unladen"]) {
      if (!(await page.locator(".balance").isVisible())) continue;
      await page.getByText(load, { exact: true }).click();
      const { wrong, writing, name } = await measure(page);
      plots += 1;
      expect(writing).toBeGreaterThan(14);
      expect({ name, load, wrong }).toEqual({ name, load, wrong: [] });
    }
    if (car < demoCars - 1) await page.getByRole("button", { name: "Next car" }).click();
  }
  // Cars 15, 22, 23, 24 and 25 have no balance yet.
  expect(plots).toBe(2 * (demoCars - 5));
});

test("the sliders work by keyboard, keep the focus, and change plots and figures", async () => {
  const page = await openBalance({ car: "Car 27" });
  const slider = page.getByRole("slider", { name: "Deceleration" });
  const chosen = (): Promise<string | null> => page.locator(".plot--forces .plot__line--chosen").first().getAttribute("d");
  const before = await chosen();
  await slider.focus();
  for (let press = 0; press < 10; press++) await page.keyboard.press("ArrowRight");
  expect(await slider.getAttribute("aria-valuetext")).toBe("0.7 g");
  expect(await page.locator(".balance__at caption").textContent()).toBe("At 0.7 g, unladen");
  expect(await chosen()).not.toBe(before);
  expect(await page.evaluate(() => document.activeElement?.id)).toBe("balance-deceleration");
  await page.getByRole("slider", { name: "Adhesion of the road" }).focus();
  await page.keyboard.press("Home");
  expect(await page.locator(".plot--forces figcaption").textContent()).toContain("On adhesion 0.1 the");
});

test("laden and unladen are switched by keyboard, and the scales stay", async () => {
  const page = await openBalance({ car: "Car 27" });
  const [numbers, order] = [page.locator(".plot--forces .plot__text--number"), page.locator(".balance__order")];
  const scale = await numbers.allTextContents();
  expect(await order.textContent()).toContain("Unladen, the rears lock first on adhesion 0.57");
  await page.getByRole("radio", { name: "Unladen" }).focus();
  await page.keyboard.press("ArrowRight");
  expect(await order.textContent()).toContain("Laden, the rears lock first on adhesion 0.67");
  expect(await numbers.allTextContents()).toEqual(scale);
});

test("what was chosen stays when the next car is shown", async () => {
  const page = await openBalance({ car: "Car 27" });
  await page.getByRole("slider", { name: "Deceleration" }).fill("0.45");
  await page.getByRole("button", { name: "Next car" }).click();
  expect(await page.locator(".slider__value").first().textContent()).toBe("0.45 g");
});

test("a figure that is missing is named, and a click leads to its cell", async () => {
  const page = await openBalance({ car: "Car 23" });
  expect(await page.locator(".gaps__heading").textContent()).toBe("The balance waits for these figures:");
  await page.getByRole("button", { name: "Passages, CV-X: Does" }).click();
  const row = demoTables.find(({ name }) => name === "Passages")?.rows.findIndex(([name]) => name === "CV-X");
  await page.waitForFunction(() => window.workbook.selected?.table === "Passages");
  expect(await page.evaluate(() => window.workbook.selected)).toEqual({ table: "Passages", row, column: "Does" });
  await page.getByRole("button", { name: "Cars, Car 23: Platform" }).click();
  await page.waitForFunction(() => window.workbook.selected?.table === "Cars");
  expect(await page.evaluate(() => window.workbook.selected)).toEqual({ table: "Cars", row: 22, column: "Platform" });
});

test("a row that does not exist yet is said", async () => {
  const page = await openBalance({ car: "Car 27" });
  await page.evaluate(() => { window.workbook.deleteTable("WheelBrakes"); });
  await page.getByRole("button", { name: "WheelBrakes, DC-1: Piston", exact: true }).click();
  await page.getByRole("alert").getByText("No row of WheelBrakes is named DC-1 yet").waitFor();
});

test("a figure that is filled in draws the balance at once", async () => {
  const page = await openBalance({ car: "Car 23" });
  expect(await page.locator(".plot").first().isVisible()).toBe(false);
  await page.evaluate(() => {
    window.workbook.edit("Cars", 22, "Platform", "Harrow 6 Coupe");
    window.workbook.edit("Cars", 22, "Valves", "CV-L; TEE-AX; SW-PD");
  });
  await page.locator(".plot--forces").waitFor();
  expect(await page.locator(".gaps").textContent()).toContain("Cars, Car 23: Booster");
  expect(await page.locator(".balance__pedal").textContent()).toContain("the booster taken as none");
});

test("axles are told apart without colour: by stroke, by mark and by word", async () => {
  const page = await openBalance({ car: "Car 27", theme: "forced colours" });
  const look = (kind: string): Promise<readonly string[]> => page.locator(`.plot--grip .plot__line--${kind}`).first().evaluate((line) => [getComputedStyle(line).strokeDasharray, getComputedStyle(line).stroke]);
  const [front, rear] = [await look("front-used"), await look("rear-used")];
  expect(front[0]).not.toBe(rear[0]);
  expect(front[1]).toBe(rear[1]);
  const words = await page.locator(".plot--grip .plot__text").allTextContents();
  for (const word of ["front", "rear", "limit", "all grip used"]) expect(words).toContain(word);
  expect(await page.locator(".key li").allTextContents()).toContain("there the rears use more grip");
});

test("screen readers get a name, a description and the same figures as tables", async () => {
  const page = await openBalance({ car: "Car 27" });
  for (const name of ["Braking forces of Car 27", "Grip used by Car 27"]) expect(await page.getByRole("img", { name }).locator("desc").textContent()).toContain("tables".slice(0, 5));
  expect(await page.locator("caption").allTextContents()).toEqual(["At 0.6 g, unladen", expect.stringContaining("Stops against 49 CFR 571.105"), "Grip used, and the most the limit allows", "Pedal travel and stroke"]);
  expect(await page.getByRole("row", { name: /^Grip used/ }).textContent()).toContain("rears ahead");
});

test("in print the plots are black on white and the controls are gone", async () => {
  const page = await openBalance({ car: "Car 27", theme: "dark" });
  await page.emulateMedia({ media: "print", colorScheme: "dark" });
  expect(await page.locator(".plot__line--rear-used").first().evaluate((line) => getComputedStyle(line).stroke)).toBe("rgb(0, 0, 0)");
  expect(await page.locator(".plot").first().evaluate((node) => getComputedStyle(node).backgroundColor)).toBe("rgb(255, 255, 255)");
  expect(await page.locator(".balance__controls").isVisible()).toBe(false);
});

test("the caution and what is taken for granted are in sight", async () => {
  const page = await openBalance({ car: "Car 27" });
  expect(await page.locator(".balance__caution").textContent()).toContain("A qualified person inspects and tests the car");
  expect(await page.locator(".assumed li").allTextContents()).toContain("discs on the uniform wear radius");
});

interface OpenBalance {
  readonly car?: string;
  readonly theme?: "light" | "dark" | "forced colours";
  readonly width?: number;
}

/** Without a car the worst one is shown. */
function openBalance({ car, ...how }: OpenBalance = {}): Promise<Page> {
  const chosen: Record<string, string> = car === undefined ? {} : { "plumbline car": JSON.stringify({ table: "Cars", row: -1, name: car }) };
  return open({ ...how, remembered: { "plumbline view": "balance", ...chosen }, waitFor: ".balance-view" });
}

/** Boxes of all writing of both plots as the browser lays its letters out. */
const measure = (page: Page): Promise<{ readonly name: string; readonly writing: number; readonly wrong: readonly string[] }> => page.evaluate(() => {
  const sheets = [...document.querySelectorAll<SVGSVGElement>("svg.plot__sheet[role=img]")];
  const found = sheets.flatMap((sheet) => {
    const whole = sheet.viewBox.baseVal;
    const boxes = [...sheet.querySelectorAll<SVGGraphicsElement>("text")].map((node) => ({ name: node.textContent, box: node.getBBox() }));
    const overlaps = boxes.flatMap((a, index) => boxes.slice(index + 1)
      .filter((b) => a.box.x < b.box.x + b.box.width && b.box.x < a.box.x + a.box.width && a.box.y + 1 < b.box.y + b.box.height && b.box.y + 1 < a.box.y + a.box.height)
      .map((b) => `"${a.name}" on "${b.name}"`));
    const outside = boxes.filter(({ box }) => box.x < 0 || box.y < 0 || box.x + box.width > whole.width || box.y + box.height > whole.height).map(({ name }) => `"${name}" is outside`);
    return [{ writing: boxes.length, wrong: [...overlaps, ...outside] }];
  });
  return { name: document.querySelector(".car-bar__car")?.textContent ?? "", writing: found.reduce((sum, one) => sum + one.writing, 0), wrong: found.flatMap((one) => one.wrong) };
});
