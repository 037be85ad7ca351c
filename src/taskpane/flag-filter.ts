/** The controls over the flags: one severity or all, and a search. */
import { SEVERITIES, type Severity } from "../core/finding";
import type { FlagFilter } from "./flags";
import { element } from "./element";
import { severityMark } from "./marks";
import { twoWayChoice } from "./two-way-choice";
import { sayNumber, severityWords } from "./words";

export interface FlagFilterControls {
  readonly content: HTMLElement;
  readonly filter: () => FlagFilter;
  /** Cards by car, or by kind of flag. */
  readonly by: () => "car" | "code";
  /** Shows how many flags stand behind each choice. */
  showCounts(counts: Readonly<Record<Severity, number>>): void;
}

export function flagFilterControls(onFilter: () => void): FlagFilterControls {
  const search = element("input", { type: "search", class: "search__field", id: "flag-search", placeholder: "Car, customer, part or word", autocomplete: "off", spellcheck: "false" });
  const choices = [undefined, ...SEVERITIES].map(choiceOf);
  const chosen = (): Severity | undefined => choices.find(({ input }) => input.checked)?.severity;
  const by = twoWayChoice("flag-grouping", "Group the flags", [{ value: "car", text: "By car" }, { value: "code", text: "By fault" }]);
  const content = element("div", { class: "filter", role: "search", "aria-label": "Flags" },
    element("fieldset", { class: "choices" }, element("legend", { class: "unseen" }, "Show flags"), ...choices.map(({ label }) => label)),
    by.content,
    element("div", { class: "search" }, element("label", { class: "unseen", for: "flag-search" }, "Search the flags"), search));
  content.addEventListener("input", onFilter);
  return {
    content,
    filter: () => ({ severity: chosen(), search: search.value }),
    by: () => (by.isSecond() ? "code" : "car"),
    showCounts: (counts) => {
      const all = SEVERITIES.reduce((sum, severity) => sum + counts[severity], 0);
      for (const { severity, number } of choices) number.textContent = sayNumber(severity === undefined ? all : counts[severity]);
    },
  };
}

interface Choice {
  readonly severity: Severity | undefined;
  readonly label: HTMLElement;
  readonly input: HTMLInputElement;
  readonly number: HTMLElement;
}

function choiceOf(severity: Severity | undefined): Choice {
  const input = element("input", { type: "radio", class: "unseen", name: "flag-severity", value: severity ?? "all", checked: severity === undefined });
  const number = element("span", { class: "choice__number" }, "0");
  const label = element("label", { class: "choice" }, input, element("span", { class: "choice__top" }, severity && severityMark(severity), number), element("span", { class: "choice__word" }, severity ? severityWords[severity].name : "All"));
  return { severity, label, input, number };
}
