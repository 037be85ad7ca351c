/** Finds a table's columns in a heading row, with the unit each heading carries. */
import { sayCell } from "./cell";
import type { Column } from "./column";
import type { TableError } from "./table-error";
import type { AnyTableSpec, Columns } from "./table-spec";
import { sayHeadings, unitNamed, type Unit } from "./unit";

export interface FoundColumn {
  readonly index: number;
  readonly unit: Unit | undefined;
  /** False when the unit is missing or strange, or the heading stands twice: its cells cannot be read. */
  readonly readable: boolean;
}

export interface FoundHeadings {
  readonly columns: ReadonlyMap<string, FoundColumn>;
  readonly errors: readonly TableError[];
}

/**
 * Matches headings without regard to case, order, hyphens, spaces or extra columns.
 * @param label how errors name the table
 */
export function findHeadings(spec: Pick<AnyTableSpec, "columns">, headings: readonly unknown[], label: string): FoundHeadings {
  const fields = fieldsByHeading(spec.columns);
  const columns = new Map<string, FoundColumn>();
  const errors: TableError[] = [];
  headings.forEach((raw, index) => {
    const match = matchHeading(fields, sayCell(raw));
    const column = match && spec.columns[match.field];
    if (!match || !column) return;
    const found = { index, ...unitOf(column, match.bracket) };
    const twice = columns.get(match.field);
    if (!found.readable) errors.push({ table: label, column: column.heading, read: sayCell(raw), accepted: acceptedHeadings(column) });
    if (twice) errors.push({ table: label, column: column.heading, read: sayCell(raw), accepted: `one column of this heading (column ${twice.index + 1} is ${sayCell(headings[twice.index])})`, code: "data-duplicate" });
    columns.set(match.field, twice ? { ...twice, readable: false } : found);
  });
  return { columns, errors };
}

/** The fields of a spec that a heading row names, whatever their units. */
export function fieldsNamed(columns: Columns, headings: readonly unknown[]): ReadonlySet<string> {
  const fields = fieldsByHeading(columns);
  return new Set(headings.flatMap((raw) => matchHeading(fields, sayCell(raw))?.field ?? []));
}

/**
 * Headings that name no column and are one slip of the hand from one that the row lacks, as `Mster`. A column of the user's own may read so by chance:
 * it is worth a word, and no reason to refuse an answer.
 */
export function mistypedHeadings(spec: Pick<AnyTableSpec, "columns" | "name">, headings: readonly unknown[]): readonly TableError[] {
  const [fields, present] = [fieldsByHeading(spec.columns), fieldsNamed(spec.columns, headings)];
  const lacking = [...fields].filter(([, field]) => !present.has(field));
  return headings.flatMap((raw) => {
    const read = sayCell(raw);
    if (matchHeading(fields, read)) return [];
    const [, base = read] = BRACKETED.exec(read.trim()) ?? [];
    const [, field = ""] = lacking.find(([key]) => isOneSlipFrom(key, headingKey(base))) ?? [];
    const column = spec.columns[field];
    return column ? [{ table: spec.name, column: column.heading, read, accepted: acceptedHeadings(column) }] : [];
  });
}

/** Shorter words are too easily one slip from another. */
const SHORTEST_SLIP = 5;

/** One letter left out, put in, wrong, or two changed about. */
function isOneSlipFrom(right: string, typed: string): boolean {
  const shorter = Math.min(right.length, typed.length);
  if (right.length < SHORTEST_SLIP || shorter < SHORTEST_SLIP - 1) return false;
  let [start, end] = [0, 0];
  while (start < shorter && right[start] === typed[start]) start++;
  while (end < shorter - start && right.at(-1 - end) === typed.at(-1 - end)) end++;
  const [meant, said] = [right.slice(start, right.length - end), typed.slice(start, typed.length - end)];
  return (meant.length <= 1 && said.length <= 1) || (meant.length === 2 && said === [...meant].reverse().join(""));
}

const headingKey = (heading: string): string => heading.toLowerCase().replace(/[-_\u2010-\u2013\s]+/g, " ").trim();

const FIELDS = new WeakMap<Columns, ReadonlyMap<string, string>>();

function fieldsByHeading(columns: Columns): ReadonlyMap<string, string> {
  const known = FIELDS.get(columns);
  if (known) return known;
  const named = Object.entries(columns).flatMap(([field, { heading, aliases }]) => [heading, ...aliases].map((one) => [headingKey(one), field] as const));
  const fields = new Map(named);
  FIELDS.set(columns, fields);
  return fields;
}

const BRACKETED = /^(.*?)\s*\(([^()]*)\)$/;

/** A heading as a whole, like `Pistons (a side)`, goes before a heading with a bracket after it, like `Bore (in)`. */
function matchHeading(fields: ReadonlyMap<string, string>, heading: string): { readonly field: string; readonly bracket?: string } | undefined {
  const whole = fields.get(headingKey(heading));
  if (whole !== undefined) return { field: whole };
  const [, base, bracket] = BRACKETED.exec(heading.trim()) ?? [];
  const field = base === undefined ? undefined : fields.get(headingKey(base));
  return field === undefined || bracket === undefined ? undefined : { field, bracket };
}

/** What stands in brackets after a heading without a quantity, like `Price (USD)`, is not ours to judge. */
function unitOf(column: Column<unknown>, bracket: string | undefined): Pick<FoundColumn, "unit" | "readable"> {
  if (!column.quantity) return { unit: undefined, readable: true };
  const unit = unitNamed(column.quantity, bracket ?? "");
  return { unit, readable: unit !== undefined };
}

const acceptedHeadings = (column: Column<unknown>): string => (column.quantity ? sayHeadings(column.heading, column.quantity) : column.heading);
