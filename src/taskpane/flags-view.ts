/** The Flags view: what is wrong on which car, worst first. */
import type { WorkbookReading } from "../workbook/workbook-reports";
import { carCard, rowKey } from "./car-card";
import { codeCards } from "./code-card";
import { element } from "./element";
import { flagFilterControls } from "./flag-filter";
import { countFlags, firstCards, FLAG_GROUPS, flagCounts, flagSections, type FlagGroup, type FlagSection } from "./flags";
import { keyedChildren } from "./keyed-children";
import { flagMark } from "./marks";
import { noticesOf } from "./notices";
import { showTally } from "./unparted";
import type { View, ViewActions } from "./view";
import { count, flagWords, sayVerdicts } from "./words";

/** Cards drawn at once: enough to work through, few enough to draw at once. */
const CARDS_AT_ONCE = 100;

export function flagsView(actions: ViewActions): View {
  const state: { reading: WorkbookReading | undefined; most: number; selected: string | undefined } = { reading: undefined, most: CARDS_AT_ONCE, selected: undefined };
  const page = pageOf();
  const drawAll = (): void => {
    if (!state.reading) return;
    const { cars } = state.reading;
    const filter = controls.filter();
    const sections = flagSections(cars, filter);
    showTally(page.tally, `${sayVerdicts(cars.map(({ verdict }) => verdict))}.`);
    page.notices.update(noticesOf(state.reading, actions));
    controls.showCounts(flagCounts(cars, filter.search));
    page.showSections(firstCards(sections, state.most), sections, { selected: state.selected, by: controls.by() });
    page.nothing.textContent = sections.length > 0 ? "" : sayNothing(filter.search !== "" || filter.severity !== undefined);
  };
  const controls = flagFilterControls(() => {
    state.most = CARDS_AT_ONCE;
    drawAll();
  });
  page.content.insertBefore(controls.content, page.sections);
  page.more.addEventListener("click", () => {
    state.most += CARDS_AT_ONCE;
    drawAll();
  });
  page.sections.addEventListener("click", ({ target }) => {
    const card = clickedCard(target);
    if (!card) return;
    state.selected = rowKey(card.table, card.row);
    drawAll();
    actions.selectRow(card.table, card.row, card.column);
  });
  return { id: "flags", name: "Flags", content: page.content, show: (reading) => { state.reading = reading; drawAll(); } };
}

const sayNothing = (filtered: boolean): string => (filtered ? "No flag fits this choice." : "No flags: every car comes out sound on what the tables say.");

/** The row under the pointer, with the cell that the flag there is about; a click that ends a marking of text is none. */
function clickedCard(target: EventTarget | null): { readonly table: string; readonly row: number; readonly column: string | undefined } | undefined {
  if (!(target instanceof Element)) return undefined;
  const place = target.closest<HTMLElement>("[data-table]");
  const marking = !target.closest("button") && getSelection()?.type === "Range";
  if (!place || marking) return undefined;
  return { table: place.dataset["table"] ?? "", row: Number(place.dataset["row"]), column: target.closest<HTMLElement>("[data-column]")?.dataset["column"] };
}

interface Shown {
  readonly selected: string | undefined;
  readonly by: "car" | "code";
}

interface Page {
  readonly content: HTMLElement;
  readonly tally: HTMLElement;
  readonly notices: ReturnType<typeof keyedChildren>;
  readonly sections: HTMLElement;
  readonly nothing: HTMLElement;
  readonly more: HTMLButtonElement;
  showSections(shown: readonly FlagSection[], all: readonly FlagSection[], how: Shown): void;
}

function pageOf(): Page {
  const tally = element("h2", { class: "tally" });
  const notices = element("div", { class: "notices" });
  const parts = FLAG_GROUPS.map(sectionOf);
  const sections = element("div", { class: "severities" }, ...parts.map(({ content }) => content));
  const nothing = element("p", { class: "nothing" });
  const more = element("button", { type: "button", class: "button more", hidden: true });
  return {
    content: element("div", { class: "flags-view" }, tally, notices, sections, nothing, more),
    tally, notices: keyedChildren(notices), sections, nothing, more,
    showSections: (shown, all, how) => {
      // A card a code holds all its cars, so nothing is left for later.
      const drawn = how.by === "code" ? all : shown;
      for (const part of parts) part.show(ofGroup(drawn, part.group), ofGroup(all, part.group), how);
      const left = countCards(all) - countCards(drawn);
      more.hidden = left === 0;
      more.textContent = `Show ${Math.min(left, CARDS_AT_ONCE)} more of ${left}`;
    },
  };
}

const ofGroup = (sections: readonly FlagSection[], group: FlagGroup): FlagSection["cars"] => sections.find((section) => section.group === group)?.cars ?? [];
const countCards = (sections: readonly FlagSection[]): number => sections.reduce((sum, { cars }) => sum + cars.length, 0);

interface SectionPart {
  readonly group: FlagGroup;
  readonly content: HTMLElement;
  show(shown: FlagSection["cars"], all: FlagSection["cars"], how: Shown): void;
}

function sectionOf(group: FlagGroup): SectionPart {
  const { name, asks } = flagWords[group];
  const number = element("span", { class: "severity__number" });
  const list = element("ol", { class: "cards" });
  const heading = element("h2", { class: "severity__heading", id: `severity-${group}` }, flagMark(group), element("span", { class: "severity__name" }, name), element("span", { class: "severity__asks" }, asks), number);
  const content = element("section", { class: `severity severity--${group}`, "aria-labelledby": `severity-${group}`, hidden: true }, heading, list);
  const cards = keyedChildren(list);
  return {
    group, content,
    show: (shown, all, { selected, by }) => {
      content.hidden = shown.length === 0;
      showTally(number, `${count(countFlags(all), "flag")}, ${count(all.length, "car")}`);
      cards.update(by === "code" ? codeCards(group, shown) : shown.map((car) => carCard(car, selected)));
    },
  };
}
