/** What the Flags view shows: open findings by severity, worst first, under the car they belong to; behind them those that count no more. */
import { SEVERITIES, type Finding, type Severity } from "../core/finding";
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
  const wanted = FLAG_GROUPS.filter((group) => filter.severity === undefined || filter.severity === group);
  const matches = matcherOf(filter.search);
  const sections = wanted.map((group) => ({ group, cars: cars.flatMap((line) => flagged(line, group, matches)).sort(byMostFlags) }));
  return sections.filter((section) => section.cars.length > 0);
}

/** How many open flags of each severity the search leaves. */
export function flagCounts(cars: readonly CarLine[], search: string): Readonly<Record<Severity, number>> {
  const sections = flagSections(cars, { severity: undefined, search });
  const counts = { stop: 0, decide: 0, watch: 0, note: 0 };
  for (const { group, cars: those } of sections) if (group !== "settled") counts[group] = countFlags(those);
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

type Matcher = (line: CarLine, finding: Finding) => boolean;

function matcherOf(search: string): Matcher {
  const words = search.toLowerCase().split(/\s+/).filter((word) => word !== "");
  if (words.length === 0) return () => true;
  return ({ name, customer }, { place, says, cure, code, because = "" }) => {
    const text = [name, customer, place, says, cure, code, because].join(" ").toLowerCase();
    return words.every((word) => text.includes(word));
  };
}

function flagged(line: CarLine, group: FlagGroup, matches: Matcher): FlaggedCar[] {
  const findings = line.findings.filter((finding) => groupOf(finding) === group && matches(line, finding));
  return findings.length > 0 ? [{ line, group, findings }] : [];
}

const groupOf = ({ standing, severity }: Finding): FlagGroup => (standing === "open" ? severity : "settled");

/** Sorting keeps the order of rows among equals. */
const byMostFlags = (a: FlaggedCar, b: FlaggedCar): number => b.findings.length - a.findings.length;
