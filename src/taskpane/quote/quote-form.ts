/** Date, revision and the two buttons that write, with what was written last. */
import { element } from "../element";

export interface QuoteForm {
  readonly content: HTMLElement;
  /** The day the quote is dated; today when the field is blank. */
  readonly date: () => Date;
  /** Undefined: the next that is free. */
  readonly revision: () => number | undefined;
  /** @param refused why no quote can be written for this choice; "" when one can */
  allow(what: { readonly quote: boolean; readonly cutList: boolean; readonly refused: string }): void;
  say(text: string): void;
}

export interface QuoteWriting {
  readonly writeQuote: () => Promise<void>;
  readonly writeCutList: () => Promise<void>;
}

export function quoteForm({ writeQuote, writeCutList }: QuoteWriting): QuoteForm {
  const date = element("input", { type: "date", class: "field", id: "quote-date", value: isoDay(new Date()) });
  const revision = element("input", { type: "number", class: "field field--short", id: "quote-revision", min: 1, step: 1, placeholder: "next" });
  const [quote, cutList] = [element("button", { type: "button", class: "button" }, "Write the quote sheet"), element("button", { type: "button", class: "button button--plain" }, "Write the cut list")];
  const [refusal, said] = [element("p", { class: "quote-form__refused", hidden: true }), element("p", { class: "quote-form__said", role: "status" })];
  onClick(quote, writeQuote);
  onClick(cutList, writeCutList);
  const field = (name: string, input: HTMLInputElement): HTMLElement => element("div", { class: "quote-form__field" }, element("label", { for: input.id }, name), input);
  return {
    content: element("div", { class: "quote-form" }, element("div", { class: "quote-form__fields" }, field("Date", date), field("Revision", revision)), element("div", { class: "quote-form__buttons" }, quote, cutList), refusal, said),
    date: () => dayOf(date.value) ?? new Date(),
    revision: () => (/^[1-9]\d{0,3}$/.test(revision.value) ? Number(revision.value) : undefined),
    allow: ({ quote: mayQuote, cutList: mayCut, refused }) => {
      [quote.disabled, cutList.disabled] = [!mayQuote, !mayCut];
      refusal.textContent = refused;
      refusal.hidden = refused === "";
    },
    say: (text) => { said.textContent = text; },
  };
}

/** One click, one sheet: until it is written the button does nothing more. */
function onClick(button: HTMLButtonElement, act: () => Promise<void>): void {
  let busy = false;
  button.addEventListener("click", () => {
    if (busy) return;
    busy = true;
    button.setAttribute("aria-busy", "true");
    void act().finally(() => {
      busy = false;
      button.removeAttribute("aria-busy");
    });
  });
}

const isoDay = (day: Date): string => [day.getFullYear(), day.getMonth() + 1, day.getDate()].map((part) => String(part).padStart(2, "0")).join("-");

function dayOf(text: string): Date | undefined {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text) ?? [];
  return year === undefined ? undefined : new Date(Number(year), Number(month) - 1, Number(day));
}
