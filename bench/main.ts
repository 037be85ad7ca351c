/** What a user waits for, each figure beside its limit or a peer, in one table; written to results/latest.json too. */
import { mkdirSync, writeFileSync } from "node:fs";
import { cpus, loadavg, totalmem } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { balanceRows } from "./balance";
import { carRows, memoryOf } from "./cars";
import { cutPlanRows } from "./cut-plans";
import { printTable, type BenchRow } from "./measure";
import { pageRows } from "./page";
import { shopRows } from "./shop";

const areas: Readonly<Record<string, () => BenchRow[] | Promise<BenchRow[]>>> = { cars: carRows, balance: balanceRows, cutplan: cutPlanRows, shop: shopRows, page: pageRows };
const { only, memory } = parseArgs({ options: { only: { type: "string", default: Object.keys(areas).join(",") }, memory: { type: "string" } } }).values;

if (memory === undefined) await bench(only.split(","));
else console.log(memoryOf(memory));

async function bench(names: readonly string[]): Promise<void> {
  const started = new Date().toISOString();
  const rows: BenchRow[] = [];
  for (const name of names) {
    const area = areas[name];
    if (!area) throw new Error(`--only takes ${Object.keys(areas).join(", ")} (read: ${name}).`);
    console.log(`${name} …`);
    rows.push(...(await area()));
  }
  const machine = { processor: cpus()[0]?.model ?? "unknown", processors: cpus().length, memory: `${Math.round(totalmem() / 2 ** 30)} GB`, node: process.version, platform: process.platform, load: loadavg().map((one) => Number(one.toFixed(1))) };
  printTable(rows);
  console.log(`${machine.processor}, ${machine.processors} processors, Node ${machine.node}; work on the machine in the last 15 minutes, this included: ${machine.load[2]} processes.`);
  // A part of the bench does not replace the whole of it.
  if (names.length < Object.keys(areas).length) return;
  const folder = join(import.meta.dirname, "results");
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, "latest.json"), `${JSON.stringify({ started, machine, rows }, undefined, 1)}\n`);
}
