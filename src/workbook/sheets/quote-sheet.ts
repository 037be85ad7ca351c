/** The quote as a sheet of its own, to print and to send: values only. One car, or all cars of a customer with their sum before them. */
import { CAUTION } from "../../core/caution";
import type { Catalogue } from "../../core/catalogue";
import { capital, ended, type Finding, type Severity } from "../../core/finding";
import { quoteFor, sumOfQuotes, totalLines, type Quote, type QuoteLine } from "../../core/quote";
import type { CarReport } from "../../core/report";
import { moneyFormat } from "../../core/say-money";
import type { Settings } from "../../core/settings";
import type { CellStyle, SheetPicture } from "../document";
import type { SheetContent } from "../port";
import { sheetDraft, type SheetDraft } from "./sheet-draft";
import { addShopHead, type ShopHead } from "./shop-head";
import { BANNER, HEADING, LABEL, REASON, RIGHT, RULE, SMALL, STRONG, TEXT } from "./sheet-looks";

export interface QuoteHead {
  /** As it prints, in the shop's own way of writing dates; the core has no clock. */
  readonly date: string;
  /** The last day the quote stands, written likewise. */
  readonly validUntil: string;
  readonly revision: number;
}

export interface QuotedCar {
  readonly report: CarReport;
  /** The drawing of its lines. */
  readonly picture?: QuotePicture | undefined;
}

export interface QuotePicture extends Pick<SheetPicture, "png" | "alt" | "width" | "height"> {
  /** What the letters on the drawing stand for: "a", and a sentence. */
  readonly marks?: readonly (readonly [string, string])[];
}

const WIDTHS = [24, 46, 12, 11, 13];
const WIDTH = WIDTHS.length;
const ALL = [0, WIDTH] as const;
/** Beside the headings at the left. */
const BESIDE = [1, WIDTH - 1] as const;
const PIXELS_OF_UNIT = 7;
/** What one sentence over the picture takes, on two lines [px]. */
const ROOM_OF_MARK = 44;
/** What a picture may take of the sheet, so that it stays on its page [px]. */
const MOST_PICTURE = { width: 700, height: 840 };

/** Head, hold banner, lines, totals, what is to be settled, open questions, what is assumed, caution, and on its own page the drawing. */
export function quoteSheet(catalogue: Catalogue, cars: readonly QuotedCar[], head: QuoteHead): SheetContent {
  const draft = sheetDraft(WIDTHS);
  const quotes = cars.map((car) => ({ ...car, quote: quoteFor(catalogue, car.report) }));
  if (quotes.length > 1) addSummary(draft, catalogue, { quotes, head });
  for (const { report, quote, picture } of quotes) {
    draft.newPage();
    addQuote(draft, catalogue, { report, quote, head });
    if (picture) addPicture(draft, report, picture);
  }
  const names = cars.length === 1 ? cars[0]?.report.car.name : cars[0]?.report.car.customer;
  return draft.content({ fitWide: true, footer: `Quote ${names ?? ""}, revision ${head.revision}, ${head.date}` });
}

interface QuoteOfCar {
  readonly report: CarReport;
  readonly quote: Quote;
  readonly head: QuoteHead;
}

function addQuote(draft: SheetDraft, { settings }: Catalogue, { report, quote, head }: QuoteOfCar): void {
  const { car, findings, questions } = report;
  addHead(draft, settings, { head, left: [["Customer", car.customer], ["Car", car.name], ["Model", sayModel(report)]] });
  addHold(draft, quote.hold.map(sayFinding));
  addLines(draft, settings, quote);
  const asked = ({ says }: Finding): boolean => questions.some(({ ask }) => says.startsWith(ask));
  const open = (...severities: readonly Severity[]): string[] => findings.filter((one) => one.standing === "open" && severities.includes(one.severity) && !asked(one)).map(sayFinding);
  addList(draft, "To settle before the work", open("decide"));
  addList(draft, "Open questions", questions.map(({ ask }) => ask));
  addList(draft, "To know", open("watch", "note"));
  addList(draft, "Accepted for this car", quote.accepted.map(({ says, because }) => `${says} ${because ?? ""}`));
  addList(draft, "Assumed", quote.assumed);
  if (quote.hold.length === 0 && quote.totals) addAcceptance(draft);
  draft.row([]);
  draft.row(["Caution", CAUTION], [{ ...SMALL, bold: true, ...RULE }, { ...SMALL, ...RULE }, RULE, RULE, RULE], [BESIDE]);
}

const sayModel = ({ car }: CarReport): string => [car.platform ?? "", car.year ?? ""].filter((part) => part !== "").join(", ");

const sayFinding = ({ says, cure }: Finding): string => `${says} ${ended(capital(cure))}`;

function addHead(draft: SheetDraft, settings: Settings, { head, left }: { readonly head: QuoteHead; readonly left: ShopHead["left"] }): void {
  const right = [["Date", head.date], ["Revision", head.revision], ["Valid until", head.validUntil], ["Currency", settings.currency]] as const;
  addShopHead(draft, settings, { title: "Quote", left, right }, { left: 1, label: 2, fact: 3, columns: WIDTH });
}

/** A quote never goes out with an open stop; it is written all the same, so that the reasons can be read. */
function addHold(draft: SheetDraft, reasons: readonly string[]): void {
  if (reasons.length === 0) return;
  draft.row([]);
  draft.row(["HOLD: this quote must not go out"], BANNER, [ALL]);
  reasons.forEach((reason, index) => { draft.row([index === 0 ? "Why" : "", reason], [{ ...REASON, ...STRONG }, REASON, REASON, REASON, REASON], [BESIDE]); });
}

const numberHeading: CellStyle = { ...HEADING, align: "right" };

function addLines(draft: SheetDraft, settings: Settings, quote: Quote): void {
  draft.row([]);
  draft.row(["Item", "Description", "Quantity", "Price", "Amount"], [HEADING, HEADING, numberHeading, numberHeading, numberHeading]);
  for (const line of quote.lines) addLine(draft, settings, line);
  if (quote.totals) addTotals(draft, settings, quote.totals);
  else draft.row(["No total yet", `Still needed: ${quote.missing.join("; ")}.`], [{ ...TEXT, ...STRONG, ...RULE }, { ...TEXT, ...RULE }, RULE, RULE, RULE], [BESIDE]);
}

function addLine(draft: SheetDraft, settings: Settings, { item, description, quantity, unit, unitPrice, amount }: QuoteLine): void {
  const money: CellStyle = { ...RIGHT, format: moneyFormat(settings) };
  const counted: CellStyle = { ...RIGHT, format: unit === "each" ? "0" : `0.00" ${unit}"` };
  draft.row([capital(item), description, quantity, unitPrice ?? "no price", amount ?? ""], [TEXT, TEXT, counted, money, money]);
}

function addTotals(draft: SheetDraft, settings: Settings, totals: NonNullable<Quote["totals"]>): void {
  totalLines(totals).forEach(({ name, says, amount }, index) => {
    const look = { ...(index === 0 || name === "total" ? RULE : {}), ...(name === "total" ? { ...STRONG, size: 14 } : {}) };
    const edge = index === 0 ? RULE : undefined;
    draft.row(["", "", says, "", amount], [edge, edge, look, look, { ...look, ...RIGHT, format: moneyFormat(settings) }], [[2, 2]]);
  });
}

/** The heading at the left, the sentences beside it. */
function addList(draft: SheetDraft, heading: string, sentences: readonly string[]): void {
  if (sentences.length === 0) return;
  draft.row([]);
  sentences.forEach((sentence, index) => {
    const rule = index === 0 ? RULE : {};
    draft.row([index === 0 ? heading : "", capital(sentence)], [{ ...TEXT, ...STRONG, ...rule }, { ...TEXT, ...rule }, rule, rule, rule], [BESIDE]);
  });
}

/** Where the customer signs; not while the quote is on hold or has no total. */
function addAcceptance(draft: SheetDraft): void {
  draft.row([]);
  draft.row([]);
  draft.row([]);
  draft.row(["Ordered by", "", "Date"], [{ ...LABEL, ...RULE }, RULE, { ...LABEL, ...RULE }, RULE, RULE]);
}

function addPicture(draft: SheetDraft, report: CarReport, { png, alt, width, height, marks = [] }: QuotePicture): void {
  draft.newPage();
  draft.row([`Brake lines of ${report.car.name}`, "", "", "", sayModel(report)], [{ bold: true, size: 16 }, undefined, undefined, undefined, { ...LABEL, ...RIGHT }]);
  const scale = Math.min(MOST_PICTURE.width / width, (MOST_PICTURE.height - marks.length * ROOM_OF_MARK) / height);
  for (const [letter, says] of marks) draft.row([`${letter}:  ${says}`], TEXT, [ALL]);
  const narrow = width * scale < PIXELS_OF_UNIT * (WIDTHS.reduce((sum, one) => sum + one, 0) - 2 * (WIDTHS[0] ?? 0));
  draft.picture({ png, alt, column: narrow ? 1 : 0, width: Math.round(width * scale), height: Math.round(height * scale) });
}

interface Summary {
  readonly quotes: readonly { readonly report: CarReport; readonly quote: Quote }[];
  readonly head: QuoteHead;
}

/** One line a car; the sum stands only when every car has a total. */
function addSummary(draft: SheetDraft, { settings }: Catalogue, { quotes, head }: Summary): void {
  const money: CellStyle = { ...RIGHT, format: moneyFormat(settings) };
  addHead(draft, settings, { head, left: [["Customer", quotes[0]?.report.car.customer ?? ""], ["Cars", String(quotes.length)]] });
  const held = quotes.filter(({ quote }) => quote.hold.length > 0).map(({ report }) => report.car.name);
  addHold(draft, held.length > 0 ? [`A stop is open on ${held.join(", ")}.`] : []);
  draft.row([]);
  draft.row(["Car", "Model", "", "", "Amount"], [HEADING, HEADING, HEADING, HEADING, numberHeading]);
  for (const { report, quote } of quotes) draft.row([report.car.name, sayModel(report), "", "", quote.totals?.total ?? "no total yet"], [TEXT, TEXT, undefined, undefined, money]);
  const look = { ...STRONG, ...RULE, size: 14 };
  draft.row(["", "", "Total", "", sumOfQuotes(quotes.map(({ quote }) => quote)) ?? "not yet"], [RULE, RULE, look, look, { ...look, ...money }], [[2, 2]]);
}
