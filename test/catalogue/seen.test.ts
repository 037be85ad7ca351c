import { parseSeen } from "../../src/catalogue/parse-seen";
import { demoTables } from "../../src/catalogue/demo";
import { inches, inInches, millimetres } from "../../src/core/quantity";
import { said, tableOf } from "./tables";

const HEADINGS = "Car|Body|Port|Diameter (in)|Pitch|Gender|Thread|Side|Place|Wire";
const read = (headings: string, ...rows: readonly (readonly unknown[])[]) => {
  const table = tableOf(headings, ...rows);
  const { bodies, errors } = parseSeen(table.headings, table.rows);
  return { bodies, errors: said(errors) };
};

test("rows of one car and one body are one body, its ports in order, with the first place and wire told", () => {
  const { bodies } = read(HEADINGS, ["Car 1", "valve", "A", 0.4525, 20, "female", "", "left", "", ""], ["car 1", "Valve ", "B", "", "", "", "9/16-18", "", "valve", "yes"], ["Car 2", "valve", "A", 0.336, "", "", "", "", "", ""]);
  expect(bodies.map(({ car, body, ports, place, wire }) => [car, body, ports.map(({ label }) => label), place, wire])).toEqual([["Car 1", "valve", ["A", "B"], "valve", true], ["Car 2", "valve", ["A"], undefined, undefined]]);
  expect(bodies[0]?.ports[0]).toMatchObject({ diameter: inches(0.4525), pitch: inches(1 / 20), gender: "female", side: "left", thread: undefined });
  expect(bodies[0]?.ports[1]).toMatchObject({ diameter: undefined, pitch: undefined, thread: { name: "9/16-18" } });
});

test.each<[string, string, unknown, number]>([
  ["of 8 or more is threads to the inch", "Pitch", 24, 1 / 24],
  ["of 6 or less is a pitch in millimetres", "Pitch", 1, 1 / 25.4],
  ["under a heading in millimetres is one", "Pitch (mm)", 1.5, 1.5 / 25.4],
  ["under a heading in threads to the inch counts them", "Pitch (tpi)", 4, 1 / 4],
])("a pitch %s", (_, heading, value, inch) => {
  const { bodies, errors } = read(HEADINGS.replace("Pitch", heading), ["Car 1", "valve", "A", 0.4525, value, "", "", "", "", ""]);
  expect(errors).toEqual([]);
  expect(inInches(bodies[0]?.ports[0]?.pitch ?? (NaN as never))).toBeCloseTo(inch, 9);
});

test("a diameter in millimetres is read by its heading", () => {
  expect(read(HEADINGS.replace("(in)", "(mm)"), ["Car 1", "valve", "A", 11.5, "", "", "", "", "", ""]).bodies[0]?.ports[0]?.diameter).toBe(millimetres(11.5));
});

test("a cell that cannot be read is told with its body, counts as not measured, and leaves the rest standing", () => {
  const { bodies } = read(HEADINGS, ["Car 1", "valve", "A", "wide", 7, "", "", "", "", ""], ["Car 1", "valve", "B", 0.5, "", "", "", "", "", ""]);
  expect(bodies[0]?.ports.map(({ diameter, pitch }) => [diameter, pitch])).toEqual([[undefined, undefined], [inches(0.5), undefined]]);
  expect(said(bodies[0]?.errors ?? [])).toEqual([expect.stringMatching(/^Seen row 1 under the headings, Diameter: read "wide"/), expect.stringMatching(/^Seen row 1 under the headings, Pitch: read "7"; accepted: threads per inch of 8 or more, or a pitch of 6 mm or less/)]);
});

test("a row without a car or a body is told and belongs to no body", () => {
  const { bodies, errors } = read(HEADINGS, ["Car 1", "", "A", 0.5, "", "", "", "", "", ""], ["", "valve", "A", 0.5, "", "", "", "", "", ""], ["Car 1", "valve", "A", 0.5, "", "", "", "", "", ""]);
  expect(bodies).toHaveLength(1);
  expect(errors).toEqual([expect.stringContaining("Seen row 1 under the headings, Body: read nothing"), expect.stringContaining("Seen row 2 under the headings, Car: read nothing")]);
});

test("the demo's rows are read without an error, as the bodies they are of", () => {
  const [table] = demoTables.filter(({ name }) => name === "Seen");
  const { bodies, errors } = parseSeen(table?.headings ?? [], table?.rows ?? []);
  expect([errors, bodies.flatMap((body) => body.errors)]).toEqual([[], []]);
  expect(bodies.map(({ car, body, ports }) => `${car}, ${body}: ${ports.length}`)).toEqual(["Car 24, casting with 77 on it: 3", "Car 22, block on the frame: 4", "Car 17, master: 2", "Car 20, odd fitting: 1"]);
});
