/** The rack as the Stock view shows it. Lengths in inches here stand for any unit; every figure is worked out beside its test. */
import { rackGroups, WEEKS_AHEAD, type RackFacts, type RackGroup } from "../../../src/core/stock/rack";
import { planOpenQuotes } from "../../../src/core/stock/quote-plan";
import type { TubeNeed } from "../../../src/core/stock/tube-needs";
import { inches, metres } from "../../../src/core/quantity";
import { defaultSettings } from "../../../src/core/settings";
import type { TubeStock } from "../../../src/core/tube";

const TODAY = 46_346;
const settings = { ...defaultSettings, sawKerf: metres(0) };

const stock = (name: string, length: number, price: number | undefined, over: Partial<TubeStock> = {}): TubeStock => ({
  name, material: "mild steel", outsideDiameter: inches(3 / 16), wall: inches(0.028), form: "stick", length: metres(length), price, leadTimeWeeks: 2, orderCost: 18, ...over,
});

/** A quote of so many pieces, all on one day. */
const need = (pieces: readonly number[], over: Partial<TubeNeed> = {}): TubeNeed => {
  const day = TODAY + 10;
  return { quote: "Q", tube: "ten", chance: 0.5, spread: { earliest: day, likely: day, latest: day }, quantity: pieces.reduce((sum, piece) => sum + piece, 0), pieces: pieces.map((length, index) => ({ name: `p${index}`, length: metres(length), count: 1 })), ...over };
};

/** 7 on the last day of each of the 30 weeks that end today. */
const steadily = (tube: string) => Array.from({ length: 30 }, (_, week) => ({ date: TODAY - 7 * week, tube, length: metres(7) }));

const only = (facts: Partial<RackFacts>): RackGroup => {
  const groups = rackGroups({ rack: [stock("ten", 10, 4)], used: [], needs: [], priceBreaks: [], settings, today: TODAY, ...facts });
  if (groups.length !== 1 || !groups[0]) throw new Error(`${groups.length} groups`);
  return groups[0];
};

describe("groups", () => {
  test("lengths of one material, size and wall stand together, others apart, in order of material and size; offcuts are not bought", () => {
    const rack = [stock("b", 6, 1, { material: "stainless" }), stock("c", 6, 1, { outsideDiameter: inches(1 / 4) }), stock("ten", 10, 4), stock("off", 2, undefined, { form: "offcut", onHand: 3 }), stock("six", 6, 2), stock("left", 2, undefined, { form: "offcut", wall: inches(0.035), onHand: 3 })];
    const groups = rackGroups({ rack, used: [], needs: [], priceBreaks: [], settings, today: TODAY });
    expect(groups.map(({ lines }) => lines.map(({ tube }) => tube.name))).toEqual([["ten", "six"], ["c"], ["b"]]);
  });
  test.each([[0], [1], [2], [3], [4]])("their order is that of material, size and wall, wherever the table begins: row %d", (first) => {
    const rack = [
      stock("e", 6, 1, { material: "stainless" }), stock("c", 6, 1, { wall: inches(0.035) }), stock("a", 6, 1, { material: "copper", outsideDiameter: inches(5 / 16) }), stock("d", 6, 1, { outsideDiameter: inches(1 / 4) }), stock("b", 6, 1),
    ];
    const groups = rackGroups({ rack: [...rack.slice(first), ...rack.slice(0, first)], used: [], needs: [], priceBreaks: [], settings, today: TODAY });
    expect(groups.map(({ lines }) => lines[0]?.tube.name)).toEqual(["a", "b", "c", "d", "e"]);
  });
  test("usage of all lengths of a size is one history", () => {
    const group = only({ rack: [stock("ten", 10, 4), stock("six", 6, 2)], used: [...steadily("ten"), ...steadily("SIX")] });
    expect(group.usage).toEqual(Array.from({ length: 30 }, () => 14));
    expect(group.forecast.rate).toBeCloseTo(14, 9);
  });
});

describe("stock", () => {
  // 3 tens on hand, 2 more due on the 15th day: 50 in all, at 7 a week and 1 a day. Half a quote of 10 on the 10th day counts 5.
  const facts = { rack: [stock("ten", 10, 4, { onHand: 3, onOrder: 2, due: TODAY + 15 })], used: steadily("ten"), needs: [need([4, 6])] };
  test("on hand, on order and weeks of cover", () => {
    const group = only(facts);
    expect([group.onHand, group.onOrder]).toEqual([30, 20]);
    expect(group.weeksOfCover).toBeCloseTo(50 / (7 + 5 / WEEKS_AHEAD), 9);
  });
  test("projected week by week, with arrivals and open quotes", () => {
    // The quote's day lies in the second week, the arrival in the third.
    expect(only(facts).outlook.slice(0, 4).map(({ mean }) => Math.round(mean * 1e6) / 1e6)).toEqual([23, 11, 24, 17]);
  });
  test("its spread: usage does not stray, a quote of 10 at one half does by 5, and a tenth lies 1.2816 deviations below", () => {
    const [first, second] = only(facts).outlook;
    expect([first?.low, first?.high]).toEqual([first?.mean, first?.mean]);
    expect((second?.mean ?? 0) - (second?.low ?? 0)).toBeCloseTo(1.2815515655 * 5, 6);
  });
  test("the day on which it runs out", () => {
    // After four weeks 17 are left; at 1 a day they last 17 days more, and the next is short.
    expect(only(facts).stockOut).toBe(TODAY + 1 + 28 + 17);
  });
  test("open quotes may be left out, as usage holds them already", () => {
    const group = only({ ...facts, settings: { ...settings, pipelineUse: "left out" } });
    expect(group.plan).toBeUndefined();
    expect(group.outlook[1]?.mean).toBeCloseTo(16, 6);
  });
  test("a line answers as REORDER does, with its share of the open quotes", () => {
    const [line] = only(facts).lines;
    // Two weeks of lead time and one of review: 3 · 7 of usage and 5 of quotes in mean demand; safety stock is what the point holds beyond it.
    expect((line?.advice?.reorderPoint ?? 0) - (line?.advice?.safetyStock ?? 0)).toBeCloseTo(26, 6);
  });
  // Lead time and review are three weeks from tomorrow: the 21st day is their last.
  test.each([[21, 26], [22, 21]])("a quote of 10 at one half on day %d from today makes a mean demand of %d until an order of next week arrives", (day, mean) => {
    const on = TODAY + day;
    const [line] = only({ ...facts, needs: [need([4, 6], { spread: { earliest: on, likely: on, latest: on } })] }).lines;
    expect(line?.advice?.demand.mean).toBeCloseTo(mean, 6);
  });
  // Two weeks of lead time from tomorrow end on the 15th day, in the third week.
  test("what is on order without a day arrives after a whole lead time", () => {
    const outlook = only({ rack: [stock("ten", 10, 4, { onHand: 3, onOrder: 2 })], used: steadily("ten") }).outlook;
    expect(outlook).toHaveLength(WEEKS_AHEAD);
    expect(outlook.slice(0, 4).map(({ mean }) => Math.round(mean * 1e6) / 1e6)).toEqual([23, 16, 29, 22]);
  });
  // 14 in every other week: 30 squares of 7 over 29. Four weeks stray twice as far as one.
  test("usage that strays widens the outlook with the root of time, to both sides alike", () => {
    const [first, , , fourth] = only({ ...facts, needs: [], used: Array.from({ length: 15 }, (_, pair) => [{ date: TODAY - 14 * pair, tube: "ten", length: metres(14) }, { date: TODAY - 14 * pair - 7, tube: "ten", length: metres(0) }]).flat() }).outlook;
    const edge = 1.2815515655 * 7 * Math.sqrt(30 / 29);
    expect([(first?.mean ?? 0) - (first?.low ?? 0), (first?.high ?? 0) - (first?.mean ?? 0)]).toEqual([expect.closeTo(edge, 6), expect.closeTo(edge, 6)]);
    expect((fourth?.mean ?? 0) - (fourth?.low ?? 0)).toBeCloseTo(2 * edge, 6);
  });
  test("without demand nothing runs out, and there is no cover to tell", () => expect(only({ rack: [stock("ten", 10, 4, { onHand: 3 })] })).toMatchObject({ onHand: 30, weeksOfCover: undefined, stockOut: undefined, usage: [] }));
  // A year takes 36.5 tens and 60.9 sixes. Tens from 40 on at 3: √(2 · 18 · 36.52 / 0.75) = 41.9. Sixes at 4: √(2 · 18 · 60.87 / 1) = 46.8, at 3 it would be 54.
  test("a price by quantity is that of the tube it names, in capitals or not", () => {
    const { lines } = only({ rack: [stock("ten", 10, 4), stock("six", 6, 4)], used: [...steadily("ten"), ...steadily("six")], priceBreaks: [{ tube: "TEN", fromQuantity: 40, price: 3 }] });
    expect(lines.map(({ advice }) => advice?.lot)).toEqual([42, 47]);
  });
});

describe("the cut plan of the open quotes", () => {
  // 4 + 6 are one ten for 4; as sixes they would be two for 2 each, 4 as well, so the ten is made cheaper here.
  test("buys the lengths that cost least", () => {
    const plan = planOpenQuotes([need([4, 6])], [stock("ten", 10, 3.5), stock("six", 6, 2)], settings);
    expect(plan).toMatchObject({ pieces: 2, cost: 3.5, proved: true, buys: [{ tube: "ten", count: 1 }] });
    expect([...(plan?.shares ?? [])]).toEqual([["ten", 1]]);
  });
  test("takes first what lies on the rack, offcuts too", () => {
    const plan = planOpenQuotes([need([4, 6])], [stock("ten", 10, 3.5), stock("six", 6, 2, { onHand: 1 }), stock("off", 4, undefined, { form: "offcut", onHand: 1 })], settings);
    expect(plan).toMatchObject({ cost: 0, buys: [] });
    expect([...(plan?.shares ?? [])]).toEqual([["six", 1]]);
  });
  test("shares the need among the lengths as it is cut from them", () => {
    const rack = [stock("ten", 10, 3.5), stock("six", 6, 2, { onHand: 1 })];
    // 6 from the six on the rack, 10 from a bought ten.
    const plan = planOpenQuotes([need([10, 6])], rack, settings);
    expect([...(plan?.shares ?? [])].map(([name, share]) => [name, Math.round(share * 1000) / 1000])).toEqual(expect.arrayContaining([["ten", 0.625], ["six", 0.375]]) as unknown);
    const lines = only({ rack, needs: [need([10, 6])] }).lines;
    // Half of 16 in mean demand, no usage: 5 and 3.
    expect(lines.map(({ advice }) => Math.round(((advice?.reorderPoint ?? 0) - (advice?.safetyStock ?? 0)) * 1e6) / 1e6)).toEqual([5, 3]);
  });
  test("there is none without pieces, nor without a length that can be bought", () => {
    const off = stock("off", 4, undefined, { form: "offcut", onHand: 1 });
    expect([planOpenQuotes([], [stock("ten", 10, 3.5)], settings), planOpenQuotes([need([4])], [off, { ...stock("ten", 10, 3.5), length: undefined }], settings)]).toEqual([undefined, undefined]);
  });
  test("a row without its length is passed over, the others are cut from", () => expect(planOpenQuotes([need([4])], [{ ...stock("?", 1, 1), length: undefined, onHand: 5 }, stock("ten", 10, 3.5)], settings)?.buys).toEqual([{ tube: "ten", count: 1 }]));
  test("a length and a half on the rack is one length to cut from", () => expect(planOpenQuotes([need([10, 10])], [stock("ten", 10, 3.5, { onHand: 1.5 })], settings)).toMatchObject({ cost: 3.5, buys: [{ tube: "ten", count: 1 }] }));
  test("two halves need two lengths once the saw takes its width", () => expect(planOpenQuotes([need([5, 5])], [stock("ten", 10, 3.5)], { ...settings, sawKerf: metres(0.1) })?.buys).toEqual([{ tube: "ten", count: 2 }]));
  test("a piece that no length holds is named and the others are planned", () => {
    expect(planOpenQuotes([need([11, 6])], [stock("ten", 10, 3.5)], settings)).toMatchObject({ buys: [{ tube: "ten", count: 1 }], problems: [{ item: "p0" }] });
  });
});
