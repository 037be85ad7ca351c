/** What the mutation tool's own report says, counted, and each change that no test noticed with its place. */
interface Place {
  readonly line: number;
  readonly column: number;
}

interface Change {
  readonly status: string;
  readonly replacement?: string;
  readonly location: { readonly start: Place; readonly end: Place };
}

/** The part that is read of a file by the open schema for mutation reports. */
export interface MutationReport {
  readonly files: Readonly<Record<string, { readonly source: string; readonly mutants: readonly Change[] }>>;
}

export interface Count {
  readonly area: string;
  readonly noticed: number;
  readonly survived: number;
  /** Of those that survived, the ones that no test runs. */
  readonly unreached: number;
}

export function countOf(area: string, { files }: MutationReport): Count {
  const statuses = Object.values(files).flatMap(({ mutants }) => mutants.map(({ status }) => status));
  const count = (...wanted: readonly string[]): number => statuses.filter((status) => wanted.includes(status)).length;
  return { area, noticed: count("Killed", "Timeout"), survived: count("Survived", "NoCoverage"), unreached: count("NoCoverage") };
}

/** One paragraph for each change that survived: place, what stood there, what stands there instead. */
export const survivors = ({ files }: MutationReport): string =>
  Object.entries(files).flatMap(([file, { source, mutants }]) => {
    const lines = source.split("\n");
    return mutants.filter(({ status }) => status === "Survived" || status === "NoCoverage").map((change) => sayChange(file, lines, change));
  }).join("\n");

function sayChange(file: string, lines: readonly string[], { status, replacement = "", location: { start, end } }: Change): string {
  const line = lines[start.line - 1] ?? "";
  const was = start.line === end.line ? line.slice(start.column - 1, end.column - 1) : `${line.slice(start.column - 1)} …`;
  return `${file}:${start.line}:${start.column}${status === "NoCoverage" ? " (no test runs it)" : ""}\n  - ${was}\n  + ${replacement}`;
}

export function countsTable(counts: readonly Count[]): string {
  const sum = (of: (count: Count) => number): number => counts.reduce((total, count) => total + of(count), 0);
  const all = { area: "all", noticed: sum(({ noticed }) => noticed), survived: sum(({ survived }) => survived), unreached: sum(({ unreached }) => unreached) };
  const rows = [...counts, all].map(({ area, noticed, survived, unreached }) => `| ${area} | ${noticed + survived} | ${noticed} | ${survived} | ${unreached} | ${((100 * noticed) / Math.max(1, noticed + survived)).toFixed(1)} % |`);
  return ["| part of the core | changes | noticed | not noticed | of these run by no test | score |", "| --- | ---: | ---: | ---: | ---: | ---: |", ...rows].join("\n");
}
