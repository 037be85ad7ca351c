import * as z from "zod/mini";
import type { Column } from "../../src/catalogue/column";
import { portsTable } from "../../src/catalogue/tables/ports";
import { componentsTable } from "../../src/catalogue/tables/components";
import { passagesTable } from "../../src/catalogue/tables/passages";
import { platformsTable } from "../../src/catalogue/tables/platforms";
import { joinsTable } from "../../src/catalogue/tables/joins";
import { lengthsTable } from "../../src/catalogue/tables/lengths";
import { lineSetsTable } from "../../src/catalogue/tables/line-sets";
import { tubeTable } from "../../src/catalogue/tables/tube";
import { wheelBrakesTable } from "../../src/catalogue/tables/wheel-brakes";
import { unitNamed } from "../../src/catalogue/unit";

/** What a column makes of a cell; "refused" when it makes nothing of it. */
function read(column: Column<unknown>, raw: unknown, unit = ""): unknown {
  const answer = z.safeParse(column.schema(column.quantity && unitNamed(column.quantity, unit)), raw);
  return answer.success ? answer.data : "refused";
}

const { seat, gender, flow, circuit, serves, thread, plugged, use } = portsTable.columns;
const { kind, bore, expansion, fluidHeld } = componentsTable.columns;

test.each<[string, Column<unknown>, unknown, unknown]>([
  ["Seat", seat, "Inverted Flare 45°", "inverted-flare-45"],
  ["Seat", seat, "inverted flare", "inverted-flare-45"],
  ["Seat", seat, "BUBBLE-ISO", "bubble-iso"],
  ["Seat", seat, "ISO bubble", "bubble-iso"],
  ["Seat", seat, "37° flare", "flare-37"],
  ["Seat", seat, "flare 45", "flare-45"],
  ["Seat", seat, "O ring", "o-ring"],
  ["Seat", seat, "Compression", "compression"],
  ["Seat", seat, "flat", "refused"],
  ["Seat", seat, 0, undefined],
  ["Gender", gender, "Female", "female"],
  ["Gender", gender, "M", "male"],
  ["Gender", gender, "both", "refused"],
  ["Flow", flow, "OUT", "out"],
  ["Flow", flow, "inlet", "in"],
  ["Flow", flow, "", "refused"],
  ["Circuit", circuit, 2, "2"],
  ["Circuit", circuit, "Front", "front"],
  ["Circuit", circuit, "", "any"],
  ["Circuit", circuit, 3, "refused"],
  ["Serves", serves, "lf", "LF"],
  ["Serves", serves, "left front", "LF"],
  ["Serves", serves, null, "any"],
  ["Plugged", plugged, true, true],
  ["Plugged", plugged, "Y", true],
  ["Plugged", plugged, "FALSE", false],
  ["Plugged", plugged, 0, false],
  ["Plugged", plugged, 1, "refused"],
  ["Use", use, "Switch", "switch"],
  ["Use", use, "", "line"],
  ["Kind", kind, "Hold-Off valve", "hold-off-valve"],
  ["Kind", kind, "anti-lock unit", "anti-lock-unit"],
  ["Kind", kind, "master cylinder", "master"],
  ["Kind", kind, "carburettor", "refused"],
  ["Does", passagesTable.columns.does, "load sensing proportioning", "load-sensing-proportioning"],
  ["Does", passagesTable.columns.does, "metering", "hold-off"],
  ["Does", passagesTable.columns.does, "", undefined],
  ["Material", tubeTable.columns.material, "Copper", "copper"],
  ["Material", tubeTable.columns.material, "copper nickel", "copper-nickel"],
  ["Material", tubeTable.columns.material, "Stainless steel", "stainless"],
  ["Form", tubeTable.columns.form, "Coils", "coil"],
  ["Type", wheelBrakesTable.columns.type, "Duo servo", "duo-servo"],
  ["Pistons", wheelBrakesTable.columns.pistons, 1.5, "refused"],
  ["Split", platformsTable.columns.split, "Front / rear", "front/rear"],
  ["Split", platformsTable.columns.split, "sideways", "refused"],
  ["Split", platformsTable.columns.split, "front-rear", "front/rear"],
  ["Split", platformsTable.columns.split, "Diagonal", "diagonal"],
  ["First year", platformsTable.columns.firstYear, "1968", 1968],
  ["First year", platformsTable.columns.firstYear, 68, "refused"],
  ["Pedal ratio", platformsTable.columns.pedalRatio, "6.2", 6.2],
  ["Driver side", platformsTable.columns.driverSide, "RHD", "right"],
  ["Place", lengthsTable.columns.from, "Frame Front", "frame-front"],
  ["Place", lengthsTable.columns.from, "rr", "RR"],
  ["Place", lengthsTable.columns.from, "Behind the tank", "Behind the tank"],
  ["Flare found", joinsTable.columns.flare, "single 45", "single 45°"],
  ["Flare found", joinsTable.columns.flare, "double", "double 45°"],
  ["Valves", lineSetsTable.columns.valves, "HV-1; PV-2", ["HV-1", "PV-2"]],
  ["Valves", lineSetsTable.columns.valves, "None", []],
  ["Valves", lineSetsTable.columns.valves, "HV-1; ?", undefined],
  ["Due", tubeTable.columns.due, 45000, 45000],
  ["Due", tubeTable.columns.due, "2023-03-15", 45000], // 45000 is 15 March 2023 in every spreadsheet of the 1900 date system
  ["Due", tubeTable.columns.due, "2023-02-30", "refused"],
  ["Due", tubeTable.columns.due, "soon", "refused"],
])("%s reads %#: %p", (_, column, raw, value) => expect(read(column, raw)).toEqual(value));

test.each([
  ["3/8-24", "3/8-24"],
  ["m10 x 1.0", "M10x1"],
  ["1/8-27 NPT", "1/8-27 NPT"],
])("a thread written %p is %s", (raw, name) => expect(read(thread, raw)).toMatchObject({ name }));

test("a thread that the spreadsheet made a date is refused with how to keep it text", () => {
  const answer = z.safeParse(thread.schema(undefined), 45359);
  expect(answer.error?.issues[0]?.message).toMatch(/formatted as text/);
});

// 3/16 typed in 2026: day 45000 is 15 March 2023 (see Due above), and 366 + 365 + 365 + 1 days later it is 16 March 2026.
test("a tube size that the spreadsheet made a date is refused with how to keep it text, and one too large is not", () => {
  const { tube } = lengthsTable.columns;
  const said = (raw: unknown): string | undefined => z.safeParse(tube.schema(tube.quantity && unitNamed(tube.quantity, "in")), raw).error?.issues[0]?.message;
  expect(said(46097)).toMatch(/formatted as text so that the spreadsheet does not make a date of a fraction/);
  expect(said(44)).toBe("a length from 1/16 in to 1 in (1.6 to 25.4 mm)");
});

// Hand working: 1 in = 0.0254 m, 1 psi = 6894.757 Pa, 1 in³ = 1.6387064e-5 m³; the rest are powers of ten.
test.each<[Column<unknown>, string, unknown, number]>([
  [bore, "in", "1 1/8", 0.028575],
  [bore, "mm", 25.4, 0.0254],
  [bore, "CM", "2.54", 0.0254],
  [bore, '"', 1, 0.0254],
  [fluidHeld, "in³", 10, 1.6387064e-4],
  [fluidHeld, "in3", 10, 1.6387064e-4],
  [fluidHeld, "cc", 10, 1e-5],
  [fluidHeld, "ml", 10, 1e-5],
  [expansion, "cc/m", 2, 2e-6],
  [passagesTable.columns.holds, "psi", 10, 68947.57],
  [passagesTable.columns.holds, "bar", 0.7, 70000],
  [passagesTable.columns.holds, "kPa", 70, 70000],
  [passagesTable.columns.holds, "mpa", 0.07, 70000],
  [platformsTable.columns.vacuum, "inHg", 18, 60955],
  [platformsTable.columns.mass, "kg", "1,500", 1500],
  [platformsTable.columns.mass, "lb", 1000, 453.59237],
  [platformsTable.columns.frontShare, "%", 57, 0.57],
  [platformsTable.columns.frontShare, "", 0.57, 0.57],
  [platformsTable.columns.frontShare, "", "57 %", 0.57],
  [platformsTable.columns.reservoirAboveCalipers, "in", -4, -0.1016],
  [tubeTable.columns.leadTimeWeeks, "days", 14, 2],
])("%# a figure under (%s)", (column, unit, raw, si) => {
  const value = read(column, raw, unit);
  expect(Math.abs((value as number) / si - 1)).toBeLessThan(1e-6);
});

test.each<[string, Column<unknown>, string, unknown]>([
  ["a negative bore", bore, "in", -1],
  ["a bore in the wrong unit", bore, "in", 25.4],
  ["a tube size that became a date (3/16)", tubeTable.columns.outsideDiameter, "in", 46098],
  ["a share formatted as %, which arrives as 0.57", platformsTable.columns.frontShare, "%", 0.57],
  ["a slope above 1", passagesTable.columns.slope, "", 43],
  ["an error value", bore, "in", { error: "#REF!" }],
  ["words", bore, "in", "one inch"],
])("%s is refused", (_, column, unit, raw) => expect(read(column, raw, unit)).toBe("refused"));

// Minutes of 1e308 for two lines came to no number, and the quotes of all cars to an error.
test.each<[string, Column<unknown>, unknown, string]>([
  ["a price", tubeTable.columns.price, 1e308, ""], ["a volume", fluidHeld, 1e30, "in³"], ["a bore", bore, 5e-324, "in"], ["text that is one", tubeTable.columns.price, "1e300", ""],
])("%s beyond all bounds is refused", (_, column, raw, unit) => {
  expect(read(column, raw, unit)).toBe("refused");
});
