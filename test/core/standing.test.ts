import { ended, findingCodes, findingEntries } from "../../src/core/finding";
import { parseCatalogue } from "../../src/catalogue/parse-catalogue";
import { sayTableError } from "../../src/catalogue/table-error";
import { report, table, type CarCells, type Shop } from "./workshop";

/** Two hold-off functions on the fronts: metering-doubled, decide. */
const doubled: CarCells = { Valves: "HO; CV; TEE" };
/** A drum residual before discs: residual-on-disc, stop. */
const dragging: CarCells = { Valves: "RV10@front; HO; BLK; TEE" };
const rule = (code: string, grade: string): Shop => ({ settings: [`rule ${code} | ${grade} |`] });
const standing = (code: string, cells: CarCells, shop?: Shop) => report(cells, shop).findings.find((one) => one.code === code);

test.each(["watch", "note"])("a rule graded %s in Settings has that severity, and says what it was", (grade) => {
  const shop = rule("metering-doubled", grade);
  expect(standing("metering-doubled", doubled, shop)).toMatchObject({ severity: grade, standing: "open", because: `graded ${grade} in Settings; the rule says decide` });
  expect(report(doubled, shop).verdict).toBe(grade === "note" ? "sound" : "watch");
});

test("a rule may be graded up as far as decide", () => {
  expect(standing("bleed-tool", { Valves: "HO; BLK; TEE" }, rule("bleed-tool", "decide"))).toMatchObject({ severity: "decide", because: "graded decide in Settings; the rule says note" });
  expect(report({ Valves: "HO; BLK; TEE" }, rule("bleed-tool", "decide")).verdict).toBe("decide");
});

test("a rule switched off still lists what it found, behind what is open, and no longer counts", () => {
  const { findings, verdict } = report({ ...doubled, "Rear brake": "WR-BARE" }, rule("metering-doubled", "off"));
  expect(findings.at(-1)).toMatchObject({ code: "metering-doubled", standing: "off", because: "switched off in Settings; the rule says decide" });
  expect([findings[0]?.code, verdict]).toEqual(["residual-missing-drum", "watch"]);
});

test("a rule graded as it is needs no reason", () => expect(standing("metering-doubled", doubled, rule("metering-doubled", "decide"))?.because).toBeUndefined());

test.each(findingCodes.filter((code) => findingEntries[code].severity === "stop"))("Settings refuse to switch %s, a stop, and say what to do instead", (code) => {
  const { errors, catalogue } = parseCatalogue([table("Setting | Value | Unit", `rule ${code} | off |`)]);
  expect(errors.map(sayTableError)).toEqual([`Settings row 1 under the headings, Setting: read "rule ${code}"; accepted: a rule that is no stop (a stop is accepted for one car, in Cars, with a reason).`]);
  expect(catalogue.settings.rules.size).toBe(0);
});

test("a rule that is a stop on this car is not switched by the grade of its milder cases", () => {
  const single: CarCells = { "Front brake": "WF", Year: "1968", Master: "MC-ONE", Valves: "BLK-4; TEE" };
  expect(standing("single-circuit", single, rule("single-circuit", "off"))).toMatchObject({ severity: "stop", standing: "open" });
  expect(standing("single-circuit", { ...single, Year: "1967" }, rule("single-circuit", "off"))).toMatchObject({ standing: "off" });
});

test("a stop accepted for one car keeps its reason, and neither verdict nor open findings count it", () => {
  const { findings, verdict } = report({ ...dragging, Accepted: "residual-on-disc: race car, driver told" });
  expect(findings.find(({ code }) => code === "residual-on-disc")).toMatchObject({ severity: "stop", standing: "accepted", because: "accepted for this car: race car, driver told" });
  expect([verdict, findings.filter((one) => one.standing === "open" && one.severity === "stop")]).toEqual(["sound", []]);
  expect(report(dragging).verdict).toBe("stop");
});

test("what is accepted for one car goes before what the shop makes of the rule", () => {
  expect(standing("metering-doubled", { ...doubled, Accepted: "Metering-Doubled: kept as built" }, rule("metering-doubled", "watch"))).toMatchObject({ standing: "accepted", severity: "decide" });
});

test("an acceptance of a code that is none is said, and accepts nothing", () => {
  const { findings, verdict } = report({ ...dragging, Accepted: "residual-on-discs: typed wrong; metering-doubled: not found here" });
  expect(findings.find(({ code }) => code === "data-out-of-range")).toMatchObject({ severity: "decide", place: "Cars: Accepted" });
  expect(findings.find(({ code }) => code === "data-out-of-range")?.says).toBe('Accepted names "residual-on-discs", which is no flag\'s code: nothing is accepted by it.');
  expect(verdict).toBe("stop");
});

test("a cure that is a question ends with its question mark alone", () => {
  expect([ended("Ask first: Which year is the car?"), ended("Turn it round"), ended("Turn it round.")]).toEqual(["Ask first: Which year is the car?", "Turn it round.", "Turn it round."]);
});
