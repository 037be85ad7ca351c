/** Every table the product reads, and what each of its columns accepts: for reading, for docs, for the panel's set-up. */
import type { Column } from "./column";
import type { AnyTableSpec } from "./table-spec";
import { boostersTable } from "./tables/boosters";
import { carsTable } from "./tables/cars";
import { componentsTable } from "./tables/components";
import { kitsTable } from "./tables/conversion-kits";
import { adaptersTable, nutsTable } from "./tables/fittings";
import { joinsTable } from "./tables/joins";
import { lengthsTable } from "./tables/lengths";
import { lineSetsTable, setRunsTable } from "./tables/line-sets";
import { passagesTable } from "./tables/passages";
import { platformsTable } from "./tables/platforms";
import { portsTable } from "./tables/ports";
import { fluidsTable, operationsTable, priceBreaksTable } from "./tables/purchasing";
import { seenTable } from "./tables/seen";
import { settingsTable } from "./tables/settings";
import { pipelineTable, usageTable } from "./tables/stock-history";
import { tubeTable } from "./tables/tube";
import { wheelBrakesTable } from "./tables/wheel-brakes";

/** Tables of the catalogue, in the order in which docs and errors list them. */
export const catalogueTables: readonly AnyTableSpec[] = [
  platformsTable, lengthsTable, componentsTable, portsTable, passagesTable, boostersTable, wheelBrakesTable, nutsTable, adaptersTable, tubeTable,
  lineSetsTable, setRunsTable, kitsTable, priceBreaksTable, fluidsTable, operationsTable, settingsTable, joinsTable,
];

export const allTables: readonly AnyTableSpec[] = [...catalogueTables, carsTable, seenTable, pipelineTable, usageTable];

export interface HeadingSpec {
  /** Without its unit. */
  readonly heading: string;
  readonly aliases: readonly string[];
  /** Units the heading may carry; empty when it carries none. */
  readonly units: readonly string[];
  /** A blank cell is refused. */
  readonly required: boolean;
  readonly accepts: string;
  /** The few words a cell may hold one of; none where it may hold others. */
  readonly words: readonly string[];
}

export interface TableDescription {
  readonly name: string;
  readonly holds: string;
  /** A range is this table when it has, of each group, at least one heading. */
  readonly knownBy: readonly (readonly string[])[];
  readonly headings: readonly HeadingSpec[];
}

export const tableSpecs: readonly TableDescription[] = allTables.map((spec) => {
  const knownBy = spec.knownBy.map((group) => group.map((field) => spec.columns[field]?.heading ?? field));
  return { name: spec.name, holds: spec.holds, knownBy, headings: Object.values(spec.columns).map(describeColumn) };
});

function describeColumn({ heading, aliases, quantity, filled, accepts, words = [] }: Column<unknown>): HeadingSpec {
  return { heading, aliases, units: quantity?.units.map((unit) => unit.name) ?? [], required: filled, accepts, words };
}
