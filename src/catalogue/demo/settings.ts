/** The shipped defaults, so that a user sees every number that may be changed. */
import { settingEntries } from "../../core/settings";
import type { DemoTable } from "./demo-table";

export const settings: DemoTable = {
  name: "Settings",
  headings: ["Setting", "Value", "Unit", "Source"],
  rows: settingEntries.map(({ name, written, unit, source }) => [name, written, unit, source]),
};
