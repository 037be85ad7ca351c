/** CarReports of a thousand, ten thousand and a hundred thousand cars: time and memory a car, and how the time grows. */
import { spawnSync } from "node:child_process";
import { parseCars, type CarRow } from "../src/catalogue/parse-cars";
import { reportOnRow } from "../src/functions/reports";
import { measured, row, summary, timed, type BenchRow, type Measured } from "./measure";
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
  const measuredAt = counts.map((count) => ({ count, ...reportsOf(cars(count), count <= 10_000 ? 5 : 3), memory: memoryApart(name, count) }));
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
}

/** Cold: rows never read, and a catalogue never used. Warm: the same rows again. */
function reportsOf({ headings, rows }: Rows, runs: number): Reports {
  const warm: number[] = [];
  const cold = measured(runs, (run) => {
    const work = reportsOn({ headings: freshHeadings(headings, run), rows }, run);
    collect();
    const time = timed(work);
    warm.push(timed(work));
    return time;
  });
  return { cold, warm: summary(warm) };
}

function reportsOn({ headings, rows }: Rows, run: number): () => unknown[] {
  const catalogue = freshCatalogue(run);
  return () => parseCars(headings, rows).cars.map((one: CarRow) => reportOnRow(catalogue, one));
}

/** What one run kept would go in the middle of the next, so memory is measured in a process of its own. */
function memoryApart(name: string, count: number): number {
  const { stdout, stderr, status } = spawnSync(process.execPath, [...process.execArgv, process.argv[1] ?? "", "--memory", `${name}|${count}`], { encoding: "utf8" });
  if (status !== 0) throw new Error(stderr);
  return Number(stdout);
}

/** Kilobytes a car that stay while the reports do, with what was read of the rows. @param asked name of a workload and number of cars, split by a bar */
export function memoryOf(asked: string): number {
  const [name, count] = asked.split("|");
  const rows = workloads.find((one) => one.name === name)?.cars(Number(count));
  if (!rows) throw new Error(`There is no workload ${name}.`);
  const work = reportsOn(rows, 0);
  collect();
  const before = process.memoryUsage().heapUsed;
  const kept = work();
  collect();
  return (process.memoryUsage().heapUsed - before) / kept.length / 1000;
}

/** Slope of log time over log number, by least squares. */
function exponent(points: readonly (readonly [number, number])[]): number {
  const logs = points.map(([count, time]) => [Math.log(count), Math.log(time)] as const);
  const mean = (index: 0 | 1): number => logs.reduce((sum, one) => sum + one[index], 0) / logs.length;
  const [x, y] = [mean(0), mean(1)];
  return logs.reduce((sum, [a, b]) => sum + (a - x) * (b - y), 0) / logs.reduce((sum, [a]) => sum + (a - x) ** 2, 0);
}

/** The bench runs with --expose-gc. */
const collect = (): void => { (globalThis as { gc?: () => void }).gc?.(); };
