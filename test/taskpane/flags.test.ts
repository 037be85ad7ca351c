import { countFlags, firstCards, flagCounts, flagSections, type FlagFilter } from "../../src/taskpane/flags";
import { finding, type FindingCode } from "../../src/core/finding";
import type { CarLine } from "../../src/workbook/workbook-reports";

// stop: port-left-open, circuit-unfed; decide: metering-doubled; note: metering-missing (src/core/finding.ts)
const cars = [
  car(0, "Sound one"),
  car(1, "One stop", ["port-left-open", "metering-missing"]),
  car(2, "Only a note", ["metering-missing"]),
  car(3, "Two stops", ["circuit-unfed", "port-left-open", "metering-doubled"]),
];

const check = (name: string, filter: Partial<FlagFilter>, expected: readonly string[]): void => {
  test(name, () => expect(shown({ severity: undefined, search: "", ...filter })).toEqual(expected));
};

check("worst first, then the car with most flags of that severity, then the order of rows", {}, [
  "stop: Two stops 2", "stop: One stop 1", "decide: Two stops 1", "note: One stop 1", "note: Only a note 1",
]);
check("one severity alone", { severity: "note" }, ["note: One stop 1", "note: Only a note 1"]);
check("a search looks at car, place and sentence without regard to case, and needs every word", { search: "STOP fluid" }, ["stop: One stop 1", "stop: Two stops 1"]);
check("a search for a customer", { search: "customer of only" }, ["note: Only a note 1"]);
check("nothing fits", { search: "no such word" }, []);
check("spaces are no search", { search: "   ", severity: "decide" }, ["decide: Two stops 1"]);

test("counts follow the search and not the choice of a severity", () => {
  expect(flagCounts(cars, "")).toEqual({ stop: 3, decide: 1, watch: 0, note: 2 });
  expect(flagCounts(cars, "two stops")).toEqual({ stop: 2, decide: 1, watch: 0, note: 0 });
});

describe("flags that count no more", () => {
  const accepted = { ...finding("port-left-open", { place: "block", seen: "seen" }), standing: "accepted", because: "accepted for this car: plugged on Friday" } as const;
  const off = { ...finding("metering-doubled", { place: "block", seen: "seen" }), standing: "off", because: "switched off in Settings; the rule says decide" } as const;
  const settled: readonly CarLine[] = [{ ...car(0, "Accepted"), findings: [accepted] }, { ...car(1, "Both", ["circuit-unfed"]), findings: [...car(1, "Both", ["circuit-unfed"]).findings, accepted, off] }];
  const groups = (filter: FlagFilter): string[] => flagSections(settled, filter).map(({ group, cars: those }) => `${group} ${those.map(({ line }) => line.name).join(", ")}`);

  test("stand in a section of their own at the end, whatever their severity", () => expect(groups({ severity: undefined, search: "" })).toEqual(["stop Both", "settled Both, Accepted"]));
  test("are not among the flags of one severity", () => expect(groups({ severity: "stop", search: "" })).toEqual(["stop Both"]));
  test("are found by the reason given", () => expect(groups({ severity: undefined, search: "friday" })).toEqual(["settled Accepted, Both"]));
  test("are in no count", () => expect(flagCounts(settled, "")).toEqual({ stop: 1, decide: 0, watch: 0, note: 0 }));
});

test("the first cards are counted over all sections, and a section without cards is left out", () => {
  const sections = flagSections(cars, { severity: undefined, search: "" });
  expect(firstCards(sections, 3).map(({ group, cars: those }) => `${group} ${those.length}`)).toEqual(["stop 2", "decide 1"]);
  expect(firstCards(sections, 2)).toHaveLength(1);
});

function shown(filter: FlagFilter): string[] {
  return flagSections(cars, filter).flatMap(({ group, cars: those }) => those.map((one) => `${group}: ${one.line.name} ${countFlags([one])}`));
}

function car(row: number, name: string, codes: readonly FindingCode[] = []): CarLine {
  const findings = codes.map((code) => finding(code, { place: "block", seen: "seen" }));
  return { table: "Cars", row, sheetRow: row + 2, name, customer: `customer of ${name}`, report: undefined, verdict: undefined, findings };
}
