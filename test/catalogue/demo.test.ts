/** The demo scenario says what its comments promise: every expectation here was worked out by hand from the layout. */
import { demoTables, type DemoTable } from "../../src/catalogue/demo";
import { catalogueTables } from "../../src/catalogue/table-specs";
import { parseCars } from "../../src/catalogue/parse-cars";
import { parseCatalogue } from "../../src/catalogue/parse-catalogue";
import { sayTableError } from "../../src/catalogue/table-error";
import { sayPort } from "../../src/core/assembly";
import { WHEELS } from "../../src/core/component";
import type { FindingCode } from "../../src/core/finding";
import { reportOn, type CarReport } from "../../src/core/report";
import type { RunEnd } from "../../src/core/runs";

const demoTable = (name: string): DemoTable => {
  const found = demoTables.find((table) => table.name === name);
  if (!found) throw new Error(`no demo table ${name}`);
  return found;
};

const { catalogue, errors } = parseCatalogue(demoTables.filter(({ name }) => catalogueTables.some((spec) => spec.name === name)));
const { cars, headingErrors } = parseCars(demoTable("Cars").headings, demoTable("Cars").rows);

const reports = new Map(
  cars.map(({ name, car }): [string, CarReport] => {
    if (!car) throw new Error(`${name} cannot be read`);
    return [name, reportOn(catalogue, car)];
  }),
);

const reportOf = (name: string): CarReport => {
  const report = reports.get(name);
  if (!report) throw new Error(`no car ${name}`);
  return report;
};

const codesAboveNote = ({ findings }: CarReport): FindingCode[] => [...new Set(findings.filter(({ severity }) => severity !== "note").map(({ code }) => code))].sort();

test("every table parses without an error", () => {
  expect(errors.map(sayTableError)).toEqual([]);
  expect(headingErrors.map(sayTableError)).toEqual([]);
  expect(cars.flatMap((row) => row.errors).map(sayTableError)).toEqual([]);
});

test("the scenario is as large as it was meant to be", () => {
  expect(catalogue.platforms.size).toBeGreaterThanOrEqual(6);
  expect(catalogue.components.size).toBeGreaterThanOrEqual(40);
  expect(catalogue.adapters.length).toBeGreaterThanOrEqual(10);
  expect(catalogue.lineSets.length).toBeGreaterThanOrEqual(6);
  expect(cars).toHaveLength(29);
  expect(new Set([...catalogue.platforms.values()].map(({ figures }) => figures.split))).toEqual(new Set(["front/rear", "diagonal"]));
});

describe("findings above a note", () => {
  const expected: readonly (readonly [car: string, why: string, codes: readonly FindingCode[]])[] = [
    ["Car 1", "a check valve in each master outlet feeds the drums; the block parts the fronts; the switch port has its switch", []],
    ["Car 2", "one hold-off to the discs, one proportioning valve to the drums, cups with expanders", []],
    ["Car 3", "the combination valve brings both", []],
    ["Car 4", "the master's rear outlet holds 10 psi for drums without expanders; the fronts get none of it", []],
    ["Car 5", "one tee for the fronts, one on the axle, so no outlet is short", []],
    ["Car 6", "one proportioning valve in each circuit of a diagonal split is right", []],
    ["Car 7", "the same, screwed into the master", []],
    ["Car 8", "2 psi on every disc is a disc residual", []],
    ["Car 9", "one chamber, but 1959 is before the rule year and nothing was converted: a note", []],
    ["Car 10", "two adapters at one end are as many as the Settings allow", []],
    ["Car 11", "load-sensing proportioning in the rear line only", []],
    ["Car 12", "HV-1 and CV-L both hold off the fronts, CV-L and PV-F both proportion the rears", ["metering-doubled", "proportioning-doubled"]],
    ["Car 13", "10 psi stands before front discs", ["residual-on-disc"]],
    ["Car 14", "crossed lines are one cause, so the chain codes they bring stay hidden", ["outlets-crossed"]],
    ["Car 15", "PV-F has an arrow and is fed through its outlet", ["flow-reversed"]],
    ["Car 16", "RR is proportioned, LR is not", ["proportioning-one-sided"]],
    ["Car 17", "nuts of M10x1 are for the bubble seat, the ports have 45° seats", ["seat-mismatch"]],
    ["Car 18", "the hold-off valve is listed in the rear line", ["metering-on-rear"]],
    ["Car 19", "the valve is in the front line, and its one outlet must feed two wheels with no tee listed for the frame", ["outlet-shortage", "proportioning-on-front"]],
    ["Car 20", "one chamber in 1969; four outlets for LF, RF and the rear leave one open", ["port-left-open", "single-circuit"]],
    ["Car 21", "7/16-20 starts in 7/16-24; the switch listed is M10x1 and the valve's switch port 1/8-27 NPT", ["switch-port-open", "thread-near-miss"]],
    ["Car 22", "nobody has said which valves are on it", ["data-missing"]],
    ["Car 23", "nobody has said which platform it is", ["data-missing"]],
    ["Car 24", "Components does not list CV-77", ["unknown-part"]],
    ["Car 25", "two sets of the platform, one for early and one for later valves, and neither year nor valves are known", ["data-missing", "kit-ambiguous"]],
    ["Car 26", "one set in mild steel and one in stainless", ["data-missing", "kit-ambiguous"]],
    // Below 900 psi no valve acts. Fronts 2 x 0.38 x 5.9396 in² x 4.55 in = 20.54 in lbf for each psi, rears 1.9 x 0.99402 in² x 6 in = 11.33:
    // the fronts do 0.6444 beside their thresholds. (0.6444 - 0.55) x 110 / 21.5 = 0.483 g, and a little more as the drums come on later.
    ["Car 27", "the rears pass the fronts near 0.5 g, and the valve acts beyond 0.8 g", ["rear-locks-first"]],
    ["Car 28", "the same without a valve", ["proportioning-missing", "rear-locks-first"]],
    // Rears of 0.875 in: 1.9 x 0.60132 x 6 = 6.86. The fronts do 0.7497: (0.7497 - 0.55) x 110 / 21.5 = 1.02 g even without the valve.
    ["Car 29", "smaller cylinders, and a valve that acts at 450 psi", []],
  ];

  test.each(expected)("%s: %s", (car, _why, codes) => expect(codesAboveNote(reportOf(car))).toEqual(codes));

  test("every car is in the list", () => expect(expected.map(([car]) => car)).toEqual(cars.map(({ name }) => name)));
});

describe("number of lines", () => {
  const expected: readonly (readonly [car: string, working: string, lines: number])[] = [
    ["Car 1", "master to block 2; block to LF, RF and rear hose 3; axle tee to LR and RR 2", 7],
    ["Car 2", "master to hold-off 1, on to block 1, block to LF and RF 2; master to block 1, on to frame valve 1, on to rear hose 1; axle 2", 9],
    ["Car 3", "master to valve 2; valve to LF, RF and rear hose 3; axle 2", 7],
    ["Car 4", "as car 1, and the rear line goes over the adjustable valve: 1 more", 8],
    ["Car 5", "master to front tee 1, tee to LF and RF 2; master to valve 1, on to rear hose 1; axle 2", 7],
    ["Car 6", "in each circuit: master to front wheel 1, master to valve 1, on to rear wheel 1", 6],
    ["Car 7", "in each circuit: master to front wheel 1, valve in the master to rear wheel 1", 4],
    ["Car 8", "master to residual 1, on to tee 1, tee to LF and RF 2; master to residual 1, on to valve 1, on to rear hose 1; axle 2", 9],
    ["Car 9", "master to block 1; block to LF, RF and rear hose 3; axle 2", 6],
    ["Car 10", "as car 4", 8],
    ["Car 11", "as car 5", 7],
    ["Car 12", "hold-off beside the later valve 1 more, frame valve 1 more than car 3", 9],
    ["Car 16", "as car 6, and the circuit without a valve has one line less", 5],
    ["Car 21", "scope rear: of car 3's, master to valve 1, on to rear hose 1, axle 2", 4],
  ];

  test.each(expected)("%s: %s", (car, _working, lines) => expect(reportOf(car).runs).toHaveLength(lines));
});

describe("sound cars", () => {
  const sound = cars.slice(0, 11).map(({ name }) => name);

  test.each(sound)("%s is fully joined", (name) => {
    const { verdict, runs, paths, questions } = reportOf(name);
    expect(verdict).toBe("sound");
    expect(questions).toEqual([]);
    expect(runs.flatMap(({ problems }) => problems)).toEqual([]);
    expect(runs.flatMap(({ a, b }) => [a, b]).filter(({ fitting }) => !fitting?.fits)).toEqual([]);
    expect(runs.filter(({ length, tube, stock }) => length === undefined || tube === undefined || stock === undefined)).toEqual([]);
    expect(paths.map(({ wheel }) => wheel).sort()).toEqual([...WHEELS].sort());
  });

  test("some of their lines are bridged over places that were measured, and say so", () => {
    const bridged = sound.flatMap((name) => reportOf(name).runs).filter(({ basis }) => basis === "estimated");
    // Cars 1 and 9: the block to the rear hose; car 7: the valves in the master to both rear wheels; car 11: master to the load-sensing valve.
    expect(bridged).toHaveLength(5);
    for (const { over } of bridged) expect(over.length).toBeGreaterThan(0);
  });
});

test("car 7's valves screw straight into the master", () => {
  const direct = reportOf("Car 7").assembly.joints.filter(({ by }) => by === "direct").map(({ from, to }) => `${sayPort(from)} to ${sayPort(to)}`);
  expect(direct).toEqual(expect.arrayContaining(["MC-M4 1 rear to PV-MS@1 In", "MC-M4 2 rear to PV-MS@2 In"]));
});

test("the wrong cars stop for want of nothing but what is wrong with them: every wheel is still reached", () => {
  for (const { name } of cars.slice(11, 21)) expect(reportOf(name).paths.map(({ wheel }) => wheel).sort()).toEqual([...WHEELS].sort());
});

describe("nuts and adapters", () => {
  const ends = (name: string): Map<string, string> => new Map(reportOf(name).runs.flatMap(({ joint, a, b }) => [[sayPort(joint.from), sayEnd(a)], [sayPort(joint.to), sayEnd(b)]] as const));
  const sayEnd = ({ fitting }: RunEnd): string => (fitting?.fits ? [...fitting.adapters.map(({ adapter }) => adapter.name), fitting.nut.name].join(", ") : "none");

  // 3/16 in tube: its own nut is 3/8-24; every larger port takes the oversize nut of its thread.
  test.each([
    ["MC-1 Front out", "N-3/16-1/2-20 oversize"],
    ["HV-1 In", "N-3/16-7/16-24 oversize"],
    ["BLK-E Front in", "N-3/16-1/2-20 oversize"],
    ["BLK-E LF out", "N-3/16-3/8-24"],
    ["MC-1 Rear out", "N-3/16-9/16-18 oversize"],
    ["BLK-E Rear out", "N-3/16-7/16-24 oversize"],
    ["PV-F Out", "N-3/16-7/16-24 oversize"],
    ["HOSE-R In", "N-3/16-3/8-24"],
  ])("car 2, %s takes %s", (port, nut) => expect(ends("Car 2").get(port)).toBe(nut));

  // 1/4 in tube has no nut of 3/8-24 and none for taper pipe: from the port, pipe to 3/8-24, 3/8-24 to 7/16-24, and its own nut.
  test.each([
    ["BLK-EP Rear out", "N-1/4-7/16-24"],
    ["APV-P In", "AD-P18-38, AD-38-716, N-1/4-7/16-24"],
    ["APV-P Out", "AD-P18-38, AD-38-716, N-1/4-7/16-24"],
    ["HOSE-R In", "AD-38-716, N-1/4-7/16-24"],
  ])("car 10, %s takes %s", (port, chain) => expect(ends("Car 10").get(port)).toBe(chain));
});
