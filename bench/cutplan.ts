/**
 * npm run bench:cutplan [-- --instances FILE] [--seconds N] [--ours]: our cut plans beside those of a general solver of integer programs (HiGHS).
 * The instances are the even-numbered ones of the uniform class of the OR-Library's bin packing files (Falkenauer 1996); its terms let us
 * measure with them and not ship them, so they are read from where they lie. Published and made-up jobs come with the tests.
 */
import { existsSync, readFileSync } from "node:fs";
import { cpus } from "node:os";
import { resolve } from "node:path";
import { parseArgs } from "node:util";
import { budgetOf } from "../src/core/cutplan/budget";
import type { CuttingProblem } from "../src/core/cutplan/problem";
import { solveCutting } from "../src/core/cutplan/solve";
import { faultsOf } from "../test/core/cutplan/every-plan";
import { gilmoreGomory, log100, shopJob } from "../test/core/cutplan/jobs";
import { solveByHighs } from "./highs";

interface Instance {
  readonly name: string;
  readonly problem: CuttingProblem;
  readonly optimum: number | undefined;
}

const RUNS = 3;
const MOST_WORK = 12_000_000;

const { instances: file, seconds, ours } = parseArgs({
  options: {
    instances: { type: "string", default: resolve(import.meta.dirname, "../../shared/data/cutting-stock-bench.json") },
    seconds: { type: "string", default: "10" },
    ours: { type: "boolean", default: false },
  },
}).values;

void main();

async function main(): Promise<void> {
  console.log(`${cpus()[0]?.model ?? "unknown processor"}, Node ${process.version}; best of ${RUNS} runs, one process; HiGHS is stopped after ${seconds} s.`);
  const library = readLibrary();
  const jobs = [{ name: "Gilmore and Gomory 1961", problem: gilmoreGomory, optimum: 170 }, { name: "log of 100 units", problem: log100, optimum: 334 }];
  const shop = [1, 2, 3, 4].map((seed) => ({ name: `shop job ${seed}, 400 pieces`, problem: shopJob(seed), optimum: undefined }));
  const rows = [];
  for (const instance of [...library, ...jobs, ...shop]) rows.push(await measure(instance));
  console.table(rows.map(({ row }) => row));
  const measured = rows.slice(0, library.length);
  if (measured.length > 0) console.log(`${measured.filter(({ proved }) => proved).length} of ${measured.length} library instances proved optimal, ${average(measured.map(({ milliseconds }) => milliseconds)).toFixed(1)} ms on average, ${average(measured.map(({ processor }) => processor)).toFixed(1)} ms of it on the processor.`);
  if (rows.some(({ wrong }) => wrong)) process.exitCode = 1;
}

function readLibrary(): Instance[] {
  if (!existsSync(file)) {
    console.log(`No instances at ${file}: give the place of the file with --instances.`);
    return [];
  }
  const { instances } = JSON.parse(readFileSync(file, "utf8")) as { instances: { id: string; capacity: number; items: [number, number][]; optimum: number }[] };
  return instances.map(({ id, capacity, items, optimum }) => ({
    name: id,
    problem: { pieces: items.map(([length, count]) => ({ length, count })), stocks: [{ length: capacity, cost: 1, count: Infinity }] },
    optimum,
  }));
}

/** Our best time of several runs, and one run of the peer. */
async function measure({ name, problem, optimum }: Instance) {
  const runs = Array.from({ length: RUNS }, () => {
    const [start, before] = [performance.now(), process.cpuUsage()];
    const solved = solveCutting(problem, budgetOf(MOST_WORK));
    return { solved, milliseconds: performance.now() - start, processor: process.cpuUsage(before).user / 1000 };
  });
  const { solved, milliseconds, processor } = runs.reduce((best, run) => (run.milliseconds < best.milliseconds ? run : best));
  const peer = ours ? undefined : await solveByHighs(problem, Number(seconds));
  const faults = faultsOf(problem, solved);
  if (faults.length > 0) console.error(`${name}: ${faults.join("; ")}`);
  const proved = solved.cost === solved.lowerBound;
  const wrong = faults.length > 0 || (optimum !== undefined && (solved.lowerBound > optimum || solved.cost < optimum));
  const row = {
    instance: name, optimum: optimum ?? "", cost: solved.cost, bound: solved.lowerBound,
    status: proved ? "proved" : `gap ${((solved.cost / solved.lowerBound - 1) * 100).toFixed(2)} %`, ms: milliseconds.toFixed(1), "processor ms": processor.toFixed(1),
    ...(peer ? { "HiGHS cost": peer.cost ?? "", "HiGHS status": peer.status, "HiGHS ms": peer.milliseconds.toFixed(0) } : {}),
  };
  return { row, proved, wrong, milliseconds, processor };
}

const average = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0) / numbers.length;
