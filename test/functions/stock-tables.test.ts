/** The answers about stock. The workshop's car takes 278.9375 in of tube: 268 in over 7 runs, and 1.5625 in more for each (test/core/tubing.test.ts). */
import { SheetError } from "../../src/functions/answer";
import { demandTable } from "../../src/functions/demand-table";
import { forecastTable } from "../../src/functions/forecast-table";
import { reorderColumns, reorderTable } from "../../src/functions/reorder-table";
import type { CellValue } from "../../src/workbook/document";
import { catalogueOf, table, TUBE } from "../core/workshop";
import { carRow, HEADINGS, type Cell } from "./sheet";

const MONDAY = 45_005;
const COIL = table(TUBE, "CO-300 | mild steel | 0.1875 | 0.028 | coil | 300 | 25");
const catalogue = catalogueOf({ more: [COIL] });
const withBreak = catalogueOf({ more: [COIL, table("Tube | From quantity | Price", "co-300 | 40 | 15")] });

function refused(run: () => unknown): string {
  try {
    run();
  } catch (error) {
    if (error instanceof SheetError) return error.message;
    throw error;
  }
  throw new Error("it answered");
}

describe("DEMAND", () => {
  const demand = (rows: readonly (readonly Cell[])[], firstWeek: unknown = MONDAY, weeks: unknown = 2, step: unknown = null): CellValue[][] => demandTable(catalogue, {
    quotes: { headings: [["Quote", "Car", "Chance (%)", "Earliest", "Likely", "Latest", "Quantity"]], rows },
    cars: { headings: [HEADINGS], rows: [carRow(), carRow({ Car: "BARE", Material: "" })] }, firstWeek, weeks, step,
  });
  // Half of two cars: mean 278.9375 in = 23.245 ft; deviation ½ of 2 · 278.9375 in, the same.
  test("one row a tube and week", () => expect(demand([["Q1", "C", 50, 0, MONDAY + 6, 0, 2]])).toEqual([
    ["Tube", "Week", "Starts", "Mean (ft)", "Deviation (ft)", "Quotes", "Problem"],
    ["CO-300", 1, MONDAY, 23.245, 23.245, 1, ""],
    ["CO-300", 2, MONDAY + 7, 0, 0, 0, ""],
  ]));
  // Over 14 days with the peak midway, half in each week: p w = ¼ of one car, 5.811 ft; deviation √(¼ · ¾) · 23.245 ft.
  test("dates are spread over the weeks", () => expect(demand([["Q1", "c", 50, MONDAY, MONDAY + 7, MONDAY + 14, 1]]).slice(1).map((row) => row.slice(3, 5))).toEqual([[5.811, 10.065], [5.811, 10.065]]));
  test("a quote that cannot be counted says why, and the others stand", () => {
    const answer = demand([["Q1", "NOBODY", 50, 0, MONDAY, 0, 1], ["Q2", "C", 120, 0, MONDAY, 0, 1], ["Q3", "C", 50, 0, 0, 0, 1], ["Q4", "BARE", 50, 0, MONDAY, 0, 1], ["Q5", "C", 100, 0, MONDAY, 0, 0]]);
    expect(answer[1]?.slice(0, 4)).toEqual(["CO-300", 1, MONDAY, 23.245]);
    expect(answer.slice(3).map((row) => row[6])).toEqual([
      expect.stringContaining('Pipeline row 2 under the headings, Chance: read "120"') as string,
      "quote Q1: no row of the cars is named NOBODY",
      "quote Q3: none of its dates is given, so it falls in no week",
      "quote Q4: 7 of 7 runs of BARE have no tube of the rack or no length and are left out",
      "quote Q5: Quantity is blank and taken as 1",
    ]);
  });
  // 278.9375 in is 8 steps of 34.8671875 in (2.905598958 ft): half the one quote and a quarter of the other leave 0, 8, 16 and 24 steps.
  test("a step asks for the exact distribution", () => expect(demand([["Q1", "C", 50, 0, MONDAY, 0, 1], ["Q2", "C", 25, 0, MONDAY, 0, 2]], MONDAY, 1, 278.9375 / 96)).toEqual([
    ["Tube", "Week", "Starts", "Need (ft)", "Chance", "Chance of no more", "Problem"],
    ["CO-300", 1, MONDAY, 0, 0.375, 0.375, ""],
    ["CO-300", 1, MONDAY, 23.245, 0.375, 0.75, ""],
    ["CO-300", 1, MONDAY, 46.49, 0.125, 0.875, ""],
    ["CO-300", 1, MONDAY, 69.734, 0.125, 1, ""],
  ]));
  test("a step too small for a sheet is refused", () => expect(refused(() => demand([["Q1", "C", 50, 0, MONDAY, 0, 1]], MONDAY, 1, 0.001))).toContain("take a larger one"));
  test("arguments are read or refused", () => {
    expect(demand([["Q1", "C", 50, 0, MONDAY, 0, 1]], MONDAY, null)).toHaveLength(14);
    expect(refused(() => demand([], "soon"))).toContain("first week: read \"soon\"");
    expect(refused(() => demand([], MONDAY, 2.5))).toContain("whole number from 1 to 520");
  });
});

describe("FORECAST", () => {
  const row = (history: readonly (readonly unknown[])[], method?: unknown, weights: { alpha?: unknown; beta?: unknown } = {}): Record<string, CellValue> => {
    const [headings = [], cells = []] = forecastTable(history, { method, alpha: null, beta: null, ...weights });
    return Object.fromEntries(headings.map((heading, index) => [String(heading), cells[index] ?? ""]));
  };
  // With the usual 0.1 and 0.1: size 2 + 0.1 · 2, interval 2, SBA × 0.95.
  test("one row, with what it rests on", () => expect(row([[0], [2], [0], [4]])).toMatchObject({
    Method: "SBA", Chosen: "too little history to choose", Rate: 1.045, Level: 2.2, Interval: 2, Periods: 4, Demands: 2, Class: "intermittent", Weights: "usual",
    Problem: "too little history: 2 demands in 4 periods, fewer than 6 in 24, so the usual method and weights stand",
  }));
  test("a row reads as a column does, and a method without regard to case", () => expect(row([["", 2, null, 4]], "croston")).toMatchObject({ Method: "Croston", Chosen: "asked for", Rate: 1.1 }));
  // Sizes 2 and 4 halved together make 3, intervals 2 and 2 stay 2.
  test("weights are taken as given, one for both when alone", () => {
    expect(row([[0], [2], [0], [4]], "Croston", { alpha: 0.5 })).toMatchObject({ Rate: 1.5, Alpha: 0.5, Beta: 0.5, Weights: "given" });
    expect(refused(() => row([[1]], null, { beta: 0.5 }))).toContain("alpha: read nothing beside a beta");
    expect(refused(() => row([[1]], null, { alpha: 1.5 }))).toContain("above 0 and up to 1");
  });
  test("what cannot be read is said", () => {
    expect(refused(() => forecastTable([[1], ["x"]], { method: null, alpha: null, beta: null }))).toBe('history, period 2: read "x"; accepted: a number of 0 or more.');
    expect(refused(() => forecastTable([[-1]], { method: null, alpha: null, beta: null }))).toContain("period 1");
    expect(refused(() => forecastTable([[1, 2], [3, 4]], { method: null, alpha: null, beta: null }))).toContain("one row or one column");
    expect(refused(() => forecastTable([[1]], { method: "best", alpha: null, beta: null }))).toContain("auto, Croston, SBA, SBJ, TSB, SES");
  });
});

describe("REORDER", () => {
  const TUBE_HEADINGS = ["Tube", "Material", "Outside diameter (in)", "Wall (in)", "Form", "Length (in)", "Price", "On hand", "On order", "Lead time (weeks)", "Least order", "Multiple", "Order cost", "Due"];
  const rack = (name: string, over: Readonly<Record<string, Cell>> = {}): Cell[] => {
    const cells: Readonly<Record<string, Cell>> = { Tube: name, Material: "mild steel", "Outside diameter (in)": 0.1875, "Wall (in)": 0.028, Form: "coil", "Length (in)": 300, Price: 20, "On hand": 2, "Lead time (weeks)": 2, "Least order": 1, Multiple: 1, "Order cost": 18, ...over };
    return TUBE_HEADINGS.map((heading) => cells[heading] ?? 0);
  };
  /** 240 in on the first day of each of the 30 weeks that end with today. */
  const steadily = Array.from({ length: 30 }, (_, week): Cell[] => [MONDAY - 6 - 7 * week, "CO-300", 240]);
  const reorder = (rows: readonly (readonly Cell[])[], usage: readonly (readonly Cell[])[] = steadily, quotes: { mean?: unknown; variance?: unknown; shop?: typeof catalogue } = {}): Record<string, CellValue>[] => {
    const [headings = [], ...answers] = reorderTable(quotes.shop ?? catalogue, {
      tube: { headings: [TUBE_HEADINGS], rows }, usage: { headings: [["Date", "Tube", "Length (in)"]], rows: usage }, today: MONDAY, pipelineMean: quotes.mean ?? null, pipelineVariance: quotes.variance ?? null,
    });
    return answers.map((cells) => Object.fromEntries(headings.map((heading, index) => [String(heading), cells[index] ?? ""])));
  };
  // 20 ft a week of 25 ft coils; 50 ft last 2.5 weeks. √(2 · 18 · 41.74 / (0.25 · 20)) = 17.3 coils. Two coils are gone on the 18th day: 50 / (20/7) = 17.5.
  test("one row a tube", () => expect(reorder([rack("CO-300")])).toEqual([expect.objectContaining({
    Tube: "CO-300", "Rate (ft/week)": 20, Class: "smooth", "Weeks of history": 30, "On hand": 2, "Weeks of cover": 2.5, Lot: 17, "Stock-out": MONDAY + 1 + 17, Assumed: "", Problem: "",
  })]));
  test("the service promised is at least the one asked for, and no row of columns is missing", () => {
    const [only] = reorder([rack("CO-300")]);
    expect(only?.["Cycle service (%)"]).toBeGreaterThanOrEqual(95);
    expect(Object.keys(only ?? {})).toHaveLength(reorderColumns.length);
  });
  test("at or below the point a lot is ordered, above it nothing", () => {
    const point = Number(reorder([rack("CO-300")])[0]?.["Reorder point (ft)"]);
    const [below, above] = reorder([rack("CO-300", { "On hand": point / 25 - 0.1 }), rack("co-300", { "On hand": point / 25 + 0.1 })]);
    expect([below?.["Order today"], below?.["Order cost"], above?.["Order today"]]).toEqual([17, 17 * 20 + 18, 0]);
  });
  test("quotes bring the day of stock-out forward and lift the reorder point", () => {
    const [plain] = reorder([rack("CO-300")]);
    const [more] = reorder([rack("CO-300")], steadily, { mean: 60, variance: 400 });
    // Twenty ft a week and twenty more over three weeks: 50 ft are gone on the 9th day.
    expect(more?.["Stock-out"]).toBe(MONDAY + 1 + 8);
    expect(Number(more?.["Reorder point (ft)"])).toBeGreaterThan(Number(plain?.["Reorder point (ft)"]) + 40);
  });
  test("a tube without usage orders nothing and says so", () => expect(reorder([rack("CO-300"), rack("OTHER")])[1]).toMatchObject({ "Rate (ft/week)": 0, "Order today": 0, "Stock-out": "", Assumed: "no demand in 30 periods: the rate is taken as 0" }));
  test("bad rows keep their place with their problem", () => {
    const rows = reorder([rack("A", { "Lead time (weeks)": 0 }), rack("B", { Form: "offcut" }), rack("C", { Material: "lead" }), rack("CO-300"), rack("E", { "Length (in)": 0 })]);
    expect(rows.map(({ Tube }) => Tube)).toEqual(["A", "B", "C", "CO-300", "E"]);
    expect(rows.map(({ Problem }) => Problem)).toEqual(["Lead time is blank", "offcuts are not bought", expect.stringContaining("Tube row 3 under the headings, Material") as string, "", "Length is blank"]);
    expect(rows.map((row) => row["Reorder point (ft)"] === "")).toEqual([true, true, true, false, true]);
  });
  test("blanks that were taken for something are said", () => expect(reorder([rack("CO-300", { "On hand": 0, "On order": 3, "Order cost": 0, Price: 0 })])[0]?.["Assumed"]).toBe(
    "On hand is blank or 0 and taken as none; Order cost is blank and taken as nothing; Due is blank: what is on order is taken to arrive after a whole lead time; Price is blank: the lot is the least order, and costs leave the tube out"));
  test("usage that was not counted is told of", () => {
    const rows = reorder([rack("CO-300"), rack("OTHER")], [...steadily, [MONDAY + 1, "CO-300", 999], [MONDAY, "GONE", 10], ["?", "CO-300", 10]]);
    expect(rows[0]?.["Rate (ft/week)"]).toBe(20);
    expect(rows.slice(2).map(({ Problem }) => Problem)).toEqual([expect.stringContaining("Usage row 33 under the headings, Date") as string, "1 row of Usage after today left out", "Usage of tube that is not in these rows: GONE"]);
  });
  // A year at 17: 41.74 · 20 + 18 · 41.74 / 17 + 0.25 · 20 · 17 / 2 = 921.5; at 40, from which a coil costs 15: 626.1 + 18.8 + 75 = 719.9.
  test("a break of price is taken when it pays", () => expect(reorder([rack("CO-300")], steadily, { shop: withBreak })[0]).toMatchObject({ Lot: 40, "Order today": 40, "Order cost": 40 * 15 + 18 }));
  test("pipeline figures are one for each row", () => {
    expect(refused(() => reorder([rack("A"), rack("B")], steadily, { mean: 4 }))).toContain("pipeline mean: read 1 cells for 2 rows");
    expect(refused(() => reorder([rack("A")], steadily, { variance: 4 }))).toContain("pipeline mean: read nothing beside a variance");
    expect(refused(() => reorder([rack("A")], steadily, { mean: -4 }))).toContain("0 or more");
  });
});
