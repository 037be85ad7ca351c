import { demoTables } from "../../src/catalogue/demo";
import { parseCars } from "../../src/catalogue/parse-cars";
import { parseCatalogue } from "../../src/catalogue/parse-catalogue";
import type { RawTable } from "../../src/catalogue/table-spec";
import { chooseKit, kitName } from "../../src/core/kits";
import { reportOn } from "../../src/core/report";
import { ADAPTERS, carOf, catalogueOf, fourDiscs, NUTS, report, table, TUBE, type CarCells, type Shop } from "./workshop";

describe("on the demo", () => {
  const { catalogue } = parseCatalogue(demoTables.filter(({ name }) => !["Cars", "Seen"].includes(name)));
  const cars = demoTables.filter(({ name }) => name === "Cars").flatMap(({ headings, rows }) => parseCars(headings, rows).cars.flatMap(({ car }) => car ?? []));
  test("no choice is dearer than straight tube, and the next best is never cheaper", () => {
    const choices = cars.map((car) => reportOn(catalogue, car).kit).filter(({ chosen }) => chosen?.cost !== undefined);
    expect(choices.length).toBeGreaterThan(15);
    for (const { chosen, straight, nextBest } of choices) {
      expect(chosen?.cost).toBeLessThanOrEqual(straight.cost ?? Infinity);
      expect(chosen?.cost).toBeLessThanOrEqual(nextBest?.cost ?? Infinity);
    }
  });
});

const sound: CarCells = { ...fourDiscs, Valves: "BLK; TEE-F@frame-mid" };
const SETS = "Set | Platform | First year | Last year | Valves | Front | Rear | Material | Price | On hand";
const SET_RUNS = "Set | From | To | Tube (in) | Length (in) | Thread A | Seat A | Thread B | Seat B";
const seat = "inverted-flare-45";
type End = readonly [from: string, to: string, a: string, b: string];
const ALL: readonly End[] = [
  ["master", "valve", "1/2-20", "1/2-20"], ["master", "valve", "9/16-18", "1/2-20"], ["valve", "LF", "3/8-24", "3/8-24"], ["valve", "RF", "3/8-24", "3/8-24"],
  ["valve", "frame-mid", "7/16-24", "3/8-24"], ["frame-mid", "LR", "3/8-24", "3/8-24"], ["frame-mid", "RR", "3/8-24", "3/8-24"],
];
const runsOfSet = (set: string, ends: readonly End[]): string[] => ends.map(([from, to, a, b]) => `${set} | ${from} | ${to} | 0.1875 | 20 | ${a} | ${seat} | ${b} | ${seat}`);
const tools = [table(TUBE, "MS | mild steel | 0.1875 | 0.028 | coil | 300 | 30"), table(NUTS, ...["3/8-24", "1/2-20", "9/16-18", "7/16-24"].map((thread) => `N-${thread} | 0.1875 | ${thread} | ${seat} | male | 1`))];

/** Sets as `name: what differs`, each with its runs. */
function shelf(...sets: readonly { readonly name: string; readonly row?: Partial<Record<"platform" | "years" | "valves" | "brakes" | "material" | "price" | "hand", string>>; readonly runs?: readonly End[] }[]): Shop {
  const rows = sets.map(({ name, row = {} }) => [name, row.platform ?? "I", row.years ?? "1968 | 1975", row.valves ?? "BLK", row.brakes ?? "disc | disc", row.material ?? "mild steel", row.price ?? "90", row.hand ?? ""].join(" | "));
  return { more: [...tools, table(SETS, ...rows), table(SET_RUNS, ...sets.flatMap(({ name, runs = ALL }) => runsOfSet(name, runs)))] };
}

const kit = (cells: CarCells, shop: Shop) => report(cells, shop).kit;
const named = (cells: CarCells, shop: Shop): string => { const { chosen } = kit(cells, shop); return chosen ? kitName(chosen) : "nothing"; };

// Straight tube for the sound car: 14 nuts at 1, 7 runs at 30 to make, and lengths 14 + 14 + 30 + 50 + 60 + 44 + 36 with 1.5625 in of
// allowances each at 30 / 300 = 0.10 an inch, rounded run by run: 1.56 + 1.56 + 3.16 + 5.16 + 6.16 + 4.56 + 3.76 = 25.92. In all 249.92.
const STRAIGHT = 249.92;

test("straight tube costs its nuts, its tube with allowances and its making", () => {
  expect(kit(sound, { more: tools }).straight.cost).toBeCloseTo(STRAIGHT, 6);
  expect(named(sound, { more: tools })).toBe("straight tube");
});

test("a set that covers every run costs its price", () => {
  expect(kit(sound, shelf({ name: "S" })).chosen).toMatchObject({ cost: 90, madeUp: [], unused: [] });
  expect(kit(sound, shelf({ name: "S" })).chosen?.covered.map(({ run }) => run.number)).toEqual([1, 2, 3, 4, 5, 6, 7]);
});

test("a set dearer than straight tube is left on the shelf, and said to be the next best", () => {
  const { chosen, nextBest } = kit(sound, shelf({ name: "S", row: { price: "250" } }));
  expect([chosen && kitName(chosen), chosen?.cost, nextBest && kitName(nextBest), nextBest?.cost]).toEqual(["straight tube", STRAIGHT, "S", 250]);
});

test("two sets for the two ends of the car go together where each covers what the other leaves", () => {
  const shop = shelf({ name: "FRONT", row: { price: "70" }, runs: ALL.slice(0, 4) }, { name: "REAR", row: { price: "60" }, runs: ALL.slice(4) }, { name: "WHOLE", row: { price: "135" } });
  const { chosen, nextBest } = kit(sound, shop);
  expect([chosen && kitName(chosen), chosen?.cost, nextBest && kitName(nextBest), nextBest?.cost]).toEqual(["FRONT; REAR", 130, "WHOLE", 135]);
});

const FRONT = { name: "FRONT", row: { price: "70" }, runs: ALL.slice(0, 4) };
const REAR = { name: "REAR", row: { price: "60" }, runs: ALL.slice(4) };
const SILENT = { years: " | ", valves: "?", brakes: " | ", material: "" };
test.each([
  ["first", shelf({ ...FRONT, row: { ...FRONT.row, ...SILENT } }, REAR)],
  ["second", shelf(FRONT, { ...REAR, row: { ...REAR.row, ...SILENT } })],
])("a set that says nothing of years, valves, brakes and material goes with one that does: the silent one listed %s", (_, shop) => expect(named(sound, shop)).toBe("FRONT; REAR"));

test.each<[string, Readonly<Record<string, string>>, CarCells]>([
  ["years", { years: "1960 | 1969" }, { Year: "" }],
  ["years the other way round", { years: "1980 | " }, { Year: "" }],
  ["front brakes", { brakes: "drum | disc" }, { "Front brake": "" }],
  ["rear brakes", { brakes: "disc | drum" }, { "Rear brake": "" }],
  ["valves", { valves: "CV" }, { Valves: "?" }],
  ["platforms", { platform: "P" }, { Platform: "" }],
])("two sets for different %s never stand on one car, even while the row does not say which it is", (_, other, unknown) => {
  const shop = shelf({ ...FRONT, row: { ...FRONT.row, years: "1970 | 1975" } }, { ...REAR, row: { ...REAR.row, years: "1970 | 1975", ...other } });
  const { possible, chosen, nextBest } = chooseKit(catalogueOf(shop), carOf({ ...sound, ...unknown }), report(sound, shop).runs);
  expect([possible.length, chosen?.sets.length, nextBest?.sets.length]).toEqual([2, 1, 1]);
});

test("two sets of different materials never stand on one car, even while the material is not known", () => {
  const shop = shelf({ name: "FRONT", row: { price: "70" }, runs: ALL.slice(0, 4) }, { name: "REAR", row: { price: "60", material: "stainless" }, runs: ALL.slice(4) });
  expect(kit({ ...sound, Material: "" }, shop).chosen?.sets).toHaveLength(1);
});

const otherValve: readonly End[] = [["master", "valve", "1/2-20", "7/16-24"], ...ALL.slice(1)];
test("an adapter lets a set's run meet a port of another thread, and its price counts", () => {
  const adapter = table(ADAPTERS, `AD | 1/2-20 | ${seat} | male | 7/16-24 | ${seat} | female | 12`);
  const shop = shelf({ name: "S", runs: otherValve });
  const { chosen } = kit(sound, { more: [...(shop.more ?? []), adapter] });
  expect([chosen?.cost, chosen?.madeUp.length, chosen?.covered.flatMap(({ adapters }) => adapters.map(({ adapter: { name } }) => name))]).toEqual([102, 0, ["AD"]]);
});

test("where making the run is cheaper than its adapter the run is made up and the set's own run goes unused", () => {
  // Run 1 made up: 2 nuts at 1, 30 to make, 1.56 of tube: 33.56.
  const adapter = table(ADAPTERS, `AD | 1/2-20 | ${seat} | male | 7/16-24 | ${seat} | female | 40`);
  const shop = shelf({ name: "S", runs: otherValve });
  const { chosen } = kit(sound, { more: [...(shop.more ?? []), adapter] });
  expect([chosen?.cost, chosen?.madeUp.map(({ number }) => number), chosen?.unused.map(({ from, to }) => `${from} to ${to}`)]).toEqual([123.56, [1], ["master to valve"]]);
});

test("a run that could take either of two set runs leaves the cheap one to the run that needs it", () => {
  // Two lines from the master to the valve: one of the set's two runs suits only the rear outlet, the other both through an adapter.
  const adapter = table(ADAPTERS, `AD | 9/16-18 | ${seat} | male | 1/2-20 | ${seat} | female | 5`);
  const shop = shelf({ name: "S", runs: [["master", "valve", "1/2-20", "1/2-20"], ["master", "valve", "1/2-20", "1/2-20"], ...ALL.slice(2)] });
  const { chosen } = kit(sound, { more: [...(shop.more ?? []), adapter] });
  expect([chosen?.cost, chosen?.madeUp]).toEqual([95, []]);
});

test("a set run may be laid either way round", () => {
  expect(kit(sound, shelf({ name: "S", runs: ALL.map(([from, to, a, b]) => [to, from, b, a] as const) })).chosen?.madeUp).toEqual([]);
});

/** Set S for the sound car, its line from the valve to LF with another end at the valve. */
const withLineToLF = (thread: string, seatA: string): Shop => ({ more: [...tools, ...(shelf({ name: "S" }).more ?? []).slice(tools.length, -1), table(SET_RUNS, ...runsOfSet("S", ALL).map((row) => (row.includes("| LF |") ? row.replace(`3/8-24 | ${seat}`, `${thread} | ${seatA}`) : row)))] });

// A nut that goes on the thread of a port with another seat leaks.
test.each([
  ["seals on another seat", "bubble-iso", "3/8-24"],
  ["has another thread", seat, "7/16-20"],
])("a set run whose nut %s does not do the run, which is made up", (_, seatA, thread) => {
  // Made up: 2 nuts at 1, 30 to make, 3.16 of tube.
  expect(kit(sound, withLineToLF(thread, seatA)).chosen).toMatchObject({ cost: 90 + 35.16, madeUp: [{ number: 2 }], unused: [{ to: "LF" }] });
});

test("a set's male nut does not go into a male port, and without another way the run is made up at a price nobody knows", () => {
  const male = ["BLK distribution-block @valve price=40 | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/8-24 male | >R front RF 3/8-24 | >RO rear 7/16-24"];
  expect(kit(sound, { ...shelf({ name: "S" }), parts: male }).chosen).toMatchObject({ cost: undefined, madeUp: [{ number: 2 }] });
});

test("a set run whose end is not stated fits nothing for certain", () => {
  expect(kit(sound, withLineToLF("", "")).chosen?.madeUp.map(({ number }) => number)).toEqual([2]);
});

// Nothing is known of a sum while one of its parts is not.
const [rack, nuts] = tools as [RawTable, RawTable];
test.each<[string, Shop]>([
  ["tube without a price", { more: [table(TUBE, "MS | mild steel | 0.1875 | 0.028 | coil | 300 | "), nuts] }],
  ["tube without a length", { more: [table(TUBE, "MS | mild steel | 0.1875 | 0.028 | coil |  | 30"), nuts] }],
  ["no nut for a port", { more: [rack, { ...nuts, rows: nuts.rows.slice(0, -1) }] }],
  ["a port without a thread at the near end of a run", { more: tools, parts: ["BLK distribution-block @valve price=40 | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear"] }],
  ["a port without a thread at the far end", { more: tools, parts: ["BLK distribution-block @valve price=40 | <FI front 1/2-20 | <RI rear | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-24"] }],
])("straight tube has no cost with %s", (_, shop) => expect(kit(sound, shop).straight).toMatchObject({ cost: undefined, madeUp: { length: 7 } }));

test("a set run of another tube does not fit", () => {
  const shop = shelf({ name: "S" });
  const wide = (shop.more ?? []).map((one) => ({ ...one, rows: one.rows.map((row) => row.map((cell, index) => (one.headings[index] === "Tube (in)" && one.headings.includes("Set") ? 0.25 : cell))) }));
  expect(named(sound, { more: wide })).toBe("straight tube");
});

test.each([
  ["other valves", { name: "S", row: { valves: "CV" } }],
  ["years before the car's", { name: "S", row: { years: "1960 | 1967" } }],
  ["another material", { name: "S", row: { material: "stainless" } }],
  ["drums at the rear", { name: "S", row: { brakes: "disc | drum" } }],
  ["another platform", { name: "S", row: { platform: "P", years: "1960 | 1974" } }],
])("a set for %s is not offered", (_, set) => {
  const { possible, chosen } = kit(sound, shelf(set));
  expect([possible, chosen?.sets]).toEqual([[], []]);
});

test("tees, unions and switches on the car's list do not make another valve of it, and the order of the list does not count", () => {
  expect(kit({ ...sound, Valves: "TEE-F@frame-mid; BLK; SW-LEVEL" }, shelf({ name: "S" })).possible.map(({ name }) => name)).toEqual(["S"]);
});

test("within a scope only the runs in it count, and what the set brings beyond goes unused", () => {
  const { chosen } = kit({ ...sound, Scope: "rear" }, shelf({ name: "S" }));
  expect([chosen?.covered.map(({ setRun: { from, to } }) => `${from} to ${to}`), chosen?.unused.length]).toEqual([["master to valve", "valve to frame-mid", "frame-mid to LR", "frame-mid to RR"], 3]);
});

test("stock on hand breaks a tie and never more", () => {
  expect(named(sound, shelf({ name: "A", row: { hand: "0" } }, { name: "B", row: { hand: "3" } }))).toBe("B");
  expect(named(sound, shelf({ name: "A", row: { hand: "0" } }, { name: "B", row: { hand: "3", price: "90.01" } }))).toBe("A");
});

test("a set without a price loses to one with it, and makes the cost unknown where nothing else covers a run", () => {
  expect(named(sound, shelf({ name: "A", row: { price: "" } }, { name: "B", row: { price: "200" } }))).toBe("B");
  const unmeasured: Shop = { ...shelf({ name: "A", row: { price: "" } }), platforms: [table("Platform | First year | Last year | Split", "I | 1968 | 1975 | front/rear")] };
  expect(kit(sound, unmeasured).chosen).toMatchObject({ cost: undefined, madeUp: [] });
});

test("while the car is not plumbed there is no kit, and straight tube has no cost", () => {
  expect(kit({ ...sound, Valves: "?" }, shelf({ name: "S" }))).toMatchObject({ chosen: undefined, nextBest: undefined, straight: { cost: undefined } });
});
