/** Which table a heading row belongs to. */
import { sayCell } from "./cell";
import { fieldsNamed } from "./headings";
import { allTables } from "./table-specs";
import type { TableError } from "./table-error";
import type { AnyTableSpec } from "./table-spec";
import { sayChoices } from "./unit";

export type Recognition = { readonly spec: AnyTableSpec; readonly error?: undefined } | { readonly spec?: undefined; readonly error: TableError };

interface Match {
  readonly spec: AnyTableSpec;
  readonly missing: readonly (readonly string[])[];
  /** Headings of the row that belong to the table. */
  readonly named: number;
}

/**
 * Recognises a table by the headings it cannot do without: of the tables that have them all, the one that asks for most.
 * Units are not looked at here. A tie, or no table at all, is an error; the latter names the nearest table and what it lacks.
 * @param label how an error names the range
 */
export function recognise(headings: readonly unknown[], label = "Table"): Recognition {
  const matches = allTables.map((spec) => matchOf(spec, headings));
  const complete = matches.filter((match) => match.missing.length === 0);
  const most = Math.max(...complete.map((match) => match.spec.knownBy.length));
  const [first, ...others] = complete.filter((match) => match.spec.knownBy.length === most);
  if (first && others.length === 0) return { spec: first.spec };
  const read = headings.map(sayCell).filter((heading) => heading !== "").join(", ");
  const accepted = first ? sayTie([first, ...others]) : sayNearest(nearest(matches, label));
  return { error: { table: label, read, accepted } };
}

function matchOf(spec: AnyTableSpec, headings: readonly unknown[]): Match {
  const fields = fieldsNamed(spec.columns, headings);
  const missing = spec.knownBy.filter((group) => !group.some((field) => fields.has(field)));
  return { spec, missing, named: fields.size };
}

/** The table the range is named after, else the one that shares most headings, each that it lacks counted off. */
function nearest(matches: readonly Match[], label: string): Match | undefined {
  const namesake = matches.find(({ spec }) => spec.name.toLowerCase() === label.trim().toLowerCase());
  const sharing = matches.filter((match) => match.named > 0);
  return namesake ?? [...sharing].sort((a, b) => closeness(b) - closeness(a))[0];
}

const closeness = ({ named, missing }: Match): number => named - missing.length;

const sayTie = (matches: readonly Match[]): string => `the headings of one table only (these fit ${matches.map(({ spec }) => spec.name).join(" and ")})`;

function sayNearest(match: Match | undefined): string {
  if (!match) return `the headings of one of ${allTables.map((spec) => spec.name).join(", ")}`;
  const { columns } = match.spec;
  const lacking = match.missing.map((group) => sayChoices(group.slice(0, 4).map((field) => columns[field]?.heading ?? field)));
  return `the headings of a table; the nearest is ${match.spec.name}, which also needs ${lacking.join(" and ")}`;
}
