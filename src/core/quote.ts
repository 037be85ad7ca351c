/** A quote for one car: lines, labour, discount, tax, deposit, each to the cent, and what keeps it from going out. */
import Big from "big.js";
import { priceOfUnit, quoteItems, type QuoteItem } from "./quote-items";
import { missingForQuote } from "./quote-missing";
import { rounded, roundingOf, sumOf } from "./money";
import type { Catalogue } from "./catalogue";
import type { Finding } from "./finding";
import type { CarReport } from "./report";

export interface QuoteLine extends QuoteItem {
  /** Selling price of one unit; undefined when the item has no price. */
  readonly unitPrice: number | undefined;
  readonly amount: number | undefined;
}

export interface QuoteTotals {
  readonly subtotal: number;
  readonly discount: number;
  readonly freight: number;
  readonly tax: number;
  readonly total: number;
  readonly deposit: number;
}

export interface Quote {
  readonly lines: readonly QuoteLine[];
  /** Undefined while something is missing: a total would read as if it were whole. */
  readonly totals: QuoteTotals | undefined;
  /** What has to be known before there is a total, in the words of a list: "a length for run 3", "a price for N38". */
  readonly missing: readonly string[];
  /** Stop findings that are open; while there is one the quote is on hold. */
  readonly hold: readonly Finding[];
  /** Stop findings accepted for this car, with the reason; they print on the quote. */
  readonly accepted: readonly Finding[];
  readonly assumed: readonly string[];
}

/**
 * Quotes one car. Unit prices follow the price basis of Settings (list, markup on cost, or margin on price), each line is rounded once,
 * and the totals are sums of rounded lines, so that they reconcile to the cent.
 */
export function quoteFor(catalogue: Catalogue, report: CarReport): Quote {
  const { items, assumed } = quoteItems(catalogue, report);
  const lines = items.map((item) => priced(catalogue, item));
  const stops = report.findings.filter(({ severity }) => severity === "stop");
  const missing = [...missingForQuote(report), ...lines.filter(({ amount }) => amount === undefined).map(({ item }) => `a price for ${item}`)];
  return {
    lines, missing,
    totals: missing.length === 0 ? totalsOf(catalogue, lines) : undefined,
    hold: stops.filter(({ standing }) => standing === "open"),
    accepted: stops.filter(({ standing }) => standing === "accepted"),
    assumed: [...assumed, ...report.assumptions],
  };
}

function priced({ settings }: Catalogue, item: QuoteItem): QuoteLine {
  const unit = item.cost === undefined ? undefined : priceOfUnit(settings, item.cost);
  const amount = unit && rounded(unit.times(item.quantity), roundingOf(settings));
  return { ...item, unitPrice: unit?.toNumber(), amount: amount?.toNumber() };
}

function totalsOf({ settings }: Catalogue, lines: readonly QuoteLine[]): QuoteTotals {
  const round = (amount: Big): Big => rounded(amount, roundingOf(settings));
  const subtotal = sumOf(lines.map(({ amount }) => Big(amount ?? NaN)));
  const discount = round(subtotal.times(settings.discountShare));
  const freight = round(Big(settings.freight));
  const tax = round(subtotal.minus(discount).plus(freight).times(settings.taxShare));
  const total = subtotal.minus(discount).plus(freight).plus(tax);
  const deposit = round(total.times(settings.depositShare));
  return { subtotal: subtotal.toNumber(), discount: discount.toNumber(), freight: freight.toNumber(), tax: tax.toNumber(), total: total.toNumber(), deposit: deposit.toNumber() };
}

export interface TotalLine {
  readonly name: keyof QuoteTotals;
  readonly says: string;
  /** A discount is below nothing. */
  readonly amount: number;
}

const TOTAL_WORDS: readonly (readonly [keyof QuoteTotals, string])[] = [["subtotal", "Sum of the lines"], ["discount", "Discount"], ["freight", "Freight"], ["tax", "Tax"], ["total", "Total"], ["deposit", "Deposit with the order"]];

/** The totals as they print: what is nothing is left out, but for the sum and the total. */
export const totalLines = (totals: QuoteTotals): readonly TotalLine[] =>
  TOTAL_WORDS.filter(([name]) => totals[name] !== 0 || name === "subtotal" || name === "total").map(([name, says]) => ({ name, says, amount: name === "discount" ? -totals[name] : totals[name] }));

/** The totals of several cars together; undefined while one of them has none. */
export function sumOfQuotes(quotes: readonly Pick<Quote, "totals">[]): number | undefined {
  const totals = quotes.map(({ totals: of }) => of?.total);
  return totals.every((total) => total !== undefined) ? sumOf(totals.map((total) => Big(total))).toNumber() : undefined;
}
