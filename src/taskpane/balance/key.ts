/** What each line of a plot is, beside a piece of it: a line is known by its stroke and its word, never by colour alone. */
import { drawing, element } from "../element";

/** The line's kind as the style sheet knows it, and its meaning. */
export type KeyEntry = readonly [kind: string, meaning: string];

export const plotKey = (entries: readonly KeyEntry[]): HTMLElement =>
  element("ul", { class: "key" }, ...entries.map(([kind, meaning]) => element("li", {},
    drawing("svg", { class: "key__piece plot__sheet", viewBox: "0 0 28 12", "aria-hidden": true, focusable: "false" },
      kind === "ideal" || kind === "limit" ? drawing("path", { class: `plot__hatch plot__hatch--${kind}`, d: "M6 7l-4 -5M14 7l-4 -5M22 7l-4 -5" }) : undefined,
      drawing("path", { class: `plot__line plot__line--${kind}`, d: "M2 7H26" })),
    meaning)));
