/** What a row left out for an error must not be taken for: a port that is not there, a passage with nothing in it. */
import { parseCatalogue } from "../../../src/catalogue/parse-catalogue";
import type { RawTable } from "../../../src/catalogue/table-spec";
import type { Catalogue } from "../../../src/core/catalogue";
import { reportIn, tablesOf, type CarCells } from "../workshop";

/** The workshop's tables with one cell spoilt: the row whose cells hold all these texts, under a heading. */
function spoilt(heading: string, to: string, ...row: readonly string[]): Catalogue {
  let found = 0;
  const tables = tablesOf().map((table): RawTable => {
    const column = table.headings.indexOf(heading);
    const spoil = (cells: RawTable["rows"][number]) => {
      if (column < 0 || !row.every((text) => cells.includes(text))) return cells;
      found += 1;
      return cells.map((cell, index) => (index === column ? to : cell));
    };
    return { ...table, rows: table.rows.map(spoil) };
  });
  if (found !== 1) throw new Error(`${found} rows of ${row.join(", ")}`);
  const { catalogue, errors } = parseCatalogue(tables);
  if (errors.length === 0) throw new Error("the cell was read");
  return catalogue;
}
const codes = (catalogue: Catalogue, cells: CarCells): string => reportIn(catalogue, cells).findings.filter(({ severity }) => severity !== "note").map(({ code }) => code).join(" ");
const sound: CarCells = { Valves: "HO; BLK; TEE" };

test.each([["RI", "the master's rear outlet is not called open"], ["R", "the right front wheel is not called unfed"], ["RO", "the rear wheels are not called unfed"]])("without the block's port %s %s: one finding names the part", (port) => {
  const catalogue = spoilt("Thread", "no thread", "BLK", port);
  expect(codes(catalogue, sound)).toBe("data-out-of-range");
  expect(reportIn(catalogue, sound).findings[0]).toMatchObject({ place: "Ports (BLK)", severity: "decide" });
});

test("a car without that part is judged as ever", () => expect(codes(spoilt("Thread", "no thread", "CV", "RI"), { ...sound, Valves: "HO; BLK-SW; TEE" })).toBe("switch-port-open"));

test("a passage whose row is left out is unknown, not empty", () => {
  const catalogue = spoilt("Slope", "steep", "CV", "RO");
  const { questions } = reportIn(catalogue, { Valves: "CV; TEE" });
  expect(questions.map(({ table, column, subject }) => [table, column, subject])).toContainEqual(["Passages", "Does", "CV"]);
});
