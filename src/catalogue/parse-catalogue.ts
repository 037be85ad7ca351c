/** From the tables of a workbook to the catalogue that every answer is made from. */
import type { FoundJoin, MeasuredLength, Platform } from "../core/car";
import { nameKey, type Catalogue, type FluidBottle, type KitContent, type LineSet, type PriceBreak, type SetRun } from "../core/catalogue";
import { defaultSettings, type RuleSwitch, type Settings } from "../core/settings";
import { tubeKey, type TubeStock } from "../core/tube";
import { readComponents } from "./assemble-components";
import { namesIn, soundRows, withKnown, withoutRepeats, type Checked, type Names } from "./cross-checks";
import { contentKey, recogniseAll, rowsOf, type GivenTable } from "./given-tables";
import { groupBy } from "../core/group-by";
import { standardNuts } from "./standard/nuts";
import { standardTube } from "./standard/tube";
import type { TableError } from "./table-error";
import type { Columns, RawTable, TableSpec } from "./table-spec";
import { adaptersTable, nutsTable } from "./tables/fittings";
import { joinsTable } from "./tables/joins";
import { kitsTable } from "./tables/conversion-kits";
import { lengthsTable } from "./tables/lengths";
import { lineSetsTable, setRunsTable } from "./tables/line-sets";
import { platformsTable } from "./tables/platforms";
import { fluidsTable, operationsTable, priceBreaksTable } from "./tables/purchasing";
import { settingsTable } from "./tables/settings";
import { tubeTable } from "./tables/tube";

export interface ParsedCatalogue {
  readonly catalogue: Catalogue;
  readonly errors: readonly TableError[];
}

/**
 * Reads a catalogue. Tables are known by their headings, in any order; several of one kind are joined.
 * A row with an error is left out and reported, the rest stands. Without a Nuts or Tube table the shipped ones hold, without Settings the defaults.
 */
export function parseCatalogue(tables: readonly RawTable[]): ParsedCatalogue {
  const { given, errors } = recogniseAll(tables);
  const collected = [...errors];
  const keep = <T>(part: { readonly value: T; readonly errors: readonly TableError[] }): T => (collected.push(...part.errors), part.value);
  const platforms = readPlatforms(given);
  const components = readComponents(given);
  const tube = readNamed(tubeTable, given, { column: "Tube", standard: standardTube });
  const catalogue: Catalogue = {
    key: contentKey(given),
    platforms: keep(platforms),
    lengths: keep(readLengths(given, platforms.names)),
    components: keep(components),
    nuts: keep(readNamed(nutsTable, given, { column: "Nut", standard: standardNuts })),
    adapters: keep(readNamed(adaptersTable, given, { column: "Adapter", standard: [] })),
    tube: keep(tube),
    lineSets: keep(readLineSets(given, platforms.names)),
    settings: keep(readSettings(given)),
    joins: keep(readJoins(given)),
    kits: keep(readKits(given, components.names)),
    priceBreaks: keep(readPriceBreaks(given, tube)),
    fluids: keep(readFluids(given)),
    operations: keep(readNamed(operationsTable, given, { column: "Operation", standard: [] })),
  };
  return { catalogue, errors: collected };
}

interface Read<T> {
  readonly value: T;
  readonly errors: readonly TableError[];
}

const values = <R>(checked: Checked<R>): readonly R[] => checked.sound.map(({ value }) => value);

function readPlatforms(given: readonly GivenTable[]): Read<ReadonlyMap<string, Platform>> & { readonly names: Names } {
  const rows = rowsOf(platformsTable, given);
  const once = withoutRepeats(soundRows(rows), (one) => nameKey(one.name), (one) => ({ column: "Platform", read: one.name }));
  return {
    value: new Map(values(once).map((platform) => [nameKey(platform.name), platform])),
    errors: [...rows.errors, ...once.errors],
    names: namesIn(rows, "name", "a platform of the Platforms table"),
  };
}

function readLengths(given: readonly GivenTable[], platforms: Names): Read<ReadonlyMap<string, readonly MeasuredLength[]>> {
  const rows = rowsOf(lengthsTable, given);
  const known = withKnown(soundRows(rows), platforms, (one) => ({ column: "Platform", read: one.platform }));
  const once = withoutRepeats(known.sound, lengthKey, (one) => ({ column: "To", read: one.to }));
  return { value: groupBy(values(once), (one) => nameKey(one.platform)), errors: [...rows.errors, ...known.errors, ...once.errors] };
}

/** A length holds both ways; the same pair may be measured once for each tube size. */
const lengthKey = ({ platform, from, to, tube }: MeasuredLength): string =>
  [nameKey(platform), ...[nameKey(from), nameKey(to)].sort(), tube === undefined ? "" : tubeKey(tube)].join("|");

interface Named {
  readonly column: string;
}

/** A table of rows with names of their own, or what ships when there is no such table. */
function readNamed<C extends Columns, R extends { readonly name: string }>(spec: TableSpec<C, R>, given: readonly GivenTable[], named: Named & { readonly standard: readonly R[] }): Read<readonly R[]> {
  const rows = rowsOf(spec, given);
  const once = withoutRepeats(soundRows(rows), (one) => nameKey(one.name), (one) => ({ column: named.column, read: one.name }));
  return { value: rows.present ? values(once) : named.standard, errors: [...rows.errors, ...once.errors] };
}

function readLineSets(given: readonly GivenTable[], platforms: Names): Read<readonly LineSet[]> {
  const [sets, runs] = [rowsOf(lineSetsTable, given), rowsOf(setRunsTable, given)];
  const known = withKnown(soundRows(sets), platforms, (one) => ({ column: "Platform", read: one.platform }));
  const once = withoutRepeats(known.sound, (one) => [nameKey(one.name), nameKey(one.platform), one.firstYear].join("|"), (one) => ({ column: "Set", read: one.name }));
  const owned = withKnown(soundRows(runs), namesIn(sets, "name", "a set of the LineSets table"), (one) => ({ column: "Set", read: one.set }));
  const bySet = groupBy(values(owned), (one) => nameKey(one.set));
  const runsOf = (set: string): readonly SetRun[] => (bySet.get(nameKey(set)) ?? []).map((one) => one.run);
  return { value: values(once).map((set) => ({ ...set, runs: runsOf(set.name) })), errors: [...sets.errors, ...known.errors, ...once.errors, ...runs.errors, ...owned.errors] };
}

function readSettings(given: readonly GivenTable[]): Read<Settings> {
  const rows = rowsOf(settingsTable, given);
  const once = withoutRepeats(soundRows(rows), (one) => nameKey(one.name), (one) => ({ column: "Setting", read: one.name }));
  const stated = values(once);
  const rules = new Map<string, RuleSwitch>(stated.flatMap((one) => ("rule" in one ? [[one.rule, one.value] as const] : [])));
  const figures = Object.fromEntries(stated.flatMap((one) => ("key" in one ? [[one.key, one.value]] : [])));
  return { value: { ...defaultSettings, ...figures, rules }, errors: [...rows.errors, ...once.errors] };
}

/** Whether a joint names parts of its car is seen when the car is assembled. */
function readJoins(given: readonly GivenTable[]): Read<ReadonlyMap<string, readonly FoundJoin[]>> {
  const rows = rowsOf(joinsTable, given);
  return { value: groupBy(soundRows(rows).map(({ value }) => value), (one) => nameKey(one.car)), errors: rows.errors };
}

function readKits(given: readonly GivenTable[], components: Names): Read<readonly KitContent[]> {
  const rows = rowsOf(kitsTable, given);
  const known = withKnown(soundRows(rows), components, (one) => ({ column: "Component", read: one.component }));
  const once = withoutRepeats(known.sound, (one) => [nameKey(one.kit), nameKey(one.component)].join("|"), (one) => ({ column: "Component", read: one.component }));
  return { value: values(once), errors: [...rows.errors, ...known.errors, ...once.errors] };
}

/** Without a Tube table the shipped tubes are the ones that a price may be of. */
function readPriceBreaks(given: readonly GivenTable[], tube: Read<readonly TubeStock[]>): Read<readonly PriceBreak[]> {
  const rows = rowsOf(priceBreaksTable, given);
  const stocked = rowsOf(tubeTable, given);
  const names = stocked.present ? namesIn(stocked, "name", "a tube of the Tube table") : { keys: new Set(tube.value.map(({ name }) => nameKey(name))), says: "a tube of the Tube table (no such table was given)" };
  const known = withKnown(soundRows(rows), names, (one) => ({ column: "Tube", read: one.tube }));
  const once = withoutRepeats(known.sound, (one) => `${nameKey(one.tube)}|${one.fromQuantity}`, (one) => ({ column: "From quantity", read: String(one.fromQuantity) }));
  return { value: values(once), errors: [...rows.errors, ...known.errors, ...once.errors] };
}

function readFluids(given: readonly GivenTable[]): Read<readonly FluidBottle[]> {
  const rows = rowsOf(fluidsTable, given);
  const once = withoutRepeats(soundRows(rows), (one) => `${one.fluid}|${one.bottle.toFixed(9)}`, (one) => ({ column: "Bottle", read: one.fluid }));
  return { value: values(once), errors: [...rows.errors, ...once.errors] };
}
