/** What the demand for tube is read from: quotes still open, and tube used so far. Days are the spreadsheet's day numbers. */
import type { Metres } from "./quantity";

export interface OpenQuote {
  readonly quote: string;
  readonly car: string;
  /** That it becomes an order, 0 to 1. */
  readonly chance: number;
  readonly earliest?: number | undefined;
  readonly likely?: number | undefined;
  readonly latest?: number | undefined;
  /** Of cars like this one; undefined when the row does not say. */
  readonly quantity?: number | undefined;
}

export interface TubeUsed {
  readonly date: number;
  readonly tube: string;
  readonly length: Metres;
}
