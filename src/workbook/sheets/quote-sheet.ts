/** The quote as a sheet of its own: values only, to print and to send. */
import { CAUTION } from "../../core/caution";
import type { Catalogue } from "../../core/catalogue";
import type { Finding } from "../../core/finding";
import { quoteFor, type Quote, type QuoteTotals } from "../../core/quote";
import type { CarReport } from "../../core/report";
import type { CellValue } from "../port";

export interface QuoteHead {
  /** As it prints, in the shop's own way of writing dates; the core has no clock. */
  readonly date: string;
  readonly revision: number;
}

const WIDTH = 6;

/** Rows of the quote: head, hold banner, lines, totals, findings, open questions, assumptions, caution. Every row is as wide as the lines. */
export function quoteSheet(catalogue: Catalogue, report: CarReport, head: QuoteHead): CellValue[][] {
  const quote = quoteFor(catalogue, report);
  const rows = [
    ...headRows(catalogue, report, head),
    ...holdRows(quote.hold),
    [], ["Item", "Description", "Quantity", "Unit", "Price", "Amount"],
    ...quote.lines.map(({ item, description, quantity, unit, unitPrice, amount }): CellValue[] => [item, description, quantity, unit, unitPrice ?? "no price", amount ?? ""]),
    [], ...totalRows(quote),
    ...listed("To settle before the work", report.findings.filter(({ standing, severity }) => standing === "open" && severity !== "stop").map(({ says, cure }) => `${says} ${cure}.`)),
    ...listed("Open questions", report.questions.map(({ ask }) => ask)),
    ...listed("Accepted for this car", quote.accepted.map(({ says, because }) => `${says} ${because ?? ""}`)),
    ...listed("Assumed", quote.assumed),
    [], [CAUTION],
  ];
  return rows.map((row) => Array.from({ length: WIDTH }, (_, column) => row[column] ?? ""));
}

function headRows({ settings }: Catalogue, { car }: CarReport, { date, revision }: QuoteHead): CellValue[][] {
  return [
    ["Quote"],
    ["Customer", car.customer],
    ["Car", [car.name, car.platform ?? "", car.year ?? ""].filter((part) => part !== "").join(", ")],
    ["Date", date],
    ["Revision", revision],
    ["Currency", settings.currency],
    ["Valid", `${settings.quoteValidDays} days`],
  ];
}

/** A quote never goes out with an open stop; it is written all the same, so that the reasons can be read. */
const holdRows = (hold: readonly Finding[]): CellValue[][] =>
  hold.length === 0 ? [] : [[], ["HOLD: this quote must not go out"], ...hold.map(({ code, says, cure }): CellValue[] => [code, `${says} ${cure}.`])];

const TOTAL_WORDS: Readonly<Record<keyof QuoteTotals, string>> = { subtotal: "Sum of the lines", discount: "Discount", freight: "Freight", tax: "Tax", total: "Total", deposit: "Deposit with the order" };

function totalRows({ totals, lines }: Quote): CellValue[][] {
  if (!totals) return [["Total", `not yet: no price for ${lines.filter(({ amount }) => amount === undefined).map(({ item }) => item).join(", ")}`]];
  const shown = (Object.keys(TOTAL_WORDS) as (keyof QuoteTotals)[]).filter((name) => totals[name] !== 0 || name === "subtotal" || name === "total");
  return shown.map((name) => [TOTAL_WORDS[name], "", "", "", "", name === "discount" ? -totals[name] : totals[name]]);
}

const listed = (heading: string, sentences: readonly string[]): CellValue[][] => (sentences.length === 0 ? [] : [[], [heading], ...sentences.map((sentence): CellValue[] => ["", sentence])]);
