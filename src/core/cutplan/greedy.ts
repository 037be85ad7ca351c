/** Completes a draft stick by stick: each time the filling that gives most worth for its cost. */
import type { Budget } from "./budget";
import { cut, isDone, mostTimes, trimmed, type Draft } from "./draft";
import { bestFillings } from "./knapsack";
import type { PieceValues } from "./lower-bound";
import type { Pattern } from "./problem";

/** A filling this near to the best one, as a share of what the stock is worth, is as good. */
const NEAR_ENOUGH = 0.001;

/** @param values what one of each piece is worth; where they say nothing, length does */
export function completeGreedily(draft: Draft, values: PieceValues, budget: Budget): void {
  while (!isDone(draft)) {
    const pattern = budget.isOver() ? longestFirst(draft) : mostWorthwhile(draft, values, budget);
    if (!pattern) return;
    cut(draft, pattern, Math.max(1, mostTimes(draft, pattern)));
  }
}

function mostWorthwhile(draft: Draft, values: PieceValues, budget: Budget): Pattern | undefined {
  const { pieces, stocks } = draft.problem;
  const crumb = 1e-6 * Math.max(1, ...stocks.map(({ cost }) => cost)) / Math.max(1, ...pieces.map(({ length }) => length));
  const things = pieces.map(({ length }, piece) => ({ weight: length, value: (values[piece] ?? 0) + crumb * length, most: draft.demands[piece] ?? 0 }));
  const fillings = bestFillings(things, stocks.map(({ length }, stock) => ({ capacity: (draft.supplies[stock] ?? 0) > 0 ? length : 0, above: 0, step: NEAR_ENOUGH * crumb * 1e6 * length })), budget);
  let best: { pattern: Pattern; rate: number } | undefined;
  fillings?.forEach((filling, stock) => {
    if (!filling) return;
    const rate = filling.value / Math.max(1e-9, stocks[stock]?.cost ?? 0);
    if (!best || rate > best.rate) best = { pattern: { stock, counts: filling.counts }, rate };
  });
  return fillings ? best && trimmed(draft, best.pattern) : longestFirst(draft);
}

/** Without any search: the longest piece left, then what fits beside it, on the stock that is cheapest for its length. */
function longestFirst({ problem: { pieces, stocks }, demands, supplies }: Draft): Pattern | undefined {
  const order = pieces.map((_, piece) => piece).filter((piece) => (demands[piece] ?? 0) > 0).sort((a, b) => (pieces[b]?.length ?? 0) - (pieces[a]?.length ?? 0));
  const longest = order.find((piece) => stocks.some(({ length }, stock) => (supplies[stock] ?? 0) > 0 && length >= (pieces[piece]?.length ?? 0)));
  if (longest === undefined) return undefined;
  const fitting = stocks.map((stock, index) => ({ ...stock, index })).filter(({ length, index }) => (supplies[index] ?? 0) > 0 && length >= (pieces[longest]?.length ?? 0));
  const [stock] = fitting.sort((a, b) => a.cost / a.length - b.cost / b.length) as [(typeof fitting)[number]];
  let room = stock.length;
  const counts = pieces.map(() => 0);
  for (const piece of order) {
    const { length } = pieces[piece] ?? { length: Infinity };
    const count = Math.min(demands[piece] ?? 0, Math.floor(room / length));
    counts[piece] = count;
    room -= count * length;
  }
  return { stock: stock.index, counts };
}
