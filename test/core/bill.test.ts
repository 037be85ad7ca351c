/** Bills by hand: ends of the workshop's car are 9 × 3/8-24, 3 × 1/2-20, 1 × 9/16-18, 1 × 7/16-24; its cut tube is 278.9375 in (see tubing.test.ts). */
import { totalParts, type BillLine } from "../../src/core/bill";
import { inInches, metres } from "../../src/core/quantity";
import { ADAPTERS, NUTS, report, table, TUBE, type CarCells, type Shop } from "./workshop";

const COIL = "CO-300 | mild steel | 0.1875 | 0.028 | coil | 300 | 25";
const nuts = (...prices: readonly [string, string | number][]): string[] => prices.map(([thread, price]) => `N-${thread} | 0.1875 | ${thread} | inverted-flare-45 | male | ${price}`);
const PRICED = nuts(["3/8-24", 0.5], ["1/2-20", 1], ["9/16-18", 1.25], ["7/16-24", 0.75]);
const shop = (more: Shop = {}, tube = COIL, nutRows = PRICED): Shop => ({ ...more, more: [table(NUTS, ...nutRows), table(TUBE, tube), ...(more.more ?? [])] });

interface Line { readonly part: string; readonly quantity: number; readonly amount: number | undefined }
const lines = (cells: CarCells, given: Shop, from: "listed" | "needed"): Line[] =>
  report(cells, given).bill.filter((line) => line.from === from).map(({ part, quantity, amount }) => ({ part, quantity: "count" in quantity ? quantity.count : Number(inInches(quantity.length).toFixed(4)), amount }));

test("what the lines need: nuts by count, tube by cut length, each with its amount", () => {
  expect(lines({}, shop(), "needed")).toEqual([
    { part: "N-1/2-20", quantity: 3, amount: 3 },
    { part: "N-3/8-24", quantity: 9, amount: 4.5 },
    { part: "N-9/16-18", quantity: 1, amount: 1.25 },
    { part: "N-7/16-24", quantity: 1, amount: 0.75 },
    { part: "CO-300", quantity: 278.9375, amount: 23.24 }, // 278.9375 × 25 / 300 = 23.2448
  ]);
});

test("the price of the lines is the sum of what they need: 3 + 4.5 + 1.25 + 0.75 + 23.24", () => expect(report({}, shop()).price).toBe(32.74));

test("parts that the row lists stand on the bill once each with their count, and are not in the price of the lines", () => {
  expect(lines({}, shop(), "listed")).toEqual([
    { part: "MC", quantity: 1, amount: 90 }, { part: "BLK", quantity: 1, amount: 40 }, { part: "TEE", quantity: 1, amount: 9 }, { part: "SW-CAP", quantity: 1, amount: undefined },
    { part: "HR", quantity: 1, amount: 15 }, { part: "HF", quantity: 2, amount: 24 }, { part: "DF", quantity: 2, amount: undefined }, { part: "WR", quantity: 2, amount: undefined },
  ]);
});

test("a tee to add is needed, with its price", () => {
  expect(report({ Valves: "BLK" }, shop()).bill.find(({ kind }) => kind === "tee to add")).toMatchObject({ part: "TEE", amount: 9, from: "needed" });
  expect(report({ Valves: "BLK" }, shop()).price).toBe(41.74); // 32.74 + 9
});

test("adapters are needed and counted", () => {
  const given = shop({
    parts: ["BLK distribution-block @valve price=40 | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/4-16 | >R front RF 3/4-16 | >RO rear 7/16-24"],
    more: [table(ADAPTERS, "AD | 3/4-16 | inverted-flare-45 | male | 3/8-24 | inverted-flare-45 | female | 4.15")],
  });
  expect(lines({}, given, "needed").find(({ part }) => part === "AD")).toEqual({ part: "AD", quantity: 2, amount: 8.3 });
  expect(report({}, given).price).toBe(41.04); // 32.74 + 8.30, the nuts behind the adapters being the same
});

test("an unpriced nut leaves its amount and the price of the lines blank, never zero", () => {
  const given = shop({}, COIL, nuts(["3/8-24", 0.5], ["1/2-20", ""], ["9/16-18", 1.25], ["7/16-24", 0.75]));
  expect(lines({}, given, "needed")[0]).toEqual({ part: "N-1/2-20", quantity: 3, amount: undefined });
  expect(report({}, given).price).toBeUndefined();
});

test.each([
  ["tube without a price", shop({}, "CO-300 | mild steel | 0.1875 | 0.028 | coil | 300 |"), {}],
  ["tube whose piece has no length", shop({}, "CO-300 | mild steel | 0.1875 | 0.028 | coil | | 25"), {}],
  ["no tube of the material", shop(), { Material: "stainless" }],
  ["no material", shop(), { Material: "" }],
  ["no runs", shop(), { Valves: "?" }],
] as const)("with %s the lines have no price", (_, given, cells) => expect(report(cells, given).price).toBeUndefined());

test("a length not known leaves the price blank, and measured it is back", () => {
  const rear: CarCells = { Platform: "I", Hoses: "HF; HR2", "Rear brake": "DR" };
  expect(report({ ...rear, Valves: "BLK; TEE" }, shop()).price).toBeUndefined(); // the tee stands at the axle, to which platform I has no length
  expect(report({ ...rear, Valves: "BLK; TEE-F@frame-mid" }, shop()).price).toBeGreaterThan(0);
});

// 0.005 of a unit goes away from zero: 3 nuts at 0.335 are 1.005, which binary arithmetic makes 1.00.
test("amounts are rounded to the cent in exact decimals, halves away from zero", () => {
  const given = shop({}, COIL, nuts(["3/8-24", 0.5], ["1/2-20", 0.335], ["9/16-18", 1.25], ["7/16-24", 0.75]));
  expect(lines({}, given, "needed")[0]?.amount).toBe(1.01);
});

test("parts the row does not name are on no bill", () => expect(lines({ Hoses: "?", "Front brake": "" }, shop(), "listed").map(({ part }) => part)).toEqual(["MC", "BLK", "TEE", "SW-CAP", "WR"]));

test("the cheaper of two walls is taken, and the answer says that there were others", () => {
  const given = shop({ more: [] }, COIL);
  const both: Shop = { ...given, more: [table(NUTS, ...PRICED), table(TUBE, COIL, "CO-35 | mild steel | 0.1875 | 0.035 | coil | 300 | 20")] };
  expect(report({}, both).runs[0]?.stock?.name).toBe("CO-35");
  expect(report({}, both).assumptions).toEqual(["3/16 in mild steel is taken from CO-35, the cheapest of several walls"]);
  expect(report({}, given).assumptions).toEqual([]);
});

describe("clips, by the most length of line between an end or a clip and the next", () => {
  const clips = (spacing: string): unknown => report({}, shop({ settings: [`clip spacing | ${spacing} | in`] })).bill.filter(({ kind }) => kind === "clip").map(({ part, quantity, from }) => ({ part, quantity, from }));
  // Lines of 14, 14, 30, 50, 60 + 40, 28 and 32 in: by hand 0 + 0 + 1 + 2 + 5 + 1 + 1 at 18 in, one on the longest alone at 60 in, and none at 100 in.
  test("ten at 18 in", () => expect(clips("18")).toEqual([{ part: "clip 3/16 in", quantity: { count: 10 }, from: "to fit" }]));
  test("one at 60 in", () => expect(clips("60")).toEqual([{ part: "clip 3/16 in", quantity: { count: 1 }, from: "to fit" }]));
  test("none at 100 in", () => expect(clips("100")).toEqual([]));
});

describe("armour, over lines that begin or end at an armoured place", () => {
  const armour = (places: string): unknown => report({}, shop({ settings: [`armoured places | ${places} | `] })).bill.filter(({ kind }) => kind === "armour").map(({ part, quantity }) => [part, "length" in quantity && Number(inInches(quantity.length).toFixed(6))]);
  test("at the valve: 14 and 14 to it, 30, 50 and 100 in from it", () => expect(armour("valve")).toEqual([["armour 3/16 in", 208]]));
  test("at the tee on the axle: 28 and 32 in from it", () => expect(armour("Axle-Tee; nowhere")).toEqual([["armour 3/16 in", 60]]));
  test("at a wheel: the one line to it", () => expect(armour("LF")).toEqual([["armour 3/16 in", 30]]));
  test("at a place the car has not", () => expect(armour("nowhere")).toEqual([]));
});

test("parts of many bills: by kind, then by name, counts and lengths each summed, what is no fitting left out", () => {
  const line = (kind: string, part: string, quantity: BillLine["quantity"]): BillLine => ({ part, kind, quantity, description: "", price: undefined, amount: undefined, from: "needed" });
  const bills = [line("armour", "Z", { length: metres(1.5) }), line("clip", "C", { count: 4 }), line("nut", "B", { count: 2 }), line("tube", "T", { length: metres(3) }), line("nut", "A", { count: 1 }), line("armour", "Z", { length: metres(0.25) }), line("nut", "B", { count: 3 })];
  expect(totalParts(bills)).toEqual([
    { part: "A", kind: "nut", quantity: { count: 1 } }, { part: "B", kind: "nut", quantity: { count: 5 } }, { part: "C", kind: "clip", quantity: { count: 4 } }, { part: "Z", kind: "armour", quantity: { length: 1.75 } },
  ]);
});
