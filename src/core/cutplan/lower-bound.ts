/** Bounds that no plan can cost less than, in whole numbers so that rounding cannot lift one above the truth. */
import type { Budget } from "./budget";
import { bestFillings } from "./knapsack";
import { penalties, type CuttingProblem } from "./problem";

/** What one of each piece is worth in the relaxed job. */
export type PieceValues = readonly number[];

/** A bound with the values that prove it: no pattern's pieces are worth more than its stock's cost less the stock's value, which is not above 0. */
export interface Proof {
  readonly bound: number;
  readonly pieceValues: PieceValues;
  readonly stockValues: readonly number[];
}

/** Worth is counted in so small a part of the unit of money that all of it together still is an exact number. */
function scaleFor({ pieces }: CuttingProblem, values: PieceValues): number {
  const together = pieces.reduce((sum, { count }, piece) => sum + count * Math.max(0, values[piece] ?? 0), 1);
  return 2 ** Math.max(0, Math.min(30, Math.floor(50 - Math.log2(together))));
}

/**
 * The bound that piece values prove (weak duality, after Farley 1990, in whole numbers after Held, Cook and Sewell 2012).
 * Every unlimited stock's best filling is worth at most its cost once the values are scaled down; a limited stock's surplus
 * worth is paid back once for each one there is. Holds for plans that leave pieces out too, at their penalties.
 * @returns undefined when the budget ran out
 */
export function provenBound(problem: CuttingProblem, values: PieceValues, budget: Budget): Proof | undefined {
  const { pieces, stocks } = problem;
  const most = penalties(problem);
  const scale = scaleFor(problem, values);
  const whole = values.map((value, piece) => Math.max(0, Math.floor(Math.min(value, most[piece] ?? 0) * scale)));
  const things = pieces.map(({ length, count }, piece) => ({ weight: length, value: whole[piece] ?? 0, most: count }));
  const fillings = bestFillings(things, stocks.map(({ length, count }) => ({ capacity: count > 0 ? length : 0, above: 0, step: 0.5 })), budget);
  if (!fillings) return undefined;
  const worths = fillings.map((filling) => filling?.value ?? 0);
  const share = Math.min(1, ...stocks.map(({ cost, count }, stock) => (count === Infinity && (worths[stock] ?? 0) > 0 ? (cost * scale) / (worths[stock] ?? 1) : 1)));
  const scaled = share === 1 ? whole : whole.map((value) => Math.floor(value * share * (1 - 1e-12)));
  const gathered = pieces.reduce((sum, { count }, piece) => sum + count * (scaled[piece] ?? 0), 0);
  const surplus = stocks.map(({ cost, count }, stock) => (count === Infinity || count === 0 ? 0 : Math.min(0, cost * scale - Math.ceil((worths[stock] ?? 0) * share))));
  const paidBack = stocks.reduce((sum, { count }, stock) => sum + (surplus[stock] === 0 ? 0 : count * (surplus[stock] ?? 0)), 0);
  return { bound: Math.max(0, (gathered + paidBack) / scale), pieceValues: scaled.map((value) => value / scale), stockValues: surplus.map((value) => value / scale) };
}

/** Up to this much length the whole lengths of stock are tried, which takes that many steps for each stock. */
const MOST_LENGTH_TRIED = 1_000_000;
/** Steps that take as long as a state of the search. */
const STEPS_OF_A_STATE = 16;

/**
 * The least cost of whole lengths of stock that hold the pieces if tube could be joined end to end.
 * Sharper than piece values on a small job of several stocks; on a very large one, or once the budget ran out, parts of lengths are allowed.
 */
export function materialBound({ pieces, stocks }: CuttingProblem, budget: Budget): number {
  const needed = pieces.reduce((sum, { length, count }) => sum + length * count, 0);
  return (needed <= MOST_LENGTH_TRIED ? wholeLengthsBound(stocks, needed, budget) : undefined) ?? partLengthsBound(stocks, needed);
}

/** Least cost of covering each length, stock by stock; limited stock in lots of 1, 2, 4, … and a rest. Undefined when the budget ran out. */
function wholeLengthsBound(stocks: CuttingProblem["stocks"], needed: number, budget: Budget): number | undefined {
  const least = new Float64Array(needed + 1).fill(Infinity);
  least[0] = 0;
  for (const { length, cost, count } of stocks) {
    if (length <= 0) continue;
    budget.spend(Math.ceil(needed / STEPS_OF_A_STATE));
    if (budget.isOver()) return undefined;
    if (count >= Math.ceil(needed / length)) {
      for (let at = 1; at <= needed; at += 1) least[at] = Math.min(least[at] as number, (least[Math.max(0, at - length)] as number) + cost);
    }
    for (let left = count >= Math.ceil(needed / length) ? 0 : count, lot = 1; left > 0; left -= lot, lot = Math.min(2 * lot, left)) {
      budget.spend(Math.ceil(needed / STEPS_OF_A_STATE));
      for (let at = needed; at > 0; at -= 1) least[at] = Math.min(least[at] as number, (least[Math.max(0, at - lot * length)] as number) + lot * cost);
    }
  }
  // Where the stock does not suffice, a plan leaves pieces out, and this says nothing of it.
  const bound = least[needed] as number;
  return bound === Infinity ? 0 : bound;
}

/** The cheapest for its length first, as far as it goes. */
function partLengthsBound(stocks: CuttingProblem["stocks"], needed: number): number {
  let [left, cost] = [needed, 0];
  for (const stock of [...stocks].filter(({ length }) => length > 0).sort((a, b) => a.cost / a.length - b.cost / b.length)) {
    const taken = Math.min(left / stock.length, stock.count);
    cost += taken * stock.cost;
    left -= taken * stock.length;
    if (left <= 0) break;
  }
  return cost;
}

/** The least cost a plan can have that is not below the bound. */
export const roundedUp = (bound: number, step: number): number => Math.max(0, Math.ceil((bound - 1e-6) / step)) * step;
