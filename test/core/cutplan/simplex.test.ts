import { enter, reducedCost, startBasis, type Column } from "../../../src/core/cutplan/simplex";

const made: Column = { cost: 10, rows: [0], entries: [1] };
const both: Column = { cost: 6, rows: [0, 1], entries: [1, 1] };
const surplus: Column = { cost: 0, rows: [0], entries: [-1] };

// By hand: 4 and 6 of two things, each alone at 10, or one of both for 6. Alone 40 + 60; four of both and two alone 24 + 20 = 44;
// six of both with two of the first too many 36, and then the first is worth nothing and the second 6.
test("two steps lead from each thing alone to both together with a surplus", () => {
  const basis = startBasis([made, { ...made, rows: [1] }], [4, 6]);
  expect([[...basis.solution], [...basis.duals], reducedCost(basis, both), reducedCost(basis, surplus)]).toEqual([[4, 6], [10, 10], -14, 10]);
  expect(enter(basis, both)).toBe(true);
  expect([[...basis.solution], [...basis.duals], reducedCost(basis, surplus)]).toEqual([[4, 2], [-4, 10], -4]);
  expect(enter(basis, surplus)).toBe(true);
  expect([[...basis.solution], basis.columns, reducedCost(basis, made)]).toEqual([[6, 2], [both, surplus], 10]);
  expect([...basis.duals].map((dual) => Math.abs(dual))).toEqual([0, 6]);
});

test("a column that nothing runs out for is refused, and changes nothing", () => {
  const basis = startBasis([made], [4]);
  expect(enter(basis, surplus)).toBe(false);
  expect([basis.columns, [...basis.solution], basis.pivots]).toEqual([[made], [4], 0]);
});

// A hundred steps and more make the inverse anew from its columns; what the columns add up to must not change by it.
test("after hundreds of steps to and fro the columns still add up to the right side", () => {
  const size = 7;
  const start = Array.from({ length: size }, (_, row): Column => ({ cost: 1, rows: [row], entries: [1] }));
  const rightSide = Array.from({ length: size }, (_, row) => 3 + row);
  const basis = startBasis(start, rightSide);
  const pairs = Array.from({ length: size - 1 }, (_, row): Column => ({ cost: 1.5, rows: [row, row + 1], entries: [1, 2] }));
  for (let step = 0; basis.pivots < 350; step += 1) enter(basis, [...pairs, ...start][(step * 5) % (2 * size - 1)] as Column);
  const sums = new Array<number>(size).fill(0);
  basis.columns.forEach(({ rows, entries }, at) => { rows.forEach((row, index) => (sums[row] = (sums[row] ?? 0) + (entries[index] ?? 0) * (basis.solution[at] ?? 0))); });
  sums.forEach((sum, row) => { expect(sum).toBeCloseTo(rightSide[row] ?? NaN, 9); });
  for (const column of basis.columns) expect(reducedCost(basis, column)).toBeCloseTo(0, 9);
});
