/** The shipped defaults, so that a user sees every number that may be changed; rate and freight are this invented shop's. */
import { settingEntries } from "../../core/settings";
import type { DemoTable } from "./demo-table";
import { OWN_SETTINGS } from "./quoting";

export const settings: DemoTable = {
  name: "Settings",
  headings: ["Setting", "Value", "Unit", "Source"],
  rows: settingEntries.map(({ name, written, unit, source }) => [name, OWN_SETTINGS[name] ?? written, unit, OWN_SETTINGS[name] === undefined ? source : "choice of the shop (invented)"]),
};
