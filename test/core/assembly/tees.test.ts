/** Branches: the car's own tees first, then proposed ones, and where each goes. */
import { diagonal, fourDiscs, jointsOf, report, type CarCells, type Shop } from "../workshop";

const tees = (cells: CarCells, shop?: Shop) => report(cells, shop).assembly.instances.filter(({ component }) => component.kind === "tee").map(({ label, place, proposed }) => `${label} at ${place}${proposed ? ", proposed" : ""}`);

test("a listed tee is used before one is proposed", () => {
  expect(tees({ ...fourDiscs, Valves: "BLK; TEE-F@frame-mid" })).toEqual(["TEE-F at frame-mid"]);
  expect(tees({ Valves: "none" })).toEqual(["TEE@added-1 at valve, proposed", "TEE@added-2 at axle-tee, proposed"]);
});

test("one listed tee and two branches: the other tee is proposed", () => expect(tees({ Valves: "TEE" })).toEqual(["TEE at axle-tee", "TEE@added-1 at valve, proposed"]));

test("the axle tee stands behind the rear hose and the other one before it, in whatever order they are listed", () => {
  const joints = (valves: string) => jointsOf({ Valves: valves }).filter((joint) => joint.includes("TEE"));
  expect(joints("TEE; TEE-F")).toEqual(joints("TEE-F; TEE"));
  expect(joints("TEE; TEE-F")).toEqual(["MC F → TEE-F IN", "TEE-F O1 → HF@LF IN", "TEE-F O2 → HF@RF IN", "HR OUT → TEE IN direct", "TEE O1 → WR@LR IN", "TEE O2 → WR@RR IN"]);
});

test("an axle tee of a car without a hose to the axle is used on its rear line, not left open beside a proposed one", () => {
  expect(tees({ Valves: "BLK; TEE", Hoses: "HF" })).toEqual(["TEE at axle-tee"]);
  expect(jointsOf({ Valves: "BLK; TEE", Hoses: "HF" }).filter((joint) => joint.includes("TEE"))).toEqual(["BLK RO → TEE IN", "TEE O1 → WR@LR IN", "TEE O2 → WR@RR IN"]);
});

test("a tee placed in one circuit is not used in the other", () => expect(tees({ ...diagonal, Master: "MC-X2", Valves: "TEE-F@2" })).toEqual(["TEE-F at valve", "TEE@added-1 at valve, proposed"]));

/** From the valve at (14 from the master, 30 and 50 to the fronts) the lines are 94 in; from frame-mid they are 74 + 90 + 110. */
test("a proposed tee goes where its lines are shortest in sum", () => expect(tees({ ...fourDiscs, Valves: "BLK-F" }, { parts: ["BLK-F distribution-block @valve | <IN front 3/8-24 | >L front LF 3/8-24 | >R front RF 3/8-24"] })).toEqual(["TEE@added-1 at frame-mid, proposed"]));

test("the proposed tee is the one of the catalogue with the outlets wanted, the cheapest among equals", () => {
  expect(report({ Valves: "BLK" }, { parts: ["TEE-3 tee @axle-tee price=1 | <IN 3/8-24 | >O1 3/8-24 | >O2 3/8-24 | >O3 3/8-24"] }).bill.find(({ kind }) => kind === "tee to add")).toMatchObject({ part: "TEE", price: 9 });
});

test("without any tee in the catalogue the proposed one has unknown threads, and they are asked for", () => {
  const { questions } = report({ Valves: "BLK" }, { parts: ["TEE union | <A 3/8-24 | >B 3/8-24", "TEE-F union | <A 3/8-24 | >B 3/8-24"] });
  expect(questions.map(({ ask }) => ask)).toEqual(["What thread has tee@added-1 out 1?", "What thread has tee@added-1 out 2?"]);
});

test("a tee proposed on a hose's end is one that screws onto it, not a cheaper one that does not", () => {
  const cheap = "TEE-W tee @axle-tee price=1 | <IN 7/16-24 | >O1 3/8-24 | >O2 3/8-24";
  expect(report({ Valves: "BLK" }, { parts: [cheap] }).bill.find(({ kind }) => kind === "tee to add")).toMatchObject({ part: "TEE" });
});

test("behind a hose that the row does not name no tee is missing: the hose may have an outlet for each wheel", () => {
  expect(report({ Hoses: "?", Valves: "BLK" }).findings.map(({ code }) => code).filter((code) => code === "outlet-shortage")).toEqual([]);
  expect(report({ Valves: "BLK" }).findings.map(({ code }) => code)).toContain("outlet-shortage");
});
