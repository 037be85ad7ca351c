/** The balance view says what BALANCE, CURVE and TRAVEL answer, and draws it where it lies. */
import { demoTables } from "../../src/catalogue/demo";
import { parseCars } from "../../src/catalogue/parse-cars";
import { catalogueTables } from "../../src/catalogue/table-specs";
import { parseCatalogue } from "../../src/catalogue/parse-catalogue";
import { judge, type Judgement } from "../../src/core/balance/judgement";
import { travelOf, type CarTravel } from "../../src/core/balance/travel";
import { reportOn } from "../../src/core/report";
import { frontLockLine, idealCurve, installedLine, rearLockLine, usedBy } from "../../src/taskpane/balance/chains";
import { clipped } from "../../src/taskpane/balance/clip";
import { sayRoad } from "../../src/taskpane/balance/controls";
import { balanceUnder, rowsAt, rowsOfGrip, rowsOfTravel, sayLocks, sayPedal, sayStop, stopsOf } from "../../src/taskpane/balance/figures";
import { limitLine } from "../../src/taskpane/balance/grip-plot";
import { sayCritical, sayLimit, sayOrder, sayWhatToDo } from "../../src/taskpane/balance/words";
import { call, tableFrom, type Cell } from "../functions/sheet";

const named = (name: string) => { const found = demoTables.find((table) => table.name === name); if (!found) throw new Error(`no ${name}`); return found; };
const cars = named("Cars");
const { catalogue } = parseCatalogue(demoTables.filter(({ name }) => name !== "Cars"));
const key = call("CATALOG", demoTables.filter(({ name }) => catalogueTables.some((spec) => spec.name === name)).map(({ headings, rows }) => [headings, ...rows])) as string;

const given = (name: string) => { const row = cars.rows.find(([car]) => car === name); if (!row) throw new Error(`no ${name}`); return row; };

/** A row of an answer about a car by its headings without their units; unladen unless another is asked for. */
function answered(what: string, car: string, index = 0): Readonly<Record<string, Cell>> {
  const [headings = [], ...rows] = tableFrom(what, [cars.headings], [given(car)], key);
  return Object.fromEntries(headings.map((heading, at) => [String(heading).replace(/ \([^)]*\)$/, ""), rows[index]?.[at] ?? ""]));
}

function viewed(name: string): { readonly judged: Judgement; readonly travel: CarTravel } {
  const car = parseCars(cars.headings, [given(name)]).cars[0]?.car;
  if (!car) throw new Error(`${name} cannot be read`);
  const { assembly, paths, runs } = reportOn(catalogue, car);
  return { judged: judge({ catalogue, assembly, paths }), travel: travelOf({ catalogue, assembly, paths, runs }) };
}

function underOf(judged: Judgement, index = 0) {
  const under = judged.under[index];
  const balance = under && balanceUnder(judged, under);
  if (!under || !balance) throw new Error("no balance");
  return { under, balance };
}

const numbers = (text: string): number[] => [...text.matchAll(/-?\d+(\.\d+)?/g)].map(([number]) => Number(number));
/** A figure of the view is that of a cell, each rounded once by itself. */
const agree = (view: readonly (number | undefined)[], cells: readonly (Cell | undefined)[], digits: number): void => {
  expect(view).toHaveLength(cells.length);
  for (const [index, one] of view.entries()) expect({ index, agrees: Math.abs((one ?? NaN) - Number(cells[index])) <= 0.56 * 10 ** -digits }).toEqual({ index, agrees: true });
};

describe.each([["Car 2", 0], ["Car 4", 1], ["Car 6", 0], ["Car 12", 1], ["Car 27", 0]] as const)("%s, load %d: the figures are those of the functions", (name, load) => {
  const { judged, travel } = viewed(name);
  const { under, balance } = underOf(judged, load);
  const row = answered("BALANCE", name, load);

  test.each([["Low", 0.3], ["Middle", 0.6], ["High", 0.8]])("%s deceleration", (which, z) => {
    const rows = rowsAt(judged.car, under, { z, adhesion: 0.8 }) ?? [];
    const [pressure, force, share, grip] = rows.map(({ cells }) => cells.map((cell) => numbers(cell)[0]));
    agree(pressure ?? [], [row[`${which} front pressure`], row[`${which} rear pressure`]], 0);
    agree(force ?? [], [row[`${which} front force`], row[`${which} rear force`]], 0);
    agree([share?.[1]], [row[`${which} rear share`]], 1);
    agree(grip ?? [], [row[`Front uses at ${z} g`], row[`Rear uses at ${z} g`]], 2);
    agree([numbers(sayPedal(judged.car, under, { z, adhesion: 0.8 }))[0]], [row[`${which} pedal force`]], 0);
  });

  test("grip", () => {
    for (const { name: at, cells } of rowsOfGrip(balance, catalogue.settings)) {
      const z = Number(at.replace(" g", ""));
      agree(cells.slice(0, 2).map(Number), [row[`Front uses at ${z} g`], row[`Rear uses at ${z} g`]], 2);
    }
  });

  test("efficiency on 0.8", () => { agree([numbers(sayLocks(under, { z: 0.6, adhesion: 0.8 })).at(-1)], [row["Efficiency on 0.8"]], 1); });

  test("stops", () => {
    const [whole, first, second, unpowered] = stopsOf(judged.car, balance).map((stop) => numbers(sayStop(catalogue.settings, stop)).slice(0, 2));
    agree(whole ?? [], [row["Stop"], row["Stop allowed"]], 0);
    agree(first ?? [], [row["First circuit failed stop"], row["Circuit failed stop allowed"]], 0);
    agree(second ?? [], [row["Second circuit failed stop"], row["Circuit failed stop allowed"]], 0);
    agree(unpowered ?? [], [row["Without assist stop"], row["Without assist stop allowed"]], 0);
  });

  test("limit", () => { agree([numbers(sayLimit(balance, catalogue.settings)).at(-1)], [row["Above efficiency line"]], 3); });

  test("travel", () => {
    const trip = answered("TRAVEL", name);
    const [pedal, failed] = rowsOfTravel(catalogue.settings, travel);
    agree([numbers(pedal?.cells[0] ?? "")[0]], [trip["Pedal travel"]], 1);
    agree([numbers(failed?.cells[0] ?? "")[0]], [trip["Pedal travel, this circuit failed"]], 1);
  });

  test("the drawn line runs through the points of CURVE", () => {
    const [headings = [], ...points] = tableFrom("CURVE", [cars.headings], [given(name)], key);
    const at = (heading: string): number => headings.findIndex((one) => String(one).startsWith(heading));
    const loads = points.filter((point) => point[at("Load")] === under.load.load);
    const line = installedLine(under.braking, catalogue.settings.highestAdhesion);
    const weight = under.load.weight / 4.4482216152605;
    expect(loads.length).toBeGreaterThan(40);
    for (const point of loads) {
      const [x, y] = [Number(point[at("Front force")]) / weight, Number(point[at("Rear force")]) / weight];
      const away = Math.min(...line.slice(1).map(([bx, by], i) => distanceTo([x, y], line[i] as readonly [number, number], [bx, by])));
      expect(away).toBeLessThan(1e-4);
    }
  });
});

function distanceTo([x, y]: readonly [number, number], [ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]): number {
  const [dx, dy] = [bx - ax, by - ay];
  const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

describe("the textbook's lines", () => {
  // Share in front 0.55, height over wheelbase 0.2: at 0.8 g the loads are 0.71 and 0.29, the ideal forces 0.568 and 0.232.
  const stance = { front: 0.55, height: 0.2 };

  test("the ideal curve at 0.8 g", () => {
    const [front, rear] = idealCurve(stance, 1)[32] ?? [];
    expect(front).toBeCloseTo(0.568, 12);
    expect(rear).toBeCloseTo(0.232, 12);
  });

  test("both lock lines of an adhesion pass through it, where the deceleration is the adhesion", () => {
    for (const line of [frontLockLine(stance, 0.8, 1), rearLockLine(stance, 0.8, 1)]) {
      const [a, b] = line;
      expect(distanceTo([0.568, 0.232], a ?? [0, 0], b ?? [0, 0])).toBeLessThan(1e-12);
    }
  });

  // On 0.8 with the rears idle the fronts carry 0.8 x 0.55 / (1 - 0.16) = 0.52381; with the fronts idle the rears 0.8 x 0.45 / 1.16 = 0.31034.
  test("and meet the axes where one axle brakes alone", () => {
    expect(frontLockLine(stance, 0.8, 1)[0]?.[0]).toBeCloseTo(0.52381, 5);
    expect(rearLockLine(stance, 0.8, 1)[0]?.[1]).toBeCloseTo(0.31034, 5);
  });

  // 49 CFR 571.135 S7.4 and UN R13-H annex 5 (from memory): z >= 0.1 + 0.7 (k - 0.2); k 0.8 at 0.52 g.
  test("the limit line", () => expect(limitLine(0.7)[1]?.map((value) => Number(value.toFixed(9)))).toEqual([0.52, 0.8]));

  test("an axle's curve ends at the last deceleration and holds every node", () => {
    const { under } = underOf(viewed("Car 2").judged);
    const drawn = usedBy(under.braking, "front", 1);
    for (const [i, z] of under.braking.z.entries()) if (z <= 1) expect(drawn.some(([x]) => Math.abs(x - z) < 1e-12) || i === 0).toBe(true);
  });
});

describe("cut at the edges", () => {
  const window = { x: [0, 1], y: [0, 1] } as const;
  test("a line through the window keeps its middle", () => expect(clipped([[-1, 0.5], [2, 0.5]], window)).toEqual([[[0, 0.5], [1, 0.5]]]));
  test("one beside it leaves nothing, one along the edge stays", () => {
    expect(clipped([[2, 0], [3, 1]], window)).toEqual([]);
    expect(clipped([[0, 0], [0, 1]], window)).toEqual([[[0, 0], [0, 1]]]);
  });
  test("a chain that leaves and comes back is two", () => expect(clipped([[0.5, 0.5], [0.5, 2], [0.6, 2], [0.6, 0.5]], window)).toHaveLength(2));
});

describe("in sentences", () => {
  const wordsOf = (name: string, load = 0): string[] => {
    const { judged } = viewed(name);
    const { balance } = underOf(judged, load);
    return [sayOrder(balance, catalogue.settings), sayCritical(balance, catalogue.settings), sayWhatToDo(judged)];
  };

  test("a conversion whose rears lock first is told what to set, or which cylinders to fit", () => {
    const [order, critical, advice] = wordsOf("Car 27");
    expect(order).toMatch(/^Unladen, the rears lock first on adhesion 0\.57 to 1; on other roads the fronts\.$/);
    expect(critical).toMatch(/^Critical deceleration 0\.57 g/);
    expect(advice).toMatch(/^Set APV-1 to \d+ psi .* or fit rear cylinders of 1\.\d+ in/);
  });

  test("without a valve one of the shop is advised", () => expect(wordsOf("Car 28")[2]).toMatch(/^Fit APV-1, set to \d+ psi/));

  test("a hold-off that is still shut on ice is no fault", () => expect(wordsOf("Car 29")[0]).toMatch(/^Unladen, the fronts lock first on every road from adhesion 0\.\d+ to 1\.$/));

  test("a sound car has nothing to set right", () => expect(wordsOf("Car 29")[2]).toMatch(/^Nothing to set right/));

  test("a car with one circuit does not stop when it fails", () => {
    const { judged } = viewed("Car 9");
    const failed = stopsOf(judged.car, underOf(judged).balance)[1];
    expect(failed && `${failed.name}: ${sayStop(catalogue.settings, failed)}`).toBe("Its one circuit failed: does not stop; 456 ft allowed");
  });

  // Handbook table (read): good dry 1.00, good wet 0.90, poor dry 0.80, poor wet 0.60, ice 0.25.
  test.each([[1, "good and dry"], [0.9, "good and wet"], [0.8, "poor and dry"], [0.6, "poor and wet"], [0.25, "ice"]])("adhesion %d is a road that is %s", (adhesion, road) => expect(sayRoad(adhesion)).toBe(road));
});

describe("the advice as it is said", () => {
  /** A car of the demo with other cells, as the user would type what was advised. */
  const changed = (name: string, cells: Readonly<Record<string, Cell>>, brakes: Readonly<Record<string, number>> = {}) => {
    const rows = demoTables.filter((table) => table.name !== "Cars").map((table) => (table.name !== "WheelBrakes" ? table : { ...table, rows: table.rows.map((row) => row.map((cell, at) => (table.headings[at] === "Piston (in)" ? (brakes[String(row[0])] ?? cell) : cell))) }));
    const car = parseCars(cars.headings, [given(name).map((cell, at) => cells[cars.headings[at] ?? ""] ?? cell)]).cars[0]?.car;
    if (!car) throw new Error("no car");
    return reportOn(parseCatalogue(rows).catalogue, car).findings.map(({ code }) => code);
  };
  const advice = sayWhatToDo(viewed("Car 27").judged);
  const split = Number(/to (\d+) psi/.exec(advice)?.[1]);
  const bore = Number(/cylinders of ([\d.]+) in/.exec(advice)?.[1]);

  test("puts the order right when the valve is set so, and one psi more in ten does not", () => {
    expect(changed("Car 27", {})).toContain("rear-locks-first");
    expect(changed("Car 27", { "Valve split set (psi)": split })).not.toContain("rear-locks-first");
    expect(changed("Car 27", { "Valve split set (psi)": split + 10 })).toContain("rear-locks-first");
  });

  test("or when the cylinders are fitted, and a hundredth of an inch more does not", () => {
    expect(changed("Car 28", {}, { "DR-12C": bore })).not.toContain("rear-locks-first");
    expect(changed("Car 28", {}, { "DR-12C": bore + 0.01 })).toContain("rear-locks-first");
  });
});
