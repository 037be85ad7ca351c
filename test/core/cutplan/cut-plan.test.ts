import { planCuts, type CuttingJob, type PieceToCut, type StockToCut } from "../../../src/core/cutplan/cut-plan";
import { inches, inInches, metres, millimetres } from "../../../src/core/quantity";

const piece = (name: string, length: number, count = 1): PieceToCut => ({ name, length: inches(length), count });
const stock = (name: string, length: number, price?: number, count?: number): StockToCut => ({ name, length: inches(length), price, count });
const plan = (job: Partial<CuttingJob>) => planCuts({ pieces: [], stocks: [], kerf: inches(0), endTrim: inches(0), ...job });

describe("kerf and end trim", () => {
  // By hand: four 24 in pieces and three cuts of 1/16 in are 96 3/16 in.
  test.each([[96, 2], [96.1875, 1]])("four pieces of 24 in with a 1/16 in kerf from %f in take %i lengths", (length, times) => {
    const planned = plan({ pieces: [piece("A", 24, 4)], stocks: [stock("stick", length, 10)], kerf: inches(1 / 16) });
    expect([planned.cost, planned.proved]).toEqual([10 * times, true]);
  });

  test("the end trim comes off each length of stock", () => {
    const planned = plan({ pieces: [piece("A", 24, 4)], stocks: [stock("stick", 96, 10)], endTrim: inches(0.5) });
    expect(planned.cost).toBe(20);
  });

  test("used and left over make up the stock", () => {
    const [pattern] = plan({ pieces: [piece("A", 30, 3)], stocks: [stock("stick", 96, 10)], kerf: inches(1 / 8), endTrim: inches(1) }).patterns;
    // By hand: 3 × 30 1/8 = 90 3/8; 95 - 90 3/8 = 4 5/8.
    expect([inInches(pattern?.used ?? metres(0)), inInches(pattern?.left ?? metres(0))].map((length) => length.toFixed(6))).toEqual(["90.375000", "4.625000"]);
  });
});

describe("money and length", () => {
  test("prices in cents add up to the cent", () => {
    // By hand: 60 in of pieces fit one 72 in stick at 8.13; two 36 in sticks at 4.07 cost 8.14.
    const planned = plan({ pieces: [piece("A", 30, 2)], stocks: [stock("long", 72, 8.13), stock("short", 36, 4.07)] });
    expect([planned.cost, planned.lowerBound, planned.proved, planned.patterns[0]?.stock.name]).toEqual([8.13, 8.13, true, "long"]);
  });

  test("without any price the least length of stock is looked for", () => {
    const planned = plan({ pieces: [piece("A", 30, 2)], stocks: [stock("long", 96), stock("short", 61)] });
    expect([planned.objective, inInches(metres(planned.cost)).toFixed(6)]).toEqual(["length", "61.000000"]);
  });

  test("an offcut that costs nothing is used before bought tube", () => {
    const planned = plan({ pieces: [piece("A", 30, 3)], stocks: [stock("stick", 36, 5), stock("offcut", 62, 0, 1)] });
    expect(planned.cost).toBe(5);
  });

  test("millimetres are counted in tenths, and what no unit measures is rounded to the safe side", () => {
    const metric = (length: number) => planCuts({ pieces: [{ name: "A", length: millimetres(length), count: 2 }], stocks: [{ name: "stick", length: millimetres(1000), price: 1 }], kerf: metres(0), endTrim: metres(0) });
    expect([metric(500).rounded, metric(500).cost]).toEqual([false, 1]);
    expect([metric(499.973).rounded, metric(499.973).cost]).toEqual([true, 1]);
    expect([metric(500.013).rounded, metric(500.013).cost]).toEqual([true, 2]);
  });
});

describe("what cannot be cut is named, and the rest is planned", () => {
  const sound = piece("sound", 20, 2);
  const stocks = [stock("stick", 72, 10, 3)];

  test.each([
    ["longer than any stock", piece("bad", 80), /longer than any stock/],
    ["zero", piece("bad", 0), /not above 0/],
    ["negative", piece("bad", -3), /not above 0/],
    ["not a number", { name: "bad", length: metres(NaN), count: 1 }, /not a number/],
    ["no count", piece("bad", 20, 0), /not a whole number/],
    ["half a piece", piece("bad", 20, 1.5), /not a whole number/],
    ["more than a shop ever cut", piece("bad", 20, 1_000_001), /above a million/],
  ] as const)("%s", (_, bad, says) => {
    const planned = plan({ pieces: [bad, sound], stocks });
    expect(planned.problems).toEqual([{ item: "bad", says: expect.stringMatching(says) as string }]);
    expect(planned.patterns.flatMap(({ cuts, times }) => cuts.map(({ names, count }) => [names, count * times]))).toEqual([[["sound"], 2]]);
  });

  test.each([
    ["stock without length", stock("bad", 0, 5), /not above the end trim/],
    ["stock without price among priced", stock("bad", 96), /no price/],
    ["free stock without a count", stock("bad", 96, 0), /costs nothing and has no count/],
    ["a price below 0", stock("bad", 96, -1), /price/],
    ["a price beyond all money", stock("bad", 96, 1_000_000_001), /above a thousand million/],
    ["stock longer than any road", { name: "bad", length: metres(10_001), price: 5, count: undefined }, /above 10 km/],
    ["a count that is none", stock("bad", 96, 5, -1), /count/],
  ] as const)("%s", (_, bad, says) => {
    const planned = plan({ pieces: [sound], stocks: [bad, ...stocks] });
    expect(planned.problems).toEqual([{ item: "bad", says: expect.stringMatching(says) as string }]);
    expect(planned.cost).toBe(10);
  });

  test("not enough stock: as much as there is stock for is planned", () => {
    // By hand: three sticks of 72 in hold one 40 in piece each.
    const planned = plan({ pieces: [piece("A", 40, 5)], stocks });
    expect(planned.problems).toEqual([{ item: "A", says: "2 not planned: no stock is left for them" }]);
    expect([planned.cost, planned.proved]).toEqual([30, true]);
  });

  test("nothing that can be planned costs nothing", () => {
    expect(plan({ pieces: [piece("bad", -1)], stocks })).toMatchObject({ patterns: [], cost: 0, lowerBound: 0, proved: true, gap: 0 });
    expect(plan({ pieces: [sound], stocks: [] }).problems).toEqual([{ item: "sound", says: expect.stringMatching(/longer than any stock/) as string }]);
  });
});
