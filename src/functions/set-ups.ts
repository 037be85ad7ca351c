/** Answers about the physics of cars: cars alike in everything that matters to it share their figures. */
import { parseCars, type CarRow } from "../catalogue/parse-cars";
import { sayTableError } from "../catalogue/table-error";
import { assemble, wheelPaths } from "../core/assembly";
import type { Gap } from "../core/balance/figures";
import type { TravelFacts } from "../core/balance/travel";
import { nameKey, type Catalogue } from "../core/catalogue";
import { runsOf } from "../core/runs";
import type { CellValue } from "../workbook/document";
import { badValue } from "./answer";
import type { OfCar } from "./car-tables";
import { laidOut, type Column } from "./columns";

/** A car as the physics reads it. */
export type SetUp = TravelFacts;

type Car = NonNullable<CarRow["car"]>;
type Structure = Pick<TravelFacts, "assembly" | "paths" | "runs">;

const KEPT = 20_000;

/** Made once for a key and catalogue. */
function keptBy<T>(): (catalogue: Catalogue, key: string, make: () => T) => T {
  const byCatalogue = new WeakMap<Catalogue, Map<string, T>>();
  return (catalogue, key, make) => {
    const kept = byCatalogue.get(catalogue) ?? new Map<string, T>();
    byCatalogue.set(catalogue, kept);
    const known = kept.get(key) ?? make();
    if (kept.size >= KEPT) kept.clear();
    kept.set(key, known);
    return known;
  };
}

const [structures, setUps] = [keptBy<Structure>(), keptBy<SetUp>()];

/** Cars of the same parts share their lines; of those, cars alike in every figure share all. */
function setUpOf(catalogue: Catalogue, car: Car): SetUp {
  const { platform, brakes, master, booster, valves, hoses, valveSetting, platformFigures, material, scope } = car;
  const joins = catalogue.joins.has(nameKey(car.name)) ? car.name : "";
  const parts = JSON.stringify([platform, brakes, master, valves, hoses, material, scope, platformFigures.split, joins]);
  return setUps(catalogue, parts + JSON.stringify([booster, valveSetting, platformFigures]), () => {
    const structure = structures(catalogue, parts, () => structureOf(catalogue, car));
    // Runs are worked out only where travel is asked for.
    return { catalogue, paths: structure.paths, assembly: { ...structure.assembly, car }, get runs() { return structure.runs; } };
  });
}

function structureOf(catalogue: Catalogue, car: Car): Structure {
  const assembly = assemble(catalogue, car);
  const paths = wheelPaths(assembly);
  let runs: TravelFacts["runs"] | undefined;
  return { assembly, paths, get runs() { return (runs ??= runsOf(catalogue, assembly, paths).runs); } };
}

/** How a car's part of an answer is made. */
interface Answer<T> {
  readonly columns: readonly Column<OfCar<T>>[];
  readonly items: (facts: SetUp) => readonly T[];
  /** What keeps figures open. */
  readonly problem: (facts: SetUp) => string;
}

/** The heading row, then each car's rows, or one that says why it has none. Cars of one set-up share their figures. */
export function answerOf<T>(catalogue: Catalogue, [headings, rows]: Ranges, { columns, items, problem }: Answer<T>): CellValue[][] {
  const parsed = parseCars(headings?.[0] ?? [], rows ?? []);
  if (parsed.headingErrors.length > 0) throw badValue(parsed.headingErrors.map(sayTableError).join(" "));
  const { units } = catalogue.settings;
  const shared = new Map<SetUp, CellValue[][]>();
  const cellsOf = (facts: SetUp): CellValue[][] => {
    const known = shared.get(facts) ?? laidOut(columns, itemRows(items(facts), problem(facts)), units).slice(1);
    shared.set(facts, known);
    return known;
  };
  const each = parsed.cars.flatMap(({ name, car, errors }): CellValue[][] => {
    const wrong = errors.map(sayTableError).join(" ");
    const cells = car ? cellsOf(setUpOf(catalogue, car)) : laidOut(columns, [{ label: "", problem: "" }], units).slice(1);
    // The car's name stands first and its problem last.
    return cells.map((row) => {
      const own = [...row];
      own[0] = name;
      if (wrong !== "") own[own.length - 1] = [wrong, row.at(-1)].filter((one) => one !== "").join(" ");
      return own;
    });
  });
  return [...laidOut(columns, [], units), ...each];
}

const itemRows = <T>(found: readonly T[], problem: string): OfCar<T>[] => (found.length > 0 ? found.map((item) => ({ label: "", problem, item })) : [{ label: "", problem }]);

export type Ranges = readonly (readonly (readonly unknown[])[])[];

/** What keeps figures open, by table, row and column. */
export function sayGaps({ missing, blocked }: { readonly missing: readonly Gap[]; readonly blocked?: string | undefined }): string {
  const said = missing.map(({ table, column, subject }) => (table === "Cars" ? `Cars: ${column}` : `${table} ${subject}: ${column}`));
  return [...(blocked ? [blocked] : []), ...(said.length > 0 ? [`no figure for ${said.join("; ")}`] : [])].join("; ");
}
