/** CarReports of a thousand, ten thousand and a hundred thousand cars: time and memory a car, and how the time grows. */
import { parseCars, type CarRow } from "../src/catalogue/parse-cars";
import { reportOnRow } from "../src/functions/reports";
import { measured, row, timed, type BenchRow, type Measured } from "./measure";
import { freshCatalogue, freshHeadings, ownFigureCars, shopCars, unlikeCars, type Rows } from "./workload";

const LIMITS = { cold: 150, warm: 30, growth: 1.15, memory: 4 };

interface Workload {
  readonly name: string;
  readonly cars: (count: number) => Rows;
  readonly counts: readonly number[];
  /** Only the first is held to the limits: in a shop cars repeat. The others say what it costs when they do not. */
  readonly isShop: boolean;
}

const workloads: readonly Workload[] = [
  { name: "a shop's cars", cars: shopCars, counts: [1000, 10_000, 100_000], isShop: true },
  { name: "cars of which no two weigh alike", cars: ownFigureCars, counts: [1000, 10_000], isShop: false },
  { name: "cars of which no two have the same parts", cars: unlikeCars, counts: [1000, 3000], isShop: false },
];

export const carRows = (): BenchRow[] => workloads.flatMap(rowsOf);

function rowsOf({ name, cars, counts, isShop }: Workload): BenchRow[] {
  const measuredAt = counts.map((count) => ({ count, ...reportsOf(cars(count), count <= 10_000 ? 5 : 3) }));
  const limit = (most: number): { most?: number } => (isShop ? { most } : {});
  const growth = exponent(measuredAt.map(({ count, cold }) => [count, cold.median]));
  return [
    ...measuredAt.flatMap(({ count, cold, warm, memory }) => [
      row("CarReports", `${count} of ${name}, cold, rows read`, cold, { unit: "µs a car", each: count / 1000, ...limit(LIMITS.cold) }),
      row("CarReports", `${count} of ${name}, warm`, warm, { unit: "µs a car", each: count / 1000, ...limit(LIMITS.warm) }),
      { area: "CarReports", what: `${count} of ${name}, kept`, figure: memory, unit: "kB a car", against: isShop ? `at most ${LIMITS.memory} kB` : "", met: isShop ? memory <= LIMITS.memory : undefined },
    ]),
    { area: "CarReports", what: `growth of ${name}: time as a power of their number`, figure: growth, unit: "", against: isShop ? `at most ${LIMITS.growth}` : "", met: isShop ? growth <= LIMITS.growth : undefined },
  ];
}

interface Reports {
  readonly cold: Measured;
  readonly warm: Measured;
  /** Kilobytes that stay while the reports do, with the rows they were read from. */
  readonly memory: number;
}

/** Cold: rows never read, and a catalogue never used. Warm: the same rows again. */
function reportsOf({ headings, rows }: Rows, runs: number): Reports {
  const warm: number[] = [];
  const memory: number[] = [];
  const cold = measured(runs, (run) => {
    const [catalogue, own] = [freshCatalogue(run), freshHeadings(headings, run)];
    const reports = (): unknown[] => parseCars(own, rows).cars.map((one: CarRow) => reportOnRow(catalogue, one));
    const before = heapAfterCollection();
    let kept: unknown[] = [];
    const time = timed(() => { kept = reports(); });
    memory.push((heapAfterCollection() - before) / kept.length / 1000);
    warm.push(timed(reports));
    return time;
  });
  return { cold, warm: measured(runs, (run) => warm[run] ?? NaN), memory: [...memory].sort((a, b) => a - b)[Math.floor(memory.length / 2)] ?? NaN };
}

/** Slope of log time over log number, by least squares. */
function exponent(points: readonly (readonly [number, number])[]): number {
  const logs = points.map(([count, time]) => [Math.log(count), Math.log(time)] as const);
  const mean = (index: 0 | 1): number => logs.reduce((sum, one) => sum + one[index], 0) / logs.length;
  const [x, y] = [mean(0), mean(1)];
  return logs.reduce((sum, [a, b]) => sum + (a - x) * (b - y), 0) / logs.reduce((sum, [a]) => sum + (a - x) ** 2, 0);
}

/** The bench runs with --expose-gc. */
function heapAfterCollection(): number {
  (globalThis as { gc?: () => void }).gc?.();
  return process.memoryUsage().heapUsed;
}
