/** Gives each row a column of its own at least cost in all. */

/**
 * Solves the assignment problem exactly: every row gets one column, no column two rows.
 * @param costs finite costs by row and column, with at least as many columns as rows; whole numbers stay exact
 * @returns the column of each row
 * @source H. W. Kuhn, The Hungarian Method for the Assignment Problem, 1955; in the form with potentials, one row added at a time, O(rows² × columns)
 * @example leastCostAssignment([[4, 1], [2, 0]]) // => [1, 0], of cost 3; the other way costs 4
 */
export function leastCostAssignment(costs: readonly (readonly number[])[]): number[] {
  const columns = costs[0]?.length ?? 0;
  const state: Potentials = { costs, rowPotential: costs.map(() => 0), columnPotential: new Array<number>(columns).fill(0), rowOf: new Array<number>(columns).fill(-1) };
  for (let row = 0; row < costs.length; row += 1) addRow(state, row);
  const answer = new Array<number>(costs.length).fill(-1);
  state.rowOf.forEach((row, column) => { if (row >= 0) answer[row] = column; });
  return answer;
}

interface Potentials {
  readonly costs: readonly (readonly number[])[];
  readonly rowPotential: number[];
  readonly columnPotential: number[];
  readonly rowOf: number[];
}

/** Grows a tree of tight pairs from the new row until it meets a free column, then moves each row on the way there. */
function addRow({ costs, rowPotential, columnPotential, rowOf }: Potentials, start: number): void {
  const slack = columnPotential.map(() => Infinity);
  const cameFrom = columnPotential.map(() => -1);
  const seen = columnPotential.map(() => false);
  let [row, column] = [start, -1];
  for (;;) {
    let [next, step] = [-1, Infinity];
    for (const [other, cost] of (costs[row] ?? []).entries()) {
      if (seen[other]) continue;
      const reduced = cost - (rowPotential[row] ?? 0) - (columnPotential[other] ?? 0);
      if (reduced < (slack[other] ?? 0)) [slack[other], cameFrom[other]] = [reduced, column];
      if ((slack[other] ?? 0) < step) [step, next] = [slack[other] ?? 0, other];
    }
    rowPotential[start] = (rowPotential[start] ?? 0) + step;
    for (const [other, isSeen] of seen.entries()) {
      if (!isSeen) { slack[other] = (slack[other] ?? 0) - step; continue; }
      columnPotential[other] = (columnPotential[other] ?? 0) - step;
      const owner = rowOf[other] ?? -1;
      rowPotential[owner] = (rowPotential[owner] ?? 0) + step;
    }
    seen[next] = true;
    column = next;
    if ((rowOf[next] ?? -1) < 0) break;
    row = rowOf[next] ?? -1;
  }
  for (let free = column; free >= 0; ) {
    const from = cameFrom[free] ?? -1;
    rowOf[free] = from < 0 ? start : (rowOf[from] ?? -1);
    free = from;
  }
}
