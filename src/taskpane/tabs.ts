/** A list of tabs with one panel each, worked by pointer and by keyboard (WAI-ARIA tabs pattern, activation follows focus). */
import { element } from "./element";

export interface Tab {
  readonly id: string;
  readonly name: string;
  readonly content: HTMLElement;
}

export interface Tabs {
  readonly strip: HTMLElement;
  readonly panels: readonly HTMLElement[];
  readonly chosen: () => string;
  /** Turns to a tab and says nothing of it; an unknown one changes nothing. */
  readonly turnTo: (id: string) => void;
  /** Puts the focus on the chosen tab. */
  readonly focus: () => void;
}

export interface TabsOptions {
  /** Begins the id of each panel and names its class: `view` makes `view-cars`. */
  readonly kind: string;
  /** Told of the tab that the user turns to. */
  readonly onChoose: (id: string) => void;
}

export function tabsOf(label: string, tabs: readonly Tab[], { kind, onChoose }: TabsOptions): Tabs {
  let chosen = 0;
  const buttons = tabs.map(({ id, name }) => element("button", { type: "button", role: "tab", id: `tab-${kind}-${id}`, class: "tab", "data-word": name, "aria-controls": `${kind}-${id}` }, name));
  const panels = tabs.map(({ id, content }) => element("div", { role: "tabpanel", id: `${kind}-${id}`, class: kind, "aria-labelledby": `tab-${kind}-${id}` }, content));
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
  const focus = (): void => { buttons[chosen]?.focus({ preventScroll: true }); };
  const strip = element("div", { role: "tablist", class: "tabs", "aria-label": label }, ...buttons);
  strip.addEventListener("click", ({ target }) => {
    const index = buttons.findIndex((button) => target instanceof Node && button.contains(target));
    if (index >= 0) choose(index);
  });
  strip.addEventListener("keydown", (event) => {
    const next = nextTab(event.key, chosen, tabs.length);
    if (next === undefined) return;
    event.preventDefault();
    choose(next);
    focus();
  });
  show();
  return {
    strip, panels, focus, chosen: () => tabs[chosen]?.id ?? "",
    turnTo: (id) => {
      const index = tabs.findIndex((tab) => tab.id === id);
      if (index < 0) return;
      chosen = index;
      show();
    },
  };
}

function nextTab(key: string, current: number, count: number): number | undefined {
  const places: Readonly<Record<string, number>> = { ArrowRight: current + 1, ArrowLeft: current - 1, Home: 0, End: count - 1 };
  return places[key];
}
