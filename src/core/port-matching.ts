/** Which seen port is which port of a part: how likely what was seen is over all ways to match them, and the likeliest way. */
import type { Port } from "./component";
import type { SeenPort } from "./seen-body";

export interface PortMatch {
  readonly seen: SeenPort;
  readonly port: Port;
}

export interface MatchChances {
  /** Of a seen port being a port of the part: with its reading right, and with it wrong. */
  readonly matching: (port: Port, seen: number) => { readonly right: number; readonly wrong: number };
  /** Of a seen port being none of the part's. */
  readonly stray: (seen: number) => number;
  /** Of a port of the part not being seen. */
  readonly overlooked: number;
}

/** A way to have matched the ports so far: how many of each kind are taken. */
interface Way {
  readonly taken: readonly number[];
  /** Summed over every way to the same counts. */
  readonly sum: number;
  /** Of the likeliest of them. */
  readonly best: number;
  /** Kind of port of each seen port read right; undefined for one read wrong or stray. */
  readonly matches: readonly (number | undefined)[];
}

/**
 * Sums over every way to give seen ports to ports of the part, at most one each. Ports that are alike are counted together, which
 * keeps the number of ways small.
 */
export function matchPorts(ports: readonly Port[], seen: readonly SeenPort[], chances: MatchChances): { readonly likelihood: number; readonly matched: readonly PortMatch[] } {
  const kinds = kindsOf(ports);
  let ways: readonly Way[] = [{ taken: kinds.map(() => 0), sum: 1, best: 1, matches: [] }];
  for (const index of seen.keys()) ways = merged(ways.flatMap((way) => stepsFrom(way, kinds, index, chances)));
  const ends = ways.map((way) => {
    const count = way.taken.reduce((total, taken) => total + taken, 0);
    const told = (1 - chances.overlooked) ** count * chances.overlooked ** (ports.length - count);
    return { ...way, sum: way.sum * told, best: way.best * told };
  });
  const [likeliest] = [...ends].sort((a, b) => b.best - a.best);
  return { likelihood: ends.reduce((total, { sum }) => total + sum, 0), matched: likeliest ? asMatches(kinds, seen, likeliest) : [] };
}

/** Ports that nothing seen could tell apart. */
function kindsOf(ports: readonly Port[]): Port[][] {
  const kinds = new Map<string, Port[]>();
  for (const port of ports) {
    const key = [port.thread?.name ?? "?", port.gender, port.side ?? ""].join("|");
    kinds.set(key, [...(kinds.get(key) ?? []), port]);
  }
  return [...kinds.values()];
}

function stepsFrom(way: Way, kinds: readonly (readonly Port[])[], index: number, chances: MatchChances): Way[] {
  const stray = chances.stray(index);
  const steps: Way[] = [{ taken: way.taken, sum: way.sum * stray, best: way.best * stray, matches: [...way.matches, undefined] }];
  for (const [kind, alike] of kinds.entries()) {
    const free = alike.length - (way.taken[kind] ?? 0);
    const [port] = alike;
    if (free === 0 || !port) continue;
    const { right, wrong } = chances.matching(port, index);
    const taken = way.taken.map((count, other) => (other === kind ? count + 1 : count));
    steps.push({ taken, sum: way.sum * free * (right + wrong), best: way.best * Math.max(right, wrong), matches: [...way.matches, right >= wrong && right > 0 ? kind : undefined] });
  }
  return steps;
}

function merged(ways: readonly Way[]): Way[] {
  const byCounts = new Map<string, Way>();
  for (const way of ways) {
    const key = way.taken.join();
    const known = byCounts.get(key);
    byCounts.set(key, known ? { ...(way.best > known.best ? way : known), sum: known.sum + way.sum } : way);
  }
  return [...byCounts.values()];
}

function asMatches(kinds: readonly (readonly Port[])[], seen: readonly SeenPort[], { matches }: Way): PortMatch[] {
  const next = kinds.map(() => 0);
  return matches.flatMap((kind, index) => {
    if (kind === undefined) return [];
    const port = kinds[kind]?.[next[kind] ?? 0];
    next[kind] = (next[kind] ?? 0) + 1;
    return port && seen[index] ? [{ seen: seen[index], port }] : [];
  });
}
