/** The same balance as a spreadsheet's own formulas, recalculated by LibreOffice without a window. */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { strToU8, unzipSync, zipSync } from "fflate";
import { columnLetters } from "../src/workbook/address";
import { ADHESIONS, DECELERATIONS, USES, type Brakes } from "./balance-cars";

export interface SpreadsheetBalance {
  readonly program: string;
  readonly formulas: number;
  /** Opening and saving the file with the formulas to be reckoned, less the same with their results. [ms] */
  readonly recalculation: number;
  readonly figure: (car: number, column: number) => number;
}

/** @returns undefined where LibreOffice is not installed */
export function spreadsheetBalance(brakes: Brakes, figures: Float64Array): SpreadsheetBalance | undefined {
  const program = process.env["LIBREOFFICE"] ?? "soffice";
  const version = spawnSync(program, ["--version"], { encoding: "utf8" });
  if (version.error) return undefined;
  const folder = mkdtempSync(join(tmpdir(), "plumbline-bench-"));
  try {
    const columns = formulaColumns(brakes);
    const reckoned = convert(program, folder, "formulas", sheetXml(figures, columns));
    const values = cellValues(reckoned.sheet);
    const plain = convert(program, folder, "values", sheetXml(figures, columns, values));
    const answers = columns.flatMap(({ isAnswer }, index) => (isAnswer ? [index] : []));
    return {
      program: (version.stdout.match(/LibreOffice [\d.]+/) ?? ["LibreOffice"])[0], formulas: columns.length * (figures.length / 4), recalculation: reckoned.milliseconds - plain.milliseconds,
      figure: (car, column) => values.get(`${columnLetters(4 + (answers[column] ?? 0))}${car + 1}`) ?? NaN,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

interface FormulaColumn {
  /** Of row 1; in the rows below its references move along. */
  readonly formula: string;
  readonly isAnswer: boolean;
}

/** Weight, front share, height and tyre stand in A to D; every formula gets a column of its own from E on. */
function formulaColumns({ torque, threshold: { front: tf, rear: tr }, split, slope, wheelbase, pedal }: Brakes): FormulaColumn[] {
  const columns: FormulaColumn[] = [];
  const add = (formula: string, isAnswer = false): string => `${columnLetters(3 + columns.push({ formula, isAnswer }))}1`;
  const weight = add(`A1*${0.45359237 * 9.80665}`);
  const front = add("B1/100");
  const height = add(`C1*${0.0254 / wheelbase}`);
  const [cf, cr] = [torque.front, torque.rear].map((one) => add(`${2 * one}/(D1*0.0254*${weight})`)) as [string, string];
  const zt = add(`${cf}*${tr - tf}`);
  const zs = add(`${cf}*${split - tf}+${cr}*${split - tr}`);
  const behind = add(`${cf}+${slope}*${cr}`);
  const pressureAt = (z: number): string => `IF(${z}<=${zt},${tf}+${z}/${cf},IF(${z}<=${zs},(${z}+${cf}*${tf}+${cr}*${tr})/(${cf}+${cr}),${split}+(${z}-${zs})/${behind}))`;
  const rearAt = (p: string): string => `MIN(${p},${split}+${slope}*(${p}-${split}))`;
  for (const z of Object.values(DECELERATIONS)) {
    const p = add(pressureAt(z), true);
    add(p, true);
    const rear = add(rearAt(p), true);
    const ff = add(`${cf}*(${p}-${tf})*${weight}`, true);
    const fr = add(`${cr}*MAX(0,${rear}-${tr})*${weight}`, true);
    add(`${fr}/(${ff}+${fr})`, true);
    add(`MAX(${pedal.cutIn},${pedal.cutIn}+(${p}*${pedal.area}-${pedal.jumpIn})/${pedal.gain},${p}*${pedal.area}-${pedal.most})/${pedal.ratio}`, true);
  }
  for (const z of USES) {
    const p = add(pressureAt(z));
    add(`${cf}*(${p}-${tf})/(${front}+${z}*${height})`, true);
    add(`${cr}*MAX(0,${rearAt(p)}-${tr})/(1-${front}-${z}*${height})`, true);
  }
  for (const mu of ADHESIONS) {
    const m = add(`${mu}*${height}`);
    const early = add(`${tf}+${mu}*${front}/(${cf}*(1-${m}))`);
    const even = add(`(${mu}*${front}+${cf}*${tf}-${m}*(${cf}*${tf}+${cr}*${tr}))/(${cf}-${m}*(${cf}+${cr}))`);
    const fronts = add(`IF(${early}<=${tr},${early},IF(${even}<=${split},${even},${split}+(${mu}*${front}+${m}*${zs}-${cf}*${split - tf})/(${cf}-${m}*${behind})))`);
    const evenRear = add(`(${mu}*(1-${front})+${cr}*${tr}+${m}*(${cf}*${tf}+${cr}*${tr}))/(${cr}+${m}*(${cf}+${cr}))`);
    const rears = add(`IF(${evenRear}<=${split},${evenRear},${split}+(${mu}*(1-${front})-${m}*${zs}-${cr}*${split - tr})/(${cr}*${slope}+${m}*${behind}))`);
    const p = add(`MIN(${fronts},${rears})`);
    add(`IF(${p}<=${tr},${cf}*(${p}-${tf}),IF(${p}<=${split},${cf}*(${p}-${tf})+${cr}*(${p}-${tr}),${zs}+${behind}*(${p}-${split})))/${mu}`, true);
  }
  return columns;
}

/** With values, the cells hold them instead of the formulas. */
function sheetXml(figures: Float64Array, columns: readonly FormulaColumn[], values?: ReadonlyMap<string, number>): string {
  const count = figures.length / 4;
  const xmlText = (formula: string): string => formula.replaceAll("<", "&lt;").replaceAll(">", "&gt;");
  const cell = (address: string, column: string, index: number, row: number): string => {
    if (values) return `<c r="${address}"><v>${values.get(address) ?? 0}</v></c>`;
    return `<c r="${address}"><f t="shared" si="${index}"${row === 1 ? ` ref="${column}1:${column}${count}">${xmlText(columns[index]?.formula ?? "")}</f>` : "/>"}</c>`;
  };
  const names = columns.map((_, index) => columnLetters(4 + index));
  const rows = Array.from({ length: count }, (_, car) => {
    const row = car + 1;
    const inputs = [0, 1, 2, 3].map((at) => `<c r="${columnLetters(at)}${row}"><v>${figures[car * 4 + at]}</v></c>`);
    return `<row r="${row}">${inputs.join("")}${names.map((name, index) => cell(`${name}${row}`, name, index, row)).join("")}</row>`;
  });
  return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${rows.join("")}</sheetData></worksheet>`;
}

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/** LibreOffice reckons every formula of a file that bears no results and no mark of another program. */
function convert(program: string, folder: string, name: string, sheet: string): { readonly milliseconds: number; readonly sheet: string } {
  const main = "application/vnd.openxmlformats-officedocument.spreadsheetml";
  const parts = {
    "[Content_Types].xml": `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="${main}.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="${main}.worksheet+xml"/></Types>`,
    "_rels/.rels": `${HEAD}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="r1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/_rels/workbook.xml.rels": `${HEAD}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="r1" Type="${OFFICE}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    "xl/workbook.xml": `${HEAD}<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="${OFFICE}"><sheets><sheet name="Balance" sheetId="1" r:id="r1"/></sheets></workbook>`,
    "xl/worksheets/sheet1.xml": sheet,
  };
  const file = join(folder, `${name}.xlsx`);
  writeFileSync(file, zipSync(Object.fromEntries(Object.entries(parts).map(([path, text]) => [path, strToU8(text)])), { level: 1 }));
  const out = join(folder, `${name}-out`);
  mkdirSync(out);
  const start = performance.now();
  const { status, stderr } = spawnSync(program, [`-env:UserInstallation=${pathToFileURL(join(folder, "profile")).href}`, "--headless", "--norestore", "--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", out, file], { encoding: "utf8", timeout: 600_000 });
  const milliseconds = performance.now() - start;
  if (status !== 0) throw new Error(`LibreOffice failed: ${stderr}`);
  const saved = unzipSync(new Uint8Array(readFileSync(join(out, `${name}.xlsx`))), { filter: (part) => part.name === "xl/worksheets/sheet1.xml" });
  return { milliseconds, sheet: new TextDecoder().decode(saved["xl/worksheets/sheet1.xml"]) };
}

function cellValues(sheet: string): Map<string, number> {
  const values = new Map<string, number>();
  for (const [, address = "", value = ""] of sheet.matchAll(/<c r="([A-Z]+\d+)"[^>]*>(?:<f[^>]*>[^<]*<\/f>|<f[^>]*\/>)?<v>([^<]*)<\/v>/g)) values.set(address, Number(value));
  return values;
}
