import { demoTables } from "../../src/catalogue/demo";
import { tableSpecs } from "../../src/catalogue/table-specs";
import { memoryWorkbook } from "../../src/workbook/memory";
import { setUpTables } from "../../src/workbook/set-up";
import { setUpGroups } from "../../src/workbook/set-up-groups";
import { followWorkbook, type WorkbookReading } from "../../src/workbook/workbook-reports";

const all = setUpGroups.flatMap(({ tables }) => tables);

test("every table that is read can be set up, each once", () => {
  expect([...all].sort()).toEqual(tableSpecs.map(({ name }) => name).sort());
});

test.each(["us", "metric"] as const)("all tables in %s units are written, and are read as what they are, without one complaint", async (units) => {
  const book = memoryWorkbook();
  await book.writeTables(setUpTables({ tables: all, units, samples: false }));
  expect(await book.tableNames()).toHaveLength(all.length);
  const { tableErrors, carTables, catalogue, tables } = await read(book);
  expect([tableErrors, carTables, catalogue.settings.units]).toEqual([[], ["Cars"], units]);
  expect([...tables].sort()).toEqual([...all].sort());
});

test("headings carry the units of the shop", () => {
  const headings = (units: "us" | "metric", name: string) => setUpTables({ tables: [name], units, samples: false })[0]?.headings;
  expect(headings("us", "Boosters")).toEqual(["Component", "Diaphragm (in)", "Diaphragms", "Gain", "Jump-in (lbf)", "Cut-in (lbf)", "Spring (lbf)", "Vacuum side (in³)", "Air side (in³)"]);
  expect(headings("metric", "Boosters")).toEqual(["Component", "Diaphragm (mm)", "Diaphragms", "Gain", "Jump-in (N)", "Cut-in (N)", "Spring (N)", "Vacuum side (cm³)", "Air side (cm³)"]);
  expect(headings("us", "Cars")?.at(-1)).toBe("Notes");
});

test("a column of few words has them as a list", () => {
  const lists = setUpTables({ tables: ["Ports"], units: "us", samples: false })[0]?.lists ?? [];
  expect(lists.find(({ column }) => column === "Gender")?.values).toEqual(["female", "male"]);
  expect(lists.find(({ column }) => column === "Plugged")?.values).toEqual(["yes", "no"]);
});

test("the sample car stands as in the demo, with the same runs, and nothing is missing for it", async () => {
  const book = memoryWorkbook();
  await book.writeTables(setUpTables({ tables: all, units: "metric", samples: true }));
  const [line, ...others] = (await read(book)).cars;
  const [inDemo] = (await read(memoryWorkbook(demoTables.map((table) => ({ ...table, sheet: table.name }))))).cars;
  expect([others, line?.verdict]).toEqual([[], inDemo?.verdict]);
  expect(line?.report?.runs.map(({ length }) => length)).toEqual(inDemo?.report?.runs.map(({ length }) => length));
  expect(line?.findings.map(({ code }) => code)).toEqual(inDemo?.findings.map(({ code }) => code));
});

test("only the tables wanted are made", () => {
  expect(setUpTables({ tables: ["Ports", "Cars"], units: "us", samples: false }).map(({ name }) => name)).toEqual(["Cars", "Ports"]);
});

const read = (book: ReturnType<typeof memoryWorkbook>): Promise<WorkbookReading> => new Promise((resolve, reject) => {
  const following = followWorkbook(book, { reading: (reading) => { following.stop(); resolve(reading); }, progress: () => undefined, held: () => undefined, failed: reject });
});
