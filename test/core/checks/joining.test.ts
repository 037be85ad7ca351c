import { ADAPTERS, allDrum, diagonal, findingOf, fourDiscs, NUTS, report, table, type CarCells, type Shop } from "../workshop";
import { rule } from "./cases";

/** Sound but for what a case adds: nothing above a note, not even a note. */
const sound: CarCells = { Valves: "HO; BLK; TEE" };
const part = (line: string): Shop => ({ parts: [line] });
/** The block of the workshop with another left front outlet. */
const blockWith = (outlet: string): Shop => part(`BLK distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF ${outlet} | >R front RF 3/8-24 | >RO rear 7/16-24`);
const adapter = (row: string): Shop => ({ more: [table(ADAPTERS, row)] });
const found = (row: string): Shop => ({ joins: [row] });

rule("thread-mismatch", [
  ["an outlet whose thread no nut has", sound, "thread-mismatch", blockWith("3/4-16")],
  ["the same with an adapter to a thread that a nut has", sound, "", { ...blockWith("3/4-16"), ...adapter("AD | 3/4-16 | inverted-flare-45 | male | 3/8-24 | inverted-flare-45 | female | 8") }],
  ["an adapter of the wrong gender does not help", sound, "thread-mismatch", { ...blockWith("3/4-16"), ...adapter("AD | 3/4-16 | inverted-flare-45 | female | 3/8-24 | inverted-flare-45 | female | 8") }],
  ["a male port takes no male nut", sound, "thread-mismatch", blockWith("3/8-24 male")],
  ["a hose end of another thread than the caliper", sound, "thread-mismatch thread-mismatch", part("HF hose @front | <IN 3/8-24 | >OUT 9/16-18 banjo")],
  ["a nut found that is far from the port's thread", sound, "thread-mismatch", found("BLK | L | HF@LF | IN | 9/16-18")],
]);

rule("thread-near-miss", [
  ["a 3/8-24 nut found on a line between M10x1 ports", { ...sound, Hoses: "HF-M@LF; HF@RF; HR" }, "thread-near-miss", {
    parts: ["HF-M hose @front | <IN M10x1 bubble-iso | >OUT 7/16-20 banjo", "BLK distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF M10x1 bubble-iso | >R front RF 3/8-24 | >RO rear 7/16-24"],
    ...found("BLK | L | HF-M@LF | IN | 3/8-24"),
  }],
  ["an M10x1 nut found in a 3/8-24 port", sound, "thread-near-miss", found("BLK | L | HF@LF | IN | M10x1")],
  ["a 7/16-20 nut found in a 7/16-24 port", sound, "thread-near-miss", found("BLK | RO | HR | IN | 7/16-20")],
  ["an M13x1.5 nut found in a 1/2-20 port", sound, "thread-near-miss", found("MC | R | BLK | RI | M13x1.5")],
  ["the nut of one of the two ports of a line is no near miss", sound, "", found("BLK | RO | HR | IN | 3/8-24")],
  ["a hose end that starts in the caliper's thread", sound, "thread-near-miss thread-near-miss", part("HF hose @front | <IN 3/8-24 | >OUT 7/16-24 banjo")],
]);

rule("seat-mismatch", [
  ["a bubble seat where only inverted-flare nuts have the thread", sound, "seat-mismatch", blockWith("3/8-24 bubble-iso")],
  ["the same with an adapter that changes the seat", sound, "", { ...blockWith("3/8-24 bubble-iso"), ...adapter("AD | 3/8-24 | bubble-iso | male | 3/8-24 | inverted-flare-45 | female | 8") }],
  ["a bubble seat of a thread that has bubble nuts", sound, "", blockWith("M10x1 bubble-iso")],
  ["a hose end of the caliper's thread with another seat", sound, "seat-mismatch seat-mismatch", part("HF hose @front | <IN 3/8-24 | >OUT 7/16-20 inverted-flare-45")],
  ["a bubble flare found on an inverted-flare joint", sound, "seat-mismatch", found("MC | R | BLK | RI | | bubble")],
  ["a double flare found there is right", sound, "", found("MC | R | BLK | RI | | double 45°")],
]);

const nutsOf = (...rows: readonly string[]): Shop => ({ more: [table(NUTS, ...["1/2-20", "9/16-18", "7/16-24"].map((thread) => `N-${thread} | 0.1875 | ${thread} | inverted-flare-45 | male | 1`), ...rows)] });
rule("tube-nut-mismatch", [
  ["a nut of the port's thread bored for another tube", { ...allDrum, Hoses: "HF2; HR2@rear-hose" }, "tube-nut-mismatch", {
    ...nutsOf("N-38 | 0.1875 | 3/8-24 | inverted-flare-45 | male | 1", "N-58 | 0.25 | 5/8-18 | inverted-flare-45 | male | 1"),
    parts: ["BLK distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 5/8-18 | >R front RF 3/8-24 | >RO rear 7/16-24", "HF2 hose @front | <IN 3/8-24 | >OUT 7/16-20 banjo"],
  }],
  ["a nut of the port's thread bored for this tube", { ...allDrum, Hoses: "HF; HR" }, "", nutsOf("N-38 | 0.1875 | 3/8-24 | inverted-flare-45 | male | 1")],
  ["4.75 mm and 3/16 in are one bore", { ...allDrum, Hoses: "HF; HR" }, "", {
    more: [table("Nut | Tube (mm) | Thread | Seat | Gender", ...["1/2-20", "9/16-18", "7/16-24", "3/8-24"].map((thread) => `N-${thread} | 4.75 | ${thread} | inverted-flare-45 | male`))],
  }],
]);

rule("port-left-open", [
  ["an outlet that no wheel needs", sound, "port-left-open", part("BLK distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-24 | >X rear 3/8-24")],
  ["the same outlet plugged in the catalogue", sound, "", part("BLK distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-24 | >X rear 3/8-24 plugged")],
  ["the same outlet found plugged on the car", sound, "", { ...part("BLK distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-24 | >X rear 3/8-24"), joins: ["BLK | X | | | | | yes"] }],
  ["a tee with three outlets where two are needed", { ...allDrum, Valves: "BLK; TEE-3" }, "port-left-open", part("TEE-3 tee @axle-tee | <IN 3/8-24 | >O1 3/8-24 | >O2 3/8-24 | >O3 3/8-24")],
  ["a tee listed that no line needs", { ...allDrum, Valves: "BLK; TEE; TEE-F" }, "port-left-open"],
]);

rule("switch-port-open", [
  ["a switch port and no switch", { Valves: "HO; BLK-SW; TEE" }, "switch-port-open"],
  ["a switch port and its switch", { Valves: "HO; BLK-SW; SW; TEE" }, ""],
  ["a level switch without ports fills it as far as anyone can tell", { Valves: "HO; BLK-SW; SW-LEVEL; TEE" }, ""],
  ["a switch of another thread does not", { Valves: "HO; BLK-SW; SW-38; TEE" }, "switch-port-open", part("SW-38 switch | >T 3/8-24 male")],
  ["one switch for two switch ports", { Valves: "HO; BLK-SW2; SW; TEE" }, "switch-port-open", part("BLK-SW2 distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-24 | >SA 1/8-27NPT pipe-taper switch | >SB 1/8-27NPT pipe-taper switch")],
  ["a switch port plugged on the car", { Valves: "HO; BLK-SW; TEE" }, "", found("BLK-SW | SW | | | | | yes")],
]);

rule("outlet-shortage", [
  ["two rear hoses on one outlet and no tee", { ...fourDiscs, Valves: "BLK" }, "outlet-shortage"],
  ["two rear hoses on one outlet and a tee", { ...fourDiscs, Valves: "BLK; TEE-F@frame-mid" }, ""],
  ["an axle without a tee behind its one hose", { Valves: "HO; BLK" }, "outlet-shortage"],
  ["a hose with an outlet for each wheel needs none", { Valves: "HO; BLK", Hoses: "HF; HRT" }, "", part("HRT hose @rear-hose | <IN 3/8-24 | >OL LR 3/8-24 | >OR RR 3/8-24")],
]);
test("a proposed tee is named with its price", () => {
  expect(findingOf("outlet-shortage", { Valves: "HO; BLK" }).says).toBe("HR OUT has more than one line to feed and no tee is listed (proposed: TEE, 9.00 USD): the car cannot be plumbed as listed.");
});

rule("circuit-unfed", [
  ["a block without an outlet for the right front wheel", sound, "circuit-unfed", { joins: ["BLK | R | | | | | yes"] }],
  ["the outlet of the rear line found plugged", sound, "circuit-unfed", { joins: ["BLK | RO | | | | | yes"] }],
  ["every outlet joined", sound, ""],
]);
test("one circuit unfed at both wheels is one finding that names both", () => {
  expect(findingOf("circuit-unfed", sound, { joins: ["BLK | RO | | | | | yes"] }).place).toBe("LR, RR (rear circuit)");
});

const pair: CarCells = { ...diagonal, Master: "MC-X4", Valves: "PV-ANY; PV-ANY" };
rule("outlets-crossed", [
  ["the front outlet found on the block's rear inlet", sound, "outlets-crossed", found("MC | F | BLK | RI")],
  ["both lines found crossed are one finding", sound, "outlets-crossed", { joins: ["MC | F | BLK | RI", "MC | R | BLK | FI"] }],
  ["an outlet that is open with the lines crossed back too stays a finding of its own", sound, "port-left-open outlets-crossed", { ...part("BLK distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-24 | >X rear 3/8-24"), joins: ["MC | F | BLK | RI", "MC | R | BLK | FI"] }],
  ["the line found where it belongs", sound, "", found("MC | R | BLK | RI")],
  ["the front outlet found on a valve that only stands in the rear line", { Valves: "TEE-F; APV; TEE" }, "outlets-crossed", found("MC | F | APV | IN")],
  ["rear lines of a diagonal split exchanged leave a circuit for each side", pair, "outlets-crossed", found("MC-X4 | P2 | PV-ANY@2 | IN")],
  ["every line of a diagonal split exchanged is the other diagonal", pair, "", { joins: ["MC-X4 | P1 | HF@RF | IN", "MC-X4 | P2 | PV-ANY@2 | IN", "MC-X4 | S1 | HF@LF | IN", "MC-X4 | S2 | PV-ANY@1 | IN"] }],
  ["a master named by axles found where it belongs on a diagonal split", { ...diagonal, Valves: "BX" }, "", {
    parts: ["BX distribution-block @valve | <I1 1 1/2-20 | <I2 2 1/2-20 | >F1 1 LF 3/8-24 | >R1 1 RR 3/8-24 | >F2 2 RF 3/8-24 | >R2 2 LR 3/8-24"], joins: ["MC | F | BX | I1 | 1/2-20"],
  }],
  ["left and right front lines exchanged feed the right axle", sound, "", { joins: ["BLK | L | HF@RF | IN", "BLK | R | HF@LF | IN"] }],
]);

const withValve: CarCells = { Valves: "HO; BLK; PV; TEE" };
rule("flow-reversed", [
  ["a valve with an arrow fed through its outlet", withValve, "flow-reversed", { joins: ["BLK | RO | PV | OUT", "PV | IN | HR | IN"] }],
  ["one row is enough to tell", withValve, "flow-reversed", found("BLK | RO | PV | OUT")],
  ["the same valve fed through its inlet", withValve, "", found("BLK | RO | PV | IN")],
  ["a union has no direction", { Valves: "HO; BLK; UN@rear; TEE" }, "", { joins: ["BLK | RO | UN | B", "UN | A | HR | IN"] }],
  ["a valve whose row leaves the arrow out, with a duty inside", { Valves: "HO; BLK; APV; TEE" }, "flow-reversed", found("BLK | RO | APV | OUT")],
  ["a valve said to have no arrow", { Valves: "HO; BLK; APV; TEE" }, "", { ...part("APV adjustable-proportioning-valve @valve arrow=no | <IN 3/8-24 | >OUT 3/8-24 | IN>OUT adjustable-proportioning slope=0.43"), ...found("BLK | RO | APV | OUT") }],
]);

const chainOf = (...threads: readonly string[]): Shop => ({
  ...blockWith(`${threads[0]}`),
  more: [table(ADAPTERS, ...threads.slice(1).map((thread, index) => `AD-${index} | ${threads[index]} | inverted-flare-45 | male | ${thread} | inverted-flare-45 | female | 5`))],
});
rule("joint-count", [
  ["three adapters on one end", sound, "joint-count", chainOf("3/4-16", "5/8-18", "9/16-20", "3/8-24")],
  ["two adapters on one end", sound, "", chainOf("3/4-16", "5/8-18", "3/8-24")],
  ["two adapters where Settings allow one", sound, "joint-count", { ...chainOf("3/4-16", "5/8-18", "3/8-24"), settings: ["most adapters on one end | 1 |"] }],
]);

rule("single-circuit", [
  ["a car before the rule year", { ...allDrum, Year: "1962", Master: "MC-ONE", Valves: "BLK-4; TEE" }, "single-circuit"],
  ["a tandem master", { ...allDrum, Year: "1962" }, ""],
  ["two outlets on a diagonal split", { ...diagonal, Master: "MC-X4", Valves: "none" }, ""],
]);

test("a finding says the run, the port and what it leads to in one sentence", () => {
  expect(findingOf("seat-mismatch", sound, blockWith("3/8-24 bubble-iso")).says).toBe(
    "Run 3, BLK L → HF@LF IN: the nut's thread fits but no nut for 3/16 in tube seals on the port's ISO bubble seat: the joint threads up but leaks under pressure.",
  );
  expect(report(sound, blockWith("3/8-24 bubble-iso")).verdict).toBe("stop");
});
