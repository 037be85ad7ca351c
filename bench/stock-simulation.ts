// npx tsx bench/stock-simulation.ts [--seed N] [--runs N] [--markdown]: runs the ordering policy for 10,000 weeks on invented lumpy demand, in several runs each
// with a seed of its own, and compares the service reached with the service asked for; then times 500 items with 260 weeks of history each.
// Exits 1 when the mean of the runs is more than one point off, or the time a second.
import { parseArgs } from "node:util";
import { cpus } from "node:os";
import { jobsLaw, demandMoments, type DemandLaw } from "../src/core/stock/demand-law";
import { forecast } from "../src/core/stock/forecast";
import { reorder, lotsToday, type ReorderProblem } from "../src/core/stock/reorder";
import type { Service } from "../src/core/stock/replenishment";

const WEEKS = 10_000;
const WARM_UP = 500;
const WITHIN = 0.01;

/** Invented: jobs a week, inches a job, weeks of lead time, and the length of a piece. */
interface Item {
  readonly name: string;
  readonly jobs: number;
  readonly sizes: readonly number[];
  readonly leadTime: number;
  readonly piece: number;
  readonly least: number;
  readonly price: number;
}

const items: readonly Item[] = [
  { name: "A: a job in five weeks of six, mixed sizes", jobs: 1.8, sizes: [31, 58, 77, 112, 147, 263, 410], leadTime: 2, piece: 300, least: 1, price: 21 },
  { name: "B: a job every third week, two kits among patches", jobs: 0.33, sizes: [23, 41, 56, 84, 609, 733], leadTime: 4, piece: 72, least: 5, price: 17 },
  { name: "C: a job every eighth week, long", jobs: 0.125, sizes: [187, 262, 305, 541], leadTime: 3, piece: 60, least: 10, price: 6.9 },
  { name: "D: four jobs a week, one size in nine huge", jobs: 4, sizes: [17, 22, 29, 34, 38, 45, 53, 61, 1187], leadTime: 1, piece: 300, least: 5, price: 27 },
];

const services: readonly Service[] = [0.9, 0.95, 0.98].flatMap((share): Service[] => [{ measure: "cycle", share }, { measure: "fill", share }]);

/** Two small generators added up, so that no run comes near the period (L'Ecuyer 1988, Communications of the ACM 31(6), from memory); products stay below 2^53. */
function randomFrom(seed: number): () => number {
  let first = (seed % 2147483562) + 1;
  let second = ((seed * 31) % 2147483398) + 1;
  const next = (): number => {
    first = (first * 40014) % 2147483563;
    second = (second * 40692) % 2147483399;
    return ((first - second + 2147483562) % 2147483562 || 2147483562) / 2147483563;
  };
  // Seeds near one another begin near one another.
  for (let draw = 0; draw < 20; draw += 1) next();
  return next;
}

/** The jobs of one week: a Poisson number, each of a size drawn from the list. */
function jobsOf({ jobs, sizes }: Item, random: () => number): number[] {
  const drawn: number[] = [];
  let product = random();
  for (const end = Math.exp(-jobs); product > end; product *= random()) drawn.push(sizes[Math.floor(random() * sizes.length)] ?? 0);
  return drawn;
}

const sumOf = (list: readonly number[]): number => list.reduce((sum, one) => sum + one, 0);

/** Orders are placed at the start of a week, arrive whole weeks later at the start of a week; demand that is not met waits. */
function simulate(item: Item, policy: { point: number; lot: number }, random: () => number) {
  let [stock, demanded, short, orders, soundOrders, held] = [policy.point + policy.lot, 0, 0, 0, 0, 0];
  const due: number[] = Array.from({ length: item.leadTime }, () => 0);
  for (let week = -WARM_UP; week < WEEKS; week += 1) {
    const onTheWay = due.reduce((sum, quantity) => sum + quantity, 0);
    due.push(lotsToday(stock + onTheWay, policy.point, policy.lot) * policy.lot);
    const arrived = due.shift() ?? 0;
    const before = stock;
    stock += arrived;
    const demand = sumOf(jobsOf(item, random));
    if (week >= 0) {
      if (arrived > 0) orders += 1;
      if (arrived > 0 && before >= -1e-6) soundOrders += 1;
      demanded += demand;
      short += Math.max(0, demand - Math.max(0, stock));
      held += (Math.max(0, stock) + Math.max(0, stock - demand)) / 2;
    }
    stock -= demand;
  }
  return { cycle: soundOrders / orders, fill: 1 - short / demanded, orders, onHand: held / WEEKS };
}

function problemOf(item: Item, usage: DemandLaw, service: Service): ReorderProblem {
  const offer = { kind: "all-units", bands: [{ from: 0, price: item.price }], orderCost: 18 } as const;
  return { usage, leadTime: item.leadTime, review: 1, service, offer, sizes: { least: item.least, multiple: 1 }, holdingRate: 0.25, piece: item.piece, onHand: 0, onOrder: 0 };
}

const compound = ({ jobs, sizes }: Item): DemandLaw => jobsLaw(sizes, (jobs * sizes.reduce((sum, size) => sum + size, 0)) / sizes.length);
const sameMoments = (item: Item, kind: "gamma" | "normal"): DemandLaw => ({ kind, ...demandMoments(compound(item), 1) });

const percent = (share: number): string => (share * 100).toFixed(2);
const mean = (list: readonly number[]): number => sumOf(list) / list.length;

/** A law from 260 weeks of history only, as a shop would have it: what it loses is the estimate's, not the policy's. */
function learned(item: Item, random: () => number): DemandLaw {
  const weeks = Array.from({ length: 260 }, () => jobsOf(item, random));
  return jobsLaw(weeks.flat(), forecast(weeks.map(sumOf)).rate);
}

interface Law {
  readonly name: string;
  readonly of: (item: Item, run: number) => DemandLaw;
}

const { seed, runs, markdown } = parseArgs({ options: { seed: { type: "string", default: "20" }, runs: { type: "string", default: "20" }, markdown: { type: "boolean", default: false } } }).values;
const seedOf = (item: Item, run: number, part: number): number => Number(seed) * 1_000_003 + run * 1009 + items.indexOf(item) * 101 + part;

const laws: readonly Law[] = [
  { name: "compound Poisson", of: compound },
  { name: "gamma", of: (item) => sameMoments(item, "gamma") },
  { name: "normal", of: (item) => sameMoments(item, "normal") },
  { name: "learned", of: (item, run) => learned(item, randomFrom(seedOf(item, run, 1))) },
];

/** The same demand for every law and service of an item and a run. */
function trial(item: Item, service: Service, law: Law, run: number) {
  const { reorderPoint, lot, figures } = reorder(problemOf(item, law.of(item, run), service));
  const reached = simulate(item, { point: reorderPoint, lot: lot * item.piece }, randomFrom(seedOf(item, run, 2)));
  return { reorderPoint, lot, figures, reached };
}

const results = items.flatMap((item) =>
  services.map((service) => ({ item, service, byLaw: laws.map((law) => Array.from({ length: Number(runs) }, (_, run) => trial(item, service, law, run))) })),
);

const rows = results.map(({ item, service: { measure, share }, byLaw }) => {
  const [exact = [], ...others] = byLaw;
  const [first] = exact;
  const reached = exact.map((one) => one.reached[measure]);
  const promised = measure === "cycle" ? first?.figures?.cycleService : first?.figures?.fillRate;
  return {
    item: item.name.slice(0, 1), measure, asked: percent(share), promised: percent(promised ?? NaN), reached: percent(mean(reached)),
    "least to most": `${percent(Math.min(...reached))} to ${percent(Math.max(...reached))}`,
    orders: Math.round(mean(exact.map((one) => one.reached.orders))), "reorder point (in)": first?.reorderPoint.toFixed(0), "lot (pieces)": first?.lot,
    "on hand (in), worked out": first?.figures?.onHand.toFixed(0), "and found": mean(exact.map((one) => one.reached.onHand)).toFixed(0),
    ...Object.fromEntries(others.map((trials, index) => [laws[index + 1]?.name ?? "", percent(mean(trials.map((one) => one.reached[measure])))])),
  };
});
if (markdown) {
  const headings = Object.keys(rows[0] ?? {});
  console.log([headings, headings.map(() => "---"), ...rows.map((row) => Object.values(row))].map((cells) => `| ${cells.join(" | ")} |`).join("\n"));
} else console.table(rows);

const offBy = results.map(({ service, byLaw }) => (byLaw[0] ?? []).map(({ reached }) => reached[service.measure] - service.share));
const worst = Math.max(...offBy.map((list) => Math.abs(mean(list))));
const single = offBy.flat().map(Math.abs);
console.log(`seed ${seed}, ${runs} runs of ${WEEKS} weeks: the mean service reached is at most ${percent(worst)} points from the service asked for; ${single.filter((off) => off <= WITHIN).length} of ${single.length} single runs are within one point, the farthest ${percent(Math.max(...single))} off`);

function timeOf500(): number {
  const random = randomFrom(7);
  const histories = Array.from({ length: 500 }, (_, index) => Array.from({ length: 260 }, () => sumOf(jobsOf(items[index % items.length] as Item, random))));
  const start = performance.now();
  histories.forEach((history, index) => {
    const usage = jobsLaw(history.filter((week) => week > 0), forecast(history).rate);
    reorder(problemOf(items[index % items.length] as Item, usage, services[index % services.length] as Service));
  });
  return performance.now() - start;
}

const time = timeOf500();
console.log(`500 items × 260 weeks, forecast chosen and reorder point found: ${time.toFixed(0)} ms (${cpus()[0]?.model ?? "unknown processor"}, Node ${process.version})`);
if (worst > WITHIN || time > 1000) process.exitCode = 1;
