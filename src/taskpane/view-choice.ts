/** Which view is in sight: a tab for each place, and under it a tab for each view of the place. */
import { element } from "./element";
import type { Place } from "./places";
import { recall, remember } from "./remembered";
import { tabsOf } from "./tabs";
import type { ViewActions } from "./view";
import { viewSlot, type ViewSlot } from "./view-slot";

export interface ViewChoice {
  /** The tabs of the places. */
  readonly strip: HTMLElement;
  readonly panels: readonly HTMLElement[];
  readonly chosen: () => ViewSlot;
  /** Turns to the view that was in sight when the workbook was open last. */
  readonly restore: () => void;
  /** Turns to a view and puts the focus on its tab; an unknown one changes nothing. */
  readonly turnTo: (view: string) => void;
}

/** @param onChoose told when another view is in sight */
export function viewChoice(places: readonly Place[], actions: ViewActions, onChoose: () => void): ViewChoice {
  const turned = (): void => {
    remember(VIEW, chosen().id);
    toTop(outer.strip);
    onChoose();
  };
  const inner = places.map(({ id, name, views }) => {
    const slots = views.map((entry) => viewSlot(entry, actions));
    return { id, name, slots, tabs: tabsOf(name, slots, { kind: "view", onChoose: turned }) };
  });
  const outer = tabsOf("Places", inner.map(({ id, name, tabs }) => ({ id, name, content: element("div", {}, tabs.strip, ...tabs.panels) })), { kind: "place", onChoose: turned });
  const place = (): (typeof inner)[number] => found(inner, outer.chosen());
  const chosen = (): ViewSlot => found(place().slots, place().tabs.chosen());
  const show = (view: string): boolean => {
    const home = inner.find(({ slots }) => slots.some(({ id }) => id === view));
    if (!home) return false;
    home.tabs.turnTo(view);
    outer.turnTo(home.id);
    return true;
  };
  return {
    strip: outer.strip, panels: outer.panels, chosen,
    restore: () => { show(recall(VIEW) ?? ""); },
    turnTo: (view) => {
      if (!show(view)) return;
      turned();
      place().tabs.focus();
    },
  };
}

/** Under which the chosen view is remembered. */
const VIEW = "view";

function found<T extends { readonly id: string }>(list: readonly T[], id: string): T {
  const one = list.find((each) => each.id === id) ?? list[0];
  if (!one) throw new Error("A place of the panel has no view.");
  return one;
}

/** A view begins at its top, also when the one before it was read far down. */
function toTop(strip: HTMLElement): void {
  const panel = strip.closest(".plumbline");
  if (panel && panel.getBoundingClientRect().top < 0) panel.scrollIntoView({ block: "start" });
}
