/** The Cars view: every car, worst first, and the choice of the one that the other views show. */
import { SEVERITIES, type Severity } from "../core/finding";
import type { CarLine, WorkbookReading } from "../workbook/workbook-reports";
import { rowKey } from "./car-card";
import { CAR_GROUPS, countOpen, filterCars, groupCounts, groupOf, openQuestionsOf, sayModel, type CarFilter, type CarGroup } from "./car-list";
import { element } from "./element";
import { keyedChildren, type KeyedChild } from "./keyed-children";
import { carMark } from "./marks";
import { noticesOf } from "./notices";
import { showTally } from "./unparted";
import type { View, ViewActions } from "./view";
import { count, groupWords, sayNumber, sayVerdicts } from "./words";

/** Rows drawn at once. */
const CARS_AT_ONCE = 100;

export function carsView(actions: ViewActions): View {
  const state: { reading: WorkbookReading | undefined; most: number } = { reading: undefined, most: CARS_AT_ONCE };
  const [tally, notices, list, nothing] = [element("h2", { class: "tally" }), element("div", { class: "notices" }), element("ol", { class: "cards" }), element("p", { class: "nothing" })];
  const more = element("button", { type: "button", class: "button more", hidden: true });
  const [rows, faults] = [keyedChildren(list), keyedChildren(notices)];
  const draw = (): void => {
    if (!state.reading) return;
    const { cars } = state.reading;
    const filter = controls.filter();
    const shown = filterCars(cars, filter);
    const chosen = actions.carOf(state.reading);
    showTally(tally, `${sayVerdicts(cars.map(({ verdict }) => verdict))}.`);
    faults.update(noticesOf(state.reading, actions));
    controls.showCounts(groupCounts(cars, filter.search));
    rows.update(shown.slice(0, state.most).map((line) => carRow(line, line === chosen)));
    nothing.textContent = shown.length > 0 ? "" : "No car fits this choice.";
    more.hidden = shown.length <= state.most;
    more.textContent = `Show ${Math.min(shown.length - state.most, CARS_AT_ONCE)} more of ${sayNumber(shown.length - state.most)}`;
  };
  const controls = filterControls(() => {
    state.most = CARS_AT_ONCE;
    draw();
  });
  more.addEventListener("click", () => {
    state.most += CARS_AT_ONCE;
    draw();
  });
  list.addEventListener("click", ({ target }) => {
    const line = state.reading && clickedCar(state.reading, target);
    if (line) follow(actions, line, target);
  });
  return { id: "cars", name: "Cars", content: element("div", { class: "cars-view" }, tally, notices, controls.content, list, nothing, more), show: (reading) => { state.reading = reading; draw(); } };
}

function clickedCar({ cars }: WorkbookReading, target: EventTarget | null): CarLine | undefined {
  const row = target instanceof Element && target.closest("button") ? target.closest<HTMLElement>(".car") : null;
  return row ? cars.find((line) => line.table === row.dataset["table"] && line.row === Number(row.dataset["row"])) : undefined;
}

/** The name leads to the sheet, the buttons beside it to another view of the car. */
function follow({ chooseCar, turnTo, selectRow }: ViewActions, line: CarLine, target: EventTarget | null): void {
  chooseCar(line);
  const view = target instanceof Element ? target.closest<HTMLElement>("[data-view]")?.dataset["view"] : undefined;
  if (view) turnTo(view);
  else selectRow(line.table, line.row);
}

function carRow(line: CarLine, chosen: boolean): KeyedChild {
  const counts = SEVERITIES.map((severity) => countOpen(line, severity));
  return { key: rowKey(line.table, line.row), content: JSON.stringify([line.sheetRow, line.name, line.customer, sayModel(line), line.verdict, counts, openQuestionsOf(line), chosen]), make: () => drawRow(line, chosen) };
}

function drawRow(line: CarLine, chosen: boolean): HTMLElement {
  const group = groupOf(line);
  const questions = openQuestionsOf(line);
  return element("li", { class: `car car--${group}`, "data-table": line.table, "data-row": line.row, "aria-current": chosen ? "true" : undefined },
    element("span", { class: "car__verdict" }, carMark(group), element("span", { class: "car__group" }, line.verdict === undefined ? "Not worked out" : groupWords[group].name)),
    element("div", { class: "car__body" },
      element("h3", { class: "car__name" }, element("button", { type: "button", class: "link", title: `Select row ${line.sheetRow} of ${line.table} in the sheet` }, line.name), line.customer === "" ? undefined : element("span", { class: "car__customer" }, line.customer)),
      element("p", { class: "car__model" }, sayModel(line) || "platform not known"),
      countsLine(line)),
    element("div", { class: "car__ways" },
      wayTo("drawing", "Drawing", line),
      questions > 0 ? wayTo("questions", count(questions, "question"), line) : undefined));
}

const wayTo = (view: string, text: string, { name }: CarLine): HTMLElement =>
  element("button", { type: "button", class: "link car__way", "data-view": view }, text, element("span", { class: "unseen" }, ` of ${name}`));

const COUNT_WORDS: Readonly<Record<Severity, (number: number) => string>> = {
  stop: (number) => count(number, "stop"),
  decide: (number) => `${sayNumber(number)} to decide`,
  watch: (number) => `${sayNumber(number)} to watch`,
  note: (number) => count(number, "note"),
};

function countsLine(line: CarLine): HTMLElement {
  const shown = element("p", { class: "car__counts" });
  showTally(shown, sayCounts(line));
  return shown;
}

function sayCounts(line: CarLine): string {
  const counts = SEVERITIES.map((severity) => ({ severity, number: countOpen(line, severity) })).filter(({ number }) => number > 0);
  return counts.length === 0 ? "no flags" : counts.map(({ severity, number }) => COUNT_WORDS[severity](number)).join(", ");
}

interface FilterControls {
  readonly content: HTMLElement;
  readonly filter: () => CarFilter;
  showCounts(counts: Readonly<Record<CarGroup, number>>): void;
}

function filterControls(onFilter: () => void): FilterControls {
  const search = element("input", { type: "search", class: "search__field", id: "car-search", placeholder: "Car, customer or platform", autocomplete: "off", spellcheck: "false" });
  const choices = [undefined, ...CAR_GROUPS].map((group) => {
    const input = element("input", { type: "radio", class: "unseen", name: "car-group", value: group ?? "all", checked: group === undefined });
    const number = element("span", { class: "choice__number" }, "0");
    const label = element("label", { class: "choice" }, input, element("span", { class: "choice__top" }, group && carMark(group), number), element("span", { class: "choice__word" }, group ? groupWords[group].name : "All"));
    return { group, input, number, label };
  });
  const content = element("div", { class: "filter", role: "search", "aria-label": "Cars" },
    element("fieldset", { class: "choices" }, element("legend", { class: "unseen" }, "Show cars"), ...choices.map(({ label }) => label)),
    element("div", { class: "search" }, element("label", { class: "unseen", for: "car-search" }, "Search the cars"), search));
  content.addEventListener("input", onFilter);
  return {
    content,
    filter: () => ({ group: choices.find(({ input }) => input.checked)?.group, search: search.value }),
    showCounts: (counts) => {
      const all = CAR_GROUPS.reduce((sum, group) => sum + counts[group], 0);
      for (const { group, number } of choices) number.textContent = sayNumber(group === undefined ? all : counts[group]);
    },
  };
}
