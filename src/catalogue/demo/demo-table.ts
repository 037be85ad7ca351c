/** What a demo table is: a name, a heading row, and rows, as a user would type them. */
export type DemoCell = string | number | boolean;

export interface DemoTable {
  readonly name: string;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly DemoCell[])[];
}

/** Tube sizes in inches, named so that the tables read as the trade says them. */
export const T3_16 = 3 / 16;
export const T1_4 = 1 / 4;
export const T5_16 = 5 / 16;
export const T3_8 = 3 / 8;
