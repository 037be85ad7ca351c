import { inches, inInches, inPsi, psi } from "../../src/core/quantity";
import { defaultSettings } from "../../src/core/settings";
import { parseCatalogue } from "../../src/catalogue/parse-catalogue";
import { standardNuts } from "../../src/catalogue/standard/nuts";
import { standardTube } from "../../src/catalogue/standard/tube";
import { catalogueOf, errorsOf, tableOf } from "./tables";

// All parts here are invented.
const components = tableOf("Component|Kind|Description|Bore (in)|Built-in residual (psi)|Arrow", ["MC-1", "master", "tandem", "1 1/8", 10, ""], ["CV-1", "combination-valve", 0, 0, 0, "yes"], [7, "tee", "", "", "", ""]);
const ports = tableOf(
  "Component|Port|Flow|Circuit|Serves|Thread|Seat|Gender|Plugged|Use|Built-in residual (psi)|Reservoir (in³)",
  ["MC-1", "A", "out", "front", "any", "1/2-20", "inverted-flare-45", "female", "no", "line", 2, 12],
  ["mc-1", "B", "out", "rear", "any", "9/16-18", "inverted-flare-45", "", "", "", "", ""],
  ["CV-1", "In", "in", "", "", "9/16-18", "inverted flare", "", "", "", 0, 0],
  ["CV-1", 1, "out", "rear", "rear", "M10x1", "bubble-iso", "", "", "", 0, 0],
  ["CV-1", "Lamp", "out", "any", "any", "1/8-27 NPT", "pipe-taper", "", "no", "switch", 0, 0],
  ["CV-1", "An", "out", "any", "any", "7/16-20", "flare-37", "", "", "", 0, 0],
);
const passages = tableOf("Component|From|To|Does|Split (psi)|Slope|Bypass on failure", ["CV-1", "IN", "1", "proportioning", 500, 0.43, "yes"], ["CV-1", "in", 1, "residual", "", "", ""], ["CV-1", "In", "An", "", "", "", ""]);

describe("components, ports and passages", () => {
  const catalogue = catalogueOf(passages, ports, components);
  const valve = catalogue.components.get("cv-1");

  test("a component has its own figures, found without regard to case", () => {
    const master = catalogue.components.get("mc-1");
    expect(master).toMatchObject({ name: "MC-1", kind: "master", description: "tandem", directional: undefined });
    expect(inInches(master?.bore ?? NaN as never)).toBeCloseTo(1.125, 12);
    expect(inPsi(master?.builtInResidual ?? NaN as never)).toBeCloseTo(10, 12);
    expect(valve).toMatchObject({ directional: true, description: "", bore: undefined, builtInResidual: undefined });
    expect(catalogue.components.get("7")?.kind).toBe("tee");
  });

  test("its ports keep their order, and say what their rows say", () => {
    const [a, b] = catalogue.components.get("mc-1")?.ports ?? [];
    expect(a).toMatchObject({ name: "A", flow: "out", circuit: "front", serves: "any", thread: { name: "1/2-20" }, seat: "inverted-flare-45", gender: "female", plugged: false, use: "line" });
    expect(a?.builtInResidual).toBe(psi(2));
    expect(a?.reservoir).toBeCloseTo(12 * 1.6387064e-5, 12); // 1 in³ = 1.6387064e-5 m³
    expect(b).toMatchObject({ thread: { name: "9/16-18" }, builtInResidual: undefined, reservoir: undefined });
    expect(valve?.ports.map(({ name, use }) => `${name} ${use}`)).toEqual(["In line", "1 line", "Lamp switch", "An line"]);
  });

  test("a port whose row gives no gender has the usual one of its seat: female, but male on a 37° flare", () => {
    expect(valve?.ports.map(({ gender }) => gender)).toEqual(["female", "female", "female", "male"]);
  });

  test("rows of one passage are one passage with several duties, in order, its ports spelt as in Ports", () => {
    expect(valve?.passages).toEqual([
      { from: "In", to: "1", duties: [{ does: "proportioning", split: psi(500), slope: 0.43 }, { does: "residual", holds: undefined }], bypassOnFailure: true },
      { from: "In", to: "An", duties: undefined, bypassOnFailure: false },
    ]);
  });

  test("a passage with one row that does not say what it does is unknown as a whole", () => {
    const rows = tableOf("Component|From|To|Does", ["CV-1", "In", "1", "hold-off"], ["CV-1", "In", "1", ""]);
    expect(catalogueOf(components, ports, rows).components.get("cv-1")?.passages).toEqual([{ from: "In", to: "1", duties: undefined, bypassOnFailure: false }]);
  });
});

test.each([
  ["through", { does: "through" }],
  ["hold-off", { does: "hold-off", opens: psi(50), full: psi(150) }],
  ["proportioning", { does: "proportioning", split: psi(400), slope: 0.5 }],
  ["adjustable-proportioning", { does: "adjustable-proportioning", leastSplit: psi(100), mostSplit: psi(1000), slope: 0.5 }],
  ["load-sensing-proportioning", { does: "load-sensing-proportioning", split: psi(400), ladenSplit: psi(700), slope: 0.5 }],
  ["limiting", { does: "limiting", split: psi(400) }],
  ["residual", { does: "residual", holds: psi(10) }],
])("a passage that does %s takes the figures of that duty", (does, duty) => {
  const headings = "Component|From|To|Does|Opens (psi)|Full (psi)|Split (psi)|Slope|Least split (psi)|Most split (psi)|Laden split (psi)|Holds (psi)";
  const rows = tableOf(headings, ["CV-1", "In", "1", does, 50, 150, 400, 0.5, 100, 1000, 700, 10]);
  expect(catalogueOf(components, ports, rows).components.get("cv-1")?.passages[0]?.duties).toEqual([duty]);
});

test("boosters and wheel brakes hang on their components", () => {
  const catalogue = catalogueOf(
    tableOf("Component|Kind", ["B-1", "booster"], ["D-1", "disc"], ["R-1", "drum"]),
    tableOf("Component|Diaphragm (in)|Diaphragms|Gain|Jump-in (lbf)", ["b-1", 8, 2, 3.5, 20]),
    tableOf("Component|Pistons (a side)|Piston (in)|Type|Drum radius (in)|Factor low|Factor|Factor high|Cup expanders|Parking brake", ["D-1", 2, "1 1/2", "fixed", "", "", "", "", "", "no"], ["R-1", "", "", "duo-servo", 5, 3, 4.5, 6, "yes", "yes"]),
  );
  expect(catalogue.components.get("b-1")?.booster).toMatchObject({ diaphragm: inches(8), diaphragms: 2, gain: 3.5 });
  expect(catalogue.components.get("b-1")?.booster?.jumpIn).toBeCloseTo(88.964, 3); // 20 lbf of 4.4482216 N
  expect(catalogue.components.get("d-1")?.wheelBrake).toMatchObject({ pistons: 2, piston: inches(1.5), type: "fixed", cupExpanders: undefined, parkingBrake: false });
  expect(catalogue.components.get("r-1")?.wheelBrake).toMatchObject({ type: "duo-servo", drumRadius: inches(5), factorLow: 3, factor: 4.5, factorHigh: 6, cupExpanders: true });
});

test("platforms and lengths", () => {
  const catalogue = catalogueOf(
    tableOf("Platform|First year|Last year|Split|Wheelbase (in)|Front share (%)|Driver side|Driveline parking brake|Frequency", ["P-1", 1961, 1969, "Front/Rear", 108, 55, "left", "no", 3]),
    tableOf("Platform|From|To|Length (in)|Tube (in)|Bends", ["p-1", "master", "Frame Front", 20, "3/16", ""], ["P-1", "my bracket", "LF", "12.5", "", ""]),
  );
  expect(catalogue.platforms.get("p-1")).toEqual({
    name: "P-1", firstYear: 1961, lastYear: 1969, frequency: 3,
    figures: { split: "front/rear", wheelbase: inches(108), frontShare: 0.55, driverSide: "left", drivelineParkingBrake: false },
  });
  expect(catalogue.lengths.get("p-1")).toEqual([
    { platform: "p-1", from: "master", to: "frame-front", length: inches(20), tube: inches(3 / 16) },
    { platform: "P-1", from: "my bracket", to: "LF", length: inches(12.5), tube: undefined },
  ]);
});

test("nuts, adapters and tube of the shop replace what ships", () => {
  const catalogue = catalogueOf(
    tableOf("Nut|Tube (mm)|Thread|Seat|Gender|Price", ["N-1", 4.75, "M10x1", "bubble-iso", "male", 0.6]),
    tableOf("Adapter|Thread A|Seat A|Gender A|Thread B|Seat B|Gender B|Price", ["A-1", "3/8-24", "inverted-flare-45", "female", "M10x1", "bubble-iso", "male", "4.50"]),
    tableOf("Tube|Material|Outside diameter (in)|Wall (in)|Form|Length (ft)|Price|Lead time (weeks)|Yield (psi)|Least order|Multiple|Order cost|Due", ["T-1", "copper", "3/16", 0.028, "coil", 25, 20, 2, 9000, 4, 2, 12, 45000]),
  );
  expect(catalogue.nuts).toMatchObject([{ name: "N-1", face: { thread: { name: "M10x1" }, seat: "bubble-iso", gender: "male" }, price: 0.6 }]);
  expect(catalogue.nuts[0]?.tube).toBeCloseTo(0.00475, 12);
  expect(catalogue.adapters).toMatchObject([{ name: "A-1", a: { thread: { name: "3/8-24" }, gender: "female" }, b: { thread: { name: "M10x1" }, seat: "bubble-iso" }, price: 4.5 }]);
  expect(catalogue.tube).toMatchObject([{ name: "T-1", material: "copper", form: "coil", leadTimeWeeks: 2, leastOrder: 4, orderMultiple: 2, orderCost: 12, due: 45000 }]);
  expect(catalogue.tube[0]?.length).toBeCloseTo(7.62, 12); // 25 ft of 0.3048 m
});

test("without Nuts, Tube and Settings the shipped ones hold, and the rest is empty; a Nuts table without rows is no nuts", () => {
  const nothing = catalogueOf();
  expect([nothing.nuts, nothing.tube, nothing.settings]).toEqual([standardNuts, standardTube, defaultSettings]);
  expect([nothing.platforms.size, nothing.lengths.size, nothing.components.size, nothing.adapters.length, nothing.lineSets.length, nothing.joins.size]).toEqual([0, 0, 0, 0, 0, 0]);
  expect(catalogueOf(tableOf("Nut|Tube (in)|Thread|Seat|Gender")).nuts).toEqual([]);
});

test("line sets have their runs, and know what they were bent for", () => {
  const catalogue = catalogueOf(
    tableOf("Platform|Split", ["P-1", "diagonal"]),
    tableOf("Set|Platform|From|To|Valves|Front|Rear|Material|Price|On hand", ["S-1", "P-1", 1961, 1966, "HV-1; PV-1", "disc", "drum", "stainless", 210, "0"], ["S-2", "P-1", "", "", "none", "", "", "", "", ""], ["S-3", "P-1", "", "", "", "", "", "", "", 0]),
    tableOf("Set|From|To|Tube (in)|Length (in)|Thread A|Seat A|Thread B|Seat B", ["s-1", "master", "valve", "3/16", 14, "3/8-24", "inverted flare", "", "inverted flare"]),
  );
  expect(catalogue.lineSets).toMatchObject([
    { name: "S-1", firstYear: 1961, lastYear: 1966, valves: ["HV-1", "PV-1"], front: "disc", rear: "drum", material: "stainless", price: 210, onHand: 0 },
    { name: "S-2", valves: [], runs: [] },
    { name: "S-3", valves: undefined, onHand: undefined },
  ]);
  expect(catalogue.lineSets[0]?.runs).toMatchObject([{ from: "master", to: "valve", tube: inches(3 / 16), length: inches(14), a: { thread: { name: "3/8-24" }, seat: "inverted-flare-45" }, b: undefined }]);
});

test("joints as found, by car; what is on the car is judged there", () => {
  const catalogue = catalogueOf(
    tableOf("Car|From component|From port|To component|To port|Nut thread found|Flare found|Plug", ["Car 1", "MC-1", "A", "CV-1", "In", "3/8-24", "single", ""], ["CAR 1", "CV-1", "Lamp", "", "", "", "", "yes"]),
  );
  expect(catalogue.joins.get("car 1")).toMatchObject([
    { from: { component: "MC-1", port: "A" }, to: { component: "CV-1", port: "In" }, nutThread: { name: "3/8-24" }, flare: "single 45°", plugged: false },
    { from: { component: "CV-1", port: "Lamp" }, to: undefined, nutThread: undefined, plugged: true },
  ]);
});

test("two tables of one kind are joined; a name in both is an error that says which table", () => {
  const [first, second] = [tableOf("Component|Kind", ["T-1", "tee"]), tableOf("Kind|Component", ["union", "U-1"])];
  expect([...catalogueOf(first, second).components.keys()]).toEqual(["t-1", "u-1"]);
  expect(errorsOf(first, tableOf("Component|Kind", ["t-1", "tee"]))).toEqual([
    'Components (table 2 of this kind) row 1 under the headings, Component: read "t-1"; accepted: what no earlier row has (Components row 1 under the headings has it).',
  ]);
});

test("blank rows are skipped and do not shift row numbers; short rows read blank at their end", () => {
  const table = tableOf("Component|Kind|Price", ["", 0, null], ["T-1", "tee"], [0, 0, 0], ["T-2", "flat tyre", 3]);
  expect(errorsOf(table)).toEqual([expect.stringMatching(/^Components row 4 under the headings, Kind: read "flat tyre"; accepted: master, /)]);
  expect([...parseCatalogue([table]).catalogue.components.keys()]).toEqual(["t-1"]);
});

describe("the key", () => {
  const tables = [components, ports, passages];
  const key = catalogueOf(...tables).key;
  const other = (rows: typeof components) => catalogueOf(rows, ports, passages).key;

  test("looks like PLUMB- and 16 digits, and is the same for the same content in another order of tables or columns", () => {
    expect(key).toMatch(/^PLUMB-[0-9a-f]{16}$/);
    expect(catalogueOf(passages, components, ports).key).toBe(key);
    const remarked = components.rows.map((row) => [...row, "seen"]);
    const blank = components.headings.map(() => 0);
    expect(other({ headings: [...components.headings, "Remarks"].reverse(), rows: [blank, ...remarked].map((row) => [...row].reverse()) })).toBe(key);
  });

  test.each([
    ["a price", { ...components, headings: [...components.headings, "Price"], rows: components.rows.map((row) => [...row, 4]) }],
    ["a unit", { ...components, headings: components.headings.map((one) => (one === "Bore (in)" ? "Bore (cm)" : one)) }],
    ["one cell", { ...components, rows: components.rows.map((row, index) => (index === 2 ? [...row.slice(0, 2), "brass", ...row.slice(3)] : row)) }],
    ["the order of rows", { ...components, rows: [...components.rows].reverse() }],
  ])("changes with %s", (_, changed) => expect(other(changed)).not.toBe(key));
});
