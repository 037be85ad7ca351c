/** What cannot be resolved is a question with the column that would answer it; the rest of the answer stands. */
import { aboveNote, jointsOf, report, runsOf, type CarCells, type Shop } from "../workshop";

const asked = (cells: CarCells, shop?: Shop): string[] => report(cells, shop).questions.map(({ table, column }) => `${table}: ${column}`);

const open: readonly (readonly [string, CarCells, string[], Shop?])[] = [
  ["unknown valves", { Valves: "?" }, ["Cars: Valves"]],
  ["a blank list of valves", { Valves: "" }, ["Cars: Valves"]],
  ["unknown hoses", { Hoses: "?" }, ["Cars: Hoses"]],
  ["an unknown master", { Master: "?" }, ["Cars: Master"]],
  ["unknown front brakes", { "Front brake": "?" }, ["Cars: Front brake"]],
  ["no platform", { Platform: "" }, ["Cars: Platform"]],
  ["no material", { Material: "" }, ["Cars: Material"]],
  ["a valve whose passages nobody has said", { Valves: "CV-UNKNOWN; TEE" }, ["Passages: Does"]],
  ["a port without a thread", { Valves: "BLK-T; TEE" }, ["Ports: Thread"], { parts: ["BLK-T distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF | >R front RF 3/8-24 | >RO rear 7/16-24"] }],
  ["drums that do not say whether their cups have expanders", { "Rear brake": "WR-SILENT" }, ["WheelBrakes: Cup expanders"]],
  ["a master whose outlets name no circuit", { Master: "MC-ANY" }, ["Ports: Circuit", "Ports: Circuit"], { parts: ["MC-ANY master @master | >A 1/2-20 | >B 9/16-18"] }],
  ["a split told neither by the platform nor by the master", { Platform: "N", Master: "MC-ANY" }, ["Platforms: Split"], { parts: ["MC-ANY master @master | >A 1/2-20 | >B 9/16-18"], platforms: [{ headings: ["Platform", "First year", "Last year"], rows: [["N", 1960, 1974]] }] }],
];
test.each(open.map(([says, ...rest]) => [says, rest] as const))("%s", (_, [cells, columns, shop]) => expect(asked(cells, shop)).toEqual(columns));

test("nothing is asked about a car that says everything", () => expect(asked({})).toEqual([]));

test.each<[string, CarCells]>([["unknown valves", { Valves: "?" }], ["a valve that Components lacks", { Valves: "BLK; ZZ-9; TEE" }], ["an unknown master", { Master: "" }]])("with %s no joint is inferred: each would be a guess", (_, cells) => expect(jointsOf(cells)).toEqual([]));

test("with unknown hoses the lines up to them stand, and their last joint is open", () => {
  const { runs, findings } = report({ Hoses: "?" });
  expect(runs).toHaveLength(7);
  expect(runs.filter(({ problems }) => problems.length > 0).map(({ joint }) => joint.to.instance.label)).toEqual(["hose@LF", "hose@RF", "hose@rear"]);
  expect(findings.map(({ code }) => code).filter((code) => code.startsWith("thread") || code.startsWith("port"))).toEqual([]);
});

test("one hose that Components lacks leaves all of them open, since it may stand for any", () => {
  expect(jointsOf({ Hoses: "HF; ZZ-9" })).toEqual(jointsOf({ Hoses: "?" }));
  expect(report({ Hoses: "HF; ZZ-9" }).questions.map(({ ask }) => ask)).toEqual(["Which hoses are on C, by their names in Components?"]);
  expect(jointsOf({ Valves: "BLK; TEE; ZZ-9" })).toEqual([]);
});

test("with unknown front brakes the rear lines are as they would be", () => {
  const rear = (cells: CarCells) => runsOf(cells).filter((run) => /R →|RO →|TEE/.test(run));
  expect(rear({ "Front brake": "" })).toEqual(rear({}));
});

test("unknown contents raise no finding about what may be inside", () => {
  expect(aboveNote({ Valves: "CV-UNKNOWN; PV; HO; TEE" })).toBe("");
});

test("a figure that a question about the assembly asks for already is not told of as missing for the balance too", () => {
  expect(report({ Hoses: "?" }).findings.filter(({ code }) => code === "balance-not-checked")).toEqual([]);
  expect(report({ Hoses: "HF; ZZ-9" }).findings.filter(({ code }) => code === "balance-not-checked").map(({ place }) => place)).toEqual(["C"]);
});

test.each<[string, CarCells, boolean]>([
  ["nothing in their line", {}, true], ["a drum residual in their line", { Valves: "RV10@rear; BLK; TEE" }, false], ["one built into the master", { Master: "MC-REAR10" }, false],
  ["a residual for discs, which is too weak", { Valves: "RV2@rear; BLK; TEE" }, true],
])("drums with %s: whether their cups have expanders is asked only where it matters", (_, cells, isAsked) => {
  expect(asked({ "Rear brake": "WR-SILENT", ...cells }).includes("WheelBrakes: Cup expanders")).toBe(isAsked);
});

test.each([["none of whose ports is listed", "disc"], ["of which only the outlet is listed", "disc | >OUT 3/8-24"], ["whose listed inlet is a switch's", "disc | <S 3/8-24 switch"]])("a brake %s still takes its hose, and the answer says that they are taken to fit", (_, ports) => {
  const shop: Shop = { parts: [`DF-BARE ${ports}`] };
  expect(jointsOf({ "Front brake": "DF-BARE" }, shop)).toEqual(expect.arrayContaining(["HF@LF OUT → DF-BARE@LF in direct", "HF@RF OUT → DF-BARE@RF in direct"]));
  expect(report({ "Front brake": "DF-BARE" }, shop).assumptions).toEqual(["HF OUT is taken to fit into DF-BARE in, since Ports has no thread and seat of DF-BARE in"]);
});

test("a brake with an inlet keeps to it, and nothing is taken to fit", () => {
  expect(report().assumptions).toEqual([]);
  const { instances } = report().assembly;
  expect(instances.filter(({ wheel, component }) => wheel && component.kind !== "hose").map(({ component }) => component.ports.length)).toEqual([1, 1, 1, 1]);
});

test("every question names its subject, says why it matters and ends as a question", () => {
  const { questions } = report({ Master: "", Valves: "", Hoses: "", "Front brake": "", "Rear brake": "", Platform: "", Material: "" });
  expect(questions.map(({ column }) => column)).toEqual(["Platform", "Valves", "Master", "Front brake", "Rear brake", "Hoses", "Material"]);
  for (const { ask, why, subject } of questions) expect([ask.includes("?"), why.length > 10, subject]).toEqual([true, true, "C"]);
});

test("a block whose circuits are open is asked about, and no tee is called missing in its stead", () => {
  const block = "BLK-A distribution-block @valve | <I1 1/2-20 | <I2 1/2-20 | >A 3/8-24 | >B 3/8-24 | >C 7/16-24";
  expect(aboveNote({ Valves: "BLK-A; TEE" }, { parts: [block] })).toBe("data-missing");
});
