import { asTyped, catalogueFirst, isStuck } from "../../src/workbook/formula-repair";
import { excelRepair } from "../../src/workbook/excel/repair";
import type { Cell } from "./fake-excel/book";
import { FakeExcel } from "./fake-excel";

function open(cells: Readonly<Record<string, Partial<Cell>>>) {
  const excel = new FakeExcel([{ name: "Cars", sheet: "Cars", headings: ["Car"], rows: [["one"]] }, { name: "Nuts", sheet: "Nuts", headings: ["Nut"], rows: [] }]);
  const sheet = excel.addSheet("Runs");
  for (const [key, cell] of Object.entries(cells)) sheet.cells.set(key, { value: "", format: "General", ...cell });
  return { excel, sheet, repair: excelRepair(excel.run) };
}

test("stuck formulas of ours are entered again in one step, the catalogue's first, and nothing else is touched", async () => {
  const { excel, sheet, repair } = open({
    "2,0": { value: "#N/A", formula: "=PLUMB.RUNS(Cars[#Headers],Cars,B2)" },
    "1,1": { value: "#BUSY!", formula: "=plumb.catalog(Nuts[#All])" },
    "9,0": { value: "#NAME?", formula: "=_xldudf_PLUMB_THREAD(0.37,24)" },
    "10,0": { value: "#N/A", formula: "=MATCH(1,A1:A2)" },
    "11,0": { value: "#VALUE!", formula: "=PLUMB.CHECK(Cars)" },
    "12,0": { value: "#NAME?" },
  });
  const entered: string[] = [];
  const set = sheet.cells.set.bind(sheet.cells);
  sheet.cells.set = (key, cell) => { entered.push(`${key} ${cell.formula ?? ""}`); return set(key, cell); };
  expect([...(await repair.repairFormulas()).repaired].sort()).toEqual(["Runs!A10", "Runs!A3", "Runs!B2"]);
  expect(entered).toEqual(["1,1 =plumb.catalog(Nuts[#All])", "2,0 =PLUMB.RUNS(Cars[#Headers],Cars,B2)", "9,0 =PLUMB.THREAD(0.37,24)"]);
  expect(excel.host.syncs).toBe(4);
  excel.undo();
  expect(excel.sheetNamed("Runs").cells.get("2,0")?.value).toBe("#N/A");
});

test("a cell that another one fills gets no formula of its own, the one that fills it does", async () => {
  const { repair } = open({
    "2,0": { value: "#N/A", formula: "=PLUMB.RUNS(Cars)", filledBy: { row: 2, column: 0 } },
    "3,0": { value: "#N/A", formula: "=PLUMB.RUNS(Cars)", filledBy: { row: 2, column: 0 } },
  });
  expect((await repair.repairFormulas()).repaired).toEqual(["Runs!A3"]);
});

test("a workbook without stuck formulas costs two syncs and no step to undo", async () => {
  const { excel, repair } = open({ "0,0": { value: "Car", formula: "=PLUMB.RUNS(Cars)" } });
  expect(await repair.repairFormulas()).toEqual({ repaired: [], refused: [] });
  expect(excel.host.syncs).toBe(2);
});

test.each([["one long column", 1], ["many short ones", 20]])("more formulas than fit into one answer are read in parts, in %s: each once, and still one step to undo", async (_, columns) => {
  const stuck = Array.from({ length: 200 }, (__, index) => [`${Math.floor(index / columns)},${(index % columns) * 2}`, { value: index === 150 ? "Car" : "#N/A", formula: `=PLUMB.RUNS(Cars,"${"x".repeat(40)}",${index})` }] as const);
  const { excel, repair } = open(Object.fromEntries(stuck));
  excel.host.largest = 4000; // the formulas alone have some 13,000 characters
  const { repaired } = await repair.repairFormulas();
  expect([repaired.length, new Set(repaired).size]).toEqual([199, 199]);
  const cells = [...excel.sheetNamed("Runs").cells];
  expect(cells.every(([key, { formula }]) => formula === Object.fromEntries(stuck)[key]?.formula)).toBe(true);
  expect(cells.filter(([, { value }]) => value === "#N/A")).toEqual([]);
  excel.undo();
  expect([...excel.sheetNamed("Runs").cells].filter(([, { value }]) => value === "#N/A")).toHaveLength(199);
});

test("more formulas than fit into one request are entered in parts, and still one step to undo", async () => {
  const formula = (index: number): string => `=PLUMB.RUNS("${"x".repeat(8000)}",${index})`;
  const { excel, repair } = open(Object.fromEntries(Array.from({ length: 400 }, (_, index) => [`${index},0`, { value: "#N/A", formula: formula(index) }])));
  expect((await repair.repairFormulas()).repaired).toHaveLength(400);
  expect(excel.host.syncs).toBe(6); // sheets, cells, what fills them, and some 3.3 million characters in three parts
  excel.undo();
  expect([...excel.sheetNamed("Runs").cells.values()].filter(({ value }) => value === "#N/A")).toHaveLength(400);
});

test("one cell too large for an answer is an error, not an endless halving", async () => {
  const { excel, repair } = open({ "0,0": { value: "#N/A", formula: `=PLUMB.RUNS("${"x".repeat(200)}")` }, "5,0": { value: "#N/A", formula: "=PLUMB.RUNS(Cars)" } });
  excel.host.largest = 100;
  await expect(repair.repairFormulas()).rejects.toThrow("more than Excel gives at once");
});

test("a protected sheet is left as it is and named, the others are repaired", async () => {
  const { excel, sheet, repair } = open({ "0,0": { value: "#NAME?", formula: "=PLUMB.RUNS(Cars)" } });
  sheet.isProtected = true;
  excel.sheetNamed("Cars").cells.set("5,5", { value: "#NAME?", format: "General", formula: "=PLUMB.TUBING(Cars)" });
  expect(await repair.repairFormulas()).toEqual({ repaired: ["Cars!F6"], refused: ["Runs"] });
});

test("a workbook open for reading only says so", async () => {
  const { excel, repair } = open({ "0,0": { value: "#NAME?", formula: "=PLUMB.RUNS(Cars)" } });
  excel.isReadOnly = true;
  await expect(repair.repairFormulas()).rejects.toThrow("open for reading only");
});

test("an Excel that cannot tell which cell fills which says so, and nothing is entered", async () => {
  const { excel, sheet, repair } = open({ "0,0": { value: "#N/A", formula: "=PLUMB.RUNS(Cars)" } });
  excel.host.answerTo = (sync) => (sync === 3 ? "ApiNotFound" : undefined);
  await expect(repair.repairFormulas()).rejects.toThrow("This Excel is too old for that");
  expect(sheet.cells.get("0,0")?.value).toBe("#N/A");
});

test.each([
  ["=PLUMB.RUNS(A1)", "#NAME?", true], ["=SUM(PLUMB.VALVEOUT(1,2,3))", "#BUSY!", true], ["=PLUMB.RUNS(A1)", "Car", false],
  ["=PLUMB.RUNS(A1)", "#VALUE!", false], ["=VLOOKUP(1,A1:B2,2)", "#N/A", false], ["", "#N/A", false],
])("%s showing %s is stuck: %s", (formula, shown, expected) => expect(isStuck(formula, shown)).toBe(expected));

test("names as files hold them become names as typed, in every place", () => {
  expect(asTyped("=SUM(_xldudf_PLUMB_VALVEOUT(1),_xldudf_PLUMB_BURST(2))")).toBe("=SUM(PLUMB.VALVEOUT(1),PLUMB.BURST(2))");
  expect(catalogueFirst(["=PLUMB.RUNS(A1)", "=PLUMB.CATALOG(A1)", "=PLUMB.ASK(A1)"])).toEqual([1, 0, 2]);
});
