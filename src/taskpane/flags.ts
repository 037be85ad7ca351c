/** What the Flags view shows: open findings by severity, worst first, under the car they belong to; behind them those that count no more. */
import { SEVERITIES, type Finding, type Severity } from "../core/finding";
import { groupBy } from "../core/group-by";
import type { CarLine } from "../workbook/workbook-reports";

/** Open findings stand under their severity; accepted ones and those of rules switched off are settled. */
export type FlagGroup = Severity | "settled";
export const FLAG_GROUPS: readonly FlagGroup[] = [...SEVERITIES, "settled"];

export interface FlagFilter {
  /** Undefined shows every severity, and what is settled behind them. */
  readonly severity: Severity | undefined;
  /** Words that car, customer or flag must have, all of them; "" lets everything through. */
  readonly search: string;
}

/** The findings of one group on one car. */
export interface FlaggedCar {
  readonly line: CarLine;
  readonly group: FlagGroup;
  readonly findings: readonly Finding[];
}

export interface FlagSection {
  readonly group: FlagGroup;
  readonly cars: readonly FlaggedCar[];
}

/** One section a severity, worst first, what is settled last; in it the cars with most such flags first, then in the order of their rows. Empty sections are left out. */
export function flagSections(cars: readonly CarLine[], filter: FlagFilter): readonly FlagSection[] {
  const flagged = flaggedCars(cars, filter.search);
  const wanted = FLAG_GROUPS.filter((group) => filter.severity === undefined || filter.severity === group);
  const sections = wanted.map((group) => ({ group, cars: flagged.filter((car) => car.group === group).sort(byMostFlags) }));
  return sections.filter((section) => section.cars.length > 0);
}

/** How many open flags of each severity the search leaves. */
export function flagCounts(cars: readonly CarLine[], search: string): Readonly<Record<Severity, number>> {
  const counts = { stop: 0, decide: 0, watch: 0, note: 0 };
  for (const { group, findings } of flaggedCars(cars, search)) if (group !== "settled") counts[group] += findings.length;
  return counts;
}

export const countFlags = (cars: readonly FlaggedCar[]): number => cars.reduce((sum, { findings }) => sum + findings.length, 0);

/** The first so many cards over all sections; sections that would be empty are left out. */
export function firstCards(sections: readonly FlagSection[], most: number): readonly FlagSection[] {
  let left = most;
  const cut = sections.map((section) => {
    const cars = section.cars.slice(0, left);
    left -= cars.length;
    return { ...section, cars };
  });
  return cut.filter(({ cars }) => cars.length > 0);
}

/** A car once for each group it has flags in. */
function flaggedCars(cars: readonly CarLine[], search: string): readonly FlaggedCar[] {
  const all = allFlagged.get(cars) ?? gather(cars);
  allFlagged.set(cars, all);
  const words = search.toLowerCase().split(/\s+/).filter((word) => word !== "");
  if (words.length === 0) return all;
  return all.map((one) => ({ ...one, findings: one.findings.filter((finding) => hasWords(one.line, finding, words)) })).filter(({ findings }) => findings.length > 0);
}

/** The counts and the cards look at the same cars. */
const allFlagged = new WeakMap<readonly CarLine[], readonly FlaggedCar[]>();

function gather(cars: readonly CarLine[]): readonly FlaggedCar[] {
  const all: FlaggedCar[] = [];
  for (const line of cars) for (const one of groupsOf(line)) all.push(one);
  return all;
}

function hasWords({ name, customer }: CarLine, { place, says, cure, code, because = "" }: Finding, words: readonly string[]): boolean {
  const text = [name, customer, place, says, cure, code, because].join(" ").toLowerCase();
  return words.every((word) => text.includes(word));
}

/** Sorted out once a car: after an edit all others are as before. */
const grouped = new WeakMap<CarLine, readonly FlaggedCar[]>();

function groupsOf(line: CarLine): readonly FlaggedCar[] {
  const known = grouped.get(line);
  if (known) return known;
  const groups = groupBy(line.findings, groupOf);
  const fresh = [...groups].map(([group, findings]): FlaggedCar => ({ line, group, findings }));
  grouped.set(line, fresh);
  return fresh;
}

const groupOf = ({ standing, severity }: Finding): FlagGroup => (standing === "open" ? severity : "settled");

/** Sorting keeps the order of rows among equals. */
const byMostFlags = (a: FlaggedCar, b: FlaggedCar): number => b.findings.length - a.findings.length;
