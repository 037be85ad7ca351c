/** Which cars are quoted: the chosen one, all of its customer, or those that were ticked. */
import type { CarLine, WorkbookReading } from "../../workbook/workbook-reports";
import { carBar } from "../car-bar";
import { rowKey } from "../car-card";
import { filterCars, groupOf } from "../car-list";
import { element } from "../element";
import { keyedChildren, type KeyedChild } from "../keyed-children";
import { carMark } from "../marks";
import { recall, remember } from "../remembered";
import type { ViewActions } from "../view";
import { groupWords, sayNumber } from "../words";

export interface QuoteChoice {
  readonly content: HTMLElement;
  /** Brings itself up to date. @returns the cars that are quoted, those that could not be worked out among them */
  show(reading: WorkbookReading): readonly CarLine[];
}

const WAYS = ["one", "customer", "ticked"] as const;
type Way = (typeof WAYS)[number];

/** Rows of the list of cars to tick. */
const MOST_ROWS = 40;

export function quoteChoice(actions: ViewActions, onChange: () => void): QuoteChoice {
  const bar = carBar(actions);
  const ways = waysOf();
  const ticks = tickList();
  const content = element("div", { class: "quote-choice" }, ways.content, bar.content, ticks.content);
  content.addEventListener("input", onChange);
  content.addEventListener("click", ({ target }) => { if (target instanceof Element && target.closest("[data-tick]")) onChange(); });
  return {
    content,
    show: (reading) => {
      const line = bar.show(reading);
      const customer = line ? reading.cars.filter(({ customer: of }) => of !== "" && of === line.customer) : [];
      ways.showCounts({ one: undefined, customer: customer.length, ticked: ticks.show(reading).length });
      const way = ways.chosen();
      bar.content.hidden = way === "ticked";
      ticks.content.hidden = way !== "ticked";
      if (way === "ticked") return ticks.show(reading);
      return way === "customer" && customer.length > 0 ? customer : line ? [line] : [];
    },
  };
}

interface Ways {
  readonly content: HTMLElement;
  readonly chosen: () => Way;
  showCounts(counts: Readonly<Record<Way, number | undefined>>): void;
}

const WAY_WORDS: Readonly<Record<Way, string>> = { one: "This car", customer: "Its customer", ticked: "Ticked cars" };

function waysOf(): Ways {
  const choices = WAYS.map((way) => {
    const input = element("input", { type: "radio", class: "unseen", name: "quote-cars", value: way, checked: way === "one" });
    const word = element("span", { class: "choice__word" }, WAY_WORDS[way]);
    return { way, input, word, label: element("label", { class: "choice choice--plain" }, input, word) };
  });
  return {
    content: element("fieldset", { class: "choices quote-choice__ways" }, element("legend", { class: "unseen" }, "Quote for"), ...choices.map(({ label }) => label)),
    chosen: () => choices.find(({ input }) => input.checked)?.way ?? "one",
    showCounts: (counts) => {
      for (const { way, word } of choices) word.textContent = counts[way] === undefined ? WAY_WORDS[way] : `${WAY_WORDS[way]}: ${sayNumber(counts[way])}`;
    },
  };
}

interface TickList {
  readonly content: HTMLElement;
  /** @returns the ticked cars, in the order of rows */
  show(reading: WorkbookReading): readonly CarLine[];
}

const TICKED = "quote cars";

function tickList(): TickList {
  let ticked = new Set((recall(TICKED) ?? "").split("\n").filter((key) => key !== ""));
  let shown: readonly CarLine[] = [];
  const search = element("input", { type: "search", class: "search__field", id: "quote-search", placeholder: "Car, customer or platform", autocomplete: "off", spellcheck: "false" });
  const [list, more] = [element("ul", { class: "ticks" }), element("p", { class: "ticks__more", hidden: true })];
  const rows = keyedChildren(list);
  const button = (text: string, next: () => readonly string[]): HTMLElement => {
    const made = element("button", { type: "button", class: "link", "data-tick": "all" }, text);
    made.addEventListener("click", () => { keep(new Set(next())); });
    return made;
  };
  const keep = (next: Set<string>): void => {
    ticked = next;
    remember(TICKED, [...ticked].join("\n"));
  };
  list.addEventListener("input", ({ target }) => {
    if (!(target instanceof HTMLInputElement)) return;
    const others = [...ticked].filter((key) => key !== target.value);
    keep(new Set(target.checked ? [...others, target.value] : others));
  });
  const buttons = element("p", { class: "ticks__buttons" }, button("Tick all shown", () => [...ticked, ...shown.map(keyOf)]), button("Tick none", () => []));
  return {
    content: element("div", { class: "tick-list" }, element("div", { class: "search" }, element("label", { class: "unseen", for: "quote-search" }, "Search the cars to quote"), search), buttons, list, more),
    show: ({ cars }) => {
      const found = filterCars(cars, { group: undefined, search: search.value });
      shown = found.slice(0, MOST_ROWS);
      rows.update(shown.map((line) => tickRow(line, ticked.has(keyOf(line)))));
      more.hidden = found.length <= MOST_ROWS;
      more.textContent = `and ${sayNumber(found.length - MOST_ROWS)} more: search to find them`;
      return cars.filter((line) => ticked.has(keyOf(line)));
    },
  };
}

/** By name, since rows move; two cars of one name are a flag of their own and are ticked together. */
const keyOf = ({ table, name }: CarLine): string => `${table}|${name}`;

function tickRow(line: CarLine, checked: boolean): KeyedChild {
  const { name, customer } = line;
  const make = (): HTMLElement => {
    const box = element("input", { type: "checkbox", class: "ticks__box", value: keyOf(line), checked });
    return element("li", {}, element("label", { class: "ticks__row" }, box, element("span", { class: "ticks__name" }, name), element("span", { class: "ticks__customer" }, customer), element("span", { class: "ticks__verdict" }, carMark(groupOf(line)), groupWords[groupOf(line)].name)));
  };
  return { key: rowKey(line.table, line.row), content: JSON.stringify([name, customer, line.verdict, checked]), make };
}
