import { parseCatalogue } from "../../src/catalogue/parse-catalogue";
import { sayTableError } from "../../src/catalogue/table-error";
import { errorsOf, tableOf } from "./tables";

const components = tableOf("Component|Kind", ["MC-1", "master"], ["CV-1", "combination-valve"], ["D-1", "disc"], ["B-1", "booster"]);
const ports = tableOf("Component|Port|Flow", ["CV-1", "IN", "in"], ["CV-1", "OUT", "out"]);
const platforms = tableOf("Platform|Split", ["P-1", "diagonal"]);

test.each([
  ["Component|Kind|Bore", 'Components headings, Bore: read "Bore"; accepted: Bore (in), Bore (ft), Bore (mm), Bore (cm) or Bore (m).'],
  ["Component|Kind|Bore (cubits)", 'Components headings, Bore: read "Bore (cubits)"; accepted: Bore (in), Bore (ft), Bore (mm), Bore (cm) or Bore (m).'],
  ["Component|Kind|Built-in residual (in)", 'Components headings, Built-in residual: read "Built-in residual (in)"; accepted: Built-in residual (psi), Built-in residual (bar), Built-in residual (kPa) or Built-in residual (MPa).'],
  ["Component|Kind|Bore (in)|bore (mm)", 'Components headings, Bore: read "bore (mm)"; accepted: one column of this heading (column 3 is Bore (in)).'],
  ["Component|Pistons (in all)", 'WheelBrakes headings, Pistons: read "Pistons (in all)"; accepted: Pistons (a side) or Pistons alone, meaning a side.'],
  ["Tube|Material|Outside diameter (in)|Wall (in)|Form|Lead time", 'Tube headings, Lead time: read "Lead time"; accepted: Lead time (weeks) or Lead time (days).'],
  ["Platform|Split|Vacuum (psi)", 'Platforms headings, Vacuum: read "Vacuum (psi)"; accepted: Vacuum (inHg), Vacuum (kPa) or Vacuum (mmHg).'],
  ["Platform|Split|From|First year", 'Platforms headings, First year: read "First year"; accepted: one column of this heading (column 3 is From).'],
])("headings %s", (headings, says) => expect(errorsOf(tableOf(headings))).toEqual([says]));

describe("points of a line", () => {
  const lengths = (heading: string, ...rows: unknown[][]) => tableOf(`Platform|From|To|Length (in)|${heading}`, ...(rows as (string | number)[][]));
  test("a cell that is no list of triples is named with the point at fault, and the other rows stand", () => {
    const table = lengths("Bends (in)", ["P-1", "master", "LF", 20, "0 0 0; 5 0; 5 5 0"], ["P-1", "master", "RF", 20, "0 0 0; 5 0 0; 5 5 0"], ["P-1", "master", "LR", 20, "0 0 0"], ["P-1", "master", "RR", 20, "0 0 0; a b c"]);
    const accepted = "triples x y z split by ;, both ends included, such as 0 0 0; 12 0 0; 12 8 0";
    expect(errorsOf(platforms, table)).toEqual([
      `Lengths row 1 under the headings, Bends: read "0 0 0; 5 0; 5 5 0"; accepted: ${accepted} (point 2 is not three numbers).`,
      `Lengths row 3 under the headings, Bends: read "0 0 0"; accepted: ${accepted} (one point is no line).`,
      `Lengths row 4 under the headings, Bends: read "0 0 0; a b c"; accepted: ${accepted} (point 2 is not three numbers).`,
    ]);
    expect(parseCatalogue([platforms, table]).catalogue.lengths.get("p-1")?.map(({ to }) => to)).toEqual(["RF"]);
  });

  test("without a length and a unit nobody knows how long they are", () =>
    expect(errorsOf(platforms, lengths("Bends", ["P-1", "master", "LF", 0, "0 0 0; 5 0 0"]))).toEqual(['Lengths row 1 under the headings, Bends: read "0 0 0; 5 0 0"; accepted: a unit in the heading, as Bends (in) or Bends (mm), where Length is blank.']));

  test("a row with neither length nor points is refused", () =>
    expect(errorsOf(platforms, lengths("Bends (in)", ["P-1", "master", "LF", 0, 0]))).toEqual(["Lengths row 1 under the headings, Length: read nothing; accepted: a length above 1/16 in and below 2000 in (1.6 mm to 50.8 m) (blank: Bends gives the points)."]));

  test("points that are one are no line", () => expect(errorsOf(platforms, lengths("Bends (in)", ["P-1", "master", "LF", 9, "1 1 1; 1 1 1"]))).toEqual([expect.stringContaining("points apart from one another")]));
});

test("a table whose needed column has no unit says so once, and still reports the errors of its other columns", () => {
  const table = tableOf("Platform|From|To|Length|Tube (in)", ["P-1", "master", "LF", 20, 0], ["P-1", "master", "RF", 20, 44], ["P-1", "", "RF", 20, 0]);
  expect(errorsOf(platforms, table)).toEqual([
    'Lengths headings, Length: read "Length"; accepted: Length (in), Length (ft), Length (mm), Length (cm) or Length (m).',
    'Lengths row 2 under the headings, Tube: read "44"; accepted: a length from 1/16 in to 1 in (1.6 to 25.4 mm).',
    "Lengths row 3 under the headings, From: read nothing; accepted: a place such as master, valve, frame-front or LF.",
  ]);
});

test("every error of every row and table is reported, and the sound rows stay", () => {
  const parsed = parseCatalogue([
    tableOf("Component|Kind|Bore (in)|Arrow", ["MC-1", "master", "wide", "perhaps"], ["", "tee", "", ""], ["CV-1", "", "", ""], ["HV-1", "hold-off-valve", "", ""]),
    tableOf("Component|Port|Flow|Thread", ["HV-1", "IN", "in", "9/16-19x"], ["HV-1", "OUT", "out", "7/16-24"]),
  ]);
  expect(parsed.errors.map(sayTableError)).toEqual([
    'Components row 1 under the headings, Bore: read "wide"; accepted: a length from 0.2 in to 6 in (5.1 to 152.4 mm).',
    'Components row 1 under the headings, Arrow: read "perhaps"; accepted: yes or no.',
    "Components row 2 under the headings, Component: read nothing; accepted: a name.",
    expect.stringMatching(/^Components row 3 under the headings, Kind: read nothing; accepted: master, booster, /),
    'Ports row 1 under the headings, Thread: read "9/16-19x"; accepted: a thread such as 3/8-24, M10x1 or 1/8-27 NPT.',
  ]);
  expect(parsed.errors.map(({ code }) => code)).toEqual(["data-out-of-range", "data-out-of-range", "data-missing", "data-missing", "data-out-of-range"]);
  expect([...parsed.catalogue.components.values()].map(({ name, ports: own }) => [name, own.map((port) => port.name)])).toEqual([["HV-1", ["OUT"]]]);
});

test.each([
  ["a port of no component", [components, tableOf("Component|Port|Flow", ["ZZ", "IN", "in"])], 'Ports row 1 under the headings, Component: read "ZZ"; accepted: a component of the Components table.'],
  ["a port given twice", [components, tableOf("Component|Port|Flow", ["CV-1", "IN", "in"], ["cv-1", "in", "out"])], 'Ports row 2 under the headings, Port: read "in"; accepted: what no earlier row has (Ports row 1 under the headings has it).'],
  ["a passage from no port", [components, ports, tableOf("Component|From|To|Does", ["CV-1", "IN2", "OUT", "through"])], 'Passages row 1 under the headings, From: read "IN2"; accepted: a port of CV-1: IN or OUT.'],
  ["a passage to no port", [components, ports, tableOf("Component|From|To|Does", ["CV-1", "in", "OUT2", "through"])], 'Passages row 1 under the headings, To: read "OUT2"; accepted: a port of CV-1: IN or OUT.'],
  ["a passage of a part without ports", [components, tableOf("Component|From|To|Does", ["CV-1", "IN", "OUT", "through"])], 'Passages row 1 under the headings, From: read "IN"; accepted: a port of CV-1, which has none in the Ports table.'],
  ["a hold-off that is full before it opens", [components, ports, tableOf("Component|From|To|Does|Opens (psi)|Full (psi)", ["CV-1", "IN", "OUT", "hold-off", 100, 50])], 'Passages row 1 under the headings, Full: read "50"; accepted: a pressure not below Opens.'],
  ["an adjustable valve with its ends swapped", [components, ports, tableOf("Component|From|To|Does|Least split (psi)|Most split (psi)", ["CV-1", "IN", "OUT", "adjustable-proportioning", 900, 100])], 'Passages row 1 under the headings, Most split: read "100"; accepted: a pressure not below Least split.'],
  ["a component given twice", [tableOf("Component|Kind", ["T-1", "tee"], ["t-1 ", "tee"])], 'Components row 2 under the headings, Component: read "t-1"; accepted: what no earlier row has (Components row 1 under the headings has it).'],
  ["brake figures of a master", [components, tableOf("Component|Piston (in)", ["MC-1", 2])], 'WheelBrakes row 1 under the headings, Component: read "MC-1"; accepted: a component of kind disc or drum (this one is a master).'],
  ["booster figures of a disc", [components, tableOf("Component|Gain", ["D-1", 3])], 'Boosters row 1 under the headings, Component: read "D-1"; accepted: a component of kind booster (this one is a disc).'],
  ["brake figures given twice", [components, tableOf("Component|Piston (in)", ["D-1", 2], ["D-1", 1])], 'WheelBrakes row 2 under the headings, Component: read "D-1"; accepted: what no earlier row has (WheelBrakes row 1 under the headings has it).'],
  ["a disc inside out", [components, tableOf("Component|Outer radius (in)|Inner radius (in)", ["D-1", 4, 5])], 'WheelBrakes row 1 under the headings, Inner radius: read "5"; accepted: a radius below Outer radius.'],
  ["drum factors out of order", [components, tableOf("Component|Factor low|Factor|Factor high", ["D-1", 4, 3, 5])], 'WheelBrakes row 1 under the headings, Factor low: read "4"; accepted: a number not above Factor.'],
  ["a platform given twice", [tableOf("Platform|Split", ["P-1", "diagonal"], ["p-1", "diagonal"])], 'Platforms row 2 under the headings, Platform: read "p-1"; accepted: what no earlier row has (Platforms row 1 under the headings has it).'],
  ["years that run backward", [tableOf("Platform|First year|Last year", ["P-1", 1970, 1965])], 'Platforms row 1 under the headings, Last year: read "1965"; accepted: a year from 1970 on.'],
  ["a length on no platform", [platforms, tableOf("Platform|From|To|Length (in)", ["P-9", "master", "LF", 20])], 'Lengths row 1 under the headings, Platform: read "P-9"; accepted: a platform of the Platforms table.'],
  ["a length without a Platforms table", [tableOf("Platform|From|To|Length (in)", ["P-9", "master", "LF", 20])], 'Lengths row 1 under the headings, Platform: read "P-9"; accepted: a platform of the Platforms table (no such table was given).'],
  ["a length measured twice, the other way round", [platforms, tableOf("Platform|From|To|Length (in)", ["P-1", "master", "LF", 20], ["p-1", "lf", "Master", 21])], 'Lengths row 2 under the headings, To: read "master"; accepted: what no earlier row has (Lengths row 1 under the headings has it).'],
  ["a nut given twice", [tableOf("Nut|Tube (in)|Thread|Seat|Gender", ["N", 0.25, "7/16-24", "inverted flare", "male"], ["n", 0.25, "7/16-24", "inverted flare", "male"])], 'Nuts row 2 under the headings, Nut: read "n"; accepted: what no earlier row has (Nuts row 1 under the headings has it).'],
  ["a tube of nothing but wall", [tableOf("Tube|Material|Outside diameter (in)|Wall (in)|Form", ["T", "stainless", "3/16", 0.1, "stick"])], 'Tube row 1 under the headings, Wall: read "0.1"; accepted: less than half of Outside diameter.'],
  ["a set for no platform", [platforms, tableOf("Set|Platform|Valves|Front", ["S-1", "P-9", "none", "disc"])], 'LineSets row 1 under the headings, Platform: read "P-9"; accepted: a platform of the Platforms table.'],
  ["a run of no set", [tableOf("Set|From|To", ["S-9", "master", "LF"])], 'SetRuns row 1 under the headings, Set: read "S-9"; accepted: a set of the LineSets table (no such table was given).'],
  ["half an end of a found joint", [tableOf("Car|From component|From port|To component|To port", ["C", "MC-1", "A", "CV-1", ""])], "Joins row 1 under the headings, To port: read nothing; accepted: a port of To component."],
  ["rows of cars", [tableOf("Car|Platform|Master|Valves", ["C", "P-1", "MC-1", "none"])], 'Table 1 headings: read "Cars"; accepted: tables of the catalogue only; rows of Cars go to the functions that answer about them.'],
  ["a table of nothing known", [components, tableOf("Alpha", ["x"])], expect.stringMatching(/^Table 2 headings: read "Alpha"; accepted: the headings of one of Platforms/)],
])("%s", (_, tables, says) => expect(errorsOf(...tables)).toEqual([says]));

test("each later row of a name points at the first row that has it", () => {
  expect(errorsOf(tableOf("Component|Kind", ["T-1", "tee"], ["T-1", "tee"], ["T-1", "tee"]))).toEqual([
    'Components row 2 under the headings, Component: read "T-1"; accepted: what no earlier row has (Components row 1 under the headings has it).',
    'Components row 3 under the headings, Component: read "T-1"; accepted: what no earlier row has (Components row 1 under the headings has it).',
  ]);
});

test("a row with an error still lends its name to rows that refer to it, so that one bad cell is one error", () => {
  const says = errorsOf(
    tableOf("Component|Kind|Price", ["CV-1", "combination-valve", "dear"]),
    tableOf("Component|Port|Flow|Seat", ["CV-1", "IN", "in", "soft"], ["CV-1", "OUT", "out", ""]),
    tableOf("Component|From|To|Does", ["CV-1", "IN", "OUT", "through"]),
  );
  expect(says).toHaveLength(2);
  expect(says[0]).toBe('Components row 1 under the headings, Price: read "dear"; accepted: a number of 0 or more.');
  expect(says[1]).toMatch(/^Ports row 1 under the headings, Seat: read "soft"; accepted: inverted-flare-45, /);
});

test("which valves a set was bent for is not the catalogue's to judge: a part may be on cars and not in the shop", () => {
  expect(errorsOf(platforms, tableOf("Set|Platform|Valves|Front", ["S-1", "P-1", "NO-SUCH", "disc"]))).toEqual([]);
});
