import { quoteSheet } from "../../src/workbook/sheets/quote-sheet";
import { cutListSheet } from "../../src/workbook/sheets/cut-list-sheet";
import { catalogueOf, NUTS, report, table, TUBE, type CarCells, type Shop } from "../core/workshop";

/** Prices are invented. */
const shop: Shop = {
  more: [
    table(NUTS, "N38 | 0.1875 | 3/8-24 | inverted-flare-45 | male | 1.00", "N716 | 0.1875 | 7/16-24 | inverted-flare-45 | male | 1.25", "N12 | 0.1875 | 1/2-20 | inverted-flare-45 | male | 1.50", "N916 | 0.1875 | 9/16-18 | inverted-flare-45 | male | 2.00"),
    table(TUBE, "T1 | mild steel | 0.1875 | 0.028 | coil | 300 | 25"),
  ],
};
const head = { date: "25 November", revision: 2 };
const quoteOf = (cells: CarCells = {}) => quoteSheet(catalogueOf(shop), report(cells, shop), head).map((row) => row.filter((cell) => cell !== "").join(" | "));

describe("the quote sheet", () => {
  test("opens with who, what and when, and carries lines, total and caution", () => {
    const rows = quoteOf({ Customer: "Brindle" });
    expect(rows.slice(0, 7)).toEqual(["Quote", "Customer | Brindle", "Car | C, P, 1972", "Date | 25 November", "Revision | 2", "Currency | USD", "Valid | 30 days"]);
    // The total is worked by hand in test/core/quote.test.ts.
    expect(rows).toContain("Total | 249.99");
    expect(rows.at(-1)).toMatch(/^Figures are estimates/);
  });

  test("is written with a hold banner and the reasons while a stop is open", () => {
    const rows = quoteOf({ Material: "copper" });
    const banner = rows.indexOf("HOLD: this quote must not go out");
    expect(banner).toBeGreaterThan(0);
    expect(rows[banner + 1]).toMatch(/^material-copper \| The row names plain copper: /);
    expect(quoteOf().join("\n")).not.toMatch(/HOLD/);
  });

  test("has rows of one width, so that it can be written as one block", () => {
    expect(new Set(quoteSheet(catalogueOf(shop), report({}, shop), head).map(({ length }) => length)).size).toBe(1);
  });
});

test("the cut list has the longest piece first, with the work at each end", () => {
  const [headings, first] = cutListSheet(catalogueOf(shop), [report({}, shop)]);
  expect(headings?.slice(0, 4)).toEqual(["Stock", "Tube", "Cut (in)", "Net (in)"]);
  // The longest run is block to rear hose: 60 + 40 = 100 in, estimated; flares, trim and kerf add 1.5625 in.
  expect(first).toEqual(["T1", "3/16 in", 101.56, 100, "estimated", "C", 5, "BLK RO", "N716, double 45°", "HR IN", "N38, double 45°"]);
});
