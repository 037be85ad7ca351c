/** Cutting jobs, and our plans for them beside those of a general solver of integer programs (HiGHS). */
import { existsSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { budgetOf } from "../src/core/cutplan/budget";
import type { CuttingProblem } from "../src/core/cutplan/problem";
import { solveCutting } from "../src/core/cutplan/solve";
import { faultsOf } from "../test/core/cutplan/every-plan";
import { gilmoreGomory, log100, shopJob } from "../test/core/cutplan/jobs";
import { solveByHighs } from "./highs";
import { measured, row, type BenchRow } from "./measure";

export interface Instance {
  readonly name: string;
  readonly problem: CuttingProblem;
  readonly optimum: number | undefined;
}

export const RUNS = 3;
const MOST_WORK = 12_000_000;

/** Where the library's instances lie: its terms let us measure with them and not ship them. */
export const LIBRARY = resolve(import.meta.dirname, "../../shared/data/cutting-stock-bench.json");

/** Published jobs and made-up ones; they come with the tests. */
export const jobs: readonly Instance[] = [
  { name: "Gilmore and Gomory 1961", problem: gilmoreGomory, optimum: 170 }, { name: "log of 100 units", problem: log100, optimum: 334 },
  ...[1, 2, 3, 4].map((seed) => ({ name: `shop job ${seed}, 400 pieces`, problem: shopJob(seed), optimum: undefined })),
];

/** The even-numbered instances of the uniform class of the OR-Library's bin packing files (Falkenauer 1996); none where the file is not. */
export function readLibrary(file: string): Instance[] {
  if (!existsSync(file)) return [];
  const { instances } = JSON.parse(readFileSync(file, "utf8")) as { instances: { id: string; capacity: number; items: [number, number][]; optimum: number }[] };
  return instances.map(({ id, capacity, items, optimum }) => ({
    name: id,
    problem: { pieces: items.map(([length, count]) => ({ length, count })), stocks: [{ length: capacity, cost: 1, count: Infinity }] },
    optimum,
  }));
}

export function solveOurs({ problem }: Instance) {
  const [start, before] = [performance.now(), process.cpuUsage()];
  const solved = solveCutting(problem, budgetOf(MOST_WORK));
  return { solved, milliseconds: performance.now() - start, processor: process.cpuUsage(before).user / 1000 };
}

export const faultsIn = ({ problem, optimum }: Instance, solved: ReturnType<typeof solveCutting>): string[] => [
  ...faultsOf(problem, solved), ...(optimum !== undefined && (solved.lowerBound > optimum || solved.cost < optimum) ? [`bound ${solved.lowerBound} and cost ${solved.cost} do not hold the optimum ${optimum}`] : []),
];

const SECONDS = 2;
const MOST_OF_LIBRARY = 6;

/** A few of each kind for the table; `npm run bench:cutplan` has all of them. */
export async function cutPlanRows(): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  for (const instance of [...readLibrary(LIBRARY).slice(0, MOST_OF_LIBRARY), ...jobs.slice(0, 3)]) {
    let last = solveOurs(instance);
    const times = measured(RUNS, () => { last = solveOurs(instance); return last.milliseconds; });
    const { solved } = last;
    const peer = await solveByHighs(instance.problem, SECONDS);
    const ours = solved.cost === solved.lowerBound ? `${solved.cost}, proved` : `${solved.cost}, bound ${solved.lowerBound}`;
    const theirs = `HiGHS ${peer.cost ?? "nothing"} in ${peer.milliseconds.toFixed(0)} ms (${peer.status})`;
    rows.push({ ...row("Cut plan", `${instance.name}: ${ours}`, times, { against: theirs }), met: faultsIn(instance, solved).length === 0 && (peer.cost === undefined || solved.cost <= peer.cost) });
  }
  return rows;
}
