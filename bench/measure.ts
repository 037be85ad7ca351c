/** Timing, and the one table that the bench prints. */

export interface Measured {
  readonly median: number;
  readonly least: number;
  readonly most: number;
}

/** One row of the table: what was measured, against its limit or its peer. */
export interface BenchRow {
  readonly area: string;
  readonly what: string;
  readonly figure: number;
  readonly unit: string;
  readonly spread?: readonly [least: number, most: number] | undefined;
  /** What it is held against, in words. */
  readonly against: string;
  /** Undefined where nothing is asked. */
  readonly met?: boolean | undefined;
}

export function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

export function measured(runs: number, work: (run: number) => number): Measured {
  return summary(Array.from({ length: runs }, (_, run) => work(run)));
}

export function summary(times: readonly number[]): Measured {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
  return { median: at(0.5), least: at(0), most: at(1) };
}

/** A row of a time, or of a part of it: `each` divides it. */
export function row(area: string, what: string, { median, least, most }: Measured, { unit = "ms", each = 1, most: limit, against }: { unit?: string; each?: number; most?: number; against?: string } = {}): BenchRow {
  const figure = median / each;
  return {
    area, what, figure, unit, spread: [least / each, most / each],
    against: against ?? (limit === undefined ? "" : `at most ${limit} ${unit}`), met: limit === undefined ? undefined : figure <= limit,
  };
}

const shown = (value: number): string => (Math.abs(value) >= 100 ? value.toFixed(0) : value.toPrecision(3));

export function printTable(rows: readonly BenchRow[]): void {
  console.table(rows.map(({ area, what, figure, unit, spread, against, met }) => ({
    area, what, figure: `${shown(figure)} ${unit}`, spread: spread ? `${shown(spread[0])}–${shown(spread[1])}` : "", against, met: met === undefined ? "" : met ? "yes" : "NO",
  })));
}
