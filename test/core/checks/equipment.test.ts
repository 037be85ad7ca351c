import { ADAPTERS, allDrum, findingOf, fourDiscs, LENGTH_ROWS, NUTS, report, table, TUBE, type CarCells, type Shop } from "../workshop";
import { rule } from "./cases";

/** Sound but for what a case adds: nothing above a note, and no hold-off that pressure bleeding would name. */
const sound: CarCells = { ...fourDiscs, Valves: "BLK; TEE-F@frame-mid" };
const part = (line: string): Shop => ({ parts: [line] });
const found = (...rows: readonly string[]): Shop => ({ joins: rows });
/** Without the switch that every workshop car has: `SW-CAP` becomes a part that is none. */
const noSwitch: Shop = part("SW-CAP union @frame-mid | <A 3/8-24 plugged | >B 3/8-24 plugged");

rule("hose-missing", [
  ["front calipers without hoses", { ...sound, Hoses: "HR2" }, "hose-missing", part("DF disc parking=no | <IN 3/8-24")],
  ["the caliper's banjo, which takes a hose and no nut, is not told beside the hose that is missing", { ...sound, Hoses: "HR2" }, "hose-missing", part("DF disc parking=no | <IN 7/16-20 banjo")],
  ["a hose at one front wheel only", { ...sound, Hoses: "HFS@LF; HR2" }, "hose-missing", { parts: ["DF disc parking=no | <IN 3/8-24", "HFS hose @front | <IN 3/8-24 | >OUT 3/8-24 male"] }],
  ["rear wheels without hoses", { ...sound, Hoses: "HF" }, "hose-missing"],
  ["an axle reached without the hose between frame and axle", { Valves: "HO; BLK; TEE", Hoses: "HF" }, "hose-missing", { more: [table(LENGTH_ROWS, "P | valve | axle-tee | 90 | 0.1875")] }],
  ["a hose at every wheel", sound, ""],
  ["one hose for both rear wheels", { Valves: "HO; BLK; TEE" }, ""],
  ["a rigid line to the axle that Joins states", { Valves: "HO; BLK; TEE", Hoses: "HF" }, "", { more: [table(LENGTH_ROWS, "P | valve | axle-tee | 90 | 0.1875")], ...found("BLK | RO | TEE | IN") }],
  ["rigid lines to both rear wheels that Joins states", { ...sound, Hoses: "HF" }, "", found("TEE-F | O1 | DR@LR | IN", "TEE-F | O2 | DR@RR | IN")],
  ["hoses that nobody has listed are asked for, not missed", { ...sound, Hoses: "?" }, "data-missing"],
]);
test("a line that is to go rigid with a reason must fit its port, and a port elsewhere must fit in any case", () => {
  const banjo = part("DF disc parking=no | <IN 7/16-20 banjo");
  const places = (cells: CarCells, shop: Shop): string[] => report(cells, shop).findings.filter(({ code }) => code === "thread-mismatch").map(({ place }) => place);
  expect(places({ ...sound, Hoses: "HR2", Accepted: "hose-missing: show car, trailered" }, banjo)).toEqual(["DF@LF IN", "DF@RF IN"]);
  expect(places({ ...sound, Hoses: "HR2" }, { parts: ["DF disc parking=no | <IN 7/16-20 banjo", "BLK distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/4-16 | >R front RF 3/8-24 | >RO rear 7/16-24"] })).toEqual(["BLK L"]);
});
test("hose-missing names the wheels of one axle together and is a stop", () => {
  expect(findingOf("hose-missing", { ...sound, Hoses: "HF" })).toMatchObject({ severity: "stop", place: "LR, RR" });
});

const COMPRESSION_UNION = "UNC union @frame-mid | <A 3/8-24 compression | >B 3/8-24 compression";
rule("compression-joint", [
  ["a union joined by compression at both ends is one fault", { Valves: "HO; BLK; UNC@rear; TEE" }, "compression-joint", part(COMPRESSION_UNION)],
  ["the same union with flared ends", { Valves: "HO; BLK; UN@rear; TEE" }, ""],
  ["a compression nut in the shop changes nothing", { Valves: "HO; BLK; UNC@rear; TEE" }, "compression-joint", {
    ...part(COMPRESSION_UNION), more: [table(NUTS, "NC | 0.1875 | 3/8-24 | compression | female | 1", ...["3/8-24", "1/2-20", "9/16-18", "7/16-24"].map((thread) => `N-${thread} | 0.1875 | ${thread} | inverted-flare-45 | male | 1`))],
  }],
  ["an adapter that would bring compression into the line", { Valves: "HO; BLK; TEE" }, "compression-joint", {
    parts: ["BLK distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/4-16 | >R front RF 3/8-24 | >RO rear 7/16-24"],
    more: [table(ADAPTERS, "AD | 3/4-16 | inverted-flare-45 | male | 3/8-24 | compression | male | 8"), table(NUTS, "NC | 0.1875 | 3/8-24 | compression | female | 1", ...["3/8-24", "1/2-20", "9/16-18", "7/16-24"].map((thread) => `N-${thread} | 0.1875 | ${thread} | inverted-flare-45 | male | 1`))],
  }],
]);
test("compression-joint names every end and is a stop", () => {
  expect(findingOf("compression-joint", { Valves: "HO; BLK; UNC@rear; TEE" }, part(COMPRESSION_UNION))).toMatchObject({ severity: "stop", place: "UNC A, UNC B" });
});

// SAE J512, from memory: a 45° flare is doubled on steel; SAE J514: a 37° flare is made single.
const thirtySeven = "BLK-37 distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-20 flare-37";
rule("flare-single", [
  ["a single 45° flare found on mild steel", sound, "flare-single", found("MC | F | BLK | FI | | single 45°")],
  ["a single 45° flare found on stainless", { ...sound, Material: "stainless" }, "flare-single", found("MC | F | BLK | FI | | single")],
  ["a double flare found there", sound, "", found("MC | F | BLK | FI | | double 45°")],
  ["a single 45° flare found on copper-nickel", { ...sound, Material: "copper-nickel" }, "", found("MC | F | BLK | FI | | single 45°")],
  ["a single 37° flare found on a 37° seat", { ...sound, Valves: "BLK-37; TEE-37@frame-mid" }, "", {
    parts: [thirtySeven, "TEE-37 tee @frame-mid | <IN 7/16-20 flare-37 | >O1 3/8-24 | >O2 3/8-24"], ...found("BLK-37 | RO | TEE-37 | IN | | single 37°"),
    more: [table(NUTS, "N37 | 0.1875 | 7/16-20 | flare-37 | female | 1", ...["3/8-24", "1/2-20", "9/16-18"].map((thread) => `N-${thread} | 0.1875 | ${thread} | inverted-flare-45 | male | 1`))],
  }],
]);

const copperTube: Shop = { more: [table(TUBE, "CU | copper | 0.1875 | 0.028 | coil | 300 | 30", "MS | mild steel | 0.1875 | 0.028 | coil | 300 | 20")] };
rule("material-copper", [
  ["plain copper", { ...sound, Material: "copper" }, "material-copper", copperTube],
  ["plain copper named second", { ...sound, Material: "mild steel; copper" }, "material-copper", copperTube],
  ["copper-nickel", { ...sound, Material: "copper-nickel" }, ""],
]);

rule("material-mixed", [
  ["two materials in one row", { ...sound, Material: "mild steel; stainless" }, "material-mixed"],
  ["one material", sound, ""],
]);

const wideRear: Shop = {
  platforms: [
    table("Platform | First year | Last year | Split", "I | 1968 | 1975 | front/rear"),
    table(LENGTH_ROWS, "I | master | valve | 14 | 0.1875", "I | valve | LF | 30 | 0.1875", "I | valve | RF | 50 | 0.1875", "I | valve | frame-mid | 60 | 0.25", "I | frame-mid | LR | 44 | 0.1875", "I | frame-mid | RR | 36 | 0.1875"),
  ],
  parts: ["TEE-F tee @frame-mid | <IN 7/16-24 | >O1 3/8-24 | >O2 3/8-24"],
};
rule("tube-reduced", [
  ["1/4 in to the middle of the frame and 3/16 in from there to the wheels", sound, "tube-reduced", wideRear],
  ["one size all the way", sound, ""],
]);
test("tube-reduced is of one circuit and a note, as pressure at rest is the same in both sizes", () => {
  expect(findingOf("tube-reduced", sound, wideRear)).toMatchObject({ severity: "note", place: "rear circuit" });
});

const ABS: CarCells = { ...fourDiscs, Valves: "ABS4" };
rule("fluid-mixed", [
  ["silicone and glycol in one row", { ...sound, Fluid: "DOT 5; DOT 4" }, "fluid-mixed"],
  ["silicone through an anti-lock unit", { ...ABS, Fluid: "DOT 5" }, "fluid-mixed"],
  ["silicone alone", { ...sound, Fluid: "DOT 5" }, ""],
  ["two glycol fluids", { ...sound, Fluid: "DOT 4; DOT 5.1" }, ""],
  ["glycol through an anti-lock unit", { ...ABS, Fluid: "DOT 4" }, ""],
  ["no fluid stated", sound, ""],
]);

const chambers = (front: number, rear: number): string => `MC master @master | >F front 1/2-20 reservoir=${front} | >R rear 9/16-18 reservoir=${rear}`;
const drumsBehind: CarCells = { Valves: "HO; BLK; TEE" };
rule("reservoir-swapped", [
  ["the smaller chamber found on the discs", drumsBehind, "reservoir-swapped", { ...part(chambers(4, 9)), ...found("MC | R | BLK | RI") }],
  ["the larger chamber found on the discs", drumsBehind, "", { ...part(chambers(9, 4)), ...found("MC | R | BLK | RI") }],
  ["chambers of one size", drumsBehind, "", { ...part(chambers(6, 6)), ...found("MC | R | BLK | RI") }],
  ["the smaller chamber on the discs by the parts list alone, with nothing found", drumsBehind, "", part(chambers(4, 9))],
  ["discs at both ends", sound, "", { ...part(chambers(4, 9)), ...found("MC | R | BLK | RI") }],
  ["a master that does not say which outlet is which, found with the smaller chamber on the discs", drumsBehind, "reservoir-swapped", {
    ...part("MC master @master | >P any front 1/2-20 reservoir=4 | >S any rear 9/16-18 reservoir=9"), ...found("MC | S | BLK | RI"),
  }],
]);

rule("warning-missing", [
  ["two circuits and no switch", sound, "warning-missing", noSwitch],
  ["a switch that lights the stop lamps only", { ...sound, Valves: "BLK; SW-STOP; TEE-F@frame-mid" }, "warning-missing", { parts: [...(noSwitch.parts ?? []), "SW-STOP switch senses=stop-lamp"] }],
  ["a level switch", { ...sound, Valves: "BLK; SW-LEVEL; TEE-F@frame-mid" }, "", noSwitch],
  ["a switch built into a body with a wire to it", { ...sound, Valves: "BLK-W; TEE-F@frame-mid" }, "", {
    parts: [...(noSwitch.parts ?? []), "BLK-W distribution-block @valve wire=yes | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-24"],
  }],
  ["a wire to a body whose switch port is open is no switch", { ...sound, Valves: "BLK-W; TEE-F@frame-mid" }, "switch-port-open warning-missing", {
    parts: [...(noSwitch.parts ?? []), "BLK-W distribution-block @valve wire=yes | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-24 | >SW 1/8-27NPT pipe-taper switch"],
  }],
  ["one circuit has none to compare", { ...allDrum, Year: "1962", Master: "MC-ONE", Valves: "BLK-4; TEE" }, "", noSwitch],
  ["valves that nobody has listed may hold the switch", { ...sound, Valves: "?" }, "data-missing", noSwitch],
]);
// 1968 is the rule year as shipped (49 CFR 571.105, from memory); platform P runs from 1960 to 1974.
test.each([["1968", "decide"], ["1967", "note"], ["", "decide"]] as const)("warning-missing on a car of year %s is graded %s", (Year, severity) => {
  expect(findingOf("warning-missing", { Year }, noSwitch).severity).toBe(severity);
});

const LAMP_BLOCK = "BLK-4L distribution-block @valve | <IN 3/8-24 | >L LF 3/8-24 | >R RF 3/8-24 | >B rear 3/8-24 | >SW 1/8-27NPT pipe-taper switch";
const oneChamber: CarCells = { ...allDrum, Year: "1962", Master: "MC-ONE", Valves: "BLK-4; TEE" };
const asMade = (...rows: readonly string[]): Shop => ({ parts: [LAMP_BLOCK, ...(noSwitch.parts ?? [])], more: [table("Set | Platform | First year | Last year | Valves | Front | Rear", ...rows)] });
const lampSet = "S1 | P | 1960 | 1965 | BLK-4L | drum | drum";
rule("stop-lamp-lost", [
  ["the block with the stop-lamp switch was changed for one without", oneChamber, "stop-lamp-lost", asMade(lampSet)],
  ["a switch at the pedal is listed", { ...oneChamber, Valves: "BLK-4; SW-STOP; TEE" }, "", { ...asMade(lampSet), parts: [LAMP_BLOCK, ...(noSwitch.parts ?? []), "SW-STOP switch senses=stop-lamp"] }],
  ["the block with the port is still there", { ...oneChamber, Valves: "BLK-4L; SW; TEE" }, "", asMade(lampSet)],
  ["cars of this year were made with another block", oneChamber, "", asMade("S1 | P | 1967 | 1974 | BLK-4L | drum | drum")],
  ["the car has the valves of a set without such a port", oneChamber, "", asMade(lampSet, "S2 | P | 1960 | 1965 | BLK-4 | drum | drum")],
  ["the block as made has a switch between two circuits, which warns of a leak and lights no stop lamp", oneChamber, "", asMade("S1 | P | 1960 | 1965 | BLK-SW | drum | drum")],
  ["no set says how the platform was made", oneChamber, "", noSwitch],
]);

const front = "DF disc parking=no | <IN 7/16-20 banjo";
const rear = (parking: string): string => `DR disc parking=${parking} | <IN 3/8-24`;
const driveline = (yes: string): Shop["platforms"] => [
  table("Platform | First year | Last year | Split | Driveline parking brake", `I | 1968 | 1975 | front/rear | ${yes}`),
  table(LENGTH_ROWS, "I | master | valve | 14 | 0.1875", "I | valve | LF | 30 | 0.1875", "I | valve | RF | 50 | 0.1875", "I | valve | frame-mid | 60 | 0.1875", "I | frame-mid | LR | 44 | 0.1875", "I | frame-mid | RR | 36 | 0.1875"),
];
const brakes = (parking: string, drivelineBrake: string): Shop => ({ parts: [front, rear(parking)], platforms: driveline(drivelineBrake) });
rule("parking-brake-lost", [
  ["no brake and no driveline brake holds the car", sound, "parking-brake-lost", brakes("no", "no")],
  ["the rear calipers have the mechanism", sound, "", brakes("yes", "no")],
  ["the platform has a driveline brake", sound, "", brakes("no", "yes")],
  ["nobody has said whether the platform has one", sound, "", brakes("no", "")],
  ["nobody has said whether the rear calipers have one", sound, "", { parts: [front, "DR disc | <IN 3/8-24"], platforms: driveline("no") }],
  ["the rear brakes are not known", { ...sound, "Rear brake": "" }, "data-missing", brakes("no", "no")],
]);
test.each([
  ["of the platform, when the brakes have none", brakes("no", ""), ["Does I have a parking brake on the driveline?"]],
  ["of the brakes that do not say", { parts: [front, "DR disc | <IN 3/8-24"], platforms: driveline("no") }, ["Does DR have a parking brake?"]],
  ["of nothing, when one brake has it", brakes("yes", ""), []],
  ["of nothing, when the platform has it", brakes("no", "yes"), []],
])("the parking brake is asked %s", (_, shop, asked) => {
  expect(report(sound, shop).questions.map(({ ask }) => ask)).toEqual(asked);
});

const unit: Shop = { more: [table(LENGTH_ROWS, "I | valve | LR | 80 | 0.1875", "I | valve | RR | 84 | 0.1875")] };
rule("anti-lock-present", [
  ["a proportioning valve left in before an anti-lock unit", { ...fourDiscs, Valves: "PV-ANY@rear; ABS4" }, "anti-lock-present", unit],
  ["a hold-off valve left in before an anti-lock unit", { ...fourDiscs, Valves: "HO-ANY@front; ABS4" }, "anti-lock-present", unit],
  ["the unit alone", ABS, "", unit],
  ["an adjustable valve wound out to no reduction", { ...fourDiscs, Valves: "APV@rear; ABS4", "Valve split set (psi)": "none" }, "", unit],
  ["a residual valve beside it holds, and cuts nothing", { ...fourDiscs, Valves: "RV2@front; ABS4" }, "", unit],
  ["the unit's own passages are its own business", ABS, "", { ...unit, parts: ["ABS4 anti-lock-unit @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >LF front LF 3/8-24 | >RF front RF 3/8-24 | >LR rear LR 3/8-24 | >RR rear RR 3/8-24 | FI>LF hold-off | FI>RF hold-off | RI>LR proportioning | RI>RR proportioning"] }],
]);

rule("bleed-tool", [
  ["a hold-off valve and a shop that bleeds by pressure", { Valves: "HO; BLK; TEE" }, "bleed-tool"],
  ["a hold-off section inside a combination valve", { Valves: "CV; TEE" }, "bleed-tool"],
  ["a combination valve without a hold-off section", { Valves: "CV-NOHOLD; TEE" }, ""],
  ["a shop that bleeds by the pedal", { Valves: "HO; BLK; TEE" }, "", { settings: ["bleeding | pedal |"] }],
  ["no hold-off valve", sound, ""],
]);

const SETS = "Set | Platform | First year | Last year | Valves | Front | Rear | Material | Price";
const SET_RUNS = "Set | From | To | Tube (in) | Length (in) | Thread A | Seat A | Thread B | Seat B";
const seat = "inverted-flare-45";
const run = (set: string, from: string, to: string, a: string, b: string): string => `${set} | ${from} | ${to} | 0.1875 | 20 | ${a} | ${seat} | ${b} | ${seat}`;
const wholeSet = (set: string): string[] => [
  run(set, "master", "valve", "1/2-20", "1/2-20"), run(set, "master", "valve", "9/16-18", "1/2-20"), run(set, "valve", "LF", "3/8-24", "3/8-24"), run(set, "valve", "RF", "3/8-24", "3/8-24"),
  run(set, "valve", "frame-mid", "7/16-24", "3/8-24"), run(set, "frame-mid", "LR", "3/8-24", "3/8-24"), run(set, "frame-mid", "RR", "3/8-24", "3/8-24"),
];
const tools = [table(TUBE, "MS | mild steel | 0.1875 | 0.028 | coil | 300 | 30"), table(NUTS, ...["3/8-24", "1/2-20", "9/16-18", "7/16-24"].map((thread) => `N-${thread} | 0.1875 | ${thread} | ${seat} | male | 1`))];
const shelf = (sets: readonly string[], runs: readonly string[]): Shop => ({ more: [...tools, table(SETS, ...sets), table(SET_RUNS, ...runs)] });
const blockSet = (set: string, more = "I | 1968 | 1975 | BLK | disc | disc | mild steel | 90"): string => `${set} | ${more}`;
rule("kit-partial", [
  ["a set without the line to one rear wheel", sound, "kit-partial", shelf([blockSet("S")], wholeSet("S").slice(0, -1))],
  ["a set with every line", sound, "", shelf([blockSet("S")], wholeSet("S"))],
  ["no set at all is straight tube, not a part of a set", sound, "", { more: tools }],
]);

rule("kit-ambiguous", [
  ["two sets for two materials, and the material not known", { ...sound, Material: "" }, "kit-ambiguous data-missing", shelf([blockSet("S"), blockSet("S2", "I | 1968 | 1975 | BLK | disc | disc | stainless | 140")], [...wholeSet("S"), ...wholeSet("S2")])],
  ["two sets for two materials, and the material known", sound, "", shelf([blockSet("S"), blockSet("S2", "I | 1968 | 1975 | BLK | disc | disc | stainless | 140")], [...wholeSet("S"), ...wholeSet("S2")])],
  ["two sets for two stretches of years, and the year not known", { ...sound, Year: "" }, "kit-ambiguous", shelf([blockSet("S", "I | 1968 | 1971 | BLK | disc | disc | mild steel | 90"), blockSet("S2", "I | 1972 | 1975 | BLK | disc | disc | mild steel | 95")], [...wholeSet("S"), ...wholeSet("S2")])],
  ["two sets that nothing open tells apart are a matter of price", sound, "", shelf([blockSet("S"), blockSet("S2", "I | 1968 | 1975 | BLK | disc | disc | mild steel | 95")], [...wholeSet("S"), ...wholeSet("S2")])],
]);
test("kit-ambiguous is cured by the question that tells most", () => {
  const shop = shelf([blockSet("S"), blockSet("S2", "I | 1968 | 1975 | BLK | disc | disc | stainless | 140")], [...wholeSet("S"), ...wholeSet("S2")]);
  expect(findingOf("kit-ambiguous", { ...sound, Material: "" }, shop)).toMatchObject({ place: "S, S2", cure: "Ask first: Which tube material does the customer want?" });
});
