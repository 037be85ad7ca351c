/** Cars to measure with: the invented shop of the demo, with as many customers as asked for. Seeded, so that every run measures the same rows. */
import { demoTables } from "../src/catalogue/demo";
import { parseCatalogue } from "../src/catalogue/parse-catalogue";
import { catalogueTables } from "../src/catalogue/table-specs";
import type { Catalogue } from "../src/core/catalogue";

export type Cell = string | number | boolean;

export interface Rows {
  readonly headings: Cell[];
  readonly rows: Cell[][];
}

/** Platform, first year, and the other columns of Cars that say how a car is equipped, in the order of HEADINGS. */
type Equipment = readonly Cell[];

const OWN_FIGURES = ["Weight (lb)", "Front share (%)", "CG height (in)", "Tyre radius (in)"] as const;
const HEADINGS = ["Car", "Customer", "Platform", "Year", "Front brake", "Rear brake", "Master", "Booster", "Valves", "Hoses", "Material", "Scope", "Conversion", "Fluid", "Valve split set (psi)", "Accepted", "Notes", ...OWN_FIGURES];

export const shopTables: readonly { readonly name: string; readonly headings: readonly Cell[]; readonly rows: readonly (readonly Cell[])[] }[] =
  demoTables.filter(({ name }) => catalogueTables.some((spec) => spec.name === name));

/** The shop's catalogue under a key of its own, so that nothing is remembered of it: one adapter is listed at a price of its own. */
export function freshTables(run: number): { headings: Cell[]; rows: Cell[][] }[] {
  return shopTables.map(({ name, headings, rows }) => ({ headings: [...headings], rows: [...rows.map((row) => [...row]), ...(name === "Operations" ? [] : name === "Adapters" ? [extraAdapter(run)] : [])] }));
}

const extraAdapter = (run: number): Cell[] => [`AD-RUN-${run}`, "7/8-18", "inverted-flare-45", "male", "5/8-18", "inverted-flare-45", "female", 4 + run / 1000];

export const freshCatalogue = (run: number): Catalogue => parseCatalogue(freshTables(run)).catalogue;

/** The headings with a column more, so that no row under them was read before. */
export const freshHeadings = (headings: readonly Cell[], run: number): Cell[] => [...headings, `Shelf ${run}`];

/** Cars of a real shop: a few hundred ways to be equipped, a few of them common; every car has its own name, customer, year and notes. */
export function shopCars(count: number, kinds = 300): Rows {
  const random = randomFrom(7);
  const equipments = Array.from({ length: kinds }, () => equipment(random));
  // The square of an even chance: the commonest tenth of the kinds is on a third of the cars.
  return { headings: HEADINGS, rows: Array.from({ length: count }, (_, index) => row(index, equipments[Math.floor(random() ** 2 * kinds)] as Equipment, random)) };
}

/** The same kinds of cars, of which no two weigh alike or stand alike: each row states figures of its own. */
export function ownFigureCars(count: number): Rows {
  const { headings, rows } = shopCars(count);
  return { headings, rows: rows.map((cells, index) => [...cells.slice(0, -OWN_FIGURES.length), ...ownFigures(index)]) };
}

/** Cars of which no two are known to share even their parts: every row has a list of parts drawn for it, and figures of its own. */
export function unlikeCars(count: number): Rows {
  const random = randomFrom(11);
  return { headings: HEADINGS, rows: Array.from({ length: count }, (_, index) => row(index, [...equipment(random).slice(0, -OWN_FIGURES.length), ...ownFigures(index)], random)) };
}

const ownFigures = (index: number): Cell[] => [2600 + index / 64, 50 + (index % 97) / 12, 20 + (index % 89) / 24, 12 + (index % 83) / 64];

function row(index: number, cells: Equipment, random: () => number): Cell[] {
  const [platform = "", firstYear = 0, ...rest] = cells;
  const notes = random() < 0.3 ? `rings on day ${Math.floor(random() * 28)}` : "";
  return [`Job ${index}`, `Customer ${Math.floor(random() * 4000)}`, platform, Number(firstYear) + Math.floor(random() * 4), ...rest.slice(0, 11), "", notes, ...rest.slice(11)];
}

/** One way to be equipped, with the figures of its platform. */
function equipment(random: () => number): Equipment {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const sometimes = (chance: number, part: string): string[] => (random() < chance ? [part] : []);
  const metric = random() < 0.3;
  const firstYear = 1955 + Math.floor(random() * 25);
  const material = pick(["mild steel", "mild steel", "stainless", "copper-nickel", "copper-nickel", ""]);
  const common = [material, pick(["all", "all", "all", "front", "rear"]), pick(["yes", "no", "no", ""]), pick(["DOT 3", "DOT 4"]), pick(["", 300, 400, 500, 650]), ...OWN_FIGURES.map(() => "")];
  if (metric) {
    const valves = [...sometimes(0.1, "ALU-M"), pick(["PV-M; PV-M", "PV-MS@1; PV-MS@2", "PV-M@1", "PV-ML", "TEE-M; PV-ML", "TEE-M; APV-MI", "CV-M", "BLK-M"]), ...sometimes(0.5, "TEE-AXM"), pick(["SW-LVL", "SW-PDM"])];
    return [pick(["Pellin Saloon", "Pellin Estate", "Pellin Van"]), firstYear, "DC-M", "DR-M8", pick(["MC-M4", "MC-M2"]), pick(["BST-M8", "none", "?"]), valves.join("; "), pick(["HOSE-FM; HOSE-RM", "HOSE-FM; HOSE-RMA"]), ...common];
  }
  const valves = [
    ...sometimes(0.15, "RV-2@front"), ...sometimes(0.1, "RV-10@rear"), ...sometimes(0.05, "RV-10@front"), pick(["BLK-E", "BLK-E", "BLK-EP", "BLK-4W", "BLK-5W", "TEE-38", "TEE-716", "CV-L", "CV-L", "CV-N", "CV-X"]),
    ...sometimes(0.3, "HV-1"), ...sometimes(0.3, pick(["PV-F", "APV-P"])), ...sometimes(0.4, "APV-1"), ...sometimes(0.8, "TEE-AX"), ...sometimes(0.1, "UN-38"), pick(["SW-PD", "SW-LVL", "SW-PDM"]),
  ];
  return [
    pick(["Harrow Roadster", "Harrow 2 Saloon", "Harrow 4 Saloon", "Harrow 4 Estate", "Harrow 6 Coupe", "Harrow Carrier"]), firstYear, pick(["DC-1", "DC-1", "DC-4", "DR-9F", "DR-12F"]), pick(["DR-9", "DR-10", "DR-12", "DC-R"]),
    pick(["MC-1", "MC-2", "MC-3", "MC-4", "MC-S", "MC-LOW"]), pick(["BST-9", "BST-8D", "none", "?"]), random() < 0.05 ? "?" : valves.join("; "), pick(["HOSE-FC; HOSE-R", "HOSE-FD; HOSE-R", "HOSE-FC; HOSE-R7", "HOSE-FC; HOSE-R; HOSE-RC"]), ...common,
  ];
}

/** Lehmer's generator with the multiplier of Park and Miller (1988). @returns chances from 0 to 1 */
export function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return (state - 1) / 2_147_483_646;
  };
}
