/** One quote as the panel shows it: hold and its reasons, lines, totals, what is open and what is assumed. */
import { capital, ended, type Finding } from "../../core/finding";
import { totalLines, type Quote, type QuoteLine } from "../../core/quote";
import type { CarReport } from "../../core/report";
import { decimalsOfMoney } from "../../core/say-money";
import type { Settings } from "../../core/settings";
import { element } from "../element";
import { severityMark } from "../marks";
import { sayNumber } from "../words";

/** `1,204.50`, with the decimals of the shop's rounding step. */
export const sayMoney = (amount: number, settings: Pick<Settings, "roundingStep">): string => sayNumber(amount, decimalsOfMoney(settings));

export interface PaperQuote {
  readonly report: CarReport;
  readonly quote: Quote;
  readonly settings: Settings;
  /** Level of the headings in it: one under what stands over the quote. */
  readonly level?: "h3" | "h4";
}

export function quotePaper({ report, quote, settings, level = "h3" }: PaperQuote): HTMLElement {
  const asked = ({ says }: Finding): boolean => report.questions.some(({ ask }) => says.startsWith(ask));
  const open = (wanted: (finding: Finding) => boolean): string[] => report.findings.filter((one) => one.standing === "open" && wanted(one) && !asked(one)).map(sayFinding);
  return element("div", { class: "paper-quote" },
    holdNotice(report.car.name, quote.hold),
    linesTable(quote, settings),
    quote.totals ? undefined : element("p", { class: "paper-quote__missing" }, element("strong", {}, "No total yet."), ` Still needed: ${quote.missing.join("; ")}.`),
    ...[
      ["To settle before the work", open(({ severity }) => severity === "decide")] as const,
      ["Open questions", report.questions.map(({ ask }) => ask)] as const,
      ["To know", open(({ severity }) => severity === "watch" || severity === "note")] as const,
      ["Accepted for this car", quote.accepted.map(({ says, because }) => `${says} ${because ?? ""}`)] as const,
      ["Assumed", quote.assumed] as const,
    ].map(([heading, sentences]) => listOf(element(level, { class: "paper-quote__heading" }, heading), sentences)));
}

const sayFinding = ({ says, cure }: Finding): string => `${says} ${ended(capital(cure))}`;

function holdNotice(car: string, hold: readonly Finding[]): HTMLElement | undefined {
  if (hold.length === 0) return undefined;
  return element("section", { class: "hold", "aria-label": `${car} is on hold` },
    element("p", { class: "hold__stamp" }, severityMark("stop"), "Hold"),
    element("p", { class: "hold__says" }, "This quote must not go out. It can be written, with this on top of it."),
    element("ul", { class: "hold__why" }, ...hold.map((finding) => element("li", {}, sayFinding(finding)))));
}

function linesTable({ lines, totals }: Quote, settings: Settings): HTMLElement | undefined {
  if (lines.length === 0) return undefined;
  const heading = (text: string, kind = ""): HTMLElement => element("th", { scope: "col", class: kind }, text);
  return element("table", { class: "quote-lines" },
    element("caption", { class: "unseen" }, "Lines of the quote"),
    element("thead", {}, element("tr", {}, heading("Item"), heading("Quantity", "number"), heading("Price", "number wide"), heading(`Amount, ${settings.currency}`, "number"))),
    element("tbody", {}, ...lines.map((line) => lineRow(line, settings))),
    totals && element("tfoot", {}, ...totalLines(totals).map(({ name, says, amount }) => element("tr", { class: `quote-lines__${name}` },
      element("th", { scope: "row", colspan: 2 }, says), element("td", { class: "wide" }), element("td", { class: "number", "data-money": name }, sayMoney(amount, settings))))));
}

function lineRow({ item, description, quantity, unit, unitPrice, amount }: QuoteLine, settings: Settings): HTMLElement {
  const price = unitPrice === undefined ? "no price" : sayMoney(unitPrice, settings);
  const shown = `${sayNumber(quantity, Number.isInteger(quantity) ? 0 : 2)}${unit === "each" ? "" : ` ${unit}`}`;
  return element("tr", {},
    element("th", { scope: "row" }, capital(item), element("span", { class: "quote-lines__detail" }, description)),
    element("td", { class: "number" }, shown, element("span", { class: "quote-lines__detail quote-lines__each" }, unitPrice === undefined ? price : `at ${price}`)),
    element("td", { class: "number wide", "data-money": "price" }, price),
    element("td", { class: "number", "data-money": "amount" }, amount === undefined ? "" : sayMoney(amount, settings)));
}

function listOf(heading: HTMLElement, sentences: readonly string[]): HTMLElement | undefined {
  if (sentences.length === 0) return undefined;
  return element("section", { class: "paper-quote__list" }, heading, element("ul", {}, ...sentences.map((sentence) => element("li", {}, capital(sentence)))));
}
