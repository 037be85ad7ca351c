/** Settings: every number and choice that a shop may change, each by its name. */
import { nameKey } from "../../core/catalogue";
import { findingEntries, type FindingCode } from "../../core/finding";
import { RULE_SWITCHES, settingEntries, type RuleSwitch, type SettingEntry, type SettingUnit, type Settings } from "../../core/settings";
import { numberOf, sayCell, wordKey } from "../cell";
import { BOUNDED, LARGEST, anything, name, text } from "../column";
import { table, type Refuse, type RowOf } from "../table-spec";
import { compressibility, force, leadTime, length, pressure, sayChoices, share, speed, time, unitNamed, volumePerLength, type Quantity } from "../unit";

/** One setting as its row has it. */
export type SettingRow =
  | { readonly name: string; readonly key: keyof Omit<Settings, "rules">; readonly value: string | number }
  | { readonly name: string; readonly rule: FindingCode; readonly value: RuleSwitch };

const columns = {
  name: name("Setting"),
  value: anything("Value", "a value (for nothing at all write the text '0, as an empty cell reads as 0)"),
  unit: text("Unit"),
  source: text("Source"),
};

type Row = RowOf<typeof columns>;
type RefuseCell = Refuse<keyof typeof columns>;

export const settingsTable = table({
  name: "Settings",
  holds: "one setting",
  columns,
  knownBy: [["name"], ["value"]],
  toCore: (row, refuse): SettingRow | undefined => {
    const rule = /^rule\s+(.+)$/i.exec(row.name)?.[1];
    return rule === undefined ? valueRow(row, refuse) : ruleRow(row, rule, refuse);
  },
});

function valueRow(row: Row, refuse: RefuseCell): SettingRow | undefined {
  const entry = settingEntries.find((one) => nameKey(one.name) === nameKey(row.name));
  if (!entry) {
    refuse("name", `one of ${settingEntries.map((one) => one.name).join(", ")}, or rule and the code of a flag; this row is passed over`, "not-used");
    return undefined;
  }
  if (row.value === undefined) return blankValue(entry, refuse);
  const value = entry.unit === "text" ? wordValue(entry, row, refuse) : numberValue(entry, row, refuse);
  return value === undefined ? undefined : { name: entry.name, key: entry.key, value };
}

/** A blank cell and a typed 0 read alike: where the default is 0 or blank they say the same, elsewhere the value is missing. */
function blankValue(entry: SettingEntry, refuse: RefuseCell): SettingRow | undefined {
  if (entry.value === 0 || entry.value === "") return { name: entry.name, key: entry.key, value: entry.value };
  refuse("value", columns.value.accepts, "data-missing");
  return undefined;
}

function wordValue(entry: SettingEntry, row: Row, refuse: RefuseCell): string | undefined {
  const typed = sayCell(row.value);
  const word = entry.choices ? entry.choices.find((one) => wordKey(one) === wordKey(typed)) : typed;
  if (word === undefined) refuse("value", sayChoices(entry.choices ?? []));
  return word;
}

const QUANTITIES: Partial<Record<SettingUnit, Quantity>> = {
  in: length, ft: length, mm: length, m: length, psi: pressure, bar: pressure, "%": share, lbf: force, N: force, mph: speed, "km/h": speed, s: time, weeks: leadTime, "cc/ft": volumePerLength, "1/MPa": compressibility,
};

function numberValue(entry: SettingEntry, row: Row, refuse: RefuseCell): number | undefined {
  const number = numberOf(row.value);
  const value = number !== undefined && number >= 0 ? inUnit(entry, number, row.unit, refuse) : undefined;
  if (number === undefined || number < 0) refuse("value", "a number of 0 or more");
  else if (number > LARGEST) refuse("value", BOUNDED);
  if (entry.range && value !== undefined && !(value > entry.range.above && value < entry.range.below)) refuse("value", `a number ${entry.range.says}`);
  if (entry.unit === "year" && value !== undefined && !(Number.isInteger(value) && value >= 1886 && value <= 2100)) refuse("value", "a year from 1886 to 2100");
  return value;
}

/** A setting with a quantity needs its unit, as a heading would. */
function inUnit(entry: SettingEntry, number: number, unitText: string | undefined, refuse: RefuseCell): number | undefined {
  const quantity = QUANTITIES[entry.unit];
  if (!quantity) return number;
  const unit = unitText === undefined ? undefined : unitNamed(quantity, unitText);
  if (!unit) refuse("unit", `a unit of ${quantity.name}: ${sayChoices(quantity.units.map((one) => one.name).filter((one) => one !== ""))}`, unitText === undefined ? "data-missing" : "data-out-of-range");
  return unit?.from(number);
}

function ruleRow(row: Row, code: string, refuse: RefuseCell): SettingRow | undefined {
  if (row.value === undefined) refuse("value", columns.value.accepts, "data-missing");
  const rule = (Object.keys(findingEntries) as FindingCode[]).find((one) => one === nameKey(code));
  const value = RULE_SWITCHES.find((one) => one === wordKey(sayCell(row.value)));
  if (!rule || findingEntries[rule].severity === "stop") refuse("name", rule ? "a rule that is no stop (a stop is accepted for one car, in Cars, with a reason)" : "rule and the code of a flag, such as rule metering-missing");
  if (!value && row.value !== undefined) refuse("value", sayChoices(RULE_SWITCHES));
  return rule && value ? { name: row.name, rule, value } : undefined;
}
