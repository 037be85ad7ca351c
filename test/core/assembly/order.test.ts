/** Where a listed valve stands: its circuit, its wheels, its place in the line. */
import { allDrum, diagonal, fourDiscs, jointsOf, report, type CarCells, type Shop } from "../workshop";

const lineOf = (valve: string, cells: CarCells, shop?: Shop): string[] => jointsOf(cells, shop).filter((joint) => joint.includes(valve));
const assumed = (cells: CarCells, shop?: Shop): readonly string[] => report(cells, shop).assumptions;
const wheelsBehind = (valve: string, cells: CarCells): string[] => report(cells).paths.filter(({ steps }) => steps.some(({ instance }) => instance.label === valve)).map(({ wheel }) => wheel);

describe("the circuit of a valve is told, in this order,", () => {
  test.each<[string, CarCells, string, string[]]>([
    ["by the row", { Valves: "HO; BLK; RV2@rear; TEE" }, "RV2", ["BLK RO → RV2 IN", "RV2 OUT → HR IN"]],
    ["by its ports", { Valves: "HO; BLK; PV; TEE" }, "PV", ["BLK RO → PV IN", "PV OUT → HR IN"]],
    ["by its duty: proportioning to the rear", { Valves: "HO; BLK; APV; TEE" }, "APV", ["BLK RO → APV IN", "APV OUT → HR IN"]],
    ["by its duty: hold-off to the front", { Valves: "HO-ANY; BLK; TEE" }, "HO-ANY", ["MC F → HO-ANY IN", "HO-ANY OUT → BLK FI"]],
    ["by its pressure: a drum residual to the only drums", { Valves: "HO; BLK; RV10; TEE" }, "RV10", ["BLK RO → RV10 IN", "RV10 OUT → HR IN"]],
    ["by its pressure: a disc residual to the only discs", { Valves: "RV2; BLK; TEE" }, "RV2", ["MC F → RV2 IN", "RV2 OUT → BLK FI"]],
  ])("%s", (_, cells, valve, joints) => expect(lineOf(valve, cells)).toEqual(joints));

  test("the row goes before the ports", () => expect(wheelsBehind("PV", { Valves: "PV@front; BLK; TEE" })).toEqual(["LF", "RF"]));
});

describe("a valve that could be on either line is a question, never a guess", () => {
  test("a disc residual on a car with four discs", () => {
    const { questions, assembly, findings } = report({ ...fourDiscs, Valves: "BLK; RV2; TEE-F@frame-mid" });
    expect(questions.map(({ ask }) => ask)).toEqual(["Which line is RV2 in? Write RV2@front or RV2@rear."]);
    expect(assembly.unplaced.map(({ label }) => label)).toEqual(["RV2"]);
    expect(findings.map(({ code }) => code)).toEqual(["data-missing"]);
  });

  test("a valve of unknown contents on any ports", () => {
    expect(report({ Valves: "BLK; MYSTERY; TEE" }).questions.map(({ table, column }) => `${table} ${column}`)).toEqual(["Cars Valves", "Passages Does"]);
  });

  test("one proportioning valve on a diagonal split", () => {
    expect(report({ ...diagonal, Master: "MC-X4", Valves: "PV-ANY" }).questions.map(({ ask }) => ask)).toEqual(["Which line is PV-ANY in? Write PV-ANY@1 or PV-ANY@2."]);
  });
});

describe("two of one valve", () => {
  test("are one for each circuit of a diagonal split, and the answer says so", () => {
    expect(assumed({ ...diagonal, Master: "MC-X4", Valves: "PV-ANY; PV-ANY" })).toEqual(["PV-ANY@1 is taken to be in circuit 1, by being one of a pair", "PV-ANY@2 is taken to be in circuit 2, by being one of a pair"]);
  });

  test("are one for each line where either could be on both", () => {
    expect(lineOf("RV2", { ...fourDiscs, Valves: "RV2; RV2; BLK; TEE-F@frame-mid" })).toEqual(["MC F → RV2@1 IN", "RV2@1 OUT → BLK FI", "MC R → RV2@2 IN", "RV2@2 OUT → BLK RI"]);
  });

  test("are both in the line that their duty belongs to", () => expect([wheelsBehind("PV-ANY@1", { Valves: "BLK; PV-ANY; PV-ANY; TEE" }), wheelsBehind("PV-ANY@2", { Valves: "BLK; PV-ANY; PV-ANY; TEE" })]).toEqual([["LR", "RR"], ["LR", "RR"]]));

  test("are where the row puts them", () => expect(wheelsBehind("RV10@front", { ...allDrum, Valves: "RV10@front; RV10@rear; BLK; TEE" })).toEqual(["LF", "RF"]));
});

describe("flow order", () => {
  test("a valve stands before the block when it is listed before it", () => expect(lineOf("RV10", { Valves: "RV10; HO; BLK; TEE" })).toEqual(["MC R → RV10 IN", "RV10 OUT → BLK RI"]));
  test("a valve stands behind the block when it is listed behind it", () => expect(lineOf("RV10", { Valves: "HO; BLK; RV10; TEE" })).toEqual(["BLK RO → RV10 IN", "RV10 OUT → HR IN"]));

  test("a hold-off listed behind the block that parts the fronts is fed before it, and the answer says so", () => {
    expect(lineOf("HO", { Valves: "BLK; HO; TEE" })).toEqual(["MC F → HO IN", "HO OUT → BLK FI"]);
    expect(assumed({ Valves: "BLK; HO; TEE" })).toEqual(["HO is taken as fed before BLK: after it, an outlet would be left open"]);
    expect(assumed({ Valves: "HO; BLK; TEE" })).toEqual([]);
  });

  test.each<[string, CarCells, string[]]>([
    ["proportioning before the block of a single circuit feeds every wheel", { ...allDrum, Year: "1962", Master: "MC-ONE", Valves: "PV-ANY; BLK-4; TEE" }, ["LF", "RF", "LR", "RR"]],
    ["proportioning behind it feeds the rears", { ...allDrum, Year: "1962", Master: "MC-ONE", Valves: "BLK-4; PV-ANY; TEE" }, ["LR", "RR"]],
  ])("%s", (_, cells, wheels) => expect(wheelsBehind("PV-ANY", cells)).toEqual(wheels));

  test("a residual nearest the master of a circuit with one outlet feeds both its wheels", () => {
    const cells = { ...diagonal, "Rear brake": "WR", Master: "MC-X2", Valves: "RV10; RV10; TEE-F; TEE-F" };
    expect([wheelsBehind("RV10@1", cells), wheelsBehind("RV10@2", cells)]).toEqual([["LF", "RR"], ["RF", "LR"]]);
  });

  test("a residual on a circuit with an outlet for each wheel stands on the brake it is for", () => {
    const cells = { ...diagonal, "Rear brake": "WR", Master: "MC-X4", Valves: "RV10; RV10" };
    expect([wheelsBehind("RV10@1", cells), wheelsBehind("RV10@2", cells)]).toEqual([["RR"], ["LR"]]);
  });
});
