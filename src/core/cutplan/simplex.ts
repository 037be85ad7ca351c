/** Revised simplex with an explicit inverse of the basis: least cost of columns that add up to the right side. */

/** A column with few entries. */
export interface Column {
  readonly cost: number;
  readonly rows: readonly number[];
  readonly entries: readonly number[];
}

export interface Basis<C extends Column = Column> {
  readonly size: number;
  readonly rightSide: Float64Array;
  readonly columns: C[];
  /** Row by row. */
  inverse: Float64Array;
  readonly solution: Float64Array;
  readonly duals: Float64Array;
  pivots: number;
}

/** Starts from columns with one entry each, the column of a row in its place. */
export function startBasis<C extends Column>(columns: readonly C[], rightSide: readonly number[]): Basis<C> {
  const size = columns.length;
  const basis: Basis<C> = { size, rightSide: Float64Array.from(rightSide), columns: [...columns], inverse: new Float64Array(size * size), solution: new Float64Array(size), duals: new Float64Array(size), pivots: 0 };
  columns.forEach(({ entries }, row) => {
    basis.inverse[row * size + row] = 1 / (entries[0] ?? 1);
  });
  refresh(basis);
  return basis;
}

/** What one more of a column changes in the cost; below 0 it pays to bring it in. */
export function reducedCost({ duals }: Basis, { cost, rows, entries }: Column): number {
  let sum = cost;
  for (let index = 0; index < rows.length; index += 1) sum -= (duals[rows[index] as number] as number) * (entries[index] as number);
  return sum;
}

const SMALLEST_PIVOT = 1e-9;
const PIVOTS_BETWEEN_INVERSIONS = 100;

/**
 * Brings a column into the basis in place of the one that runs out first.
 * @returns false when none does, which for costs not below 0 means rounding has gone wrong
 */
export function enter<C extends Column>(basis: Basis<C>, column: C): boolean {
  const direction = solved(basis, column);
  const row = leavingRow(basis, direction);
  if (row < 0) return false;
  const change = reducedCost(basis, column);
  pivot(basis, direction, row);
  basis.columns[row] = column;
  basis.pivots += 1;
  if (basis.pivots % PIVOTS_BETWEEN_INVERSIONS === 0) {
    invert(basis);
    refresh(basis);
  } else advance(basis, direction, { row, change });
  return true;
}

/** How much of each basic column makes up a right side. */
export function solutionFor({ size, inverse }: Basis, rightSide: ArrayLike<number>): Float64Array {
  const solution = new Float64Array(size);
  for (let row = 0; row < size; row += 1) {
    let sum = 0;
    for (let at = 0; at < size; at += 1) sum += (inverse[row * size + at] as number) * (rightSide[at] as number);
    solution[row] = sum;
  }
  return solution;
}

function solved({ size, inverse }: Basis, { rows, entries }: Column): Float64Array {
  const direction = new Float64Array(size);
  for (let row = 0; row < size; row += 1) {
    let sum = 0;
    for (let index = 0; index < rows.length; index += 1) sum += (inverse[row * size + (rows[index] as number)] as number) * (entries[index] as number);
    direction[row] = sum;
  }
  return direction;
}

/** The least ratio; among near-equal ones the largest pivot, for the sake of rounding. */
function leavingRow({ size, solution }: Basis, direction: Float64Array): number {
  let best = -1;
  let least = Infinity;
  let largest = 0;
  for (let row = 0; row < size; row += 1) {
    const entry = direction[row] as number;
    if (entry <= SMALLEST_PIVOT) continue;
    const ratio = Math.max(0, solution[row] as number) / entry;
    if (ratio < least - 1e-12 || (ratio <= least + 1e-12 && entry > largest)) {
      best = row;
      least = Math.min(ratio, least);
      largest = entry;
    }
  }
  return best;
}

/** Row operations that make the direction a unit vector; the zeros of the pivot row, which are many, are passed over. */
function pivot({ size, inverse }: Basis, direction: Float64Array, row: number): void {
  const start = row * size;
  const scale = 1 / (direction[row] as number);
  const filled: number[] = [];
  for (let at = 0; at < size; at += 1) {
    const entry = inverse[start + at] as number;
    if (entry === 0) continue;
    inverse[start + at] = entry * scale;
    filled.push(at);
  }
  for (let other = 0; other < size; other += 1) {
    const factor = direction[other] as number;
    if (other === row || factor === 0) continue;
    const offset = other * size;
    for (const at of filled) {
      inverse[offset + at] = (inverse[offset + at] as number) - factor * (inverse[start + at] as number);
    }
  }
}

/** Brings solution and duals up to date after a pivot, from what they were before it. */
function advance({ size, inverse, solution, duals }: Basis, direction: Float64Array, { row, change }: { row: number; change: number }): void {
  const amount = (solution[row] as number) / (direction[row] as number);
  for (let other = 0; other < size; other += 1) solution[other] = (solution[other] as number) - amount * (direction[other] as number);
  solution[row] = amount;
  for (let at = 0; at < size; at += 1) duals[at] = (duals[at] as number) + change * (inverse[row * size + at] as number);
}

function refresh(basis: Basis): void {
  const { size, inverse, columns, duals, solution } = basis;
  solution.set(solutionFor(basis, basis.rightSide));
  duals.fill(0);
  for (let row = 0; row < size; row += 1) {
    const cost = columns[row]?.cost ?? 0;
    if (cost === 0) continue;
    for (let at = 0; at < size; at += 1) duals[at] = (duals[at] as number) + cost * (inverse[row * size + at] as number);
  }
}

/** Makes the inverse anew by starting from the identity and bringing in each basic column, the largest pivot first to last. */
function invert(basis: Basis): void {
  const { size, columns } = basis;
  const fresh: Basis = { ...basis, inverse: new Float64Array(size * size) };
  for (let row = 0; row < size; row += 1) fresh.inverse[row * size + row] = 1;
  const placed = new Array<Column | undefined>(size);
  for (const column of columns) {
    const direction = solved(fresh, column);
    const row = largestFreeRow(direction, placed);
    if (row < 0) return; // singular by rounding: the old inverse serves on
    pivot(fresh, direction, row);
    placed[row] = column;
  }
  basis.inverse = fresh.inverse;
  placed.forEach((column, row) => {
    if (column) columns[row] = column;
  });
}

function largestFreeRow(direction: Float64Array, placed: readonly (Column | undefined)[]): number {
  let [best, largest] = [-1, SMALLEST_PIVOT];
  direction.forEach((entry, row) => {
    if (!placed[row] && Math.abs(entry) > largest) [best, largest] = [row, Math.abs(entry)];
  });
  return best;
}
