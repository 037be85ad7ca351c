/** The one place that knows how a catalogue and cars are built: tests say only what they are about, everything else is a default here. */
import { parseCars } from "../../src/catalogue/parse-cars";
import { parseCatalogue } from "../../src/catalogue/parse-catalogue";
import type { RawTable } from "../../src/catalogue/table-spec";
import { sayTableError } from "../../src/catalogue/table-error";
import { sayJoint } from "../../src/core/assembly";
import type { Car } from "../../src/core/car";
import type { Catalogue } from "../../src/core/catalogue";
import type { Finding, FindingCode } from "../../src/core/finding";
import { reportOn, type CarReport } from "../../src/core/report";
import { partRows, PLATFORM_FIGURES, type Row } from "./part-notation";
import { workshopParts } from "./workshop-parts";

/** Rows of one table: heading row first, columns split by |. A cell that is a number arrives as one, a blank cell as 0, as from a sheet. */
export function table(headings: string, ...rows: readonly string[]): RawTable {
  const names = cellsOf(headings);
  return { headings: names, rows: rows.map((row) => names.map((_, index) => asCell(cellsOf(row)[index] ?? ""))) };
}

const cellsOf = (line: string): string[] => line.split("|").map((cell) => cell.trim());
export const asCell = (text: string): string | number => (text === "" ? 0 : Number.isNaN(Number(text)) ? text : Number(text));

/**
 * Three platforms: `P` with one hose to its rear axle, `I` with a hose at each rear wheel, `X` split diagonally.
 * 3/16 in tube everywhere; the lengths in inches are invented.
 */
const PLATFORMS = table("Platform | First year | Last year | Split", "P | 1960 | 1974 | front/rear", "I | 1968 | 1975 | front/rear", "X | 1974 | 1980 | diagonal");
const LENGTHS = table("Platform | From | To | Length (in) | Tube (in)", ...[
  ...["P", "I", "X"].flatMap((platform) => [
    `${platform} | master | valve | 14`, `${platform} | valve | valve | 6`, `${platform} | valve | LF | 30`, `${platform} | valve | RF | 50`, `${platform} | valve | frame-mid | 60`,
  ]),
  "P | frame-mid | rear-hose | 40", "P | axle-tee | LR | 28", "P | axle-tee | RR | 32", "I | frame-mid | LR | 44", "I | frame-mid | RR | 36", "X | frame-mid | LR | 44", "X | frame-mid | RR | 36",
].map((row) => `${row} | 0.1875`));

/** A table of platforms with the figures of a car that brakes soundly, unless it states its own. */
export function withFigures(given: RawTable): RawTable {
  const { headings, rows } = given;
  if (!headings.includes("Platform") || headings.includes("Length (in)") || headings.includes("Set") || headings.includes("Wheelbase (in)")) return given;
  return { headings: [...headings, ...Object.keys(PLATFORM_FIGURES)], rows: rows.map((row) => [...row, ...Object.values(PLATFORM_FIGURES).map(asCell)]) };
}

export type TableName = "Platforms" | "Lengths" | "Components" | "Ports" | "Passages" | "WheelBrakes" | "Nuts" | "Adapters" | "Tube" | "Settings" | "Joins" | "LineSets";

export interface Shop {
  /** In the notation of part-notation.ts; a name of the workshop's own replaces that part. */
  readonly parts?: readonly string[];
  /** Parts of the workshop's own that are left in; all of them when not stated. */
  readonly workshopParts?: readonly string[];
  /** More tables, beside the ones there are. */
  readonly more?: readonly RawTable[];
  /** Instead of the workshop's own platforms and lengths. */
  readonly platforms?: readonly RawTable[];
  /** False leaves the platforms without the figures of a car that brakes soundly. */
  readonly platformFigures?: boolean;
  /** Rows of Joins on car `C`: From component, From port, To component, To port, Nut thread found, Flare found, Plug. */
  readonly joins?: readonly string[];
  /** Rows of Settings: Setting, Value, Unit. */
  readonly settings?: readonly string[];
}

export const ADAPTERS = "Adapter | Thread A | Seat A | Gender A | Thread B | Seat B | Gender B | Price";
export const NUTS = "Nut | Tube (in) | Thread | Seat | Gender | Price";
export const TUBE = "Tube | Material | Outside diameter (in) | Wall (in) | Form | Length (in) | Price";
export const LENGTH_ROWS = "Platform | From | To | Length (in) | Tube (in)";

/** The tables of a shop, as they would come from its sheets. */
export function tablesOf({ parts = [], workshopParts: kept, more = [], platforms = [PLATFORMS, LENGTHS], platformFigures = true, joins = [], settings = [] }: Shop = {}): RawTable[] {
  const own = workshopParts.map(named).filter(([name]) => !kept || kept.includes(name));
  const rows = [...new Map([...own, ...parts.map(named)]).values()].map(partRows);
  const tables = [
    ...(platformFigures ? platforms.map(withFigures) : platforms),
    ...(["Components", "Ports", "Passages", "WheelBrakes"] as const).map((name) => ofRows(rows.flatMap((one) => one[name]))),
    ...more,
    ...(joins.length === 0 ? [] : [table("Car | From component | From port | To component | To port | Nut thread found | Flare found | Plug", ...joins.map((row) => `C | ${row}`))]),
    ...(settings.length === 0 ? [] : [table("Setting | Value | Unit", ...settings)]),
  ];
  return tables.filter(({ rows: { length } }) => length > 0);
}

const named = (line: string): readonly [string, string] => [line.split(/\s+/)[0] ?? "", line];

function ofRows(rows: readonly Row[]): RawTable {
  const headings = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return { headings, rows: rows.map((row) => headings.map((heading) => asCell(row[heading] ?? ""))) };
}

export function catalogueOf(shop: Shop = {}): Catalogue {
  const { catalogue, errors } = parseCatalogue(tablesOf(shop));
  if (errors.length > 0) throw new Error(errors.map(sayTableError).join("\n"));
  return catalogue;
}

/** A catalogue with the platforms and lengths of another, for tests that make thousands on the same ones. */
export function catalogueOn({ platforms, lengths }: Catalogue, shop: Shop): Catalogue {
  const own = catalogueOf({ ...shop, platforms: [] });
  return { ...own, key: `${own.key} on platforms of another`, platforms, lengths };
}

/** A car of platform P with front discs and rear drums under a tandem master, plumbed through a block; the cells a test gives win. */
export const carCells = {
  Car: "C", Platform: "P", Year: "1972", "Front brake": "DF", "Rear brake": "WR", Master: "MC", Booster: "none", Valves: "BLK; TEE", Hoses: "HF; HR",
  Material: "mild steel", Scope: "all",
};
export type CarCells = Partial<typeof carCells> & Readonly<Record<string, string>>;

/** The switch in the reservoir's cap: every car of the workshop has it, so that no test is about its warning lamp unless it says so. */
export const LAMP_SWITCH = "SW-CAP";
const withLampSwitch = (valves: string): string => (valves === "" || valves === "?" ? valves : valves === "none" ? LAMP_SWITCH : `${valves}; ${LAMP_SWITCH}`);

/** The same with a hose at each rear wheel and discs all round. */
export const fourDiscs: CarCells = { Platform: "I", "Rear brake": "DR", Hoses: "HF; HR2" };
/** The same with drums all round. */
export const allDrum: CarCells = { "Front brake": "WF" };
/** A diagonal split with a hose at each rear wheel. */
export const diagonal: CarCells = { Platform: "X", Year: "1976", "Rear brake": "DR", Hoses: "HF; HR2" };

/** The cells of one row of Cars, by heading. */
export function rowOfCars(cells: CarCells = {}): Row {
  const stated: Row = { ...carCells, ...cells };
  return { ...stated, Valves: withLampSwitch(stated["Valves"] ?? "") };
}

export function carOf(cells: CarCells = {}): Car {
  const row = rowOfCars(cells);
  const { cars } = parseCars(Object.keys(row), [Object.values(row).map(asCell)]);
  const [only] = cars;
  if (!only?.car || only.errors.length > 0) throw new Error(only?.errors.map(sayTableError).join("\n") ?? "no car");
  return only.car;
}

const workshop = catalogueOf();

export const report = (cells: CarCells = {}, shop?: Shop): CarReport => reportOn(shop ? catalogueOf(shop) : workshop, carOf(cells));

export const reportIn = (catalogue: Catalogue, cells: CarCells): CarReport => reportOn(catalogue, carOf(cells));

const said = (findings: readonly Finding[]): string => findings.map(({ code }) => code).join(" ");

/** Codes above a note, worst first, each as often as it was found; empty text when there is nothing. */
export const aboveNote = (cells: CarCells = {}, shop?: Shop): string => said(report(cells, shop).findings.filter(({ severity }) => severity !== "note"));

/** The same, with the notes of one code among them. */
export const aboveNoteAnd = (code: FindingCode, cells: CarCells = {}, shop?: Shop): string =>
  said(report(cells, shop).findings.filter((one) => one.severity !== "note" || one.code === code));

/** Codes of any severity, worst first. */
export const allCodes = (cells: CarCells = {}, shop?: Shop): string => said(report(cells, shop).findings);

export function findingOf(code: FindingCode, cells: CarCells = {}, shop?: Shop): Finding {
  const found = report(cells, shop).findings.find((one) => one.code === code);
  if (!found) throw new Error(`no ${code} among: ${allCodes(cells, shop)}`);
  return found;
}

/** Every joint as `MC F → BLK FI`, with `direct` where no line lies between. */
export const jointsOf = (cells: CarCells = {}, shop?: Shop): string[] =>
  report(cells, shop).assembly.joints.map((joint) => `${sayJoint(joint)}${joint.by === "direct" ? " direct" : ""}`);

/** Every run as `MC F → BLK FI`. */
export const runsOf = (cells: CarCells = {}, shop?: Shop): string[] => report(cells, shop).runs.map(({ joint }) => sayJoint(joint));
