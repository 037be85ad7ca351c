/** The Stock view: what tube to order today, size by size, and one click for the purchase list. */
import type { RackGroup } from "../../core/stock/rack";
import { purchaseListSheet } from "../../workbook/sheets/purchase-list-sheet";
import { readStock, type StockReading } from "../../workbook/stock-reading";
import type { WorkbookReading } from "../../workbook/workbook-reports";
import { element } from "../element";
import { keyedChildren, type KeyedChild } from "../keyed-children";
import { todayHere } from "../today";
import { showTally } from "../unparted";
import type { View, ViewActions } from "../view";
import { count } from "../words";
import { isOrdered, stockCard } from "./stock-card";
import { sayDay, sayGroup, sayPrice } from "./stock-words";

interface Shown {
  readonly reading: WorkbookReading;
  readonly stock: StockReading;
  readonly today: number;
}

export function stockView(actions: ViewActions): View {
  const state: { shown?: Shown } = {};
  const read = keptReading();
  const [summary, basis, said] = [element("h2", { class: "tally" }), element("p", { class: "stock-view__basis" }), element("p", { class: "stock-view__said", role: "status" })];
  const write = element("button", { type: "button", class: "button" }, "Write the purchase list");
  const list = element("div", { class: "stock-view__cards" });
  const parts = keyedChildren(list);
  write.addEventListener("click", () => void (async () => {
    const { shown } = state;
    if (!shown) return;
    said.textContent = "Writing …";
    const sheet = await actions.inWorkbook("The purchase list was not written.", (port) => port.writeSheet("Purchase list", purchaseListSheet(shown.reading.catalogue.settings, shown.stock.groups, shown.today, sayDay)));
    said.textContent = sheet === undefined ? "" : `Written to the new sheet ${sheet}. One undo takes it back.`;
  })());
  return {
    id: "stock", name: "Stock",
    content: element("div", { class: "stock-view" }, summary, basis, write, said, key(), list),
    show: (reading) => {
      const today = todayHere();
      const shown: Shown = { reading, stock: read(reading, today), today };
      state.shown = shown;
      showTally(summary, saySummary(shown));
      basis.textContent = sayBasis(shown);
      write.disabled = !shown.stock.groups.some(({ lines }) => lines.some(isOrdered));
      parts.update([...remarks(shown), ...cards(shown)]);
    },
  };
}

/** Works the rack out again only when something it rests on has changed: most edits of a workbook do not touch it. */
function keptReading(): (reading: WorkbookReading, today: number) => StockReading {
  let last: { readonly rests: readonly unknown[]; readonly stock: StockReading } | undefined;
  return (reading, today) => {
    const rests = [today, reading.catalogue, ...reading.history, ...reading.cars.map(({ report }) => report)];
    if (last?.rests.length !== rests.length || rests.some((one, index) => one !== last?.rests[index])) last = { rests, stock: readStock(reading, today) };
    return last.stock;
  };
}

function saySummary({ reading, stock: { groups, used }, today }: Shown): string {
  const ordered = groups.flatMap(({ lines }) => lines.filter(isOrdered));
  if (groups.length === 0) return "There is no tube to look after.";
  if (ordered.length === 0) return `Today, ${sayDay(today)}: ${used === 0 ? "no usage yet, so no order can be advised" : "nothing to order"}.`;
  const unpriced = ordered.filter(({ priced }) => !priced).length;
  const cost = ordered.reduce((sum, { advice, priced }) => sum + (priced ? (advice?.orderCost ?? 0) : 0), 0);
  return `Today, ${sayDay(today)}: order ${count(ordered.length, "tube")}, ${sayPrice(cost, reading.catalogue.settings)}${unpriced > 0 ? `, ${count(unpriced, "of them", "of them")} without a price` : ""}.`;
}

function sayBasis({ reading, stock: { used, quotes } }: Shown): string {
  const { serviceShare, serviceMeasure, pipelineUse } = reading.catalogue.settings;
  const goal = serviceMeasure === "cycle" ? "of orders arrive before anything is short" : "of demand is met at once";
  const open = pipelineUse === "added" ? `${count(quotes, "open quote")} on top` : "open quotes left out";
  return `From ${count(used, "row")} of usage, with ${open}, so that ${Math.round(serviceShare * 1000) / 10} % ${goal}. Settings change this.`;
}

/** What is to be ordered first, then what runs out soonest. */
function cards({ reading, stock: { groups }, today }: Shown): KeyedChild[] {
  const { settings } = reading.catalogue;
  const rank = ({ lines, stockOut = Infinity }: RackGroup): readonly [number, number] => [lines.some(isOrdered) ? 0 : 1, stockOut];
  const sorted = [...groups].sort((a, b) => rank(a)[0] - rank(b)[0] || compare(rank(a)[1], rank(b)[1]));
  return sorted.map((group) => ({ key: `${sayGroup(group)} ${group.wall}`, content: JSON.stringify([today, settings.units, settings.currency, group]), make: () => stockCard(group, settings) }));
}

const compare = (a: number, b: number): number => (a === b ? 0 : a < b ? -1 : 1);

function remarks({ stock: { remarks: said, used } }: Shown): KeyedChild[] {
  const all = [...(used === 0 ? ["There is no usage yet: a table Usage with Date, Tube and Length tells what was cut and when."] : []), ...said];
  if (all.length === 0) return [];
  return [{ key: "remarks", content: all.join("\n"), make: () => element("section", { class: "notice" },
    element("h3", { class: "notice__heading" }, "Left out or taken for granted"), element("ul", { class: "notice__lines" }, ...all.map((text) => element("li", {}, text)))) }];
}

/** What the marks of the charts mean. */
function key(): HTMLElement {
  const entry = (kind: string, text: string): HTMLElement => element("li", { class: `stock-key__entry stock-key__entry--${kind}` }, text);
  return element("ul", { class: "stock-key", "aria-label": "Marks of the charts" },
    entry("stock", "stock ahead if nothing is ordered; eight times in ten it stays in the band"), entry("used", "used in a week"),
    entry("forecast", "forecast, with the usual spread of a week"), entry("quotes", "open quotes on top, by their chance"));
}
