/**
 * npm run bench:cutplan [-- --instances FILE] [--seconds N] [--ours]: our cut plans beside those of a general solver of integer programs (HiGHS).
 */
import { cpus } from "node:os";
import { parseArgs } from "node:util";
import { faultsIn, jobs, LIBRARY, readLibrary, RUNS, solveOurs, type Instance } from "./cut-plans";
import { solveByHighs } from "./highs";

const { instances: file, seconds, ours } = parseArgs({
  options: { instances: { type: "string", default: LIBRARY }, seconds: { type: "string", default: "10" }, ours: { type: "boolean", default: false } },
}).values;

void main();

async function main(): Promise<void> {
  console.log(`${cpus()[0]?.model ?? "unknown processor"}, Node ${process.version}; best of ${RUNS} runs, one process; HiGHS is stopped after ${seconds} s.`);
  const library = readLibrary(file);
  if (library.length === 0) console.log(`No instances at ${file}: give the place of the file with --instances.`);
  const rows = [];
  for (const instance of [...library, ...jobs]) rows.push(await measure(instance));
  console.table(rows.map(({ row }) => row));
  const measured = rows.slice(0, library.length);
  if (measured.length > 0) console.log(`${measured.filter(({ proved }) => proved).length} of ${measured.length} library instances proved optimal, ${average(measured.map(({ milliseconds }) => milliseconds)).toFixed(1)} ms on average, ${average(measured.map(({ processor }) => processor)).toFixed(1)} ms of it on the processor.`);
  if (rows.some(({ wrong }) => wrong)) process.exitCode = 1;
}

/** Our best time of several runs, and one run of the peer. */
async function measure(instance: Instance) {
  const { name, problem, optimum } = instance;
  const runs = Array.from({ length: RUNS }, () => solveOurs(instance));
  const { solved, milliseconds, processor } = runs.reduce((best, run) => (run.milliseconds < best.milliseconds ? run : best));
  const peer = ours ? undefined : await solveByHighs(problem, Number(seconds));
  const faults = faultsIn(instance, solved);
  if (faults.length > 0) console.error(`${name}: ${faults.join("; ")}`);
  const proved = solved.cost === solved.lowerBound;
  const row = {
    instance: name, optimum: optimum ?? "", cost: solved.cost, bound: solved.lowerBound,
    status: proved ? "proved" : `gap ${((solved.cost / solved.lowerBound - 1) * 100).toFixed(2)} %`, ms: milliseconds.toFixed(1), "processor ms": processor.toFixed(1),
    ...(peer ? { "HiGHS cost": peer.cost ?? "", "HiGHS status": peer.status, "HiGHS ms": peer.milliseconds.toFixed(0) } : {}),
  };
  return { row, proved, wrong: faults.length > 0, milliseconds, processor };
}

const average = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0) / numbers.length;
