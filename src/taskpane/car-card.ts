/** The card of one car in the Flags view, made like a job ticket: a stub with the row, then what is wrong. */
import { capital, ended, type Finding } from "../core/finding";
import type { FlaggedCar } from "./flags";
import type { KeyedChild } from "./keyed-children";
import { element } from "./element";
import { cellAtFault } from "./flag-cell";
import { flagMark } from "./marks";
import { flagWords, severityWords } from "./words";

export const rowKey = (table: string, row: number): string => `${table}|${row}`;

/** @param selected key of the row that is selected in the sheet */
export function carCard(flagged: FlaggedCar, selected: string | undefined): KeyedChild {
  const { line, findings } = flagged;
  const key = rowKey(line.table, line.row);
  const current = key === selected;
  return { key, content: JSON.stringify([line.sheetRow, line.name, line.customer, current, findings]), make: () => cardOf(flagged, current) };
}

function cardOf({ line, group, findings }: FlaggedCar, current: boolean): HTMLElement {
  return element("li", { class: `card card--${group}`, "data-table": line.table, "data-row": line.row, "aria-current": current ? "true" : undefined },
    element("div", { class: "card__stub" },
      flagMark(group),
      element("span", { class: "card__severity" }, flagWords[group].name),
      element("span", { class: "card__row" }, `row ${line.sheetRow}`)),
    element("div", { class: "card__body" },
      element("h3", { class: "card__head" },
        element("button", { type: "button", class: "card__car", title: `Select row ${line.sheetRow} of ${line.table} in the sheet` }, line.name),
        line.customer === "" ? undefined : element("span", { class: "card__customer" }, line.customer)),
      element("ul", { class: "flags" }, ...findings.map(flagOf))));
}

const flagOf = (finding: Finding): HTMLElement => {
  const { code, place, says, cure, basis } = finding;
  return element("li", { class: "flag", "data-code": code, "data-column": cellAtFault(finding) },
    element("p", { class: "flag__place" }, place),
    element("p", { class: "flag__says" }, says),
    standingOf(finding),
    element("p", { class: "flag__cure" }, element("span", { class: "flag__label" }, "Cure"), ` ${ended(cure)}`),
    element("p", { class: "flag__basis" }, element("span", { class: "flag__label" }, "Rests on"), ` ${basis}`));
};

/** Why a flag counts no more, or is graded other than its rule says. */
function standingOf({ standing, severity, because }: Finding): HTMLElement | undefined {
  if (because === undefined) return undefined;
  const was = standing === "accepted" ? `${severityWords[severity].name}, ${because}` : capital(because);
  return element("p", { class: "flag__because" }, `${was}.`);
}
