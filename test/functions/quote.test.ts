/** How a quote is laid out; its figures are worked by hand in test/core/quote.test.ts. */
import { NUTS, table, TUBE } from "../core/workshop";
import { about, keyOf, rowsOf } from "./sheet";

const more = [
  table(NUTS, ...["3/8-24", "1/2-20", "9/16-18", "7/16-24"].map((thread) => `N-${thread} | 0.1875 | ${thread} | inverted-flare-45 | male | 1`)),
  table(TUBE, "T1 | mild steel | 0.1875 | 0.028 | coil | 300 | 25"),
];
const quoteOf = (cells: Readonly<Record<string, string>>, settings: readonly string[] = []) => rowsOf(about("QUOTE", [cells], keyOf({ more, settings })), "C");

test("lines come first, then totals, terms, assumptions and the caution", () => {
  const sections = [...new Set(quoteOf({}).map((row) => row[1]))];
  expect(sections).toEqual(["made-up runs", "tube", "nuts", "total", "terms", "assumed", "caution"]);
});

test("a stop stands before everything else, and the quote must not go out", () => {
  expect(quoteOf({ Material: "copper" })[0]).toEqual(expect.arrayContaining(["hold", "material-copper", "this quote must not go out"]));
});

test.each([
  [[], "prices as the tables list them"],
  [["price basis | markup |", "markup or margin | 30 | %"], "cost plus 30 % of cost (markup)"],
  [["price basis | margin |", "markup or margin | 30 | %"], "cost is what is left of the price after 30 % of the price (margin)"],
])("with settings %p the terms say so", (settings, says) => expect(quoteOf({}, settings).find((row) => row[2] === "price basis")?.[3]).toBe(says));

test("discount, tax, validity, currency and deposit say what they are of", () => {
  const rows = quoteOf({}, ["discount | 10 | %", "tax | 8 | %", "deposit | 25 | %", "quote valid | 14 |", "currency | GBP |"]);
  expect(rows.filter((row) => row[1] === "total").map((row) => [row[2], row[8]])).toEqual([
    ["subtotal", ""], ["discount", "10 % of the lines"], ["tax", "8 % on the lines less discount, freight included"], ["total", "GBP, valid 14 days"], ["deposit", "25 % of the total, with the order"],
  ]);
});
