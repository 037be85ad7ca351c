/** Tube and parts in total over many cars: a row a material, size and wall, then a row a part, then what is not in the totals. */
import { totalParts, type PartTotal } from "../core/bill";
import type { Catalogue } from "../core/catalogue";
import { inFeet, inPounds, type Kilograms } from "../core/quantity";
import type { CarReport } from "../core/report";
import { sayLots, sayUnbought, tubingOf, type TubingTotal } from "../core/tubing";
import type { CellValue } from "../workbook/document";
import { figureIn, laidOut, length, rounded, text, type Column, type Units } from "./columns";

export interface TubingRow {
  readonly total?: TubingTotal;
  readonly part?: PartTotal;
  readonly leftOut?: number;
}

const of = <V>(read: (total: TubingTotal) => V) => ({ total }: TubingRow): V | undefined => total && read(total);
const inMass = figureIn({ us: ["lb", 3, (mass: Kilograms) => inPounds(mass)], metric: ["kg", 3, (mass: Kilograms) => mass] });

export const tubingColumns: readonly Column<TubingRow>[] = [
  text("Material", ({ total, part }) => (total ? (total.material ?? "not stated") : (part?.kind ?? "not totalled"))),
  length("Tube", of(({ outsideDiameter }) => outsideDiameter)),
  length("Wall", of(({ wall }) => wall)),
  length("Net", of(({ net }) => net)),
  length("Allowance", of(({ allowance }) => allowance)),
  length("Cut", of(({ cut }) => cut)),
  text("Bought", ({ total, leftOut }) => (total ? sayPurchase(total) : leftOut === undefined ? "" : `${leftOut} ${leftOut === 1 ? "run" : "runs"} without tube size or length`)),
  length("Scrap", of(({ scrap }) => scrap)),
  inMass("Mass", of(({ mass }) => mass)),
  text("Runs", ({ total, leftOut }) => total?.runs ?? leftOut),
  text("Cost", of(({ bought }) => bought?.cost)),
  text("Least cost", of(({ bought }) => bought?.leastCost)),
  text("Status", of(({ bought }) => bought && (bought.gap === 0 ? "proved" : `gap ${(bought.gap * 100).toFixed(2)} %`))),
  text("Part", ({ part }) => part?.part),
  { heading: () => "Quantity", cell: ({ part }, units) => (part ? quantityOf(part, units) : "") },
  { heading: () => "Unit", cell: ({ part }, units) => (!part ? "" : "count" in part.quantity ? "each" : units === "us" ? "ft" : "m") },
];

const sayPurchase = ({ bought, ...unbought }: TubingTotal): string => (bought ? sayLots(bought) : sayUnbought(unbought));

const quantityOf = ({ quantity }: PartTotal, units: Units): number => ("count" in quantity ? quantity.count : rounded(units === "us" ? inFeet(quantity.length) : quantity.length, 3));

export function tubingTable({ settings, tube }: Catalogue, reports: readonly CarReport[]): CellValue[][] {
  const { totals, leftOut } = tubingOf(reports.flatMap(({ runs }) => runs), settings, tube);
  const parts = totalParts(reports.flatMap(({ bill }) => bill));
  const rows: TubingRow[] = [...totals.map((total) => ({ total })), ...parts.map((part) => ({ part })), ...(leftOut.length > 0 ? [{ leftOut: leftOut.length }] : [])];
  return laidOut(tubingColumns, rows, settings.units);
}
