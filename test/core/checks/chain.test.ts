import { aboveNote, allDrum, diagonal, findingOf, fourDiscs, table, type CarCells } from "../workshop";
import { rule } from "./cases";

const fourOutlets: CarCells = { ...diagonal, Master: "MC-X4" };
/** One circuit before the rule year: a note of its own, and no matter here. */
const single: CarCells = { Year: "1962", Master: "MC-ONE", Valves: "BLK-4; TEE" };

rule("metering-doubled", [
  ["a hold-off valve before a combination valve with a hold-off section", { Valves: "HO; CV; TEE" }, "metering-doubled"],
  ["a hold-off valve before a combination valve without one", { Valves: "HO; CV-NOHOLD; TEE" }, ""],
  ["two hold-off valves in a row", { Valves: "HO-ANY@front; HO; BLK; TEE" }, "metering-doubled"],
  ["a hold-off valve for each front wheel is one on each path", { Valves: "BLK; HO-ANY@LF; HO-ANY@RF; TEE" }, "", { more: [table("Platform | From | To | Length (in) | Tube (in)", "P | LF | LF | 4 | 0.1875", "P | RF | RF | 4 | 0.1875")] }],
]);

rule("metering-on-rear", [
  ["a hold-off valve in the rear line", { Valves: "BLK; HO-ANY@rear; TEE" }, "metering-on-rear"],
  ["the same valve in the front line", { Valves: "HO-ANY@front; BLK; TEE" }, ""],
]);

rule("metering-on-drums", [
  ["a hold-off valve on an all-drum car", { ...allDrum, Valves: "HO; BLK; TEE" }, "metering-on-drums"],
  ["the same car with discs in front", { Valves: "HO; BLK; TEE" }, ""],
  ["an all-drum car without one", { ...allDrum }, ""],
]);

rule("metering-on-four-discs", [
  ["a hold-off valve on a car with four discs", { ...fourDiscs, Valves: "HO; BLK; TEE-F@frame-mid" }, "metering-on-four-discs"],
  ["four discs and no hold-off valve", { ...fourDiscs, Valves: "BLK; TEE-F@frame-mid" }, ""],
]);

const hadHoldOff = [table("Set | Platform | Valves | Front | Rear", "S1 | P | BLK; HO; PV | disc | drum")];
const hadNone = [table("Set | Platform | Valves | Front | Rear", "S1 | P | BLK; PV | disc | drum")];
rule("metering-missing", [
  ["front discs, rear drums and no hold-off", {}, "metering-missing"],
  ["the same with a hold-off valve", { Valves: "HO; BLK; TEE" }, ""],
  ["the same with a combination valve of unknown contents", { Valves: "CV-UNKNOWN; TEE" }, ""],
  ["drums all round", { ...allDrum }, ""],
  ["a diagonal split has none by design", { ...fourOutlets, Valves: "none", "Rear brake": "WR" }, ""],
]);
test("metering-missing is watched on a platform whose own valves had a hold-off", () => expect(findingOf("metering-missing", {}, { more: hadHoldOff }).severity).toBe("watch"));
test("metering-missing stays a note on a platform whose own valves had none", () => expect(findingOf("metering-missing", {}, { more: hadNone }).severity).toBe("note"));

rule("proportioning-doubled", [
  ["a combination valve and a frame-mounted proportioning valve", { Valves: "CV; PV; TEE" }, "proportioning-doubled"],
  ["a combination valve whose rear passage is gutted, and a proportioning valve", { Valves: "CV-GUTTED; PV; TEE" }, ""],
  ["an adjustable valve behind a proportioning valve", { Valves: "HO; BLK; PV; APV; TEE" }, "proportioning-doubled"],
  ["an adjustable valve wound out to no reduction", { Valves: "HO; BLK; PV; APV; TEE", "Valve split set (psi)": "none" }, ""],
  ["an adjustable valve set to a split counts", { Valves: "HO; BLK; PV; APV; TEE", "Valve split set (psi)": "400" }, "proportioning-doubled"],
  ["a load-sensing valve on the axle behind a combination valve", { Valves: "CV; LSV; TEE" }, "proportioning-doubled", { more: [table("Platform | From | To | Length (in) | Tube (in)", "P | axle-tee | axle-tee | 5 | 0.1875")] }],
  ["a limiting valve behind a combination valve", { Valves: "CV; LIM; TEE" }, "proportioning-doubled"],
  ["a slope of 1 cuts nothing", { Valves: "CV; FLAT; TEE" }, "", { parts: ["FLAT proportioning-valve @frame-mid | <IN rear 7/16-24 | >OUT rear 7/16-24 | IN>OUT proportioning split=350 slope=1"] }],
  ["two of one valve listed on a front/rear split are both in the rear line, where they belong", { Valves: "HO; BLK; PV-ANY; PV-ANY; TEE" }, "proportioning-doubled"],
  ["one valve in each circuit of a diagonal split", { ...fourOutlets, Valves: "PV-ANY; PV-ANY" }, ""],
]);

rule("proportioning-one-sided", [
  ["a diagonal split with a valve in one circuit only", { ...fourOutlets, Valves: "PV-ANY@1" }, "proportioning-one-sided"],
  ["a diagonal split with a valve in each", { ...fourOutlets, Valves: "PV-ANY@1; PV-ANY@2" }, ""],
  ["a diagonal split with a valve in none", { ...fourOutlets, Valves: "none" }, ""],
  ["a valve in one circuit and one of unknown contents in the other", { ...fourOutlets, Valves: "PV-ANY@1; MYSTERY@2" }, ""],
  ["a valve on one rear wheel of a front/rear split is outside the rule as designed, though it pulls as well", { ...fourDiscs, Valves: "BLK; TEE-F@frame-mid; PV-ANY@LR" }, "", { more: [table("Platform | From | To | Length (in) | Tube (in)", "I | LR | LR | 4 | 0.1875")] }],
  ["one of a pair wound out", { ...fourOutlets, Valves: "PV-ANY@1; APV@2", "Valve split set (psi)": "none" }, "proportioning-one-sided"],
]);

rule("proportioning-on-front", [
  ["a proportioning valve in the front line", { Valves: "PV-ANY@front; HO; BLK; TEE" }, "proportioning-on-front"],
  ["the same valve in the rear line", { Valves: "HO; BLK; PV-ANY@rear; TEE" }, ""],
  ["a valve that a diagonal split has on each front wheel", { ...fourOutlets, Valves: "PV-ANY@LF; PV-ANY@RF" }, "proportioning-on-front proportioning-on-front", { more: [table("Platform | From | To | Length (in) | Tube (in)", "X | LF | LF | 4 | 0.1875", "X | RF | RF | 4 | 0.1875")] }],
  ["valves whose ports say circuit 1 and 2 are on the rear wheels of a diagonal split", { ...fourOutlets, Valves: "PV-1; PV-2" }, "", {
    parts: ["PV-1 proportioning-valve @valve | <IN 1 3/8-24 | >OUT 1 3/8-24 | IN>OUT proportioning", "PV-2 proportioning-valve @valve | <IN 2 3/8-24 | >OUT 2 3/8-24 | IN>OUT proportioning"],
  }],
]);

rule("proportioning-upstream-of-both", [
  ["a valve listed before the block that parts the axles of a single circuit", { ...single, Valves: "PV-ANY; BLK-4; TEE" }, "proportioning-upstream-of-both"],
  ["the same valve listed behind the block", { ...single, Valves: "BLK-4; PV-ANY; TEE" }, ""],
  ["a valve found before the block on a car listed otherwise", { ...single, Valves: "BLK-4; PV-ANY; TEE" }, "proportioning-upstream-of-both", {
    joins: ["MC-ONE | OUT | PV-ANY | IN", "PV-ANY | OUT | BLK-4 | IN", "BLK-4 | B | HR | IN"],
  }],
]);

rule("residual-on-disc", [
  ["a drum residual in the front line", { Valves: "RV10@front; HO; BLK; TEE" }, "residual-on-disc"],
  ["a disc residual in the front line", { Valves: "RV2@front; HO; BLK; TEE" }, ""],
  ["a drum residual in the drum line", { Valves: "HO; BLK; RV10; TEE" }, ""],
  ["a residual of exactly the limit of 5 psi is a disc residual", { Valves: "RV5@front; HO; BLK; TEE" }, "", { parts: ["RV5 residual-valve @valve | <IN 3/8-24 | >OUT 3/8-24 | IN>OUT residual holds=5"] }],
  ["a drum residual for each rear drum of a diagonal split with an outlet for each wheel", { ...fourOutlets, "Rear brake": "WR-BARE", Valves: "RV10; RV10" }, ""],
  ["a residual of unknown pressure is not judged", { Valves: "RV@front; HO; BLK; TEE" }, "", { parts: ["RV residual-valve @valve | <IN 3/8-24 | >OUT 3/8-24 | IN>OUT residual"] }],
]);

rule("residual-shared", [
  ["one drum residual before the block of a single circuit, discs in front", { ...single, Valves: "RV10; BLK-4; TEE" }, "residual-shared"],
  ["the same on an all-drum car", { ...single, ...allDrum, Valves: "RV10; BLK-4; TEE" }, ""],
  ["one drum residual behind the block, in the drum branch", { ...single, Valves: "BLK-4; RV10@rear; TEE" }, ""],
]);

rule("drum-master-on-disc", [
  ["a check valve in the outlet that feeds the discs", { Master: "MC-DRUM", Valves: "HO; BLK; TEE" }, "drum-master-on-disc"],
  ["a check valve in the outlet that feeds the drums", { Master: "MC-REAR10", Valves: "HO; BLK; TEE" }, ""],
  ["a check valve stated for the master as a whole belongs to the drums", { Master: "MC-COLUMN10", Valves: "HO; BLK; TEE" }, ""],
  ["a check valve that holds 2 psi", { Master: "MC-DISC2", Valves: "HO; BLK; TEE" }, ""],
]);
test("a master for drums on a car with four discs holds both ends, and is one finding", () => {
  const cells = { ...fourDiscs, Master: "MC-COLUMN10", Valves: "BLK; TEE-F@frame-mid" };
  expect(aboveNote(cells)).toBe("drum-master-on-disc");
  expect(findingOf("drum-master-on-disc", cells)).toMatchObject({ place: "MC-COLUMN10 F and R, to LF, RF, LR, RR", says: expect.stringMatching(/^Outlets MC-COLUMN10 F and R hold 10 psi and feed discs: the pads drag/) as string });
});

// 1 bar is 14.5038 psi: 10 psi are 0.69 bar.
test("what a residual holds is said in bar where the shop works in metric units", () => {
  const cells = { ...fourDiscs, Master: "MC-COLUMN10", Valves: "BLK; TEE-F@frame-mid" };
  expect(findingOf("drum-master-on-disc", cells, { more: [table("Setting | Value", "units | metric")] }).says).toContain("hold 0.69 bar");
});

const bare: CarCells = { "Rear brake": "WR-BARE" };
rule("residual-missing-drum", [
  ["drums without expanders and no residual", { ...bare, Valves: "HO; BLK; TEE" }, "residual-missing-drum"],
  ["drums with expanders", { Valves: "HO; BLK; TEE" }, ""],
  ["a drum residual in the line", { ...bare, Valves: "HO; BLK; RV10; TEE" }, ""],
  ["a check valve in the master", { ...bare, Master: "MC-REAR10", Valves: "HO; BLK; TEE" }, ""],
  ["a disc residual does not hold the cups out", { ...bare, Valves: "HO; BLK; RV2@rear; TEE" }, "residual-missing-drum"],
  ["a valve of unknown contents may hold", { ...bare, Valves: "HO; BLK; MYSTERY@rear; TEE" }, ""],
  ["expanders not stated are asked for, not guessed", { "Rear brake": "WR-SILENT", Valves: "HO; BLK; TEE" }, ""],
]);

rule("residual-doubled", [
  ["a residual valve behind a master with one built in", { Master: "MC-REAR10", Valves: "HO; BLK; RV10; TEE" }, "residual-doubled"],
  ["a residual valve behind a master without", { Valves: "HO; BLK; RV10; TEE" }, ""],
  ["one residual in each line", { Valves: "RV2@front; HO; BLK; RV10@rear; TEE" }, ""],
]);

rule("residual-order", [
  ["a residual behind the proportioning", { Valves: "HO; BLK; PV; RV10@frame-mid; TEE" }, "residual-order", { more: [table("Platform | From | To | Length (in) | Tube (in)", "P | frame-mid | frame-mid | 5 | 0.1875")] }],
  ["a residual before the proportioning", { Valves: "HO; BLK; RV10; PV; TEE" }, ""],
]);
