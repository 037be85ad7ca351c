/** The Quote view: what the chosen cars cost and what keeps a quote back, and the sheets to send and to saw by. */
import { quoteFor, sumOfQuotes, type Quote } from "../../core/quote";
import type { CarReport } from "../../core/report";
import type { CarLine, WorkbookReading } from "../../workbook/workbook-reports";
import { planCutsBeside } from "../bench/cut-planner";
import { element } from "../element";
import { keyedChildren, type KeyedChild } from "../keyed-children";
import type { View, ViewActions } from "../view";
import { count } from "../words";
import { quoteChoice } from "./quote-choice";
import { quoteForm } from "./quote-form";
import { quotePaper, sayMoney } from "./quote-paper";
import { writeCutList, writeQuote, type Written } from "./quote-writing";

interface Quoted {
  readonly line: CarLine;
  readonly report: CarReport;
  readonly quote: Quote;
}

/** Quotes drawn at once; the sheet holds them all. */
const MOST_DRAWN = 20;

export function quoteView(actions: ViewActions): View {
  const state: { reading: WorkbookReading | undefined; lines: readonly CarLine[] } = { reading: undefined, lines: [] };
  const [summary, papers, more] = [element("h2", { class: "tally quote-view__summary" }), element("div", { class: "quote-view__papers" }), element("p", { class: "quote-view__more", hidden: true })];
  const parts = keyedChildren(papers);
  const write = async (failed: string, work: Parameters<typeof actions.inWorkbook<Written>>[1]): Promise<void> => {
    form.say("Writing …");
    const written = await actions.inWorkbook(failed, work);
    form.say(written ? [`Written to the new sheet ${written.sheet}. One undo takes it back.`, written.lacks].filter((text) => text !== "").join(" ") : "");
  };
  const form = quoteForm({
    writeQuote: async () => {
      const { reading, lines } = state;
      if (reading) await write("The quote was not written.", (port) => writeQuote(port, { catalogue: reading.catalogue, lines, date: form.date(), revision: form.revision(), place: papers }));
    },
    writeCutList: async () => {
      const { reading, lines } = state;
      if (reading) await write("The cut list was not written.", (port) => writeCutList(port, { catalogue: reading.catalogue, lines, date: form.date() }, planCutsBeside));
    },
  });
  const draw = (): void => {
    if (!state.reading) return;
    state.lines = choice.show(state.reading);
    const quoted = quotesOf(state.reading, state.lines);
    summary.textContent = saySummary(state.reading, state.lines, quoted);
    form.allow(allowed(state.lines, quoted));
    parts.update(quoted.slice(0, MOST_DRAWN).map((one) => paperOf(one, state.reading as WorkbookReading, quoted.length === 1)));
    more.hidden = quoted.length <= MOST_DRAWN;
    more.textContent = `and ${count(quoted.length - MOST_DRAWN, "car")} more; the sheet holds them all`;
  };
  const choice = quoteChoice(actions, () => { form.say(""); draw(); });
  return {
    id: "quote", name: "Quote",
    content: element("div", { class: "quote-view" }, choice.content, summary, form.content, papers, more),
    show: (reading) => {
      state.reading = reading;
      draw();
    },
  };
}

const quotesOf = ({ catalogue }: WorkbookReading, lines: readonly CarLine[]): readonly Quoted[] =>
  lines.flatMap((line) => (line.report ? [{ line, report: line.report, quote: quoteFor(catalogue, line.report) }] : []));

/** A quote goes to one customer; a cut list may be for the whole week. */
function allowed(lines: readonly CarLine[], quoted: readonly Quoted[]) {
  const customers = new Set(lines.map(({ customer }) => customer));
  const refused = lines.length > 0 && quoted.length < lines.length ? `${count(lines.length - quoted.length, "car")} could not be worked out: no quote for this choice.`
    : customers.size > 1 ? `These cars are of ${count(customers.size, "customer")}: a quote goes to one. A cut list may be for all of them.` : "";
  return { quote: quoted.length > 0 && refused === "", cutList: quoted.length > 0, refused };
}

function saySummary({ catalogue: { settings } }: WorkbookReading, lines: readonly CarLine[], quoted: readonly Quoted[]): string {
  if (lines.length === 0) return "Tick the cars to quote.";
  if (lines.length === 1) return quoted.length === 0 ? "This row could not be worked out, so there is nothing to quote. Its flags say why." : "";
  const held = quoted.filter(({ quote }) => quote.hold.length > 0).length;
  const sum = sumOfQuotes(quoted.map(({ quote }) => quote));
  return `${count(lines.length, "car")}, ${sum === undefined ? "no total yet" : `${sayMoney(sum, settings)} ${settings.currency} together`}${held > 0 ? `, ${held} on hold` : ""}.`;
}

function paperOf({ line, report, quote }: Quoted, { catalogue: { settings } }: WorkbookReading, alone: boolean): KeyedChild {
  const total = quote.totals ? `${sayMoney(quote.totals.total, settings)} ${settings.currency}` : "no total yet";
  const heading = element("h3", { class: "quote-view__car" }, line.name, element("span", { class: "quote-view__total" }, `${quote.hold.length > 0 ? "on hold, " : ""}${total}`));
  const paper = (): HTMLElement => quotePaper({ report, quote, settings, level: alone ? "h3" : "h4" });
  const make = (): HTMLElement => (alone ? element("article", { class: "quote-view__quote", "aria-label": `Quote for ${line.name}` }, paper())
    : element("details", { class: "quote-view__quote" }, element("summary", {}, heading), paper()));
  return { key: `${line.table}|${line.row}`, content: JSON.stringify([alone, line.name, quote, report.questions.map(({ ask }) => ask), report.findings, settings.currency]), make };
}
