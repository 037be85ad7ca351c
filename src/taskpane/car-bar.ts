/** The chosen car over a view that shows one car at a time, with the way to the next. */
import type { CarLine, WorkbookReading } from "../workbook/workbook-reports";
import { groupOf, sayModel, worstFirst } from "./car-list";
import { element } from "./element";
import { carMark } from "./marks";
import type { ViewActions } from "./view";
import { groupWords, sayNumber } from "./words";

export interface CarBar {
  readonly content: HTMLElement;
  /** @returns the car it shows */
  show(reading: WorkbookReading): CarLine | undefined;
}

export function carBar({ carOf, chooseCar, selectRow }: ViewActions): CarBar {
  let [shown, order]: [CarLine | undefined, readonly CarLine[]] = [undefined, []];
  const step = (by: number): void => {
    const next = order[order.findIndex((line) => line === shown) + by];
    if (next) chooseCar(next);
  };
  const name = element("button", { type: "button", class: "car-bar__car" });
  const about = element("p", { class: "car-bar__about" });
  const mark = element("span", { class: "car-bar__verdict" });
  const [before, after] = [stepButton("Worse", "‹"), stepButton("Next", "›")];
  before.addEventListener("click", () => { step(-1); });
  after.addEventListener("click", () => { step(1); });
  name.addEventListener("click", () => { if (shown) selectRow(shown.table, shown.row); });
  const content = element("div", { class: "car-bar" },
    element("div", { class: "car-bar__name" }, element("h2", { class: "tally" }, name), mark, about),
    element("div", { class: "car-bar__steps", role: "group", "aria-label": "Other cars" }, before, after));
  return {
    content,
    show: (reading) => {
      shown = reading.cars.length > 0 ? carOf(reading) : undefined;
      order = worstFirst(reading.cars);
      if (!shown) return undefined;
      const place = order.indexOf(shown);
      name.textContent = shown.name;
      name.title = `Select row ${shown.sheetRow} of ${shown.table} in the sheet`;
      mark.replaceChildren(carMark(groupOf(shown)), groupWords[groupOf(shown)].name);
      about.replaceChildren(...[shown.customer, sayModel(shown)].filter((text) => text !== "").map((text) => `${text} · `), element("span", { class: "unparted" }, `${sayNumber(place + 1)} of ${sayNumber(order.length)},`), " worst first");
      before.disabled = place <= 0;
      after.disabled = place >= order.length - 1;
      return shown;
    },
  };
}

const stepButton = (word: string, arrow: string): HTMLButtonElement =>
  element("button", { type: "button", class: "button button--plain car-bar__step", "aria-label": `${word} car` }, element("span", { "aria-hidden": true }, arrow));
