/** What is missing before the balance can be worked out, each with the way to its cell. */
import type { Gap } from "../../core/balance/figures";
import { element } from "../element";

/** @param jump leads to the cell that a figure belongs in */
export function gapList(heading: string, gaps: readonly Gap[], jump: (gap: Gap) => void): HTMLElement | undefined {
  if (gaps.length === 0) return undefined;
  return element("section", { class: "gaps" },
    element("h3", { class: "gaps__heading" }, heading),
    element("ul", {}, ...gaps.map((gap) => {
      const button = element("button", { type: "button", class: "link" }, `${gap.table}, ${gap.subject}: ${gap.column}`);
      button.addEventListener("click", () => { jump(gap); });
      return element("li", {}, button);
    })));
}
