/** The purchase list of a rack whose orders were worked out by hand in test/functions/stock-tables.test.ts: 20 ft a week of 25 ft coils, lots of 17. */
import { inches } from "../../src/core/quantity";
import { defaultSettings } from "../../src/core/settings";
import { rackGroups } from "../../src/core/stock/rack";
import type { TubeStock } from "../../src/core/tube";
import { purchaseListSheet } from "../../src/workbook/sheets/purchase-list-sheet";

const TODAY = 46_346; // 2026-11-20

const coil = (name: string, over: Partial<TubeStock> = {}): TubeStock => ({
  name, material: "mild steel", outsideDiameter: inches(3 / 16), wall: inches(0.028), form: "coil", length: inches(300), price: 20, onHand: 2, leadTimeWeeks: 2, orderCost: 18, ...over,
});
const steadily = (tube: string) => Array.from({ length: 30 }, (_, week) => ({ date: TODAY - 6 - 7 * week, tube, length: inches(240) }));
const sheet = (rack: readonly TubeStock[], settings = defaultSettings) =>
  purchaseListSheet(settings, rackGroups({ rack, used: rack.flatMap(({ name }) => steadily(name)), needs: [], priceBreaks: [], settings, today: TODAY }), TODAY);

test("one row a tube to order, with the sum, when it comes and when stock runs out", () => {
  const { rows } = sheet([coil("CO-300"), coil("FULL", { onHand: 40, outsideDiameter: inches(1 / 4) })]);
  expect(rows.slice(0, 5).map((row) => row.slice(0, 2))).toEqual([["Purchase list", ""], ["Date", "2026-11-20"], ["Currency", "USD"], ["", ""], ["Tube", "Material"]]);
  // 17 coils at 20 and 18 for the order; two coils are gone on the 18th day (50 / (20 / 7) = 17.5).
  expect(rows[5]).toEqual(["CO-300", "mild steel", "3/16 in", 0.028, 300, "coil", 17, 20, 18, 358, "2026-12-04", "2026-12-08", expect.stringMatching(/^50\.0 ft on hand and on order; to be ordered at \d+\.\d ft$/)]);
  expect(rows[6]?.slice(0, 10)).toEqual(["Total", "", "", "", "", "", "", "", "", 358]);
  expect(rows).toHaveLength(7);
});

test("a tube without a price is listed, left out of the total and said", () => {
  const { rows } = sheet([coil("CO-300", { price: undefined })]);
  expect(rows[5]?.slice(7, 10)).toEqual(["no price", 18, ""]);
  expect(rows[6]?.[9]).toBe(0);
  expect(rows.slice(7).map(([first]) => first)).toEqual(["", "Not in the total, as there is no price: CO-300", "", "Assumed", expect.stringContaining("CO-300: Price is blank")]);
});

test("a metric workbook reads millimetres and metres", () => {
  const { rows } = sheet([coil("CO-300")], { ...defaultSettings, units: "metric" });
  expect(rows[4]?.slice(3, 5)).toEqual(["Wall (mm)", "Piece (mm)"]);
  expect(rows[5]?.slice(3, 5)).toEqual([0.71, 7620]);
  expect(rows[5]?.[12]).toMatch(/^15\.24 m on hand/);
});

test("every row is as wide as the headings, and the headings repeat on every page", () => {
  const { rows, columnWidths, page } = sheet([coil("CO-300")]);
  expect(new Set(rows.map((row) => row.length))).toEqual(new Set([columnWidths?.length]));
  expect(page).toMatchObject({ landscape: true, fitWide: true, titleRows: 5 });
});

test("all cells of an order wrap as its reason does, so that they stand on one line", () => {
  const { styles } = sheet([coil("CO-300")]);
  expect(styles).toContainEqual({ row: 5, rows: 1, column: 0, columns: 13, style: { wrap: true } });
});
