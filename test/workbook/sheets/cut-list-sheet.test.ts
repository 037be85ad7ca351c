import { benchJobs, planOnTheBench } from "../../../src/core/bench-plan";
import { cutListSheet, type CutList } from "../../../src/workbook/sheets/cut-list-sheet";
import { catalogueOf, report, type CarCells, type Shop } from "../../core/workshop";
import { pricedShop } from "./shop";

const listOf = (cells: CarCells = {}, shop: Shop = pricedShop, more: Partial<CutList> = {}): string[] => {
  const { settings, tube } = catalogueOf(shop);
  const { jobs, leftOut } = benchJobs([{ car: "C", runs: report(cells, shop).runs }], settings, tube);
  const { rows } = cutListSheet(settings, { plans: jobs.map((job) => planOnTheBench(job)), leftOut, preBent: 0, held: [], ...more }, { date: "25 November", cars: "C" });
  return rows.map((row) => row.filter((cell) => cell !== "").join(" | "));
};

test("says what to take, then every piece in sawing order with its mark, its finished length and the work at each end", () => {
  const rows = listOf();
  const first = rows.findIndex((row) => row.startsWith("Length 1 of 1"));
  expect(rows).toContain("☐ | 1 × T1 | 300 in: 3/16 in mild steel, wall 0.028 in (0.71 mm)");
  // The longest run is block to rear hose: 60 + 40 = 100 in, estimated; a flare of 1/4 and a trim of 1/2 at each end make 101 1/2.
  expect(rows[first + 1]).toBe("☐ | 101 1/2 in | 101 1/2 in | ≈ 100 in | C | 5 | BLK RO | N716, double 45° | HR IN | N38, double 45°");
  // The next is 50 + 1 1/2 = 51 1/2; it begins after a saw cut of 1/16: 101 9/16 + 51 1/2 = 153 1/16.
  expect(rows[first + 2]).toMatch(/^☐ \| 51 1\/2 in \| 153 1\/16 in \| 50 in \| C/);
  // Seven pieces, 268 + 7 × 1 1/2 = 278 1/2, seven cuts of 1/16: 278 15/16; of 300 stay 21 1/16.
  expect(rows[first + 8]).toBe("Left over: 21 1/16 in of 3/16 in mild steel | ☐ kept as an offcut     ☐ scrap");
  expect(rows).toContain("≈ is an estimated length: hold the tube to the car before it is sawn.");
});

test("lengths are in millimetres for a metric shop", () => {
  // 100 in + 4 × (0.25 + 0.5) / 2 in = 101.5 in = 2578.1 mm.
  expect(listOf({}, { ...pricedShop, settings: ["units | metric |"] }).some((row) => row.startsWith("☐ | 2578 mm | 2578 mm | ≈ 2540 mm"))).toBe(true);
});

test("a car on hold is named before anything is sawn", () => {
  const rows = listOf({}, pricedShop, { held: ["C"] });
  expect(rows.indexOf("HOLD: do not saw for this car yet")).toBeLessThan(rows.indexOf("Take from the rack"));
  expect(rows).toContain("A stop is open on C. What is sawn now may be waste.");
  expect(listOf().some((row) => /HOLD/.test(row))).toBe(false);
});

test("what is not on the list is said, and a list of nothing says so", () => {
  const rows = listOf({ Material: "" }, pricedShop, { preBent: 2 });
  expect(rows).toEqual(expect.arrayContaining(["Nothing: no run is to be sawn.", "C, runs 1, 2, 3, 4, 5, 6, 7: length, size or tube on the rack not known", "2 runs that come bent, in a set"]));
});

test("a piece longer than the stock is named", () => {
  const short: Shop = { more: [...(pricedShop.more ?? []).slice(0, 1), { headings: ["Tube", "Material", "Outside diameter (in)", "Wall (in)", "Form", "Length (in)", "Price"], rows: [["T60", "mild steel", 0.1875, 0.028, "stick", 60, 5]] }] };
  expect(listOf({}, short)).toContain("! | C run 5: longer than any stock, end trim off.");
});
