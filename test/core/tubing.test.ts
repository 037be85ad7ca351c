/** Totals by hand. Allowance of a run: a flare and a trim at each end and one saw cut, 2 × (0.25 + 0.5) + 0.0625 = 1.5625 in as shipped. */
import { inInches, inches, type Metres } from "../../src/core/quantity";
import { sayLots, sayUnbought, tubingOf, type Tubing, type TubingTotal } from "../../src/core/tubing";
import { catalogueOf, LENGTH_ROWS, report, table, TUBE, type CarCells, type Shop } from "./workshop";

const shown = (value: Metres | undefined): number | undefined => (value === undefined ? undefined : Number(inInches(value).toFixed(6)));
const bought = (total: TubingTotal | undefined): string | undefined => total?.bought && sayLots(total.bought);
const tubing = (cars: readonly CarCells[], shop: Shop): Tubing => {
  const { settings, tube } = catalogueOf(shop);
  return tubingOf(cars.flatMap((cells) => report(cells, shop).runs), settings, tube);
};
const rack = (...rows: readonly string[]): Shop => ({ more: [table(TUBE, ...rows)] });
const STICK = "ST-60 | mild steel | 0.1875 | 0.028 | stick | 60 | 6";
const COIL = "CO-300 | mild steel | 0.1875 | 0.028 | coil | 300 | 25";

// The workshop's car: 14 + 30 + 50 + 14 + 100 + 28 + 32 = 268 in over 7 runs; 7 × 1.5625 = 10.9375.
test("net, allowance and cut of one car", () => {
  const [total, ...others] = tubing([{}], rack(COIL)).totals;
  expect(others).toEqual([]);
  expect([shown(total?.net), shown(total?.allowance), shown(total?.cut), total?.runs, shown(total?.wall), total?.material]).toEqual([268, 10.9375, 278.9375, 7, 0.028, "mild steel"]);
  expect([bought(total), shown(total?.scrap)]).toEqual(["1 × CO-300", 21.0625]); // 300 - 278.9375
  // π (0.1875 - 0.028) 0.028 in² is 0.014030 in² = 9.0518 mm²; 268 in of it at 7850 kg/m³ (from memory) is 0.48370 kg.
  expect(total?.mass).toBeCloseTo(0.4837, 4);
});

test("two cars add up", () => expect(tubing([{}, { Car: "D" }], rack(COIL)).totals.map(({ net, runs }) => [shown(net), runs])).toEqual([[536, 14]]));

// Runs of the workshop's car: 3/16 in, some of 100 in, which no stick of 60 in holds.
test.each<[string, CarCells, string, string]>([
  ["a material that nobody stated", { Material: "" }, COIL, "not known before the material is stated"],
  ["a material that the rack has not", { Material: "stainless" }, COIL, "no such tube in the table Tube"],
  ["sticks that are too short", {}, STICK, "no length in the table Tube is long enough"],
])("%s is told where nothing can be bought", (_, cells, row, says) => {
  const [total] = tubing([cells], rack(row)).totals;
  expect([total?.bought, total && sayUnbought(total)]).toEqual([undefined, says]);
});

test("materials, sizes and walls are totalled apart, in that order", () => {
  const shop: Shop = {
    ...rack(COIL, "SS | stainless | 0.1875 | 0.035 | stick | 240 | 40", "W | mild steel | 0.25 | 0.028 | coil | 300 | 30"),
    platforms: [table("Platform | First year | Last year | Split", "P | 1960 | 1974 | front/rear"), table(LENGTH_ROWS, ...["master | valve | 14 | 0.25", "valve | LF | 30 | 0.1875", "valve | RF | 50 | 0.1875", "valve | rear-hose | 90 | 0.1875", "axle-tee | LR | 28 | 0.1875", "axle-tee | RR | 32 | 0.1875"].map((row) => `P | ${row}`))],
  };
  // Quarter-inch: two lines of 14. Stainless 3/16: the front lines of one car, 30 + 50; its line from the master has no stainless 1/4 on the rack.
  expect(tubing([{}, { Car: "D", Material: "stainless", Scope: "front" }], shop).totals.map(({ material, outsideDiameter, wall, net }) => [material, shown(outsideDiameter), shown(wall), shown(net)])).toEqual([
    ["mild steel", 0.1875, 0.028, 230], ["mild steel", 0.25, 0.028, 28], ["stainless", 0.1875, 0.035, 80], ["stainless", 0.25, undefined, 14],
  ]);
});

test("tube of another material or size and a rest of tube are not bought for it, however cheap", () => {
  const cheap = ["SS | stainless | 0.1875 | 0.028 | coil | 300 | 1", "WIDE | mild steel | 0.25 | 0.028 | coil | 300 | 1", "REST | mild steel | 0.1875 | 0.028 | offcut | 300 | 0"];
  expect(tubing([{}], rack(COIL, ...cheap)).totals.map(bought)).toEqual(["1 × CO-300"]);
});

/** Cuts of 2 in beyond each length (0.25 + 0.5 twice and a saw cut of 0.5): 60, 52, 34, 32, 30, 16 and 16 in. */
const CUTS: Shop = {
  platforms: [table("Platform | First year | Last year | Split", "P | 1960 | 1974 | front/rear"), table(LENGTH_ROWS, ...["master | valve | 14", "valve | LF | 30", "valve | RF | 50", "valve | rear-hose | 58", "axle-tee | LR | 28", "axle-tee | RR | 32"].map((row) => `P | ${row} | 0.1875`))],
  settings: ["saw kerf | 0.5 | in"],
};

// [60] [52] [34 16] [32 16] [30]: four sticks would have to be full, and nothing fills up 52 to 60.
test("240 in of cuts need five sticks of 60 in", () => {
  const [total] = tubing([{}], { ...CUTS, ...rack(STICK) }).totals;
  expect([shown(total?.cut), bought(total), shown(total?.scrap), total?.bought?.cost, total?.bought?.leastCost, total?.bought?.gap]).toEqual([240, "5 × ST-60", 60, 30, 30, 0]);
});

// Two cars need 480 in. Sticks [60] [60] [30 30] and a coil of 52 52 34 34 32 32 and four of 16, 300 in to the last: 18 + 25.
// First fit takes one stock alone: eight sticks at 48 at least, or two coils at 50. A coil and two sticks, 37, are 420 in and too short.
test("a coil and sticks together go before either alone, and nothing costs less", () => {
  const [total] = tubing([{}, { Car: "D" }], { ...CUTS, ...rack(STICK, COIL) }).totals;
  expect([bought(total), total?.bought?.cost, total?.bought?.leastCost, shown(total?.scrap)]).toEqual(["1 × CO-300; 3 × ST-60", 43, 43, 0]);
});

// Five sticks at 6 are 30; one coil at 25 is less. At 31 the coil loses.
test.each([[25, "1 × CO-300"], [31, "5 × ST-60"]] as const)("the stock that costs least in all is bought: a coil at %d", (price, lots) => {
  const [total] = tubing([{}], { ...CUTS, ...rack(STICK, `CO-300 | mild steel | 0.1875 | 0.028 | coil | 300 | ${price}`) }).totals;
  expect(bought(total)).toBe(lots);
});

test("a cut as long as the stick fits it, and one a hair longer does not", () => {
  const stick = (length: number): string => `ST | mild steel | 0.1875 | 0.028 | stick | ${length} | 6`;
  expect(tubing([{}], { ...CUTS, ...rack(stick(60)) }).totals.map(bought)).toEqual(["5 × ST"]);
  expect(tubing([{}], { ...CUTS, ...rack(stick(59.99)) }).totals[0]?.bought).toBeUndefined();
});

test("offcuts are not bought", () => expect(tubing([{}], { ...CUTS, ...rack("OFF | mild steel | 0.1875 | 0.028 | offcut | 300 | 1") }).totals[0]?.bought).toBeUndefined());

test("without a price the least length is bought", () => {
  const shop = { ...CUTS, ...rack("ST-60 | mild steel | 0.1875 | 0.028 | stick | 60 |", "ST-120 | mild steel | 0.1875 | 0.028 | stick | 120 |") };
  // 240 in would have to be full sticks of either length, and nothing goes with 52 to make 60 or 120: the next is 300.
  const [total] = tubing([{}], shop).totals;
  expect([shown(total?.scrap), total?.bought?.gap, total?.bought?.cost]).toEqual([60, 0, undefined]);
});

test("allowances come from Settings", () => {
  const { totals } = tubing([{}], { ...rack(COIL), settings: ["flare allowance | 0.5 | in", "trim allowance | 25.4 | mm", "saw kerf | 0.125 | in"] });
  expect(totals.map(({ allowance }) => shown(allowance))).toEqual([7 * (2 * (0.5 + 1) + 0.125)]);
});

test("4.75 mm and 3/16 in are totalled as one size", () => {
  const shop: Shop = { ...rack(COIL), platforms: CUTS.platforms?.slice(0, 1).concat([table("Platform | From | To | Length (in) | Tube (mm)", ...["master | valve | 14 | 4.75", "valve | LF | 30 | 4.7625", "valve | RF | 50 | 4.75", "valve | rear-hose | 90 | 4.75", "axle-tee | LR | 28 | 4.75", "axle-tee | RR | 32 | 4.75"].map((row) => `P | ${row}`))]) ?? [] };
  expect(tubing([{}], shop).totals.map(({ outsideDiameter, net }) => [outsideDiameter, shown(net)])).toEqual([[inches(0.1875), 258]]);
});

test("runs without a length are left out and said", () => {
  const shop: Shop = { ...rack(COIL), platforms: [table("Platform | First year | Last year | Split", "P | 1960 | 1974 | front/rear"), table(LENGTH_ROWS, "P | valve | LF | 30 | 0.1875")] };
  const { totals, leftOut } = tubing([{}], shop);
  expect([totals.map(({ net }) => shown(net)), leftOut.length]).toEqual([[30], 6]);
});

test("runs of no stated material are totalled as such and nothing is bought for them", () => {
  expect(tubing([{ Material: "" }], rack(COIL)).totals.map((total) => [total.material, shown(total.net), bought(total), total.mass])).toEqual([[undefined, 268, undefined, undefined]]);
});

test("no runs, no totals", () => expect(tubing([{ Valves: "?" }], rack(COIL))).toEqual({ totals: [], leftOut: [] }));
