import { recognise } from "../../src/catalogue/recognise";
import { allTables, tableSpecs, type TableDescription } from "../../src/catalogue/table-specs";
import { sayTableError } from "../../src/catalogue/table-error";

const recognised = (headings: readonly string[], label?: string): string => {
  const { spec, error } = recognise(headings, label);
  return spec ? spec.name : sayTableError(error);
};

/** The headings of the plan, written here by hand: what a shop's own tables are recognised by. */
const asDesigned: Readonly<Record<string, string>> = {
  Cars: "Car · Customer · Platform · Year · Front brake · Rear brake · Master · Booster · Valves · Hoses · Material · Scope · Conversion · Fluid · Notes",
  Platforms:
    "Platform · From · To · Split · Wheelbase (in) · Weight (lb) · Front share (%) · CG height (in) · Laden weight (lb) · Laden front share (%) · Laden CG height (in) · Tyre radius (in) · Reservoir above calipers (in) · Pedal ratio · Pedal travel (in) · Vacuum (inHg) · Frequency",
  Lengths: "Platform · From · To · Length (in) · Tube (in) · Bends",
  Components: "Component · Kind · Description · Place · Price · On hand · Bore (in) · Stroke (in) · Built-in residual (psi) · Arrow",
  Boosters: "Component · Diaphragm (in) · Diaphragms · Gain · Jump-in (lbf) · Cut-in (lbf) · Spring (lbf)",
  Ports: "Component · Port · Flow · Circuit · Serves · Thread · Seat · Gender · Side · Plugged · Use",
  Passages: "Component · From · To · Does · Opens (psi) · Full (psi) · Split (psi) · Slope · Least split (psi) · Most split (psi) · Holds (psi)",
  WheelBrakes:
    "Component · Pistons (a side) · Piston (in) · Type · Friction · Outer radius (in) · Inner radius (in) · Drum radius (in) · Factor low · Factor · Factor high · Threshold (psi) · Clearance (in) · Cup expanders · Parking brake",
  Nuts: "Nut · Tube (in) · Thread · Seat · Gender · Price",
  Adapters: "Adapter · Thread A · Seat A · Gender A · Thread B · Seat B · Gender B · Price",
  Tube: "Tube · Material · Outside diameter (in) · Wall (in) · Form · Length (in) · Price · On hand · On order · Lead time (weeks) · Least bend radius (in)",
  LineSets: "Set · Platform · From · To · Valves · Front · Rear · Material · Price · On hand · Frequency",
  SetRuns: "Set · From · To · Tube (in) · Length (in) · Thread A · Seat A · Thread B · Seat B",
  Settings: "Setting · Value · Unit · Source",
  Kits: "Kit · Component · Quantity · Price",
  PriceBreaks: "Tube · From quantity · Price",
  Fluids: "Fluid · Bottle (fl oz) · Price",
  Operations: "Operation · Applies to · Minutes",
  Seen: "Car · Body · Port · Diameter (in) · Pitch · Gender · Thread · Side · Place · Wire",
  Pipeline: "Quote · Car · Chance (%) · Earliest · Likely · Latest · Quantity",
  Usage: "Date · Tube · Length (in)",
  Joins: "Car · From component · From port · To component · To port · Nut thread found · Flare found · Plug",
};

const split = (headings: string) => headings.split(" · ");
const METRIC: Readonly<Record<string, string>> = { "(in)": "(mm)", "(psi)": "(bar)", "(lb)": "(kg)", "(lbf)": "(N)", "(inHg)": "(kPa)", "(fl oz)": "(ml)" };
const inMetric = (heading: string) => heading.replace(/\([^)]*\)$/, (unit) => METRIC[unit] ?? unit);

describe.each(Object.entries(asDesigned))("%s", (name, headings) => {
  test("is recognised by the headings of the design", () => expect(recognised(split(headings))).toBe(name));
  test("in metric units", () => expect(recognised(split(headings).map(inMetric))).toBe(name));
  test("in any case, order and spacing, with columns of the shop's own", () => {
    const odd = split(headings).map((heading) => `  ${heading.toUpperCase().replace(" ", "   ")} `).reverse();
    expect(recognised(["Remarks", ...odd, "Checked by"])).toBe(name);
  });
  test("has every heading of the design in its spec", () => {
    const known = new Set(described(name).headings.flatMap(({ heading, aliases }) => [heading, ...aliases]));
    expect(split(headings).map((heading) => heading.replace(/ \([^)]*\)$/, "")).filter((heading) => !known.has(heading) && heading !== "Bends")).toEqual([]);
  });
});

describe.each(tableSpecs.map((spec) => [spec.name, spec] as const))("%s", (name, spec) => {
  test("is recognised with every heading it knows", () => expect(recognised(spec.headings.map(withUnit))).toBe(name));
  test("is recognised with the headings it cannot do without", () => {
    const needed = new Set([...spec.knownBy.flatMap((group) => group[0] ?? []), ...spec.headings.filter(({ required }) => required).map(({ heading }) => heading)]);
    expect(recognised([...needed])).toBe(name);
  });
  test("is not recognised without one of them", () => {
    for (const group of spec.knownBy) {
      const rest = spec.headings.map(({ heading }) => heading).filter((heading) => !group.includes(heading));
      expect(recognised(rest)).not.toBe(name);
    }
  });
});

test("every column that must be filled is one the table is known by, or its absence is an error of its own", () => {
  const lacking = allTables.flatMap((spec) => Object.entries(spec.columns).filter(([field, column]) => column.filled && !spec.knownBy.some((group) => group.includes(field))).map(([field]) => `${spec.name}.${field}`));
  expect(lacking).toEqual([]);
});

test.each([
  ["Component|Port|Thread", 'Table headings: read "Component, Port, Thread"; accepted: the headings of a table; the nearest is Ports, which also needs Flow.'],
  ["Nut|Tube (in)|Thread|Price", 'Table headings: read "Nut, Tube (in), Thread, Price"; accepted: the headings of a table; the nearest is Nuts, which also needs Seat and Gender.'],
])("%s names the nearest table and what it lacks", (headings, says) => expect(recognised(headings.split("|"))).toBe(says));

test("the name of a range says which table was meant", () => {
  expect(recognised(["Component", "Description"], "Ports")).toBe('Ports headings: read "Component, Description"; accepted: the headings of a table; the nearest is Ports, which also needs Port and Flow.');
});

test("headings of no table list the tables", () => expect(recognised(["Alpha", "Beta"])).toMatch(/read "Alpha, Beta"; accepted: the headings of one of Platforms, Lengths, .*Cars, Seen, Pipeline, Usage\.$/));

test("headings of two tables at once are a tie and an error", () => {
  expect(recognised(["Component", "Kind", "Setting", "Value"])).toBe(
    'Table headings: read "Component, Kind, Setting, Value"; accepted: the headings of one table only (these fit Components and Settings).',
  );
});

function described(name: string): TableDescription {
  const spec = tableSpecs.find((one) => one.name === name);
  if (!spec) throw new Error(`no table ${name}`);
  return spec;
}

const withUnit = ({ heading, units }: TableDescription["headings"][number]): string => (units[0] ? `${heading} (${units[0]})` : heading);
