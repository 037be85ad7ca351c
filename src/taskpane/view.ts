/** What a view of the panel is, and what it may ask of the panel. */
import type { CellValue, TablePlace, WorkbookPort } from "../workbook/port";
import type { CarLine, WorkbookReading } from "../workbook/workbook-reports";
import type { ExcelCare } from "./settings/excel-care";

export interface View {
  readonly id: string;
  readonly name: string;
  readonly content: HTMLElement;
  /** Brings the content up to date. */
  show(reading: WorkbookReading): void;
  /** The user went to a row of a table that is no car's. */
  stand?(place: TablePlace): void;
}

export type MakeView = (actions: ViewActions) => View;

export interface ViewActions {
  /** Selects a row of a table in the sheet, or its cell under a heading; 0 is the first row under the headings. */
  readonly selectRow: (table: string, row: number, column?: string) => void;
  /** Writes one cell; answers what it held, or undefined when that failed and the user was told why. */
  readonly writeCell: (place: TablePlace, value: CellValue) => Promise<CellValue | undefined>;
  /**
   * Anything else that is done in the workbook, always after a click. Answers undefined when it failed and the user was told why.
   * @param failed what did not happen: "The quote was not written."
   */
  readonly inWorkbook: <T>(failed: string, work: (port: WorkbookPort) => Promise<T>) => Promise<T | undefined>;
  /** Names of the sheets of the workbook; none when it does not say. */
  readonly sheetNames: () => Promise<readonly string[]>;
  /** The car that the views of one car show: one choice for all of them. */
  readonly carOf: (reading: WorkbookReading) => CarLine | undefined;
  readonly chooseCar: (line: CarLine) => void;
  /** Shows another view, with the focus on it. */
  readonly turnTo: (view: string) => void;
  /** What can be done to a workbook in Excel only; left out elsewhere. */
  readonly excelCare?: ExcelCare | undefined;
}
