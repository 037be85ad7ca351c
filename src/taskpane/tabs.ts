/** A list of tabs with one view each, worked by pointer and by keyboard (WAI-ARIA tabs pattern, activation follows focus). */
import { element } from "./element";

export interface Tab {
  readonly id: string;
  readonly name: string;
  readonly content: HTMLElement;
}

export interface Tabs {
  /** The strip: the list, and where it is wider than the pane two buttons that push it along. */
  readonly strip: HTMLElement;
  readonly panels: readonly HTMLElement[];
  readonly chosen: () => string;
  /** Turns to a tab and puts the focus on it; an unknown one changes nothing. */
  readonly turnTo: (id: string) => void;
}

export interface TabsOptions {
  /** The tab shown first; the first of the list where there is none of that name. */
  readonly first?: string | undefined;
  /** Told of the tab that is turned to. */
  readonly onChoose: (id: string) => void;
}

export function tabsOf(label: string, tabs: readonly Tab[], { first, onChoose }: TabsOptions): Tabs {
  let chosen = Math.max(0, tabs.findIndex(({ id }) => id === first));
  const buttons = tabs.map(({ id, name }) => element("button", { type: "button", role: "tab", id: `tab-${id}`, class: "tab", "aria-controls": `view-${id}` }, name));
  const panels = tabs.map(({ id, content }) => element("div", { role: "tabpanel", id: `view-${id}`, class: "view", "aria-labelledby": `tab-${id}` }, content));
  const show = (): void => {
    for (const [index, button] of buttons.entries()) {
      button.setAttribute("aria-selected", String(index === chosen));
      button.tabIndex = index === chosen ? 0 : -1;
      panels[index]?.toggleAttribute("hidden", index !== chosen);
    }
  };
  const list = element("div", { role: "tablist", class: "tabs", "aria-label": label }, ...buttons);
  const reveal = (): void => { scrollTo(list, buttons[chosen]); };
  const choose = (index: number, focus = false): void => {
    chosen = (index + tabs.length) % tabs.length;
    show();
    reveal();
    if (focus) buttons[chosen]?.focus({ preventScroll: true });
    onChoose(tabs[chosen]?.id ?? "");
  };
  list.addEventListener("click", ({ target }) => {
    const index = buttons.findIndex((button) => target instanceof Node && button.contains(target));
    if (index >= 0) choose(index);
  });
  list.addEventListener("keydown", (event) => {
    const next = nextTab(event.key, chosen, tabs.length);
    if (next === undefined) return;
    event.preventDefault();
    choose(next, true);
  });
  show();
  return {
    strip: stripOf(list, reveal), panels, chosen: () => tabs[chosen]?.id ?? "",
    turnTo: (id) => {
      const index = tabs.findIndex((tab) => tab.id === id);
      if (index >= 0) choose(index, true);
    },
  };
}

function nextTab(key: string, current: number, count: number): number | undefined {
  const places: Readonly<Record<string, number>> = { ArrowRight: current + 1, ArrowLeft: current - 1, Home: 0, End: count - 1 };
  return places[key];
}

/** The list alone is scrolled, never the page. */
function scrollTo(list: HTMLElement, button: HTMLElement | undefined): void {
  if (!button) return;
  const [start, end] = [button.offsetLeft - list.offsetLeft, button.offsetLeft - list.offsetLeft + button.offsetWidth];
  if (start < list.scrollLeft) list.scrollLeft = start;
  else if (end > list.scrollLeft + list.clientWidth) list.scrollLeft = end - list.clientWidth;
}

/** The buttons are for the pointer: the arrow keys reach every tab. */
function stripOf(list: HTMLElement, reveal: () => void): HTMLElement {
  const push = (by: -1 | 1): HTMLButtonElement => {
    const button = element("button", { type: "button", class: "tabs__push", tabindex: -1, "aria-hidden": true, hidden: true, title: by < 0 ? "Earlier views" : "More views" }, by < 0 ? "‹" : "›");
    button.addEventListener("click", () => { list.scrollLeft += by * list.clientWidth * 0.7; });
    return button;
  };
  const [earlier, later] = [push(-1), push(1)];
  const strip = element("div", { class: "tabs__strip" }, earlier, list, later);
  const update = (): void => {
    const wide = list.scrollWidth > strip.clientWidth + 1;
    for (const button of [earlier, later]) button.hidden = !wide;
    earlier.disabled = list.scrollLeft <= 1;
    later.disabled = list.scrollLeft + list.clientWidth >= list.scrollWidth - 1;
  };
  list.addEventListener("scroll", update, { passive: true });
  new ResizeObserver(() => {
    update();
    reveal();
  }).observe(strip);
  return strip;
}
