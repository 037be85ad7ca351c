/** Small workbooks, each with what it must say worked by hand beside it. A new case is a new folder. */
import { parseCars } from "../../src/catalogue/parse-cars";
import { parseCatalogue } from "../../src/catalogue/parse-catalogue";
import { sayTableError } from "../../src/catalogue/table-error";
import { sayPort } from "../../src/core/assembly";
import { inInches, inMillimetres } from "../../src/core/quantity";
import { reportOn, type CarReport } from "../../src/core/report";
import type { Run, RunEnd } from "../../src/core/runs";
import { readCases, type Case, type ExpectedCar, type ExpectedRun } from "./read-case";
import { variationsOf } from "./variations";

const cases = readCases(__dirname);

test("there are cases, and each names the source of its numbers", () => {
  expect(cases.length).toBeGreaterThanOrEqual(8);
  for (const { readme } of cases) expect(readme).toMatch(/Source of the numbers: .+/);
});

describe.each(cases.map((one) => [one.name, one] as const))("%s", (_name, one) => {
  test.each(Object.entries(one.expected.cars))("%s", (car, expected) => expect(answerOf(one, car)).toEqual(inOrder(expected)));

  test("expects something of every car", () => expect(one.cars.rows.map(([name]) => name)).toEqual(Object.keys(one.expected.cars)));

  if (one.expected.gone) {
    const { from, to, parts } = one.expected.gone;
    test.each(parts)(`lines reach %s on "${from}" and none does on "${to}"`, (part) => {
      const reaches = (car: string) => reportOf(one, car).runs.some(({ joint }) => [joint.from, joint.to].some(({ instance }) => instance.component.name === part));
      expect([reaches(from), reaches(to)]).toEqual([true, false]);
    });
  }
});

test.each(cases.flatMap(variationsOf))("%s", (_says, car, changed) => {
  expect(answerOf(changed, car)).toEqual(inOrder(changed.expected.cars[car] as ExpectedCar));
});

/** What a car answers: its findings, each once, and its runs in the order of their names, so that a case may list them as it likes. */
function answerOf(one: Case, car: string): ExpectedCar {
  const report = reportOf(one, car);
  const written = one.expected.cars[car]?.runs[0]?.[4].includes(" mm ") ? inMetric : inImperial;
  const { notes } = one.expected.cars[car] ?? {};
  const above = report.findings.filter(({ severity }) => severity !== "note").map(({ severity, code }) => `${severity} ${code}`);
  const noted = notes?.filter((note) => report.findings.some(({ severity, code }) => severity === "note" && code === note));
  return inOrder({ findings: [...new Set(above)], ...(noted && { notes: noted }), runs: report.runs.map((run) => sayRun(run, written)) });
}

function reportOf({ cars, catalogue }: Case, name: string): CarReport {
  const parsed = parseCatalogue(catalogue);
  expect(parsed.errors.map(sayTableError)).toEqual([]);
  const row = parseCars(cars.headings, cars.rows).cars.find((one) => one.name === name);
  expect(row?.errors.map(sayTableError)).toEqual([]);
  if (!row?.car) throw new Error(`no car ${name}`);
  return reportOn(parsed.catalogue, row.car);
}

const inImperial = ({ length }: Run): string => (length === undefined ? "?" : `${Number(inInches(length).toFixed(3))} in`);
const inMetric = ({ length }: Run): string => (length === undefined ? "?" : `${Number(inMillimetres(length).toFixed(3))} mm`);

const sayRun = (run: Run, written: (run: Run) => string): ExpectedRun =>
  [sayPort(run.joint.from), sayPort(run.joint.to), sayEnd(run.a), sayEnd(run.b), `${written(run)} ${run.basis}`];

function sayEnd({ fitting }: RunEnd): string {
  if (!fitting) return "not known";
  if (!fitting.fits) return `cannot be joined: ${fitting.reason}`;
  return [...fitting.adapters.map(({ adapter }) => adapter.name), `${fitting.nut.face.thread.name} ${fitting.flare}`].join(" > ");
}

const inOrder = (car: ExpectedCar): ExpectedCar => ({ ...car, findings: [...car.findings].sort(), runs: [...car.runs].sort(byName) });
const byName = (a: ExpectedRun, b: ExpectedRun): number => (a.join() < b.join() ? -1 : 1);
