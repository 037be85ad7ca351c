import { aboveNote, allDrum, findingOf, report, type CarCells } from "../workshop";
import { rule } from "./cases";

const single: CarCells = { ...allDrum, Master: "MC-ONE", Valves: "BLK-4; TEE" };

// 49 CFR 571.105 asks for two circuits from 1968 in the Settings as shipped; the years below lie on either side of it.
test.each([
  ["a car of the rule year itself", { Year: "1968" }, "stop"],
  ["a car of the year before", { Year: "1967" }, "note"],
  ["a conversion of the year before", { Year: "1967", Conversion: "yes" }, "decide"],
  ["a car with no year on a platform that spans the rule year", { Year: "" }, "decide"],
  ["a car with no year on a platform of later years", { Year: "", Platform: "I", Hoses: "HF; HR2", Valves: "BLK-4; TEE-F@frame-mid" }, "stop"],
] as const)("single-circuit on %s", (_, cells, severity) => expect(findingOf("single-circuit", { ...single, ...cells }).severity).toBe(severity));

test("the rule year is a setting", () => {
  expect(findingOf("single-circuit", { ...single, Year: "1968" }, { settings: ["dual circuit rule year | 1970 | year"] }).severity).toBe("note");
});

rule("unknown-part", [
  ["a valve that Components lacks", { Valves: "BLK; ZZ-9; TEE" }, "unknown-part"],
  ["a hose that Components lacks", { Hoses: "ZZ-9; HR" }, "unknown-part"],
  ["every part known", {}, ""],
]);
test.each(["Front brake", "Rear brake", "Master"])("an unknown %s is named with its column", (column) => {
  expect(findingOf("unknown-part", { [column]: "ZZ-9" })).toMatchObject({ place: `Cars: ${column}`, severity: "decide" });
});

test.each([
  ["BLK4", "BLK4 is not in Components (BLK-4 is):"], ["Blk - 4", "Blk - 4 is not in Components (BLK-4 is):"], ["BLK-44", "BLK-44 is not in Components:"], ["---", "--- is not in Components:"],
])("of %s it is said: %s", (name, says) => expect(findingOf("unknown-part", { Valves: `${name}; TEE` }).says).toContain(says));
test("where two parts are called so, both are named", () => {
  const parts = ["AB-C union @valve | <A 3/8-24", "A-BC union @valve | <A 3/8-24"];
  expect(findingOf("unknown-part", { Valves: "ABC; TEE" }, { parts }).says).toContain("ABC is not in Components (AB-C, A-BC are):");
});

rule("unknown-platform", [
  ["a platform that Platforms lacks", { Platform: "Q" }, "unknown-platform"],
  ["a platform in other letters", { Platform: "p" }, ""],
]);

rule("data-missing", [
  ["no tube material", { Material: "" }, "data-missing"],
  ["no list of hoses", { Hoses: "" }, "data-missing"],
  ["a booster not stated holds no run up", { Booster: "" }, ""],
  ["everything stated", {}, ""],
]);
test("one finding for each open question, worded as the question with its reason", () => {
  const { findings, questions } = report({ Master: "", Valves: "?", Material: "" });
  expect(findings.map(({ code }) => code)).toEqual(questions.map(() => "data-missing"));
  expect(findings.map(({ place }) => place)).toEqual(["Cars: Master", "Cars: Material", "Cars: Valves"]);
  expect(findings[0]?.says).toBe("Which master cylinder is on the car? Every line starts at its outlets.");
});

test("a car with nothing above a note is sound, and the verdict is the worst severity otherwise", () => {
  const cars: readonly CarCells[] = [{}, { Valves: "HO; CV; TEE" }, { Valves: "RV10@front; BLK; TEE" }, { "Rear brake": "WR-BARE" }];
  expect(cars.map((cells) => report(cells).verdict)).toEqual(["sound", "decide", "stop", "watch"]);
  expect(aboveNote()).toBe("");
});
