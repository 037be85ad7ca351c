/** The card of one car in the Flags view, made like a job ticket: a stub with the row, then what is wrong. */
import type { Finding } from "../core/finding";
import type { FlaggedCar } from "./flags";
import type { KeyedChild } from "./keyed-children";
import { element } from "./element";
import { severityMark } from "./marks";
import { severityWords } from "./words";

export const rowKey = (table: string, row: number): string => `${table}|${row}`;

/** @param selected key of the row that is selected in the sheet */
export function carCard(flagged: FlaggedCar, selected: string | undefined): KeyedChild {
  const { line, findings } = flagged;
  const key = rowKey(line.table, line.row);
  const current = key === selected;
  return { key, content: JSON.stringify([line.name, line.customer, current, findings]), make: () => cardOf(flagged, current) };
}

function cardOf({ line, severity, findings }: FlaggedCar, current: boolean): HTMLElement {
  return element("li", { class: `card card--${severity}`, "data-table": line.table, "data-row": line.row, "aria-current": current ? "true" : undefined },
    element("div", { class: "card__stub" },
      severityMark(severity),
      element("span", { class: "card__severity" }, severityWords[severity].name),
      element("span", { class: "card__row" }, `row ${line.row + 1}`)),
    element("div", { class: "card__body" },
      element("h3", { class: "card__head" },
        element("button", { type: "button", class: "card__car", title: `Select row ${line.row + 1} of ${line.table} in the sheet` }, line.name),
        line.customer === "" ? undefined : element("span", { class: "card__customer" }, line.customer)),
      element("ul", { class: "flags" }, ...findings.map(flagOf))));
}

const flagOf = ({ code, place, says, cure, basis }: Finding): HTMLElement =>
  element("li", { class: "flag", "data-code": code },
    element("p", { class: "flag__place" }, place),
    element("p", { class: "flag__says" }, says),
    element("p", { class: "flag__cure" }, element("span", { class: "flag__label" }, "Cure"), ` ${cure}.`),
    element("p", { class: "flag__basis" }, element("span", { class: "flag__label" }, "Rests on"), ` ${basis}`));
