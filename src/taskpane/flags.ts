/** What the Flags view shows: findings by severity, worst first, under the car they belong to. */
import { SEVERITIES, type Finding, type Severity } from "../core/finding";
import type { CarLine } from "../workbook/workbook-reports";

export interface FlagFilter {
  /** Undefined shows every severity. */
  readonly severity: Severity | undefined;
  /** Words that car, customer or flag must have, all of them; "" lets everything through. */
  readonly search: string;
}

/** The findings of one severity on one car. */
export interface FlaggedCar {
  readonly line: CarLine;
  readonly severity: Severity;
  readonly findings: readonly Finding[];
}

export interface FlagSection {
  readonly severity: Severity;
  readonly cars: readonly FlaggedCar[];
}

/** One section a severity, worst first; in it the cars with most such flags first, then in the order of their rows. Empty sections are left out. */
export function flagSections(cars: readonly CarLine[], filter: FlagFilter): readonly FlagSection[] {
  const wanted = SEVERITIES.filter((severity) => filter.severity === undefined || filter.severity === severity);
  const matches = matcherOf(filter.search);
  const sections = wanted.map((severity) => ({ severity, cars: cars.flatMap((line) => flagged(line, severity, matches)).sort(byMostFlags) }));
  return sections.filter((section) => section.cars.length > 0);
}

/** How many flags of each severity the search leaves. */
export function flagCounts(cars: readonly CarLine[], search: string): Readonly<Record<Severity, number>> {
  const sections = flagSections(cars, { severity: undefined, search });
  const counts = { stop: 0, decide: 0, watch: 0, note: 0 };
  for (const { severity, cars: those } of sections) counts[severity] = countFlags(those);
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
  return ({ name, customer }, { place, says, cure, code }) => {
    const text = [name, customer, place, says, cure, code].join(" ").toLowerCase();
    return words.every((word) => text.includes(word));
  };
}

function flagged(line: CarLine, severity: Severity, matches: Matcher): FlaggedCar[] {
  const findings = line.findings.filter((finding) => finding.severity === severity && matches(line, finding));
  return findings.length > 0 ? [{ line, severity, findings }] : [];
}

/** Sorting keeps the order of rows among equals. */
const byMostFlags = (a: FlaggedCar, b: FlaggedCar): number => b.findings.length - a.findings.length;
