import fc from "fast-check";
import type { Adapter, Nut } from "../../src/core/catalogue";
import { fitTube, joinFaces, sumPrices, type AdapterStep, type FittingStock } from "../../src/core/fittings";
import { faceKey, mates, type Gender, type JointFace, type Seat } from "../../src/core/joint";
import { inches, millimetres } from "../../src/core/quantity";
import { threadNamed } from "../../src/core/thread";
import { property } from "./seeded";

const SEAT_WORDS: Readonly<Record<string, Seat>> = { IF: "inverted-flare-45", BU: "bubble-iso", JIC: "flare-37" };

/** `3/8-24 IF f` */
function face(text: string): JointFace {
  const [name = "", seat = "", gender = ""] = text.split(" ");
  const thread = threadNamed(name);
  if (!thread) throw new Error(name);
  return { thread, seat: SEAT_WORDS[seat] as Seat, gender: gender === "f" ? "female" : "male" };
}

const TUBE = inches(3 / 16);
const nut = (name: string, on: string, price?: number, tube = TUBE): Nut => ({ name, tube, face: face(on), price });
const adapter = (name: string, a: string, b: string, price?: number): Adapter => ({ name, a: face(a), b: face(b), price });
const stock = (nuts: readonly Nut[], adapters: readonly Adapter[] = [], jointCost = 6): FittingStock => ({ nuts, adapters, jointCost });
const said = (answer: ReturnType<typeof fitTube>): string => (answer.fits ? [...answer.adapters.map((step) => step.adapter.name), answer.nut.name].join(" + ") : answer.reason);

const N38 = nut("N38", "3/8-24 IF m", 1);
const N716 = nut("N716", "7/16-24 IF m", 2);

test.each<[string, FittingStock, string, string]>([
  ["a nut of the port's thread and seat", stock([N38, N716]), "7/16-24 IF f", "N716"],
  ["the cheaper of two nuts", stock([N38, nut("N38-Z", "3/8-24 IF m", 0.5)]), "3/8-24 IF f", "N38-Z"],
  ["a nut alone before adapters, however dear it is", stock([nut("GOLD", "1/2-20 IF m", 500), N38], [adapter("A", "1/2-20 IF m", "3/8-24 IF f", 1)]), "1/2-20 IF f", "GOLD"],
  ["one adapter and a nut", stock([N38], [adapter("A", "1/2-20 IF m", "3/8-24 IF f", 4)]), "1/2-20 IF f", "A + N38"],
  ["an adapter listed the other way round", stock([N38], [adapter("A", "3/8-24 IF f", "1/2-20 IF m", 4)]), "1/2-20 IF f", "A + N38"],
  ["two cheap adapters lose against a dearer one by the cost of a joint: 4 + 6 against 1 + 6 + 1 + 6", stock([N38], [adapter("ONE", "1/2-20 IF m", "3/8-24 IF f", 4), adapter("B", "1/2-20 IF m", "5/8-18 IF f", 1), adapter("C", "5/8-18 IF m", "3/8-24 IF f", 1)]), "1/2-20 IF f", "ONE + N38"],
  ["and win where the joint costs less: 4 + 1 against 1 + 1 + 0 + 1", stock([N38], [adapter("ONE", "1/2-20 IF m", "3/8-24 IF f", 4), adapter("B", "1/2-20 IF m", "5/8-18 IF f", 1), adapter("C", "5/8-18 IF m", "3/8-24 IF f", 0)], 1), "1/2-20 IF f", "B + C + N38"],
  ["the nut's own price counts: 5 + 6 + 1 against 1 + 6 + 20", stock([N38, nut("N716-DEAR", "7/16-24 IF m", 20)], [adapter("A", "1/2-20 IF m", "3/8-24 IF f", 5), adapter("B", "1/2-20 IF m", "7/16-24 IF f", 1)]), "1/2-20 IF f", "A + N38"],
  ["the cheaper way is kept when a dearer one is found after it: 1 + 6 + 10 against 3 + 6 + 20", stock([nut("N38-10", "3/8-24 IF m", 10), nut("N716-20", "7/16-24 IF m", 20)], [adapter("A", "1/2-20 IF m", "3/8-24 IF f", 1), adapter("B", "1/2-20 IF m", "7/16-24 IF f", 3)]), "1/2-20 IF f", "A + N38-10"],
  ["of two nuts at one price the first by name", stock([nut("N-B", "3/8-24 IF m", 1), nut("N-A", "3/8-24 IF m", 1)]), "3/8-24 IF f", "N-A"],
  ["an unpriced nut only where no priced one fits", stock([nut("N-A", "3/8-24 IF m"), nut("N-B", "3/8-24 IF m", 9)]), "3/8-24 IF f", "N-B"],
  ["an unpriced adapter only where nothing priced fits", stock([N38], [adapter("FREE", "1/2-20 IF m", "3/8-24 IF f"), adapter("DEAR", "1/2-20 IF m", "3/8-24 IF f", 400)]), "1/2-20 IF f", "DEAR + N38"],
  ["an adapter that changes the seat", stock([N38], [adapter("A", "3/8-24 BU m", "3/8-24 IF f", 3)]), "3/8-24 BU f", "A + N38"],
  ["a female nut on a male port", stock([nut("SWIVEL", "3/8-24 JIC f", 3)]), "3/8-24 JIC m", "SWIVEL"],
])("%s", (_, parts, port, expected) => expect(said(fitTube(parts, TUBE, face(port)))).toBe(expected));

test.each<[string, string, FittingStock, string]>([
  ["seat", "the thread's nut for this tube seals on another seat", stock([N38]), "3/8-24 BU f"],
  ["seat", "the seat is named before the tube: it is the dangerous one", stock([N38, nut("WIDE", "3/8-24 BU m", 1, inches(0.25))]), "3/8-24 BU f"],
  ["gender", "both sides are male", stock([N38]), "3/8-24 IF m"],
  ["tube", "the port's nut is bored for another tube", stock([nut("WIDE", "3/8-24 IF m", 1, inches(0.25))]), "3/8-24 IF f"],
  ["thread", "the only nut of the thread is bored for another tube and of the wrong gender, so that neither alone would mend it", stock([nut("WIDE", "3/8-24 IF f", 1, inches(0.25))]), "3/8-24 IF f"],
  ["thread", "no nut has the thread", stock([N38, N716]), "9/16-18 IF f"],
  ["thread", "no nuts at all", stock([]), "3/8-24 IF f"],
])("cannot be joined for the %s: %s", (reason, _, parts, port) => expect(said(fitTube(parts, TUBE, face(port)))).toBe(reason));

// By hand: an adapter at 4 and a nut at 1; a joint at 6 is what the search weighs, not what anyone pays.
test("a fitting costs its nut and its adapters, and nothing is known of the sum while one of them has no price", () => {
  const priceWith = (adapterPrice?: number, nutPrice?: number): number | undefined => {
    const found = fitTube(stock([nut("N", "3/8-24 IF m", nutPrice)], [adapter("A", "1/2-20 IF m", "3/8-24 IF f", adapterPrice)]), TUBE, face("1/2-20 IF f"));
    return found.fits ? found.price : NaN;
  };
  expect([priceWith(4, 1), priceWith(undefined, 1), priceWith(4, undefined)]).toEqual([5, undefined, undefined]);
});

// SAE J512 and J514, from memory: 45° flares are doubled, the 37° flare is single; a bubble for ISO seats.
test.each([["3/8-24 IF", "double 45°"], ["3/8-24 BU", "bubble"], ["3/8-24 JIC", "single 37°"]])("a nut on %s asks for a %s flare on the tube", (on, flare) => {
  expect(fitTube(stock([nut("N", `${on} m`, 1)]), TUBE, face(`${on} f`))).toMatchObject({ fits: true, flare });
});

test("an adapter of the wrong gender is no way round", () => expect(said(fitTube(stock([N38], [adapter("A", "1/2-20 IF f", "3/8-24 IF f", 4)]), TUBE, face("1/2-20 IF f")))).toBe("thread"));

// Nominal sizes of the trade (design decision): 4.75 mm is 3/16 in and 8 mm is 5/16 in; 6 mm is not 1/4 in and 10 mm is not 3/8 in.
test.each([
  ["4.75 mm", millimetres(4.75), inches(3 / 16), true], ["8 mm", millimetres(8), inches(5 / 16), true],
  ["6 mm", millimetres(6), inches(1 / 4), false], ["10 mm", millimetres(10), inches(3 / 8), false],
] as const)("a nut for %s tube takes the inch size beside it or not", (_, metric, inch, fits) => {
  expect(fitTube(stock([nut("N", "M10x1 BU m", 1, metric)]), inch, face("M10x1 BU f")).fits).toBe(fits);
});

test("prices are summed in exact decimals, and one that is not known leaves the sum unknown", () => {
  expect(sumPrices([0.1, 0.2])).toBe(0.3);
  expect(sumPrices([0.1, undefined])).toBeUndefined();
  expect(sumPrices([])).toBe(0);
});

const faces = fc.tuple(fc.constantFrom("3/8-24", "7/16-24", "M10x1"), fc.constantFrom<Seat>("inverted-flare-45", "bubble-iso"), fc.constantFrom<Gender>("female", "male"))
  .map(([name, seat, gender]): JointFace => ({ ...face(`${name} IF f`), seat, gender }));
const price = fc.integer({ min: 0, max: 20 });
const randomAdapters = fc.array(fc.record({ a: faces, b: faces, price }), { maxLength: 7 }).map((rows) => rows.map((row, index): Adapter => ({ name: `A${index}`, ...row })));
const randomNuts = fc.array(fc.record({ face: faces, price }), { maxLength: 3 }).map((rows) => rows.map((row, index): Nut => ({ name: `N${index}`, tube: TUBE, ...row })));
const joint = fc.integer({ min: 0, max: 8 });
const search = fc.record({ nuts: randomNuts, adapters: randomAdapters, jointCost: joint, from: faces, to: faces });

/** Every chain that meets no face twice, by trying them all. */
function allChains(adapters: readonly Adapter[], from: JointFace, met: readonly string[] = [faceKey(from)]): { readonly end: JointFace; readonly steps: readonly Adapter[] }[] {
  const next = adapters.flatMap((one) => [[one.a, one.b], [one.b, one.a]].flatMap(([joins, offers]) => (joins && offers && mates(joins, from) && !met.includes(faceKey(offers)) ? [{ one, offers }] : [])));
  return [{ end: from, steps: [] }, ...next.flatMap(({ one, offers }) => allChains(adapters, offers, [...met, faceKey(offers)]).map(({ end, steps }) => ({ end, steps: [one, ...steps] })))];
}

const costOf = (steps: readonly Adapter[], jointCost: number): number => steps.reduce((sum, step) => sum + (step.price ?? NaN) + jointCost, 0);
const stepsOf = (steps: readonly AdapterStep[]): Adapter[] => steps.map((step) => step.adapter);

property("the chain between two faces costs what the cheapest of all chains costs", 400, search, ({ nuts, adapters, jointCost, from, to }) => {
  const found = joinFaces({ nuts, adapters, jointCost }, from, to);
  const costs = allChains(adapters, from).filter(({ end }) => mates(end, to)).map(({ steps }) => costOf(steps, jointCost));
  const least = mates(from, to) ? 0 : Math.min(...costs);
  expect(found ? costOf(stepsOf(found), jointCost) : Infinity).toBe(least);
});

property("nut and adapters together cost what the cheapest of all ways costs, a nut alone going first", 400, search, ({ nuts, adapters, jointCost, from }) => {
  const found = fitTube({ nuts, adapters, jointCost }, TUBE, from);
  const ways = allChains(adapters, from).flatMap(({ end, steps }) => nuts.filter((one) => mates(one.face, end)).map((one) => ({ steps, cost: costOf(steps, jointCost) + (one.price ?? NaN) })));
  const alone = ways.filter(({ steps }) => steps.length === 0);
  const least = Math.min(...(alone.length > 0 ? alone : ways).map(({ cost }) => cost));
  expect(found.fits ? costOf(stepsOf(found.adapters), jointCost) + (found.nut.price ?? NaN) : Infinity).toBe(least);
});

property("every joint of a chain mates: thread, seat and opposite gender, never by thread alone", 400, search, ({ nuts, adapters, jointCost, from }) => {
  const found = fitTube({ nuts, adapters, jointCost }, TUBE, from);
  if (!found.fits) return;
  const ends = [from, ...found.adapters.map(({ offers }) => offers)];
  const met = [...found.adapters.map(({ joins }) => joins), found.nut.face];
  expect(ends.map((end, index) => mates(end, met[index] as JointFace))).toEqual(ends.map(() => true));
});

property("joining is the same both ways", 300, search, ({ nuts, adapters, jointCost, from, to }) => {
  const [there, back] = [joinFaces({ nuts, adapters, jointCost }, from, to), joinFaces({ nuts, adapters, jointCost }, to, from)];
  expect(there && costOf(stepsOf(there), jointCost)).toBe(back && costOf(stepsOf(back), jointCost));
});

property("one adapter more on the list never makes a joint dearer, and one that changes nothing never makes it cheaper", 300, fc.tuple(search, faces, price), ([{ nuts, adapters, jointCost, from, to }, extra, cost]) => {
  const costWith = (list: readonly Adapter[]): number => {
    const found = joinFaces({ nuts, adapters: list, jointCost }, from, to);
    return found ? costOf(stepsOf(found), jointCost) : Infinity;
  };
  const needless: Adapter = { name: "EXTENSION", a: extra, b: { ...extra, gender: extra.gender === "female" ? "male" : "female" }, price: cost };
  expect(costWith([...adapters, needless])).toBe(costWith(adapters));
  expect(costWith([...adapters, { name: "MORE", a: extra, b: to, price: cost }])).toBeLessThanOrEqual(costWith(adapters));
});
