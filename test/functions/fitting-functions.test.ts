import { ADAPTERS, table } from "../core/workshop";
import { failure, keyOf, tableFrom, type Cell } from "./sheet";

const record = (rows: Cell[][], index = 1): Record<string, Cell | undefined> => Object.fromEntries((rows[0] ?? []).map((heading, position) => [String(heading), rows[index]?.[position]]));
const adapters = keyOf({ more: [table(ADAPTERS, "A | 1/2-20 | inverted-flare-45 | male | 3/8-24 | inverted-flare-45 | female | 4", "B | M10x1 | bubble-iso | male | 3/8-24 | inverted-flare-45 | male | 5")] });

describe("THREAD", () => {
  test("inches count threads per inch, millimetres measure the pitch: one reading, two ways", () => {
    // 0.3705 in is 9.4107 mm; 24 to the inch is a pitch of 1.0583 mm.
    const [inch, metric] = [tableFrom("THREAD", 0.3705, 24, "in", null), tableFrom("THREAD", 9.4107, 1.0583, "mm", null)];
    expect([record(inch)["Thread"], record(inch)["Match"], record(metric)["Thread"], record(metric)["Match"]]).toEqual(["3/8-24", "fits", "3/8-24", "fits"]);
    expect(inch.slice(1).map(([name]) => name)).toEqual(metric.slice(1).map(([name]) => name));
    expect([record(inch)["Threads per inch"], record(metric)["Pitch (mm)"]]).toEqual([24, 1.058]);
  });

  test("left-out optionals are inches, male, any pitch", () => expect(tableFrom("THREAD", 0.3705, null, null, null)).toEqual(tableFrom("THREAD", 0.3705, 0, "", "male")));
  test("nothing near answers #N/A", () => expect(failure("THREAD", 1.9, 40, "in", null)).toEqual({ kind: "notAvailable", message: "No listed thread is near 1.9 in with 40 threads per inch." }));
  test.each([
    ["millimetres without the unit", [9.41, 1, null, null], /9.41 in is larger than any listed thread; for millimetres give the unit "mm"/],
    ["no diameter", [0, 1, "mm", null], /diameter: read nothing/],
    ["a diameter beyond all measures", [1e308, 1, "mm", null], /diameter: read "1e\+308"; accepted: a number from a thousand-millionth to a thousand million/],
    ["a pitch below all measures", [9.4, 1e-10, "mm", null], /pitch: read "1e-10"; accepted: a number from a thousand-millionth/],
    ["a diameter that is no number", ["wide", 1, "mm", null], /diameter: read "wide"; accepted: a number above 0/],
    ["an unknown unit", [9.41, 1, "furlong", null], /unit: read "furlong"; accepted: "in" or "mm"/],
    ["an unknown gender", [9.41, 1, "mm", "both"], /gender: read "both"; accepted: female or male/],
  ] as const)("%s answers #VALUE! with what is accepted", (_, args, message) => expect(failure("THREAD", ...args)).toEqual({ kind: "value", message: expect.stringMatching(message) as string }));
});

describe("FITTING", () => {
  // SAE J512 as remembered: 3/16 in tube takes 3/8-24.
  test.each([["0.1875", 0.1875], ["3/16", "3/16"], ["4.75 mm", "4.75 mm"], ["3/16 in", "3/16 in"]])("tube %s in a 3/8-24 inverted-flare port takes the standard nut", (_, tube) => {
    expect(record(tableFrom("FITTING", tube, "3/8-24", "inverted-flare-45", null, null))).toMatchObject({ Nut: "N-3/16-3/8-24", "Tube (in)": 0.1875, Flare: "double 45°", Adapters: "", Problem: "" });
  });

  test("with a catalogue its adapters count", () => expect(record(tableFrom("FITTING", "3/16", "M10x1", "inverted-flare-45", adapters, null))["Problem"]).toMatch(/the seat does not fit/));

  test.each([
    ["seat", "3/16", "3/8-24", "bubble-iso", null], ["gender", "3/16", "3/8-24", "inverted-flare-45", "male"],
    ["tube", "1/4", "3/8-24", "inverted-flare-45", null], ["thread", "3/16", "3/4-16", "inverted-flare-45", null],
  ])("a reason is said in the row: the %s", (reason, tube, thread, seat, gender) => {
    expect(record(tableFrom("FITTING", tube, thread, seat, null, gender))).toMatchObject({ Nut: "", Problem: expect.stringMatching(new RegExp(`the ${reason} does not fit$`)) as string });
  });

  test("a thread the spreadsheet made a date is refused", () => expect(failure("FITTING", "3/16", 45375, "inverted-flare-45", null, null).message).toMatch(/thread: read "45375"; accepted: a thread such as/));
});

describe("ADAPT", () => {
  const adapt = (from: readonly [string, string], to: readonly [string, string], genders: readonly [string | null, string | null] = [null, null]): Cell[][] => tableFrom("ADAPT", ...from, ...to, adapters, ...genders);
  const IF = "inverted-flare-45";

  test("two faces that mate need nothing", () => expect(record(adapt(["3/8-24", IF], ["3/8-24", IF]))).toMatchObject({ Step: 0, Adapter: "", Problem: expect.stringMatching(/as it is$/) as string }));

  test("a chain lists its adapters in order, the side nearer the start first", () => {
    const rows = adapt(["1/2-20", IF], ["M10x1", "bubble-iso"], ["female", "female"]);
    expect(rows.slice(1).map((row) => row.slice(0, 3))).toEqual([[1, "A", "1/2-20"], [2, "B", "3/8-24"]]);
  });

  test("no chain is said in the row", () => expect(record(adapt(["9/16-18", IF], ["M12x1", "bubble-iso"]))["Problem"]).toMatch(/^no listed adapters join/));
  test("same thread with another seat is not joined", () => expect(record(adapt(["3/8-24", IF], ["3/8-24", "bubble-iso"]))["Problem"]).toMatch(/^no listed adapters join/));
});
