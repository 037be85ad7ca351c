import { DEMO_DATES, DEMO_TODAY, demoTables } from "../catalogue/demo";
import { catalogueTables } from "../catalogue/table-specs";
import { cellAddress } from "../workbook/address";
import { type CellValue, type DocumentSheet, type SheetCell, type WorkbookDocument } from "../workbook/document";

/**
 * The demo workbook: a sheet for each table of the invented shop, and sheets with our formulas over them.
 * @param today the spreadsheet's day number; its history and its quotes move to it by whole weeks. Left out, they stay where they were written
 */
export function demoDocument(today = DEMO_TODAY): WorkbookDocument {
  const later = Math.floor((today - DEMO_TODAY) / DAYS_PER_WEEK) * DAYS_PER_WEEK;
  const tables = new Map(demoTables.map((table) => [table.name, tableSheet(movedOn(table, later))]));
  const cars = tables.get("Cars");
  tables.delete("Cars");
  const catalogTables = [...tables.keys()].filter(isOfCatalogue);
  return { sheets: [...(cars ? [cars] : []), ...reports.map(reportSheet), ...stockSheets(DEMO_TODAY + later), catalogSheet(catalogTables), ...tables.values()] };
}

/** A table with its days so many days later. */
function movedOn({ name, headings, rows }: DemoTable, days: number): DemoTable {
  const isDay = (column: number): boolean => isDate(headings[column]);
  return { name, headings, rows: rows.map((row) => row.map((cell, column) => (isDay(column) && typeof cell === "number" ? cell + days : cell))) };
}

const isDate = (heading: string | undefined): boolean => heading !== undefined && DEMO_DATES.includes(heading);

const DAYS_PER_WEEK = 7;
const DAY_FORMAT = "yyyy-mm-dd";

/** Tables that are answered about, like Seen, are no part of the catalogue. */
const isOfCatalogue = (name: string): boolean => catalogueTables.some((spec) => spec.name === name);

interface Report {
  readonly name: string;
  readonly title: string;
  readonly formula: string;
  readonly widths: readonly number[];
}

const reports: readonly Report[] = [
  { name: "Verdict", title: "One row a car: does it hold, and what is still open", formula: "VERDICT", widths: [12, 10, 8, 9, 9, 17, 26, 8, 11, 10, 60] },
  { name: "Runs", title: "Every hard line of every car, with a nut and a flare at each end", formula: "RUNS", widths: [12, 6, 14, 12, 14, 12, 9, 10, 10, 14, 12, 12, 18, 22, 30, 18, 22, 30, 50, 10, 8, 16] },
  { name: "Flags", title: "What will not work, car by car, and what cures it", formula: "CHECK", widths: [12, 26, 11, 34, 90, 70, 40] },
  { name: "Tubing", title: "Tube to cut for all cars, by material and size", formula: "TUBING", widths: [16, 12, 12, 12, 14, 12, 28, 14, 10, 8, 10, 11, 12, 24, 10, 8] },
];

/** A title, and the formula from the third row on, so that it has the sheet to itself to fill. */
function reportSheet({ name, title, formula, widths }: Report): DocumentSheet {
  const headings = widths.map((_, column): [string, SheetCell] => [cellAddress(2, column), { value: "", bold: true }]);
  const cells = new Map<string, SheetCell>([
    ["A1", { value: title, bold: true }],
    ...headings,
    ["A3", { value: "", bold: true, formula: `=PLUMB.${formula}(Cars[#Headers],Cars,Catalog!B2)` }],
  ]);
  return { name, cells, tables: [], columnWidths: widths, frozen: { rows: 3, columns: 0 } };
}

/** The stock formulas, each under the day that they take for today; a typed day, so that the workbook does not change by itself. */
function stockSheets(today: number): DocumentSheet[] {
  const sheet = (name: string, title: string, { formula, widths, days }: { formula: string; widths: readonly number[]; days: string }): DocumentSheet => {
    const headings = widths.map((_, column): [string, SheetCell] => [cellAddress(3, column), { value: "", bold: true }]);
    const dayCells = Array.from({ length: STOCK_ROWS }, (_, row): [string, SheetCell] => [`${days}${row + 5}`, { value: "", format: DAY_FORMAT }]);
    const cells = new Map<string, SheetCell>([
      ["A1", { value: title, bold: true }], ["A2", { value: "Today" }], ["B2", { value: today, format: DAY_FORMAT }],
      ...headings, ...dayCells, ["A4", { value: "", bold: true, formula }],
    ]);
    return { name, cells, tables: [], columnWidths: widths, frozen: { rows: 4, columns: 0 } };
  };
  return [
    sheet("Demand", "Tube that the open quotes will need, by week", { formula: "=PLUMB.DEMAND(Pipeline[#Headers],Pipeline,Cars[#Headers],Cars,Catalog!B2,B2,8)", widths: [18, 12, 12, 12, 15, 9, 70], days: "C" }),
    sheet("Reorder", "What to order today, tube by tube", { formula: "=PLUMB.REORDER(Tube[#Headers],Tube,Usage[#Headers],Usage,Catalog!B2,B2)", widths: [18, 17, 10, 14, 20, 11, 12, 18, 20, 19, 7, 14, 13, 13, 20, 15, 14, 50, 40], days: "N" }),
  ];
}

/** So many rows of an answer show their days as days. */
const STOCK_ROWS = 80;

/** The catalogue's key: every other formula takes this cell, and so follows when a price or a port changes. */
function catalogSheet(tableNames: readonly string[]): DocumentSheet {
  const ranges = tableNames.map((name) => `${name}[#All]`).join(",");
  const cells = new Map<string, SheetCell>([
    ["A1", { value: "The catalogue, read from the tables behind this sheet", bold: true }],
    ["A2", { value: "Catalogue key" }],
    ["B2", { value: "", formula: `=PLUMB.CATALOG(${ranges})` }],
  ]);
  return { name: "Catalog", cells, tables: [], columnWidths: [18, 44] };
}

interface DemoTable {
  readonly name: string;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
}

function tableSheet({ name, headings, rows }: DemoTable): DocumentSheet {
  const cells = new Map<string, SheetCell>();
  [headings, ...rows].forEach((row, down) => {
    row.forEach((value, right) => {
      if (value !== "") cells.set(cellAddress(down, right), typeof value === "number" && isDate(headings[right]) ? { value, format: DAY_FORMAT } : { value });
    });
  });
  const table = { name, firstRow: 0, firstColumn: 0, rows: rows.length, columns: headings.length };
  return { name, cells, tables: [table], frozen: { rows: 1, columns: 0 }, columnWidths: headings.map((heading, column) => widthFor(heading, rows.map((row) => row[column]))) };
}

/** Wide enough for most of what the column holds, and not so wide that one long note pushes the rest away. */
function widthFor(heading: string, values: readonly (CellValue | undefined)[]): number {
  const longest = Math.max(heading.length + boldRoom, ...values.map((value) => String(value ?? "").length));
  return Math.min(36, Math.max(9, longest + 2));
}

/** Characters that a bold heading is wider than the same plain text. */
const boldRoom = 2;
