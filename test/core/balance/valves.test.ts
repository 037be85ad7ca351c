import fc from "fast-check";
import { chainOf, curveOf, holdOff, proportioning, residual, type DutyState } from "../../../src/core/balance/passage";
import { inletFor, inSeries, meanOf, outletAt, straight } from "../../../src/core/balance/pressure-curve";
import { bar, inBar, pascals, type Pascals } from "../../../src/core/quantity";
import { property } from "../seeded";
import { figure, lines, scanAndBisect } from "./random-braking";

const out = (curve: Parameters<typeof outletAt>[0], inlet: number): number => Number(inBar(outletAt(curve, bar(inlet))).toFixed(9));

describe("hold-off", () => {
  const valve = holdOff(bar(6), bar(30), bar(0.5));
  // Shut it passes its rest pressure; half way from 6 to 30 bar it stands half way from 0.5 to 30 bar: 15.25.
  test.each([[0, 0], [0.3, 0.3], [0.5, 0.5], [5.9, 0.5], [6, 0.5], [18, 15.25], [30, 30], [80, 80]])("%d bar gives %d bar", (inlet, outlet) => expect(out(valve, inlet)).toBe(outlet));
  test("one that opens all at once passes nothing at its opening pressure and everything just above", () => {
    expect([out(holdOff(bar(6), bar(6), bar(0)), 6), out(holdOff(bar(6), bar(6), bar(0)), 6.001)]).toEqual([0, 6.001]);
  });
});

describe("proportioning", () => {
  // 40 bar and a slope of 0.5 on what lies above: 40 + 0.5 x 40 = 60, not 0.5 x 80.
  test.each([[0, 0], [40, 40], [60, 50], [80, 60]])("40 bar, slope 0.5: %d bar gives %d bar", (inlet, outlet) => expect(out(proportioning(bar(40), 0.5), inlet)).toBe(outlet));
  test("a limiting valve passes no more than its split point", () => expect([out(proportioning(bar(40), 0), 39), out(proportioning(bar(40), 0), 90)]).toEqual([39, 40]));
});

test("a residual keeps what it holds and changes nothing above", () => expect([out(residual(bar(0.7)), 0), out(residual(bar(0.7)), 0.5), out(residual(bar(0.7)), 9)]).toEqual([0.7, 0.7, 9]));

test("two proportioning valves in series: both slopes multiply, and the second begins where the first lets its split point through", () => {
  const both = chainOf([proportioning(bar(20), 0.5), proportioning(bar(30), 0.4)]);
  // The second acts when 20 + 0.5 (p - 20) = 30, at 40 bar; at 60 bar: 30 + 0.4 x (40 - 30) = 34, a slope of 0.2.
  expect([out(both, 40), out(both, 60), both.slope]).toEqual([30, 34, 0.2]);
});

test("order matters: a residual behind proportioning holds more than one before it", () => {
  const [before, behind] = [chainOf([residual(bar(2)), proportioning(bar(1), 0.5)]), chainOf([proportioning(bar(1), 0.5), residual(bar(2))])];
  expect([out(before, 0), out(behind, 0)]).toEqual([1.5, 2]); // 1 + 0.5 x (2 - 1); 2
});

test("two wheels behind unlike valves count as their mean", () => {
  const mean = meanOf(proportioning(bar(20), 0.5), straight);
  expect([out(mean, 20), out(mean, 40), mean.slope]).toEqual([20, 35, 0.75]); // (30 + 40) / 2
});

describe("duties of the tables", () => {
  const state: DutyState = { laden: false, adjustedTo: bar(25), holdOffRest: pascals(0) };
  const at60 = (duty: Parameters<typeof curveOf>[0], other: Partial<DutyState> = {}) => { const curve = curveOf(duty, { ...state, ...other }); return curve && out(curve, 60); };
  test("through", () => expect(at60({ does: "through" })).toBe(60));
  test("load sensing takes the laden split when laden", () => {
    const duty = { does: "load-sensing-proportioning", split: bar(20), ladenSplit: bar(50), slope: 0.25 } as const;
    expect([at60(duty), at60(duty, { laden: true })]).toEqual([30, 52.5]);
  });
  test("adjustable takes what it is set to, and wound out it does nothing", () => {
    const duty = { does: "adjustable-proportioning", slope: 0.4 } as const;
    expect([at60(duty), at60(duty, { adjustedTo: Infinity }), at60(duty, { adjustedTo: undefined })]).toEqual([39, 60, undefined]);
  });
  test("limiting", () => expect(at60({ does: "limiting", split: bar(45) })).toBe(45));
  test.each([[{ does: "hold-off", opens: bar(5) }], [{ does: "proportioning", split: bar(5) }], [{ does: "limiting" }]] as const)("%j lacks a figure and gives no curve", (duty) => expect(at60(duty)).toBeUndefined());
});

const inlets = figure(0, 2e7).map(pascals);

property("a chain is what its parts are one after another", 300, fc.tuple(lines, lines, inlets), ([first, second, inlet]) => {
  expect(outletAt(inSeries(first, second), inlet)).toBeCloseTo(outletAt(second, outletAt(first, inlet)), 4);
});

property("more at the inlet is never less at the outlet", 300, fc.tuple(lines, inlets, inlets), ([line, a, b]) => {
  expect(outletAt(line, Math.max(a, b) as Pascals)).toBeGreaterThanOrEqual(outletAt(line, Math.min(a, b) as Pascals) - 1e-6);
});

property("the inlet for an outlet is the one that scanning and bisecting finds", 60, fc.tuple(lines, figure(1e4, 1e7)), ([line, wanted]) => {
  const found = scanAndBisect((inlet) => outletAt(line, pascals(inlet)) >= wanted, [0, 1e8], 2000);
  const closed = inletFor(line, pascals(wanted));
  if (found === undefined) expect(closed).toBeGreaterThan(1e8 * (1 - 1e-9));
  else expect(Math.abs(closed - found)).toBeLessThanOrEqual(1e-9 * 1e8);
});
