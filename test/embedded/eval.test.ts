import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ExcelJS from "exceljs";
import { demoDocument, evaluateFormula, gridLibrary, productFunctions } from "../../scripts/eval-parts";
import { readXlsx } from "../../src/workbook/xlsx/read";

// Each of these starts a program and calculates a workbook.
jest.setTimeout(60_000);

const nutHeadings = ["Nut", "Tube (in)", "Thread", "Seat", "Gender"];
const repository = join(__dirname, "../..");
const folder = mkdtempSync(join(tmpdir(), "plumbline-eval-"));

/** Runs the command as the npm script does. */
function evaluate(...words: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, ["--import", "tsx", "scripts/eval.ts", ...words], { cwd: repository, encoding: "utf8" });
  return { status, answer: stdout === "" ? undefined : (JSON.parse(stdout) as unknown), stderr };
}

const inDemo = (formula: string) => evaluateFormula(gridLibrary, demoDocument(), productFunctions, formula);

async function workbook(name: string, fill: (book: ExcelJS.Workbook) => void): Promise<string> {
  const book = new ExcelJS.Workbook();
  fill(book);
  const file = join(folder, name);
  writeFileSync(file, new Uint8Array(await book.xlsx.writeBuffer()));
  return file;
}

test("the demo workbook's cars, one row each under a heading", () => {
  const { status, answer } = evaluate("=PLUMB.VERDICT(Cars[#Headers], Cars, Catalog!B2)");
  expect(status).toBe(0);
  expect(answer).toHaveLength(30); // headings and 29 cars
  expect((answer as string[][])[0]?.slice(0, 2)).toEqual(["Car", "Verdict"]);
});

test("a single value is one row of one, and the grid's own functions work", () => {
  expect(inDemo('=SUM(1,2)&" of "&ROWS(Cars)')).toEqual({ rows: [["3 of 29"]] });
  expect(inDemo("=INDEX(PLUMB.TUBING(Cars[#Headers],Cars,Catalog!B2),1,1)")).toEqual({ rows: [["Material"]] });
  expect(inDemo("=Cars[@Car]")).toEqual({ rows: [["Car 1"]] });
  expect(inDemo("2*3")).toEqual({ rows: [[6]] });
});

test("a formula that cannot answer says why", () => {
  expect(evaluate("=PLUMB.RUNS(Carz[#Headers], Cars, Catalog!B2)")).toEqual({ status: 1, answer: { error: "#NAME?", message: "No table is named Carz." }, stderr: "" });
  expect(inDemo('=PLUMB.RUNS(Cars[#Headers], Cars, "no key")')).toMatchObject({ error: "#N/A" });
  expect(inDemo("=PLUMB.RUNS(Cars[#Headers], Cars, Nowhere!B2)")).toMatchObject({ error: "#REF!" });
  expect(inDemo("=SUM(")).toMatchObject({ error: "#NAME?" });
});

test("a workbook by another program: no stored values, the catalogue's key in any cell, formulas of ours in the file", async () => {
  const file = await workbook("foreign.xlsx", (book) => {
    const sheet = book.addWorksheet("Odd place");
    sheet.addTable({ name: "MyNuts", ref: "C4", headerRow: true, columns: nutHeadings.map((name) => ({ name })), rows: [["N-1", 0.1875, "3/8-24", "inverted-flare-45", "male"]] });
    sheet.getCell("K9").value = { formula: "PLUMB.CATALOG(MyNuts[#All])" };
  });
  expect(evaluate("--workbook", file, '=ROWS(PLUMB.FITTING(3/16,"3/8-24","inverted-flare-45",\'Odd place\'!K9))>1')).toMatchObject({ status: 0, answer: [[true]] });
  expect(evaluateFormula(gridLibrary, readXlsx(readFileSync(file)), productFunctions, "=MyNuts[#Headers]")).toEqual({ rows: [nutHeadings] });
});

test("a command that cannot be followed says how to do it", () => {
  const refused = (...words: string[]) => {
    const { status, answer, stderr } = evaluate(...words);
    expect([status, answer]).toEqual([2, undefined]);
    expect(stderr).toMatch(/\nUsage: /);
    return stderr.split("\n")[0];
  };
  expect(refused()).toBe("There is no formula.");
  expect(refused("--workbook")).toBe("--workbook needs a file.");
  expect(refused("--workbook", "nowhere.xlsx", "=1")).toBe("There is no file nowhere.xlsx.");
  expect(refused("--workbook", join(repository, "package.json"), "=1")).toMatch(/is not an .xlsx workbook/);
  expect(refused("=1", "+2")).toMatch(/more than one formula/);
  expect(refused("--wrokbook", "=1")).toBe("There is no option --wrokbook.");
});
