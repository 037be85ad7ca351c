/** A workbook as data: sheets with cells, tables and looks. What files are read into and written from. */
import { cellAddress } from "./address";

/** What a cell shows; "" is blank. */
export type CellValue = string | number | boolean;

/** An error a cell shows, as Excel names it ("#VALUE!", "#N/A", "#SPILL!"), with the reason when it is known. */
export interface CellError {
  readonly error: string;
  readonly message?: string;
}

/** A rectangle of cells; row and column count from 0. */
export interface CellArea {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** How cells look. What is absent is as in a new sheet. */
export interface CellStyle {
  readonly bold?: boolean;
  readonly italic?: boolean;
  /** Points. */
  readonly size?: number;
  /** "#rrggbb" in small letters, as the colour of the text. */
  readonly fill?: string;
  readonly colour?: string;
  readonly align?: "left" | "center" | "right";
  readonly wrap?: boolean;
  /** A thin rule above the cell. */
  readonly top?: boolean;
  /** A thin rule below the cell. */
  readonly bottom?: boolean;
  /** Number format code, such as "yyyy-mm-dd"; absent for General. */
  readonly format?: string;
}

export interface SheetPicture {
  /** The PNG file in base64. */
  readonly png: string;
  /** What it shows, for people who do not see it. */
  readonly alt: string;
  /** The cell its upper left corner stands in, from 0. */
  readonly row: number;
  readonly column: number;
  /** Pixels of 1/96 inch. */
  readonly width: number;
  readonly height: number;
}

/** How a sheet prints. */
export interface PageSetup {
  readonly landscape?: boolean;
  /** Shrunk until all columns stand on one page. */
  readonly fitWide?: boolean;
  /** Rows from the top that every page repeats. */
  readonly titleRows?: number;
  /** Text at the left of the foot of every page; the page number stands at the right. */
  readonly footer?: string;
  /** Rows that begin a page, from 0, in order. */
  readonly breaks?: readonly number[];
}

/** A list to choose from while typing; another text gets a warning, and is taken when the user insists. */
export interface ChoiceList {
  readonly area: CellArea;
  readonly values: readonly string[];
}

export interface SheetCell extends CellStyle {
  /** Typed in, or the last calculated result of the formula. */
  readonly value: CellValue | CellError;
  /** As typed, with "=" and with its structured references: "=PLUMB.RUNS(Cars[#Headers],Cars,Catalog!B2)". */
  readonly formula?: string;
  /** Size of the area a formula fills from this cell on; absent when it fills its own cell only. */
  readonly spill?: { readonly rows: number; readonly columns: number };
  /** Filled by the formula of another cell: never to be entered as a constant. */
  readonly spilled?: boolean;
}

/** A table with one heading row; its headings are the texts of that row's cells. */
export interface DocumentTable {
  readonly name: string;
  /** Row of the headings, from 0. */
  readonly firstRow: number;
  readonly firstColumn: number;
  /** Rows under the headings. */
  readonly rows: number;
  readonly columns: number;
}

export interface DocumentSheet {
  readonly name: string;
  /** By address, "A1". */
  readonly cells: ReadonlyMap<string, SheetCell>;
  readonly tables: readonly DocumentTable[];
  /** Widths in characters, from column A on; undefined is the default width. */
  readonly columnWidths?: readonly (number | undefined)[];
  /** Heights in points, from the first row on; undefined is as high as the text needs. */
  readonly rowHeights?: readonly (number | undefined)[];
  readonly hidden?: boolean;
  /** Rows and columns that stay in sight while the rest scrolls. */
  readonly frozen?: { readonly rows: number; readonly columns: number };
  readonly merges?: readonly CellArea[];
  readonly pictures?: readonly SheetPicture[];
  readonly page?: PageSetup;
  readonly lists?: readonly ChoiceList[];
}

export interface WorkbookDocument {
  readonly sheets: readonly DocumentSheet[];
  /** Defined names of the whole workbook and what they stand for, without "=". */
  readonly names?: readonly { readonly name: string; readonly formula: string }[];
  /** What the file it came from also held and this document does not, in the words of a user: "merged cells". */
  readonly leftOut?: readonly string[];
}

export const isCellError = (value: CellValue | CellError): value is CellError => typeof value === "object";

/** Headings of a table from left to right, as text; a blank heading is "". */
export function tableHeadings(sheet: DocumentSheet, table: DocumentTable): readonly string[] {
  return Array.from({ length: table.columns }, (_, column) => {
    const value = sheet.cells.get(cellAddress(table.firstRow, table.firstColumn + column))?.value ?? "";
    return isCellError(value) ? value.error : String(value);
  });
}
