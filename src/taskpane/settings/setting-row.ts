/** One setting with its control. What is chosen or typed stands in the panel alone until a click writes it into the table. */
import { element } from "../element";
import { decimalMark } from "../locale";
import { readTyped, sayTyped } from "../typed-number";
import type { NewValue, StandingValue } from "./settings-table";

export interface SettingShown {
  /** As written in the table. */
  readonly name: string;
  /** What it is called in the panel. */
  readonly title: string;
  readonly meaning: string;
  readonly source: string;
  /** As an untouched workbook has it. */
  readonly defaultSays: string;
  /** What the control shows where the table has no row. */
  readonly defaultValue: string;
  readonly unit: string;
  readonly choices: readonly string[];
}

export interface SettingRowActions {
  /** Writes the value; answers whether it was written. */
  readonly write: (wanted: NewValue) => Promise<boolean>;
  readonly showRow: (row: number) => void;
}

export interface SettingRow {
  readonly content: HTMLElement;
  readonly text: string;
  /** @param standing what the table has; undefined where it has no row */
  show(standing: StandingValue | undefined, currency: string): void;
}

export function settingRow(shown: SettingShown, { write, showRow }: SettingRowActions): SettingRow {
  const id = `setting-${shown.name.replace(/\W+/g, "-")}`;
  const field = fieldOf(shown, id);
  const unit = element("span", { class: "setting__unit" });
  const button = element("button", { type: "button", class: "button setting__write", hidden: true }, "Write into the sheet", element("span", { class: "unseen" }, `: ${shown.title}`));
  const place = element("p", { class: "setting__place" });
  const said = element("span", { class: "setting__said", role: "status" });
  let standing: StandingValue | undefined;
  const held = (): string => asShown(shown, standing?.value ?? shown.defaultValue);
  const isChanged = (): boolean => field.value !== held();
  const update = (): void => {
    const { says, isDoubtful } = isNumber(shown) && isChanged() ? sayTyped(field.value, decimalMark()) : { says: "", isDoubtful: false };
    if (says !== "") said.textContent = says;
    button.hidden = !isChanged() || isDoubtful;
  };
  field.addEventListener("input", () => {
    said.textContent = "";
    update();
  });
  button.addEventListener("click", () => {
    void write({ name: shown.name, typed: forTable(shown, field.value.trim()), unit: shown.unit, row: standing?.row, source: shown.source }).then((done) => {
      if (done) said.textContent = `Written: ${[field.value, unit.textContent].join(" ").trim()}.`;
    });
  });
  const content = element("div", { class: "setting" },
    element("label", { class: "setting__name", for: id }, shown.title),
    element("p", { class: "setting__meaning", id: `${id}-says` }, shown.meaning),
    element("div", { class: "setting__control" }, field, unit, button, said), place);
  return {
    content, text: `${shown.name} ${shown.title} ${shown.meaning}`.toLowerCase(),
    show: (now, currency) => {
      const untouched = !isChanged() || now?.value === field.value;
      standing = now;
      if (untouched) field.value = held();
      unit.textContent = sayUnit(now && now.unit !== "" ? now.unit : shown.unit, currency);
      place.replaceChildren(...placeOf(shown, now, showRow));
      update();
    },
  };
}

const isNumber = ({ unit, choices }: SettingShown): boolean => unit !== "text" && choices.length === 0;

/** A figure of the table with the reader's decimal mark; what is typed there in another way stays as it is. */
const asShown = (shown: SettingShown, value: string): string => (isNumber(shown) && /^-?\d*\.?\d+$/.test(value) ? value.replace(".", decimalMark()) : value);

/** What is no number goes as it is, and the table's own rule says what it takes. */
function forTable(shown: SettingShown, typed: string): string {
  const value = isNumber(shown) ? readTyped(typed, decimalMark())?.value : undefined;
  return value === undefined ? typed : String(value);
}

/** Words of the table that say what kind of figure it is are no units to read. */
const sayUnit = (unit: string, currency: string): string => (["text", "count", "year", "ratio"].includes(unit) ? "" : unit === "money" ? currency : unit);

function fieldOf(shown: SettingShown, id: string): HTMLInputElement | HTMLSelectElement {
  const { choices, unit, defaultValue } = shown;
  const attributes = { id, class: "setting__field", "aria-describedby": `${id}-says` };
  if (choices.length === 0) return Object.assign(element("input", { ...attributes, type: "text", autocomplete: "off", spellcheck: "false", inputmode: unit === "text" ? "text" : "decimal" }), { value: asShown(shown, defaultValue) });
  const field = element("select", attributes, ...choices.map((choice) => element("option", { value: choice }, choice)));
  field.value = defaultValue;
  return field;
}

function placeOf({ defaultSays, source }: SettingShown, standing: StandingValue | undefined, showRow: SettingRowActions["showRow"]): (Node | string)[] {
  const rests = source === "" ? "" : ` Source: ${source}.`;
  if (!standing) return [`${defaultSays}, not written in the sheet.${rests}`];
  const link = element("button", { type: "button", class: "link" }, `row ${standing.sheetRow} of ${standing.table}`);
  link.addEventListener("click", () => { showRow(standing.row); });
  return ["From ", link, `. ${defaultSays}.${standing.source === "" ? rests : ` Source: ${standing.source}.`}`];
}
