/** Quotes and fluid by hand working on a small shop; prices, minutes and volumes are invented. */
import Big from "big.js";
import fc from "fast-check";
import { fluidFor, volumeOfRun } from "../../src/core/fluid";
import { rounded } from "../../src/core/money";
import { cubicMetres, inches } from "../../src/core/quantity";
import { quoteFor, sumOfQuotes, totalLines } from "../../src/core/quote";
import { quoteItems } from "../../src/core/quote-items";
import { decimalsOfMoney, moneyFormat } from "../../src/core/say-money";
import { property } from "./seeded";
import { catalogueOf, NUTS, report, reportIn, table, TUBE, type CarCells, type Shop } from "./workshop";

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

  test("say which runs are made up", () => expect(quoted().lines[0]?.description).toBe("bending and flaring runs 1, 2, 3, 4, 5, 6, 7"));

  test("are every part fitted when Supply names all, but no part twice and no fluid without a price", () => {
    const { lines } = quoted({ Supply: "all" });
    expect(lines.filter(({ section }) => section === "parts").map(({ item, quantity }) => [item, quantity]).sort()).toEqual([["BLK", 1], ["DF", 2], ["HF", 2], ["HR", 1], ["MC", 1], ["SW-CAP", 1], ["TEE", 1], ["WR", 2]]);
    expect(lines.filter(({ section }) => section === "fluid").map(({ description, amount }) => [description, amount])).toEqual([["which fluid is not stated", undefined]]);
  });

  const assumedOf = (supply: string): readonly string[] => quoteItems(catalogueOf(shopWith()), report({ Supply: supply }, shopWith())).assumed;
  test("assume that the other parts are on the car where Supply is blank, and nothing where it names what is sold", () => {
    expect(assumedOf("")).toEqual(["the quote sells the lines; every other part is on the car (Supply is blank)"]);
    expect(["lines", "all", "HF; valves", "brakes", "labour; fluid"].map(assumedOf)).toEqual([[], [], [], [], []]);
  });

  test("hold the parts of a kit that Supply names, at the kit's price or else the part's own", () => {
    const kits = table("Kit | Component | Quantity | Price", "REAR KIT | HR | 1 | 16.5", "REAR KIT | TEE | 2 | ", "OTHER KIT | HF | 2 | 10");
    const { lines, assumed } = quoted({ Supply: "rear kit" }, shopWith([], [kits]));
    // The workshop's tee costs 9: two of them 18.
    expect(lines.filter(({ section }) => section === "parts").map(({ item, description, quantity, amount }) => [item, description, quantity, amount])).toEqual([["HR", "of kit REAR KIT", 1, 16.5], ["TEE", "of kit REAR KIT", 2, 18]]);
    expect(assumed.filter((text) => text.startsWith("Supply"))).toEqual([]);
  });

  test("measure tube in metres where the shop does", () => {
    // 278.9375 in are 7.085 m: 7.09 to the centimetre. 25 for 300 in = 7.62 m is 3.2808 a metre, 3.28 to the cent; 7.09 of them 23.2552, 23.26 to the cent.
    expect(quoted({}, shopWith(["units | metric |"])).lines.find(({ section }) => section === "tube")).toMatchObject({ quantity: 7.09, unit: "m" });
  });

  test("count labour by what an operation applies to", () => {
    const operations = table("Operation | Applies to | Minutes", "bleed | car | 45", "route | run | 10", "mount | hose | 6");
    const { lines } = quoted({ Supply: "HF" }, shopWith(["labour rate | 90 |"], [operations]));
    // 45 min; 7 runs of 10 min; 2 hoses of 6 min, at 90 an hour.
    expect(lines.filter(({ section }) => section === "labour").map(({ item, quantity, amount }) => [item, quantity, amount])).toEqual([["bleed", 0.75, 67.5], ["route", 1.17, 105.3], ["mount", 0.2, 18]]);
    expect(lines.filter(({ section }) => section === "labour").map(({ description }) => description)).toEqual(["45 min", "7 × 10 min", "2 × 6 min"]);
  });

  // All runs are made up on a car without a set; a hose sold twice is mounted twice, a part that is not sold never.
  test.each<[string, number | undefined]>([["line", 7], ["made-up run", 7], ["set", undefined], ["HF", 2], ["hf", 2], ["HR", undefined], ["master", undefined], ["", 1]])("an operation that applies to %p is done as often as there are such things in the quote: %p times", (to, times) => {
    const { lines, assumed } = quoted({ Supply: "HF" }, shopWith(["labour rate | 90 |"], [table("Operation | Applies to | Minutes", `work | ${to} | 60`)]));
    expect(lines.find(({ section }) => section === "labour")?.quantity).toBe(times);
    expect(assumed.filter((text) => text.startsWith("operation"))).toEqual([]);
  });

  test("an operation that applies to nothing the tables know is not charged, and the quote says so", () => {
    const { lines, assumed } = quoted({ Supply: "HF" }, shopWith(["labour rate | 90 |"], [table("Operation | Applies to | Minutes", "polish | sunroof | 60")]));
    expect(lines.filter(({ section }) => section === "labour")).toEqual([]);
    expect(assumed).toContain('operation polish applies to "sunroof", which is nothing known');
  });

  test("labour has no price while Settings states no rate, and the quote no total", () => {
    expect(quoted({}, shopWith([], [table("Operation | Applies to | Minutes", "bleed | car | 45")]))).toMatchObject({ totals: undefined, missing: ["a price for bleed"] });
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
  test("there is no total while the runs of the car are not known", () => expect(quoted({ Valves: "?" })).toMatchObject({ totals: undefined, missing: ["the runs of this car"] }));

  test("there is no total while the material is not known", () => expect(quoted({ Material: "" })).toMatchObject({ totals: undefined, missing: ["a material for runs 1, 2, 3, 4, 5, 6, 7"] }));

  test("there is no total while the rack lacks the tube", () => expect(quoted({ Material: "stainless" }).missing).toEqual(["3/16 in stainless on the rack for runs 1, 2, 3, 4, 5, 6, 7"]));

  const splits = table("Platform | First year | Last year | Split", "P | 1960 | 1974 | front/rear");
  const measured = (rows: readonly string[], nuts = NUT_ROWS): Shop => ({ more: [nuts, ...priced.slice(1)], platforms: [splits, table("Platform | From | To | Length (in) | Tube (in)", ...rows.map((row) => `P | ${row}`))] });
  const MEASURED = ["valve | LF | 30 | 0.1875", "valve | RF | 50 | 0.1875", "axle-tee | LR | 28 | 0.1875", "axle-tee | RR | 32 | 0.1875"];
  test("there is no total while the length of a run is not known", () => {
    expect(quoted({}, measured([...MEASURED, "master | valve | 14 | 0.1875"]))).toMatchObject({ totals: undefined, missing: ["a length for run 5"] });
  });
  test("there is no total while two tube sizes would fit a run; its nuts wait for the size and are not asked for", () => {
    const wide = { ...NUT_ROWS, rows: [...NUT_ROWS.rows, ...["1/2-20", "9/16-18"].map((thread) => [`W-${thread}`, 0.25, thread, "inverted-flare-45", "male", 2])] };
    expect(quoted({}, measured([...MEASURED, "valve | rear-hose | 100 | 0.1875", "master | valve | 14 | "], wide))).toMatchObject({ totals: undefined, missing: ["a tube size for runs 1, 4"] });
  });

  test("there is no total while no nut goes on an end of a run; the nuts of its other ends are in the lines all the same", () => {
    const without = { more: [{ ...NUT_ROWS, rows: NUT_ROWS.rows.filter(([name]) => name !== "N716") }, ...priced.slice(1)] };
    const { lines, totals, missing } = quoted({}, without);
    expect([totals, missing]).toEqual([undefined, ["a nut for run 5 at BLK RO"]]);
    expect(lines.filter(({ section }) => section === "nuts").map(({ item, quantity }) => [item, quantity])).toEqual([["N12", 3], ["N38", 9], ["N916", 1]]);
  });

  test("there is no total while a port that a run meets has no thread", () => {
    const bare = { ...shopWith(), parts: ["BLK distribution-block @valve price=40 | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear"] };
    expect(quoted({}, bare)).toMatchObject({ totals: undefined, missing: ["a nut for run 5 at BLK RO"] });
  });

  test("a set is one line, with its runs and material, beside the runs made up without it; an operation on sets is done once for it", () => {
    const more = [
      table("Set | Platform | Front | Rear | Valves | Material | Price", "S1 | P | disc | drum | BLK | mild steel | 20"),
      table("Set | From | To | Tube (in) | Length (in) | Thread A | Seat A | Thread B | Seat B", "S1 | valve | LF | 0.1875 | 30 | 3/8-24 | inverted-flare-45 | 3/8-24 | inverted-flare-45"),
      table("Operation | Applies to | Minutes", "unpack | set | 6", "test | made-up run | 6"),
    ];
    const { lines } = quoted({}, shopWith(["labour rate | 60 |"], more));
    expect(lines.slice(0, 2).map(({ section, item, description, quantity, amount }) => [section, item, description, quantity, amount])).toEqual([
      ["set", "S1", "pre-bent line set, 1 run, mild steel", 1, 20], ["made-up runs", "made-up run", "bending and flaring runs 1, 3, 4, 5, 6, 7", 6, 180],
    ]);
    // 6 min is 0.1 h at 60 an hour; six made-up runs of 6 min are 0.6 h.
    expect(lines.filter(({ section }) => section === "labour").map(({ item, quantity, amount }) => [item, quantity, amount])).toEqual([["unpack", 0.1, 6], ["test", 0.6, 36]]);
  });

  test("adapters are lines of their own, each with the threads it joins", () => {
    const adapter = table("Adapter | Thread A | Seat A | Gender A | Thread B | Seat B | Gender B | Price", "AD | 7/16-24 | inverted-flare-45 | male | 3/8-24 | inverted-flare-45 | female | 3");
    const nuts = { ...NUT_ROWS, rows: NUT_ROWS.rows.filter(([name]) => name !== "N716") };
    const { lines } = quoted({}, { more: [nuts, ...priced.slice(1), adapter] });
    expect(lines.find(({ section }) => section === "adapters")).toMatchObject({ item: "AD", description: "7/16-24 to 3/8-24", quantity: 1, amount: 3 });
    // The adapter takes a 3/8-24 nut: ten of them instead of nine.
    expect(lines.find(({ item }) => item === "N38")?.quantity).toBe(10);
  });

  test("printed totals leave out what is nothing, but never the sum and the total, and a discount is below nothing", () => {
    const totals = { subtotal: 100, discount: 10, freight: 0, tax: 7.2, total: 97.2, deposit: 0 };
    expect(totalLines(totals).map(({ name, amount }) => [name, amount])).toEqual([["subtotal", 100], ["discount", -10], ["tax", 7.2], ["total", 97.2]]);
    expect(totalLines({ subtotal: 0, discount: 0, freight: 0, tax: 0, total: 0, deposit: 0 }).map(({ name, amount }) => [name, amount])).toEqual([["subtotal", 0], ["total", 0]]);
  });

  test("several cars together cost the exact sum of their totals, and nothing is known of it while one has none", () => {
    const of = (total: number) => ({ totals: { subtotal: total, discount: 0, freight: 0, tax: 0, total, deposit: 0 } });
    expect([sumOfQuotes([of(0.1), of(0.2)]), sumOfQuotes([of(0.1), { totals: undefined }]), sumOfQuotes([])]).toEqual([0.3, undefined, 0]);
  });

  test.each([[0.01, 2, "#,##0.00"], [0.05, 2, "#,##0.00"], [1, 2, "#,##0.00"], [0.001, 3, "#,##0.000"]])("with a rounding step of %p money has %p decimals", (roundingStep, decimals, format) => {
    expect([decimalsOfMoney({ roundingStep }), moneyFormat({ roundingStep })]).toEqual([decimals, format]);
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

  // The car's lines need 119.3 ml, as worked above.
  const bought = (...rows: readonly string[]) => {
    const shop = shopWith([], [table("Fluid | Bottle (ml) | Price", ...rows)]);
    const { bottles, price } = fluidFor(catalogueOf(shop), report({ Fluid: "DOT 4" }, shop));
    return [bottles.map(({ bottle, count }) => `${count} × ${Math.round(bottle.bottle * 1e6)} ml`).join(" + "), price];
  };
  test.each<[string, readonly string[], string, number | undefined]>([
    ["two sizes are mixed where that costs least: 5 + 4 against two of 100 ml at 10 and three of 50 ml at 12", ["DOT 4 | 100 | 5", "DOT 4 | 50 | 4"], "1 × 100 ml + 1 × 50 ml", 9],
    ["of two ways at one price the one with one size: two of 100 ml at 10, or 5 + 5", ["DOT 4 | 100 | 5", "DOT 4 | 50 | 5"], "2 × 100 ml", 10],
    ["many small bottles where the big one is dear: three at 2 against one at 7", ["DOT 4 | 250 | 7", "DOT 4 | 50 | 2"], "3 × 50 ml", 6],
    ["a bottle without a price only where no other holds the fluid", ["DOT 4 | 250 | ", "DOT 4 | 50 | 4"], "3 × 50 ml", 12],
    ["and then the price is not known", ["DOT 4 | 50 | "], "3 × 50 ml", undefined],
    ["nor is it where no bottle holds the fluid", ["DOT 3 | 50 | 4"], "", undefined],
  ])("%s", (_, rows, bottles, price) => expect(bought(...rows)).toEqual([bottles, price]));

  test("says what is not in its figures: parts that do not say what they hold, each once, and lines without a length", () => {
    const shop = { ...shopWith(), platforms: [table("Platform | First year | Last year | Split", "P | 1960 | 1974 | front/rear"), table("Platform | From | To | Length (in) | Tube (in)", "P | valve | LF | 30 | 0.1875")] };
    // Six of the seven lines have no length; the master, two hoses of one kind and one of another, and two kinds of brake say nothing.
    expect([...fluidFor(catalogueOf(shop), report({ Fluid: "DOT 4" }, shop)).leftOut].sort()).toEqual(["6 lines without length or wall", ...["DF", "HF", "HR", "MC", "WR"].map((name) => `what ${name} holds`)]);
  });

  test("of the parts counts with that of the lines", () => {
    const shop = shopWith();
    const catalogue = catalogueOf({ ...shop, more: [...(shop.more ?? [])] });
    const components = new Map([...catalogue.components].map(([key, one]) => [key, one.name === "MC" ? { ...one, fluidHeld: cubicMetres(200e-6) } : one]));
    const need = fluidFor(catalogue, reportIn({ ...catalogue, key: `${catalogue.key} with fluid`, components }, { Fluid: "DOT 4" }));
    // 59.64 ml in the lines, 200 ml in the master; twice their sum is 519.3 ml.
    expect([need.parts, need.fill, need.withFlush].map((volume) => Number((volume * 1e6).toFixed(1)))).toEqual([200, 259.6, 519.3]);
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
