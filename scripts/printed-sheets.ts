/** The sheets that are printed and sent, as LibreOffice makes them into PDF: each one page wide, each part on the page it begins. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { demoTables } from "../src/catalogue/demo";
import { parseCars } from "../src/catalogue/parse-cars";
import { parseCatalogue } from "../src/catalogue/parse-catalogue";
import { benchJobs, planOnTheBench } from "../src/core/bench-plan";
import type { CarReport } from "../src/core/report";
import { openGrid } from "../src/embedded/grid/grid";
import { productFunctions } from "../src/embedded/product-functions";
import { reportOnRow } from "../src/functions/reports";
import { cutListSheet } from "../src/workbook/sheets/cut-list-sheet";
import { quoteSheet, type QuotedCar } from "../src/workbook/sheets/quote-sheet";
import type { SheetContent } from "../src/workbook/port";
import { writeXlsx } from "../src/workbook/xlsx/write";
import { gridLibrary } from "./grid-library";

interface Printed {
  readonly name: string;
  readonly content: SheetContent;
  /** Pages, where the content says how many; a long list takes what it takes. */
  readonly pages?: number;
}

/** @param soffice runs LibreOffice with these words */
export function printedComplaints(folder: string, soffice: (words: readonly string[]) => unknown): string[] {
  const sheets = printedSheets();
  const files = sheets.map(({ name, content }) => {
    const grid = openGrid(gridLibrary, { sheets: [{ name: "Blank", cells: new Map(), tables: [] }] }, productFunctions);
    grid.writeSheet(name, content);
    const file = join(folder, `${name}.xlsx`);
    writeFileSync(file, writeXlsx({ sheets: grid.document().sheets.slice(1) }));
    return file;
  });
  soffice(["--convert-to", "pdf", "--outdir", folder, ...files]);
  return sheets.flatMap((sheet) => pageComplaints(sheet, readFileSync(join(folder, `${sheet.name}.pdf`), "latin1")));
}

function pageComplaints({ name, content, pages }: Printed, pdf: string): string[] {
  // One dictionary a page, uncompressed, and its size in points beside it. Source: ISO 32000-1, 7.7.3.3, and as LibreOffice writes it.
  const printed = [...pdf.matchAll(/\/Type\s*\/Page\b(?!s)/g)].length;
  const sizes = [...pdf.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)].map(([, width, height]) => Number(width) > Number(height));
  const wrongWay = sizes.length === 0 || sizes.some((landscape) => landscape !== (content.page?.landscape ?? false));
  return [
    ...(wrongWay ? [`${name} prints ${content.page?.landscape ? "upright" : "lengthwise"}.`] : []),
    ...(pages !== undefined && printed !== pages ? [`${name} takes ${String(printed)} pages instead of ${String(pages)}: it is not one page wide, or breaks elsewhere.`] : []),
    ...(pages === undefined && printed > MOST_PAGES ? [`${name} takes ${String(printed)} pages: it is not one page wide.`] : []),
  ];
}

/** The cut list of all demo cars takes about 300 rows; landscape pages hold some 30 of 18 points. */
const MOST_PAGES = 12;

function printedSheets(): readonly Printed[] {
  const cars = demoTables.find(({ name }) => name === "Cars");
  const { catalogue } = parseCatalogue(demoTables.filter(({ name }) => !["Cars", "Usage", "Pipeline"].includes(name)));
  const reports = parseCars(cars?.headings ?? [], cars?.rows ?? []).cars.map((row) => reportOnRow(catalogue, row)).filter((report): report is CarReport => report !== undefined);
  const held = reports.find(({ verdict }) => verdict === "stop");
  const sound = reports.find(({ verdict, kit }) => verdict === "sound" && (kit.chosen?.madeUp.length ?? 0) > 0);
  if (!held || !sound) throw new Error("The demo has no car on hold, or no sound one that is made up.");
  const head = { date: "November 25, 2026", validUntil: "December 25, 2026", revision: 1 };
  const quote = (name: string, quoted: readonly QuotedCar[], pages: number): Printed => ({ name, content: quoteSheet(catalogue, quoted, head), pages });
  const cutList = (name: string, of: readonly CarReport[], pages?: number): Printed => {
    const { jobs, leftOut } = benchJobs(of.map(({ car, runs }) => ({ car: car.name, runs })), catalogue.settings, catalogue.tube);
    const list = { plans: jobs.map((job) => planOnTheBench(job)), leftOut, preBent: 0, held: [] };
    return { name, content: cutListSheet(catalogue.settings, list, { date: head.date, cars: name }), ...(pages === undefined ? {} : { pages }) };
  };
  return [
    quote("Sound", [{ report: sound, picture }], 2), quote("Held", [{ report: held, picture }], 2), quote("Without drawing", [{ report: sound }], 1), quote("Two cars", [{ report: sound, picture }, { report: held, picture }], 5),
    cutList("Cuts of one", [sound], 1), cutList("Cuts of all", reports),
  ];
}

/** Any picture does here, as tall as the drawing of a car. */
const picture = { png: readFileSync(new URL("../assets/icon-80.png", import.meta.url)).toString("base64"), alt: "stands for the drawing", width: 400, height: 1000 };
