/** Lays rows out under headings, in the units of the workbook. */
import type { CellValue } from "../workbook/document";
import { inFeet, inInches, inMillimetres, type Metres } from "../core/quantity";
import type { Settings } from "../core/settings";

export type Units = Settings["units"];

export interface Column<Row> {
  readonly heading: (units: Units) => string;
  readonly cell: (row: Row, units: Units) => CellValue;
}

export const text = <Row>(heading: string, of: (row: Row) => string | number | undefined): Column<Row> => ({ heading: () => heading, cell: (row) => of(row) ?? "" });

/** Inches or millimetres. */
export const length = <Row>(heading: string, of: (row: Row) => Metres | undefined): Column<Row> => ({
  heading: (units) => `${heading} (${units === "us" ? "in" : "mm"})`,
  cell: (row, units) => shown(of(row), units === "us" ? inInches : inMillimetres, units === "us" ? 4 : 2),
});

/** Feet or metres. */
export const longLength = <Row>(heading: string, of: (row: Row) => Metres | undefined): Column<Row> => ({
  heading: (units) => `${heading} (${units === "us" ? "ft" : "m"})`,
  cell: (row, units) => shown(of(row), units === "us" ? inFeet : Number, 3),
});

/** A figure under a heading that carries its unit in each system. */
export const figureIn = ({ us, metric }: Readonly<Record<Units, readonly [unit: string, digits: number, convert: (value: never) => number]>>) =>
  <Row>(heading: string, of: (row: Row) => number | undefined): Column<Row> => ({
    heading: (units) => `${heading} (${(units === "us" ? us : metric)[0]})`,
    cell: (row, units) => {
      const [value, [, digits, convert]] = [of(row), units === "us" ? us : metric];
      if (value === undefined || !Number.isFinite(value)) return "";
      const scale = 10 ** digits;
      return Math.round(convert(value as never) * scale) / scale;
    },
  });

const shown = (value: Metres | undefined, convert: (value: Metres) => number, digits: number): CellValue => (value === undefined ? "" : rounded(convert(value), digits));

export const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

/** The heading row, then one row each. */
export const laidOut = <Row>(columns: readonly Column<Row>[], rows: readonly Row[], units: Units): CellValue[][] => [
  columns.map((column) => column.heading(units)),
  ...rows.map((row) => columns.map((column) => column.cell(row, units))),
];
