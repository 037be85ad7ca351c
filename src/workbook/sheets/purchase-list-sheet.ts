/** The purchase list: what to order today, what it costs, when it comes and why. Values only, to print and to send. */
import { inFeet, inInches, inMillimetres, metres } from "../../core/quantity";
import { moneyFormat } from "../../core/say-money";
import type { Settings } from "../../core/settings";
import type { RackGroup } from "../../core/stock/rack";
import type { TubeReorder } from "../../core/stock/tube-reorder";
import { sayTube } from "../../core/tube";
import { dayText } from "../day-text";
import type { CellStyle } from "../document";
import type { CellStyleRange, CellValue, SheetContent } from "../port";
import { HEADING, RIGHT, RULE, STRONG, TEXT, TITLE } from "./sheet-looks";

const DAYS_PER_WEEK = 7;

interface ListColumn {
  readonly heading: string;
  /** In characters. */
  readonly width: number;
  readonly style?: CellStyle;
  readonly cell: (order: TubeOrder) => CellValue;
}

interface TubeOrder {
  readonly group: RackGroup;
  readonly line: TubeReorder;
  readonly pieces: number;
  /** Of the pieces and the order; undefined without a price. */
  readonly amount: number | undefined;
}


/**
 * @param groups of the rack
 * @param today the spreadsheet's day number
 * @param sayDay how the reader writes a day; left out, as 2030-01-31
 * @returns head, one row a tube to order, total, what has no price, what was assumed
 */
export function purchaseListSheet(settings: Settings, groups: readonly RackGroup[], today: number, sayDay = dayText): SheetContent {
  const orders = groups.flatMap((group) => group.lines.flatMap((line) => orderOf(group, line)));
  const columns = columnsOf(settings, today, sayDay);
  const head: CellValue[][] = [["Purchase list"], ...[settings.shopName, settings.shopAddress].filter((text) => text !== "").map((text) => [text]), ["Date", sayDay(today)], ["Currency", settings.currency], []];
  const rows = [...head, columns.map(({ heading }) => heading), ...orders.map((order) => columns.map(({ cell }) => cell(order)))];
  const total = rows.length;
  const lines = [...rows, totalRow(orders, columns), ...remarkRows(orders)];
  return {
    rows: lines.map((cells) => columns.map((_, column) => cells[column] ?? "")),
    columnWidths: columns.map(({ width }) => width),
    styles: stylesOf(columns, { heading: head.length, orders: orders.length, total }),
    page: { landscape: true, fitWide: true, titleRows: head.length + 1, footer: `Purchase list, ${sayDay(today)}` },
  };
}

function orderOf(group: RackGroup, line: TubeReorder): TubeOrder[] {
  const { advice, priced } = line;
  return advice && advice.orderToday > 0 ? [{ group, line, pieces: advice.orderToday, amount: priced ? advice.orderCost : undefined }] : [];
}

const AMOUNT = "Amount";

function columnsOf(settings: Settings, today: number, sayDay: (day: number) => string): ListColumn[] {
  const [unit, inUnit, isUs] = settings.units === "us" ? (["in", inInches, true] as const) : (["mm", inMillimetres, false] as const);
  const price: CellStyle = { ...RIGHT, format: moneyFormat(settings) };
  const shown = (length: number | undefined, digits: number): CellValue => (length === undefined ? "" : Number(inUnit(metres(length)).toFixed(digits)));
  return [
    { heading: "Tube", width: 18, style: STRONG, cell: ({ line }) => line.tube.name },
    { heading: "Material", width: 15, cell: ({ line }) => line.tube.material },
    { heading: "Size", width: 9, cell: ({ line }) => sayTube(line.tube.outsideDiameter) },
    { heading: `Wall (${unit})`, width: 9, style: RIGHT, cell: ({ line }) => shown(line.tube.wall, isUs ? 3 : 2) },
    { heading: `Piece (${unit})`, width: 10, style: RIGHT, cell: ({ line }) => shown(line.tube.length, isUs ? 1 : 0) },
    { heading: "Form", width: 8, cell: ({ line }) => line.tube.form },
    { heading: "Order", width: 8, style: { ...STRONG, ...RIGHT }, cell: ({ pieces }) => pieces },
    { heading: "Each", width: 10, style: price, cell: ({ amount, pieces, line }) => (amount === undefined ? "no price" : money((amount - (line.tube.orderCost ?? 0)) / pieces)) },
    { heading: "Order cost", width: 12, style: price, cell: ({ line }) => line.tube.orderCost ?? "" },
    { heading: AMOUNT, width: 12, style: price, cell: ({ amount }) => (amount === undefined ? "" : money(amount)) },
    { heading: "Here by", width: 14, cell: ({ line }) => sayDay(today + Math.ceil((line.tube.leadTimeWeeks ?? 0) * DAYS_PER_WEEK)) },
    { heading: "Runs out", width: 14, cell: ({ group }) => (group.stockOut === undefined ? "" : sayDay(group.stockOut)) },
    { heading: "Why", width: 50, style: TEXT, cell: ({ line }) => why(settings, line) },
  ];
}

const money = (amount: number): number => Number(amount.toFixed(2));

function why({ units }: Settings, { tube, advice }: TubeReorder): string {
  const length = (value: number): string => (units === "us" ? `${inFeet(metres(value)).toFixed(1)} ft` : `${value.toFixed(2)} m`);
  const there = ((tube.onHand ?? 0) + (tube.onOrder ?? 0)) * (tube.length ?? 0);
  return `${length(there)} on hand and on order; to be ordered at ${length(advice?.reorderPoint ?? 0)}`;
}

function totalRow(orders: readonly TubeOrder[], columns: readonly ListColumn[]): CellValue[] {
  const total = money(orders.reduce((sum, { amount = 0 }) => sum + amount, 0));
  return columns.map(({ heading }, index) => (index === 0 ? "Total" : heading === AMOUNT ? total : ""));
}

function remarkRows(orders: readonly TubeOrder[]): CellValue[][] {
  const unpriced = orders.flatMap(({ amount, line }) => (amount === undefined ? [line.tube.name] : []));
  const assumed = orders.flatMap(({ line }) => (line.assumed.length === 0 ? [] : [`${line.tube.name}: ${line.assumed.join("; ")}`]));
  return [
    ...(unpriced.length > 0 ? [[], [`Not in the total, as there is no price: ${unpriced.join(", ")}`]] : []),
    ...(assumed.length > 0 ? [[], ["Assumed"], ...assumed.map((says) => [says])] : []),
  ];
}

function stylesOf(columns: readonly ListColumn[], { heading, orders, total }: { heading: number; orders: number; total: number }): CellStyleRange[] {
  const all = { column: 0, columns: columns.length };
  return [
    { row: 0, rows: 1, ...all, style: TITLE },
    // Wrapped text begins at the top of its cell and other text stands at the bottom; the reason takes several lines, so all cells of its row wrap.
    { row: heading + 1, rows: orders, ...all, style: TEXT },
    ...columns.flatMap(({ style }, column): CellStyleRange[] => (style ? [{ row: heading + 1, rows: orders, column, columns: 1, style }] : [])),
    { row: heading, rows: 1, ...all, style: { ...HEADING, ...TEXT } },
    ...columns.flatMap(({ style }, column): CellStyleRange[] => (style?.align ? [{ row: heading, rows: 1, column, columns: 1, style: { align: style.align } }] : [])),
    { row: total, rows: 1, ...all, style: { ...STRONG, ...RULE } },
    { row: total, rows: 1, column: columns.findIndex(({ heading: name }) => name === AMOUNT), columns: 1, style: columns.find(({ heading: name }) => name === AMOUNT)?.style ?? {} },
  ];
}
