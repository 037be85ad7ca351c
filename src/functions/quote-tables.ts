/** What fluid and quote answers look like. */
import { CAUTION } from "../core/caution";
import type { Catalogue } from "../core/catalogue";
import { fluidFor, type FluidNeed } from "../core/fluid";
import { quoteFor, totalLines, type Quote, type QuoteTotals } from "../core/quote";
import { inCubicCentimetres, inFluidOunces, type CubicMetres } from "../core/quantity";
import { sayBottle, sayShare } from "../core/say-quantity";
import type { Settings } from "../core/settings";
import { rounded, text, type Column } from "./columns";
import type { OfCar } from "./car-tables";
import type { ReportedRow } from "./reports";

const volume = (heading: string, of: (need: FluidNeed) => CubicMetres): Column<OfCar<FluidNeed>> => ({
  heading: (units) => `${heading} (${units === "us" ? "fl oz" : "ml"})`,
  cell: ({ item }, units) => (item ? rounded((units === "us" ? inFluidOunces : inCubicCentimetres)(of(item)), 1) : ""),
});

export const fluidColumns: readonly Column<OfCar<FluidNeed>>[] = [
  text("Car", ({ label }) => label),
  text("Fluid", ({ item }) => item?.fluid),
  volume("Lines", ({ lines }) => lines),
  volume("Parts", ({ parts }) => parts),
  volume("Fill", ({ fill }) => fill),
  volume("With flush", ({ withFlush }) => withFlush),
  { heading: () => "Bottles", cell: ({ item }, units) => (item?.bottles ?? []).map(({ bottle, count }) => `${count} × ${sayBottle({ units }, bottle.bottle)}`).join("; ") },
  text("Price", ({ item }) => item?.price),
  text("Assumed", ({ item, problem }) => (item ? sayAssumed(item) : problem)),
];

const sayAssumed = ({ noBottles, leftOut }: FluidNeed): string =>
  [...(noBottles === undefined ? [] : [`no bottles: ${noBottles}`]), ...(leftOut.length === 0 ? [] : [`at least: leaves out ${leftOut.join(", ")}`])].join("; ");

export const fluidRows = (catalogue: Catalogue, { label, problem, report }: ReportedRow): OfCar<FluidNeed> => ({ label, problem, item: report && fluidFor(catalogue, report) });

interface QuoteRow {
  readonly section: string;
  readonly item: string;
  readonly description?: string;
  readonly quantity?: number;
  readonly unit?: string;
  readonly price?: number | undefined;
  readonly amount?: number | undefined;
  readonly note?: string;
}

const ofRow = <V>(read: (row: QuoteRow) => V) => ({ item }: OfCar<QuoteRow>): V | undefined => (item === undefined ? undefined : read(item));

export const quoteColumns: readonly Column<OfCar<QuoteRow>>[] = [
  text("Car", ({ label }) => label),
  text("Section", ofRow(({ section }) => section)),
  text("Item", ofRow(({ item }) => item)),
  text("Description", ofRow(({ description }) => description)),
  text("Quantity", ofRow(({ quantity }) => quantity)),
  text("Unit", ofRow(({ unit }) => unit)),
  text("Price", ofRow(({ price }) => price)),
  text("Amount", ofRow(({ amount }) => amount)),
  text("Note", ({ item, problem }) => (item ? item.note : problem)),
];

/** Hold first, then lines, totals, accepted stops, assumptions and the caution. */
export function quoteRows(catalogue: Catalogue, { label, problem, report }: ReportedRow): OfCar<QuoteRow>[] {
  if (!report) return [{ label, problem }];
  const quote = quoteFor(catalogue, report);
  const rows: QuoteRow[] = [
    ...quote.hold.map(({ code, says }) => ({ section: "hold", item: code, description: says, note: "this quote must not go out" })),
    ...quote.lines.map(({ section, item, description, quantity, unit, unitPrice, amount }) => ({ section, item, description, quantity, unit, price: unitPrice, amount, note: amount === undefined ? "no price" : "" })),
    ...totalRows(catalogue, quote),
    ...termRows(catalogue),
    ...quote.accepted.map(({ code, says, because }) => ({ section: "accepted", item: code, description: says, note: because ?? "" })),
    ...quote.assumed.map((assumed) => ({ section: "assumed", item: "", description: assumed })),
    { section: "caution", item: "", description: CAUTION },
  ];
  return rows.map((item) => ({ label, problem: "", item }));
}

function totalRows({ settings }: Catalogue, { totals, missing }: Quote): QuoteRow[] {
  if (!totals) return [{ section: "total", item: "total", note: `no total yet; still needed: ${missing.join(", ")}` }];
  return totalLines(totals).map(({ name, amount }) => ({ section: "total", item: name, amount, note: noteOn(settings, name) }));
}

function noteOn({ currency, quoteValidDays, discountShare, taxShare, depositShare }: Settings, name: keyof QuoteTotals): string {
  switch (name) {
    case "discount": return `${sayShare(discountShare)} of the lines`;
    case "tax": return `${sayShare(taxShare)} on the lines less discount, freight included`;
    case "total": return `${currency}, valid ${quoteValidDays} days`;
    case "deposit": return `${sayShare(depositShare)} of the total, with the order`;
    default: return "";
  }
}

/** How the figures came about, for whoever answers for the quote; no customer needs to see it. */
function termRows({ settings }: Catalogue): QuoteRow[] {
  const { priceBasis, priceShare, roundingStep, roundingHalves, currency, quoteValidDays } = settings;
  const basis = { list: "prices as the tables list them", markup: `cost plus ${sayShare(priceShare)} of cost (markup)`, margin: `cost is what is left of the price after ${sayShare(priceShare)} of the price (margin)` }[priceBasis];
  return [
    { section: "terms", item: "price basis", description: basis },
    { section: "terms", item: "rounding", description: `unit prices and amounts to ${roundingStep}, halves ${roundingHalves === "up" ? "up" : "to the even step"}` },
    { section: "terms", item: "currency", description: currency },
    { section: "terms", item: "validity", description: `${quoteValidDays} days` },
  ];
}
