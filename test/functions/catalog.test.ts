import { ADAPTERS, table, tablesOf } from "../core/workshop";
import { about, call, failure, keyOf, type Cell } from "./sheet";

const asRange = ({ headings, rows }: { readonly headings: readonly unknown[]; readonly rows: readonly (readonly unknown[])[] }): unknown[][] => [[...headings], ...rows.map((row) => [...row])];
const ranges = (): unknown[][][] => tablesOf().map(asRange);

test("the key names the content: the same tables in another order give the same key, another price another key", () => {
  const [key, reordered] = [call("CATALOG", ranges()), call("CATALOG", ranges().reverse())];
  expect(key).toMatch(/^PLUMB-/);
  expect(reordered).toBe(key);
  expect(keyOf({ parts: ["HF hose @front price=13 | <IN 3/8-24 | >OUT 7/16-20 banjo"] })).not.toBe(key);
});

test("several errors are all named, each with table, row, column, what was read and what is accepted", () => {
  const adapters = asRange(table(ADAPTERS, "A1 | 9/16-19x | inverted-flare-45 | male | 3/8-24 | inverted-flare-45 | female | 4", "A2 | 3/8-24 | velvet | male | 3/8-24 | bubble-iso | neither | 4"));
  const { kind, message } = failure("CATALOG", [...ranges(), adapters]);
  expect(kind).toBe("value");
  expect(message).toContain('Adapters row 1 under the headings, Thread A: read "9/16-19x"; accepted: a thread such as 3/8-24');
  expect(message).toContain('Adapters row 2 under the headings, Seat A: read "velvet"; accepted: inverted-flare-45');
  expect(message).toContain('Adapters row 2 under the headings, Gender B: read "neither"; accepted: female or male');
});

test("a range that is no catalogue table is an error and the others are read", () => expect(failure("CATALOG", [...ranges(), [["Colour", "Mood"], ["red", "good"]]]).message).toMatch(/^Table \d+/));

test.each<[string, Cell | null, RegExp]>([
  ["unknown", "PLUMB-0000000000000000", /"PLUMB-0000000000000000" is no catalogue key known here: point this argument at the cell with =PLUMB.CATALOG/],
  ["blank", 0, /The catalogue key is blank: point this argument/],
  ["left out", null, /The catalogue key is blank: point this argument/],
])("a key that is %s answers #N/A with the repair", (_, key, message) => {
  for (const name of ["RUNS", "PARTS", "CHECK", "VERDICT", "TUBING"]) {
    const failed = failure(name, [["Car"]], [["C"]], key);
    expect([failed.kind, failed.message]).toEqual(["notAvailable", expect.stringMatching(message)]);
  }
});

test("the eight catalogues last used are kept", () => {
  const keys = Array.from({ length: 9 }, (_, index) => keyOf({ parts: [`HF hose @front price=${100 + index} | <IN 3/8-24 | >OUT 7/16-20 banjo`] }));
  expect(failure("VERDICT", [["Car", "Master", "Valves"]], [["C", 0, 0]], keys[0]).kind).toBe("notAvailable");
  expect(about("VERDICT", [{}], keys[1] ?? "")).toHaveLength(2);
});
