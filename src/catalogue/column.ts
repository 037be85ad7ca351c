/** The kinds of column a table may have, each with what its cells accept and the schema that reads them. */
import * as z from "zod/mini";
import { madeOnceByKey } from "../core/made-once";
import { isBlank, isCellValue, listOf, numberOf, textOf, wordKey } from "./cell";
import type { TableErrorCode } from "./table-error";
import { sayChoices, type Quantity, type Unit } from "./unit";

// zod looks for `new Function`, which the panel's content security policy refuses.
z.config({ jitless: true });

/** A cell that cannot be read. */
export class Refusal {
  constructor(
    readonly code: TableErrorCode = "data-out-of-range",
    readonly accepted?: string,
  ) {}
}

/** Reads one cell that is not blank. */
export type CellReader<T> = (raw: string | number | boolean, unit: Unit | undefined) => T | Refusal;

export interface Column<T> {
  /** As shipped tables and docs write it, without the unit. */
  readonly heading: string;
  readonly aliases: readonly string[];
  /** A column with a quantity needs a unit in its heading. */
  readonly quantity?: Quantity | undefined;
  /** A blank cell is refused. */
  readonly filled: boolean;
  /** Whether a blank cell will do is judged by its row; under a heading that cannot be read, no row is judged. */
  readonly judgedByRow?: boolean;
  /** What a cell may hold, as an error says it. */
  readonly accepts: string;
  /** The few words a cell may hold one of. */
  readonly words?: readonly string[];
  readonly schema: (unit: Unit | undefined) => z.ZodMiniType<T>;
}

export interface Naming {
  readonly aliases?: readonly string[];
  readonly quantity?: Quantity;
}

/** Makes an optional column: a blank cell reads as undefined. */
export function column<T>(heading: string, accepts: string, read: CellReader<T>, naming: Naming = {}): Column<T | undefined> {
  return { heading, aliases: naming.aliases ?? [], quantity: naming.quantity, filled: false, accepts, schema: (unit) => cellSchema(accepts, read, unit) };
}

/** The same column, but a blank cell is an error. */
export const filled = <T>(optional: Column<T | undefined>): Column<T> => ({
  ...optional,
  filled: true,
  schema: (unit) =>
    z.pipe(
      optional.schema(unit),
      z.transform((value: T | undefined, context): T => {
        if (value === undefined) context.issues.push(issue(undefined, optional.accepts, "data-missing"));
        return value as T;
      }),
    ),
});

/** The same column, where a blank cell stands for one of its values; `says` tells so. */
export const blankMeans = <T>(optional: Column<T | undefined>, value: T, says: string): Column<T> => ({
  ...optional,
  accepts: `${optional.accepts} (blank: ${says})`,
  schema: (unit) => z.pipe(optional.schema(unit), z.transform((read: T | undefined): T => read ?? value)),
});

/** An issue of the kind that read-table.ts turns into a table error. */
export const issue = (input: unknown, accepted: string, code: TableErrorCode) => ({ code: "custom", input, message: accepted, params: { code } }) as const;

function cellSchema<T>(accepts: string, read: CellReader<T>, unit: Unit | undefined): z.ZodMiniType<T | undefined> {
  return z.transform((raw: unknown, context): T | undefined => {
    if (isBlank(raw)) return undefined;
    const value = isCellValue(raw) ? read(raw, unit) : new Refusal();
    if (!(value instanceof Refusal)) return value;
    context.issues.push(issue(raw, value.accepted ?? accepts, value.code));
    return undefined;
  });
}

/** Thousands of rows hold the same few hundred texts: each is read once, and what was read is shared. For readers that need no unit. */
export function readOnce<T>(read: (raw: string | number | boolean) => T | Refusal): CellReader<T> {
  const kept = madeOnceByKey<T | Refusal>(5000);
  return (raw) => (typeof raw === "string" ? kept(raw, () => read(raw)) : read(raw));
}

export const text = (heading: string, naming: Naming = {}) => column(heading, "text", (raw) => textOf(raw) ?? new Refusal(), naming);

/** The name of a row, or of a row of another table. */
export const name = (heading: string, accepts = "a name", naming: Naming = {}) => filled(column(heading, accepts, (raw) => textOf(raw) ?? new Refusal(), naming));

export interface Range {
  readonly least: number;
  readonly most: number;
  /** Ends of the range as an error says them, `from 1/16 to 1 in`. */
  readonly says: string;
}

/**
 * Beyond these a figure is a slip of the keyboard whatever it is of: a pressure of 1e12 Pa is 145 million psi. Left in, a product of
 * two would pass the largest number there is, and an amount in exact decimals could not be reckoned.
 */
export const LARGEST = 1e12;
const SMALLEST = 1e-20;
export const POSITIVE: Range = { least: SMALLEST, most: LARGEST, says: "above 0" };
export const NOT_NEGATIVE: Range = { least: 0, most: LARGEST, says: "of 0 or more" };

/** A plain number. */
export function figure(heading: string, range: Range = POSITIVE, naming: Naming = {}): Column<number | undefined> {
  return column(heading, `a number ${range.says}`, (raw) => within(range, numberOf(raw)), naming);
}

/** A whole number. */
export function count(heading: string, range: Range = POSITIVE, naming: Naming = {}): Column<number | undefined> {
  const whole = (raw: unknown) => (Number.isInteger(numberOf(raw)) ? numberOf(raw) : undefined);
  return column(heading, `a whole number ${range.says}`, (raw) => within(range, whole(raw)), naming);
}

export const year = (heading: string, naming: Naming = {}) => count(heading, { least: 1886, most: 2100, says: "from 1886 to 2100" }, naming);

/** A figure whose unit stands in the heading; the value and the range are SI. */
export function quantity<T extends number>(heading: string, kind: Quantity<T>, range: Range = POSITIVE, naming: Naming = {}): Column<T | undefined> {
  const read: CellReader<T> = (raw, unit) => {
    const value = unit === undefined ? undefined : numberOf(raw);
    return within(range, value === undefined ? undefined : (unit as Unit<T>).from(value));
  };
  return column(heading, `a ${kind.name} ${range.says}`, read, { ...naming, quantity: kind });
}

/** One of a few words, read without regard to case, hyphens or spaces; `written` gives other ways to write them. */
export function choice<const T extends string>(heading: string, choices: readonly T[], written: Readonly<Record<string, NoInfer<T>>> = {}, naming: Naming = {}): Column<T | undefined> {
  const byKey = new Map<string, T>([...Object.entries(written), ...choices.map((one) => [one, one] as const)].map(([key, value]) => [wordKey(key), value]));
  return { ...column(heading, sayChoices(choices), readOnce((raw) => byKey.get(wordKey(textOf(raw) ?? "")) ?? new Refusal()), naming), words: choices };
}

/** Several of a few words in one cell, split on `;`; a blank cell is an empty list. */
export function choices<const T extends string>(heading: string, words: readonly T[], written: Readonly<Record<string, NoInfer<T>>> = {}): Column<readonly T[]> {
  const byKey = new Map<string, T>([...Object.entries(written), ...words.map((one) => [one, one] as const)].map(([key, value]) => [wordKey(key), value]));
  const read = readOnce((raw): readonly T[] | Refusal => {
    const found = listOf(textOf(raw) ?? "").map((word) => byKey.get(wordKey(word)));
    return found.every((word) => word !== undefined) ? found : new Refusal();
  });
  return blankMeans(column(heading, `${sayChoices(words)} (several are split by ;)`, read), [], "not stated");
}

const YES_NO: ReadonlyMap<string, boolean> = new Map([["yes", true], ["y", true], ["true", true], ["no", false], ["n", false], ["false", false]]);

export function yesNo(heading: string, naming: Naming = {}): Column<boolean | undefined> {
  return { ...column(heading, "yes or no", (raw) => YES_NO.get(wordKey(textOf(raw) ?? "")) ?? new Refusal(), naming), words: ["yes", "no"] };
}

/** Several texts in one cell, split on `;`. */
export const list = (heading: string, accepts: string) => column(heading, accepts, (raw) => listOf(textOf(raw) ?? ""));

/** A cell of any kind, for a schema that reads it with the help of its neighbours. */
export const anything = (heading: string, accepts: string) => column<string | number | boolean>(heading, accepts, (raw) => raw);

/** What is said of a larger one. */
export const BOUNDED = "a smaller figure: this one is larger than any of its kind can be";

function within<T extends number>(range: Range, value: T | undefined): T | Refusal {
  if (value !== undefined && value >= range.least && value <= range.most) return value;
  return value !== undefined && value > range.most && range.most === LARGEST ? new Refusal("data-out-of-range", BOUNDED) : new Refusal();
}
