/** The card of one kind of flag over all cars: what it is, how often, and each car that has it. */
import { ended, type Finding } from "../core/finding";
import { groupBy } from "../core/group-by";
import { element } from "./element";
import { cellAtFault } from "./flag-cell";
import type { FlaggedCar, FlagGroup } from "./flags";
import type { KeyedChild } from "./keyed-children";
import { flagMark } from "./marks";
import { count, flagWords } from "./words";

interface OnCar {
  readonly flagged: FlaggedCar;
  readonly finding: Finding;
}

/** Cars listed on one card before the rest is counted. */
const CARS_ON_CARD = 30;

/** One card a code, the code that most cars have first. */
export function codeCards(group: FlagGroup, cars: readonly FlaggedCar[]): KeyedChild[] {
  const each = cars.flatMap((flagged) => flagged.findings.map((finding): OnCar => ({ flagged, finding })));
  const codes = [...groupBy(each, ({ finding }) => finding.code)].sort((a, b) => b[1].length - a[1].length || (a[0] < b[0] ? -1 : 1));
  return codes.map(([code, on]) => ({
    key: `code ${code}`,
    content: JSON.stringify(on.map(({ flagged: { line }, finding }) => [line.table, line.row, line.sheetRow, line.name, line.customer, finding.place, finding.says])),
    make: () => cardOf(group, code, on),
  }));
}

function cardOf(group: FlagGroup, code: string, on: readonly OnCar[]): HTMLElement {
  const [first] = on;
  const more = on.length - CARS_ON_CARD;
  return element("li", { class: `card card--${group}` },
    element("div", { class: "card__stub" }, flagMark(group), element("span", { class: "card__severity" }, flagWords[group].name), element("span", { class: "card__row" }, count(on.length, "flag"))),
    element("div", { class: "card__body" },
      element("h3", { class: "card__head" }, code.replaceAll("-", " ")),
      element("p", { class: "flag__cure" }, element("span", { class: "flag__label" }, "Cure"), ` ${ended(first?.finding.cure ?? "")}`),
      element("ul", { class: "code-cars" }, ...on.slice(0, CARS_ON_CARD).map(carOf)),
      more > 0 ? element("p", { class: "flag__basis" }, `and ${count(more, "flag")} more`) : undefined));
}

const carOf = ({ flagged: { line }, finding }: OnCar): HTMLElement =>
  element("li", { "data-table": line.table, "data-row": line.row, "data-column": cellAtFault(finding) },
    element("button", { type: "button", class: "link", title: `Select row ${line.sheetRow} of ${line.table} in the sheet` }, line.name),
    line.customer === "" ? undefined : element("span", { class: "card__customer" }, ` ${line.customer}`),
    element("span", { class: "code-cars__place" }, finding.place));
