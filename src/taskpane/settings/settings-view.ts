/** The Settings view: every number, choice and rule that a shop may change, with its default, unit and source. */
import { findingEntries, type FindingCode } from "../../core/finding";
import { nameKey } from "../../core/catalogue";
import { RULE_SWITCHES, type SettingEntry } from "../../core/settings";
import type { WorkbookReading } from "../../workbook/workbook-reports";
import { element } from "../element";
import { decimalMark } from "../locale";
import { setUpForm } from "../set-up/set-up-form";
import { asTyped } from "../typed-number";
import type { View, ViewActions } from "../view";
import { count, sayNumber } from "../words";
import { excelCare } from "./excel-care";
import { settingGroups, stopRules, switchableRules } from "./setting-groups";
import { settingRow, type SettingRow, type SettingShown } from "./setting-row";
import { standingValues, writeSetting } from "./settings-table";

export function settingsView(actions: ViewActions): View {
  const state: { reading: WorkbookReading | undefined } = { reading: undefined };
  const rows = new Map<string, SettingRow>();
  const makeRow = (shown: SettingShown): SettingRow => {
    const row = settingRow(shown, {
      write: async (wanted) => await actions.inWorkbook(`${shown.title} was not written.`, (port) => writeSetting(port, state.reading?.settingsTable, wanted).then(() => true)) ?? false,
      showRow: (at) => { if (state.reading?.settingsTable) actions.selectRow(state.reading.settingsTable.name, at, "Value"); },
    });
    rows.set(nameKey(shown.name), row);
    return row;
  };
  const groups = [
    ...settingGroups.map(({ name, entries }, index) => groupPart(name, entries.map((entry) => makeRow(entryShown(entry))), index === 0)),
    groupPart("Rules", switchableRules.map((code) => makeRow(ruleShown(code))), false, stopsLine()),
  ];
  const search = searchField(groups);
  const tables = setUpForm(actions);
  return {
    id: "settings", name: "Settings",
    content: element("div", { class: "settings-view" },
      element("h2", { class: "tally" }, "Settings"),
      element("p", { class: "settings__intro" }, "What is not in the sheet's Settings table stands at its default. A change goes into the sheet when you say so."),
      search, ...groups.map(({ content }) => content), tables.content, actions.excelCare && excelCare(actions.excelCare)),
    show: (reading) => {
      state.reading = reading;
      const standing = standingValues(reading.settingsTable);
      for (const [key, row] of rows) row.show(standing.get(key), reading.catalogue.settings.currency);
      tables.show(reading.tables);
    },
  };
}

function entryShown({ name, written, unit, choices = [], meaning, source }: SettingEntry): SettingShown {
  const plain = ["text", "money", "count", "year", "ratio"].includes(unit);
  const says = written === "" ? "Default: blank" : `Default: ${typeof written === "number" ? asTyped(written, decimalMark()) : String(written)}${plain ? "" : ` ${unit}`}`;
  return { name, title: name, meaning: `${meaning}.`, source, defaultSays: says, defaultValue: String(written), unit, choices };
}

function ruleShown(code: FindingCode): SettingShown {
  const { severity, when, basis } = findingEntries[code];
  return { name: `rule ${code}`, title: code.replaceAll("-", " "), meaning: `Flagged when ${when}.`, source: basis, defaultSays: `By the rule itself: ${severity}`, defaultValue: severity, unit: "text", choices: RULE_SWITCHES };
}

const stopsLine = (): HTMLElement =>
  element("p", { class: "settings__stops" }, `${sayNumber(stopRules.length)} more rules are stops, which cannot be switched off: ${stopRules.map((code) => code.replaceAll("-", " ")).join(", ")}. A stop is accepted for one car, with a reason, in the column Accepted of Cars.`);

interface GroupPart {
  readonly content: HTMLDetailsElement;
  /** Hides what lacks one of the words. @returns how many rows are left */
  filter(words: readonly string[]): number;
}

function groupPart(name: string, rows: readonly SettingRow[], open: boolean, after?: HTMLElement): GroupPart {
  const content = element("details", { class: "settings__group", open }, element("summary", {}, element("span", { class: "settings__heading" }, name), element("span", { class: "settings__count" }, ` ${count(rows.length, "setting")}`)), ...rows.map((row) => row.content), after);
  return {
    content,
    filter: (words) => {
      for (const row of rows) row.content.hidden = !words.every((word) => row.text.includes(word));
      const left = rows.filter((row) => !row.content.hidden).length;
      content.hidden = left === 0;
      content.open = words.length > 0 || open;
      return left;
    },
  };
}

function searchField(groups: readonly GroupPart[]): HTMLElement {
  const search = element("input", { type: "search", class: "search__field", id: "setting-search", placeholder: "Setting or rule", autocomplete: "off", spellcheck: "false" });
  const found = element("p", { class: "nothing", role: "status" });
  search.addEventListener("input", () => {
    const words = search.value.toLowerCase().split(/\s+/).filter((word) => word !== "");
    const left = groups.reduce((sum, group) => sum + group.filter(words), 0);
    found.textContent = words.length === 0 ? "" : left === 0 ? "No setting fits these words." : `${sayNumber(left)} found.`;
  });
  return element("div", { class: "search", role: "search", "aria-label": "Settings" }, element("label", { class: "unseen", for: "setting-search" }, "Search the settings"), search, found);
}
