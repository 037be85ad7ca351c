import { quoteSheet, type QuotedCar } from "../../../src/workbook/sheets/quote-sheet";
import type { SheetContent } from "../../../src/workbook/port";
import { catalogueOf, report, type CarCells, type Shop } from "../../core/workshop";
import { pricedShop } from "./shop";

const head = { date: "25 November", validUntil: "25 December", revision: 2 };
const car = (cells: CarCells = {}, picture?: QuotedCar["picture"]): QuotedCar => ({ report: report(cells, pricedShop), picture });
const written = (cars: readonly QuotedCar[], shop: Shop = pricedShop): SheetContent => quoteSheet(catalogueOf(shop), cars, head);
const linesOf = ({ rows }: SheetContent): string[] => rows.map((row) => row.filter((cell) => cell !== "").join(" | "));
const styleAt = ({ styles = [] }: SheetContent, row: number, column: number) => styles.filter((range) => range.row === row && range.column === column).at(-1)?.style;

test("opens with who, what and when, and carries lines, total and caution", () => {
  const rows = linesOf(written([car({ Customer: "Brindle" })]));
  expect(rows.slice(0, 6)).toEqual(["Quote", "", "Customer | Brindle | Date | 25 November", "Car | C | Revision | 2", "Model | P, 1972 | Valid until | 25 December", "Currency | USD"]);
  // Lines and total are worked by hand in test/core/quote.test.ts.
  expect(rows).toEqual(expect.arrayContaining(["Made-up run | bending and flaring runs 1, 2, 3, 4, 5, 6, 7 | 7 | 30 | 210", "T1 | mild steel 3/16 in, with flares and trim | 23.24 | 1 | 23.24", "Total | 249.99", "Deposit with the order | 125"]));
  expect(rows.at(-1)).toMatch(/^Caution \| Figures are estimates/);
});

test("money has the shop's decimals and a quantity its unit, as formats over plain numbers", () => {
  const sheet = written([car()]);
  const row = linesOf(sheet).findIndex((line) => line.startsWith("T1"));
  expect([2, 3, 4].map((column) => styleAt(sheet, row, column)?.format)).toEqual(['0.00" ft"', "#,##0.00", "#,##0.00"]);
});

test("the shop stands at its head when Settings names it", () => {
  const shop: Shop = { ...pricedShop, settings: ["shop name | Invented Brake Works |", "shop address | 1 Example Yard |"] };
  expect(linesOf(written([car()], shop)).slice(0, 3)).toEqual(["Quote", "Invented Brake Works", "1 Example Yard"]);
});

test("is written with a hold banner and the reasons before the lines while a stop is open, and nobody can order by it", () => {
  const sheet = written([car({ Material: "copper" })]);
  const rows = linesOf(sheet);
  const banner = rows.indexOf("HOLD: this quote must not go out");
  expect(rows[banner + 1]).toMatch(/^Why \| The row names plain copper: /);
  expect([banner > 0, banner < rows.findIndex((line) => line.startsWith("Item")), styleAt(sheet, banner, 0)?.fill]).toEqual([true, true, "#96280f"]);
  expect(rows.some((line) => line.startsWith("Ordered by"))).toBe(false);
  const sound = linesOf(written([car()]));
  expect([sound.some((line) => /HOLD/.test(line)), sound.some((line) => line.startsWith("Ordered by"))]).toEqual([false, true]);
});

test("says what is still needed instead of a total", () => {
  const rows = linesOf(written([car({ Material: "" })]));
  expect(rows).toContain("No total yet | Still needed: a material for runs 1, 2, 3, 4, 5, 6, 7.");
  expect(rows.some((line) => line.startsWith("Total"))).toBe(false);
  expect(rows).toContain("Open questions | Which tube material does the customer want?");
  // The finding that asks the same is not said twice.
  expect(rows.filter((line) => line.includes("Which tube material"))).toHaveLength(1);
});

test("several cars have a page each after a page with their sum", () => {
  const sheet = written([car({ Customer: "Brindle" }), car({ Customer: "Brindle" })]);
  const rows = linesOf(sheet);
  // Twice 249.99.
  expect(rows.slice(0, 12)).toEqual(expect.arrayContaining(["Cars | 2 | Revision | 2", "C | P, 1972 | 249.99", "Total | 499.98"]));
  expect(sheet.page?.breaks?.map((row) => rows[row])).toEqual(["Quote", "Quote"]);
});

test("one stop of several puts the whole on hold, and one car without a total leaves no sum", () => {
  const rows = linesOf(written([car(), { ...car({ Material: "copper" }) }]));
  expect(rows[rows.indexOf("HOLD: this quote must not go out") + 1]).toBe("Why | A stop is open on C.");
  expect(linesOf(written([car(), car({ Material: "" })]))).toContain("Total | not yet");
});

test("the drawing stands on a page of its own, whole, with as many rows as it covers", () => {
  const sheet = written([car({}, { png: "AA==", alt: "lines", width: 500, height: 1000 })]);
  const [picture] = sheet.pictures ?? [];
  expect(picture).toMatchObject({ png: "AA==", alt: "lines", column: 0, width: 420, height: 840 });
  const under = (sheet.rowHeights ?? []).slice(picture?.row).reduce<number>((sum, points) => sum + (points ?? 0), 0);
  expect([(under * 96) / 72 >= 840, sheet.page?.breaks?.[0] === (picture?.row ?? 0) - 1]).toEqual([true, true]);
});

test("the letters on the drawing are told over it, and it is smaller for them", () => {
  const sheet = written([car({}, { png: "AA==", alt: "lines", width: 400, height: 1000, marks: [["a", "The fronts drag."]] })]);
  const [picture] = sheet.pictures ?? [];
  expect(linesOf(sheet)[(picture?.row ?? 0) - 1]).toBe("a:  The fronts drag.");
  // 840 - 44 pixels high; narrow enough to stand beside the first column.
  expect(picture).toMatchObject({ height: 796, width: 318, column: 1 });
});

test("prints one page wide, with name, revision and date at the foot", () => expect(written([car()]).page).toEqual({ fitWide: true, footer: "Quote C, revision 2, 25 November" }));

test("no number, text or merge stands outside its columns, and merged cells hold one value", () => {
  const { rows, merges = [], columnWidths = [] } = written([car({ Material: "copper" }), car()]);
  expect(new Set(rows.map(({ length }) => length))).toEqual(new Set([columnWidths.length]));
  for (const { row, column, columns } of merges) expect(rows[row]?.slice(column + 1, column + columns).every((cell) => cell === "")).toBe(true);
});
