/**
 * Whole cars, each with every line it must have, in the order fluid meets them. The lines are read off the layouts by hand.
 * Those of the first group are the layouts any shop meets; the others are not on any list.
 */
import { aboveNote, allDrum, diagonal, fourDiscs, report, runsOf, table, type CarCells, type Shop } from "../workshop";

type Layout = readonly [says: string, cells: CarCells, runs: readonly string[], shop?: Shop];

const AXLE_TEE = ["TEE O1 → WR@LR IN", "TEE O2 → WR@RR IN"];
const BLOCK_FRONTS = ["BLK L → HF@LF IN", "BLK R → HF@RF IN"];
const valveToValve: Shop = { more: [table("Platform | From | To | Length (in) | Tube (in)", "P | frame-mid | frame-mid | 5 | 0.1875")] };

const usual: readonly Layout[] = [
  ["all drum on a block", { ...allDrum }, ["MC F → BLK FI", ...BLOCK_FRONTS, "MC R → BLK RI", "BLK RO → HR IN", ...AXLE_TEE]],
  ["early disc: block, hold-off valve, frame-mounted proportioning valve", { Valves: "BLK; HO; PV; TEE" },
    ["MC F → HO IN", "HO OUT → BLK FI", ...BLOCK_FRONTS, "MC R → BLK RI", "BLK RO → PV IN", "PV OUT → HR IN", ...AXLE_TEE]],
  ["one combination valve beside the master", { Valves: "CV; TEE" },
    ["MC F → CV FI", "CV L → HF@LF IN", "CV R → HF@RF IN", "MC R → CV RI", "CV RO → HR IN", ...AXLE_TEE]],
  ["block and adjustable proportioning", { Valves: "BLK; APV; TEE" },
    ["MC F → BLK FI", ...BLOCK_FRONTS, "MC R → BLK RI", "BLK RO → APV IN", "APV OUT → HR IN", ...AXLE_TEE]],
  ["adjustable proportioning and tees", { Valves: "TEE-F; APV; TEE" },
    ["MC F → TEE-F IN", "TEE-F O1 → HF@LF IN", "TEE-F O2 → HF@RF IN", "MC R → APV IN", "APV OUT → HR IN", ...AXLE_TEE]],
  ["diagonal split, four outlets, two proportioning valves", { ...diagonal, Master: "MC-X4", Valves: "PV-ANY; PV-ANY" },
    ["MC-X4 P1 → HF@LF IN", "MC-X4 P2 → PV-ANY@1 IN", "PV-ANY@1 OUT → HR2@RR IN", "MC-X4 S1 → HF@RF IN", "MC-X4 S2 → PV-ANY@2 IN", "PV-ANY@2 OUT → HR2@LR IN"]],
  ["diagonal split, two outlets, a tee in each circuit", { ...diagonal, Master: "MC-X2", Valves: "TEE-F; TEE-F; PV-ANY; PV-ANY" },
    ["MC-X2 P → TEE-F@1 IN", "TEE-F@1 O1 → PV-ANY@1 IN", "TEE-F@1 O2 → HF@LF IN", "PV-ANY@1 OUT → HR2@RR IN",
      "MC-X2 S → TEE-F@2 IN", "TEE-F@2 O1 → PV-ANY@2 IN", "TEE-F@2 O2 → HF@RF IN", "PV-ANY@2 OUT → HR2@LR IN"]],
  ["four discs with disc residuals nearest the master", { ...fourDiscs, Valves: "RV2@front; RV2@rear; BLK; TEE-F@frame-mid" },
    ["MC F → RV2@front IN", "RV2@front OUT → BLK FI", ...BLOCK_FRONTS, "MC R → RV2@rear IN", "RV2@rear OUT → BLK RI", "BLK RO → TEE-F IN", "TEE-F O1 → HR2@LR IN", "TEE-F O2 → HR2@RR IN"]],
  ["single circuit on a block", { ...allDrum, Year: "1962", Master: "MC-ONE", Valves: "BLK-4; TEE" },
    ["MC-ONE OUT → BLK-4 IN", "BLK-4 L → HF@LF IN", "BLK-4 R → HF@RF IN", "BLK-4 B → HR IN", ...AXLE_TEE]],
];

const REMOTE = "BLK-R distribution-block @valve | <FI front 1/2-20 | >HOUT front 7/16-24 | <HIN front 7/16-24 | <RI rear 1/2-20 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-24 | FI>HOUT through | HIN>L through | HIN>R through | RI>RO through";
const BLOCK_X = "BX distribution-block @valve | <I1 1 3/8-24 | <I2 2 3/8-24 | >F1 1 LF 3/8-24 | >R1 1 RR 3/8-24 | >F2 2 RF 3/8-24 | >R2 2 LR 3/8-24";
const FRONTS_ONLY = "BLK-F distribution-block @valve | <IN 3/8-24 | >L front LF 3/8-24 | >R front RF 3/8-24";

const unlisted: readonly Layout[] = [
  ["a hold-off valve apart from the block and fed back into it", { Valves: "BLK-R; HO; TEE" },
    ["MC F → BLK-R FI", "BLK-R HOUT → HO IN", "HO OUT → BLK-R HIN", "BLK-R L → HF@LF IN", "BLK-R R → HF@RF IN", "MC R → BLK-R RI", "BLK-R RO → HR IN", ...AXLE_TEE], { parts: [REMOTE] }],
  ["a union in the rear line", { Valves: "HO; BLK; UN@rear; TEE" },
    ["MC F → HO IN", "HO OUT → BLK FI", ...BLOCK_FRONTS, "MC R → BLK RI", "BLK RO → UN A", "UN B → HR IN", ...AXLE_TEE]],
  ["an anti-lock unit with an outlet for each wheel", { ...fourDiscs, Valves: "ABS4" },
    ["MC F → ABS4 FI", "ABS4 LF → HF@LF IN", "ABS4 RF → HF@RF IN", "MC R → ABS4 RI", "ABS4 LR → HR2@LR IN", "ABS4 RR → HR2@RR IN"]],
  ["residual, proportioning and adjustable valve in listed order in one rear line", { Valves: "HO; BLK; RV10; APV; TEE" },
    ["MC F → HO IN", "HO OUT → BLK FI", ...BLOCK_FRONTS, "MC R → BLK RI", "BLK RO → RV10 IN", "RV10 OUT → APV IN", "APV OUT → HR IN", ...AXLE_TEE]],
  ["two parts at one place keep their listed order", { Valves: "HO; BLK; PV; UN@rear; TEE" },
    ["MC F → HO IN", "HO OUT → BLK FI", ...BLOCK_FRONTS, "MC R → BLK RI", "BLK RO → PV IN", "PV OUT → UN A", "UN B → HR IN", ...AXLE_TEE], valveToValve],
  ["a load-sensing valve on the axle, between hose and tee", { Valves: "HO; BLK; LSV; TEE" },
    ["MC F → HO IN", "HO OUT → BLK FI", ...BLOCK_FRONTS, "MC R → BLK RI", "BLK RO → HR IN", "LSV OUT → TEE IN", ...AXLE_TEE], { more: [table("Platform | From | To | Length (in) | Tube (in)", "P | axle-tee | axle-tee | 5 | 0.1875")] }],
  ["one hose with an outlet for each rear wheel needs no tee", { Valves: "HO; BLK", Hoses: "HF; HRT" },
    ["MC F → HO IN", "HO OUT → BLK FI", ...BLOCK_FRONTS, "MC R → BLK RI", "BLK RO → HRT IN", "HRT OL → WR@LR IN", "HRT OR → WR@RR IN"]],
  ["a tee with three outlets parts a single circuit", { ...allDrum, Year: "1962", Master: "MC-ONE", Valves: "TEE-3; TEE" },
    ["MC-ONE OUT → TEE-3 IN", "TEE-3 O1 → HR IN", "TEE-3 O2 → HF@LF IN", "TEE-3 O3 → HF@RF IN", ...AXLE_TEE], { parts: ["TEE-3 tee @valve | <IN 3/8-24 | >O1 3/8-24 | >O2 3/8-24 | >O3 3/8-24"] }],
  ["tees of two outlets in a row part a single circuit in three", { ...allDrum, Year: "1962", Master: "MC-ONE", Valves: "TEE-F; TEE-F; TEE" },
    ["MC-ONE OUT → TEE-F@1 IN", "TEE-F@1 O1 → HR IN", "TEE-F@1 O2 → TEE-F@2 IN", "TEE-F@2 O1 → HF@LF IN", "TEE-F@2 O2 → HF@RF IN", ...AXLE_TEE]],
  ["a block for the fronts alone, the rears straight from the master", { Valves: "BLK-F; TEE" },
    ["MC F → BLK-F IN", "BLK-F L → HF@LF IN", "BLK-F R → HF@RF IN", "MC R → HR IN", ...AXLE_TEE], { parts: [FRONTS_ONLY] }],
  ["a diagonal split through one block, valves behind it", { ...diagonal, Master: "MC-X2", Valves: "BX; PV-ANY; PV-ANY" },
    ["MC-X2 P → BX I1", "BX F1 → HF@LF IN", "BX R1 → PV-ANY@1 IN", "PV-ANY@1 OUT → HR2@RR IN", "MC-X2 S → BX I2", "BX F2 → HF@RF IN", "BX R2 → PV-ANY@2 IN", "PV-ANY@2 OUT → HR2@LR IN"], { parts: [BLOCK_X] }],
  ["one valve body with a passage for each circuit of a diagonal split", { ...diagonal, Master: "MC-X4", Valves: "PV-D" },
    ["MC-X4 P1 → HF@LF IN", "MC-X4 P2 → PV-D I1", "PV-D R1 → HR2@RR IN", "MC-X4 S1 → HF@RF IN", "MC-X4 S2 → PV-D I2", "PV-D R2 → HR2@LR IN"],
    { parts: ["PV-D combination-valve @valve | <I1 1 3/8-24 | <I2 2 3/8-24 | >R1 1 3/8-24 | >R2 2 3/8-24 | I1>R1 proportioning | I2>R2 proportioning"] }],
  ["the other diagonal, as the master's outlets say", { ...diagonal, Master: "MC-XM", Valves: "none" },
    ["MC-XM P1 → HF@RF IN", "MC-XM P2 → HR2@LR IN", "MC-XM S1 → HF@LF IN", "MC-XM S2 → HR2@RR IN"],
    { parts: ["MC-XM master @master | >P1 1 RF 3/8-24 | >P2 1 LR 3/8-24 | >S1 2 LF 3/8-24 | >S2 2 RR 3/8-24"] }],
  ["a diagonal split whose car says so, on a platform that says front/rear", { ...diagonal, Platform: "I", Split: "diagonal", Master: "MC-X4", Valves: "none" },
    ["MC-X4 P1 → HF@LF IN", "MC-X4 P2 → HR2@RR IN", "MC-X4 S1 → HF@RF IN", "MC-X4 S2 → HR2@LR IN"]],
  ["one hose for the front wheels and for the axle, told by the row", { Valves: "BLK; TEE", Hoses: "HX@front; HX@rear" },
    ["MC F → BLK FI", "BLK L → HX@LF IN", "BLK R → HX@RF IN", "MC R → BLK RI", "BLK RO → HX IN", ...AXLE_TEE],
    { parts: ["HX hose | <IN 3/8-24 | >OUT 3/8-24 male", "DF disc parking=no | <IN 3/8-24"] }],
  ["an outlet of the master for each front wheel", { Master: "MC-3", Valves: "TEE" },
    ["MC-3 FL → HF@LF IN", "MC-3 FR → HF@RF IN", "MC-3 R → HR IN", ...AXLE_TEE], { parts: ["MC-3 master @master | >FL front LF 3/8-24 | >FR front RF 3/8-24 | >R rear 9/16-18"] }],
];

describe.each([["the usual layouts", usual], ["layouts on no list", unlisted]] as const)("%s", (_, layouts) => {
  test.each(layouts.map(([says, ...rest]) => [says, rest] as const))("%s: every line, in order", (_says, [cells, runs, shop]) => expect(runsOf(cells, shop)).toEqual(runs));

  test.each(layouts.map(([says, ...rest]) => [says, rest] as const))("%s: every end has a nut, every wheel is fed, nothing is above a note", (_says, [cells, , shop]) => {
    const { runs, paths } = report(cells, shop);
    expect(runs.flatMap(({ a, b }) => [a.fitting?.fits, b.fitting?.fits])).toEqual(runs.flatMap(() => [true, true]));
    expect(paths.map(({ wheel }) => wheel).sort()).toEqual(["LF", "LR", "RF", "RR"]);
    expect(aboveNote(cells, shop)).toBe("");
  });
});

/** Nuts by tube and port (SAE J512 as remembered for 3/8-24; the larger ones on 3/16 in tube are common practice, no source). */
test.each([
  ["the early block", { Valves: "BLK; HO; PV; TEE" }, ["1/2-20 7/16-24", "7/16-24 1/2-20", "3/8-24 3/8-24", "3/8-24 3/8-24", "9/16-18 1/2-20", "7/16-24 7/16-24", "7/16-24 3/8-24", "3/8-24 3/8-24", "3/8-24 3/8-24"]],
  ["the later combination valve", { Valves: "CV; TEE" }, ["1/2-20 1/2-20", "3/8-24 3/8-24", "3/8-24 3/8-24", "9/16-18 9/16-18", "7/16-24 3/8-24", "3/8-24 3/8-24", "3/8-24 3/8-24"]],
] as const)("%s comes out with the nuts its ports need", (_, cells, nuts) => {
  const threads = report(cells).runs.map(({ a, b }) => [a, b].map(({ fitting }) => (fitting?.fits ? fitting.nut.face.thread.name : "none")).join(" "));
  expect(threads).toEqual(nuts);
});

test("moving an early car to the combination valve takes the lines of the hold-off valve and the frame-mounted valve off the list", () => {
  const [early, later] = [runsOf({ Valves: "BLK; HO; PV; TEE" }), runsOf({ Valves: "CV; TEE" })];
  expect(early.filter((run) => /HO|PV/.test(run))).toHaveLength(4);
  expect(later.filter((run) => /HO|PV/.test(run))).toEqual([]);
  expect(later).toHaveLength(early.length - 2);
});

test("a front/rear master on a diagonal car feeds whole circuits, and the answer says what was taken", () => {
  const told = report({ ...diagonal, Valves: "none" }, { parts: ["MC master @master | >F front front 3/8-24 | >R rear rear 3/8-24"] });
  expect(told.paths.map(({ wheel, outlet }) => `${outlet.port.name} ${wheel}`).sort()).toEqual(["F LF", "F RR", "R LR", "R RF"]);
  expect(told.assumptions).toEqual(expect.arrayContaining(["outlet F of MC is taken as circuit 1"]));
});

const filedUnder = (place: string): Shop => ({ parts: [`HF hose @${place} | <IN 3/8-24 | >OUT 7/16-20 banjo`] });

test("a hose listed once and filed under one wheel is at both of its axle, and the answer says so", () => {
  const told = report({}, filedUnder("LF"));
  expect(told.runs.map(({ joint }) => joint.to.instance.label)).toEqual(expect.arrayContaining(["HF@LF", "HF@RF"]));
  expect(told.assumptions).toContain("hose HF, listed for LF only, is taken to be at RF too");
});

test("a hose that the row puts at one wheel is at that wheel only", () => {
  const told = report({ Hoses: "HF@LF; HR" }, filedUnder("LF"));
  expect(told.runs.map(({ joint }) => joint.to.instance.label)).toEqual(expect.arrayContaining(["HF@LF", "DF@RF"]));
});

test("one kind of hose that says nothing of its place is at every wheel; of two kinds it is asked which is where", () => {
  const plain = ["HF hose | <IN 3/8-24 | >OUT 7/16-20 banjo", "HR2 hose | <IN 3/8-24 | >OUT 3/8-24 male"];
  const asked = (hoses: string) => report({ ...fourDiscs, Hoses: hoses }, { parts: plain }).questions.filter(({ column }) => column === "Hoses").length;
  expect([asked("HF"), asked("HF; HR2")]).toEqual([0, 2]);
});
