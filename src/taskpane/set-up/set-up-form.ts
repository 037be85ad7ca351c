/** The offer to make the tables that a workbook lacks, each on a new sheet of its own. */
import { setUpGroups, type SetUpGroup } from "../../workbook/set-up-groups";
import { element } from "../element";
import { twoWayChoice } from "../two-way-choice";
import type { ViewActions } from "../view";
import { count } from "../words";

export interface SetUpForm {
  readonly content: HTMLElement;
  /** @param tables names of our tables that are there; nothing is offered when none is missing */
  show(tables: readonly string[]): void;
}

export function setUpForm({ inWorkbook }: ViewActions): SetUpForm {
  const groups = setUpGroups.map(groupChoice);
  const units = twoWayChoice("set-up-units", "Units of the headings", [{ value: "us", text: "Inches, psi" }, { value: "metric", text: "mm, bar" }]);
  const samples = element("input", { type: "checkbox", id: "set-up-samples" });
  const sampleLine = element("div", { class: "offer__choice" }, samples, element("label", { for: "set-up-samples" }, "With one invented car and its parts as a sample (in inches)"));
  const button = element("button", { type: "button", class: "button" });
  const heading = element("h3", { class: "offer__heading" });
  const content = element("section", { class: "offer" },
    heading,
    element("p", {}, "Each table comes with its headings and lists to choose from, on a new sheet of its own. None of your cells is touched."),
    element("fieldset", { class: "offer__groups" }, element("legend", { class: "unseen" }, "Tables to make"), ...groups.map((group) => group.content)),
    units.content, sampleLine, element("p", {}, button));
  const wanted = (): string[] => groups.flatMap((group) => group.wanted());
  const update = (): void => {
    button.disabled = wanted().length === 0;
    units.content.hidden = samples.checked;
  };
  content.addEventListener("input", update);
  button.addEventListener("click", () => {
    void inWorkbook("The tables were not made.", async (port) => {
      const { setUpTables } = await import(/* webpackChunkName: "set-up" */ "../../workbook/set-up");
      await port.writeTables(setUpTables({ tables: wanted(), units: units.isSecond() ? "metric" : "us", samples: samples.checked }));
    });
  });
  return {
    content,
    show: (tables) => {
      const begun = tables.length > 0;
      const missing = groups.reduce((sum, group) => sum + group.show(tables), 0);
      content.hidden = missing === 0;
      sampleLine.hidden = begun;
      if (begun) samples.checked = false;
      heading.textContent = begun ? `${count(missing, "table")} of Plumbline ${missing === 1 ? "is" : "are"} not in this workbook` : "Set up this workbook";
      button.textContent = begun ? "Add the chosen tables" : "Set up this workbook";
      update();
    },
  };
}

interface GroupChoice {
  readonly content: HTMLElement;
  readonly wanted: () => readonly string[];
  /** @returns how many of the group's tables are missing */
  show(tables: readonly string[]): number;
}

function groupChoice({ id, name, tables }: SetUpGroup): GroupChoice {
  const box = element("input", { type: "checkbox", id: `set-up-${id}`, checked: id !== "found", "aria-describedby": `set-up-${id}-tables` });
  const list = element("p", { class: "offer__tables", id: `set-up-${id}-tables` });
  const content = element("div", { class: "offer__choice" }, box, element("div", {}, element("label", { for: `set-up-${id}` }, name), list));
  let missing: readonly string[] = [];
  return {
    content,
    wanted: () => (box.checked ? missing : []),
    show: (there) => {
      missing = tables.filter((table) => !there.includes(table));
      list.textContent = missing.join(", ");
      content.hidden = missing.length === 0;
      return missing.length;
    },
  };
}
