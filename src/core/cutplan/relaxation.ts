/** The job with fractions of patterns allowed, by column generation: simplex over the patterns known, a knapsack to find better ones. */
import type { Budget } from "./budget";
import { bestFillings } from "./knapsack";
import { roundedUp } from "./lower-bound";
import { costStep, penalties, type CuttingProblem, type Pattern } from "./problem";
import { enter, reducedCost, startBasis, type Basis, type Column } from "./simplex";

export interface Relaxation {
  /** Cost of the fractional plan, penalties for missing pieces included. */
  readonly value: number;
  readonly uses: readonly { readonly pattern: Pattern; readonly times: number }[];
  /** What each piece is worth; 0 for a piece that is not asked for. */
  readonly values: readonly number[];
  /** No plan costs less, but for rounding; 0 when the budget ran out before anything was shown. */
  readonly bound: number;
}

/** Patterns met so far, each once. */
export type PatternPool = Map<string, Pattern>;

export const patternKey = ({ stock, counts }: Pattern): string => `${stock}|${counts.join()}`;

export function remember(pool: PatternPool, pattern: Pattern): Pattern {
  const key = patternKey(pattern);
  const known = pool.get(key);
  if (known) return known;
  pool.set(key, pattern);
  return pattern;
}

/** Savings, as a share of the stock's cost, that new patterns are looked for by: the large ones first, because they are found sooner. */
export const EXACT: readonly number[] = [1e-2, 1e-3, 1e-7];
/** Good enough where only a plan is wanted and no proof. */
export const NEAR: readonly number[] = [1e-2, 1e-3];

/**
 * The fractional plan of least cost.
 * @param pool patterns to start from; the new ones are added to it
 * @param tolerances the last one says how near the best is near enough
 */
export function relax(problem: CuttingProblem, pool: PatternPool, budget: Budget, tolerances: readonly number[]): Relaxation {
  const frame = frameOf(problem);
  const step = costStep(problem);
  const basis = startBasis(startColumns(problem, frame), frame.rightSide);
  const known = [...pool.values()].flatMap((pattern) => columnOf(problem, frame, pattern) ?? []);
  let [level, bound] = [0, 0];
  while (level < tolerances.length && bringInKnown(basis, frame, known, budget)) {
    const found = price(problem, frame, basis, { tolerance: tolerances[level] ?? 0, budget });
    if (!found) break;
    bound = Math.max(bound, boundOf(problem, basis, found));
    // Looking closer is no use once the rounded bound cannot rise: that is all a proof needs.
    if (roundedUp(bound, step) >= roundedUp(valueOf(basis) - 1e-3 * step, step)) break;
    const better = found.flatMap(({ pattern }) => (pattern ? [remember(pool, pattern)] : []));
    if (better.length === 0) level += 1;
    known.push(...better.flatMap((pattern) => columnOf(problem, frame, pattern) ?? []));
  }
  return relaxationOf(problem, frame, basis, bound);
}

/** Which row of the simplex stands for which piece and which limited stock. */
interface Frame {
  readonly pieceRow: readonly number[];
  readonly stockRow: readonly number[];
  readonly rightSide: readonly number[];
  readonly penalties: readonly number[];
  readonly surplus: readonly PatternColumn[];
  readonly dearest: number;
}

interface PatternColumn extends Column {
  readonly pattern?: Pattern | undefined;
}

function frameOf(problem: CuttingProblem): Frame {
  const { pieces, stocks } = problem;
  const rightSide: number[] = [];
  const rowOf = (count: number): number => (count > 0 && count !== Infinity ? rightSide.push(count) - 1 : -1);
  const pieceRow = pieces.map(({ count }) => rowOf(count));
  const stockRow = stocks.map(({ count }) => rowOf(count));
  const surplus = pieceRow.filter((row) => row >= 0).map((row) => ({ cost: 0, rows: [row], entries: [-1] }));
  // Unequal crumbs of demand keep the simplex from standing still where several columns run out together.
  const shaken = rightSide.map((side, row) => side + 1e-6 * (1 + ((row * 7919) % 101) / 101));
  return { pieceRow, stockRow, rightSide: shaken, penalties: penalties(problem), surplus, dearest: Math.max(1, ...stocks.map(({ cost }) => cost)) };
}

/** One pattern of one piece for each piece, from the unlimited stock that is cheapest for it; else the piece left out at its penalty. */
function startColumns({ pieces, stocks }: CuttingProblem, frame: Frame): PatternColumn[] {
  const columns: PatternColumn[] = [];
  pieces.forEach(({ length, count }, piece) => {
    const row = frame.pieceRow[piece] ?? -1;
    if (row < 0) return;
    const options = stocks.map((stock, index) => ({ stock: index, cost: stock.cost, times: stock.count === Infinity ? Math.min(count, Math.floor(stock.length / length)) : 0 })).filter(({ times }) => times > 0);
    const [best] = options.sort((a, b) => a.cost / a.times - b.cost / b.times);
    const pattern = best && { stock: best.stock, counts: pieces.map((_, other) => (other === piece ? best.times : 0)) };
    columns[row] = best ? { cost: best.cost, rows: [row], entries: [best.times], pattern } : { cost: frame.penalties[piece] ?? 0, rows: [row], entries: [1] };
  });
  for (const row of frame.stockRow) if (row >= 0) columns[row] = { cost: 0, rows: [row], entries: [1] };
  return columns;
}

/** Undefined for a pattern that this job cannot use: more of a piece than is asked for, or stock that has run out. */
function columnOf({ pieces, stocks }: CuttingProblem, frame: Frame, pattern: Pattern): PatternColumn | undefined {
  const stock = stocks[pattern.stock];
  if (!stock || stock.count <= 0) return undefined;
  const rows: number[] = [];
  const entries: number[] = [];
  for (let piece = 0; piece < pattern.counts.length; piece += 1) {
    const count = pattern.counts[piece] as number;
    if (count === 0) continue;
    if (count > (pieces[piece]?.count ?? 0)) return undefined;
    rows.push(frame.pieceRow[piece] as number);
    entries.push(count);
  }
  const stockRow = frame.stockRow[pattern.stock] as number;
  if (stockRow >= 0) {
    rows.push(stockRow);
    entries.push(1);
  }
  return { cost: stock.cost, rows, entries, pattern };
}

/** Simplex steps over the columns known, until none saves anything; false when rounding or the budget ends it. */
function bringInKnown(basis: Basis<PatternColumn>, frame: Frame, known: readonly PatternColumn[], budget: Budget): boolean {
  const least = -0.5 * CRUMB * frame.dearest;
  for (;;) {
    const column = mostSaving(basis, known, frame.surplus, least);
    if (!column) return true;
    if (!enter(basis, column)) return false;
    budget.spend((basis.size * basis.size + known.length) / 4);
    if (budget.isOver()) return false;
  }
}

function mostSaving(basis: Basis, known: readonly PatternColumn[], surplus: readonly PatternColumn[], least: number): PatternColumn | undefined {
  let best: PatternColumn | undefined;
  let lowest = least;
  for (const columns of [known, surplus]) {
    for (const column of columns) {
      const change = reducedCost(basis, column);
      if (change >= lowest) continue;
      lowest = change;
      best = column;
    }
  }
  return best;
}

/** Savings below this share of the dearest stock are rounding. */
const CRUMB = 1e-8;

interface Priced {
  readonly pattern: Pattern | undefined;
  /** No pattern of this stock saves more. */
  readonly most: number;
}

/** The best pattern of each stock at the present values, to within the tolerance. */
function price({ pieces, stocks }: CuttingProblem, frame: Frame, { duals }: Basis, { tolerance, budget }: { tolerance: number; budget: Budget }): Priced[] | undefined {
  const valueOf = (row: number): number => (row < 0 ? 0 : (duals[row] ?? 0));
  const things = pieces.map(({ length, count }, piece) => ({ weight: length, value: Math.max(0, valueOf(frame.pieceRow[piece] ?? -1)), most: count }));
  const rooms = stocks.map(({ length, cost, count }, stock) => {
    const above = cost - Math.min(0, valueOf(frame.stockRow[stock] ?? -1)) + CRUMB * frame.dearest;
    return { capacity: count > 0 ? length : 0, above, step: tolerance * Math.max(above, 1e-2 * frame.dearest) };
  });
  const fillings = bestFillings(things, rooms, budget);
  return fillings && rooms.map(({ above, step }, stock) => {
    const filling = fillings[stock];
    return { pattern: filling && { stock, counts: filling.counts }, most: CRUMB * frame.dearest + step + (filling ? filling.value - above : 0) };
  });
}

/** What the values at hand show, scaled down to where no pattern of unlimited stock is worth more than its cost (Farley 1990). */
function boundOf({ stocks }: CuttingProblem, basis: Basis, found: readonly Priced[]): number {
  const share = Math.min(1, ...stocks.map(({ cost, count }, stock) => (count === Infinity && cost > 0 ? cost / (cost + (found[stock]?.most ?? 0)) : 1)));
  const paidBack = stocks.reduce((sum, { count }, stock) => sum + (count === Infinity ? 0 : count * (found[stock]?.most ?? 0)), 0);
  return valueOf(basis) * share - paidBack;
}

const valueOf = ({ columns, solution }: Basis): number => columns.reduce((sum, { cost }, row) => sum + cost * (solution[row] ?? 0), 0);

function relaxationOf({ pieces }: CuttingProblem, frame: Frame, basis: Basis<PatternColumn>, bound: number): Relaxation {
  const uses = basis.columns.flatMap(({ pattern }, row) => (pattern && (basis.solution[row] ?? 0) > 1e-5 ? [{ pattern, times: basis.solution[row] ?? 0 }] : []));
  const values = pieces.map((_, piece) => Math.max(0, basis.duals[frame.pieceRow[piece] ?? -1] ?? 0));
  return { value: valueOf(basis), uses, values, bound };
}
