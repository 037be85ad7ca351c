/**
 * Cars of the workshop as the physics reads them. Worked by hand: 3000 lb (laden 3300), 66 % in front, h/L 0.2, tyre 12.5 in;
 * front 2.290222 lbf for each psi above 10, rear 0.407150 (see test/functions/balance.test.ts).
 */
import { adviseOn } from "../../../src/core/balance/advice";
import { balanceOf } from "../../../src/core/balance/balance-of";
import { pointAtPressure } from "../../../src/core/balance/braking";
import { brakingWith } from "../../../src/core/balance/car-braking";
import { judge, rearAheadWithin, type Judgement } from "../../../src/core/balance/judgement";
import { travelOf } from "../../../src/core/balance/travel";
import { valvePoints } from "../../../src/core/balance/valve-points";
import { inches, inInchesOfMercury, inPoundsForce, inPsi, newtons, psi } from "../../../src/core/quantity";
import { catalogueOf, report, table, type CarCells, type Shop } from "../workshop";

const judged = (cells: CarCells, shop?: Shop): Judgement => {
  const catalogue = catalogueOf(shop);
  return judge({ catalogue, ...report(cells, shop) });
};
const balanced = (cells: CarCells, shop?: Shop) => {
  const [unladen, laden] = balanceOf(judged(cells, shop));
  if (!unladen || !laden) throw new Error(JSON.stringify(judged(cells, shop).car.missing));
  return { unladen, laden };
};
const near = (got: number | undefined, expected: number, share = 1e-3): void => expect(Math.abs((got ?? NaN) - expected)).toBeLessThanOrEqual(Math.abs(expected) * share);
const rearAt = (cells: CarCells, shop?: Shop): number => inPsi(balanced(cells, shop).unladen.at[2]?.rearLine ?? (NaN as never));

describe("a failed circuit", () => {
  const valve = (bypass: string): Shop => ({ parts: [`CV combination-valve @valve price=80 arrow=yes | <FI front 1/2-20 | <RI rear 9/16-18 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-24 | FI>L through | FI>R through | RI>RO proportioning split=350 slope=0.4 ${bypass}`] });
  const cells: CarCells = { Valves: "CV; TEE" };
  // 150 lbf are 1145.9 psi. Through the valve the rears get 350 + 0.4 x 795.9 = 668.4 psi: 0.40715 x 658.4 / 3000 g; past it 0.40715 x 1135.9 / 3000.
  test("a valve that does not bypass still cuts the rears", () => near(balanced(cells, valve("")).unladen.failed[0]?.stop?.z, (0.40715 * 658.37) / 3000));
  test("one that does passes full pressure", () => near(balanced(cells, valve("bypass=yes")).unladen.failed[0]?.stop?.z, (0.40715 * 1135.92) / 3000));
  test("with the rears failed the fronts are as they were", () => near(balanced(cells, valve("bypass=yes")).unladen.failed[1]?.z, 0.72439));

  // A diagonal keeps one wheel of each axle: half of the force at each pressure, and the same order of locking.
  test("a diagonal", () => {
    const { unladen } = balanced({ Platform: "X", Year: "1976", "Rear brake": "DR", Hoses: "HF; HR2", Master: "MC-X4", Valves: "none" });
    const whole = unladen.stop;
    expect(unladen.failed.map(({ circuit }) => circuit)).toEqual(["1", "2"]);
    expect(unladen.failed[0]?.z).toBe(unladen.failed[1]?.z);
    expect(whole && (unladen.failed[0]?.z ?? 0) < whole.z).toBe(true);
  });

  test("of a single circuit nothing is left", () => expect(balanced({ Year: "1962", Master: "MC-ONE", Valves: "BLK-4; TEE" }).unladen.failed.map(({ circuit, z }) => [circuit, z])).toEqual([["single", 0]]));
});

// The structure of a car is shared by all that are equipped alike, whatever their names.
test("what the row of a car lacks is named for that car", () =>
  expect(judged({ Car: "Own name", Valves: "?" }).car.missing).toContainEqual({ table: "Cars", column: "Valves", subject: "Own name" }));

describe("the booster", () => {
  const shop: Shop = { parts: ["BST booster"], more: [table("Component | Diaphragm (in) | Diaphragms | Gain | Jump-in (lbf) | Cut-in (lbf) | Spring (lbf) | Vacuum side (in³) | Air side (in³)", "BST | 9 | 1 | 5 | 30 | 20 | 25 | 200 | 40")] };
  const cells: CarCells = { Booster: "BST", Valves: "BLK; PV; TEE", "Pedal ratio": "3" };
  // 0.3 g takes 343.66 psi, 269.9 lbf: (20 + (269.9 - 30) / 5) / 3.
  test("lightens the pedal", () => near(inPoundsForce(balanced(cells, shop).unladen.at[0]?.pedal ?? newtons(NaN)), (20 + (269.91 - 30) / 5) / 3));
  // Failed, 150 lbf are 450 less the spring's 25 at the rod: 541.1 psi; z = (2.290222 x 531.1 + 0.40715 x (340 + 0.4 x 191.1)) / 3000.
  test("failed, leaves the foot and takes its spring", () => near(balanced(cells, shop).unladen.withoutAssist?.z, (2.290222 * 531.1 + 0.40715 * (340 + 0.4 * 191.1)) / 3000));
  test("keeps vacuum for some stops, by its chambers and the travel of a stop", () => {
    const catalogue = catalogueOf(shop);
    const one = report(cells, shop);
    const travel = travelOf({ catalogue, ...one });
    const rod = travel.circuits.reduce((sum, { needed }) => sum + (needed ?? NaN), 0) / inches(1);
    // Two stops by default: 18 inHg x ((200 - 63.617 x travel) / 240)².
    near(inInchesOfMercury(travel.vacuumLeft ?? (NaN as never)), 18 * ((200 - 63.617 * rod) / 240) ** 2);
  });
  test("without its chambers stated nothing is said", () => expect(travelOf({ catalogue: catalogueOf(), ...report({}) }).vacuumLeft).toBeUndefined());
});

describe("a figure that both circuits of a diagonal lack", () => {
  const cells: CarCells = { Platform: "X", Year: "1976", "Rear brake": "DR", Hoses: "HF; HR2", Master: "MC-X4", Valves: "none" };
  const bare: Shop = { parts: ["DF disc parking=no figures=none pistons=2 piston=2.25 type=floating friction=0.38 outer=5.5 inner=3.5 | <IN 7/16-20 banjo"] };
  const travel = (shop?: Shop) => travelOf({ catalogue: catalogueOf(shop), ...report(cells, shop) });
  test("is there as long as it is stated", () => expect(travel().circuits.map(({ needed }) => needed !== undefined)).toEqual([true, true]));
  test("leaves both of them open, and is named once", () => {
    const { circuits, missing } = travel(bare);
    expect(circuits.map(({ needed }) => needed)).toEqual([undefined, undefined]);
    expect(missing.filter(({ column, subject }) => column === "Clearance" && subject === "DF")).toHaveLength(1);
  });
});

describe("valves on the way", () => {
  const lsv: Shop = { parts: ["LSV proportioning-valve @axle-tee | <IN rear 3/8-24 | >OUT rear 3/8-24 | IN>OUT load-sensing-proportioning split=200 slope=0.3 laden=500"], more: [table("Platform | From | To | Length (in) | Tube (in)", "P | axle-tee | axle-tee | 5 | 0.1875")] };
  test("a load-sensing valve takes its laden split when laden", () => {
    const { unladen, laden } = balanced({ Valves: "BLK; LSV; TEE" }, lsv);
    for (const [one, split] of [[unladen, 200], [laden, 500]] as const) {
      const point = one.at[2];
      near(inPsi(point?.rearLine ?? (NaN as never)), split + 0.3 * (inPsi(point?.pressure ?? (NaN as never)) - split));
    }
  });
  test("one wheel behind a valve and one without count as their mean", () => {
    const cells: CarCells = { Platform: "X", Year: "1976", "Rear brake": "WR", Hoses: "HF; HR2", Master: "MC-X4", Valves: "PV-ANY@1" };
    const point = balanced(cells).unladen.at[2];
    const line = inPsi(point?.pressure ?? (NaN as never));
    near(inPsi(point?.rearLine ?? (NaN as never)), (line + 350 + 0.4 * (line - 350)) / 2);
  });
  test("wound out an adjustable valve does nothing", () => expect(rearAt({ Valves: "BLK; APV; TEE", "Valve split set (psi)": "none" })).toBeCloseTo(rearAt({}), 6));
  test("an unset one is figured at the highest setting that passes, and says so", () => {
    const shop: Shop = { parts: ["WR drum expanders=yes parking=yes piston=0.875 | <IN 3/8-24"] };
    const { car, under } = judged({ Valves: "BLK; APV; TEE" }, shop);
    // 237 psi by hand (test/core/checks/physics.test.ts).
    near(inPsi((car.adjustedTo ?? NaN) as never), 237, 3e-3);
    expect(car.assumed).toContain("APV not set: the highest setting that keeps the fronts first");
    expect(under.map(rearAheadWithin)).toEqual([[], []]);
  });
});

describe("wheel brakes", () => {
  const drum = (words: string): Shop => ({ parts: [`WR drum figures=none expanders=yes parking=yes piston=0.6 radius=4.5 threshold=10 clearance=0.01 volume=0.03 ${words} | <IN 3/8-24`] });
  const torque = (shop: Shop): number => (judged({}, shop).car.axles?.ends.rear.torque ?? NaN) / (((Math.PI / 4) * inches(0.6) ** 2) * inches(4.5));
  const shape: Shop = { more: [table("Component | Type | Friction | Piston (in) | Drum radius (in) | Threshold (psi) | Clearance (in) | Shoe pivot (mm) | Shoe arm (mm) | Lining from (deg) | Lining to (deg) | Cup expanders | Parking brake",
    "WX | leading-trailing | 0.28 | 0.6 | 5.9055 | 10 | 0.01 | 125 | 216.5 | 0 | 120 | yes | yes", "WY | two-leading | 0.28 | 0.6 | 5.9055 | 10 | 0.01 | 125 | 216.5 | 0 | 120 | yes | yes",
    "WZ | duo-servo | 0.28 | 0.6 | 5.9055 | 10 | 0.01 | 125 | 216.5 | 0 | 120 | yes | yes", "WL | duo-servo | 0.9 | 0.6 | 5.9055 | 10 | 0.01 | 125 | 216.5 | 0 | 120 | yes | yes")],
    parts: ["WX drum figures=none volume=0.03 | <IN 3/8-24", "WY drum figures=none volume=0.03 | <IN 3/8-24", "WZ drum figures=none volume=0.03 | <IN 3/8-24", "WL drum figures=none volume=0.03 | <IN 3/8-24"] };
  const byShape = (name: string): number => (judged({ "Rear brake": name }, shape).car.axles?.ends.rear.torque ?? NaN) / (((Math.PI / 4) * inches(0.6) ** 2) * inches(5.9055));

  test("a stated factor counts", () => expect(torque(drum("factor=2.2"))).toBeCloseTo(2.2, 9));
  test("without one the usual band of the kind, and the answer says so", () => {
    expect(torque(drum("type=leading-trailing friction=0.4"))).toBeCloseTo(1.8, 9); // (4 + 5) / 2 x 0.4
    expect(judged({}, drum("type=leading-trailing friction=0.4")).car.assumed).toContain("WR: brake factor 1.8, usual for leading-trailing at friction 0.4");
  });
  // Shigley, problem 16-1 (answers from memory): 277.6 and 144.4 N m from 2.2 kN at 0.15 m.
  test("or the shape of the shoes", () => {
    near(byShape("WX"), (277.6 + 144.4) / 330, 2e-3);
    near(byShape("WY"), (2 * 277.6) / 330, 2e-3);
  });
  // Own working on the same shoes, each alone 277.6 / 330 = 0.8412: the link takes (216.5 - 125 + 0.8412 x 150) / 125 = 1.7415 of the cylinder's force,
  // and the secondary drags 0.8412 of that: 0.8412 x 2.7415 = 2.3062.
  test("a duo-servo brake passes the primary's reaction on to the secondary", () => near(byShape("WZ"), 2.3062, 2e-3));
  test("shoes that lock themselves have no factor, and one is asked for", () => {
    const { car } = judged({ "Rear brake": "WL" }, shape);
    expect([car.assumed, car.missing]).toEqual([expect.arrayContaining(["WL locks itself by the shape of its shoes"]), expect.arrayContaining([{ table: "WheelBrakes", column: "Factor", subject: "WL" }])]);
  });
  test("a threshold that is not stated comes from Settings, and the answer says so", () => {
    const shop: Shop = { parts: ["DF disc parking=no threshold= | <IN 7/16-20 banjo"] };
    expect(inPsi(judged({}, shop).car.axles?.ends.front.threshold ?? (NaN as never))).toBeCloseTo(8, 9);
    expect(judged({}, shop).car.assumed).toContain("DF: threshold from Settings");
  });
  // 5.5 and 3.5 in: uniform wear 4.5, uniform pressure 2/3 x (30.25 + 19.25 + 12.25) / 9 = 4.5741 in.
  test("the effective radius is a setting", () => {
    const [wear, pressure] = [judged({}), judged({}, { settings: ["disc effective radius | uniform pressure |"] })];
    near((pressure.car.axles?.ends.front.torque ?? NaN) / (wear.car.axles?.ends.front.torque ?? NaN), 4.574074 / 4.5, 1e-6);
    expect(pressure.car.assumed).toContain("discs on the uniform pressure radius");
  });
});

describe("the adviser", () => {
  const large: Shop = { parts: ["WR drum expanders=yes parking=yes piston=0.875 | <IN 3/8-24"], workshopParts: ["MC", "BLK", "TEE", "HF", "HR", "DF", "SW-CAP"] };
  const advice = adviseOn(judged({ Valves: "BLK; TEE" }, large));
  test("without a valve in the shop names a split and a slope, and a bore", () => {
    expect(advice.valves.map(({ component }) => component)).toEqual([undefined]);
    near(advice.bore && advice.bore.bore / inches(1), 0.875 * Math.sqrt((508.9 - 10) / (869.3 - 10)), 1e-3);
  });
  test("what it names passes under both loads, and hardly more would not", () => {
    const [valve] = advice.valves;
    const fitted = (share: number): Shop => ({ ...large, workshopParts: [...(large.workshopParts ?? [])], parts: [...(large.parts ?? []), `PV proportioning-valve @frame-mid arrow=yes | <IN rear 7/16-24 | >OUT rear 7/16-24 | IN>OUT proportioning split=${inPsi(valve?.split ?? (NaN as never)) * share} slope=${valve?.slope}`] });
    const ahead = (share: number): number => judged({ Valves: "BLK; PV; TEE" }, fitted(share)).under.flatMap(rearAheadWithin).length;
    expect([ahead(1 - 1e-9), ahead(1.01) > 0]).toEqual([0, true]);
  });
  test("loses less than any flatter valve of the same safety", () => {
    const [valve] = advice.valves;
    for (const slope of [0.1, 0.2, 0.3]) {
      const shop: Shop = { ...large, parts: [...(large.parts ?? []), `APX adjustable-proportioning-valve @valve | <IN 3/8-24 | >OUT 3/8-24 | IN>OUT adjustable-proportioning slope=${slope}`] };
      const other = adviseOn(judged({ Valves: "BLK; TEE" }, shop)).valves.find(({ component }) => component === "APX");
      expect(other?.efficiency ?? 0).toBeLessThanOrEqual((valve?.efficiency ?? 0) + 1e-9);
    }
  });
});

test("the same car is read once", () => {
  const catalogue = catalogueOf();
  const one = report({});
  expect(judge({ catalogue, ...one })).toBe(judge({ catalogue, ...one }));
});

describe("where valves begin to act on the way of a stop", () => {
  const points = (cells: CarCells, shop?: Shop): readonly (readonly [string, string, number])[] => {
    const { car, under: [unladen] } = judged(cells, shop);
    if (!unladen) throw new Error(JSON.stringify(car.missing));
    return valvePoints(car, unladen).map(({ valve, does, pressure }) => [valve, does, Math.round(inPsi(pressure))]);
  };
  // At 350 psi both axles are 340 above their threshold: (2.290222 + 0.40715) x 340 / 3000 g.
  test("a proportioning valve acts at its split", () => {
    const { car, under: [unladen] } = judged({ Valves: "BLK; PV; TEE" });
    const [point] = unladen ? valvePoints(car, unladen) : [];
    expect([point?.valve, point?.does, Math.round(inPsi(point?.pressure ?? (NaN as never)))]).toEqual(["PV", "acts", 350]);
    near(point?.z, ((2.290222 + 0.40715) * 340) / 3000);
  });
  test("a hold-off counts from where it is fully open, and the way of the fronts comes first", () => {
    const shop: Shop = { parts: ["HO hold-off-valve @valve price=60 arrow=yes | <IN front 7/16-24 | >OUT front 7/16-24 | IN>OUT hold-off opens=80 full=200"] };
    expect(points({ Valves: "HO; BLK; PV; TEE" }, shop)).toEqual([["HO", "fully open", 200], ["PV", "acts", 350]]);
  });
});

test("rear brakes of twice their strength brake twice as hard at the same pressure, and the fronts as before", () => {
  const { car, under: [unladen] } = judged({});
  const { axles } = car;
  if (!axles || !unladen) throw new Error("the car is known");
  const at = (rearScale: number) => pointAtPressure(brakingWith({ ...car, axles }, unladen.load, unladen.lines, { rearScale }), psi(300));
  // Fronts 2.290222 x 290 lbf of 3000 lb, rears 0.40715 x 290.
  const [once, twice] = [at(1), at(2)];
  near(once?.front, (2.290222 * 290) / 3000);
  near(once?.rear, (0.40715 * 290) / 3000);
  near(twice?.front, (2.290222 * 290) / 3000);
  near(twice?.rear, (2 * 0.40715 * 290) / 3000);
});

describe("a booster of which a figure is not stated", () => {
  const shop = (cells: string): Shop => ({ parts: ["BST booster"], more: [table("Component | Diaphragm (in) | Diaphragms | Gain | Jump-in (lbf) | Cut-in (lbf) | Spring (lbf)", cells)] });
  const car = (cells: string) => judged({ Booster: "BST", "Pedal ratio": "3" }, shop(cells)).car;
  test.each([["Gain", "BST | 9 | 1 | | 30 | 20 | 25"], ["Diaphragm", "BST | | 1 | 5 | 30 | 20 | 25"]])("%s: no pedal force is made up, and the figure is named", (column, cells) => {
    const { pedal, missing } = car(cells);
    expect([pedal, missing.map((gap) => `${gap.table} ${gap.column} ${gap.subject}`)]).toEqual([undefined, [`Boosters ${column} BST`]]);
  });
  test("blank is none for a spring and one for the diaphragms, and the answer says so", () => expect(car("BST | 9 | | 5 | 30 | 20 |").assumed).toEqual(expect.arrayContaining(["BST: no spring", "BST: one diaphragm"])));
});
