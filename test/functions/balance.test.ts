/**
 * The physics as cells. Worked by hand on the workshop's car with a proportioning valve of 350 psi and slope 0.4:
 * 3000 lb (laden 3300), 66 % in front, h/L 0.2, tyre 12.5 in, 1 in bore (0.7854 in²), ratio 6, no booster.
 * Front: 2 x 0.4 x 3.97608 in² x 4.5 in x 2 wheels / 12.5 in = 2.290222 lbf for each psi above 10; rear: 2 x 0.282743 x 4.5 x 2 / 12.5 = 0.407150.
 */
import { LENGTH_ROWS, table, type CarCells } from "../core/workshop";
import { about, call, carRow, failure, HEADINGS, keyOf, rowsOf, tableFrom, type Cell } from "./sheet";

const proportioned: CarCells = { Valves: "BLK; PV; TEE" };
const key = keyOf();
const metric = keyOf({ settings: ["units | metric |"] });

/** One row as its cells by heading. */
const rowOf = (name: string, cells: CarCells, catalogue = key, index = 0): Readonly<Record<string, Cell>> => {
  const [headings = [], ...rows] = about(name, [cells], catalogue);
  return Object.fromEntries(headings.map((heading, at) => [String(heading), rows[index]?.[at] ?? ""]));
};

const near = (got: Cell | undefined, expected: number, share = 5e-4): void => expect(Math.abs(Number(got) - expected)).toBeLessThanOrEqual(Math.abs(expected) * share);

describe("BALANCE", () => {
  const row = rowOf("BALANCE", proportioned);
  const laden = rowOf("BALANCE", proportioned, key, 1);

  test("has a row for each load", () => expect([row["Car"], row["Load"], laden["Load"]]).toEqual(["C", "unladen", "laden"]));

  test("below the knee: 900 lbf at 0.3 g", () => {
    near(row["Low line pressure (psi)"], 10 + 900 / 2.697372);
    near(row["Low rear pressure (psi)"], 10 + 900 / 2.697372);
    near(row["Low front force (lbf)"], (900 * 2.290222) / 2.697372);
    near(row["Low rear share (%)"], (100 * 0.40715) / 2.697372);
    near(row["Low pedal force (lbf)"], ((10 + 900 / 2.697372) * 0.785398) / 6);
  });

  // 2.290222 (p - 10) + 0.40715 (340 + 0.4 (p - 350)) = 2400: p = (2400 + 22.902 - 81.43) / 2.453082 = 954.50 psi.
  test("above it: 2400 lbf at 0.8 g", () => {
    near(row["High line pressure (psi)"], 954.5);
    near(row["High front pressure (psi)"], 954.5);
    near(row["High rear pressure (psi)"], 350 + 0.4 * 604.5);
    near(row["High rear force (lbf)"], 0.40715 * (340 + 0.4 * 604.5));
    near(row["High pedal force (lbf)"], (954.5 * 0.785398) / 6);
  });

  // 990 lbf lie beyond the knee: 2.453082 (p - 10) + 0.40715 x 0.6 x 340 = 990.
  test("laden takes a tenth more force", () => near(laden["Low line pressure (psi)"], 10 + (990 - 83.0586) / 2.453082));

  // At 0.8 g the loads are 0.82 and 0.18 of the weight.
  test("adhesion used", () => {
    near(row["Front uses at 0.8 g (adhesion)"], (2.290222 * 944.5) / (0.82 * 3000));
    near(row["Rear uses at 0.8 g (adhesion)"], (0.40715 * (340 + 0.4 * 604.5)) / (0.18 * 3000));
  });

  // Below the knee the share is fixed: 0.849056; the fronts lock on 0.2 at 0.2 x 0.66 / (0.849056 - 0.04) = 0.16315 g.
  test("efficiency where the worse axle locks", () => near(row["Efficiency on 0.2 (%)"], (100 * 0.163153) / 0.2));

  // One axle on the road's 0.9: rear 0.9 x 0.34 / 1.18, front 0.9 x 0.66 / (1 - 0.18).
  test("with a circuit failed", () => {
    expect([row["First circuit"], row["Second circuit"]]).toEqual(["front", "rear"]);
    near(row["First circuit failed (g)"], 0.259322);
    near(row["Second circuit failed (g)"], 0.72439);
  });

  // The rule's 150 lbf is 1145.9 psi, more than locks the fronts on 0.9; they lock at z where 2.290222 (p - 10) = 0.9 x 3000 (0.66 + 0.2 z)
  // and 3000 z = 2.453082 (p - 10) + 0.40715 x (340 x 0.6): p - 10 = (1782 + 14.951) / (2.290222 - 0.441555) = 972.02: z = 0.82250.
  test("and the stop against the rule", () => {
    near(row["Stop deceleration (g)"], 0.8225, 1e-3);
    // 26.8224 m/s: 6.7056 m lost, 26.8224² / (2 x 0.8225 x 9.80665) = 44.60 m; 51.30 m are 168.3 ft.
    near(row["Stop (ft)"], 168.3, 2e-3);
    expect([row["Rule"], row["Stop allowed (ft)"], row["Stop held by"], row["Circuit failed stop allowed (ft)"]]).toEqual(["49 CFR 571.105", 216, "adhesion", 456]);
  });

  test("says what it assumes, and nothing is amiss", () => expect([row["Assumed"], row["Problem"]]).toEqual(["discs on the uniform wear radius", ""]));

  test("metric", () => {
    const one = rowOf("BALANCE", proportioned, metric);
    near(one["High line pressure (bar)"], 954.5 * 0.0689476);
    near(one["Low front force (N)"], ((900 * 2.290222) / 2.697372) * 4.448222);
    near(one["Stop (m)"], 51.3, 2e-3);
  });

  test("the rule is a setting", () => {
    const one = rowOf("BALANCE", proportioned, keyOf({ settings: ["stopping rule | UN R13-H |"] }));
    near(one["Stop allowed (ft)"], 70 / 0.3048);
    expect(one["Rule"]).toBe("UN R13-H");
  });
});

/**
 * From the pedal to the stop, worked by hand on the same car with a booster of 9 in (63.617 in², 18 inHg = 8.8408 psi, spring 25 lbf: 537.4 lbf at most),
 * gain 5, jump-in 30 lbf, cut-in 20 lbf, ratio 6. 30 lbf on the pedal: 180 lbf in, 30 + 5 x 160 = 830 out, over 180 + 537.4 = 717.4 it has run out: 717.4 lbf,
 * 913.4 psi on the 1 in bore. Behind the valve 350 + 0.4 x 563.4 = 575.4 psi. Front 2.290222 x 903.4 = 2069.0 lbf, rear 0.407150 x 565.4 = 230.2 lbf: 0.76640 g.
 * From 60 mph (88 ft/s) with 0.25 s lost: 22 + 88² / (2 x 0.76640 x 32.174) = 22 + 157.0 = 179.0 ft.
 */
describe("a whole chain by hand", () => {
  const shop = { parts: ["BST booster"], more: [table("Component | Diaphragm (in) | Diaphragms | Gain | Jump-in (lbf) | Cut-in (lbf) | Spring (lbf)", "BST | 9 | 1 | 5 | 30 | 20 | 25")] };
  const cells: CarCells = { ...proportioned, Booster: "BST" };
  const settings = (...rows: readonly string[]): string => keyOf({ ...shop, settings: ["49 CFR 571.105 pedal force | 30 | lbf", ...rows] });

  test("booster run out, valve acting, no wheel locked: the stop", () => {
    const row = rowOf("BALANCE", cells, settings());
    near(row["Stop deceleration (g)"], 0.7664);
    near(row["Stop (ft)"], 179);
    expect(row["Stop held by"]).toBe("pedal force");
  });
  test("the same deceleration asks for the same pedal and pressures", () => {
    const row = rowOf("BALANCE", cells, settings("high deceleration | 0.7664 | g"));
    near(row["High pedal force (lbf)"], 30);
    near(row["High line pressure (psi)"], 913.4);
    near(row["High rear pressure (psi)"], 575.4);
    near(row["High front force (lbf)"], 2069);
    near(row["High rear force (lbf)"], 230.2);
  });
  // Booster failed: 180 less 25 lbf are 197.4 psi, below the split: 2.697372 x 187.4 / 3000 = 0.16846 g; 22 + 714.4 = 736.4 ft.
  test("booster failed", () => {
    const row = rowOf("BALANCE", cells, settings());
    near(row["Without assist deceleration (g)"], 0.16846, 1e-3);
    near(row["Without assist stop (ft)"], 736.4, 1e-3);
  });
  // Front circuit failed: the rears at 575.4 psi alone, 230.2 / 3000 = 0.07673 g; rear failed: 2069.0 / 3000 = 0.68967 g, 22 + 174.5 = 196.5 ft.
  test("each circuit failed", () => {
    const row = rowOf("BALANCE", cells, settings());
    near(row["First circuit failed stop (ft)"], 22 + 88 ** 2 / (2 * 0.07673 * 32.174), 1e-3);
    near(row["Second circuit failed stop (ft)"], 196.5, 1e-3);
  });
});

describe("a car that lacks a figure", () => {
  test("keeps its row and names table, part and column", () => {
    const row = rowOf("BALANCE", proportioned, keyOf({ parts: ["PV proportioning-valve @frame-mid | <IN rear 7/16-24 | >OUT rear 7/16-24 | IN>OUT proportioning split=350"] }));
    expect([row["Load"], row["Problem"]]).toEqual(["", "no figure for Passages PV: Slope"]);
  });

  test("the pedal alone may be open: then everything but the pedal is there", () => {
    const row = rowOf("BALANCE", { ...proportioned, Booster: "" });
    expect([row["Assumed"], row["Problem"]]).toEqual(["discs on the uniform wear radius; booster not stated, taken as none", "no figure for Cars: Booster"]);
    near(row["Low line pressure (psi)"], 10 + 900 / 2.697372);
  });

  test("one bad row leaves the others as they were", () => {
    const rows = about("BALANCE", [{}, { Car: "B", Master: "nobody's" }, { Car: "D", ...proportioned }], key);
    expect(rowsOf(rows, "D").map((row) => row.slice(1))).toEqual(about("BALANCE", [proportioned], key).slice(1).map((row) => row.slice(1)));
    expect(rowsOf(rows, "B").map((row) => row.at(-1))).toEqual(["no line is known to LF, RF, LR, RR; no figure for Cars: Master"]);
  });

  test.each(["BALANCE", "TRAVEL"])("every row of %s is as wide as its headings, without a null or a number that is none", (name) => {
    const [headings, ...rows] = about(name, [{}, { Car: "D", Valves: "?" }, { Car: "E", Platform: "" }, { Car: "" }], key);
    for (const row of rows) {
      expect(row).toHaveLength(headings?.length ?? NaN);
      expect(row.every((cell) => typeof cell === "string" || Number.isFinite(cell))).toBe(true);
    }
  });
});

describe("TRAVEL", () => {
  // 50 lbf on the pedal: 300 / 0.785398 = 381.97 psi; behind the valve 350 + 0.4 x 31.97 = 362.79 psi.
  const [front, rear] = [rowOf("TRAVEL", proportioned), rowOf("TRAVEL", proportioned, key, 1)];
  test("fronts: two faces of 0.006 in under 3.97608 in², twice; 0.04 in³ a caliper and 0.33 cm³ a hose at 1000 psi", () => {
    near(front["At test (psi)"], 381.97);
    near(front["Clearances (in³)"], 0.095426, 1e-3);
    near(front["Brakes (in³)"], 0.08 * 0.38197, 3e-3);
    near(front["Hoses (in³)"], 2 * 0.020138 * 0.38197, 5e-3);
  });
  test("rears: two shoes of 0.01 in with a lever of 2 on 0.282743 in², twice; one hose", () => {
    near(rear["Clearances (in³)"], 0.022619, 3e-3);
    near(rear["Brakes (in³)"], 0.06 * 0.36279, 3e-3);
    near(rear["Hoses (in³)"], 0.020138 * 0.36279, 8e-3);
  });
  test("the stroke displaces 0.7 in of 0.785398 in²", () => near(front["Stroke displaces (in³)"], 0.549779));
  test("the pedal's travel is free travel, port travel and both circuits, times the ratio, of 6 in", () => {
    const rod = 0.08 + (Number(front["Total at test (in³)"]) + Number(rear["Total at test (in³)"])) / 0.785398;
    near(front["Pedal travel (%)"], (100 * rod * 6) / 6, 2e-3);
  });
  test("with a circuit failed its whole stroke is used up and the other works on", () => {
    near(front["Pedal travel, this circuit failed (%)"], 100 * (0.08 + 0.7 + Number(rear["Total at test (in³)"]) / 0.785398), 2e-3);
    near(rear["Pedal travel, this circuit failed (%)"], 100 * (0.08 + 0.7 + Number(front["Total at test (in³)"]) / 0.785398), 2e-3);
  });
  test("air in the fluid is taken in", () => {
    const airy = rowOf("TRAVEL", proportioned, keyOf({ settings: ["air in fluid | 1 | %"] }));
    // 1 % of what the circuit holds, pressed to 1 - (1 + 381.97 / 14.696)^(-1 / 1.4) = 90.5 % of it.
    expect(Number(airy["Air (in³)"])).toBeGreaterThan(0);
    expect(Number(airy["Pedal travel (%)"])).toBeGreaterThan(Number(front["Pedal travel (%)"]));
  });
  test("a missing stroke is named at its port", () => {
    const row = rowOf("TRAVEL", proportioned, keyOf({ parts: ["MC master @master figures=none bore=1 price=90 | >F front 1/2-20 | >R rear 9/16-18"] }));
    expect(row["Problem"]).toBe("no figure for Ports MC F: Stroke; Ports MC R: Stroke");
  });
});

describe("CURVE", () => {
  const points = tableFrom("CURVE", [HEADINGS], [carRow(proportioned)], key, 11);
  const [headings = []] = points;
  const cell = (row: readonly Cell[], heading: string): Cell | undefined => row[headings.indexOf(heading)];
  const unladen = points.slice(1).filter((row) => cell(row, "Load") === "unladen");

  test("so many points for each load, evenly spaced to the highest adhesion, and one more at each knee and lock", () => {
    const even = unladen.filter((row) => cell(row, "Mark") === "");
    expect(even.map((row) => cell(row, "Deceleration (g)"))).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1]);
    // The valve acts at 350 psi: 2.697372 x 340 / 3000 = 0.3057 g.
    expect(unladen.filter((row) => cell(row, "Mark") !== "").map((row) => [cell(row, "Deceleration (g)"), cell(row, "Mark")])).toEqual(expect.arrayContaining([[0.3057, "PV acts"], [0.1632, "front locks on 0.2"]]));
  });
  // At 0.4 g: ideal rear 0.4 x (0.34 - 0.08) x 3000 = 312 lbf, front 888; the line allows (0.4 - 0.1) / 0.7 + 0.2.
  test("ideal forces and the efficiency line", () => {
    const row = unladen.find((one) => cell(one, "Deceleration (g)") === 0.4) ?? [];
    expect([cell(row, "Ideal rear force (lbf)"), cell(row, "Ideal front force (lbf)"), cell(row, "Efficiency line allows (adhesion)")]).toEqual([312, 888, 0.6286]);
  });
  test("rises in deceleration", () => {
    const z = unladen.map((row) => Number(cell(row, "Deceleration (g)")));
    expect(z).toEqual([...z].sort((a, b) => a - b));
  });
  test("41 points when none are asked for", () => expect(tableFrom("CURVE", [HEADINGS], [carRow(proportioned)], key).filter((row) => row[1] === "laden" && cell(row, "Mark") === "")).toHaveLength(41));
  test("not one, and not half of one", () => expect([failure("CURVE", [HEADINGS], [carRow()], key, 1).kind, failure("CURVE", [HEADINGS], [carRow()], key, 2.5).message]).toEqual(["value", expect.stringContaining("2.5")]));
});

describe("VALVEOUT", () => {
  test.each<[readonly unknown[], number]>([
    [[80, 40, 0.5], 60], // course notes, slide 19: not half of 80
    [[30, 40, 0.5], 30],
    [[80, 40, 0], 40],
    [[0, 40, 0.5], 0],
    [[50, null, null, 80, 400], 0],
    [[240, null, null, 80, 400], 200], // half way from 80 to 400: half of 400
    [[500, null, null, 80, 400], 500],
    [[600, 400, 0.4, 80], 480],
    [[900, 400, 0.5, null, null, 600], 600], // 650 without the limit
    [[80, 40, 0.5, null, null, null, "bar"], 60],
  ])("%j gives %d", (args, expected) => expect(call("VALVEOUT", ...args)).toBeCloseTo(expected, 9));
  test.each<[readonly unknown[], RegExp]>([
    [[80, 40, 1.5], /^slope: read "1.5"/],
    [[80, null, null, null, 400], /^full: opens is missing/],
    [[80, null, null, 400, 80], /^full: read "80"/],
    [["much", 40, 0.5], /^inlet: read "much"/],
    [[80, 40, 0.5, null, null, null, "furlong"], /^unit: read "furlong"/],
  ])("%j is refused", (args, says) => expect(failure("VALVEOUT", ...args)).toEqual({ kind: "value", message: expect.stringMatching(says) as string }));
});

describe("PEDAL", () => {
  test.each<[string, readonly unknown[], number]>([
    ["100 lbf, 6:1, 1 in: 600 / 0.785398", [100, 6, 1], 763.944],
    // 600 in: 40 + 5 x (600 - 20) = 2940, under 600 + 3000.
    ["boosted", [100, 6, 1, 5, 40, 20, 3000], 2940 / 0.785398],
    ["past run-out: 600 + 1000", [100, 6, 1, 5, 40, 20, 1000], 1600 / 0.785398],
    ["below cut-in nothing comes out", [2, 6, 1, 5, 40, 20], 0],
    // 500 N on 5 mm (A01, A02 of the check values): 25.46 MPa.
    ["bar from N and mm", [100, 5, 5, null, null, null, null, "mm"], 254.648],
    ["MPa", [100, 5, 5, null, null, null, null, "MPa"], 25.4648],
  ])("%s", (_, args, expected) => near(call("PEDAL", ...args) as Cell, expected, 1e-5));
  test("no force, no pressure", () => expect(call("PEDAL", 0, 6, 1)).toBe(0));
  test.each<[readonly unknown[], RegExp]>([
    [[100, null, 1], /^ratio: read nothing/],
    [[100, 6, null], /^bore: read nothing/],
    [[100, 6, 1, null, 40], /^gain: read nothing/],
    [[100, 6, 1, null, null, null, null, "stone"], /^unit: read "stone"/],
  ])("%j is refused", (args, says) => expect(failure("PEDAL", ...args)).toEqual({ kind: "value", message: expect.stringMatching(says) as string }));
});

test("cars of one set-up share their figures, and a joint found on one of them is its own", () => {
  const shop = keyOf({ joins: ["BLK | RO | PV | OUT"] });
  const rows = about("BALANCE", [{ Car: "B", ...proportioned }, { Car: "C", ...proportioned }], shop);
  expect([rowsOf(rows, "B").length, rowsOf(rows, "C").map((row) => row.at(-1))]).toEqual([2, ["PV is fed against its flow"]]);
});

test("ten thousand cars are balanced within the time a user waits", () => {
  const valves = ["BLK; TEE", "BLK; PV; TEE", "HO; BLK; PV; TEE", "CV; TEE", "HO; CV; TEE", "BLK; APV; TEE"];
  const brakes = ["WR", "WR-BARE", "WR-SILENT"];
  const cars = Array.from({ length: 10_000 }, (_, index) => carRow({ Car: `car ${index}`, Valves: valves[index % 6] ?? "", "Rear brake": brakes[index % 3] ?? "" }));
  const cold = keyOf({ more: [table(LENGTH_ROWS, "P | cold | start | 10 | 0.1875")] });
  const start = performance.now();
  const rows = tableFrom("BALANCE", [HEADINGS], cars, cold);
  const seconds = (performance.now() - start) / 1000;
  console.log(`BALANCE: 10,000 cars in ${seconds.toFixed(2)} s`);
  expect(rows).toHaveLength(20_001);
  expect(seconds).toBeLessThan(5); // about half a second on an idle machine
});
