import { gridLibrary as library } from "../../scripts/grid-library";
import { cellAddress } from "../../src/workbook/address";
import { type CellValue, type DocumentSheet, type SheetCell, type WorkbookDocument } from "../../src/workbook/document";
import { type FunctionSet } from "../../src/embedded/grid/functions";
import { type Grid, openGrid } from "../../src/embedded/grid/grid";

/** Two functions with the manners of ours: PAIRS spills and shows what it was given, REFUSE throws. */
export const sampleFunctions: FunctionSet = {
  namespace: "TEST",
  metadata: [
    { id: "ECHO", name: "ECHO", description: "Gives the range back.", parameters: [{ name: "range", description: "", type: "any", dimensionality: "matrix" }] },
    {
      id: "SHOW", name: "SHOW", description: "Shows its arguments as JSON.",
      parameters: [
        { name: "text", description: "", type: "string" },
        { name: "number", description: "", type: "number", optional: true },
      ],
    },
    {
      id: "MANY", name: "MANY", description: "Shows any number of ranges as JSON.",
      parameters: [
        { name: "first", description: "", type: "any", dimensionality: "matrix" },
        { name: "tables", description: "", type: "any", dimensionality: "matrix", optional: true, repeating: true },
      ],
    },
    { id: "REFUSE", name: "REFUSE", description: "Throws.", parameters: [{ name: "kind", description: "", type: "string" }] },
    { id: "ODD", name: "ODD", description: "Gives odd values.", parameters: [] },
  ],
  functions: {
    ECHO: (range: unknown[][]) => range,
    SHOW: (...values: unknown[]) => JSON.stringify(values),
    MANY: (...values: unknown[]) => JSON.stringify(values),
    REFUSE: (kind: string) => {
      if (kind === "plain") throw new TypeError("broken");
      throw Object.assign(new Error("because we say so"), { kind });
    },
    ODD: () => [[null, NaN, "3/16"], [true]],
  },
};

export interface SampleTable {
  readonly name: string;
  readonly rows: readonly (readonly CellValue[])[];
}

/** A sheet named as the table, with the table in A1. */
export function tableSheet({ name, rows }: SampleTable): DocumentSheet {
  const cells = new Map<string, SheetCell>();
  rows.forEach((row, down) => {
    row.forEach((value, right) => {
      if (value !== "") cells.set(cellAddress(down, right), { value });
    });
  });
  return { name, cells, tables: [{ name, firstRow: 0, firstColumn: 0, rows: rows.length - 1, columns: rows[0]?.length ?? 0 }] };
}

/** A sheet of formulas and constants by address. */
export const plainSheet = (name: string, entries: Readonly<Record<string, CellValue>>): DocumentSheet => ({
  name,
  tables: [],
  cells: new Map(
    Object.entries(entries).map(([address, entry]): [string, SheetCell] => [
      address,
      typeof entry === "string" && entry.startsWith("=") ? { value: "", formula: entry } : { value: entry },
    ]),
  ),
});

export const cars: SampleTable = {
  name: "Cars",
  rows: [
    ["Car", "Year", "Length (in)", "Tube"],
    ["A", 11, 3.5, "3/16"],
    ["B", 12, "", "007"],
    ["C", 13, 5.5, "=1+1"],
  ],
};

/** Cars and a sheet "Work" with these cells, opened in a grid. */
export const openSample = (entries: Readonly<Record<string, CellValue>>): Grid => openDocument(sampleDocument(entries));

export const sampleDocument = (entries: Readonly<Record<string, CellValue>>): WorkbookDocument => ({
  sheets: [tableSheet(cars), plainSheet("Work", entries)],
});

export const openDocument = (document: WorkbookDocument): Grid => openGrid(library, document, sampleFunctions);
