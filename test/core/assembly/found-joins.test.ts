/** Joints as found replace what the assembly infers; the ends so freed are joined to one another, and the answer says so. */
import { allCodes, findingOf, fourDiscs, jointsOf, report, type CarCells } from "../workshop";

const withValve: CarCells = { Valves: "BLK; PV; TEE" };
const changed = (cells: CarCells, joins: readonly string[]): string[] => {
  const before = jointsOf(cells);
  return jointsOf(cells, { joins }).filter((joint) => !before.includes(joint)).sort();
};
const lost = (cells: CarCells, joins: readonly string[]): string[] => {
  const after = jointsOf(cells, { joins });
  return jointsOf(cells).filter((joint) => !after.includes(joint)).sort();
};

test("one row crosses two lines: the two ends so freed are taken as joined", () => {
  expect(changed({}, ["MC | F | BLK | RI"])).toEqual(["MC F → BLK RI", "MC R → BLK FI"]);
  expect(report({}, { joins: ["MC | F | BLK | RI"] }).assumptions).toEqual(["MC R is taken as joined to BLK FI, since MC F was found on BLK RI"]);
});

test("the two lines that were there are gone with it", () => {
  expect(lost({}, ["MC | F | BLK | RI"])).toEqual(["MC F → BLK FI", "MC R → BLK RI"]);
});

describe("a part is found by its own name", () => {
  const ownRearHoses: CarCells = { ...fourDiscs, Hoses: "HF; HR2@LR; HR@RR" };
  test("where the car has one of it; the tee so passed by is not joined to itself", () => {
    expect(changed(ownRearHoses, ["BLK | RO | HR2 | IN"])).toEqual(["BLK RO → HR2@LR IN"]);
    expect(changed(ownRearHoses, ["BLK | RO | HR2@LR | IN"])).toEqual(["BLK RO → HR2@LR IN"]);
    expect(allCodes(ownRearHoses, { joins: ["BLK | RO | HR2 | IN"] })).toContain("port-left-open");
  });
  test("and not where it has two, of which either may be meant", () => {
    expect([changed({}, ["MC | F | HF | IN"]), lost({}, ["MC | F | HF | IN"])]).toEqual([[], []]);
    expect(findingOf("data-missing", {}, { joins: ["MC | F | HF | IN"] }).says).toContain("MC F to HF IN");
  });
});

test("a row that names neither a far end nor a plug changes nothing", () => {
  expect(lost({}, ["BLK | L | | | | | no"])).toEqual([]);
});

test("two rows that say the same crossing give the same joints, whichever comes first", () => {
  const rows = ["MC | F | BLK | RI", "MC | R | BLK | FI"];
  expect(changed({}, rows)).toEqual(changed({}, ["MC | F | BLK | RI"]));
  expect(changed({}, [...rows].reverse())).toEqual(changed({}, rows));
});

test("a row that says what was inferred changes nothing but that it was found", () => {
  const joins = ["BLK | RO | PV | IN"];
  expect([changed(withValve, joins), lost(withValve, joins)]).toEqual([[], []]);
  expect(report(withValve, { joins }).assembly.joints.filter(({ found }) => found)).toHaveLength(1);
});

test("a valve found fed through its outlet passes on through its inlet", () => {
  expect(changed(withValve, ["BLK | RO | PV | OUT"])).toEqual(["BLK RO → PV OUT", "PV IN → HR IN"]);
  expect(report(withValve, { joins: ["BLK | RO | PV | OUT"] }).paths.map(({ wheel }) => wheel).sort()).toEqual(["LF", "LR", "RF", "RR"]);
});

test("a port found plugged loses its line, and the far end of that line is fed by nothing", () => {
  expect(lost({}, ["BLK | L | | | | | yes"])).toEqual(["BLK L → HF@LF IN"]);
  expect(report({}, { joins: ["BLK | L | | | | | yes"] }).paths.map(({ wheel }) => wheel).sort()).toEqual(["LR", "RF", "RR"]);
});

test("a row that names no part or port of the car is asked about and changes nothing", () => {
  for (const row of ["BLK | ZZ | HR | IN", "ZZ | A | HR | IN", "BLK | RO | ZZ | IN"]) {
    expect([changed({}, [row]), lost({}, [row]), report({}, { joins: [row] }).questions.map(({ table }) => table)]).toEqual([[], [], ["Joins"]]);
  }
});

test("a part that stands at two wheels is named with its wheel, and its name alone is asked about", () => {
  expect(report({}, { joins: ["BLK | L | HF@LF | IN | 3/8-24"] }).questions).toEqual([]);
  expect(report({}, { joins: ["BLK | L | HF | IN | 3/8-24"] }).questions.map(({ table }) => table)).toEqual(["Joins"]);
});

test("rows are matched without regard to case", () => expect(changed({}, ["mc | f | blk | ri"])).toEqual(changed({}, ["MC | F | BLK | RI"])));

test("rows of another car change nothing", () => {
  const other = { joins: ["MC | F | BLK | RI"] };
  expect(jointsOf({ Car: "D" }, other)).toEqual(jointsOf({ Car: "D" }));
});
