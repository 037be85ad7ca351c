/** A cutting job solved by HiGHS as an arc-flow model (Valerio de Carvalho 1999), in a worker that can be stopped: its own time limit is loose. */
import { Worker } from "node:worker_threads";
import type { CuttingProblem } from "../src/core/cutplan/problem";

export interface PeerAnswer {
  readonly cost: number | undefined;
  readonly status: string;
  readonly milliseconds: number;
}

/** @param seconds given to the solver as its limit; the worker is killed half as much later, whatever it is doing */
export async function solveByHighs(problem: CuttingProblem, seconds: number): Promise<PeerAnswer> {
  const worker = new Worker(WORKER, { eval: true, workerData: { model: arcFlow(problem), seconds } });
  const start = performance.now();
  let kill: NodeJS.Timeout | undefined;
  const answer = await new Promise<Omit<PeerAnswer, "milliseconds">>((done) => {
    worker.on("message", ({ status, cost }: { status: string; cost: number | null }) => done({ status, cost: cost ?? undefined }));
    worker.on("error", ({ message }) => done({ status: `failed: ${message}`, cost: undefined }));
    kill = setTimeout(() => done({ status: "killed", cost: undefined }), seconds * 1500);
  });
  const milliseconds = performance.now() - start;
  clearTimeout(kill);
  await worker.terminate();
  return { ...answer, milliseconds };
}

const WORKER = `
const { parentPort, workerData: { model, seconds } } = require("node:worker_threads");
require("highs")().then((highs) => {
  const answer = highs.solve(model, { time_limit: seconds, output_flag: false });
  const cost = Number.isFinite(answer.ObjectiveValue) && Object.keys(answer.Columns).length > 0 ? Math.round(answer.ObjectiveValue) : null;
  parentPort.postMessage({ status: answer.Status, cost });
});
`;

/** Flow along a length of stock from 0 to its end: an arc for each piece at each place it can begin, and one for what stays over. */
export function arcFlow({ pieces, stocks }: CuttingProblem): string {
  const longest = Math.max(...stocks.map(({ length }) => length));
  const order = pieces.map((_, piece) => piece).sort((a, b) => (pieces[b]?.length ?? 0) - (pieces[a]?.length ?? 0));
  const reached = new Set([0]);
  const arcs: { name: string; from: number; to: number; piece: number }[] = [];
  for (const piece of order) {
    const { length, count } = pieces[piece] ?? { length: Infinity, count: 0 };
    // Pieces lie longest first, so a piece begins only where longer ones, or fewer of its own than are asked for, end.
    let begins = [...reached];
    for (let copy = 0; copy < count && begins.length > 0; copy += 1) {
      const ends: number[] = [];
      for (const from of begins.filter((place) => place + length <= longest)) {
        const name = `a${piece}_${from}`;
        if (!arcs.some((arc) => arc.name === name)) arcs.push({ name, from, to: from + length, piece });
        if (!reached.has(from + length)) ends.push(from + length);
        reached.add(from + length);
      }
      begins = ends;
    }
  }
  return modelOf({ pieces, stocks }, arcs, [...reached].sort((a, b) => a - b));
}

function modelOf({ pieces, stocks }: CuttingProblem, arcs: readonly { name: string; from: number; to: number; piece: number }[], reached: readonly number[]): string {
  const at = new Map(reached.map((place) => [place, { into: [] as string[], from: [] as string[] }]));
  const demand = pieces.map(() => [] as string[]);
  for (const { name, from, to, piece } of arcs) {
    at.get(to)?.into.push(name);
    at.get(from)?.from.push(name);
    demand[piece]?.push(name);
  }
  // A stick of each stock ends at every place that fits into it.
  const ends = stocks.flatMap(({ length, cost }, stock) => reached.filter((place) => place > 0 && place <= length).map((place) => ({ name: `e${stock}_${place}`, place, cost, stock })));
  const balance = reached.slice(1).map((place) => `f${place}: ${[...(at.get(place)?.into ?? []), ...(at.get(place)?.from ?? []).map((name) => `- ${name}`), ...ends.filter((end) => end.place === place).map(({ name }) => `- ${name}`)].join(" + ").replaceAll("+ -", "-")} = 0`);
  const asked = demand.map((names, piece) => `d${piece}: ${names.join(" + ")} >= ${pieces[piece]?.count}`);
  const limits = stocks.flatMap(({ count }, stock) => (count === Infinity ? [] : [`s${stock}: ${ends.filter((end) => end.stock === stock).map(({ name }) => name).join(" + ")} <= ${count}`]));
  const cost = ends.map(({ name, cost: each }) => `${each} ${name}`).join(" + ");
  return ["Minimize", ` cost: ${cost}`, "Subject To", ...[...balance, ...asked, ...limits].map((line) => ` ${line}`), "Generals", ` ${[...arcs, ...ends].map(({ name }) => name).join(" ")}`, "End"].join("\n");
}
