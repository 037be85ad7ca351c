import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { demoDocument } from "../src/embedded/demo-document";
import { openGrid } from "../src/embedded/grid/grid";
import { productFunctions } from "../src/embedded/product-functions";
import { isCellError, type SheetCell, type WorkbookDocument } from "../src/workbook/document";
import { readXlsx } from "../src/workbook/xlsx/read";
import { writeXlsx } from "../src/workbook/xlsx/write";
import { gridLibrary } from "./grid-library";
import { printedComplaints } from "./printed-sheets";

/*
 * Opens the demo workbook in LibreOffice, without a window, and looks at what comes out: the tables and value sheets whole,
 * one-cell results kept, the sheets that are printed one page wide. LibreOffice cannot keep our spilled results (it shows #NAME? there), so those are checked in the file
 * we wrote: each cell of a spill must carry its value. LIBREOFFICE names another program than soffice on the search path.
 */

const program = process.env["LIBREOFFICE"] ?? "soffice";
const folder = mkdtempSync(join(tmpdir(), "plumbline-libreoffice-"));

const valueSheet = "Quote & cuts";
const awkwardRows = [["3/16", "007", "=1+1", "1/2-20"], ["TRUE", true, 4.25, "1E5"], ["½ in <tube>", "a \"b\"", -12, "10:30"]];

try {
  const complaints = check();
  for (const complaint of complaints.slice(0, 20)) console.error(complaint);
  if (complaints.length > 20) console.error(`… and ${String(complaints.length - 20)} more.`);
  if (complaints.length > 0) process.exitCode = 1;
} catch (problem) {
  console.error(problem instanceof Error ? problem.message : problem);
  process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function check(): readonly string[] {
  const version = soffice(["--version"]).trim();
  const written = workbook();
  const file = join(folder, "demo.xlsx");
  writeFileSync(file, writeXlsx(written));
  const ours = readXlsx(readFileSync(file));
  const theirs = readXlsx(convertedWorkbook(file));
  const complaints = [...spillComplaints(ours, written), ...sheetComplaints(ours, theirs), ...textComplaints(file), ...guideComplaints(), ...printedComplaints(folder, soffice)];
  const cells = ours.sheets.reduce((sum, { cells: each }) => sum + each.size, 0);
  if (complaints.length === 0) console.log(`${version} opens the workbook and keeps it: ${String(ours.sheets.length)} sheets, ${String(cells)} cells compared, and the printed sheets are one page wide.`);
  return complaints;
}

/** The demo, with one-cell results of three kinds and a sheet of values that a spreadsheet likes to change. */
function workbook(): WorkbookDocument {
  const demo = demoDocument();
  const single = new Map<string, SheetCell>([
    ["A1", { value: "", formula: "=PLUMB.CATALOG(Nuts[#All])" }],
    ["A2", { value: "", formula: '=ROWS(PLUMB.THREAD(0.37,24))' }],
    ["A3", { value: "", formula: '=INDEX(PLUMB.THREAD(0.37,24),2,1)&" ""fits"""' }],
  ]);
  const grid = openGrid(gridLibrary, { ...demo, sheets: [...demo.sheets, { name: "Single", cells: single, tables: [] }] }, productFunctions);
  grid.writeSheet(valueSheet, awkwardRows);
  return grid.document();
}

function convertedWorkbook(file: string): Uint8Array {
  const out = join(folder, "out");
  mkdirSync(out);
  soffice(["--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", out, file]);
  return readFileSync(join(out, "demo.xlsx"));
}

/** Spilled results in our own file: every cell of every spill has the value it had in the grid. */
function spillComplaints(ours: WorkbookDocument, written: WorkbookDocument): string[] {
  const spills = ours.sheets.flatMap(({ cells }) => [...cells.values()].filter(({ spill }) => spill));
  if (spills.length < 4) return [`Only ${String(spills.length)} spilled results are marked in the file.`];
  return compared(written, ours, ({ formula, spilled }) => formula !== undefined || spilled === true, "the file we wrote");
}

/** In what LibreOffice saved again: everything but spilled results. */
function sheetComplaints(ours: WorkbookDocument, theirs: WorkbookDocument): string[] {
  const missing = ours.sheets.filter(({ name }) => !theirs.sheets.some((sheet) => sheet.name === name)).map(({ name }) => `LibreOffice lost sheet ${name}.`);
  return [...missing, ...compared(ours, theirs, ({ spill, spilled }) => !spill && !spilled, "LibreOffice's copy")];
}

function compared(expected: WorkbookDocument, found: WorkbookDocument, isMeant: (cell: SheetCell) => boolean, where: string): string[] {
  return expected.sheets.flatMap(({ name, cells }) => {
    const others = found.sheets.find((sheet) => sheet.name === name)?.cells;
    return [...cells].flatMap(([address, cell]) => {
      const other = others?.get(address)?.value ?? "";
      return !isMeant(cell) || say(other) === say(cell.value) ? [] : [`${name}!${address} is ${say(cell.value)}, but ${say(other)} in ${where}.`];
    });
  });
}

/** A number may come back rounded to the 15 digits of a spreadsheet. */
function say(value: SheetCell["value"]): string {
  if (isCellError(value)) return value.error;
  return typeof value === "number" ? String(Number(value.toPrecision(14))) : JSON.stringify(value);
}

/** The value sheet as LibreOffice shows it: what the cells look like, not only what they hold. */
function textComplaints(file: string): string[] {
  const out = join(folder, "csv");
  mkdirSync(out);
  // Comma, double quote, UTF-8, all sheets into files of their own. Source: LibreOffice's list of CSV filter options.
  soffice(["--convert-to", "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1", "--outdir", out, file]);
  const shown = readFileSync(join(out, `demo-${valueSheet}.csv`), "utf8").trim();
  const expected = '3/16,007,=1+1,1/2-20\nTRUE,TRUE,4.25,1E5\n½ in <tube>,"a ""b""",-12,10:30';
  return shown === expected ? [] : [`${valueSheet} shows in LibreOffice as\n${shown}\ninstead of\n${expected}`];
}

/** What a user of LibreOffice must be told: there our spilled results show as #NAME?. */
function guideComplaints(): string[] {
  const root = fileURLToPath(new URL("..", import.meta.url));
  const pages = ["README.md", ...(existsSync(join(root, "docs")) ? readdirSync(join(root, "docs")).map((name) => join("docs", name)) : [])];
  const says = (page: string): boolean => page.endsWith(".md") && existsSync(join(root, page)) && /LibreOffice[^.]*#NAME\?/.test(readFileSync(join(root, page), "utf8"));
  return pages.some(says) ? [] : ["No sentence of README.md or docs/*.md says that LibreOffice shows #NAME? in place of our spilled results."];
}

function soffice(words: readonly string[]): string {
  // A profile of its own, so that a LibreOffice that is open does not take the work over and lose it.
  const profile = `-env:UserInstallation=${pathToFileURL(join(folder, "profile")).href}`;
  const { status, stdout, stderr, error } = spawnSync(program, [profile, "--headless", "--norestore", ...words], { encoding: "utf8", timeout: 180_000 });
  if (error && "code" in error && error.code === "ENOENT") {
    throw new Error(`LibreOffice is missing: there is no program ${program}. On Debian: apt-get install libreoffice-calc-nogui.`);
  }
  if (error) throw error;
  if (status !== 0 || /error/i.test(stderr)) throw new Error(`LibreOffice failed (${String(status)}): ${stderr.trim() || stdout.trim()}`);
  return stdout;
}
