/** What the pictures of the documentation show: each view of the panel over the demo, narrow as beside a sheet and wide with the sheet. */
import type { Page } from "playwright-core";
import { turnTo } from "../panel-tabs";

export interface Scene {
  readonly name: string;
  /** Pixels; at 350 the panel alone, at 1280 the sheet beside it. */
  readonly widths: readonly (350 | 1280)[];
  readonly dark?: boolean;
  /** Of the narrow picture, where what it is about needs more. */
  readonly height?: number;
  /** Opens this in place of the demo. */
  readonly empty?: boolean;
  readonly show: (page: Page) => Promise<void>;
}

/** The file of a scene in docs/pictures. */
export function pictureFile(name: string, width: number): string {
  return `${name}-${width}.png`;
}

const BOTH = [350, 1280] as const;

/** Turns to a view of the panel, of a car where the view shows one. */
const view = (name: string, car?: string) => async (page: Page): Promise<void> => {
  if (car !== undefined) await choose(page, car);
  await turnTo(page.locator("#panel"), name);
};

export const scenes: readonly Scene[] = [
  { name: "first-run", widths: BOTH, height: 900, empty: true, show: (page) => page.locator("#panel").getByRole("button", { name: "Set up this workbook" }).waitFor() },
  { name: "cars", widths: BOTH, show: view("Cars") },
  { name: "cars-dark", widths: [350], dark: true, show: view("Cars") },
  { name: "flags", widths: BOTH, show: view("Flags") },
  { name: "questions", widths: BOTH, show: view("Questions", "Car 25") },
  { name: "drawing", widths: BOTH, height: 1180, show: view("Drawing", "Car 12") },
  { name: "drawing-dark", widths: [350], dark: true, height: 1180, show: view("Drawing", "Car 12") },
  { name: "balance", widths: BOTH, height: 1180, show: view("Balance", "Car 27") },
  { name: "quote", widths: BOTH, show: view("Quote", "Car 4") },
  { name: "quote-sheet", widths: [1280], show: writtenQuote },
  { name: "tube", widths: BOTH, height: 1180, show: planned },
  { name: "cut-plan", widths: [350], height: 900, show: cutPlan },
  { name: "stock", widths: BOTH, show: view("Stock") },
  { name: "purchase-list", widths: [1280], show: writtenPurchaseList },
  { name: "settings", widths: BOTH, show: view("Settings") },
  { name: "functions", widths: BOTH, show: view("Functions") },
];

/** By the search of the Cars view, which leads to the car's drawing and makes it the chosen one everywhere. */
async function choose(page: Page, car: string): Promise<void> {
  const panel = page.locator("#panel");
  await turnTo(panel, "Cars");
  await panel.getByRole("searchbox").fill(car);
  await panel.getByRole("button", { name: `Drawing of ${car}`, exact: true }).click();
  await panel.locator("#view-drawing .car-bar__car").getByText(car, { exact: true }).waitFor();
}

async function planned(page: Page): Promise<void> {
  await turnTo(page.locator("#panel"), "Tube");
  await page.locator("#panel .bench__take").first().waitFor();
  await page.waitForFunction(() => !document.querySelector("#panel")?.shadowRoot?.querySelector(".bench__waiting"));
}

async function cutPlan(page: Page): Promise<void> {
  await planned(page);
  await page.locator("#panel .bench").evaluate((bench) => { bench.scrollIntoView(); });
}

async function writtenQuote(page: Page): Promise<void> {
  await view("Quote", "Car 4")(page);
  await page.locator("#panel").getByRole("button", { name: "Write the quote sheet" }).click();
  await page.locator("#panel").getByText("Written to the new sheet Quote Car 4.").waitFor();
  await showSheet(page, "Quote Car 4");
}

async function writtenPurchaseList(page: Page): Promise<void> {
  await turnTo(page.locator("#panel"), "Stock");
  await page.locator("#panel").getByRole("button", { name: "Write the purchase list" }).click();
  await page.locator("#panel").getByText("Written to the new sheet Purchase list.").waitFor();
  await showSheet(page, "Purchase list");
}

const showSheet = (page: Page, name: string): Promise<void> => page.locator("#sheet .o-sheet").filter({ hasText: name }).click();
