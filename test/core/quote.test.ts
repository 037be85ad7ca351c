/** Quotes and fluid by hand working on a small shop; prices, minutes and volumes are invented. */
import Big from "big.js";
import fc from "fast-check";
import { fluidFor, volumeOfRun } from "../../src/core/fluid";
import { rounded } from "../../src/core/money";
import { inches } from "../../src/core/quantity";
import { quoteFor } from "../../src/core/quote";
import { property } from "./seeded";
import { catalogueOf, NUTS, report, table, TUBE, type CarCells, type Shop } from "./workshop";

const NUT_ROWS = table(NUTS, "N38 | 0.1875 | 3/8-24 | inverted-flare-45 | male | 1.00", "N716 | 0.1875 | 7/16-24 | inverted-flare-45 | male | 1.25", "N12 | 0.1875 | 1/2-20 | inverted-flare-45 | male | 1.50", "N916 | 0.1875 | 9/16-18 | inverted-flare-45 | male | 2.00");
const priced = [
  NUT_ROWS,
  table(TUBE, "T1 | mild steel | 0.1875 | 0.028 | coil | 300 | 25"),
];
/** A front/rear car through a block: MC→BLK twice, BLK→LF, BLK→RF, BLK→hose, two lines on the axle: seven runs. */
const shopWith = (settings: readonly string[] = [], more: Shop["more"] = []): Shop => ({ more: [...priced, ...(more ?? [])], settings });
const quoted = (cells: CarCells = {}, shop: Shop = shopWith()) => quoteFor(catalogueOf(shop), report(cells, shop));

describe("the lines of a quote", () => {
  test("are the made-up runs, their tube and their nuts when there is no set", () => {
    const { lines, totals } = quoted();
    const sold = lines.map(({ section, item, quantity, unitPrice, amount }) => [section, item, quantity, unitPrice, amount]);
    // Lengths 14 + 30 + 50 + 14 + 100 + 28 + 32 = 268 in, each run with 2 (0.25 + 0.5) + 0.0625 = 1.5625 in more: 278.9375 in = 23.24 ft.
    // Tube 25 for 300 in = 25 ft is 1.00 a foot. Ends: 1/2-20 at MC F and at both inlets of the block, 9/16-18 at MC R, 7/16-24 at BLK RO, 3/8-24 at the other nine.
    expect(sold).toEqual([
      ["made-up runs", "made-up run", 7, 30, 210],
      ["tube", "T1", 23.24, 1, 23.24],
      ["nuts", "N12", 3, 1.5, 4.5],
      ["nuts", "N38", 9, 1, 9],
      ["nuts", "N916", 1, 2, 2],
      ["nuts", "N716", 1, 1.25, 1.25],
    ]);
    // 210 + 23.24 + 4.5 + 9 + 2 + 1.25 = 249.99; half of it is 124.995, halves up.
    expect(totals).toEqual({ subtotal: 249.99, discount: 0, freight: 0, tax: 0, total: 249.99, deposit: 125 });
  });

  test("hold what Supply names, and say what it names for nothing", () => {
    const { lines, assumed } = quoted({ Supply: "valves; HF; sunroof" });
    expect(lines.filter(({ section }) => section === "parts").map(({ item, quantity }) => [item, quantity])).toEqual(expect.arrayContaining([["BLK", 1], ["TEE", 1], ["HF", 2]]));
    expect(assumed).toContain('Supply names "sunroof", which is no part of this car and no kit');
  });

  test("count labour by what an operation applies to", () => {
    const operations = table("Operation | Applies to | Minutes", "bleed | car | 45", "route | run | 10", "mount | hose | 6");
    const { lines } = quoted({ Supply: "HF" }, shopWith(["labour rate | 90 |"], [operations]));
    // 45 min; 7 runs of 10 min; 2 hoses of 6 min, at 90 an hour.
    expect(lines.filter(({ section }) => section === "labour").map(({ item, quantity, amount }) => [item, quantity, amount])).toEqual([["bleed", 0.75, 67.5], ["route", 1.17, 105.3], ["mount", 0.2, 18]]);
  });
});

describe("prices and totals", () => {
  // A cost of 1.50: list 1.50, 20 % markup 1.80, 20 % margin 1.50 / 0.8 = 1.875, to the cent 1.88.
  test.each([["list", 1.5], ["markup", 1.8], ["margin", 1.88]])("a price basis of %s makes 1.50 into %p", (basis, price) => {
    const { lines } = quoted({}, shopWith([`price basis | ${basis} |`, "markup or margin | 20 | %"]));
    expect(lines.find(({ item }) => item === "N12")?.unitPrice).toBe(price);
  });

  test("discount comes off the lines, tax goes on what is left with freight", () => {
    const { totals } = quoted({}, shopWith(["discount | 10 | %", "freight | 20 |", "tax | 8 | %"]));
    // 249.99 - 25.00 (24.999) + 20 = 244.99; 8 % of it is 19.5992 = 19.60; together 264.59; half of it 132.295, halves up.
    expect(totals).toEqual({ subtotal: 249.99, discount: 25, freight: 20, tax: 19.6, total: 264.59, deposit: 132.3 });
  });

  test("a margin of the whole price leaves no price, and says so", () => {
    const { lines, totals, assumed } = quoted({}, shopWith(["price basis | margin |", "markup or margin | 100 | %"]));
    expect([lines.every(({ unitPrice }) => unitPrice === undefined), totals]).toEqual([true, undefined]);
    expect(assumed[0]).toMatch(/a margin of 100 % of the price leaves nothing/);
  });

  test("there is no total while a line has no price, and what lacks one is named once", () => {
    const { totals, missing } = quoted({}, {});
    expect([totals, new Set(missing).size]).toEqual([undefined, missing.length]);
    expect(missing).toContain("a price for N-3/16-1/2-20");
  });

  // A run that is not settled leaves its tube and nuts out of the lines: their sum would read as if it were whole.
  test("a margin of the whole price leaves no price, and says so", () => {
    const { lines, totals, assumed } = quoted({}, shopWith(["price basis | margin |", "markup or margin | 100 | %"]));
    expect([lines.every(({ unitPrice }) => unitPrice === undefined), totals]).toEqual([true, undefined]);
    expect(assumed[0]).toMatch(/a margin of 100 % of the price leaves nothing/);
  });

  test("there is no total while the runs of the car are not known", () => expect(quoted({ Valves: "?" })).toMatchObject({ totals: undefined, missing: ["the runs of this car"] }));
  test("a margin of the whole price leaves no price, and says so", () => {
    const { lines, totals, assumed } = quoted({}, shopWith(["price basis | margin |", "markup or margin | 100 | %"]));
    expect([lines.every(({ unitPrice }) => unitPrice === undefined), totals]).toEqual([true, undefined]);
    expect(assumed[0]).toMatch(/a margin of 100 % of the price leaves nothing/);
  });

  test("there is no total while the material is not known", () => expect(quoted({ Material: "" })).toMatchObject({ totals: undefined, missing: ["a material for runs 1, 2, 3, 4, 5, 6, 7"] }));
  test("a margin of the whole price leaves no price, and says so", () => {
    const { lines, totals, assumed } = quoted({}, shopWith(["price basis | margin |", "markup or margin | 100 | %"]));
    expect([lines.every(({ unitPrice }) => unitPrice === undefined), totals]).toEqual([true, undefined]);
    expect(assumed[0]).toMatch(/a margin of 100 % of the price leaves nothing/);
  });

  test("there is no total while the rack lacks the tube", () => expect(quoted({ Material: "stainless" }).missing).toEqual(["3/16 in stainless on the rack for runs 1, 2, 3, 4, 5, 6, 7"]));
  test("a margin of the whole price leaves no price, and says so", () => {
    const { lines, totals, assumed } = quoted({}, shopWith(["price basis | margin |", "markup or margin | 100 | %"]));
    expect([lines.every(({ unitPrice }) => unitPrice === undefined), totals]).toEqual([true, undefined]);
    expect(assumed[0]).toMatch(/a margin of 100 % of the price leaves nothing/);
  });

  test("there is no total while two sets of different price fit what is known", () => {
    const sets = table("Set | Platform | Front | Rear | Material | Price", "S1 | P | disc | drum | mild steel | 100", "S2 | P | disc | drum | stainless | 160");
    const { totals, missing } = quoted({ Material: "" }, shopWith([], [sets]));
    expect([totals, missing[0]]).toEqual([undefined, "the choice between S1 and S2"]);
  });

  const terms = fc.record({
    basis: fc.constantFrom("list", "markup", "margin"), share: fc.integer({ min: 0, max: 60 }), discount: fc.integer({ min: 0, max: 40 }), tax: fc.integer({ min: 0, max: 25 }),
    freight: fc.integer({ min: 0, max: 5000 }), deposit: fc.integer({ min: 1, max: 100 }), halves: fc.constantFrom("up", "even"), step: fc.constantFrom(0.01, 0.05, 1), tube: fc.integer({ min: 1, max: 9999 }),
  });
  property("totals reconcile with the lines to the cent, whatever the figures", 60, terms, ({ basis, share, discount, tax, freight, deposit, halves, step, tube }) => {
    const more = [NUT_ROWS, table(TUBE, `T1 | mild steel | 0.1875 | 0.028 | coil | 300 | ${tube / 100}`)];
    const { lines, totals } = quoted({}, { more, settings: [
      `price basis | ${basis} |`, `markup or margin | ${share} | %`, `discount | ${discount} | %`, `tax | ${tax} | %`, `freight | ${freight / 100} |`, `deposit | ${deposit} | %`, `rounding of halves | ${halves} |`, `rounding step | ${step} |`,
    ] });
    if (!totals) throw new Error("no totals");
    const sum = lines.reduce((total, { amount }) => total.plus(amount ?? NaN), Big(0));
    expect(totals.subtotal).toBe(sum.toNumber());
    expect(Big(totals.subtotal).minus(totals.discount).plus(totals.freight).plus(totals.tax).toNumber()).toBe(totals.total);
    // Every figure of the quote is a whole number of steps: nothing is left to be rounded by whoever adds it up.
    for (const figure of [...lines.map(({ amount }) => amount ?? NaN), ...(Object.values(totals) as number[])]) expect(Big(figure).mod(step).toNumber()).toBe(0);
    for (const { unitPrice, quantity, amount } of lines) expect(Math.abs((unitPrice ?? NaN) * quantity - (amount ?? NaN))).toBeLessThanOrEqual(step / 2 + 1e-9);
  });

  // Half-to-even and half-up differ on 0.125; steps of 0.05 are common where small coins are gone.
  test.each([[0.125, 0.01, "up", 0.13], [0.125, 0.01, "even", 0.12], [1.02, 0.05, "up", 1], [1.025, 0.05, "up", 1.05], [-0.125, 0.01, "up", -0.13]] as const)("%p to steps of %p, halves %s, is %p", (amount, step, halves, expected) => {
    expect(rounded(Big(amount), { step, halves }).toNumber()).toBe(expected);
  });
});

describe("a quote with a stop", () => {
  const stopped: CarCells = { Material: "copper" };

  test("is on hold", () => expect(quoted(stopped).hold.map(({ code }) => code)).toEqual(["material-copper"]));

  test("goes out once the stop is accepted for this car, and prints the reason", () => {
    const { hold, accepted } = quoted({ ...stopped, Accepted: "material-copper: show car, never driven" });
    expect([hold.length, accepted[0]?.because]).toEqual([0, "accepted for this car: show car, never driven"]);
  });
});

describe("fluid", () => {
  test("in a line is its bore times its length", () => {
    const stock = { name: "T", material: "mild steel", outsideDiameter: inches(0.1875), wall: inches(0.028), form: "coil" } as const;
    // Bore 0.1315 in, area 0.013581 in²; 100 in hold 1.35813 in³ = 22.256 cm³ (1 in³ = 16.387064 cm³).
    expect((volumeOfRun({ tube: inches(0.1875), stock, length: inches(100) }) ?? NaN) * 1e6).toBeCloseTo(22.256, 2);
  });

  test("comes in the bottles that cost least, twice the fill by default", () => {
    const bottles = table("Fluid | Bottle (ml) | Price", "DOT 4 | 50 | 4", "DOT 4 | 250 | 9", "DOT 3 | 1000 | 1");
    const shop = shopWith([], [bottles]);
    const need = fluidFor(catalogueOf(shop), report({ Fluid: "DOT 4" }, shop));
    // 268 in of line hold 268 × 0.013581 in² = 3.640 in³ = 59.64 ml; twice that is 119.3 ml: three of 50 ml cost 12, one of 250 ml costs 9.
    expect(need.withFlush * 1e6).toBeCloseTo(119.3, 0);
    expect([need.bottles.map(({ bottle, count }) => [bottle.price, count]), need.price]).toEqual([[[9, 1]], 9]);
    expect(need.leftOut.length).toBeGreaterThan(0);
  });

  const bottles = table("Fluid | Bottle (ml) | Price", "DOT 4 | 250 | 9");
  test.each([
    [{ Fluid: "" }, "which fluid is not stated"],
    [{ Fluid: "DOT 3; DOT 4" }, "the row names DOT 3 and DOT 4, and bottles are of one fluid only"],
    [{ Fluid: "DOT 5.1" }, "Fluids lists no bottle of DOT 5.1"],
    [{ Fluid: "DOT 4" }, undefined],
  ])("is of one kind: %p", (cells, why) => expect(fluidFor(catalogueOf(shopWith([], [bottles])), report(cells, shopWith([], [bottles]))).noBottles).toBe(why));

  test("that Supply names and nobody can price keeps the total open", () => {
    const { lines, totals, missing } = quoted({ Supply: "fluid", Fluid: "DOT 5.1" }, shopWith([], [bottles]));
    expect([lines.filter(({ section }) => section === "fluid").map(({ item, description }) => [item, description]), totals, missing]).toEqual([[["DOT 5.1", "Fluids lists no bottle of DOT 5.1"]], undefined, ["a price for DOT 5.1"]]);
  });
});
