import { filterCars, groupCounts, worstFirst, type CarFilter } from "../../src/taskpane/car-list";
import { callsOf } from "../../src/taskpane/questions-view";
import { finding, type FindingCode } from "../../src/core/finding";
import type { CarReport } from "../../src/core/report";
import type { CarLine } from "../../src/workbook/workbook-reports";

// stop: port-left-open, circuit-unfed; decide: metering-doubled; note: metering-missing (src/core/finding.ts)
const cars: readonly CarLine[] = [
  car("Sound", "sound", ["metering-missing"]),
  car("Two decisions", "decide", ["metering-doubled", "metering-doubled"]),
  car("One stop", "stop", ["port-left-open"]),
  car("Failed", undefined, []),
  car("One decision", "decide", ["metering-doubled"]),
  car("Two stops", "stop", ["port-left-open", "circuit-unfed"]),
];

const names = (lines: readonly CarLine[]): string[] => lines.map(({ name }) => name);

test("worst first: verdict, then most of the worst flags, then the order of rows", () => {
  expect(names(worstFirst(cars))).toEqual(["Two stops", "One stop", "Failed", "Two decisions", "One decision", "Sound"]);
});

test("accepted flags do not make a car worse", () => {
  const accepted: CarLine = { ...car("Accepted", "sound", []), findings: [{ ...finding("port-left-open", { place: "x", seen: "y" }), standing: "accepted" }] };
  expect(names(worstFirst([car("Noted", "sound", ["metering-missing"]), accepted, car("Clean", "sound", [])]))).toEqual(["Noted", "Accepted", "Clean"]);
});

test.each<[string, CarFilter, string[]]>([
  ["a group", { group: "hold", search: "" }, ["Two stops", "One stop", "Failed"]],
  ["all words, in name or customer", { group: undefined, search: "customer DECISION one" }, ["One decision"]],
  ["nothing fits", { group: "watch", search: "" }, []],
])("filter by %s", (_, filter, expected) => expect(names(filterCars(cars, filter))).toEqual(expected));

test("counts follow the search", () => {
  expect(groupCounts(cars, "")).toEqual({ hold: 3, decide: 2, watch: 0, sound: 1 });
  expect(groupCounts(cars, "two")).toEqual({ hold: 1, decide: 1, watch: 0, sound: 0 });
});

test("calls: cars whose lines wait come first, then those whose answer tells most; a car with nothing open has none", () => {
  const asked = [call("tells little", [[false, 0.2]]), call("nothing open", []), call("waits", [[true, 0]]), call("tells much", [[false, 1]]), call("waits and tells", [[true, 0.7]])];
  expect(names(callsOf(asked))).toEqual(["waits and tells", "waits", "tells much", "tells little"]);
});

function car(name: string, verdict: CarLine["verdict"], codes: readonly FindingCode[]): CarLine {
  return { table: "Cars", row: 0, sheetRow: 2, name, customer: `Customer of ${name}`, report: undefined, verdict, findings: codes.map((code) => finding(code, { place: "block", seen: "seen" })) };
}

function call(name: string, questions: readonly (readonly [blocks: boolean, bits: number])[]): CarLine {
  const asked = questions.map(([blocks, bits]) => ({ table: "Cars", column: "Valves", subject: name, ask: "Which?", why: "why", blocks, bits, answers: [] }));
  return { ...car(name, "sound", []), report: { questions: asked } as unknown as CarReport };
}
