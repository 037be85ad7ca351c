/** npm run bench: how long the work takes that a user waits for. Each row is the median of several runs on the demo's cars, repeated. */
import { cpus } from "node:os";
import { demoTables } from "../src/catalogue/demo";
import { parseCatalogue } from "../src/catalogue/parse-catalogue";
import { catalogueTables } from "../src/catalogue/table-specs";
import { parseCars } from "../src/catalogue/parse-cars";
import { reportOn } from "../src/core/report";
import { catalog, verdict } from "../src/functions/functions";

const RUNS = 5;

const grid = (name: string): unknown[][] => {
  const table = demoTables.find((one) => one.name === name);
  if (!table) throw new Error(`the demo has no ${name}`);
  return [[...table.headings], ...table.rows.map((row) => [...row])];
};

/** So many cars with names of their own, cycling through the demo's. */
function manyCars(count: number): { headings: unknown[][]; rows: unknown[][] } {
  const [headings, ...rows] = grid("Cars");
  const column = headings?.indexOf("Car") ?? 0;
  const many = Array.from({ length: count }, (_, index) => (rows[index % rows.length] ?? []).map((cell, at) => (at === column ? `Car ${index}` : cell)));
  return { headings: [headings ?? []], rows: many };
}

function median(times: readonly number[]): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? NaN;
}

function timed(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

const tables = demoTables.filter(({ name }) => catalogueTables.some((spec) => spec.name === name)).map(({ name }) => grid(name));
const { catalogue } = parseCatalogue(tables.map(([headings, ...rows]) => ({ headings: headings ?? [], rows })));

const rows: { work: string; "median ms": string; "µs a car": string; "cars a second": string }[] = [];
const record = (work: string, cars: number, milliseconds: number) =>
  rows.push({ work, "median ms": milliseconds.toFixed(1), "µs a car": ((milliseconds * 1000) / cars).toFixed(0), "cars a second": Math.round((cars * 1000) / milliseconds).toLocaleString("en") });

for (const count of [1_000, 10_000]) {
  const { headings, rows: cars } = manyCars(count);
  const parsed = parseCars(headings[0] ?? [], cars).cars;
  record(`${count} CarReports from parsed rows`, count, median(Array.from({ length: RUNS }, () => timed(() => parsed.forEach(({ car }) => car && reportOn(catalogue, car))))));
  // A fresh price makes a fresh catalogue, so that nothing is remembered.
  const cold = Array.from({ length: RUNS }, (_, run) => {
    const key = catalog([...tables.filter(([head]) => !head?.includes("Adapter")), [["Adapter", "Thread A", "Seat A", "Gender A", "Thread B", "Seat B", "Gender B", "Price"], [`AD-${count}-${run}`, "3/8-24", "inverted-flare-45", "male", "7/16-24", "inverted-flare-45", "female", 4 + run]]]);
    return timed(() => verdict(headings, cars, key));
  });
  record(`VERDICT of ${count} rows, nothing remembered`, count, median(cold));
  const key = catalog(tables);
  verdict(headings, cars, key);
  record(`VERDICT of ${count} rows, remembered`, count, median(Array.from({ length: RUNS }, () => timed(() => verdict(headings, cars, key)))));
}

console.log(`${cpus()[0]?.model ?? "unknown processor"}, Node ${process.version}`);
console.table(rows);
