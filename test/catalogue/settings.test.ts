import { defaultSettings, settingEntries } from "../../src/core/settings";
import { catalogueOf, errorsOf, tableOf } from "./tables";

const settings = (...rows: readonly (readonly unknown[])[]) => tableOf("Setting|Value|Unit|Source", ...rows);

test("the shipped settings, written into a table as docs list them, read as the defaults", () => {
  const rows = settingEntries.map(({ name, written, unit, source }) => [name, written, unit, source]);
  const read = catalogueOf(settings(...rows)).settings;
  expect(Object.keys(read).sort()).toEqual(Object.keys(defaultSettings).sort());
  for (const { key, value } of settingEntries) expect([key, typeof value === "number" ? Number(read[key]).toPrecision(12) : read[key]]).toEqual([key, typeof value === "number" ? value.toPrecision(12) : value]);
});

test("a setting given replaces its default, in the unit its row states; the others stay", () => {
  const read = catalogueOf(settings(["Saw Kerf", 2, "mm", ""], ["disc residual limit", 0.5, "bar", "shop rule"], ["joint cost", "0", "", ""], ["units", "Metric", "", ""], ["near-miss pitch", 20, "%", ""], ["stock review", 14, "days", ""], ["service measure", "Fill", "", ""])).settings;
  expect(read).toEqual({ ...defaultSettings, sawKerf: 0.002, discResidualLimit: 50000, jointCost: 0, units: "metric", nearMissPitchShare: 0.2, stockReview: 2, serviceMeasure: "fill" });
});

test("shop name and address are text, and blank when left so", () => {
  const read = catalogueOf(settings(["shop name", "Invented Brake Works"], ["shop address", 0])).settings;
  expect([read.shopName, read.shopAddress]).toEqual(["Invented Brake Works", ""]);
});

test("a rule may be turned off or given another severity", () => {
  const read = catalogueOf(settings(["rule metering-missing", "OFF"], ["Rule joint-count", "decide"])).settings;
  expect([...read.rules]).toEqual([["metering-missing", "off"], ["joint-count", "decide"]]);
});

test.each<[readonly unknown[], string]>([
  [["saw kerf", 2, ""], "Settings row 1 under the headings, Unit: read nothing; accepted: a unit of length: in, ft, mm, cm or m."],
  [["saw kerf", 2, "psi"], 'Settings row 1 under the headings, Unit: read "psi"; accepted: a unit of length: in, ft, mm, cm or m.'],
  [["saw kerf", 0, "mm"], "Settings row 1 under the headings, Value: read nothing; accepted: a value (for nothing at all write the text '0, as an empty cell reads as 0)."],
  [["saw kerf", "thin", "mm"], 'Settings row 1 under the headings, Value: read "thin"; accepted: a number of 0 or more.'],
  [["saw kerf", -1, "mm"], 'Settings row 1 under the headings, Value: read "-1"; accepted: a number of 0 or more.'],
  [["units", "imperial", ""], 'Settings row 1 under the headings, Value: read "imperial"; accepted: us or metric.'],
  [["dual circuit rule year", 68, "year"], 'Settings row 1 under the headings, Value: read "68"; accepted: a year from 1886 to 2100.'],
  [["service", 100, "%"], 'Settings row 1 under the headings, Value: read "100"; accepted: a number above 0 and below 100 %.'],
  [["holding cost", "0", "%"], 'Settings row 1 under the headings, Value: read "0"; accepted: a number above 0.'],
  [["stock review", 60, "weeks"], 'Settings row 1 under the headings, Value: read "60"; accepted: a number above 0 and up to a year.'],
  [["rule circuit-unfed", "off", ""], 'Settings row 1 under the headings, Setting: read "rule circuit-unfed"; accepted: a rule that is no stop (a stop is accepted for one car, in Cars, with a reason).'],
  [["rule of thumb", "off", ""], 'Settings row 1 under the headings, Setting: read "rule of thumb"; accepted: rule and the code of a flag, such as rule metering-missing.'],
  [["rule joint-count", "ignore", ""], 'Settings row 1 under the headings, Value: read "ignore"; accepted: off, note, watch or decide.'],
])("%p is refused", (row, says) => expect(errorsOf(settings(row))).toEqual([says]));

test("an unknown setting lists the settings there are", () => {
  expect(errorsOf(settings(["kerf", 2, "mm"]))).toEqual([expect.stringMatching(/^Settings row 1 under the headings, Setting: read "kerf"; accepted: one of units, currency, shop name, shop address, joint cost, .*saw kerf/)]);
});

test("a setting given twice is an error on the later row", () => {
  expect(errorsOf(settings(["saw kerf", 2, "mm"], ["SAW KERF", 3, "mm"]))).toEqual(['Settings row 2 under the headings, Setting: read "saw kerf"; accepted: what no earlier row has (Settings row 1 under the headings has it).']);
});
