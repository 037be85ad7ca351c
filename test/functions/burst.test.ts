import { failure, keyOf, tableFrom } from "./sheet";

describe("BURST", () => {
  // Check values: Lamé 8515 psi (B14), Barlow 7467 psi and von Mises 7334 psi (equations 7.2, 7.3), each rounded to 1 psi.
  test("3/16 in × 0.028 in at 25 ksi by the three formulas", () => {
    const table = tableFrom("BURST", "3/16", 0.028, 25_000, 4, null);
    expect(table[0]).toEqual(["Formula", "Yields at (psi)", "Safety factor", "Working limit (psi)", "Diameter over wall", "Rests on"]);
    expect(table.slice(1).map(([formula, yields]) => [formula, Math.round(Number(yields))])).toEqual([["Barlow", 7467], ["Lamé", 8515], ["von Mises", 7334]]);
    expect(table.slice(1).map((row) => Math.abs(Number(row[1]) / 4 - Number(row[3])) < 0.06)).toEqual([true, true, true]);
    expect(table[1]?.[5]).toMatch(/below a diameter over wall of 20 an estimate/);
  });

  test("millimetres go with MPa", () => {
    // By hand: Barlow 2 × 172.37 MPa × 0.7112 / 4.7625 = 51.48 MPa.
    expect(Number(tableFrom("BURST", 4.7625, 0.7112, 172.37, null, "mm")[1]?.[1])).toBeCloseTo(51.48, 2);
  });

  test("without a safety factor there is no working limit", () => expect(tableFrom("BURST", "3/16", 0.028, 25_000, null, null)[3]?.slice(2, 4)).toEqual(["", ""]));

  test("the shop's safety factor stands in where a catalog is given and no factor", () => {
    const key = keyOf({ settings: ["burst safety factor | 4 |"] });
    expect(tableFrom("BURST", "3/16", 0.028, 25_000, null, null, key).map((row) => row[2])).toEqual(["Safety factor", 4, 4, 4]);
    expect(tableFrom("BURST", "3/16", 0.028, 25_000, 2, null, key)[1]?.[2]).toBe(2);
    expect(failure("BURST", "3/16", 0.028, 25_000, null, null, "PLUMB-none")).toMatchObject({ kind: "notAvailable" });
  });

  test.each([
    ["a wall of half the diameter", ["3/16", 0.09375, 25_000, null, null], /^wall: accepted: less than half/],
    ["no strength", ["3/16", 0.028, 0, null, null], /^yield: read nothing/],
    ["no diameter", [0, 0.028, 25_000, null, null], /^outside diameter: read nothing/],
  ] as const)("%s answers #VALUE!", (_, args, message) => expect(failure("BURST", ...args)).toEqual({ kind: "value", message: expect.stringMatching(message) as string }));
});
