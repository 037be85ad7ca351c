/** Functions as Excel calls them: late, with one thing more than their arguments, and in a workbook that was just opened. */
import { oncePerKey, whenLoaded } from "../../src/functions/parts";
import * as cars from "../../src/functions/functions";
import * as physics from "../../src/functions/physics-functions";
import { rememberCatalogue } from "../../src/functions/reports";
import { excelPort } from "../../src/workbook/excel";
import { readCatalogue } from "../../src/workbook/workbook-reports";
import { ADAPTERS, table, tablesOf } from "../core/workshop";
import { FakeExcel } from "../workbook/fake-excel";

const loadCars = (): Promise<typeof cars> => Promise.resolve(cars);
/** What the platform's reference says of the last thing a function gets. */
const invocation = (isInValuePreview: boolean): object => ({ address: undefined, functionName: "RUNS", isInValuePreview });

/** The shop's tables in a workbook, and the key that its cell kept from an earlier session: nothing has read them in this one. */
function reopened(price: number) {
  const contents = [...tablesOf(), table(ADAPTERS, `A${price} | 3/8-24 | inverted-flare-45 | male | 7/16-24 | inverted-flare-45 | female | ${price}`)];
  const excel = new FakeExcel(contents.map(({ headings, rows }, index) => ({ name: `Table_${index}`, sheet: `Sheet ${index}`, headings: headings.map(String), rows: rows.map((row) => headings.map((_, column) => (row[column] ?? "") as string | number)) })));
  const read = jest.fn(async () => { rememberCatalogue(await readCatalogue(excelPort(excel.run))); });
  return { excel, read, key: () => readCatalogue(excelPort(excel.run)).then(({ key }) => key) };
}

describe("a workbook that was just opened", () => {
  test("its functions answer at once: the tables are read for the key that a cell kept, once for all cells that ask", async () => {
    const { read, key } = reopened(1);
    const kept = await key();
    const verdict = whenLoaded("VERDICT", loadCars, oncePerKey(read));
    const answers = await Promise.all(["A", "B", "C"].map((name) => verdict([["Car"]], [[name]], kept, invocation(false)) as Promise<unknown[][]>));
    expect(answers.map((rows) => rows[1]?.[0])).toEqual(["A", "B", "C"]);
    expect(read).toHaveBeenCalledTimes(1);
  });

  test("that key is the one that CATALOG gives for the same tables, with blanks as 0", async () => {
    const { excel, key } = reopened(2);
    const ranges = excel.tables.map((each) => {
      const sheet = excel.sheets.find(({ id }) => id === each.sheet);
      return (sheet ? excel.shown(sheet, { row: 0, column: 0, rows: each.rows + 1, columns: each.columns }) : []).map((row) => row.map((value) => (value === "" ? 0 : value)));
    });
    expect(cars.catalog(ranges)).toBe(await key());
  });

  test("a key of tables that have changed since says how to repair it, and is looked for once", async () => {
    const { read } = reopened(3);
    const verdict = whenLoaded("VERDICT", loadCars, oncePerKey(read));
    for (let call = 0; call < 3; call += 1) {
      await expect(verdict([["Car"]], [["A"]], "PLUMB-0000000000000009", invocation(false))).rejects.toMatchObject({ kind: "notAvailable", message: expect.stringContaining("then recalculate that cell (F2, Enter)") as string });
    }
    expect(read).toHaveBeenCalledTimes(1);
  });

  test("a reading that fails leaves the same sentence, and the next call tries again", async () => {
    const { excel, read, key } = reopened(4);
    const kept = await key();
    const verdict = whenLoaded("VERDICT", loadCars, oncePerKey(read));
    excel.host.failures.push("GeneralException");
    await expect(verdict([["Car"]], [["A"]], kept)).rejects.toMatchObject({ kind: "notAvailable" });
    await expect(verdict([["Car"]], [["A"]], kept)).resolves.toHaveLength(2);
  });

  test("no tables are read for a blank key, or for a figure that no thread is near", async () => {
    const read = jest.fn(() => Promise.resolve());
    await expect(whenLoaded("VERDICT", loadCars, read)([["Car"]], [["A"]], 0)).rejects.toMatchObject({ kind: "notAvailable" });
    await expect(whenLoaded("THREAD", () => import("../../src/functions/thread-functions"), read)(1.9, 3, "in", null)).rejects.toMatchObject({ kind: "notAvailable" });
    expect(read).not.toHaveBeenCalled();
  });
});

describe("while a formula is being typed", () => {
  test("functions over tables load nothing, read nothing and say when they are worked out", async () => {
    const load = jest.fn(loadCars);
    const read = jest.fn(() => Promise.resolve());
    await expect(whenLoaded("RUNS", load, read)([["Car"]], [["A"]], "PLUMB-1", invocation(true))).rejects.toMatchObject({ kind: "notAvailable", message: "PLUMB.RUNS is worked out when the formula is entered, not while it is being typed." });
    expect([load, read].map(({ mock }) => mock.calls.length)).toEqual([0, 0]);
  });

  test("functions over single figures answer: an inlet of 800 through a split of 400 and slope 0.5 is 400 + 0.5 × 400", async () => {
    await expect(whenLoaded("VALVEOUT", () => Promise.resolve(physics))(800, 400, 0.5, null, null, null, null, invocation(true))).resolves.toBe(600);
  });

  test("but read no tables for a key that is not known", async () => {
    const read = jest.fn(() => Promise.resolve());
    const adapt = whenLoaded("ADAPT", () => import("../../src/functions/thread-functions"), read);
    await expect(adapt("3/8-24", "inverted-flare-45", "7/16-24", "inverted-flare-45", "PLUMB-1", null, null, invocation(true))).rejects.toMatchObject({ kind: "notAvailable" });
    expect(read).not.toHaveBeenCalled();
  });
});
