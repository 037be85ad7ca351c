/** What a view of the panel is, and what it may ask of the panel. */
import type { WorkbookReading } from "../workbook/workbook-reports";

export interface View {
  readonly id: string;
  readonly name: string;
  readonly content: HTMLElement;
  /** Brings the content up to date. */
  show(reading: WorkbookReading): void;
}

export interface ViewActions {
  /** Selects a row of a table in the sheet; 0 is the first row under the headings. */
  readonly selectRow: (table: string, row: number) => void;
}
