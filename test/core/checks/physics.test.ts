/**
 * The rules that need numbers. Worked by hand on the workshop's car: 3000 lb (laden 3300), 66 % in front, h/L 0.2, tyre 12.5 in.
 * Front disc: 2 x 0.4 x 3.976 in² x 4.5 in = 14.314 in lbf for each psi; rear drum of bore d: 2 x area x 4.5 in; both from 10 psi on.
 * Forces of the axles for each psi: front 2 x 14.314 / 12.5 = 2.2902 lbf, rear 1.44 x area: 0.6 in 0.4072, 0.7 in 0.5542, 7/8 in 0.8659 lbf.
 * The rears pass the fronts at (front share - 0.66) / 0.2: with 0.6 in at 0.945 g, with 0.7 in at 0.726 g, with 7/8 in at 0.328 g.
 */
import { findingOf, report, table, type CarCells, type Shop } from "../workshop";
import { rule } from "./cases";

const rear = (words: string): Shop => ({ parts: [`WR drum expanders=yes parking=yes ${words} | <IN 3/8-24`] });
const large = rear("piston=0.875");
const converted: CarCells = { Conversion: "yes" };
const asBuilt: CarCells = { Conversion: "no" };
const adjustable: CarCells = { ...converted, Valves: "BLK; APV; TEE" };
const set = (split: string): CarCells => ({ ...adjustable, "Valve split set (psi)": split });

rule("rear-locks-first", [
  ["a conversion with large rear cylinders and no valve", converted, "rear-locks-first proportioning-missing", large],
  ["the same with cylinders that pass beyond 0.8 g", converted, ""],
  ["the same with a valve that acts too late for them: at 350 psi it is 0.358 g", { ...converted, Valves: "HO; BLK; PV; TEE" }, "rear-locks-first", large],
  ["an adjustable valve set low enough: at 0.8 g the rears do 416 lbf of an ideal 432", set("200"), "", large],
  ["the same set too high", set("400"), "rear-locks-first", large],
  ["the same wound out", set("none"), "rear-locks-first proportioning-missing", large],
  ["proportioning on the fronts explains it", { ...converted, Valves: "PV-ANY@front; BLK; TEE" }, "proportioning-on-front", large],
]);

describe("rear-locks-first is graded", () => {
  const grade = (cells: CarCells, shop: Shop = large): string => findingOf("rear-locks-first", cells, shop).severity;
  test("stop on a conversion", () => expect(grade(converted)).toBe("stop"));
  test("watch on a car as built", () => expect(grade(asBuilt)).toBe("watch"));
  test("decide where nobody says which", () => expect(grade({})).toBe("decide"));
  // 0.7 in at the factor 1.5 does 0.4156 lbf a psi: (2.2902 / 2.7058 - 0.66) / 0.2 = 0.932 g.
  test("decide on a conversion where the least brake factor does not do it", () => expect(grade(converted, rear("piston=0.7 low=1.5 factor=2 high=2"))).toBe("decide"));
  test("stop where it does", () => expect(grade(converted, rear("piston=0.7 low=1.98 factor=2 high=2"))).toBe("stop"));
  // The workshop's hold-off opens from 80 to 300 psi. At 180 psi the fronts get 136: 289 lbf, of 0.689 x 3000 lb a use of 0.14; the rears 147 lbf of 0.311 x 3000 lb, 0.158. That is 0.145 g.
  test("a note below where the hold-off is fully open", () => {
    const found = findingOf("rear-locks-first", { ...set("200"), Valves: "HO; BLK; APV; TEE" }, large);
    expect([found.severity, found.says]).toEqual(["note", expect.stringMatching(/unladen from 0\.15 to 0\.\d+ g.*before the hold-off is fully open/)]);
  });
  test("outlets crossed hide it: with the lines crossed back the car is sound", () => expect(report({ ...converted, Valves: "CV; TEE" }, { joins: ["MC | F | CV | RI"] }).findings.map(({ code }) => code)).not.toContain("rear-locks-first"));
});

describe("rear-locks-first says its numbers", () => {
  test("from where on", () => expect(findingOf("rear-locks-first", converted, large).says).toContain("unladen from 0.33 to 0.8 g, laden from 0.33 to 0.8 g"));
  // At 0.8 g: ideal rear 432 lbf, 508.9 psi; ideal front 1968 lbf, 869.3 psi; (508.9 - 0.43 x 869.3) / 0.57 = 237 psi.
  test("and what sets it right", () => expect(findingOf("rear-locks-first", set("400"), large).cure).toMatch(/^Set APV to 237 psi \(slope 0\.43, efficiency 9\d(\.\d)? %\)/));
  // The rear area may be (508.9 - 10) / (869.3 - 10) = 0.5806 of what it is: 0.875 x sqrt(0.5806) = 0.6667 in, said rounded down: 0.667 would let the rears pass again.
  test("or a wheel cylinder", () => expect(findingOf("rear-locks-first", converted, large).cure).toContain("fit rear cylinders of 0.666 in"));
  test("a valve of the shop is named", () => expect(findingOf("rear-locks-first", converted, large).cure).toMatch(/^Fit APV, set to 237 psi/));
  test("metric", () => expect(findingOf("rear-locks-first", set("400"), { ...large, settings: ["units | metric |"] }).cure).toMatch(/^Set APV to 16\.3 bar/));
});

describe("an adjustable valve that nobody has said the setting of", () => {
  test("is tried over its range, and a note gives what passes", () => {
    const found = findingOf("rear-locks-first", adjustable, large);
    expect([found.severity, found.place, found.says]).toEqual(["note", "APV", expect.stringContaining("from 0 psi to 237 psi the fronts lock first")]);
  });
  test("within its own range", () => {
    const shop: Shop = { parts: [...(large.parts ?? []), "APV adjustable-proportioning-valve @valve | <IN 3/8-24 | >OUT 3/8-24 | IN>OUT adjustable-proportioning slope=0.43 least=100 most=200"] };
    expect(findingOf("rear-locks-first", adjustable, shop).says).toContain("from 100 psi to 200 psi");
  });
  test("fires when no setting passes", () => {
    const shop: Shop = { parts: [...(large.parts ?? []), "APV adjustable-proportioning-valve @valve | <IN 3/8-24 | >OUT 3/8-24 | IN>OUT adjustable-proportioning slope=0.43 least=300 most=1000"] };
    const found = findingOf("rear-locks-first", adjustable, shop);
    expect([found.severity, found.says]).toEqual(["stop", expect.stringContaining("even with APV at its lowest setting")]);
  });
});

rule("drum-gain-uncertain", [
  // 0.6 in at the factor 3.2 does 0.6514 lbf a psi: (0.7786 - 0.66) / 0.2 = 0.593 g.
  ["the rears pass the fronts at the high factor only", converted, "drum-gain-uncertain", rear("piston=0.6 low=1.8 factor=2 high=3.2")],
  ["a narrow band", converted, "", rear("piston=0.6 low=1.9 factor=2 high=2.1")],
]);
test("drum-gain-uncertain shows the band", () => expect(findingOf("drum-gain-uncertain", converted, rear("piston=0.6 low=1.8 factor=2 high=3.2")).says).toContain("WR: 1.8, 2, 3.2"));

rule("proportioning-missing", [
  ["front discs, rear drums, no valve: a note where the fronts lock first anyway", {}, "proportioning-missing"],
  ["a valve in the rear line", { Valves: "HO; BLK; PV; TEE" }, ""],
  ["discs all round", { Platform: "I", "Rear brake": "DR", Hoses: "HF; HR2", Valves: "BLK; TEE-F@frame-mid" }, ""],
]);
test("proportioning-missing is decided by the order of locking", () => {
  expect([findingOf("proportioning-missing", {}).severity, findingOf("proportioning-missing", {}, large).severity]).toEqual(["note", "decide"]);
  expect(findingOf("proportioning-missing", {}, large).says).toContain("unladen on adhesion 0.33 to 0.8");
});

// Front share of the weight 55 %: with 0.3 in cylinders, 0.1018 lbf a psi, the fronts lock on 0.8 at 0.55 / (0.9574 - 0.16) = 69 % of it.
const forward: CarCells = { "Front share (%)": "55", "Laden front share (%)": "55" };
rule("rear-too-weak", [
  ["small rear cylinders", forward, "rear-too-weak", rear("piston=0.3")],
  ["larger ones: 0.55 / (0.849 - 0.16) = 79.8 %", forward, "", rear("piston=0.6")],
]);
test("rear-too-weak says the efficiency", () => expect(findingOf("rear-too-weak", forward, rear("piston=0.3")).says).toMatch(/unladen 69 %|unladen 68\.9 %|unladen 69\.0 %/));

// On 1.0 the fronts lock where 2.2902 (p - 10) = z W (0.66 + 0.2 z): beyond 1000 psi and well below 3000.
const late = (split: number): Shop => ({ parts: [`PV proportioning-valve @frame-mid arrow=yes | <IN rear 7/16-24 | >OUT rear 7/16-24 | IN>OUT proportioning split=${split} slope=0.4`] });
rule("valve-never-acts", [
  ["a split point of 3000 psi", { Valves: "HO; BLK; PV; TEE" }, "valve-never-acts", late(3000)],
  ["one of 350 psi", { Valves: "HO; BLK; PV; TEE" }, ""],
  ["a valve wound out to no reduction", { ...set("none"), Conversion: "no" }, ""],
]);
test("valve-never-acts is watched where the rears lock first on that adhesion", () => {
  const severity = (bore: string): string => findingOf("valve-never-acts", { Valves: "HO; BLK; PV; TEE", ...asBuilt }, { parts: [...(late(3000).parts ?? []), ...(rear(`piston=${bore}`).parts ?? [])] }).severity;
  // With 0.5 in the rears pass the fronts at (0.890 - 0.66) / 0.2 = 1.15 g only; with 0.6 in at 0.945 g, so that on 1.0 they lock first.
  expect([severity("0.5"), severity("0.6")]).toEqual(["note", "watch"]);
});

const low: CarCells = { "Reservoir above calipers (in)": "-4" };
rule("residual-missing-low-master", [
  ["a master under the floor and no residual on the discs", low, "residual-missing-low-master"],
  ["a disc residual in the master's front outlet", { ...low, Master: "MC-DISC2" }, ""],
  ["a reservoir above the calipers", {}, ""],
  ["drums all round", { ...low, "Front brake": "WF" }, ""],
]);
test("residual-missing-low-master says how low, and for which wheels", () => expect(findingOf("residual-missing-low-master", low)).toMatchObject({ place: "LF, RF", says: expect.stringContaining("4 in below the calipers") as string }));

// 60 mph in 216 ft with 0.25 s lost: 26.822² / (2 x 59.13 x 9.807) = 0.620 g. Laden 0.620 x 3300 / 2.6974 + 10 = 769 psi, 604 lbf on a 1 in bore.
rule("booster-none-low-ratio", [
  ["no booster and a ratio of 3.5: 173 lbf", { "Pedal ratio": "3.5" }, "booster-none-low-ratio"],
  ["a ratio of 6: 101 lbf", {}, ""],
]);
test("booster-none-low-ratio says the force", () => expect(findingOf("booster-none-low-ratio", { "Pedal ratio": "3.5" }).says).toMatch(/a pedal ratio of 3\.5, and the stop of 49 CFR 571\.105 takes 17[23] lbf on the pedal, over 150 lbf/));

// On a 1.25 in bore it is 944 lbf.
const wide: Shop = { parts: ["MC master @master price=90 bore=1.25 | >F front 1/2-20 | >R rear 9/16-18"] };
rule("pedal-force-high", [
  ["a wide bore and a ratio of 5: 189 lbf", { "Pedal ratio": "5" }, "pedal-force-high", wide],
  ["the same bore and a ratio of 7: 135 lbf", { "Pedal ratio": "7" }, "", wide],
  ["an unknown booster is not taken for none", { "Pedal ratio": "3.5", Booster: "" }, ""],
  ["under a rule of 500 N, 112 lbf, and a stop of 70 m: 5 is too little even for the 1 in bore", { "Pedal ratio": "5" }, "pedal-force-high", { settings: ["stopping rule | UN R13-H |"] }],
]);

// 604 lbf out of a gain of 4 from 30 at 15 lbf: 158.5 in; the diaphragm gives 445.4 + 20 lbf over 38.48 in²: 12.09 psi, 24.6 inHg.
const boosted = (diaphragms: number): Shop => ({ parts: ["BST booster"], more: [table("Component | Diaphragm (in) | Diaphragms | Gain | Jump-in (lbf) | Cut-in (lbf) | Spring (lbf)", `BST | 7 | ${diaphragms} | 4 | 30 | 15 | 20`)] });
rule("vacuum-short", [
  ["one 7 in diaphragm at 18 inHg", { Booster: "BST" }, "vacuum-short", boosted(1)],
  ["two of them", { Booster: "BST" }, "", boosted(2)],
]);
test("vacuum-short says what it takes and what there is", () => expect(findingOf("vacuum-short", { Booster: "BST" }, boosted(1)).says).toMatch(/takes 24\.[67] inHg, and there is 18 inHg/));

// At 0.8 g laden 2640 / 2.6974 + 10 = 989 psi; two calipers that take 0.3 in³ at 1000 psi take 0.593 in³; 0.7 in of a 1 in bore displaces 0.55.
const soft: Shop = { parts: ["DF disc parking=no volume=0.3 | <IN 7/16-20 banjo"] };
rule("volume-short", [
  ["soft calipers", {}, "volume-short", soft],
  ["stiff ones", {}, ""],
]);
test("volume-short says both volumes", () => expect(findingOf("volume-short", {}, soft).says).toMatch(/front circuit takes 0\.7\d+ in³ at 989 psi and its stroke displaces 0\.55 in³/i));

rule("travel-long", [
  ["2.5 in of pedal travel", { "Pedal travel (in)": "2.5" }, "travel-long"],
  ["6 in", {}, ""],
  ["a circuit that runs out of stroke explains it", { "Pedal travel (in)": "2.5" }, "volume-short", soft],
]);

rule("balance-not-checked", [
  ["a platform without figures", {}, "balance-not-checked", { platformFigures: false }],
  ["a car that states them itself", { "Wheelbase (in)": "100", "Weight (lb)": "3000", "Front share (%)": "66", "CG height (in)": "20", "Laden weight (lb)": "3300", "Laden front share (%)": "66", "Laden CG height (in)": "20", "Tyre radius (in)": "12.5", "Reservoir above calipers (in)": "12", "Pedal ratio": "6", "Pedal travel (in)": "6" }, "", { platformFigures: false }],
  ["a brake without figures", {}, "balance-not-checked", { parts: ["WR drum figures=none expanders=yes parking=yes | <IN 3/8-24"] }],
  ["everything stated", { Valves: "HO; BLK; PV; TEE" }, ""],
]);
describe("figures that are missing", () => {
  test("are named by table, row and column in one note, and asked after what decides the set", () => {
    const { findings, questions } = report({ Valves: "HO; BLK; PV; TEE" }, { parts: ["WR drum figures=none expanders=yes parking=yes | <IN 3/8-24"] });
    expect(findings.filter(({ code }) => code === "balance-not-checked").map(({ severity, says }) => [severity, says])).toEqual([["note", "No figures for WheelBrakes (WR): Piston, Drum radius, Factor: the rules that need them were not applied."]]);
    expect(questions.map(({ table: asked, column, subject, blocks }) => [asked, column, subject, blocks])).toEqual([["WheelBrakes", "Piston, Drum radius, Factor", "WR", false]]);
    expect(questions[0]?.ask).toBe("What are the piston, the drum radius and the factor of WR?");
    expect(report({ Booster: "?", Valves: "HO; BLK; PV; TEE" }).questions.map(({ ask }) => ask)).toEqual(["Which booster is on the car, if any?"]);
  });
  test("a duo-servo brake is never given a usual factor", () => expect(findingOf("balance-not-checked", {}, rear("type=duo-servo factor= low= high= friction=0.4")).says).toContain("WheelBrakes (WR): Factor"));
  test("no rule guesses", () => expect(report({ ...converted }, { ...large, platformFigures: false }).findings.map(({ code }) => code)).not.toContain("rear-locks-first"));
  test("a valve fed backwards is no balance to check", () => expect(report({ Valves: "HO; BLK; PV; TEE" }, { joins: ["BLK | RO | PV | OUT"] }).findings.map(({ code }) => code)).not.toContain("balance-not-checked"));
});
