/** A list of tabs with one view each, worked by pointer and by keyboard (WAI-ARIA tabs pattern, activation follows focus). */
import { element } from "./element";

export interface Tab {
  readonly id: string;
  readonly name: string;
  readonly content: HTMLElement;
}

export interface Tabs {
  readonly list: HTMLElement;
  readonly panels: readonly HTMLElement[];
  readonly chosen: () => string;
}

/** @param onChoose told of the tab the user turned to */
export function tabsOf(label: string, tabs: readonly Tab[], onChoose: (id: string) => void): Tabs {
  let chosen = 0;
  const buttons = tabs.map(({ id, name }) => element("button", { type: "button", role: "tab", id: `tab-${id}`, class: "tab", "aria-controls": `view-${id}` }, name));
  const panels = tabs.map(({ id, content }) => element("div", { role: "tabpanel", id: `view-${id}`, class: "view", "aria-labelledby": `tab-${id}` }, content));
  const show = (): void => {
    for (const [index, button] of buttons.entries()) {
      button.setAttribute("aria-selected", String(index === chosen));
      button.tabIndex = index === chosen ? 0 : -1;
      panels[index]?.toggleAttribute("hidden", index !== chosen);
    }
  };
  const choose = (index: number): void => {
    chosen = (index + tabs.length) % tabs.length;
    show();
    onChoose(tabs[chosen]?.id ?? "");
  };
  const list = element("div", { role: "tablist", class: "tabs", "aria-label": label }, ...buttons);
  list.addEventListener("click", ({ target }) => {
    const index = buttons.findIndex((button) => target instanceof Node && button.contains(target));
    if (index >= 0) choose(index);
  });
  list.addEventListener("keydown", (event) => {
    const next = nextTab(event.key, chosen, tabs.length);
    if (next === undefined) return;
    event.preventDefault();
    choose(next);
    buttons[chosen]?.focus();
  });
  show();
  return { list, panels, chosen: () => tabs[chosen]?.id ?? "" };
}

function nextTab(key: string, current: number, count: number): number | undefined {
  const places: Readonly<Record<string, number>> = { ArrowRight: current + 1, ArrowLeft: current - 1, Home: 0, End: count - 1 };
  return places[key];
}
